import { defaultOf } from '../core/bibliography.ts';
import { airNeeded, drumNeeded } from '../domain/drying.ts';
import { supplyTemperature } from '../domain/heater.ts';
import { type Answer, NoAnswer } from '../domain/refusal.ts';
import { bufferTank } from '../domain/separation.ts';
import { said } from '../domain/spell.ts';
import { WATER_KJ_KG_K, waterDensity } from '../domain/water.ts';
import { inColdestMonth, inUsualAir, noDryer } from './dryer.ts';
import { answerOf } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import { itemOf } from './items.ts';
import { planIn, readMonths } from './months.ts';
import { type Plan, planOf } from './plan.ts';
import { refusalsOf } from './standing.ts';

/** What is asked of the kit beside the plan itself. */
interface Asked {
  /** Share by which the kit is to make more than the beds need. */
  readonly margin: number;
  readonly retention_hours: number;
  /** By how much the hot water may cool in the heater, K. */
  readonly water_fall_k: number;
}

/** A plan in one state of the outdoor air: the months given, or the coldest month of the items. */
interface Weather {
  readonly plan: Plan;
  readonly outdoor: typeof inUsualAir | typeof inColdestMonth;
}

/** More slurry than any cow makes. */
const MOST_LITRES = itemOf('litres_cow_day').parameter.range?.[1] ?? 150;
/** Share of a drum that is taken to be filled where none is given. Judgement, on the safe side of common practice. */
const USUAL_FILL = 0.15;

const buffer_margin = defaultOf('buffer_margin').value;

/** Finished fibre that a day is to bring, t. */
const wanted_t_day = ({ needs }: Plan, { margin }: Asked): number => needs.demand_t_day * (1 + margin);

/** Slurry with its wash water that it takes, t a day. */
function slurryNeeded(plan: Plan, asked: Asked): number {
  const { slurry_dm, cake_dm, capture } = plan.inputs;
  return (wanted_t_day(plan, asked) / plan.kit.dried_per_cake) * (cake_dm / (slurry_dm * capture));
}

function litresNeeded(plan: Plan, asked: Asked): number {
  const { cows, water_litres_cow_day } = plan.inputs;
  const litres = (1000 * slurryNeeded(plan, asked)) / cows - water_litres_cow_day;
  if (litres <= MOST_LITRES) return litres;
  const enough = Math.ceil((1000 * slurryNeeded(plan, asked)) / (plan.inputs.litres_cow_day + water_litres_cow_day));
  throw new NoAnswer(said`it takes ${Math.ceil(litres)} litres a cow, more than a cow makes: it would take the slurry of ${enough} cows`);
}

function pressNeeded(plan: Plan, asked: Asked): number {
  const hours = plan.inputs.press_hours_day * plan.kit.duty;
  if (hours === 0) throw new NoAnswer('the press has no hours to run: see Press hours a day');
  return slurryNeeded(plan, asked) / hours;
}

function driedPerHour(plan: Plan, asked: Asked): number {
  if (!plan.needs.has_dryer) throw noDryer;
  if (plan.inputs.dryer_hours_day === 0) throw new NoAnswer('the dryer has no hours to run: see Dryer hours a day');
  return (1000 * wanted_t_day(plan, asked)) / plan.inputs.dryer_hours_day;
}

/** Air and heat at the temperature that the hot water gives, its litres taken as enough. */
function airAndHeat({ plan, outdoor }: Weather, asked: Asked) {
  const { inputs } = plan;
  const dried_kg_h = driedPerHour(plan, asked);
  const [ambient_c, ambient_rh] = [inputs[outdoor.c], inputs[outdoor.rh]];
  const { water_c, effectiveness, altitude_m, air_at } = inputs;
  // How much air there is does not matter while the water is enough.
  const { supply_c } = supplyTemperature(1, ambient_c, ambient_rh, Number.POSITIVE_INFINITY, water_c, effectiveness, altitude_m, air_at);
  const state = [ambient_c, ambient_rh, supply_c, altitude_m, air_at, inputs.exhaust_rh, inputs.heat_loss, undefined] as const;
  return airNeeded(dried_kg_h, inputs.cake_dm, inputs.target_dm, ...state);
}

/** Hot water that gives this heat while it cools by so much: the balance of hotWaterHeat, turned round. */
const litresFor = (heat_kw: number, water_c: number, fall_k: number): number =>
  (1000 * 3600 * heat_kw) / (waterDensity(water_c) * WATER_KJ_KG_K * fall_k);

function drumFor(plan: Plan, asked: Asked): number {
  const m3_h = driedPerHour(plan, asked) / plan.needs.fibre_density_kg_m3;
  return drumNeeded(m3_h, asked.retention_hours, plan.given.maybe('drum_fill') ?? USUAL_FILL).drum_m3;
}

/** The most that any of the months asks for; a month that cannot be had at all outdoes every other. */
function worst(weathers: readonly Weather[], needed: (weather: Weather) => number): Answer {
  const answers = weathers.map((weather) => answerOf(() => needed(weather)));
  const without = answers.find((answer) => typeof answer !== 'number');
  return without ?? Math.max(...(answers as readonly number[]));
}

/** The least kit for this herd in its worst month, beside what is planned. */
export function size(items: Table, values: Table | undefined, table: Table | undefined, asked: Asked) {
  const given = pairUp(items, values);
  const [refused] = refusalsOf(planOf(given));
  if (refused) throw refused;
  const base = planOf(given);
  const months = table ? readMonths(table).filter(({ days }) => days > 0) : [];
  const bad = months.find((month) => month.refused)?.refused;
  if (bad) throw bad;
  const yearDays = months.reduce((sum, { days }) => sum + days, 0);
  const weathers: readonly Weather[] =
    months.length === 0
      ? [{ plan: base, outdoor: inColdestMonth }]
      : months.map((month) => ({ plan: planIn(given, month, yearDays), outdoor: inUsualAir }));
  const now = (work: () => number | undefined): Answer | undefined => answerOf(work as () => Answer);
  const { inputs } = base;
  const rows: readonly (readonly [what: string, unit: string, now: Answer | undefined, needed: Answer])[] = [
    ['Slurry per cow', 'litres/day', now(() => inputs.litres_cow_day), worst(weathers, ({ plan }) => litresNeeded(plan, asked))],
    ['Press t per hour running', 't/h', now(() => inputs.press_t_h), worst(weathers, ({ plan }) => pressNeeded(plan, asked))],
    ['Air m3 per hour', 'm³/h', ofDryer(base, () => inputs.air_m3_h), worst(weathers, (weather) => airAndHeat(weather, asked).air_m3_h)],
    ['Heat available kW', 'kW', now(() => given.maybe('heat_kw')), worst(weathers, (weather) => airAndHeat(weather, asked).heat_kw)],
    [
      'Hot water litres per hour',
      'litres/h',
      now(() => given.maybe('water_l_h')),
      worst(weathers, (weather) => litresFor(airAndHeat(weather, asked).heat_kw, weather.plan.inputs.water_c, asked.water_fall_k)),
    ],
    ['Drum m3', 'm³', now(() => given.maybe('drum_m3')), worst(weathers, ({ plan }) => drumFor(plan, asked))],
    ['Buffer m3', 'm³', undefined, answerOf(() => bufferTank(base.kit.slurry_t_day, inputs.press_hours_day, buffer_margin).buffer_m3)],
  ];
  return {
    rows: rows.map(([what, unit, planned, needed]) => [what, unit, planned, needed, timesOf(planned, needed)]),
  };
}

const ofDryer = (plan: Plan, work: () => number): Answer | undefined =>
  answerOf(() => plan.needs.has_dryer) === false ? undefined : answerOf(work);

function timesOf(planned: Answer | undefined, needed: Answer): Answer | undefined {
  if (typeof needed !== 'number') return needed;
  return typeof planned === 'number' && planned > 0 ? needed / planned : undefined;
}
