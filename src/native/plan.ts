import type { Figure } from '../budget/figure.ts';
import { functionsIn } from '../budget/figure.ts';
import { figures } from '../budget/figures.ts';
import { type BudgetItem, itemNamed, itemOf } from '../budget/items.ts';
import { registry } from '../functions/index.ts';
import { Calls } from './calls.ts';
import { namesIn, nativeFormula, type Scope } from './expression.ts';
import { inputs } from './inputs.ts';
import { figuresName } from './steps.ts';

/** Rows above the first figure: title, what the sheet is for, headings. */
export const aboveFigures = 4;

const figureRow = new Map<string, number>(figures.map(({ key }, k) => [key, aboveFigures + 1 + k]));

/** The cell that holds a figure of the plan. */
export const figureCell = (key: string): string => {
  const row = figureRow.get(key);
  if (row === undefined) throw new Error(`no figure of the plan is called ${key}`);
  return `${figuresName}!B${row}`;
};

const unquoted = (text: string): string => text.replace(/^"|"$/g, '');

function itemOr(name: string): BudgetItem {
  const item = itemNamed(name);
  if (!item) throw new Error(`no item of the budget is called ${name}`);
  return item;
}

/** What the equations of figures say beside names, signs and functions: see budget-equations.test.ts, which holds them as well. */
const words: Readonly<Record<string, (args: readonly string[]) => string>> = {
  isGiven: ([name = '']) => inputs.given(itemOr(unquoted(name))),
  ifGiven: ([name = '', otherwise = '']) => inputs.orElse(itemOr(unquoted(name)), otherwise),
  ifNone: ([value = '', otherwise = '']) => `IF(ISNA(${value}),${otherwise},${value})`,
  ifNotNegative: ([value = '']) => `IF(${value}<0,NA(),${value})`,
  least: (stages) => {
    const could = stages.filter((_, k) => k % 2 === 1);
    const smallest = `MIN(${could.join(',')})*(1+1E-9)`;
    return could.reduceRight((otherwise, made, k) => `IF(${made}<=${smallest},${stages[2 * k]},${otherwise})`, 'NA()');
  },
};

/** What has a value of its own, and so need not be worked out twice within a formula. */
const isPlain = (text: string): boolean => /^(\w+!)?\$?[A-Z]+\$?\d+$|^-?[\d.E+-]+$|^"[^"]*"$/.test(text);

/** Writes the figures of a plan as formulas over the inputs' cells and each other, the calls in them step by step. */
export class PlanCells {
  readonly calls = new Calls(inputs.emptyAllowed);
  readonly #formulas: ReadonlyMap<string, string>;

  constructor() {
    this.#formulas = new Map(figures.map((figure) => [figure.key, this.#formula(figure)]));
  }

  formula(key: string): string {
    return this.#formulas.get(key) as string;
  }

  #formula({ key, how, only }: Figure): string {
    if (how === undefined) return counts[key]?.count ?? 'NA()';
    const text = nativeFormula(how, this.#scope(key));
    const [target, pressed] = [inputs.taken(itemOf('target_dm')), inputs.taken(itemOf('cake_dm'))];
    return only ? `IF(${target}>${pressed},${text},NA())` : text;
  }

  #scope(key: string): Scope {
    return {
      name: (name) => (figureRow.has(name) ? figureCell(name) : inputs.taken(itemOr(name))),
      call: (name, args, asked) => {
        const word = words[name];
        if (word) return word(args.map((arg) => this.#once(arg, key)));
        return this.calls.call(name, args, asked);
      },
    };
  }

  /** A word says its arguments more than once: what is long becomes a step of its own. */
  #once(text: string, key: string): string {
    if (isPlain(text)) return text;
    return this.calls.steps.cell({
      label: `within ${key}`,
      formula: text,
      unit: '',
      says: 'A part of that figure',
      equation: '',
      source: '',
    });
  }
}

interface Counted {
  readonly count: string;
  readonly listed: string;
}

const counted = (standing: 'default' | 'missing' | 'refused'): Counted => ({
  count: inputs.counted(standing),
  listed: inputs.listed(standing),
});

/** Figures that count inputs, which no equation gives. */
export const counts: Readonly<Record<string, Counted>> = {
  'Defaults used': counted('default'),
  'Still missing': counted('missing'),
  'Refused inputs': counted('refused'),
};

/** Names in brackets, and those of items that an equation asks about in quotes. */
const namedBy = (how: string): readonly string[] => [
  ...namesIn(how),
  ...[...how.matchAll(/'([^']+)'/g)].flatMap(([, name = '']) => (itemNamed(name) ? [name] : [])),
];

/** The items that a figure rests on, however far down, by what stands in for them too. */
export function itemsUnder(key: string): readonly BudgetItem[] {
  const [found, seen] = [new Set<BudgetItem>(), new Set<string>()];
  const addItem = (item: BudgetItem): void => {
    if (found.has(item)) return;
    found.add(item);
    for (const other of [
      ...(item.standIn?.of ?? []),
      ...(item.follows ? [item.follows] : []),
      ...(item.against ? [item.against.item] : []),
    ])
      addItem(itemOf(other));
  };
  const add = (name: string): void => {
    if (seen.has(name)) return;
    seen.add(name);
    const figure = figures.find((one) => one.key === name);
    if (!figure) addItem(itemOr(name));
    else for (const inner of namedBy(figure.how ?? '0')) add(inner);
  };
  add(key);
  return [...found].sort((a, b) => a.place - b.place);
}

/** What a figure is: its meaning, or where that depends on the plan what the function is for that gives it. */
export function aboutFigure({ meaning, how }: Figure): string {
  if (typeof meaning === 'string') return meaning;
  const [name] = functionsIn(how);
  return registry.find((record) => record.name === name)?.summary ?? '';
}
