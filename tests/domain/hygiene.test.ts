import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bandOf, hygieneScore, SCORE_CAUTION, scoreDrivers, scoreSpan } from '../../src/domain/hygiene.ts';
import { beds, dryMatterLevel, factorFacts, type ScoreArguments } from '../../src/domain/hygiene-factors.ts';
import { lowestDryMatter } from '../../src/domain/hygiene-inverse.ts';
import { materials } from '../../src/domain/materials.ts';
import { between } from './between.ts';

const dm = between(0.05, 1);
const days = between(0.25, 14);
const whole = {
  material: fc.constantFrom(...materials),
  shed_c: between(-20, 45),
  dirty_udders: between(0, 1),
  bed: fc.constantFrom(...beds),
  stocking: between(0.1, 3),
};
const maybe = <Value>(values: fc.Arbitrary<Value>) => fc.option(values, { nil: undefined });
const everything: fc.Arbitrary<ScoreArguments> = fc.tuple(
  dm,
  days,
  whole.material,
  whole.shed_c,
  whole.dirty_udders,
  whole.bed,
  whole.stocking,
);
const anything: fc.Arbitrary<ScoreArguments> = fc.tuple(
  dm,
  days,
  maybe(whole.material),
  maybe(whole.shed_c),
  maybe(whole.dirty_udders),
  maybe(whole.bed),
  maybe(whole.stocking),
);
const scoreOf = (given: ScoreArguments) => hygieneScore(...given).score;

describe('the hygiene score', () => {
  test('of a bed of dried fibre and one of sawdust, worked by hand from the table of weights and points', () => {
    expect(scoreOf([0.58, 2, 'dried fibre', 11, 0.18, 'mattress', 400 / 420])).toBeCloseTo(47.510889504246094, 9);
    expect(scoreOf([0.9, 2, 'sawdust', 11, 0.18, 'mattress', 400 / 420])).toBeCloseTo(33.478808480069205, 9);
  });

  test('lies between 0 and 100', () => {
    fc.assert(
      fc.property(anything, (given) => {
        expect(scoreOf(given)).toBeGreaterThanOrEqual(0);
        expect(scoreOf(given)).toBeLessThanOrEqual(100);
      }),
    );
  });

  test('never rises when the bedding is drier, all else the same', () => {
    fc.assert(
      fc.property(anything, dm, ([wetter, ...rest], other) => {
        const [low, high] = [Math.min(wetter, other), Math.max(wetter, other)];
        expect(scoreOf([high, ...rest])).toBeLessThanOrEqual(scoreOf([low, ...rest]) + 1e-12);
      }),
    );
  });

  test('never falls when beds wait longer, the shed is warmer, udders are dirtier or cubicles fuller', () => {
    for (const place of [1, 3, 4, 6] as const) {
      fc.assert(
        fc.property(everything, everything, (given, other) => {
          const [low, high] = [given[place] as number, other[place] as number].sort((a, b) => a - b);
          const at = (value: unknown) => scoreOf(given.map((kept, k) => (k === place ? value : kept)) as ScoreArguments);
          expect(at(low)).toBeLessThanOrEqual(at(high) + 1e-12);
        }),
      );
    }
  });

  test('leaves out what was not given instead of taking it for clean', () => {
    const short = hygieneScore(0.58, 2);
    expect(short.f_material).toBeUndefined();
    expect(short.weights).toBe(30);
    expect(short.score).toBeGreaterThan(scoreOf([0.58, 2, 'sand', 5, 0, 'deep', 1]));
  });

  test.each([
    [0.2, 1],
    [0.25, 1],
    [0.34, 0.85],
    [0.45, 0.7],
    [0.6, 0.4],
    [0.7, 0.15],
    [0.78, 0],
    [0.95, 0],
    [0.65, 0.275],
  ])('at %d dry matter takes the level %d', (dry, level) => expect(hygieneScore(dry, 1).f_dm).toBeCloseTo(level, 12));

  test.each([
    [0.2, 4.6],
    [0.35, 4.6],
    [0.625, 2.9],
    [0.9, 1.2],
    [1, 1.2],
  ])('lets germs grow at %d dry matter by %d a day', (dry, rate) => expect(hygieneScore(dry, 1).growth_per_day).toBeCloseTo(rate, 12));

  test.each([
    [0, 0],
    [5, 0],
    [10, 0.04],
    [15, 0.16],
    [20, 0.38],
    [25, 0.66],
    [30, 1],
    [40, 1],
    [12.5, 0.1],
  ])('in a shed of %d °C takes the level %d', (shed, level) => expect(hygieneScore(0.5, 1, undefined, shed).f_shed).toBeCloseTo(level, 12));

  test.each([
    [0.05, 0],
    [0.1, 0],
    [0.2, 0.5],
    [0.4, 1],
    [0.9, 1],
    [0.18, 0.4],
  ])('with a share of %d dirty udders takes the level %d', (dirty, level) =>
    expect(hygieneScore(0.5, 1, undefined, undefined, dirty).f_udders).toBeCloseTo(level, 12),
  );

  test.each([
    [0.8, 0],
    [1, 0],
    [1.2, 0.5],
    [1.5, 1],
    [2, 1],
  ])('with %d cows per cubicle takes the level %d', (stocking, level) =>
    expect(hygieneScore(0.5, 1, undefined, undefined, undefined, undefined, stocking).f_stocking).toBeCloseTo(level, 12),
  );

  test('takes a level for every material and both beds', () => {
    const levels = Object.fromEntries(materials.map((material) => [material, hygieneScore(0.5, 1, material).f_material]));
    expect(levels).toEqual({
      sand: 0.1,
      limestone: 0.2,
      sawdust: 0.45,
      shavings: 0.45,
      'chopped straw': 0.45,
      'dried fibre': 0.55,
      'composted fibre': 0.6,
      'digested fibre': 0.75,
      'fresh fibre': 0.85,
    });
    expect(beds.map((bed) => [bed, hygieneScore(0.5, 1, undefined, undefined, undefined, bed).f_bed])).toEqual([
      ['deep', 0],
      ['mattress', 0.7],
    ]);
  });

  test('averages the rising level over the interval, as a sum of small steps does', () => {
    const { growth_per_day, f_interval } = hygieneScore(0.5, 2);
    const steps = Array.from({ length: 20_000 }, (_, k) => 1 - Math.exp(-growth_per_day * 2 * ((k + 0.5) / 20_000)));
    expect(f_interval).toBeCloseTo(steps.reduce((sum, level) => sum + level, 0) / steps.length, 8);
  });
});

describe('the band', () => {
  test.each([
    [0, 'low'],
    [24.999, 'low'],
    [25, 'moderate'],
    [49.999, 'moderate'],
    [50, 'raised'],
    [74.999, 'raised'],
    [75, 'high'],
    [100, 'high'],
  ])('of %d is %s', (score, band) => expect(bandOf(score)).toBe(band));
});

describe('the span', () => {
  test('holds the score', () => {
    fc.assert(
      fc.property(anything, (given) => {
        const { lowest, score, highest } = scoreSpan(...given);
        expect(lowest).toBeLessThanOrEqual(score);
        expect(score).toBeLessThanOrEqual(highest);
      }),
    );
  });

  test('holds whatever the score becomes once the missing factors are given', () => {
    fc.assert(
      fc.property(anything, everything, (given, later) => {
        const { lowest, highest } = scoreSpan(...given);
        const score = scoreOf(given.map((kept, k) => kept ?? later[k]) as ScoreArguments);
        expect(score).toBeGreaterThanOrEqual(lowest - 1e-9);
        expect(score).toBeLessThanOrEqual(highest + 1e-9);
      }),
    );
  });

  test('narrows with each factor that is given and closes on the score when all are', () => {
    const all: ScoreArguments = [0.58, 2, 'dried fibre', 11, 0.18, 'mattress', 400 / 420];
    const widths = [2, 3, 4, 5, 6, 7].map((given) => {
      const { lowest, highest } = scoreSpan(...(all.slice(0, given) as ScoreArguments));
      return highest - lowest;
    });
    expect([...widths].sort((a, b) => b - a)).toEqual(widths);
    expect(new Set(widths).size).toBe(6);
    expect(widths[5]).toBeCloseTo(0, 12);
  });

  test('takes each factor not given at its best and at its worst: by hand for dry matter and interval alone', () => {
    const { weighted, lowest, highest } = scoreSpan(0.58, 2);
    expect(lowest).toBeCloseTo((100 * (weighted + 20 * 0.1)) / 85, 9);
    expect(highest).toBeCloseTo((100 * (weighted + 20 * 0.85 + 10 + 15 + 5 * 0.7 + 5)) / 85, 9);
  });

  test('keeps a very good score inside although the material can never be at 0', () => {
    const { lowest, score } = scoreSpan(0.9, 0.25, undefined, 5, 0.1, 'deep', 1);
    expect(lowest).toBe(score);
  });

  test('gives each line its band', () => {
    for (const [, value, band] of scoreSpan(0.58, 2).rows) expect(band).toBe(bandOf(value as number));
  });
});

describe('the drivers', () => {
  const tableOf = (given: ScoreArguments) => scoreDrivers(...given).rows;
  const sum = (cells: readonly unknown[]) => cells.reduce<number>((total, cell) => total + ((cell as number | undefined) ?? 0), 0);

  test('have points that add up to the score and shares that add up to 1', () => {
    fc.assert(
      fc.property(anything, (given) => {
        const rows = tableOf(given);
        expect(sum(rows.map((row) => row[2]))).toBeCloseTo(scoreOf(given), 9);
        expect(sum(rows.map((row) => row[3]))).toBeCloseTo(1, 9);
      }),
    );
  });

  test('list all seven factors whatever was given', () => {
    const names = ['dm', 'interval_days', 'material', 'shed_c', 'dirty_udders', 'bed', 'stocking'];
    expect(tableOf([0.58, 2]).map(([factor]) => factor)).toEqual(names);
  });

  test('say of a factor not given how far it could move the score, and nothing of one that was', () => {
    const [, , material, shed] = tableOf([0.58, 2, 'dried fibre']);
    expect(material?.at(-1)).toBeUndefined();
    expect(shed?.[1]).toBe('not given');
    const score = scoreOf([0.58, 2, 'dried fibre']);
    const cold = scoreOf([0.58, 2, 'dried fibre', 5]) - score;
    const hot = scoreOf([0.58, 2, 'dried fibre', 30]) - score;
    expect(shed?.at(-1)).toBe(`score −${Math.abs(cold).toFixed(1)} to +${hot.toFixed(1)}`);
  });

  test('write no sign before a move too small to show', () => {
    // A mattress brings a score of 70 nothing, since its own level is 0.7.
    const { dm } = lowestDryMatter(2, 70, 'fresh fibre');
    expect(
      tableOf([dm, 2, 'fresh fibre'])
        .find(([factor]) => factor === 'bed')
        ?.at(-1),
    ).toMatch(/^score −\d+\.\d to 0\.0$/);
  });

  test('show the studies that speak against a factor beside those for it', () => {
    const evidence = Object.fromEntries(tableOf([0.58, 2]).map((row) => [row[0], String(row[4])]));
    expect(evidence['material']).toMatch(
      /against: of first-lactation cows only: .*did not differ.*Rowbotham and Ruegg 2016, heifers, quoted/,
    );
    expect(evidence['bed']).toMatch(/against: coliforms were most in deep fibre/);
    expect(evidence['interval_days']).toMatch(/against: .*intervals of over a week.*Rowbotham and Ruegg 2015/);
    expect(evidence['shed_c']).toMatch(/against: at 15 °C nothing grew .*rotary drum Klebsiella grew/);
    expect(evidence['stocking']).toBe(
      'for: cows lay less as stocking rose from 100 to 150 % (Fregonesi and others 2007, stocking, seen); against: lying time did not differ at 82, 100 and 129 % (stocking trial 2016, seen)',
    );
  });

  test('call the evidence fair at most, since no weight was fitted to mastitis', () => {
    for (const [, facts] of factorFacts) expect(facts.strength).toMatch(/^(fair|weak)\b/);
  });
});

test('whoever shows a score sends the reader to the vet and says whose weights they are', () =>
  expect(SCORE_CAUTION).toMatch(/no diagnosis: talk to your vet.*weights are judgement/));

test('the span with any one weight halved or doubled holds the score, and is as the score itself says', () => {
  const at = (f: number[], w: number[]) =>
    (100 * w.reduce((sum, weight, k) => sum + weight * (f[k] as number), 0)) / w.reduce((a, b) => a + b);
  const f = [dryMatterLevel(0.5), hygieneScore(0.5, 2).f_interval as number, 0.55];
  const weights = [15, 15, 20];
  const tried = weights.flatMap((weight, k) => [0.5, 2].map((times) => at(f, weights.with(k, times * weight))));
  const { weights_lowest, weights_highest, score } = scoreSpan(0.5, 2, 'dried fibre');
  expect(weights_lowest).toBeCloseTo(Math.min(...tried), 9);
  expect(weights_highest).toBeCloseTo(Math.max(...tried), 9);
  fc.assert(
    fc.property(between(0.05, 1), between(0.25, 14), (dm, days) => {
      const span = scoreSpan(dm, days);
      expect(span.weights_lowest).toBeLessThanOrEqual(span.score + 1e-9);
      expect(span.weights_highest).toBeGreaterThanOrEqual(span.score - 1e-9);
    }),
  );
  expect(score).toBeCloseTo(at(f, weights), 9);
});
