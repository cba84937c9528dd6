import fc from 'fast-check';
import { uniformFloat32 } from 'pure-rand/distribution/uniformFloat32';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import { claim } from '../../src/domain/drying.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { dryerTrial, type Run, runFigures, type Stated } from '../../src/domain/trial.ts';
import { between } from './between.ts';

const air = { air_m3_h: 3000, ambient_c: 7, ambient_rh: 0.85, supply_c: 70 };
/** Ten hours in which dry matter closes just so. */
const run = (wet_kg: number, dried_kg: number, wet_dm = 0.36): Run => ({
  hours: 10,
  wet_kg,
  wet_dm,
  dried_kg,
  dried_dm: (wet_kg * wet_dm) / dried_kg,
  ...air,
});
const stated = (kg_h: number): Stated => ({ kg_h, dm_in: 0.36, dm_out: 0.6 });
const verdict = (runs: readonly (Run | undefined)[], of: Stated, level = 0.95) => dryerTrial(runs, 0, 'supply', of, level).verdict;

const good = [run(1000, 600), run(1010, 600), run(990, 600)];

describe('a run', () => {
  test('of fibre at the stated dry matters is corrected to its own weight', () => {
    fc.assert(
      fc.property(between(100, 2000), between(1, 24), (dried, hours) => {
        const wet = (dried * 0.6) / 0.36;
        const figures = runFigures({ ...run(wet, dried), hours }, 0, 'supply', 0.6 / 0.36 - 1);
        expect(figures.corrected_kg_h).toBeCloseTo(dried / hours, 8);
        expect(figures.closure).toBeCloseTo(1, 12);
        expect(figures.dried_kg_h * hours + figures.water_kg_h * hours).toBeCloseTo(wet, 8);
        expect(figures.mj_kg * figures.water_kg_h).toBeCloseTo(3.6 * figures.heat_kw, 8);
      }),
    );
  });

  test('takes the part of the air that DRYING.CLAIM says', () => {
    const { air_part, dried_kg_h } = runFigures(run(1000, 600), 0, 'supply', 0.5);
    expect(air_part).toBeCloseTo(claim(dried_kg_h, 0.36, 0.6, 3000, 7, 0.85, 70, 0, 'supply').ratio, 12);
  });

  test('that weighs more after drying, or is no drier, is refused', () => {
    expect(() => runFigures(run(600, 600), 0, 'supply', 0.5)).toThrow(/^dried kg: 600 is not below wet kg 600; /);
    expect(() => runFigures({ ...run(1000, 600), dried_dm: 0.3 }, 0, 'supply', 0.5)).toThrow(Refusal);
  });
});

describe('the verdict, in its order', () => {
  test('is none without all that was stated, and says what is missing', () => {
    const trial = dryerTrial(good, 0, 'supply', { kg_h: 50, dm_in: undefined, dm_out: undefined }, 0.95);
    expect(trial.verdict).toBeInstanceOf(NoAnswer);
    expect((trial.verdict as NoAnswer).message).toBe('enter stated_dm_in and stated_dm_out to hold the runs against what was stated');
    expect(trial.rows[0]?.[7]).toBeInstanceOf(NoAnswer);
    expect(trial.rows[0]?.[1]).toBe(60);
    expect(() => verdict(good, { kg_h: 50, dm_in: 0.6, dm_out: 0.6 })).toThrow(/^stated_dm_in: 0\.6 is not below stated_dm_out 0\.6/);
  });
  test('weigh again comes before all else', () => {
    const open = { ...run(1000, 600), dried_dm: 0.66 };
    expect(verdict([...good, { ...open, air_m3_h: 200 }], stated(50))).toBe('weigh again');
    expect(verdict([open], stated(50))).toBe('weigh again');
  });
  test('then the air, where more was carried than it can, or it can carry nothing', () => {
    expect(verdict([...good, { ...run(1000, 600), air_m3_h: 500 }], stated(50))).toBe('measure the air again');
    expect(verdict([...good, { ...run(1000, 600), ambient_rh: 1, supply_c: 7 }], stated(50))).toBe('measure the air again');
  });
  test('then the number of runs', () => {
    expect(verdict(good.slice(1), stated(50))).toBe('three runs are needed');
    expect(verdict([], stated(50))).toBe('three runs are needed');
  });
  test('then the limits', () => {
    expect(verdict(good, stated(50))).toBe('met');
    expect(verdict(good, stated(60))).toBe('not settled: more runs');
    expect(verdict(good, stated(90))).toBe('missed');
  });
  test('is none while a run is refused', () => expect(verdict([...good, undefined], stated(50))).toBeInstanceOf(NoAnswer));
});

test('limits widen with the level and hold the mean; the other columns are blank', () => {
  const [narrow, wide] = [0.8, 0.99].map((level) => dryerTrial(good, 0, 'supply', stated(60), level)) as [
    ReturnType<typeof dryerTrial>,
    ReturnType<typeof dryerTrial>,
  ];
  expect(wide.lowest as number).toBeLessThan(narrow.lowest as number);
  expect(wide.highest as number).toBeGreaterThan(narrow.highest as number);
  expect(narrow.corrected_mean as number).toBeCloseTo(((narrow.lowest as number) + (narrow.highest as number)) / 2, 9);
  expect(wide.rows.at(-3)?.slice(0, 7)).toEqual(['lowest', ...Array(6).fill(undefined)]);
});

test('at 3% scatter and 5% over what was stated, three runs settle it about one time in three, five about four in five', () => {
  const random = xoroshiro128plus(7);
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniformFloat32(random))) * Math.cos(2 * Math.PI * uniformFloat32(random));
  const settled = (runs: number) => {
    const trials = 2000;
    let met = 0;
    for (let k = 0; k < trials; k++) {
      const some = Array.from({ length: runs }, () => {
        const kg_h = 1.05 * 60 * (1 + 0.03 * normal());
        return run((10 * kg_h * 0.6) / 0.36, 10 * kg_h);
      });
      if (verdict(some, stated(60)) === 'met') met++;
    }
    return met / trials;
  };
  expect(settled(3)).toBeGreaterThan(0.25);
  expect(settled(3)).toBeLessThan(0.4);
  expect(settled(5)).toBeGreaterThan(0.73);
  expect(settled(5)).toBeLessThan(0.86);
});
