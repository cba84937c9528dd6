import type { Model } from '@odoo/o-spreadsheet';
import { describe, expect, it } from 'vitest';
import { type Block, blockOf, cellAt } from '../../src/surfaces/pane/addresses.ts';
import { callsIn } from '../../src/surfaces/pane/formula.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { evaluate } from './evaluate.ts';

/** Excel works out functions of add-ins apart from its own, so each link of a chain costs a further round: 3.9 s for 8 as reported. */
const LONGEST_CHAIN = 3;

const workbook = budgetWorkbook();
const model: Model = evaluate(workbook);
const formulas = new Map<string, string>(
  workbook.sheets.flatMap(({ name, cells }) =>
    Object.entries(cells).flatMap(([address, { content }]) =>
      typeof content === 'string' && content.startsWith('=') ? [[`${name}!${address}`, content] as const] : [],
    ),
  ),
);

/** How many of our functions stand inside one another in a formula. */
function nested(formula: string, sheet: string): number {
  const ours = callsIn(formula, sheet).filter(({ name }) => name.startsWith('BEDDING.'));
  return Math.max(0, ...ours.map(({ start, end }) => ours.filter((other) => other.start <= start && other.end >= end).length));
}

const reference = /"(?:[^"]|"")*"|(?:(?:'((?:[^']|'')+)'|([A-Za-z_]\w*))!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)(?![\w(])/g;

/** The cell that holds the formula behind a cell: its own, or the one that spills into it. */
function holder(sheet: string, address: string): string | undefined {
  const own = `${sheet}!${address}`;
  if (formulas.has(own)) return own;
  const { top, left } = blockOf(address) as Block;
  const sheetId = model.getters.getSheetIdByName(sheet) as string;
  const from = model.getters.getArrayFormulaSpreadingOn({ sheetId, row: top, col: left });
  return from && `${sheet}!${cellAt(from.row, from.col)}`;
}

function feeding(formula: string, sheet: string): Set<string> {
  const found = new Set<string>();
  for (const [, quoted, plain, address] of formula.matchAll(reference)) {
    if (!address) continue;
    const on = quoted?.replaceAll("''", "'") ?? plain ?? sheet;
    const { top, left, bottom, right } = blockOf(address) as Block;
    for (let row = top; row <= bottom; row++)
      for (let column = left; column <= right; column++) {
        const cell = holder(on, cellAt(row, column));
        if (cell) found.add(cell);
      }
  }
  return found;
}

/** The longest row of cells, each with one of our functions and feeding the next, that ends in this cell. */
const chains = new Map<string, readonly string[]>();
function chain(cell: string): readonly string[] {
  const known = chains.get(cell);
  if (known) return known;
  chains.set(cell, [`${cell} refers to itself`]);
  const sheet = cell.slice(0, cell.lastIndexOf('!'));
  const formula = formulas.get(cell) ?? '';
  const before = [...feeding(formula, sheet)]
    .map(chain)
    .reduce<readonly string[]>((longest, one) => (one.length > longest.length ? one : longest), []);
  const made = [...before, ...Array.from({ length: nested(formula, sheet) }, () => `${cell} ${formula.slice(0, 60)}`)];
  chains.set(cell, made);
  return made;
}

describe('the budget workbook in Excel', () => {
  it(`has no chain of more than ${LONGEST_CHAIN} of our functions`, () => {
    const tooLong = [...formulas.keys()].map(chain).filter(({ length }) => length > LONGEST_CHAIN);
    expect([...new Set(tooLong.map((cells) => cells.join(' > ')))]).toEqual([]);
  });

  it('is seen whole by the test above: it finds chains, also through spills and other sheets', () => {
    expect(Math.max(...[...formulas.keys()].map((cell) => chain(cell).length))).toBeGreaterThan(1);
  });

  it('names every cell it reads outright, so that sheets can take other names', () => {
    expect([...formulas.values()].filter((formula) => /\b(INDIRECT|OFFSET|ADDRESS)\(/i.test(formula))).toEqual([]);
  });

  it('asks for a table in one call, never cell by cell: no function is called in more than a dozen cells', () => {
    const counts = new Map<string, number>();
    for (const [cell, formula] of formulas)
      for (const name of new Set(callsIn(formula, cell.slice(0, cell.lastIndexOf('!'))).map((call) => call.name)))
        if (name.startsWith('BEDDING.')) counts.set(name, (counts.get(name) ?? 0) + 1);
    expect([...counts].filter(([, count]) => count > 12)).toEqual([]);
  });
});
