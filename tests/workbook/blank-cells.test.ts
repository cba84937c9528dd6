import { Model } from '@odoo/o-spreadsheet';
import { describe, expect, it } from 'vitest';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';
import { register } from '../../src/surfaces/excel/register.ts';
import { cellAt } from '../../src/surfaces/pane/addresses.ts';
import { installCustomFunctions } from '../../src/surfaces/sheet/host.ts';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { toGrid } from '../../src/surfaces/sheet/to-grid.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';

/** What an empty cell in a range reaches a function as. Null in the embedded sheet and, as reported, in Excel on the web. */
let blank: null | '' | 0 = null;

const filled = (argument: unknown): unknown => {
  if (Array.isArray(argument)) return argument.map((part) => (Array.isArray(part) ? filled(part) : (part ?? blank)));
  return argument;
};

installCustomFunctions(functionsFile(registry));
const associate = CustomFunctions.associate as (id: string, called: (...given: unknown[]) => unknown) => void;
const associateFilled: typeof associate = (id, called) => associate(id, (...given) => called(...given.map(filled)));
Object.assign(CustomFunctions, { associate: associateFilled });
register(registry);

function evaluated(as: typeof blank, inputs: { readonly blank: boolean }): Map<string, unknown> {
  blank = as;
  const { getters } = new Model(toGrid(budgetWorkbook(inputs), locales[0]));
  const positions = getters.getSheetIds().flatMap((sheetId) => getters.getEvaluatedCellsPositions(sheetId));
  return new Map(
    positions.map((at) => [`${getters.getSheetName(at.sheetId)}!${cellAt(at.row, at.col)}`, getters.getEvaluatedCell(at).value]),
  );
}

/**
 * In Excel on Windows an empty cell in a range of anything arrives as 0: office-js issues 1951 (2021), 4702 (2024, "0 in
 * desktop and null in office web") and 5262 (2025). A formula of the workbook must therefore hand over `""` for it.
 */
describe.each([
  ['the example herd', { blank: false }],
  ['nothing filled in', { blank: true }],
])('the budget workbook with %s', (_, inputs) => {
  const usual = evaluated(null, inputs);

  it.each([
    ['0, as in Excel on Windows', 0 as const],
    ['empty text', '' as const],
  ])('comes to the same where an empty cell reaches a function as %s', (__, as) => {
    const other = evaluated(as, inputs);
    const differing = [...usual]
      .filter(([cell, value]) => other.get(cell) !== value)
      .map(([cell, value]) => `${cell}: ${value} becomes ${other.get(cell)}`);
    expect(differing.slice(0, 10)).toEqual([]);
  });
});
