import {
  type Bed,
  type Factor,
  type FactorFacts,
  factorFacts,
  growthRate,
  type Levels,
  levelsOf,
  type ScoreArguments,
  weightedIfGiven,
  weightIfGiven,
} from './hygiene-factors.ts';
import type { Material } from './materials.ts';
import { sourceName, withSourceNames } from './source-name.ts';

/** What every text that shows a score says with it. */
export const SCORE_CAUTION = 'planning aid, no diagnosis: talk to your vet. Its weights are judgement';

const sumOver = (levels: Levels, each: (facts: FactorFacts, f: number | undefined) => number): number =>
  factorFacts.reduce((sum, [factor, facts]) => sum + each(facts, levels[factor]), 0);

/**
 * Hygiene score of a cubicle bed, from 0 (best) to 100: the weighted mean of the factors given.
 *
 * score = 100 * sum(weight * f) / sum(weight)
 *
 * Weights and levels are this project's judgement (hygiene-factors.ts), not fitted to data: a planning aid, no diagnosis.
 * Factors not given are left out of both sums; scoreSpan tells what they could change. It never rises with dry matter and
 * always rises with the interval, all else the same.
 *
 * @param dm dry matter of the bedding as it is laid, fraction
 * @param interval_days days between beddings
 * @param material what the cows lie on
 * @param shed_c air in the shed, °C
 * @param dirty_udders cows whose udders score 3 or 4, fraction
 * @param bed deep bed or mattress
 * @param stocking cows per cubicle
 */
export function hygieneScore(
  dm: number,
  interval_days: number,
  material?: Material,
  shed_c?: number,
  dirty_udders?: number,
  bed?: Bed,
  stocking?: number,
) {
  const levels = levelsOf(dm, interval_days, material, shed_c, dirty_udders, bed, stocking);
  const weights = sumOver(levels, ({ weight }, f) => weightIfGiven(weight, f));
  const weighted = sumOver(levels, ({ weight }, f) => weightedIfGiven(weight, f));
  return {
    f_dm: levels.dm,
    growth_per_day: growthRate(dm),
    f_interval: levels.interval_days,
    f_material: levels.material,
    f_shed: levels.shed_c,
    f_udders: levels.dirty_udders,
    f_bed: levels.bed,
    f_stocking: levels.stocking,
    weights,
    weighted,
    score: (100 * weighted) / weights,
  };
}

export type Band = 'low' | 'moderate' | 'raised' | 'high';

/** Where one band ends and the next begins. Judgement. */
export const bandEdges = [25, 50, 75] as const;

/** The band of a score: low below 25, moderate below 50, raised below 75, else high. */
export function bandOf(score: number): Band {
  const [moderate, raised, high] = bandEdges;
  if (score < moderate) return 'low';
  if (score < raised) return 'moderate';
  return score < high ? 'raised' : 'high';
}

/** The band that a hygiene score falls in. See bandOf. */
export const scoreBand = (score: number) => ({ band: bandOf(score) });

/** The score with the weight of one factor multiplied, for who would weigh it otherwise. Without a factor: as it stands. */
export function scoreReweighted(given: ScoreArguments, changed: Factor | undefined, times: number): number {
  const { weights, weighted } = hygieneScore(...given);
  const f = changed && levelsOf(...given)[changed];
  const more = f === undefined ? 0 : (times - 1) * (factorFacts.find(([factor]) => factor === changed)?.[1].weight as number);
  return (100 * (weighted + more * (f ?? 0))) / (weights + more);
}

/** What a weight is multiplied by to see how much hangs on it. */
export const reweightings = [0.5, 2] as const;

/**
 * How far the score could move with the factors that were not given, each taken at its smallest and at its largest f; and how
 * far with those given, were any one weight halved or doubled.
 *
 * lowest = min(score, 100 * (weighted + best_of_rest) / all_weights)
 * highest = max(score, 100 * (weighted + worst_of_rest) / all_weights)
 *
 * The score itself always lies within: without the min and max a very good score from few factors could fall below what
 * it becomes when a factor that is never 0, such as the material, comes in. Arguments as for hygieneScore.
 */
export function scoreSpan(...given: ScoreArguments) {
  const { weighted, score } = hygieneScore(...given);
  const levels = levelsOf(...given);
  const all_weights = sumOver(levels, ({ weight }) => weight);
  const best_of_rest = sumOver(levels, ({ weight, best }, f) => (f === undefined ? weight * best : 0));
  const worst_of_rest = sumOver(levels, ({ weight, worst }, f) => (f === undefined ? weight * worst : 0));
  const lowest = Math.min(score, (100 * (weighted + best_of_rest)) / all_weights);
  const highest = Math.max(score, (100 * (weighted + worst_of_rest)) / all_weights);
  const reweighted = factorFacts.flatMap(([factor]) => reweightings.map((times) => scoreReweighted(given, factor, times)));
  const weights_lowest = Math.min(...reweighted);
  const weights_highest = Math.max(...reweighted);
  const named = { lowest, score, highest, 'weights lowest': weights_lowest, 'weights highest': weights_highest };
  const rows = Object.entries(named).map(([key, value]) => [key, value, bandOf(value)]);
  return { weighted, all_weights, best_of_rest, worst_of_rest, lowest, weights_lowest, weights_highest, highest, score, rows };
}

const signed = (points: number): string => {
  const tenths = Math.abs(points).toFixed(1);
  return tenths === '0.0' ? tenths : `${points < 0 ? '−' : '+'}${tenths}`;
};

const evidenceText = ({ evidence }: FactorFacts): string =>
  evidence.map(({ stands, says, source, status }) => `${stands}: ${withSourceNames(says)} (${sourceName(source)}, ${status})`).join('; ');

/**
 * What makes up the score, factor by factor, with the studies for and against each.
 *
 * points = 100 * weight * f / sum(weight), which add up to the score; share = weight * f / sum(weight * f)
 *
 * For a factor not given: by how much the score would move once it is, at the factor's smallest and largest f.
 * Arguments as for hygieneScore.
 */
export function scoreDrivers(...given: ScoreArguments) {
  const { weights, weighted, score } = hygieneScore(...given);
  const levels = levelsOf(...given);
  const rows = factorFacts.map(([factor, facts], k) => {
    const f = levels[factor];
    const { weight, best, worst, strength } = facts;
    const with_f = (level: number) => (100 * (weighted + weight * level)) / (weights + weight) - score;
    const found = f === undefined ? ['not given', undefined, undefined] : [given[k], (100 * weight * f) / weights, (weight * f) / weighted];
    const couldBring = f === undefined ? `score ${signed(with_f(best))} to ${signed(with_f(worst))}` : undefined;
    return [factor, ...found, evidenceText(facts), strength, couldBring];
  });
  return { weights, weighted, score, rows };
}
