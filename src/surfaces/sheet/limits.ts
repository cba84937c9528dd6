import { type Arg, helpers, type Locale, registries } from '@odoo/o-spreadsheet';
import { prefix } from '../namespace.ts';
import { most } from './most.ts';

/** What a function is about to do, in numbers of its arguments: how many of what, and how many at most. */
interface Amount {
  readonly count: number;
  readonly of: string;
  readonly most: number;
}

/** The numbers of the arguments, with 1 for what is left out and NaN for what is no number. */
type Numbers = (place: number) => number;

const cells = (count: number): Amount => ({ count, of: 'cells, days or periods', most: most.cells });
const product =
  (...places: readonly number[]) =>
  (at: Numbers): Amount =>
    cells(places.reduce((product, place) => product * Math.abs(at(place)), 1));
const between = (from: number, to: number) => (at: Numbers) => cells(Math.abs(at(to) - at(from)));

/** 31 December 9999 as a date's number: the grid looks for the first Thursday of a year that has none, for ever. */
const lastDay = 2_958_465;
const untilLastDay = (at: Numbers): Amount => ({ count: Math.abs(at(0)), of: 'days from 1900', most: lastDay });

/**
 * Functions of the grid that make as many cells, or go through as many days or periods, as they are told. It works them out
 * in one go: with a large enough number the page would hang each time it is opened.
 */
const native: Readonly<Record<string, (at: Numbers) => Amount>> = {
  SEQUENCE: product(0, 1),
  RANDARRAY: product(0, 1),
  MUNIT: product(0, 0),
  EXPAND: product(1, 2),
  WRAPROWS: product(1),
  WRAPCOLS: product(1),
  OFFSET: product(3, 4),
  CUMIPMT: product(4),
  CUMPRINC: product(4),
  DB: product(3),
  VDB: product(4),
  WORKDAY: product(1),
  'WORKDAY.INTL': product(1),
  NETWORKDAYS: between(0, 1),
  'NETWORKDAYS.INTL': between(0, 1),
  WEEKNUM: untilLastDay,
  ISOWEEKNUM: untilLastDay,
};

const rowsOf = (arg: Arg): number => (Array.isArray(arg) ? (arg[0]?.length ?? 0) : 1);
const columnsOf = (arg: Arg): number => (Array.isArray(arg) ? arg.length : 1);
const widest = (args: readonly Arg[], of: (arg: Arg) => number): number => args.reduce((widest, arg) => Math.max(widest, of(arg)), 1);

const cellsOf = (arg: Arg): number => rowsOf(arg) * columnsOf(arg);

/** How many whole budgets these of ours work out, each a hundred times the work of another answer. */
const budgets: Readonly<Record<string, (args: readonly Arg[]) => number>> = {
  'BUDGET.HERDS': ([, herds]) => rowsOf(herds),
  'BUDGET.SWEEP': ([, , , over]) => cellsOf(over),
  'BUDGET.PLANS': ([, , changes]) => columnsOf(changes),
  'BUDGET.MONTHS': ([, , months]) => rowsOf(months),
};
const mostBudgets = 2_000;

/** A column against a row gives an answer for each pair. */
function ownAmount(name: string, args: readonly Arg[]): Amount {
  const budgetsIn = budgets[name];
  if (budgetsIn) return { count: budgetsIn(args), of: 'budgets', most: mostBudgets };
  return { count: widest(args, rowsOf) * widest(args, columnsOf), of: 'answers', most: most.rows };
}

function numbersOf(args: readonly Arg[], locale: Locale): Numbers {
  return (place) => {
    const arg = args[place];
    if (arg === undefined) return 1;
    try {
      return helpers.toNumber(Array.isArray(arg) ? arg[0]?.[0] : arg, locale);
    } catch {
      return Number.NaN;
    }
  };
}

/** Answers with an error in the cell where one of these functions is told to do more than a sheet may hold. */
export function limitFunctions(): void {
  const { functionRegistry } = registries;
  const own = functionRegistry.getKeys().filter((name) => name.startsWith(prefix));
  for (const name of [...Object.keys(native), ...own]) {
    const given = functionRegistry.get(name);
    const amountOf = native[name];
    functionRegistry.replace(name, {
      ...given,
      compute(...args) {
        const amount = amountOf ? amountOf(numbersOf(args, this.locale)) : ownAmount(name.slice(prefix.length), args);
        if (!(amount.count > amount.most)) return given.compute.apply(this, args);
        const [count, most] = [amount.count, amount.most].map((number) => number.toLocaleString('en-GB'));
        return { value: '#ERROR', message: `${name}: ${count} ${amount.of} are too many; at most ${most}` };
      },
    });
  }
}
