import { type Answer, NoAnswer } from './refusal.ts';

/** How finely a lever's range is searched on either side of where it stands; steps widen away from it. */
const STEPS = 24;
/** Halvings of a bracket: twelve digits of it, far beyond what can be set or read. */
const HALVINGS = 40;

/** A figure of the plan with the lever at a value; undefined where the plan has no such figure there. */
export type FigureAt = (value: number) => number | undefined;

/**
 * The value nearest to `now` at which the figure comes to its target, all else as it is, or why there is none.
 * Searches outward from `now` in steps that widen with the distance, then halves the first bracket with a change of sign.
 *
 * @param none what to say where no value within the range reaches it
 */
export function nearestValue(figureAt: FigureAt, target: number, now: number, range: readonly [number, number], none: string): Answer {
  const [lowest, highest] = range;
  const gapAt = (at: number): number | undefined => {
    const figure = figureAt(at);
    return figure === undefined ? undefined : figure - target;
  };
  const here = gapAt(now);
  if (here === undefined) return new NoAnswer('the plan has no such figure yet: see what is still missing');
  const up = crossingTowards(gapAt, now, here, highest);
  // On the other side only what is nearer still matters.
  const down = crossingTowards(gapAt, now, here, up === undefined ? lowest : Math.max(lowest, now - (up - now)));
  return down ?? up ?? new NoAnswer(none);
}

function crossingTowards(gapAt: FigureAt, now: number, here: number, end: number): number | undefined {
  const isAbove = here >= 0;
  let last = now;
  for (let k = 1; k <= STEPS; k++) {
    const at = now + (end - now) * (k / STEPS) ** 3;
    const gap = gapAt(at);
    if (gap === undefined) continue;
    if (gap >= 0 !== isAbove) return halve(gapAt, last, at, isAbove);
    last = at;
  }
  return undefined;
}

function halve(gapAt: FigureAt, from: number, to: number, isAbove: boolean): number {
  let [a, b] = [from, to];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (a + b) / 2;
    const gap = gapAt(middle);
    if (gap === undefined || gap >= 0 === isAbove) a = middle;
    else b = middle;
  }
  return b;
}
