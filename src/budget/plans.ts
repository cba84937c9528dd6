import { isBlank } from '../core/result.ts';
import { type Answer, NoAnswer, Refusal } from '../domain/refusal.ts';
import type { Figure } from './figure.ts';
import { type FigureKey, figureByKey } from './figures.ts';
import { answerOf, type Changes, readCells, readNames } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import type { BudgetItem, ItemKey } from './items.ts';
import { figuresAsked } from './many.ts';
import { type Plan, planOf } from './plan.ts';
import { refusalsOf } from './standing.ts';
import { warningCount } from './warnings.ts';

export const usualComparison: readonly FigureKey[] = [
  'Fibre made',
  'What limits',
  'Cover of demand',
  'Cover in the coldest month',
  'Capital',
  'Saving',
  'NPV',
  'Payback',
  'Home fibre per cubicle',
  'Mastitis cases to NPV 0',
  'Hygiene score, fibre',
  'Hygiene span, fibre',
];

const extraCapital = 'Extra capital over base';
const extraNpv = 'Extra NPV over base';

/** Typed instead of a value it takes the item out of the plan, as if the base had not given it. */
const none = 'none';
const isNone = (cell: unknown): boolean => typeof cell === 'string' && cell.trim().toLowerCase() === none;

/** The names of the plans and, for each, the items in which it differs from the base. */
function readChanges(changes: Table): readonly { readonly name: string; readonly changed: Changes }[] {
  const [heads = [], ...rows] = changes;
  const items = readNames(
    rows.map(([name]) => name),
    (k) => `changes row ${k + 2}`,
  );
  const last = heads.findLastIndex((_, column) => changes.some((row) => !isBlank(row[column])));
  if (last < 1)
    throw new Refusal('changes (table)', 'holds no plan', 'enter the plans’ names in its first row, and below them what differs');
  return heads.slice(1, last + 1).map((head, k) => {
    const cells = rows.map((row) => row[k + 1]);
    return {
      name: typeof head === 'string' || typeof head === 'number' ? String(head) || `plan ${k + 1}` : `plan ${k + 1}`,
      changed: changesOf(items, cells),
    };
  });
}

function changesOf(items: readonly (BudgetItem | undefined)[], cells: readonly unknown[]): Changes {
  const read = readCells(
    items,
    cells.map((cell) => (isNone(cell) ? null : cell)),
    (row) => `changes row ${row + 2}`,
  );
  return new Map(
    items.flatMap((item, k): readonly (readonly [ItemKey, unknown])[] => {
      if (!item || isBlank(cells[k])) return [];
      return [[item.key, isNone(cells[k]) ? undefined : read.get(item.key)]];
    }),
  );
}

type Column = (figure: Figure) => Answer;

const columnOf = (plan: Plan): Column => {
  // A plan with a refused item shows why in each of its cells.
  const [refusal] = refusalsOf(plan);
  return (figure) => refusal ?? answerOf(() => figure.value(plan));
};

/** How much more than the base, or why that cannot be said. */
function more(of: Answer, than: Answer): Answer {
  if (typeof of !== 'number') return of;
  return typeof than === 'number' ? of - than : than;
}

const capitalOf = (plan: Plan): Answer => refusalsOf(plan)[0] ?? answerOf(() => plan.money.capital);

const livesDiffer = new NoAnswer(
  'the plans’ lives differ, so that their NPV cannot be set against each other: compare Saving after capital',
);

function npvMore(plan: Plan, base: Plan, of: Answer, than: Answer): Answer {
  const lives = [plan, base].map(({ inputs }) => answerOf(() => inputs.life_years));
  return lives[0] !== lives[1] && refusalsOf(plan).length === 0 ? livesDiffer : more(of, than);
}

/** Plans side by side: a base, and up to as many as `changes` names, each only what differs. */
export function plans(items: Table, values: Table | undefined, changes: Table, asked: Table | undefined) {
  const given = pairUp(items, values);
  const figures = figuresAsked(asked, usualComparison);
  const npv = figureByKey('NPV');
  const named = readChanges(changes);
  const all = [planOf(given), ...named.map(({ changed }) => planOf(given, changed))];
  const [base] = all as [Plan, ...Plan[]];
  const columns = all.map(columnOf);
  const inBase = columns[0] as Column;
  const others = all.slice(1).map((plan, k) => [plan, columns[k + 1] as Column] as const);
  const rows = [
    ...figures.map((figure) => [figure.key, figure.unit, ...columns.map((column) => column(figure))]),
    [extraCapital, npv.unit, 0, ...others.map(([plan]) => more(capitalOf(plan), capitalOf(base)))],
    [extraNpv, npv.unit, 0, ...others.map(([plan, column]) => npvMore(plan, base, column(npv), inBase(npv)))],
    ['Warnings', '', ...all.map((plan) => refusalsOf(plan)[0] ?? warningCount(plan))],
  ];
  return { columns: ['key', 'unit', 'base', ...named.map(({ name }) => name)], rows };
}
