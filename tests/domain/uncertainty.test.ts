import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { netPresentValue } from '../../src/domain/investment.ts';
import { Refusal } from '../../src/domain/refusal.ts';
import { type Drivers, probability, sensitivity, triangularDraws } from '../../src/domain/uncertainty.ts';

const drivers: Drivers = {
  'kit cost': { low: 100_000, likely: 118_000, high: 150_000 },
  'bought price per t': { low: 130, likely: 165, high: 220 },
  'bought t per year': { low: 180, likely: 212, high: 230 },
  'running cost per year': { low: 18_000, likely: 21_000, high: 27_000 },
  'discount rate': { low: 0.05, likely: 0.08, high: 0.12 },
};
const certain = Object.fromEntries(
  Object.entries(drivers).map(([name, { likely }]) => [name, { low: likely, likely, high: likely }]),
) as unknown as Drivers;

describe('sensitivity', () => {
  test('starts from the net present value of the likeliest figures', () => {
    expect(sensitivity(drivers, 10, 0.02).npv_likely).toBeCloseTo(netPresentValue(118_000, 165 * 212 - 21_000, 10, 0.08, 0.02, 0).npv, 8);
  });

  test('moves one figure at a time', () => {
    const { rows } = sensitivity(drivers, 10, 0.02);
    const row = rows.find(([name]) => name === 'bought t per year');
    expect(row?.[1]).toBeCloseTo(netPresentValue(118_000, 165 * 180 - 21_000, 10, 0.08, 0.02, 0).npv, 8);
    expect(row?.[2]).toBeCloseTo(netPresentValue(118_000, 165 * 230 - 21_000, 10, 0.08, 0.02, 0).npv, 8);
    const rate = rows.find(([name]) => name === 'discount rate');
    expect(rate?.[2]).toBeCloseTo(netPresentValue(118_000, 165 * 212 - 21_000, 10, 0.12, 0.02, 0).npv, 8);
  });

  test('shows the largest swing first, and no swing for what is certain', () => {
    const swings = sensitivity(drivers, 10, 0.02).rows.map(([, , , swing]) => swing as number);
    expect(swings).toEqual(swings.toSorted((one, other) => other - one));
    expect(sensitivity(certain, 10, 0.02).rows.map(([, , , swing]) => swing)).toEqual([0, 0, 0, 0, 0]);
  });

  test('refuses a likeliest figure outside its low and high, naming the driver', () => {
    const wrong = { ...drivers, 'kit cost': { low: 120_000, likely: 118_000, high: 150_000 } };
    expect(() => sensitivity(wrong, 10, 0)).toThrow(Refusal);
    expect(() => probability(wrong, 10, 0, 100, 1)).toThrow(
      /^drivers: kit cost: 120,000; 118,000; 150,000 do not rise; enter low at most likely, and likely at most high$/,
    );
    const above = { ...drivers, 'discount rate': { low: 0.05, likely: 0.13, high: 0.12 } };
    expect(() => sensitivity(above, 10, 0)).toThrow(/^drivers: discount rate: 0.05; 0.13; 0.12 do not rise/);
  });
});

describe('probability', () => {
  const spread = drivers['kit cost'];

  test('the same seed gives the same answer, another seed nearly the same', () => {
    const [one, again, other] = [1, 1, 2].map((seed) => probability(drivers, 10, 0.02, 10_000, seed));
    expect(again).toEqual(one);
    expect(other?.mean).not.toBe(one?.mean);
    expect(Math.abs((other?.chance ?? 0) - (one?.chance ?? 1))).toBeLessThan(0.02);
  });

  test('with nothing uncertain every plan is the same plan', () => {
    const { npv } = netPresentValue(118_000, 165 * 212 - 21_000, 10, 0.08, 0.02, 0);
    const { chance, mean, p10, median, p90 } = probability(certain, 10, 0.02, 1000, 1);
    for (const value of [mean, p10, median, p90]) expect(value).toBeCloseTo(npv, 6);
    expect(chance).toBe(0);
  });

  test('a plan that just breaks even is not counted as paying', () => {
    const sure = (value: number) => ({ low: value, likely: value, high: value });
    const at = (price_per_t: number): Drivers => ({
      'kit cost': sure(1000),
      'bought price per t': sure(price_per_t),
      'bought t per year': sure(12),
      'running cost per year': sure(200),
      'discount rate': sure(0),
    });
    expect(probability(at(100), 1, 0, 100, 1)).toMatchObject({ mean: 0, chance: 0 });
    expect(probability(at(101), 1, 0, 100, 1)).toMatchObject({ mean: 12, chance: 1 });
  });

  test('is shown line by line with its unit', () => {
    const { chance, mean, p10, median, p90, rows } = probability(drivers, 10, 0.02, 1000, 1);
    expect(rows).toEqual([
      ['chance NPV above 0', chance, 'fraction'],
      ['mean', mean, 'money'],
      ['10th percentile', p10, 'money'],
      ['median', median, 'money'],
      ['90th percentile', p90, 'money'],
    ]);
  });

  test('the discount rate stays at its likeliest', () => {
    const sure = { ...drivers, 'discount rate': certain['discount rate'] };
    expect(probability(drivers, 10, 0.02, 1000, 1)).toEqual(probability(sure, 10, 0.02, 1000, 1));
  });

  test('every slice of a figure is drawn from exactly once', () => {
    const { low, likely, high } = spread;
    const n = 1000;
    const chanceBelow = (x: number) =>
      x < likely ? (x - low) ** 2 / ((high - low) * (likely - low)) : 1 - (high - x) ** 2 / ((high - low) * (high - likely));
    const drawn = triangularDraws(spread, n, xoroshiro128plus(3));
    expect(Math.min(...drawn)).toBeGreaterThanOrEqual(low);
    expect(Math.max(...drawn)).toBeLessThanOrEqual(high);
    const slices = Array.from(drawn, (x) => Math.floor(chanceBelow(x) * n));
    const met = new Set(slices.map((slice) => Math.min(slice, n - 1)));
    // A draw at the very edge of its slice may land in the next by rounding.
    expect(met.size).toBeGreaterThanOrEqual(n - 2);
  });

  test('two figures are drawn independently of each other', () => {
    const n = 10_000;
    const random = xoroshiro128plus(5);
    const [one, other] = [triangularDraws(spread, n, random), triangularDraws(spread, n, random)];
    const mean = one.reduce((sum, x) => sum + x, 0) / n;
    let [both, own] = [0, 0];
    one.forEach((x, k) => {
      both += (x - mean) * ((other[k] as number) - mean);
      own += (x - mean) ** 2;
    });
    // Four standard errors of a correlation of 0.
    expect(Math.abs(both / own)).toBeLessThan(4 / Math.sqrt(n));
  });

  test('percentiles rise, and the mean lies between the outer ones', () => {
    const { mean, p10, median, p90 } = probability(drivers, 10, 0.02, 10_000, 1);
    expect([p10, median, p90]).toEqual([p10, median, p90].toSorted((one, other) => one - other));
    expect(mean).toBeGreaterThan(p10);
    expect(mean).toBeLessThan(p90);
  });
});
