import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AllowanceMethod, capitalAllowances, cashFlow } from '../../src/domain/cash-flow.ts';
import { netPresentValue } from '../../src/domain/investment.ts';
import { loanSchedule } from '../../src/domain/loan.ts';
import { Refusal } from '../../src/domain/refusal.ts';
import { between } from './between.ts';

const share = between(0, 1);
const life = fc.integer({ min: 1, max: 40 });
const method = fc.constantFrom<AllowanceMethod>('pool', 'straight');
const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

describe('capital allowances', () => {
  test('with the balance at the end sum to the outlay less the end value', () => {
    fc.assert(
      fc.property(between(1000, 1e6), life, share, share, share, method, (capital, n, left, first, down, how) => {
        const allowances = capitalAllowances(capital, n, left * capital, first, down, how, 'yes');
        expect(allowances).toHaveLength(n);
        expect(Math.abs(sum(allowances) - (capital - left * capital))).toBeLessThan(1e-9 * capital);
      }),
    );
  });

  test('without it never sum to more than the outlay less the end value, as long as that is still in the pool', () => {
    fc.assert(
      fc.property(between(1000, 1e6), life, share, share, method, (capital, n, first, down, how) => {
        expect(sum(capitalAllowances(capital, n, 0, first, down, how, 'no'))).toBeLessThanOrEqual(capital * (1 + 1e-12));
      }),
    );
  });

  test('run straight until they are used up', () => {
    expect(capitalAllowances(1000, 5, 0, 0, 0.3, 'straight', 'no')).toEqual([300, 300, 300, 100, 0]);
    expect(capitalAllowances(1000, 3, 50, 0, 0.3, 'straight', 'yes')).toEqual([300, 300, 350]);
  });

  test('turn negative where the kit fetches more than is left in the pool', () => {
    expect(capitalAllowances(1000, 2, 200, 1, 0.14, 'pool', 'no')[1]).toBeCloseTo(-28, 9);
    expect(capitalAllowances(1000, 2, 200, 1, 0.14, 'pool', 'yes')).toEqual([1000, -200]);
    expect(capitalAllowances(1000, 2, 200, 0, 1, 'straight', 'no')).toEqual([1000, -200]);
  });

  test('of a one-year life come off what the end value leaves', () => {
    expect(capitalAllowances(1000, 1, 200, 0.4, 0.14, 'pool', 'no')).toEqual([320]);
    expect(capitalAllowances(1000, 1, 200, 0.4, 0.14, 'pool', 'yes')).toEqual([800]);
  });
});

describe('cash flow', () => {
  const column = (rows: readonly (readonly number[])[], name: keyof typeof places) => rows.map((row) => row[places[name]] as number);
  const places = { net: 4, cumulative: 5, discounted: 6, loan: 8, left: 9 };

  test('without tax is worth the net present value', () => {
    fc.assert(
      fc.property(
        between(1000, 1e6),
        between(-1e5, 1e5),
        life,
        share,
        between(-0.5, 0.5),
        share,
        (capital, saving, n, rate, growth, left) => {
          const { npv_after_tax } = cashFlow(
            capital,
            saving,
            n,
            rate,
            growth,
            left * capital,
            0,
            0.4,
            0.14,
            'pool',
            'no',
            0,
            undefined,
            undefined,
          );
          const { npv, savings_today } = netPresentValue(capital, saving, n, rate, growth, left * capital);
          expect(Math.abs(npv_after_tax - npv)).toBeLessThan(1e-9 * (capital + Math.abs(savings_today)));
        },
      ),
    );
  });

  const rowsOf = () => cashFlow(118_000, 15_000, 10, 0.08, 0.02, 8000, 0.25, 0.4, 0.14, 'pool', 'yes', 82_600, 7, 0.07).rows;

  test("is worth what a spreadsheet's own NPV makes of its net column", () => {
    const rows = rowsOf();
    // NPV() takes its first value as one year off, so the outlay of year 0 stands outside.
    const [outlay = 0, ...later] = column(rows, 'net');
    const native = outlay + later.reduceRight((worth, net) => (worth + net) / 1.08, 0);
    expect(rows.at(-1)?.[7]).toBeCloseTo(native, 8);
    expect(sum(column(rows, 'discounted'))).toBeCloseTo(native, 8);
    expect(rows.at(-1)?.[5]).toBeCloseTo(sum(column(rows, 'net')), 8);
  });

  test('begins with the outlay, with or without a loan', () =>
    expect(rowsOf()[0]).toEqual([0, 0, 0, 0, -118_000, -118_000, -118_000, -118_000, 0, -118_000]));

  test('pays the loan off, month by month, and leaves the rest', () => {
    const rows = rowsOf();
    const paid = loanSchedule(82_600, 7, 0.07, 12).payment * 12;
    expect(column(rows, 'loan')).toEqual([0, ...Array(7).fill(expect.closeTo(paid, 9)), 0, 0, 0]);
    for (const row of rows) expect(row[9]).toBeCloseTo((row[4] as number) - (row[8] as number), 9);
  });

  test('goes on as long as the loan does, so that no payment is hidden', () => {
    const longer = cashFlow(10_000, 3000, 3, 0.08, 0, 0, 0.25, 0, 0.2, 'pool', 'no', 5000, 5, 0.07).rows;
    expect(longer.map(([year]) => year)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(longer[5]?.slice(1, 5)).toEqual([0, 0, 0, 0]);
    expect(longer[5]?.[8]).toBeGreaterThan(0);
    expect(longer[5]?.[7]).toBe(longer[3]?.[7]);
  });

  test('asks for the terms of a loan as soon as something is borrowed', () => {
    const borrowing = (years: number | undefined, rate: number | undefined) => () =>
      cashFlow(10_000, 3000, 3, 0.08, 0, 0, 0, 0, 0, 'pool', 'no', 5000, years, rate);
    expect(borrowing(undefined, 0.07)).toThrow(Refusal);
    expect(borrowing(undefined, 0.07)).toThrow(/^loan_years: is missing/);
    expect(borrowing(5, undefined)).toThrow(/^loan_rate: is missing/);
  });
});
