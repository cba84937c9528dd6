import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, test } from 'vitest';
import { probability, triangularDraws } from '../../src/domain/uncertainty.ts';

/** A triangular spread of 10, 20, 50; any text on probability, computed. */
const spread = { low: 10, likely: 20, high: 50 };
const published = { mean: 80 / 3, variance: 650 / 9 };
const always = (value: number) => ({ low: value, likely: value, high: value });
const n = 10_000;

test('triangular 10, 20, 50 has mean 26.667 and variance 72.22', () => {
  const draws = triangularDraws(spread, n, xoroshiro128plus(7));
  const mean = draws.reduce((sum, value) => sum + value) / n;
  const variance = draws.reduce((sum, value) => sum + (value - mean) ** 2, 0) / n;
  // Four standard errors of plain random draws; slices cut it further. The fourth moment of a triangle is 2.4 variances².
  expect(Math.abs(mean - published.mean)).toBeLessThan(4 * Math.sqrt(published.variance / n));
  expect(Math.abs(variance - published.variance)).toBeLessThan(4 * published.variance * Math.sqrt(1.4 / n));
});

test('a plan that hangs on one such figure alone has the mean and percentiles of that triangle', () => {
  // NPV = 100 − kit cost: price 1, 100 t, one year without interest.
  const drivers = {
    'kit cost': spread,
    'bought price per t': always(1),
    'bought t per year': always(100),
    'running cost per year': always(0),
    'discount rate': always(0),
  };
  const { chance, mean, p10, median, p90 } = probability(drivers, 1, 0, n, 1);
  const error = 4 * Math.sqrt(published.variance / n);
  expect(chance).toBe(1);
  expect(Math.abs(mean - (100 - published.mean))).toBeLessThan(error);
  // Inverse of the distribution function at 0.9, 0.5 and 0.1 of kit cost, by hand; one slice wide at most where it is flattest.
  expect(p10).toBeCloseTo(100 - (50 - Math.sqrt(0.1 * 40 * 30)), 1);
  expect(median).toBeCloseTo(100 - (50 - Math.sqrt(0.5 * 40 * 30)), 1);
  expect(p90).toBeCloseTo(100 - (10 + Math.sqrt(0.1 * 40 * 10)), 1);
});

test('the chance is the share of the triangle that pays', () => {
  const drivers = {
    'kit cost': spread,
    'bought price per t': always(1),
    'bought t per year': always(20),
    'running cost per year': always(0),
    'discount rate': always(0),
  };
  // It pays where the kit costs less than its likeliest 20: (20 − 10) ÷ (50 − 10).
  expect(Math.abs(probability(drivers, 1, 0, n, 1).chance - 0.25)).toBeLessThanOrEqual(1 / n);
});
