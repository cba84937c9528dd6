import { binomialAtLeast, binomialAtMost } from './count-tails.ts';
import { binomialLimits, poissonLimits } from './exact-limits.ts';
import { type Answer, NoAnswer } from './refusal.ts';
import { spell } from './spell.ts';
import { caseRate } from './udder-health.ts';

/**
 * Clinical cases per 100 cows per year with the exact interval that the count leaves open.
 *
 * rate = 36500 * cases / (cows * days), and the same of poissonLimits(cases, level)
 *
 * Garwood 1936. Holds where cases come one by one and by chance: repeat cases in a cow and outbreaks make the true interval wider.
 *
 * @param cases clinical cases recorded, whole
 * @param cows cows in the herd, on average over that time
 * @param days days that the record covers
 * @param level how often such an interval holds the true rate, 0.5 to 0.999
 */
export function caseInterval(cases: number, cows: number, days: number, level: number) {
  const { cow_years, cases_per_100: rate } = caseRate(cases, cows, days);
  const { lowest: cases_lowest, highest: cases_highest } = poissonLimits(cases, level);
  const lowest = (100 * cases_lowest) / cow_years;
  const highest = (100 * cases_highest) / cow_years;
  const rows = Object.entries({ rate, lowest, highest }).map(([key, value]) => [key, value, 'per 100 cows/year']);
  return { cow_years, cases_lowest, cases_highest, rate, lowest, highest, rows };
}

const WITH_CARE = 'compare the same months of the year, and take no change for its cause';

const perCent = (share: number): string => `${spell(Number((100 * Math.abs(share)).toPrecision(2)))}%`;

/** Whether an interval of ratios leaves 1 out, and how large a rise it could still hide. */
function verdictOf(lowest: number, highest: number): readonly [verdict: string, sentence: string] {
  if (highest < 1) return ['fewer', `at least ${perCent(1 - highest)} fewer; ${WITH_CARE}`];
  const most = highest === Number.POSITIVE_INFINITY ? 'no limit can be given to it' : `it may be as much as ${perCent(highest - 1)}`;
  if (lowest > 1) return ['more', `at least ${perCent(lowest - 1)} more, and ${most}; ${WITH_CARE}`];
  return ['no difference shown', `a rise could still hide in these records: ${most}; ${WITH_CARE}`];
}

/**
 * Whether the rate of clinical cases changed between two records, and by how much at least and at most.
 *
 * Given all cases of both, those after are binomial with share ρ·t₂ / (t₁ + ρ·t₂), t being cows * days and ρ the ratio of the
 * rates; binomialLimits of that share, turned back to ρ. p is twice the smaller tail at ρ = 1, at most 1: it agrees with the
 * interval, as in R's rateratio.test (Fay 2010); R's poisson.test takes another p.
 *
 * Exact, Clopper and Pearson 1934. Holds where cases come one by one and by chance, see caseInterval.
 *
 * @param level how often such an interval holds the true ratio, 0.5 to 0.999
 */
export function compareCases(
  cases_before: number,
  cows_before: number,
  days_before: number,
  cases_after: number,
  cows_after: number,
  days_after: number,
  level: number,
) {
  const rate_before = caseRate(cases_before, cows_before, days_before).cases_per_100;
  const rate_after = caseRate(cases_after, cows_after, days_after).cases_per_100;
  const before = cows_before * days_before;
  const after = cows_after * days_after;
  const cases = cases_before + cases_after;
  const share_if_same = after / (before + after);
  const none = new NoAnswer('no case on record, neither before nor after: there is nothing to compare');
  const endless = new NoAnswer('no case before: however many times the rate rose, no limit can be given');
  const compare = () => {
    const share = binomialLimits(cases_after, cases, level);
    const ratioAt = (each: number): number => ((each / (1 - each)) * before) / after;
    const [ratio_lowest, highest] = [ratioAt(share.lowest), ratioAt(share.highest)];
    const tail = Math.min(binomialAtMost(cases_after, cases, share_if_same), binomialAtLeast(cases_after, cases, share_if_same));
    const [verdict, sentence] = verdictOf(ratio_lowest, highest);
    const finite = (ratio: number): Answer => (cases_before === 0 ? endless : ratio);
    return {
      share_lowest: share.lowest,
      share_highest: share.highest,
      ratio: finite(rate_after / rate_before),
      ratio_lowest,
      ratio_highest: finite(highest),
      p: Math.min(1, 2 * tail),
      verdict,
      sentence,
    };
  };
  const nothing = { share_lowest: none, share_highest: none, ratio: none, ratio_lowest: none, ratio_highest: none, p: none, verdict: none };
  const compared = cases === 0 ? { ...nothing, sentence: WITH_CARE } : compare();
  const { ratio, ratio_lowest, ratio_highest, p, verdict, sentence } = compared;
  const rows: Answer[][] = [
    ['rate before', rate_before, 'per 100 cows/year'],
    ['rate after', rate_after, 'per 100 cows/year'],
    ['ratio', ratio, 'times'],
    ['ratio lowest', ratio_lowest, 'times'],
    ['ratio highest', ratio_highest, 'times'],
    ['p', p, 'fraction'],
    ['verdict', verdict, sentence],
  ];
  const { sentence: _, ...steps } = compared;
  return { rate_before, rate_after, share_if_same, ...steps, rows };
}
