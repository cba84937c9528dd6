import { describe, expect, test } from 'vitest';
import { capitalAllowances, cashFlow } from '../../src/domain/cash-flow.ts';

const close = (...values: number[]) => values.map((value) => expect.closeTo(value, 6));

/** Rates change: these are checks of the arithmetic, not advice. */
describe('capital allowances', () => {
  test('14 % of a falling pool of 185,000: 25,900, 22,274, 19,155.64 (computed; United Kingdom main pool from April 2026, seen)', () => {
    const allowances = capitalAllowances(185_000, 10, 0, 0, 0.14, 'pool', 'no');
    expect(allowances.slice(0, 3)).toEqual(close(25_900, 22_274, 19_155.64));
  });

  test('12.5 % a year for 8 years uses the outlay up: Ireland, plant (seen)', () => {
    const allowances = capitalAllowances(100_000, 10, 0, 0, 0.125, 'straight', 'no');
    expect(allowances).toEqual([...Array(8).fill(12_500), 0, 0]);
  });

  test('40 % in the first year, then 14 % of what is left: 40,000, 8,400, 7,224 of 100,000 (by hand; rates seen)', () => {
    const allowances = capitalAllowances(100_000, 10, 0, 0.4, 0.14, 'pool', 'no');
    expect(allowances.slice(0, 3)).toEqual(close(40_000, 8400, 7224));
  });
});

/**
 * By hand: 10,000 laid out, 3,000 saved a year, 4 years, 1,000 left, discount rate 10 %, tax 25 %, 40 % allowed in year 1 and
 * then 20 % of what is left. Columns: saving, allowance, tax, net, cumulative.
 */
describe('four tax years worked by hand', () => {
  const years = (balance_at_end: 'yes' | 'no') =>
    cashFlow(10_000, 3000, 4, 0.1, 0, 1000, 0.25, 0.4, 0.2, 'pool', balance_at_end, 0, undefined, undefined);

  test.each([
    [0, 0, 0, 0, -10_000, -10_000],
    [1, 3000, 4000, -250, 3250, -6750],
    [2, 3000, 1200, 450, 2550, -4200],
    [3, 3000, 960, 510, 2490, -1710],
    [4, 3000, 568, 608, 3392, 1682],
  ])('year %d: saving %d, allowance %d, tax %d, net %d, cumulative %d', (year, ...expected) => {
    expect(years('no').rows[year]?.slice(1, 6)).toEqual(close(...expected));
  });

  test('with the balance allowed at the end, the last year takes 2,840 and pays 40 of tax', () => {
    const [, , allowance, tax, net] = years('yes').rows[4] as number[];
    expect(allowance).toBeCloseTo(2840, 9);
    expect(tax).toBeCloseTo(40, 9);
    expect(net).toBeCloseTo(3960, 9);
  });

  test('is worth −750.46 today', () => expect(years('no').npv_after_tax).toBeCloseTo(-750.46, 2));
});
