import { NoAnswer } from './refusal.ts';
import { said } from './spell.ts';

/** Beyond it a rate is -1 to the last bit: nothing to speak of comes back. */
const LARGEST_DISCOUNT = 1e16;

/** Σ coefficients[k]·x**k. */
function valueAt(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * x + (coefficients[k] as number);
  return sum;
}

/**
 * The root between two places in 0 to 1 where the value has unlike signs, or undefined where it has not: Newton's steps from
 * `high`, halving the bracket instead whenever a step would leave it or is more than half as long as the last.
 */
function rootWithin(coefficients: readonly number[], low: number, high: number): number | undefined {
  const atLow = valueAt(coefficients, low);
  const atHigh = valueAt(coefficients, high);
  if (atLow === 0) return low;
  if (atHigh !== 0 && atHigh < 0 === atLow < 0) return undefined;
  let x = high;
  let last = high - low;
  for (;;) {
    let value = 0;
    let slope = 0;
    for (let k = coefficients.length - 1; k >= 0; k--) {
      slope = slope * x + value;
      value = value * x + (coefficients[k] as number);
    }
    if (value < 0 === atLow < 0) low = x;
    else high = x;
    const aimed = x - value / slope;
    const quick = Math.abs(aimed - x) <= last / 2 && aimed >= low && aimed <= high;
    const next = quick ? aimed : low + (high - low) / 2;
    last = Math.abs(next - x);
    if (!(last > Number.EPSILON * x)) return next;
    x = next;
  }
}

/** The same between any two places above 0. Beyond 1 it is solved for 1/x, so that no power can overflow. */
function rootBetween(coefficients: readonly number[], low: number, high: number): number | undefined {
  if (high <= 1) return rootWithin(coefficients, low, high);
  if (low < 1) return rootWithin(coefficients, low, 1) ?? rootBetween(coefficients, 1, high);
  const inverse = rootWithin(coefficients.toReversed(), 1 / high, 1 / low);
  return inverse && 1 / inverse;
}

/**
 * Every positive root of Σ coefficients[k]·x**k, ascending.
 *
 * By Descartes' rule there is none without a change of sign among the coefficients, and one with one. Otherwise multiply
 * coefficient k by k - m, with m just before the first change: that is x times the derivative after division by x**m. It
 * has one change of sign fewer, and between two roots of the first there is one of the second, so those part all the roots
 * to be found. All lie within Cauchy's bounds, here widened a little: a long level series comes within rounding of them. A root where
 * the value only touches zero may be missed.
 */
function positiveRoots(coefficients: readonly number[]): number[] {
  const first = coefficients.find((coefficient) => coefficient !== 0) ?? 0;
  const last = coefficients.findLast((coefficient) => coefficient !== 0) ?? 0;
  const change = coefficients.findIndex((coefficient) => coefficient * first < 0);
  if (change < 0) return [];
  const largest = coefficients.reduce((size, coefficient) => Math.max(size, Math.abs(coefficient)), 0);
  const changesBack = coefficients.some((coefficient, k) => k > change && coefficient * first > 0);
  const turns = changesBack ? positiveRoots(coefficients.map((coefficient, k) => (k - change + 0.5) * coefficient)) : [];
  const roots: number[] = [];
  let low = 1 / (2 + largest / Math.abs(first));
  for (const high of [...turns, Math.min(2 + largest / Math.abs(last), LARGEST_DISCOUNT)]) {
    const root = rootBetween(coefficients, low, high);
    // Where the value only touches zero half the digits are sure: two roots that near are one.
    if (root !== undefined && root - (roots.at(-1) ?? 0) > 1e-7 * root) roots.push(root);
    low = high;
  }
  return roots;
}

/**
 * The rate at which flows at the end of years 0, 1, 2 … are worth nothing today.
 *
 * Σ flows[k] / (1 + rate) ** k = 0, rate above -1
 *
 * Solved for 1 / (1 + rate) by bracketing every root, so negative rates are found too, and where there is no
 * rate or more than one it says so instead of giving the nearest guess.
 *
 * @param flows money received, negative where paid
 */
export function internalRateOfFlows(flows: readonly number[]): number {
  const rates = positiveRoots(flows).map((discount) => 1 / discount - 1);
  if (rates.length > 1) {
    const found = rates.reverse().map((rate) => `${(Math.round(1000 * rate) / 10).toFixed(1)}%`);
    throw new NoAnswer(said`there is more than one rate at which it breaks even: ${found.join(', ')}; use NPV instead`);
  }
  const [rate] = rates;
  if (rate === undefined) throw new NoAnswer('no rate makes what comes back worth what was paid');
  return rate;
}
