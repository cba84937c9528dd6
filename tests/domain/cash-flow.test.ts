import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type AllowanceMethod, capitalAllowances, cashFlow } from '../../src/domain/cash-flow.ts';
import { netPresentValue } from '../../src/domain/investment.ts';
import { loanSchedule } from '../../src/domain/loan.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
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
  const column = (rows: readonly (readonly unknown[])[], name: keyof typeof places) => rows.map((row) => row[places[name]] as number);
  const places = { net: 4, cumulative: 5, discounted: 6, loan: 8, left: 9, interest: 10, relief: 11, own: 12, cover: 13 };

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

  test('begins with the outlay, with or without a loan, and with the loan coming in beside it', () =>
    expect(rowsOf()[0]?.slice(0, 13)).toEqual([
      0,
      0,
      0,
      0,
      -118_000,
      -118_000,
      -118_000,
      -118_000,
      0,
      -118_000 + 82_600,
      0,
      0,
      -118_000 + 82_600,
    ]));

  const loan = loanSchedule(82_600, 7, 0.07, 12);
  const relieved = cashFlow(118_000, 15_000, 10, 0.08, 0.02, 8000, 0.25, 0.4, 0.14, 'pool', 'yes', 82_600, 7, 0.07, 'yes');

  test('pays the loan off, month by month, and leaves the rest; its interest is that of the loan’s own table', () => {
    const { rows } = relieved;
    expect(column(rows, 'loan')).toEqual([0, ...Array(7).fill(expect.closeTo(12 * loan.payment, 9)), 0, 0, 0]);
    expect(column(rows, 'interest')).toEqual([0, ...loan.rows.map(([, , interest]) => interest), 0, 0, 0]);
    for (const [year, row] of rows.entries()) {
      if (year === 0) continue;
      const [net, paid, left, interest, relief] = (['net', 'loan', 'left', 'interest', 'relief'] as const).map(
        (name) => row[places[name]] as number,
      ) as [number, number, number, number, number];
      expect(relief).toBeCloseTo(0.25 * interest, 9);
      expect(left).toBeCloseTo(net - paid + relief, 9);
    }
  });

  test('adds what is left up to own money, and says how often each year covers its payments', () => {
    const { rows } = relieved;
    expect(rows.at(-1)?.[places.own]).toBeCloseTo(sum(column(rows, 'left')), 8);
    const [, first] = rows as [unknown, readonly number[]];
    expect(first[places.cover]).toBeCloseTo(((first[places.net] as number) + (first[places.relief] as number)) / (12 * loan.payment), 12);
    expect(rows.filter((row) => row[places.cover] instanceof NoAnswer).map(([year]) => year)).toEqual([0, 8, 9, 10]);
  });

  test('without relief shows the interest all the same, and takes nothing off the tax for it', () => {
    expect(column(rowsOf(), 'interest')[1]).toBeCloseTo(loan.rows[0]?.[2] as number, 9);
    expect(sum(column(rowsOf(), 'relief'))).toBe(0);
  });

  test('is worth more by the relief alone: the loan itself is no part of what the kit is worth', () => {
    const plain = cashFlow(118_000, 15_000, 10, 0.08, 0.02, 8000, 0.25, 0.4, 0.14, 'pool', 'yes', 82_600, 7, 0.07);
    const without = cashFlow(118_000, 15_000, 10, 0.08, 0.02, 8000, 0.25, 0.4, 0.14, 'pool', 'yes', 0, undefined, undefined, 'yes');
    expect(plain.npv_after_tax).toBe(without.npv_after_tax);
    const relief = loan.rows.reduce((worth, [year, , interest]) => worth + (0.25 * (interest as number)) / 1.08 ** (year as number), 0);
    expect(relieved.npv_after_tax - plain.npv_after_tax).toBeCloseTo(relief, 8);
  });

  test('of a loan that outlasts the kit ends with its life, and takes what is still owed off the last year', () => {
    const longer = cashFlow(10_000, 3000, 3, 0.08, 0, 0, 0.25, 0, 0.2, 'pool', 'no', 5000, 5, 0.07);
    const owed = loanSchedule(5000, 5, 0.07, 12);
    expect(longer.rows.map(([year]) => year)).toEqual([0, 1, 2, 3]);
    expect(longer.owed_at_end).toBeCloseTo(owed.rows[2]?.[4] as number, 9);
    const [, , , last] = longer.rows as readonly (readonly number[])[];
    expect(last?.[places.loan]).toBeCloseTo(12 * owed.payment, 9);
    expect(last?.[places.left]).toBeCloseTo((last?.[places.net] as number) - 12 * owed.payment - (owed.rows[2]?.[4] as number), 9);
  });

  test('own money ends where the kit leaves it, less all that the loan cost', () => {
    fc.assert(
      fc.property(life, life, between(0, 0.3), share, (years, loanYears, interest, part) => {
        const { rows } = cashFlow(50_000, 9000, years, 0.08, 0, 0, 0, 0, 0, 'pool', 'no', part * 50_000, loanYears, interest);
        const paid = loanSchedule(part * 50_000, loanYears, interest, 12).rows.slice(0, years);
        const cost = sum(paid.map((row) => row[2] as number));
        expect(Math.abs((rows.at(-1)?.[places.own] as number) - (9000 * years - 50_000 - cost))).toBeLessThan(1e-6);
      }),
    );
  });

  test('asks for the terms of a loan as soon as something is borrowed', () => {
    const borrowing = (years: number | undefined, rate: number | undefined) => () =>
      cashFlow(10_000, 3000, 3, 0.08, 0, 0, 0, 0, 0, 'pool', 'no', 5000, years, rate);
    expect(borrowing(undefined, 0.07)).toThrow(Refusal);
    expect(borrowing(undefined, 0.07)).toThrow(/^loan_years: is missing/);
    expect(borrowing(5, undefined)).toThrow(/^loan_rate: is missing/);
  });
});
