import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { caseChart, type Period } from '../../src/domain/case-chart.ts';
import { binomialLimits, poissonLimits, studentQuantile, studentWithin } from '../../src/domain/exact-limits.ts';
import { recordMonths, recordPower } from '../../src/domain/record-months.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { caseInterval, compareCases } from '../../src/domain/udder-records.ts';
import { between } from './between.ts';

const count = fc.integer({ min: 0, max: 400 });
const level = between(0.5, 0.999);

describe('limits', () => {
  test('hold what was counted, grow with the count and widen with the level', () => {
    fc.assert(
      fc.property(count, level, level, (events, one, other) => {
        const [narrow, wide] = [one, other].toSorted((a, b) => a - b).map((at) => poissonLimits(events, at)) as [
          { lowest: number; highest: number },
          { lowest: number; highest: number },
        ];
        expect(narrow.lowest).toBeLessThanOrEqual(events);
        expect(narrow.highest).toBeGreaterThan(events);
        expect(wide.lowest).toBeLessThanOrEqual(narrow.lowest);
        expect(wide.highest).toBeGreaterThanOrEqual(narrow.highest);
        expect(poissonLimits(events + 1, one).lowest).toBeGreaterThan(poissonLimits(events, one).lowest);
      }),
    );
  });

  test('of a share are those of the rest turned round', () => {
    fc.assert(
      fc.property(count, count, level, (some, others, at) => {
        fc.pre(some + others > 0);
        const [share, rest] = [binomialLimits(some, some + others, at), binomialLimits(others, some + others, at)];
        expect(share.lowest).toBeCloseTo(1 - rest.highest, 12);
        expect(share.highest).toBeCloseTo(1 - rest.lowest, 12);
      }),
    );
  });

  test("Student's t inverts its own chance, and nears the normal 1.96 with many runs", () => {
    fc.assert(
      fc.property(level, fc.integer({ min: 1, max: 200 }), (at, freedom) => {
        expect(studentWithin(studentQuantile(at, freedom), freedom)).toBeCloseTo(at, 12);
      }),
    );
    expect(studentQuantile(0.95, 100_000)).toBeCloseTo(1.95996, 4);
  });
});

describe('the interval of a rate', () => {
  test('holds the rate, and stands in cases per 100 cows per year', () => {
    const { rows } = caseInterval(0, 260, 30, 0.95);
    expect(rows.map(([key, , unit]) => [key, unit])).toEqual(['rate', 'lowest', 'highest'].map((key) => [key, 'per 100 cows/year']));
    // By hand: −ln 0.025 cases in 260 · 30 / 365 cow-years.
    expect(rows.map(([, value]) => value)).toEqual([0, 0, expect.closeTo((-Math.log(0.025) * 36_500) / 7800, 9)]);
  });
});

describe('a comparison', () => {
  const herd = fc.tuple(fc.integer({ min: 0, max: 120 }), between(1, 500), between(28, 800));
  const numbers = (...values: unknown[]): number[] =>
    values.map((value) => (value instanceof NoAnswer ? Number.POSITIVE_INFINITY : (value as number)));

  test('turned round is its own reciprocal, with the same p and the other verdict', () => {
    fc.assert(
      fc.property(herd, herd, level, (before, after, at) => {
        fc.pre(before[0] + after[0] > 0);
        const there = compareCases(...before, ...after, at);
        const back = compareCases(...after, ...before, at);
        expect(back.p).toBeCloseTo(there.p as number, 10);
        const [lowest, highest] = numbers(there.ratio_lowest, there.ratio_highest) as [number, number];
        const [backLowest, backHighest] = numbers(back.ratio_lowest, back.ratio_highest) as [number, number];
        if (after[0] > 0) expect(backHighest * lowest).toBeCloseTo(1, 8);
        if (before[0] > 0) expect(backLowest * highest).toBeCloseTo(1, 8);
        const turned = { more: 'fewer', fewer: 'more', 'no difference shown': 'no difference shown' } as const;
        expect(back.verdict).toBe(turned[there.verdict as keyof typeof turned]);
      }),
    );
  });

  test('holds the ratio within its limits, and its p agrees with them', () => {
    fc.assert(
      fc.property(herd, herd, level, (before, after, at) => {
        fc.pre(before[0] + after[0] > 0);
        const { ratio, ratio_lowest, ratio_highest, p, verdict } = compareCases(...before, ...after, at);
        const [lowest, middle, highest] = numbers(ratio_lowest, ratio, ratio_highest) as [number, number, number];
        expect(lowest).toBeLessThanOrEqual(middle * (1 + 1e-12));
        expect(highest).toBeGreaterThanOrEqual(middle * (1 - 1e-12));
        if (Math.abs((p as number) - (1 - at)) > 1e-9) expect((p as number) < 1 - at).toBe(verdict !== 'no difference shown');
      }),
    );
  });

  test('says in words how large a rise may hide, and never that there was none', () => {
    const said = (...cases: [number, number]) => compareCases(cases[0], 260, 365, cases[1], 260, 365, 0.95).rows.at(-1);
    const care = '; compare the same months of the year, and take no change for its cause';
    expect(said(88, 90)).toEqual([
      'verdict',
      'no difference shown',
      `a rise could still hide in these records: it may be as much as 39%${care}`,
    ]);
    expect(said(40, 90)).toEqual(['verdict', 'more', `at least 53% more, and it may be as much as 240%${care}`]);
    expect(said(90, 40)).toEqual(['verdict', 'fewer', `at least 35% fewer${care}`]);
    expect(said(0, 3)).toEqual([
      'verdict',
      'no difference shown',
      `a rise could still hide in these records: no limit can be given to it${care}`,
    ]);
    expect(said(0, 30)).toEqual(['verdict', 'more', `at least 660% more, and no limit can be given to it${care}`]);
  });

  test('without a case before has no ratio, and without any case nothing but the rates', () => {
    expect(compareCases(0, 260, 365, 3, 260, 365, 0.95).rows.map(([, value]) => value instanceof NoAnswer)).toEqual([
      false,
      false,
      true,
      false,
      true,
      false,
      false,
    ]);
    const nothing = compareCases(0, 260, 365, 0, 260, 180, 0.95);
    expect(nothing.rows.map(([, value]) => value instanceof NoAnswer)).toEqual([false, false, true, true, true, true, true]);
    expect(nothing.rows[6]?.[1]).toMatchObject({ message: expect.stringContaining('no case on record') });
  });
});

describe('months of records', () => {
  test('are the first that reach the power: none before them does, though the power of counts goes by fits and starts', () => {
    fc.assert(
      fc.property(between(5, 100), between(30, 500), between(0.3, 3), between(0.5, 0.95), level, (rate, cows, rise, power, at) => {
        let found: ReturnType<typeof recordMonths>;
        try {
          found = recordMonths(rate, cows, rise, power, at);
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(NoAnswer);
          return;
        }
        const { months, cases_month, power_reached } = found;
        expect(power_reached).toBeGreaterThanOrEqual(power);
        for (const earlier of [1, 2, 3, months - 2, months - 1].filter((month) => month > 0 && month < months))
          expect(recordPower(cases_month * earlier, rise, at)).toBeLessThan(power);
      }),
      { numRuns: 40 },
    );
  });

  test('grow where the herd, the rate or the rise is smaller', () => {
    const months = (cows: number, rise: number) => recordMonths(34, cows, rise, 0.8, 0.95).months;
    expect(months(130, 0.5)).toBeGreaterThan(months(260, 0.5));
    expect(months(260, 0.4)).toBeGreaterThan(months(260, 0.5));
  });

  test('beyond 20 years are no answer, and it says why', () =>
    expect(() => recordMonths(20, 60, 0.05, 0.8, 0.95)).toThrow('20 years of records before and as many after'));
});

describe('a control chart', () => {
  const month = (cases: number, cows = 260, days = 30): Period => ({ cases, cows, days });
  const even = Array.from({ length: 12 }, (_, k) => month(k % 2 ? 6 : 9));
  const signals = (periods: readonly (Period | undefined)[], baseline?: number) =>
    caseChart(periods, baseline, 3).rows.map((row) => row[5]);

  test('judges the months after the change by those before', () => {
    const after = [month(7), month(20), month(8)];
    expect(signals([...even, ...after], 12)).toEqual([...Array(13).fill(undefined), 'above', undefined]);
  });

  test('calls the eighth month in a row on one side a run, which a blank or a month on the centre ends', () => {
    const high = Array.from({ length: 9 }, () => month(9));
    expect(signals([...even, ...high], 12).slice(12)).toEqual([...Array(7).fill(undefined), 'run above', 'run above']);
    expect(signals([...even, ...high.with(4, undefined as never)], 12).slice(12)).not.toContain('run above');
    const exact = [month(6), month(9), month(9)].map((one) => ({ ...one, days: 36.5 }));
    const onCentre = caseChart(
      [...exact, ...high.map((one) => ({ ...one, days: 36.5 })).with(4, { cases: 8, cows: 260, days: 36.5 })],
      3,
      3,
    );
    expect(onCentre.rows.map((row) => row[5])).not.toContain('run above');
  });

  test('puts a limit before a run, and keeps the lower limit at 0', () => {
    const high = Array.from({ length: 8 }, (_, k) => month(k === 7 ? 40 : 9));
    expect(signals([...even, ...high], 12).at(-1)).toBe('above');
    for (const row of caseChart([month(1), month(0), month(2)], undefined, 3).rows) expect(row[3]).toBe(0);
  });

  test('needs three months on record and a case among them', () => {
    expect(() => caseChart([month(1), undefined, month(2)], undefined, 3)).toThrow(Refusal);
    expect(() => caseChart(even, 13, 3)).toThrow(/^baseline: 13 is above the 12 periods given/);
    expect(() => caseChart([month(0), month(0), month(0)], undefined, 3)).toThrow(NoAnswer);
  });
});
