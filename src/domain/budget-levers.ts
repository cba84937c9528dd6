import type { Budget } from './budget.ts';
import { type Answer, NoAnswer, Refusal } from './refusal.ts';

/** How finely a lever's range is searched on either side of where it stands; steps widen away from it. */
const steps = 48;
/** Halvings of a bracket: twelve digits of it, far beyond what can be set or read. */
const halvings = 40;

/** What is sought: the figure of the plan and the value it should have. */
export interface Goal {
  readonly figure: (plan: Budget) => number;
  readonly target: number;
  /** What to say where no value of the lever reaches it. */
  readonly none: (lowest: number, highest: number) => string;
}

interface Point {
  readonly at: number;
  /** Above or below the target; undefined where the plan has no such figure there. */
  readonly gap: number | undefined;
}

/**
 * The value nearest to `now` at which the goal is met, all else as it is, or why there is none.
 * Searches outward from `now` in steps that widen with the distance, then halves the first bracket with a change of sign.
 *
 * @param plan the plan with the lever at a value
 */
export function nearestValue(plan: (value: number) => Budget, now: number, range: readonly [number, number], goal: Goal): Answer {
  const [lowest, highest] = range;
  const gapAt = (at: number): number | undefined => {
    try {
      const gap = goal.figure(plan(at)) - goal.target;
      return Number.isFinite(gap) ? gap : undefined;
    } catch (thrown) {
      if (thrown instanceof NoAnswer || thrown instanceof Refusal) return undefined;
      throw thrown;
    }
  };
  const here = gapAt(now);
  if (here === undefined) return new NoAnswer('the plan has no such figure yet: see what is still missing');
  const up = crossing(gapAt, now, here, highest);
  // On the other side only what is nearer still matters.
  const down = crossing(gapAt, now, here, up === undefined ? lowest : Math.max(lowest, now - (up - now)));
  if (up === undefined && down === undefined) return new NoAnswer(goal.none(lowest, highest));
  if (up === undefined || down === undefined) return (up ?? down) as number;
  return up - now <= now - down ? up : down;
}

function crossing(gapAt: (at: number) => number | undefined, now: number, here: number, end: number): number | undefined {
  let last: Point = { at: now, gap: here };
  for (let k = 1; k <= steps; k++) {
    const at = now + (end - now) * (k / steps) ** 3;
    const next: Point = { at, gap: gapAt(at) };
    if (next.gap !== undefined && last.gap !== undefined && next.gap >= 0 !== last.gap >= 0) return halve(gapAt, last, next);
    if (next.gap !== undefined) last = next;
  }
  return undefined;
}

function halve(gapAt: (at: number) => number | undefined, from: Point, to: Point): number {
  let [a, b] = [from.at, to.at];
  const rises = (to.gap ?? 0) >= 0;
  for (let k = 0; k < halvings; k++) {
    const middle = (a + b) / 2;
    const gap = gapAt(middle);
    if (gap === undefined || gap >= 0 !== rises) a = middle;
    else b = middle;
  }
  return b;
}
