import { describe, expect, test } from 'vitest';
import { caseChart } from '../../src/domain/case-chart.ts';
import { binomialLimits, poissonLimits, studentQuantile } from '../../src/domain/exact-limits.ts';
import { recordMonths, recordPower } from '../../src/domain/record-months.ts';
import { compareCases } from '../../src/domain/udder-records.ts';
import { near } from './near.ts';

describe('exact limits of a count, 95 % (Garwood 1936, memory)', () => {
  test.each([
    [14, 7.65, 23.49, 0.005, 'a calculator maker’s page, seen'],
    [25, 16.18, 36.9, 0.005, 'R package epitools, seen'],
    [10, 4.8, 18.39, 0.005, 'another calculator’s page, seen'],
    [1, 0.0253, 5.572, 5e-4, 'tables of exact limits, memory'],
    [2, 0.2422, 7.225, 5e-4, 'tables of exact limits, memory'],
    [100, 81.36, 121.63, 0.005, 'tables of exact limits, memory'],
  ])('%d events: %d to %d', (count, lowest, highest, within) => {
    const limits = poissonLimits(count, 0.95);
    near(limits.lowest, lowest, within);
    near(limits.highest, highest, within);
  });
  test('0 events: up to 3.689 (R package epitools, seen), which is −ln 0.025', () => {
    expect(poissonLimits(0, 0.95).lowest).toBe(0);
    near(poissonLimits(0, 0.95).highest, 3.689, 5e-4);
    near(poissonLimits(0, 0.95).highest, -Math.log(0.025), 1e-14);
  });
});

/** mpmath 1.3.0 at 30 digits: roots of gammainc(…, regularized=True); made for this test. */
describe('exact limits of a count against a library of any precision, to 1e-10', () => {
  test.each([
    [1, 0.5, 0.2876820724517809, 2.692634528889696],
    [1, 0.999, 0.0005001250416822979, 9.998677497623804],
    [5, 0.8, 2.432591025962665, 9.274673893351622],
    [14, 0.95, 7.653930276300598, 23.48962112183558],
    [25, 0.999, 11.73048543801777, 46.10539067595331],
    [1000, 0.999, 899.2086831191871, 1108.394021157005],
  ])('%d events at %d: %d to %d', (count, level, lowest, highest) => {
    const limits = poissonLimits(count, level);
    near(limits.lowest / lowest, 1, 1e-10);
    near(limits.highest / highest, 1, 1e-10);
  });
});

describe('exact limits of a share (Clopper and Pearson 1934)', () => {
  test('682 of 925: 0.7076683 to 0.7654066 (R, binom.test example, counts seen, limits from memory)', () => {
    const { lowest, highest } = binomialLimits(682, 925, 0.95);
    near(lowest, 0.7076683, 5e-8);
    near(highest, 0.7654066, 5e-8);
  });
  test('none of 10: up to 1 − 0.025^(1/10); all of 10 from 0.025^(1/10) (by hand)', () => {
    near(binomialLimits(0, 10, 0.95).highest, 1 - 0.025 ** 0.1, 1e-14);
    near(binomialLimits(10, 10, 0.95).lowest, 0.025 ** 0.1, 1e-14);
  });
});

/** mpmath 1.3.0 at 30 digits, by the incomplete beta function, not by our sum. The printed tables of any textbook agree. */
describe("Student's t, two-sided", () => {
  test.each([
    [0.95, 1, 12.7062047361747],
    [0.95, 2, 4.302652729749464],
    [0.95, 9, 2.262157162798206],
    [0.5, 3, 0.7648923284043453],
    [0.999, 1, 636.6192487687196],
    [0.999, 2, 31.59905457644362],
    [0.999, 30, 3.645958635042022],
    [0.99, 99, 2.626405457280828],
  ])('at %d with %d degrees of freedom: %d', (level, freedom, t) => near(studentQuantile(level, freedom) / t, 1, 1e-10));

  test('3 values, mean 37.8, s 0.964365: 35.40438 to 40.19562 (Miller and Miller, in a library’s documentation, seen)', () => {
    const reach = (studentQuantile(0.95, 2) * 0.964365) / Math.sqrt(3);
    near(37.8 - reach, 35.40438, 5e-6);
    near(37.8 + reach, 40.19562, 5e-6);
  });
});

describe('two records compared', () => {
  test('11 in 800 against 21 in 3,011: 1.971488, 0.8584264 to 4.2772659 (R, poisson.test, output in a validation file, seen)', () => {
    const { ratio, ratio_lowest, ratio_highest, p } = compareCases(21, 3011, 365, 11, 800, 365, 0.95);
    near(ratio as number, 1.971488, 5e-7);
    near(ratio_lowest as number, 0.8584264, 5e-8);
    near(ratio_highest as number, 4.2772659, 5e-8);
    // R's own 0.07967 adds up all counts no likelier than this one; twice the smaller tail is 0.11202 (computed).
    near(p as number, 0.11202, 5e-6);
  });
  test('2 in 17,877 against 9 in 16,660 is just not significant: p 0.0501 (R, rateratio.test, words seen, figure computed)', () => {
    const { p, verdict } = compareCases(9, 16_660, 365, 2, 17_877, 365, 0.95);
    near(p as number, 0.0501, 5e-5);
    expect(verdict).toBe('no difference shown');
  });
});

/** scipy 1.17.1: scipy.stats.poisson.pmf times scipy.stats.binom.sf, summed over all counts; made for this test. */
describe('months of records until a rise is seen', () => {
  test('the power of 10 cases and half as many again, and of 30 and twice as many', () => {
    near(recordPower(10, 0.5, 0.95), 0.11880896698521327, 1e-10);
    near(recordPower(30, 1, 0.9), 0.9265616035341976, 1e-10);
  });
  test.each([
    [0.2, 60],
    [0.5, 12],
    [1, 4],
  ])('260 cows, 34 cases per 100: a rise of %d takes %d months', (rise, months) => {
    expect(recordMonths(34, 260, rise, 0.8, 0.95).months).toBe(months);
  });
});

describe('control chart: NIST/SEMATECH e-Handbook 6.3.3.1, 25 wafers (seen in a dataset that cites it; counts from memory)', () => {
  const wafers = [16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13];
  const { centre, rows } = caseChart(
    wafers.map((cases) => ({ cases, cows: 100, days: 365 })),
    undefined,
    3,
  );
  test('centre 16, limits 4 and 28', () => {
    near(centre, 16, 1e-12);
    for (const [, , , lower, upper] of rows) expect([lower, upper]).toEqual([expect.closeTo(4, 12), expect.closeTo(28, 12)]);
  });
  test('wafer 24 is above, and no other: 28 on the limit is not outside it', () => {
    expect(rows.filter((row) => row[5] !== undefined).map(([period, , , , , signal]) => [period, signal])).toEqual([[24, 'above']]);
  });
});
