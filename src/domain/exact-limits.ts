import { crossing } from './bisection.ts';
import { binomialAtLeast, binomialAtMost, poissonAtLeast, poissonAtMost } from './count-tails.ts';

/** Lowest and highest value that a count still allows, each with (1 - level) / 2 of chance beyond it. */
export interface Limits {
  readonly lowest: number;
  readonly highest: number;
}

/**
 * Exact limits of the number of events to expect, from a count of them.
 *
 * P(count or more | lowest) = (1 - level) / 2, lowest 0 at a count of 0; P(count or fewer | highest) = (1 - level) / 2
 *
 * Garwood 1936; the same as χ²((1 - level)/2; 2·count)/2 and χ²((1 + level)/2; 2·count + 2)/2. They cover the truth at least
 * as often as `level` says, with few events more often.
 *
 * @param level from 0.5 to below 1
 */
export function poissonLimits(count: number, level: number): Limits {
  const beyond = (1 - level) / 2;
  const lowest = count === 0 ? 0 : crossing((mean) => poissonAtLeast(count, mean) - beyond, 0, count);
  // Ten standard deviations and more: beyond it lies less chance than any level asks about.
  const highest = crossing((mean) => poissonAtMost(count, mean) - beyond, count, count + 12 * Math.sqrt(count + 1) + 50);
  return { lowest: lowest as number, highest: highest as number };
}

/**
 * Exact limits of a share, from a count of those that have it.
 *
 * P(count or more of `of` | lowest) = (1 - level) / 2, lowest 0 at a count of 0; the highest likewise, 1 where all have it
 *
 * Clopper and Pearson 1934.
 *
 * @param level from 0.5 to below 1
 */
export function binomialLimits(count: number, of: number, level: number): Limits {
  const beyond = (1 - level) / 2;
  const share = count / of;
  const lowest = count === 0 ? 0 : crossing((each) => binomialAtLeast(count, of, each) - beyond, 0, share);
  const highest = count === of ? 1 : crossing((each) => binomialAtMost(count, of, each) - beyond, share, 1);
  return { lowest: lowest as number, highest: highest as number };
}

/** Chance that Student's t with `freedom` degrees lies between -t and t: a finite sum, Abramowitz and Stegun 26.7.3 and 26.7.4. */
export function studentWithin(t: number, freedom: number): number {
  const angle = Math.atan(t / Math.sqrt(freedom));
  const cosine = Math.cos(angle);
  const odd = freedom % 2 === 1;
  let term = odd ? cosine : 1;
  let sum = freedom === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k < freedom; k += 2) {
    term *= ((k - 1) / k) * cosine * cosine;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (angle + Math.sin(angle) * sum) : Math.sin(angle) * sum;
}

/**
 * The t that a two-sided interval at this level takes, with `freedom` degrees of freedom.
 *
 * @param level from 0.5 to 0.999
 */
export const studentQuantile = (level: number, freedom: number): number =>
  crossing((t) => studentWithin(t, freedom) - level, 0, 1000) as number;
