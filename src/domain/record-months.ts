import { binomialAtLeast, binomialChance, poissonChance } from './count-tails.ts';
import { NoAnswer } from './refusal.ts';
import { said } from './spell.ts';

/** Longer than this no farm keeps its records alike. */
const MOST_MONTHS = 240;

/** The chance of `count` or more of `of`, and of just `count`: what the next toss is worked out from. */
interface Tail {
  readonly least: number;
  readonly just: number;
}

const tailAt = (count: number, of: number, each: number): Tail => ({
  least: binomialAtLeast(count, of, each),
  just: binomialChance(count, of, each),
});

/** One toss more, the same count. */
const tossed = ({ least, just }: Tail, count: number, of: number, each: number): Tail => ({
  least: least + just * (count / (of - count + 1)) * (1 - each),
  just: (just * (of + 1) * (1 - each)) / (of + 1 - count),
});

/** One count more, the same tosses. */
const counted = ({ least, just }: Tail, count: number, of: number, each: number): Tail => ({
  least: least - just,
  just: (just * (of - count) * each) / ((count + 1) * (1 - each)),
});

/**
 * For `from` cases in both records together, then one more each time: the chance that so many of them fall after that COMPARE
 * says 'more', when each falls there with chance `after`. So many are the smallest count that even chances would reach with
 * `beyond` or less. Each tail follows from the one before, so that a table of thousands costs a few sums a line.
 */
function* chancesOfMore(from: number, after: number, beyond: number): Generator<number, never> {
  const enough = beyond * (1 + 1e-9);
  let of = from;
  // Too few for any split of them to be unlikely.
  for (; 0.5 ** of > enough; of++) yield 0;
  let [below, count] = [Math.floor(of / 2), of];
  while (count - below > 1) {
    const middle = Math.floor((below + count) / 2);
    if (binomialAtLeast(middle, of, 0.5) <= enough) count = middle;
    else below = middle;
  }
  let even = tailAt(count, of, 0.5);
  let truly = tailAt(count, of, after);
  for (;;) {
    yield Math.min(1, Math.max(0, truly.least));
    even = tossed(even, count, of, 0.5);
    truly = tossed(truly, count, of, after);
    of++;
    if (even.least <= enough) continue;
    even = counted(even, count, of, 0.5);
    truly = counted(truly, count, of, after);
    count++;
  }
}

/** The first count below `mean` that hardly ever comes. */
function fewest(mean: number): number {
  let count = Math.floor(mean);
  while (count > 0 && poissonChance(count, mean) > 1e-18) count -= Math.ceil(Math.sqrt(mean));
  return Math.max(0, count);
}

/** Powers of longer and longer records: the table of chances grows with them. */
function powerOf(rise: number, level: number, shortest_expected: number): (expected_before: number) => number {
  const from = fewest((2 + rise) * shortest_expected);
  const source = chancesOfMore(from, (1 + rise) / (2 + rise), (1 - level) / 2);
  const chances: number[] = [];
  const chanceOf = (cases: number): number => {
    while (chances.length <= cases - from) chances.push(source.next().value);
    return chances[cases - from] as number;
  };
  return (expected_before) => {
    const mean = (2 + rise) * expected_before;
    let cases = fewest(mean);
    let weight = poissonChance(cases, mean);
    let power = 0;
    for (; cases <= mean || weight > 1e-18; cases++) {
      power += weight * chanceOf(cases);
      weight *= mean / (cases + 1);
    }
    return power;
  };
}

/**
 * The chance that COMPARE at this level says 'more' of two records of the same length, the rate in the second truly being
 * 1 + rise times that in the first.
 *
 * power = Σ Poisson(n; (2 + rise)·expected_before)·P(Bin(n, (1 + rise)/(2 + rise)) ≥ c(n)),
 * c(n) the smallest count with P(Bin(n, ½) ≥ c) ≤ (1 - level)/2
 *
 * Exact: the number of all cases is Poisson, and given it those after are binomial.
 *
 * @param expected_before cases to expect in the first record
 */
export const recordPower = (expected_before: number, rise: number, level: number): number =>
  powerOf(rise, level, expected_before)(expected_before);

/**
 * Whole months of records, so many before and so many after a change, until COMPARE would say 'more' at this level with this
 * power if the rate truly rose so far: the first that reaches it. The power of whole counts rises by fits and starts, so every
 * month is tried. See recordPower.
 *
 * @param cases_per_100 clinical cases per 100 cows per year before the change
 * @param cows cows in the herd
 * @param rise true rise of the rate: 0.5 is half as many again
 * @param power chance of seeing it, fraction
 * @param level as for compareCases
 */
export function recordMonths(cases_per_100: number, cows: number, rise: number, power: number, level: number) {
  const cases_month = (cases_per_100 * cows) / 1200;
  const powerAfter = powerOf(rise, level, cases_month);
  for (let months = 1; months <= MOST_MONTHS; months++) {
    const expected_before = cases_month * months;
    const power_reached = powerAfter(expected_before);
    if (power_reached >= power) {
      return { cases_month, expected_before, expected_after: (1 + rise) * expected_before, power_reached, months };
    }
  }
  const years = MOST_MONTHS / 12;
  throw new NoAnswer(said`${years} years of records before and as many after would not show such a rise in so few cases`);
}
