/** Steps to either end of the range: the evenly spaced ones, and as many again that crowd around where it stands. */
const STEPS = 100;
/** Narrowings of a bracket around a turning point. */
const NARROWINGS = 40;
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/** By how much a goal is met at a value, negative where it is missed; undefined where there is no such figure: missed too. */
export type GapAt = (value: number) => number | undefined;

interface Sample {
  readonly at: number;
  readonly gap: number;
}

/**
 * The value nearest to `now` at which a goal begins to be met, or, where it is met now, the last at which it still is; undefined
 * where no value of the range changes that. Always on the side that meets it, also where the figure jumps.
 *
 * Searches outward from `now` on both sides, in steps of at most 1 % of the way to each end and finer near `now`, and into every
 * turning point that could just reach the goal between two steps; then halves the first bracket down to the last bit.
 */
export function nearestValue(gapAt: GapAt, now: number, [lowest, highest]: readonly [number, number]): number | undefined {
  const sampleAt = (at: number): Sample => ({ at, gap: gapAt(at) ?? Number.NEGATIVE_INFINITY });
  const here = sampleAt(now);
  const up = changeTowards(sampleAt, here, highest);
  // On the other side only what is nearer still matters.
  const reach = up === undefined ? lowest : Math.max(lowest, now - (up - now));
  return changeTowards(sampleAt, here, reach) ?? up;
}

/** How far along the way each step lies. */
const ways: readonly number[] = Array.from({ length: STEPS }, (_, k) => (k + 1) / STEPS)
  .flatMap((way) => [way, way ** 3])
  .sort((one, other) => one - other);

function changeTowards(sampleAt: (at: number) => Sample, here: Sample, end: number): number | undefined {
  if (end === here.at) return undefined;
  const wasMet = here.gap >= 0;
  let [before, last] = [here, here];
  for (const way of ways) {
    const next = sampleAt(way === 1 ? end : here.at + (end - here.at) * way);
    const turned = turningPoint(sampleAt, before, last, next, wasMet);
    if (turned) return halve(sampleAt, before, turned);
    if (next.gap >= 0 !== wasMet) return halve(sampleAt, last, next);
    [before, last] = [last, next];
  }
  return undefined;
}

/** Where the figure turns between the outer two of three steps and the goal changes there, though at none of the three; or nothing. */
function turningPoint(sampleAt: (at: number) => Sample, from: Sample, middle: Sample, to: Sample, wasMet: boolean): Sample | undefined {
  const sign = wasMet ? -1 : 1;
  const rise = sign * (middle.gap - from.gap);
  const fall = sign * (middle.gap - to.gap);
  if (!(rise > 0 && fall >= 0) || to.gap >= 0 !== wasMet) return undefined;
  // A smooth turn goes beyond the middle step by less than it rose to it.
  if (Math.abs(middle.gap) > 2 * Math.max(rise, fall)) return undefined;
  let [low, high] = [from.at, to.at];
  let [one, other] = [sampleAt(high - GOLDEN * (high - low)), sampleAt(low + GOLDEN * (high - low))];
  for (let k = 0; k < NARROWINGS; k++) {
    const best = sign * one.gap > sign * other.gap ? one : other;
    if (best.gap >= 0 !== wasMet) return best;
    if (best === one) {
      high = other.at;
      other = one;
      one = sampleAt(high - GOLDEN * (high - low));
    } else {
      low = one.at;
      one = other;
      other = sampleAt(low + GOLDEN * (high - low));
    }
  }
  return undefined;
}

/** Between a value that meets the goal and one that does not: the last that meets it. */
function halve(sampleAt: (at: number) => Sample, from: Sample, to: Sample): number {
  let [met, missed] = from.gap >= 0 ? [from.at, to.at] : [to.at, from.at];
  for (;;) {
    const middle = met + (missed - met) / 2;
    if (middle === met || middle === missed) return met;
    if (sampleAt(middle).gap >= 0) met = middle;
    else missed = middle;
  }
}
