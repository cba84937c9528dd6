import { isBlank } from '../core/result.ts';
import { quoted } from '../core/words.ts';
import { type Answer, Refusal } from '../domain/refusal.ts';
import type { Figure } from './figure.ts';
import { type FigureKey, figureByKey, figureCalled } from './figures.ts';
import { answerOf, type Given, readCells, readInputs, readNames } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import { itemNamed } from './items.ts';
import { planOf } from './plan.ts';
import { refusalsOf } from './standing.ts';
import { warningCount } from './warnings.ts';

export const usualResults: readonly FigureKey[] = [
  'Fibre needed',
  'What limits',
  'Cover of demand',
  'Saving',
  'Payback',
  'NPV',
  'Mastitis cases to NPV 0',
  'Hygiene score, fibre',
  'Hygiene span, fibre',
];

const spanOf: ReadonlyMap<string, FigureKey> = new Map([
  ['Hygiene score, fibre', 'Hygiene span, fibre'],
  ['Hygiene score, present bedding', 'Hygiene span, present bedding'],
]);

/** The figures asked for by key, else the usual ones. A score brings its span as the next, unless that was asked for too. */
export function figuresAsked(asked: Table | undefined, usual: readonly FigureKey[]): readonly Figure[] {
  const keys = asked?.flat().filter((key) => !isBlank(key)) ?? usual;
  const figures = keys.map((key) => {
    const figure = figureCalled(key);
    if (figure) return figure;
    const problem = `${quoted(key)} is not a result of the budget`;
    throw new Refusal('results (table)', problem, 'enter keys as the first column of BEDDING.BUDGET.HERD shows them');
  });
  return figures.flatMap((figure) => {
    const span = spanOf.get(figure.key);
    return span && !figures.some(({ key }) => key === span) ? [figure, figureByKey(span)] : [figure];
  });
}

/** One herd's figures and its number of warnings; a refused input shows in each of its cells, so that it cannot be missed. */
function cellsOf(given: Given, asked: readonly Figure[]): readonly Answer[] {
  const plan = planOf(given);
  const refused = refusalsOf(plan)[0];
  if (refused) return [...asked.map(() => refused), refused];
  return [...asked.map((figure) => answerOf(() => figure.value(plan))), warningCount(plan)];
}

export function herds(headings: Table, herdTable: Table, asked: Table | undefined) {
  const names = headings.flat();
  const results = figuresAsked(asked, usualResults);
  const columns = (herdTable[0] as readonly unknown[]).length;
  if (columns !== names.length) {
    throw new Refusal('herds (table)', `has ${columns} columns below ${names.length} headings`, 'enter a column for each heading');
  }
  const label = names.findIndex((name) => typeof name === 'string' && name.trim().toLowerCase() === 'herd');
  const place = (column: number) => `headings column ${column + 1}`;
  const items = readNames(
    names.map((name, column) => (column === label ? null : name)),
    place,
  );
  const rowFor = (cells: readonly unknown[], k: number) => {
    const key = label >= 0 && !isBlank(cells[label]) ? String(cells[label]) : k + 1;
    const own = label < 0 ? cells : cells.map((cell, column) => (column === label ? null : cell));
    return [key, ...cellsOf(readCells(items, own, place), results)];
  };
  const header = ['Herd', ...results.map(({ key }) => key), 'Warnings'];
  const last = herdTable.findLastIndex((cells) => !cells.every(isBlank));
  // A blank row between herds stays blank, so that answers set beside the herds keep their rows.
  const rows = herdTable.slice(0, last + 1).map((cells, k) => (cells.every(isBlank) ? header.map(() => undefined) : rowFor(cells, k)));
  return { columns: header, rows };
}

export function sweep(items: Table, values: Table | undefined, vary: string, over: Table, asked: Table | undefined) {
  const given = pairUp(items, values);
  const item = itemNamed(vary);
  if (!item) throw new Refusal('vary', `"${vary}" is not an item of the budget`, 'enter a name as BEDDING.BUDGET.INPUTS lists it');
  const results = figuresAsked(asked, usualResults);
  const rows = over
    .flat()
    .filter((cell) => !isBlank(cell))
    .map((cell) => {
      const one = readInputs([[item.name, cell]], () => 'over');
      const shown = typeof cell === 'object' ? '' : (cell as Answer);
      return [shown, ...cellsOf(given.changed(new Map([[item.key, one.get(item.key)]])), results)];
    });
  return { columns: [item.name, ...results.map(({ key }) => key), 'Warnings'], rows };
}
