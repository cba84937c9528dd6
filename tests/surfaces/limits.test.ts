import { Model } from '@odoo/o-spreadsheet';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { limitFunctions } from '../../src/surfaces/sheet/limits.ts';

beforeAll(() => {
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
  limitFunctions();
});

function answer(formula: string): { value: unknown; message: string | undefined } {
  const model = new Model({ sheets: [{ id: 'one', cells: { A1: formula } }] });
  const { value, message } = model.getters.getEvaluatedCell({ sheetId: 'one', col: 0, row: 0 });
  return { value, message: message?.toString() };
}

describe('a function that is told to do more than a sheet holds', () => {
  it.each([
    '=SEQUENCE(100000,700)',
    '=SUM(SEQUENCE(1E9))',
    '=SUM(RANDARRAY(100000,700))',
    '=SUM(MUNIT(20000))',
    '=SUM(EXPAND(1,100000,700))',
    '=CUMIPMT(0.1,1E9,1,1,1E9,0)',
    '=CUMPRINC(0.1,1E9,1,1,1E9,0)',
    '=DB(1000,1,1E9,1E9)',
    '=VDB(1E9,1,1E9,1,1E9)',
    '=WORKDAY(1,1E9)',
    '=WORKDAY(1,-1E9)',
    '=WORKDAY.INTL(1,1E9)',
  ])('says so in its cell, in place of hanging the page: %s', (formula) => {
    const { value, message } = answer(formula);
    expect(value).toBe('#ERROR');
    expect(message).toMatch(/^[A-Z.]+: [\d,]+ cells, days or periods are too many; at most 300,000$/);
  });
});

/** By hand: sums of small arrays; the loans' from the first payment, all interest or all but it; working days from a calendar. */
it.each([
  ['=SUM(SEQUENCE(3,2))', 21],
  ['=SUM(MUNIT(3))', 3],
  ['=SUM(EXPAND(5,2,2,1))', 8],
  ['=COLUMNS(RANDARRAY(1,4))', 4],
  ['=CUMIPMT(0.1,10,1000,1,1,0)', -100],
  ['=ROUND(CUMPRINC(0.1,10,1000,1,10,0),6)', -1000],
  ['=WORKDAY(DATE(2026,11,27),1)=DATE(2026,11,30)', true],
  ['=SEQUENCE("many")', '#ERROR'],
])('one that stays within it answers as before: %s', (formula, expected) => {
  expect(answer(formula).value).toBe(expected);
});
