import { Model } from '@odoo/o-spreadsheet';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';
import { register } from '../../src/surfaces/excel/register.ts';
import { installCustomFunctions } from '../../src/surfaces/sheet/host.ts';
import { limitFunctions } from '../../src/surfaces/sheet/limits.ts';

beforeAll(() => {
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
  installCustomFunctions(functionsFile(registry));
  register(registry);
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
    '=NETWORKDAYS(1,1E9)',
    '=NETWORKDAYS("1/1/1900",DATE(9999,12,31))',
    '=NETWORKDAYS.INTL(1E9,1)',
    '=SUM(WRAPROWS({1,2,3},1E9))',
    '=SUM(WRAPCOLS({1,2,3},1E9))',
    '=SUM(OFFSET(B1,0,0,1E6,26))',
  ])('says so in its cell, in place of hanging the page: %s', (formula) => {
    const { value, message } = answer(formula);
    expect(value).toBe('#ERROR');
    expect(message).toMatch(/^[A-Z.]+: [\d,]+ cells, days or periods are too many; at most 300,000$/);
  });
});

it.each([
  ['=WEEKNUM(1E9)', 'WEEKNUM: 1,000,000,000 days from 1900 are too many; at most 2,958,465'],
  ['=ISOWEEKNUM(1E9)', 'ISOWEEKNUM: 1,000,000,000 days from 1900 are too many; at most 2,958,465'],
  ['=SUM(BEDDING.DEMAND.HERD(SEQUENCE(1000),SEQUENCE(1,1000)))', 'BEDDING.DEMAND.HERD: 1,000,000 answers are too many; at most 100,000'],
  [
    '=BEDDING.BUDGET.SWEEP("Cows",100,"Bought price per t",SEQUENCE(100000))',
    'BEDDING.BUDGET.SWEEP: 100,000 budgets are too many; at most 2,000',
  ],
  ['=BEDDING.BUDGET.HERDS("Cows",SEQUENCE(3000))', 'BEDDING.BUDGET.HERDS: 3,000 budgets are too many; at most 2,000'],
])('so does %s', (formula, message) => {
  expect(answer(formula)).toEqual({ value: '#ERROR', message });
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
  ['=NETWORKDAYS(DATE(2026,11,27),DATE(2026,11,30))', 2],
  ['=WEEKNUM(DATE(2026,1,10))', 2],
  ['=ISOWEEKNUM(DATE(2027,1,1))', 53],
  ['=SUM(WRAPROWS({1,2,3,4},2))', 10],
  ['=SUM(BEDDING.DEMAND.HERD(SEQUENCE(100),SEQUENCE(1,100)))>0', true],
  ['=ROWS(BEDDING.BUDGET.SWEEP("Cows",100,"Bought price per t",{150;160}))', 3],
])('one that stays within it answers as before: %s', (formula, expected) => {
  expect(answer(formula).value).toBe(expected);
});
