import { describe, expect, test } from 'vitest';
import { annuityFactor, capitalRecovery } from '../../src/domain/annuity.ts';
import { internalRateOfFlows } from '../../src/domain/internal-rate.ts';
import { discountedPayback, internalRate, loanCover, netPresentValue, payback, repayment } from '../../src/domain/investment.ts';
import { loanSchedule } from '../../src/domain/loan.ts';
import { near } from './near.ts';

/** Half a unit of the last printed decimal: what rounding in print leaves open. */
const printed = (decimals: number) => 0.5000001 * 10 ** -decimals;

describe('numpy-financial, documentation (seen)', () => {
  test('npv at 8 % of −40,000, 5,000, 8,000, 12,000, 30,000 is 3,065.22267', () => {
    // What 1 at the end of year k is worth is the difference of two annuity factors.
    const today = (year: number) => annuityFactor(year, 0.08, 0) - annuityFactor(year - 1, 0.08, 0);
    near(5000 * today(1) + 8000 * today(2) + 12_000 * today(3) + 30_000 * today(4) - 40_000, 3065.22267, printed(5));
  });

  test('irr of −100, 39, 59, 55, 20 is 0.28095', () => near(internalRateOfFlows([-100, 39, 59, 55, 20]), 0.28095, printed(5)));

  test('irr of −100, 0, 0, 74 is −0.0955, and a kit that saves nothing and fetches 74 says the same', () => {
    near(internalRateOfFlows([-100, 0, 0, 74]), -0.0955, printed(4));
    near(internalRate(100, 0, 3, 0, 74).irr, -0.0955, printed(4));
  });

  test('irr of −5, 10.5, 1, −8, 1, printed as 0.0886, has two more roots (computed): all are told, none is picked', () => {
    expect(() => internalRateOfFlows([-5, 10.5, 1, -8, 1])).toThrow(/more than one rate.*-87\.0%, 8\.9%, 71\.0%/);
  });

  test('pmt of 200,000 at 7.5 % over 180 months is 1,854.02472', () =>
    near(repayment(200_000, 15, 0.075, 12).payment, 1854.02472, printed(5)));
});

describe('published table of capital recovery factors, 10 years (seen)', () => {
  test.each([
    [0.06, 0.13587],
    [0.08, 0.14903],
    [0.1, 0.16275],
  ])('at %d: %d', (rate, factor) => near(capitalRecovery(10, rate), factor, printed(5)));
});

describe('185,000 laid out for 30,000 a year, 10 years at 8 % (computed from the equations elsewhere)', () => {
  test('NPV 16,302.44', () => near(netPresentValue(185_000, 30_000, 10, 0.08, 0, 0).npv, 16_302.44, printed(2)));
  test('payback 6.167 years', () => near(payback(185_000, 30_000, 0, 10).years, 6.167, printed(3)));
  test('discounted payback 8.840 years', () => near(discountedPayback(185_000, 30_000, 0.08, 0, 10).years, 8.84, printed(3)));
});

describe('loans on a course page (seen and recomputed)', () => {
  const { payment, rows } = loanSchedule(30_000, 3, 0.06, 1);

  test('30,000 at 6 % over 3 years pays 11,223.29 a year', () => near(payment, 11_223.29, printed(2)));
  test.each([
    [1, 1800, 20_576.71],
    [2, 1234.6, 10_588.01],
    [3, 635.28, 0],
  ])('year %d: interest %d, then owed %d', (year, interest, closing) => {
    const row = rows[year - 1] as number[];
    near(row[2] as number, interest, printed(2));
    near(row[4] as number, closing, printed(2));
  });
  test('6,000 at 10 % over 4 years pays 1,892.82', () => near(repayment(6000, 4, 0.1, 1).payment, 1892.82, printed(2)));
});

describe('cover of loan payments', () => {
  test('25,000 over 18,240.72 is 1.37: a public test suite (seen)', () => near(loanCover(25_000, 18_240.72).cover, 1.37, printed(2)));
  test('259,006 over 131,752 is 1.966: Langemeier 2023, a farm (seen)', () => near(loanCover(259_006, 131_752).cover, 1.966, printed(3)));
});

describe('traps seen in libraries', () => {
  test('−100, 10, 10, 10 returns −42.4 %, not infinity', () => near(internalRateOfFlows([-100, 10, 10, 10]), -0.424, printed(3)));
  test('1, −3, 4 has no root, and none is made up', () => expect(() => internalRateOfFlows([1, -3, 4])).toThrow('no rate'));
});
