import { describe, expect, test } from 'vitest';
import { call } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { CellError } from '../../src/core/result.ts';
import { cost } from '../../src/functions/cost.ts';
import { invest } from '../../src/functions/invest.ts';

const named = (name: string): FunctionRecord => {
  const record = [...cost, ...invest].find((one) => one.name === name);
  if (!record) throw new Error(`${name} is missing`);
  return record;
};
const ask = (name: string, ...args: unknown[]) => call(named(name), args);
const refusalOf = (name: string, ...args: unknown[]): CellError => {
  const cell = ask(name, ...args)[0]?.[0];
  if (!(cell instanceof CellError)) throw new Error(`${name} answered ${String(cell)}`);
  return cell;
};

describe('what people mistype', () => {
  test('a number of years in place of growth or inflation is asked about', () => {
    expect(refusalOf('INVEST.NPV', 1000, 100, 10, 0.08, 10).message).toBe(
      'growth (fraction): 10: is this a number of years?; enter 10% or 0.1',
    );
    expect(refusalOf('INVEST.PAYBACK', 1000, 100, 1).message).toBe(
      'growth (fraction): 1: is this a number of years?; enter a number above -1, below 1',
    );
    expect(refusalOf('COST.UPDATE', 100, 0.03, 5).message).toContain('inflation (fraction): 5: is this a number of years?');
  });

  test('lives, loan years and payments are whole', () => {
    expect(refusalOf('INVEST.NPV', 1000, 100, 9.5, 0.08).message).toBe(
      'life_years (years): 9.5 is not a whole number; enter a whole number from 1 to 100',
    );
    expect(refusalOf('INVEST.REPAYMENT', 1000, 2.5, 0.08).message).toContain('years (years): 2.5 is not a whole number');
    expect(refusalOf('INVEST.REPAYMENT', 1000, 2, 0.08, 1.5).message).toContain('payments_per_year (payments): 1.5 is not a whole number');
    expect(refusalOf('INVEST.IRR', 1000, 100, 101).message).toContain('life_years (years): 101 is above 100');
  });

  test('8 for 8 % is told how to write it', () => {
    expect(refusalOf('COST.OWNERSHIP', 1000, 10, 8).message).toBe('rate (fraction): 8 is above 1; enter 8% or 0.08');
  });

  test('haulage without a load asks for the load', () => {
    expect(refusalOf('COST.BOUGHT', 100, 165, null, 120).message).toMatch(/^load_t \(t\): is missing although haulage is charged/);
    expect(ask('COST.BOUGHT', 100, 165)).toEqual([[16_500]]);
  });

  test('a loan without its terms asks for them', () => {
    const error = refusalOf('INVEST.CASHFLOW', 1000, 100, 3, 0.08, 0, 0, 0, 0, 0, 'pool', 'no', 500);
    expect(error.message).toBe('loan_years (years): is missing although money is borrowed; enter it, or leave borrowed at 0');
  });
});

describe('questions without an answer say why', () => {
  test.each([
    ['INVEST.PAYBACK', [1000, 10, 0, 10], 'not paid back within its life of 10 years'],
    ['INVEST.DISCOUNTEDPAYBACK', [1000, 10, 0.05], 'not paid back within 100 years'],
    ['INVEST.IRR', [1000, -10, 10], 'no rate makes what comes back worth what was paid'],
    ['INVEST.COVER', [1000, 0], 'there are no loan payments to cover'],
  ])('%s', (name, args, reason) => {
    const error = refusalOf(name, ...args);
    expect(error.code).toBe('#N/A');
    expect(error.message).toBe(reason);
  });
});

test('a column of prices gives a column of answers, each with its own error', () => {
  const answers = ask('INVEST.NPV', [[1000], [-1], [2000]], 300, 10, 0.08);
  expect(answers.map(([cell]) => typeof cell)).toEqual(['number', 'object', 'number']);
});

describe('COST.OPTIONS', () => {
  const options: (string | number | null)[][] = [
    ['sawdust', 1.6, 165, 2, 0],
    ['sand', 9.6, 16, 6, 2000],
    ['sawdust', 1.6, 150, 3, 0],
    [null, null, null, null, null],
  ];

  test('has its header, is cheapest first and keeps keys apart', () => {
    const [header, ...rows] = ask('COST.OPTIONS', options, 400, 280, 16.5);
    expect(header).toEqual(['option', 't per year', 'bedding', 'labour', 'extra', 'per year', 'per cubicle per year']);
    expect(rows.map(([key]) => key)).toEqual(['sand', 'sawdust 2', 'sawdust']);
  });

  test('leaves a bad row its own error, after those that can be costed, and the others stand', () => {
    const wrong = options.with(1, ['sand', 9.6, 'cheap', 6, 2000]).with(3, ['straw', null, 90, null, 0]);
    const [, ...rows] = ask('COST.OPTIONS', wrong, 400, 280, 16.5);
    expect(rows.map(([key]) => key)).toEqual(['sawdust 2', 'sawdust', 'sand', 'straw']);
    expect(rows[0]?.slice(1)).toEqual(ask('COST.OPTIONS', options, 400, 280, 16.5)[2]?.slice(1));
    const [, ...sand] = rows[2] as CellError[];
    expect(sand).toHaveLength(6);
    for (const cell of sand)
      expect(cell.message).toBe('options row 2, price per t (per t): "cheap" is text, not a number; enter a number from 0 to 1,000,000');
    expect(String((rows[3] as CellError[])[6]?.message)).toMatch(
      /^options row 4, kg per cubicle day \(kg\/day\): is missing; .* \| options row 4, labour h per week \(h\/week\): is missing; /,
    );
  });

  test('tells repeated materials apart, whether or not they can be costed', () => {
    const wrong = options.with(0, ['sawdust', 1.6, -5, 2, 0]);
    expect(ask('COST.OPTIONS', wrong, 400, 280, 16.5).map(([key]) => key)).toEqual(['option', 'sand', 'sawdust 2', 'sawdust']);
  });
});

describe('a table of drivers', () => {
  const rows: (string | number | null)[][] = [
    ['discount rate', 0.05, 0.08, 0.12],
    [' Kit Cost ', 100_000, 118_000, 150_000],
    ['bought price per t', 130, 165, 220],
    ['bought t per year', 180, 212, 230],
    ['running cost per year', 18_000, 21_000, 27_000],
  ];

  test('may stand in any order and in a longer range', () => {
    const longer = [...rows.toReversed(), [null, null, null, null]];
    expect(ask('INVEST.SENSITIVITY', longer, 10)).toEqual(ask('INVEST.SENSITIVITY', rows, 10));
    expect(ask('INVEST.PROBABILITY', longer, 10)).toEqual(ask('INVEST.PROBABILITY', rows, 10));
  });

  test('names the row, the column and the unit of a bad cell', () => {
    expect(refusalOf('INVEST.SENSITIVITY', rows.with(1, ['kit cost', 100_000, 118_000, 'much']), 10).message).toBe(
      'drivers row 2, high (money): "much" is text, not a number; enter a number from 0 to 1,000,000,000,000',
    );
    expect(refusalOf('INVEST.SENSITIVITY', rows.with(0, ['discount rate', 0.05, 8, 0.12]), 10).message).toBe(
      'drivers row 1, likely (fraction): 8 is above 1; enter 8% or 0.08',
    );
    expect(refusalOf('INVEST.SENSITIVITY', rows.with(0, ['interest', 0.05, 0.08, 0.12]), 10).message).toMatch(
      /^drivers row 1, driver \(text\): "interest" is not one of the choices; enter one of kit cost, /,
    );
  });

  test('needs all five, each once', () => {
    expect(refusalOf('INVEST.PROBABILITY', rows.slice(2), 10).message).toMatch(
      /^drivers \(table\): kit cost, discount rate missing; enter all of /,
    );
    expect(refusalOf('INVEST.PROBABILITY', [...rows, rows[0]], 10).message).toMatch(
      /^drivers row 6, driver: discount rate is given twice; /,
    );
  });

  test('must rise from low to high', () => {
    expect(refusalOf('INVEST.PROBABILITY', rows.with(3, ['bought t per year', 230, 212, 180]), 10).message).toMatch(
      /^drivers \(table\): bought t per year: 230; 212; 180 do not rise; /,
    );
  });

  test('gives the keys of the answer, whatever the figures', () => {
    const [header, ...answers] = ask('INVEST.PROBABILITY', rows, 10, 0, 200, 3);
    expect(header).toEqual(['key', 'value', 'unit']);
    expect(answers.map(([key]) => key)).toEqual(['chance NPV above 0', 'mean', '10th percentile', 'median', '90th percentile']);
  });
});
