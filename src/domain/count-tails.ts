/**
 * Chances of counts, exact to the last few bits far into the tails: every tail is a sum of positive terms that starts at the
 * count asked for and falls from there, so nothing cancels.
 *
 * Single terms by C. Loader 2000, "Fast and accurate computation of binomial probabilities": logarithms of factorials would
 * lose as many digits as the count is long.
 */

/** What Stirling's formula leaves out: log(n!) - log(sqrt(2π·n)·(n/e)^n). DLMF 5.11.1 from 16 up. */
function stirlingError(n: number): number {
  if (n < 16) {
    let factorial = 1;
    for (let k = 2; k <= n; k++) factorial *= k;
    return Math.log(factorial / Math.sqrt(2 * Math.PI * n)) + n - n * Math.log(n);
  }
  const square = n * n;
  return (1 / 12 - (1 / 360 - (1 / 1260 - (1 / 1680 - 1 / 1188 / square) / square) / square) / square) / n;
}

/** count·log(count / mean) + mean - count, Loader's deviance: by its series where the two are near and digits would cancel. */
function deviance(count: number, mean: number): number {
  const apart = count - mean;
  const both = count + mean;
  if (Math.abs(apart) >= 0.1 * both) return count * Math.log(count / mean) - apart;
  const ratio = apart / both;
  let term = 2 * count * ratio;
  let sum = apart * ratio;
  for (let k = 3; ; k += 2) {
    term *= ratio * ratio;
    const next = sum + term / k;
    if (next === sum) return sum;
    sum = next;
  }
}

/** Chance of just `count` events where `mean` are expected: mean^count·e^-mean / count!. */
export function poissonChance(count: number, mean: number): number {
  if (mean === 0) return count === 0 ? 1 : 0;
  if (count === 0) return Math.exp(-mean);
  return Math.exp(-stirlingError(count) - deviance(count, mean)) / Math.sqrt(2 * Math.PI * count);
}

/** Chance of just `count` of `of`, each with chance `each`. */
export function binomialChance(count: number, of: number, each: number): number {
  if (count < 0 || count > of) return 0;
  if (each === 0 || each === 1) return count === of * each ? 1 : 0;
  if (count === 0) return Math.exp(of * Math.log1p(-each));
  if (count === of) return Math.exp(of * Math.log(each));
  const rest = of - count;
  const stirling = stirlingError(of) - stirlingError(count) - stirlingError(rest);
  const log = stirling - deviance(count, of * each) - deviance(rest, of * (1 - each));
  return Math.exp(log) * Math.sqrt(of / (2 * Math.PI * count * rest));
}

/** A term and all that follow it, each `ratio(k)` times the one before, until they add nothing; the terms must fall. */
function tailFrom(first: number, ratio: (k: number) => number): number {
  let term = first;
  let sum = first;
  for (let k = 1; ; k++) {
    term *= ratio(k);
    const next = sum + term;
    if (!(next > sum)) return sum;
    sum = next;
  }
}

/** Chance of `count` events or more where `mean` are expected: the regularised gamma function P(count, mean), DLMF 8.7.1. */
export function poissonAtLeast(count: number, mean: number): number {
  if (count <= 0) return 1;
  if (count <= mean) return 1 - poissonAtMost(count - 1, mean);
  return tailFrom(poissonChance(count, mean), (k) => mean / (count + k));
}

/** Chance of `count` events or fewer where `mean` are expected: the regularised gamma function Q(count + 1, mean), DLMF 8.4.10. */
export function poissonAtMost(count: number, mean: number): number {
  if (count < 0) return 0;
  if (mean === 0) return 1;
  if (count > mean) return 1 - poissonAtLeast(count + 1, mean);
  return tailFrom(poissonChance(count, mean), (k) => (count - k + 1) / mean);
}

/** Chance of `count` or more of `of`, each with chance `each`: the regularised beta function, DLMF 8.17.5. */
export function binomialAtLeast(count: number, of: number, each: number): number {
  if (count <= 0) return 1;
  if (count > of || each === 0) return 0;
  if (count <= of * each) return 1 - binomialAtMost(count - 1, of, each);
  const odds = each / (1 - each);
  return tailFrom(binomialChance(count, of, each), (k) => (odds * (of - count - k + 1)) / (count + k));
}

/** Chance of `count` or fewer of `of`, each with chance `each`. */
export function binomialAtMost(count: number, of: number, each: number): number {
  if (count < 0) return 0;
  if (count >= of || each === 0) return 1;
  if (count > of * each) return 1 - binomialAtLeast(count + 1, of, each);
  const odds = (1 - each) / each;
  return tailFrom(binomialChance(count, of, each), (k) => (odds * (count - k + 1)) / (of - count + k));
}
