import { defaultOf } from '../core/bibliography.ts';
import { defineSpill } from '../core/define.ts';
import { maybe, number, optional, table } from '../core/parameters.ts';
import { readRows } from '../core/read-table.ts';
import { CellError } from '../core/result.ts';
import type { AirAt } from '../domain/heater.ts';
import { NoAnswer, Refusal } from '../domain/refusal.ts';
import { dryerTrial, type Run, runFigures, type Stated } from '../domain/trial.ts';
import { airState, dryMatter } from './shared.ts';

const weighed = <const Name extends string>(name: Name, says: string) => number(name, 'kg', says, { above: 0 });

/** The columns of a run, as they stand on the sheet that is filled in beside the dryer. */
const runColumns = [
  number('hours', 'hours', 'how long it ran', { above: 0, max: 1000 }),
  weighed('wet kg', 'fibre that went in'),
  dryMatter('wet DM', 'its dry matter'),
  weighed('dried kg', 'fibre that came out'),
  dryMatter('dried DM', 'its dry matter'),
  number('air m³/h', 'm³/h', 'air through the dryer', { above: 0 }),
  number('outdoor °C', '°C', 'outdoor temperature', { min: -40, max: 60 }),
  number('outdoor humidity', 'fraction', 'outdoor humidity', { min: 0.01 }),
  number('supply °C', '°C', 'air after the heater', { min: -40, max: 200 }),
] as const;

const columns = ['run', 'dried kg/h', 'water kg/h', 'dry matter closure', "air's part", 'heat kW', 'MJ per kg', 'corrected kg/h'] as const;

/** The runs, each read and looked over by itself, so that one that is wrong says so in its own row. */
function readRuns(runs: readonly (readonly unknown[])[], altitude_m: number, air_at: AirAt): readonly (Run | CellError)[] {
  return readRows('runs', runs, () => runColumns).map(({ row, values }) => {
    if (values instanceof CellError) return values;
    const [hours, wet_kg, wet_dm, dried_kg, dried_dm, air_m3_h, ambient_c, ambient_rh, supply_c] = values;
    const run = { hours, wet_kg, wet_dm, dried_kg, dried_dm, air_m3_h, ambient_c, ambient_rh, supply_c };
    try {
      runFigures(run, altitude_m, air_at, new NoAnswer(''));
      return run;
    } catch (thrown) {
      if (thrown instanceof Refusal) return new CellError('#VALUE!', `runs row ${row}, ${thrown.message}`);
      throw thrown;
    }
  });
}

function trialOf(runs: readonly (readonly unknown[])[], altitude_m: number, air_at: AirAt, stated: Stated, level: number) {
  const read = readRuns(runs, altitude_m, air_at);
  const trial = dryerTrial(
    read.map((run) => (run instanceof CellError ? undefined : run)),
    altitude_m,
    air_at,
    stated,
    level,
  );
  const rows = trial.rows.map((row, k) => {
    const run = read[k];
    return run instanceof CellError ? [row[0], ...columns.slice(1).map(() => run as never)] : row;
  });
  return { ...trial, rows };
}

/** 600 kg at 0.40 dried to 400 kg at 0.60 in ten hours, on the air of the example of DRYING.EVAPORATION. */
const run = (dried: number) => [10, 600, 0.4, dried, 240 / dried, 1200, 5, 1, 61.64];
const dried = [395, 400, 405];
const water = dried.map((kg) => 60 - kg / 10);
const mean = water.reduce((sum, kg) => sum + kg) / 3;

export const trial = [
  defineSpill({
    name: 'DRYING.TRIAL',
    summary:
      'Acceptance test of a dryer from weighed runs: what it did, whether the figures can be right, and whether it does what was stated.',
    finds: 'hand-over, acceptance, commissioning, does it do what was sold, performance test, guarantee, supplier, weigh',
    parameters: [
      table('runs', `one row each: ${runColumns.map(({ name }) => name).join(', ')}`),
      ...airState,
      maybe(number('stated_kg_h', 'kg/h', 'dried fibre an hour as stated', { above: 0 }), 'no verdict'),
      maybe(dryMatter('stated_dm_in', 'dry matter before drying that the statement is for'), 'no verdict'),
      maybe(dryMatter('stated_dm_out', 'dry matter after drying that the statement is for'), 'no verdict'),
      optional(number('level', 'fraction', 'how often such limits hold the truth', { min: 0.5, max: 0.999 }), defaultOf('level')),
    ],
    compute: (runs, altitude_m, air_at, kg_h, dm_in, dm_out, level) => trialOf(runs, altitude_m, air_at, { kg_h, dm_in, dm_out }, level),
    columns,
    working: {
      run_count: { says: 'Runs that could be read', unit: '', told: 'counted' },
      water_per_kg: {
        says: 'Water to carry off for a kg dried as stated',
        unit: 'kg/kg',
        how: 'stated_dm_out / stated_dm_in - 1',
        source: 'mass-balance',
      },
      corrected_mean: {
        says: 'Output as it would be between the stated dry matters: water an hour by weight ÷ water_per_kg, the mean of the runs',
        unit: 'kg/h',
        told: 'added up, over the number of runs',
      },
      scatter: {
        says: 'Standard deviation of it from run to run',
        unit: 'kg/h',
        told: 'from the squares of what each is off the mean, over the runs less one',
      },
      student_t: { says: 'Student’s t for two-sided limits', unit: '', how: 'studentQuantile(level, run_count - 1)', source: 'student-t' },
      lowest: { says: 'Lower limit', unit: 'kg/h', how: 'corrected_mean - student_t * scatter / sqrt(run_count)' },
      highest: { says: 'Upper limit', unit: 'kg/h', how: 'corrected_mean + student_t * scatter / sqrt(run_count)' },
      verdict: {
        says: 'What the runs show; the first that fits',
        unit: 'text',
        told: 'weigh again where dry matter out is not within 5% of that in; measure the air again where a run took more than 1.25 times what the air can carry at most; three runs are needed; met where the lower limit is at least what was stated; missed where the upper is below it; else not settled: more runs',
      },
    },
    notes: [
      'Run until all is steady first; start and stop with the drum equally full.',
      'Fix the number of runs beforehand: adding runs until the answer pleases proves nothing.',
      'Corrected to the stated dry matters, not to the day’s air: a cold wet day makes less, a warm dry one more.',
      'With a scatter of 3% and an output 5% over what was stated, three runs settle it about one time in three, five runs four in five.',
      'What follows from a verdict stands in the contract: that is for a lawyer.',
    ],
    sources: ['mass-balance', 'ashrae-2017', 'student-t', 'project'],
    examples: [
      {
        call: [dried.map(run), 0, 'ambient', 40, 0.4, 0.6],
        at: ['lowest', 'corrected kg/h'],
        gives: 2 * mean - (4.302653 * 2 * 0.5) / Math.sqrt(3),
        within: 1e-5,
        source: 'by hand: 41, 40 and 39 kg/h from half a kg of water per kg, s 1, Student’s t 4.302653 from any table',
      },
      {
        call: [dried.map(run), 0, 'ambient', 36, 0.4, 0.6],
        at: ['verdict', 'dried kg/h'],
        gives: 'met',
        source: 'by hand: 40 less 4.303 ÷ √3 is 37.5, not below 36',
      },
      {
        call: [dried.map(run), 0, 'ambient', 40, 0.4, 0.6],
        at: ['mean', "air's part"],
        gives: 20 / ((1200 / 794.84) * 14.748),
        within: 0.006,
        source:
          'by hand from ASHRAE tables: 1,000 kg/h of air saturated at 5 °C, 794.84 m³/h, warmed to 61.64 °C, carries 14.748 kg of water; perfect gas 0.5 % off',
      },
    ],
  }),
] as const;
