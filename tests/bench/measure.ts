/** One comparison: how many times as long, or as much, ours takes as theirs. */
export interface Row {
  readonly name: string;
  readonly ours: number;
  readonly theirs: number;
  readonly unit: string;
  /** ours / theirs, at most; or, where `faster`, theirs / ours, at least. */
  readonly target: number;
  readonly faster?: true;
  /** What is compared with what, and why a target is missed. */
  readonly note: string;
}

export const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((one, other) => one - other);
  return sorted[sorted.length >> 1] as number;
};

/** Answers end up here, so that no work can be left out as unused. */
const sink: unknown[] = [];

function milliseconds(work: () => unknown): number {
  const start = performance.now();
  sink[0] = work();
  return performance.now() - start;
}

/**
 * Median time of each, taking turns within one run: what else the machine does then falls on all alike, which a benchmark
 * of one task after another cannot promise. Ratios count; milliseconds are for the record.
 */
export function compare(works: readonly (() => unknown)[], rounds = 25): readonly number[] {
  const times = works.map((): number[] => []);
  for (let round = -3; round < rounds; round++) {
    for (const [k, work] of works.entries()) {
      const time = milliseconds(work);
      if (round >= 0) times[k]?.push(time);
    }
  }
  return times.map(median);
}
