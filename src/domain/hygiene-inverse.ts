import { crossing } from './bisection.ts';
import { DRIEST_FIBRE } from './drying.ts';
import { bandOf, hygieneScore } from './hygiene.ts';
import type { Bed } from './hygiene-factors.ts';
import type { Material } from './materials.ts';
import { NoAnswer } from './refusal.ts';
import { said } from './spell.ts';

const SHORTEST_DAYS = 0.25;
const WETTEST = 0.15;
const DRIEST = 0.95;

const tenth = (score: number): string => `${score.toFixed(1)} (${bandOf(score)})`;

/**
 * The longest interval that growth studies reach: 2 days on organic bedding, 14 on sand and limestone; 2 where the material
 * is not given. Beyond it the score would be a guess.
 */
export const longestStudied = (material?: Material): number => (material === 'sand' || material === 'limestone' ? 14 : 2);

/**
 * The longest interval between beddings that keeps the score at or below a target.
 *
 * hygieneScore(dm, interval_days, ...).score == min(target_score, score_at_limit)
 *
 * Found by bisection from 0.25 days to the longest interval studied (longestStudied); the score rises with the interval, so
 * there is one answer or none. Arguments as for hygieneScore.
 *
 * @param target_score the score not to be passed, 0 to 100
 */
export function longestInterval(
  dm: number,
  target_score: number,
  material?: Material,
  shed_c?: number,
  dirty_udders?: number,
  bed?: Bed,
  stocking?: number,
) {
  const scoreAt = (days: number) => hygieneScore(dm, days, material, shed_c, dirty_udders, bed, stocking).score;
  const limit_days = longestStudied(material);
  const score_at_limit = scoreAt(limit_days);
  const best_score = scoreAt(SHORTEST_DAYS);
  if (best_score > target_score)
    throw new NoAnswer(
      said`even bedding every ${SHORTEST_DAYS} days the score is ${tenth(best_score)}, above the target; better the other factors`,
    );
  const interval_days = crossing((days) => scoreAt(days) - target_score, SHORTEST_DAYS, limit_days) ?? limit_days;
  return { limit_days, score_at_limit, best_score, interval_days, score: scoreAt(interval_days) };
}

/** Whether fibre can be made as dry as a dry matter asks, in words; undefined for a material that is not fibre, or none. */
export function fibreReach(dm: number, material?: Material): string | undefined {
  if (!material?.endsWith('fibre')) return undefined;
  if (dm > DRIEST_FIBRE) return 'above 0.80: no sorption data is held for fibre that dry, so do not count on drying it so far';
  if (material === 'fresh fibre' && dm > 0.38) return 'above the 0.34 to 0.38 that bedding presses reach: it would have to be dried';
  return 'within what is known of making fibre';
}

/**
 * The lowest dry matter that keeps the score at or below a target.
 *
 * hygieneScore(dm, interval_days, ...).score == min(target_score, score_at_wettest)
 *
 * Found by bisection from 0.15 to 0.95; the score never rises with dry matter, so there is one answer or none. It says what
 * the score asks, not what a press or dryer can reach: see fibreReach. Arguments as for hygieneScore.
 *
 * @param target_score the score not to be passed, 0 to 100
 */
export function lowestDryMatter(
  interval_days: number,
  target_score: number,
  material?: Material,
  shed_c?: number,
  dirty_udders?: number,
  bed?: Bed,
  stocking?: number,
) {
  const scoreAt = (x: number) => hygieneScore(x, interval_days, material, shed_c, dirty_udders, bed, stocking).score;
  const score_at_wettest = scoreAt(WETTEST);
  const best_score = scoreAt(DRIEST);
  if (best_score > target_score)
    throw new NoAnswer(said`even at ${DRIEST} dry matter the score is ${tenth(best_score)}, above the target; better the other factors`);
  // The score is level from 0.90 up: a step finds where it first comes down to the target, a difference would not.
  const dm = crossing((x) => (scoreAt(x) > target_score ? 1 : -1), WETTEST, DRIEST) ?? WETTEST;
  return { score_at_wettest, best_score, dm, score: scoreAt(dm), reach: fibreReach(dm, material) };
}
