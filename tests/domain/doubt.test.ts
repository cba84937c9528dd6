import { describe, expect, it } from 'vitest';
import { doubtFrom } from '../../src/domain/doubt.ts';
import { drawSpreads } from '../../src/domain/uncertainty.ts';
import { thrownBy } from './thrown-by.ts';

/** A triangular spread as wide as its middle is high serves as a source of numbers spread evenly between 0 and 1. */
function evenly(columns: number, draws: number, seed: number): readonly (readonly number[])[] {
  const spread = { low: 0, likely: 0.5, high: 1 };
  const cumulative = (x: number) => (x < 0.5 ? 2 * x * x : 1 - 2 * (1 - x) ** 2);
  return drawSpreads(
    Array.from({ length: columns }, () => spread),
    draws,
    seed,
  ).map((column) => column.map(cumulative));
}

const normalTail = (x: number): number => {
  // Abramowitz and Stegun 7.1.26, good to 1.5e-7.
  const t = 1 / (1 + 0.3275911 * (Math.abs(x) / Math.SQRT2));
  const polynomial = ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) * t;
  const half = 0.5 * polynomial * Math.exp((-x * x) / 2);
  return x > 0 ? half : 1 - half;
};
const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);

/** Two even numbers make two normal ones: Box and Muller 1958. */
const normal = ([one = [], other = []]: readonly (readonly number[])[]): readonly number[] =>
  one.map((u, k) => Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * (other[k] as number)));

describe('the share of doubt', () => {
  // Ishigami function with a 7, b 0.1: published first-order shares, in the documentation of two sensitivity libraries (seen).
  it.each([
    [0, 0.3139],
    [1, 0.4424],
    [2, 0],
  ])('of the Ishigami function’s input %i is the published one', (input, share) => {
    const draws = 20_000;
    const columns = evenly(3, draws, 5).map((column) => column.map((u) => Math.PI * (2 * u - 1)));
    const [x1 = [], x2 = [], x3 = []] = columns;
    const results = x1.map((a, k) => Math.sin(a) + 7 * Math.sin(x2[k] as number) ** 2 + 0.1 * (x3[k] as number) ** 4 * Math.sin(a));
    expect(Math.abs(doubtFrom(columns[input] as readonly number[], results).share - share)).toBeLessThan(0.015);
  });

  // 25 bins and 2,000 draws: 0.312 ± 0.012, 0.437 ± 0.014, 0.002 ± 0.003, simulated apart from this code.
  it('is told from 2,000 draws to about 0.02', () => {
    const columns = evenly(3, 2000, 3).map((column) => column.map((u) => Math.PI * (2 * u - 1)));
    const [x1 = [], x2 = [], x3 = []] = columns;
    const results = x1.map((a, k) => Math.sin(a) + 7 * Math.sin(x2[k] as number) ** 2 + 0.1 * (x3[k] as number) ** 4 * Math.sin(a));
    const shares = columns.map((column) => doubtFrom(column, results).share);
    for (const [k, share] of [0.312, 0.437, 0.002].entries()) expect(Math.abs((shares[k] as number) - share)).toBeLessThan(0.045);
  });

  it('of what a result does not hang on is next to nothing, and so is what knowing it is worth', () => {
    const [one = [], other = []] = evenly(2, 4000, 9);
    const { share, worth_knowing } = doubtFrom(
      other,
      one.map((u) => 1000 * (u - 0.5)),
    );
    expect(share).toBeLessThan(0.01);
    expect(worth_knowing).toBeLessThan(15);
  });

  it('has none where nothing varies, or too few draws have an answer', () => {
    const drawn = Array.from({ length: 200 }, (_, k) => k);
    const alike = drawn.map(() => 7);
    expect(thrownBy(() => doubtFrom(drawn, alike))).toMatchObject({ message: expect.stringContaining('the same in every draw') });
    const few = drawn.slice(0, 40);
    expect(thrownBy(() => doubtFrom(few, few))).toMatchObject({ message: expect.stringContaining('only 40 draws') });
  });
});

describe('what knowing a figure is worth', () => {
  // Perfect information on a normal figure, a textbook formula (memory): s·φ(m/s) − |m|·Φ(−|m|/s).
  it.each([
    [30_000, 0, 11_968],
    [30_000, 5_000, 9_634],
    [30_000, -20_000, undefined],
  ])('comes near the normal formula for a spread of %i about %i', (spread, mean, published) => {
    const expected = spread * density(mean / spread) - Math.abs(mean) * normalTail(Math.abs(mean) / spread);
    if (published) expect(expected).toBeCloseTo(published, -1);
    const drawn = normal(evenly(2, 40_000, 11));
    const results = drawn.map((x) => mean + spread * x);
    expect(Math.abs(doubtFrom(drawn, results).worth_knowing - expected)).toBeLessThan(0.03 * spread * density(0));
  });
});
