import { crossing } from './bisection.ts';
import { NoAnswer } from './refusal.ts';
import { said } from './spell.ts';

/** Beyond it a rate is -1 to the last bit: nothing to speak of comes back. */
const largestDiscount = 1e16;

/** The value of Σ coefficients[k]·x**k, divided by x to the highest power where x is above 1 so that it cannot overflow. */
function scaledValue(coefficients: readonly number[], x: number): number {
  let sum = 0;
  if (x <= 1) for (let k = coefficients.length - 1; k >= 0; k--) sum = sum * x + (coefficients[k] as number);
  else for (const coefficient of coefficients) sum = sum / x + coefficient;
  return sum;
}

/**
 * Every positive root of Σ coefficients[k]·x**k, ascending.
 *
 * By Descartes' rule there is none without a change of sign among the coefficients. Otherwise multiply coefficient k by
 * k - m, with m just before the first change: that is x times the derivative after division by x**m. It has one change of
 * sign fewer, and between two roots of the first there is one of the second, so those part all the roots to be found.
 * All lie within Cauchy's bounds, here widened a little: a long level series comes within rounding of them. A root where
 * the value only touches zero may be missed.
 */
function positiveRoots(coefficients: readonly number[]): number[] {
  const given = coefficients.filter((coefficient) => coefficient !== 0);
  const [first = 0, last = 0] = [given[0], given.at(-1)];
  const change = coefficients.findIndex((coefficient) => coefficient * first < 0);
  if (change < 0) return [];
  const largest = Math.max(...given.map(Math.abs));
  const turns = positiveRoots(coefficients.map((coefficient, k) => (k - change + 0.5) * coefficient));
  const roots: number[] = [];
  let low = 1 / (2 + largest / Math.abs(first));
  for (const high of [...turns, Math.min(2 + largest / Math.abs(last), largestDiscount)]) {
    const root = crossing((x) => scaledValue(coefficients, x), low, high);
    if (root !== undefined && root !== roots.at(-1)) roots.push(root);
    low = high;
  }
  return roots;
}

/**
 * The rate at which flows at the end of years 0, 1, 2 … are worth nothing today.
 *
 * Σ flows[k] / (1 + rate) ** k = 0, rate above -1
 *
 * Solved for 1 / (1 + rate) by bracketing every root and halving, so negative rates are found too, and where there is no
 * rate or more than one it says so instead of giving the nearest guess.
 *
 * @param flows money received, negative where paid
 */
export function internalRateOfFlows(flows: readonly number[]): number {
  const rates = positiveRoots(flows).map((discount) => 1 / discount - 1);
  if (rates.length > 1) {
    const found = rates.reverse().map((rate) => `${(Math.round(1000 * rate) / 10 + 0).toFixed(1)}%`);
    throw new NoAnswer(said`there is more than one rate at which it breaks even: ${found.join(', ')}; use NPV instead`);
  }
  const [rate] = rates;
  if (rate === undefined) throw new NoAnswer('no rate makes what comes back worth what was paid');
  return rate;
}
