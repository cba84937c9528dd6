import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  binomialAtLeast,
  binomialAtMost,
  binomialChance,
  poissonAtLeast,
  poissonAtMost,
  poissonChance,
} from '../../src/domain/count-tails.ts';

/**
 * How we know: the same chances summed term by term in whole numbers of any length (BigInt), with no logarithm, no series for
 * the factorial and nothing rounded but the last step. It shares no line with the code it checks.
 */
const DIGITS = 10n ** 60n;
const ratioOf = (part: bigint, whole: bigint): number => Number((part * DIGITS * DIGITS) / whole) / Number(DIGITS) / Number(DIGITS);

/** Terms mean^k / k! for a mean of so many hundredths, until they are nothing. */
function poissonTerms(hundredths: number): bigint[] {
  const terms = [10n ** 400n];
  for (let k = 1n; terms.at(-1) !== 0n; k++) terms.push(((terms.at(-1) as bigint) * BigInt(hundredths)) / (100n * k));
  return terms;
}
const sum = (terms: readonly bigint[]) => terms.reduce((total, term) => total + term, 0n);

/** Terms of (part + rest)^of. */
function binomialTerms(of: number, part: bigint, rest: bigint): bigint[] {
  let choose = 1n;
  return Array.from({ length: of + 1 }, (_, k) => {
    const term = choose * part ** BigInt(k) * rest ** BigInt(of - k);
    choose = (choose * BigInt(of - k)) / BigInt(k + 1);
    return term;
  });
}

const agree = (found: number, exact: number) => {
  if (exact > 1e-100) expect(Math.abs(found / exact - 1)).toBeLessThan(1e-12);
};

describe('chances of counts against exact sums, to 1e-12 of the chance itself, far into the tails', () => {
  test.each([5, 100, 365, 1449, 20_000, 150_000])('Poisson, mean %d hundredths', (hundredths) => {
    const terms = poissonTerms(hundredths);
    const all = sum(terms);
    const mean = hundredths / 100;
    const spread = Math.ceil(Math.sqrt(mean)) + 1;
    for (const sds of [-12, -7, -4, -2, -1, 0, 1, 2, 4, 7, 12]) {
      const count = Math.max(0, Math.round(mean + sds * spread));
      if (count >= terms.length) continue;
      agree(poissonChance(count, mean), ratioOf(terms[count] as bigint, all));
      agree(poissonAtMost(count, mean), ratioOf(sum(terms.slice(0, count + 1)), all));
      agree(poissonAtLeast(count, mean), ratioOf(sum(terms.slice(count)), all));
    }
  });

  test.each([
    [1, 1n, 2n],
    [10, 1n, 2n],
    [32, 800n, 3811n],
    [925, 7n, 10n],
    [1500, 1n, 1000n],
    [3000, 1n, 2n],
    [3000, 12n, 22n],
  ])('binomial, of %d', (of, part, whole) => {
    const terms = binomialTerms(of, part, whole - part);
    const all = whole ** BigInt(of);
    const each = Number(part) / Number(whole);
    const spread = Math.sqrt(of * each * (1 - each)) + 1;
    for (const sds of [-9, -6, -4, -2, -1, 0, 1, 2, 4, 6, 9]) {
      const count = Math.min(of, Math.max(0, Math.round(of * each + sds * spread)));
      agree(binomialChance(count, of, each), ratioOf(terms[count] as bigint, all));
      agree(binomialAtMost(count, of, each), ratioOf(sum(terms.slice(0, count + 1)), all));
      agree(binomialAtLeast(count, of, each), ratioOf(sum(terms.slice(count)), all));
    }
  });
});

/** mpmath 1.3.0 at 40 digits, gammainc(…, regularized=True); made for this test, printed to 16 digits. */
describe('counts too large to sum in a test, against a library of any precision', () => {
  test.each([
    [100_000, 99_000, 0.99925079969167, 0.000757419921174768],
    [999_999, 1_003_000, 0.0013617406462175915, 0.9986427178028013],
    [3, 100, 6.389887702238216e-39, 1],
    [200, 50.5, 1, 9.01436302304595e-57],
  ])('%d where %d are expected', (count, mean, atMost, atLeast) => {
    expect(Math.abs(poissonAtMost(count, mean) / atMost - 1)).toBeLessThan(1e-10);
    expect(Math.abs(poissonAtLeast(count, mean) / atLeast - 1)).toBeLessThan(1e-10);
  });
});

describe('chances of counts', () => {
  const count = fc.integer({ min: 0, max: 3000 });

  test('at most and at least make one, the shared count taken twice', () => {
    fc.assert(
      fc.property(count, fc.double({ min: 0, max: 3000, noNaN: true }), (events, mean) => {
        expect(poissonAtMost(events, mean) + poissonAtLeast(events + 1, mean)).toBeCloseTo(1, 12);
      }),
    );
    fc.assert(
      fc.property(count, count, fc.double({ min: 0, max: 1, noNaN: true }), (events, of, each) => {
        expect(binomialAtMost(events, of, each) + binomialAtLeast(events + 1, of, each)).toBeCloseTo(1, 12);
      }),
    );
  });

  test('with nothing expected, or with chances of none and one, are certain', () => {
    expect([poissonAtMost(0, 0), poissonAtLeast(1, 0), poissonChance(0, 0), poissonChance(2, 0)]).toEqual([1, 0, 1, 0]);
    expect([binomialChance(0, 4, 0), binomialChance(4, 4, 1), binomialChance(1, 4, 0), binomialChance(5, 4, 0.5)]).toEqual([1, 1, 0, 0]);
    expect([binomialAtLeast(1, 4, 0), binomialAtLeast(4, 4, 1), binomialAtMost(3, 4, 1)]).toEqual([0, 1, 0]);
  });
});
