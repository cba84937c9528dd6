import { dryingHeat, mostCarried, SELF_HEATING_RATIO } from './drying.ts';
import { studentQuantile } from './exact-limits.ts';
import type { AirAt } from './heater.ts';
import { type Answer, NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';

/** A weighed run of a dryer. */
export interface Run {
  readonly hours: number;
  readonly wet_kg: number;
  readonly wet_dm: number;
  readonly dried_kg: number;
  readonly dried_dm: number;
  readonly air_m3_h: number;
  readonly ambient_c: number;
  readonly ambient_rh: number;
  readonly supply_c: number;
}

/** What the supplier stated, or as much of it as was entered. */
export interface Stated {
  readonly kg_h: number | undefined;
  readonly dm_in: number | undefined;
  readonly dm_out: number | undefined;
}

/** Dry matter out over dry matter in, where scales and samples agree. Judgement. */
const CLOSES = [0.95, 1.05] as const;
const FEWEST_RUNS = 3;

interface RunFigures {
  readonly dried_kg_h: number;
  readonly water_kg_h: number;
  readonly closure: number;
  readonly air_part: number | NoAnswer;
  readonly heat_kw: number;
  readonly mj_kg: number;
  readonly corrected_kg_h: number | NoAnswer;
}

/** The share of what the air can carry at most; air that can carry nothing has none, and wants measuring again. */
function partOfAir(water_kg_h: number, ...air: Parameters<typeof mostCarried>): number | NoAnswer {
  try {
    return water_kg_h / mostCarried(...air).most_kg_h;
  } catch (thrown) {
    if (thrown instanceof NoAnswer) return thrown;
    throw thrown;
  }
}

/**
 * The figures of one run.
 *
 * dried_kg_h = dried_kg / hours; water_kg_h = (wet_kg - dried_kg) / hours, by weight;
 * closure = dried_kg * dried_dm / (wet_kg * wet_dm); air_part = water_kg_h / most_kg_h of `mostCarried`;
 * mj_kg = 3.6 * heat_kw / water_kg_h of `dryingHeat`; corrected_kg_h = water_kg_h / water_per_kg
 */
export function runFigures(run: Run, altitude_m: number, air_at: AirAt, water_per_kg: number | NoAnswer): RunFigures {
  const { hours, wet_kg, wet_dm, dried_kg, dried_dm, air_m3_h, ambient_c, ambient_rh, supply_c } = run;
  if (dried_kg >= wet_kg)
    throw new Refusal('dried kg', said`${dried_kg} is not below wet kg ${wet_kg}`, 'enter what was weighed before and after drying');
  if (wet_dm >= dried_dm)
    throw new Refusal(
      'wet DM',
      said`${wet_dm} is not below dried DM ${dried_dm}`,
      'enter the dry matters of samples before and after drying',
    );
  const water_kg_h = (wet_kg - dried_kg) / hours;
  const air = [air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at] as const;
  const { heat_kw } = dryingHeat(...air);
  return {
    dried_kg_h: dried_kg / hours,
    water_kg_h,
    closure: (dried_kg * dried_dm) / (wet_kg * wet_dm),
    air_part: partOfAir(water_kg_h, ...air),
    heat_kw,
    mj_kg: (3.6 * heat_kw) / water_kg_h,
    corrected_kg_h: water_per_kg instanceof NoAnswer ? water_per_kg : water_kg_h / water_per_kg,
  };
}

/** The unweighted mean, or why one of the values is none. */
function meanOf(values: readonly (number | NoAnswer)[]): number | NoAnswer {
  let sum = 0;
  for (const value of values) {
    if (value instanceof NoAnswer) return value;
    sum += value;
  }
  return sum / values.length;
}

/** Water to carry off for a kg dried as stated, or what is missing of the statement. */
export function statedWater({ kg_h, dm_in, dm_out }: Stated): number | NoAnswer {
  const missing = Object.entries({ stated_kg_h: kg_h, stated_dm_in: dm_in, stated_dm_out: dm_out }).filter(
    ([, value]) => value === undefined,
  );
  if (dm_in === undefined || dm_out === undefined || kg_h === undefined)
    return new NoAnswer(`enter ${missing.map(([name]) => name).join(' and ')} to hold the runs against what was stated`);
  if (dm_in >= dm_out)
    throw new Refusal(
      'stated_dm_in',
      said`${dm_in} is not below stated_dm_out ${dm_out}`,
      'enter the dry matters before and after drying as stated',
    );
  return dm_out / dm_in - 1;
}

/** In this order: what spoils the runs comes before what they show. */
function verdictOn(runs: readonly RunFigures[], stated: number, lowest: Answer, highest: Answer): string {
  if (runs.some(({ closure }) => closure < CLOSES[0] || closure > CLOSES[1])) return 'weigh again';
  if (runs.some(({ air_part }) => air_part instanceof NoAnswer || air_part > SELF_HEATING_RATIO)) return 'measure the air again';
  if (runs.length < FEWEST_RUNS) return 'three runs are needed';
  if ((lowest as number) >= stated) return 'met';
  return (highest as number) < stated ? 'missed' : 'not settled: more runs';
}

/** The mean of the corrected outputs and its two-sided t limits: mean ± t·s/√n, from three runs up. */
function limitsOf(runs: readonly RunFigures[], level: number) {
  const values = runs.map(({ corrected_kg_h }) => corrected_kg_h);
  const corrected_mean = meanOf(values);
  const few = new NoAnswer(`three runs are needed for limits, not ${runs.length}`);
  const none = corrected_mean instanceof NoAnswer ? corrected_mean : runs.length < FEWEST_RUNS ? few : undefined;
  if (none) return { corrected_mean, scatter: none, student_t: none, lowest: none, highest: none };
  const mean = corrected_mean as number;
  const scatter = Math.sqrt(values.reduce<number>((sum, value) => sum + ((value as number) - mean) ** 2, 0) / (runs.length - 1));
  const student_t = studentQuantile(level, runs.length - 1);
  const reach = (student_t * scatter) / Math.sqrt(runs.length);
  return { corrected_mean, scatter, student_t, lowest: mean - reach, highest: mean + reach };
}

/**
 * The acceptance test of a dryer from weighed runs: does it do what was stated?
 *
 * The output is corrected to the stated dry matters, not to the day's air. Verdict, the first that fits: weigh again where dry
 * matter does not close within 5 %; measure the air again where more was carried than 1.25 times what it can; three runs are
 * needed; met where the lower limit is at least what was stated; missed where the upper is below it; else not settled.
 *
 * @param runs by their place in the table; undefined where a run was refused, which leaves no mean and no verdict
 * @param level of the two-sided limits
 */
export function dryerTrial(runs: readonly (Run | undefined)[], altitude_m: number, air_at: AirAt, stated: Stated, level: number) {
  const water_per_kg = statedWater(stated);
  const done = runs.filter((run) => run !== undefined).map((run) => runFigures(run, altitude_m, air_at, water_per_kg));
  const run_count = done.length;
  const spoilt = run_count < runs.length ? new NoAnswer('a run is refused: mend it, or take it out') : undefined;
  const limits = spoilt
    ? { corrected_mean: spoilt, scatter: spoilt, student_t: spoilt, lowest: spoilt, highest: spoilt }
    : limitsOf(done, level);
  const verdict: Answer =
    spoilt ?? (water_per_kg instanceof NoAnswer ? water_per_kg : verdictOn(done, stated.kg_h as number, limits.lowest, limits.highest));
  const columns = ['dried_kg_h', 'water_kg_h', 'closure', 'air_part', 'heat_kw', 'mj_kg', 'corrected_kg_h'] as const;
  const means = columns.map((column) => spoilt ?? meanOf(done.map((figures) => figures[column])));
  const blank = columns.slice(1).map(() => undefined);
  let next = 0;
  const rows: (Answer | undefined)[][] = [
    ...runs.map((run, k) => {
      const figures = run && done[next++];
      return [k + 1, ...columns.map((column) => figures?.[column])];
    }),
    ['mean', ...means],
    ['lowest', ...blank, limits.lowest],
    ['highest', ...blank, limits.highest],
    ['verdict', verdict, ...blank],
  ];
  return { run_count, water_per_kg, ...limits, verdict, rows };
}
