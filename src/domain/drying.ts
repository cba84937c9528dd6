import { type AirAt, airFlow, measuredAt, mustBeHeated, outdoorAir } from './heater.ts';
import { mustGetDrier } from './mass-balance.ts';
import { dewPoint, heatCapacity, humidifiedTemperature, humidityRatio, relativeHumidity, specificVolume } from './moist-air.ts';
import { NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';
import { WATER_KJ_KG_K } from './water.ts';

/** Dry matter beyond which how fibre holds its water (sorption) is not known, so that the air's balance no longer tells. */
export const DRIEST_FIBRE = 0.8;

function mustBeKnownFibre(dm_in: number, dm_out: number): void {
  mustGetDrier(dm_in, dm_out);
  if (dm_out <= DRIEST_FIBRE) return;
  throw new Refusal('dm_out', said`${dm_out} is above 0.80, and no sorption data is held for fibre that dry`, 'enter at most 0.80');
}

/**
 * Heat that warms outdoor air to the supply temperature.
 *
 * heat_kw = air_kg_h * (enthalpy(supply_c, humidity_ratio) - enthalpy(ambient_c, humidity_ratio)) / 3600
 *
 * ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3, 5, 6, 20, 26 and 30.
 *
 * @param air_m3_h air, m³/h, measured at `air_at`
 * @param ambient_c outdoor temperature, °C
 * @param ambient_rh outdoor relative humidity, fraction
 * @param supply_c temperature after the heater, °C
 * @param altitude_m altitude, m, which sets the pressure
 */
export function dryingHeat(air_m3_h: number, ambient_c: number, ambient_rh: number, supply_c: number, altitude_m: number, air_at: AirAt) {
  mustBeHeated(supply_c, ambient_c);
  const flow = airFlow(air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at);
  const heat_kw = heatOf(flow.air_kg_h, flow.humidity_ratio, ambient_c, supply_c);
  return { ...flow, heat_kw };
}

const heatOf = (air_kg_h: number, humidity_ratio: number, ambient_c: number, supply_c: number) =>
  (air_kg_h * heatCapacity(humidity_ratio) * (supply_c - ambient_c)) / 3600;

/**
 * State of the exhaust and what each kg of dry air carries off.
 *
 * The air gives up `heat_loss` of its heat, then takes up water until it is at `exhaust_rh`:
 * enthalpy(exhaust_c, exhaust_humidity_ratio) ==
 *   enthalpy(warm_c, humidity_ratio) + (exhaust_humidity_ratio - humidity_ratio) * 4.186 * fibre_c
 *
 * At constant humidity ratio enthalpy is linear in temperature, so a share of the heat lost is the same share of the rise:
 * warm_c = supply_c - heat_loss * (supply_c - ambient_c).
 */
function exhaustAir(
  outdoor: { readonly pressure_pa: number; readonly humidity_ratio: number },
  ambient_c: number,
  supply_c: number,
  exhaust_rh: number,
  heat_loss: number,
  feed_c: number | undefined,
) {
  mustBeHeated(supply_c, ambient_c);
  const { pressure_pa, humidity_ratio } = outdoor;
  const fibre_c = feed_c ?? Math.max(ambient_c, 0);
  const warm_c = supply_c - heat_loss * (supply_c - ambient_c);
  const warm_rh = relativeHumidity(warm_c, humidity_ratio, pressure_pa);
  // Within the last digits of it, what is carried off would be nothing but rounding.
  if (warm_rh > exhaust_rh * (1 - 1e-9)) {
    const before = `at ${warm_c.toFixed(1)} °C it is at ${(100 * warm_rh).toFixed(0)}% humidity before it meets the fibre`;
    throw new NoAnswer(`this air carries nothing off: ${before}, and exhaust_rh is ${(100 * exhaust_rh).toFixed(0)}%; it takes warmer air`);
  }
  const exhaust_c = humidifiedTemperature(warm_c, humidity_ratio, WATER_KJ_KG_K * fibre_c, exhaust_rh, pressure_pa);
  const exhaust_humidity_ratio = humidityRatio(exhaust_c, exhaust_rh, pressure_pa);
  return { fibre_c, warm_c, exhaust_c, exhaust_humidity_ratio };
}

/**
 * Water that warm air carries off in a dryer, and its exhaust.
 *
 * evaporation_kg_h = air_kg_h * (exhaust_humidity_ratio - humidity_ratio)
 *
 * Steady mass and energy balance of the air and the water it takes up: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3, 5, 6, 20,
 * 26, 30 and, with the exhaust saturated and no loss, 33. How humid the exhaust gets is given, not worked out: it depends on drum,
 * flights and filling. The heat that the solids themselves take out, about 3 % with pressed fibre, sits inside `heat_loss`; heat
 * that fibre makes by itself (composting) is left out. Supply above 100 °C is as good as below.
 *
 * @param exhaust_rh relative humidity the exhaust reaches, fraction
 * @param heat_loss fraction of the heat given to the air that is lost before it can evaporate anything
 * @param feed_c temperature of the fibre, °C; undefined: that of the outdoor air, but not below 0
 */
export function evaporation(
  air_m3_h: number,
  ambient_c: number,
  ambient_rh: number,
  supply_c: number,
  altitude_m: number,
  air_at: AirAt,
  exhaust_rh: number,
  heat_loss: number,
  feed_c: number | undefined,
) {
  const flow = airFlow(air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at);
  const { pressure_pa, humidity_ratio, measured_c, air_kg_h } = flow;
  const exhaust = exhaustAir(flow, ambient_c, supply_c, exhaust_rh, heat_loss, feed_c);
  const { fibre_c, warm_c, exhaust_c, exhaust_humidity_ratio } = exhaust;
  const heat_kw = heatOf(air_kg_h, humidity_ratio, ambient_c, supply_c);
  const evaporation_kg_h = air_kg_h * (exhaust_humidity_ratio - humidity_ratio);
  // Listed one by one: spreading the two objects makes the whole function ten times slower.
  return {
    pressure_pa,
    humidity_ratio,
    measured_c,
    air_kg_h,
    heat_kw,
    fibre_c,
    warm_c,
    exhaust_c,
    exhaust_humidity_ratio,
    exhaust_dew_point_c: dewPoint(exhaust_c, exhaust_rh),
    exhaust_m3_h: air_kg_h * specificVolume(exhaust_c, exhaust_humidity_ratio, pressure_pa),
    heat_mj_kg: (heat_kw * 3.6) / evaporation_kg_h,
    evaporation_kg_h,
  };
}

/** The exhaust as a table: what a hygrometer, a thermometer and a heat meter on the dryer should read. Equations: `evaporation`. */
export function exhaustState(...given: Parameters<typeof evaporation>) {
  const steps = evaporation(...given);
  const exhaust_rh = given[6];
  const rows = [
    ['temperature', steps.exhaust_c, '°C'],
    ['relative humidity', exhaust_rh, 'fraction'],
    ['humidity ratio', steps.exhaust_humidity_ratio, 'kg/kg'],
    ['dew point', steps.exhaust_dew_point_c, '°C'],
    ['flow', steps.exhaust_m3_h, 'm³/h'],
    ['evaporation', steps.evaporation_kg_h, 'kg/h'],
    ['heat', steps.heat_kw, 'kW'],
    ['heat per kg of water', steps.heat_mj_kg, 'MJ/kg'],
  ] as const;
  return { ...steps, rows };
}

/**
 * Dried fibre an hour that the air has the means to make.
 *
 * dried_kg_h = evaporation_kg_h / (dm_out / dm_in - 1)
 *
 * `evaporation` and the balance of `waterToEvaporate`. Refused above 0.80 dry matter: no sorption data for such fibre.
 *
 * @param dm_in dry matter of the pressed fibre, fraction of fresh mass
 * @param dm_out dry matter of the dried fibre
 */
export function driedOutput(dm_in: number, dm_out: number, ...given: Parameters<typeof evaporation>) {
  mustBeKnownFibre(dm_in, dm_out);
  const steps = evaporation(...given);
  const dried_kg_h = steps.evaporation_kg_h / (dm_out / dm_in - 1);
  return { ...steps, dried_kg_h };
}

/**
 * Air that a wanted output takes, with the heat to warm it: `driedOutput` turned round.
 *
 * air_kg_h = water_kg_h / (exhaust_humidity_ratio - humidity_ratio)
 *
 * @param dried_kg_h dried fibre wanted, kg/h
 */
export function airNeeded(
  dried_kg_h: number,
  dm_in: number,
  dm_out: number,
  ambient_c: number,
  ambient_rh: number,
  supply_c: number,
  altitude_m: number,
  air_at: AirAt,
  exhaust_rh: number,
  heat_loss: number,
  feed_c: number | undefined,
) {
  mustBeKnownFibre(dm_in, dm_out);
  const water_kg_h = dried_kg_h * (dm_out / dm_in - 1);
  const { pressure_pa, humidity_ratio } = outdoorAir(ambient_c, ambient_rh, altitude_m);
  const exhaust = exhaustAir({ pressure_pa, humidity_ratio }, ambient_c, supply_c, exhaust_rh, heat_loss, feed_c);
  const air_kg_h = water_kg_h / (exhaust.exhaust_humidity_ratio - humidity_ratio);
  const heat_kw = heatOf(air_kg_h, humidity_ratio, ambient_c, supply_c);
  const measured_c = measuredAt(ambient_c, supply_c, air_at);
  const air_m3_h = air_kg_h * specificVolume(measured_c, humidity_ratio, pressure_pa);
  return { water_kg_h, pressure_pa, humidity_ratio, ...exhaust, air_kg_h, heat_kw, measured_c, air_m3_h };
}

/** Up to this ratio of claimed to possible evaporation, heat that no meter shows, from the fibre itself, may explain it. Judgement. */
export const SELF_HEATING_RATIO = 1.25;

function verdictOn(ratio: number): string {
  if (ratio <= 1) return 'possible';
  return ratio <= SELF_HEATING_RATIO ? 'measure it: self-heating of the fibre may explain it' : 'not with this air';
}

/** The most water that air can carry off, which no dryer reaches: the exhaust saturated and no heat lost. Equations: `evaporation`. */
export function mostCarried(air_m3_h: number, ambient_c: number, ambient_rh: number, supply_c: number, altitude_m: number, air_at: AirAt) {
  const flow = airFlow(air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at);
  const exhaust = exhaustAir(flow, ambient_c, supply_c, 1, 0, undefined);
  return { ...flow, ...exhaust, most_kg_h: flow.air_kg_h * (exhaust.exhaust_humidity_ratio - flow.humidity_ratio) };
}

/**
 * A stated output against the most that the air can carry.
 *
 * ratio = water_kg_h / most_kg_h
 *
 * The most is `mostCarried`. Refused above 0.80 dry matter.
 *
 * @param claimed_kg_h stated output of dried fibre, kg/h
 */
export function claim(
  claimed_kg_h: number,
  dm_in: number,
  dm_out: number,
  air_m3_h: number,
  ambient_c: number,
  ambient_rh: number,
  supply_c: number,
  altitude_m: number,
  air_at: AirAt,
) {
  mustBeKnownFibre(dm_in, dm_out);
  const water_kg_h = claimed_kg_h * (dm_out / dm_in - 1);
  const most = mostCarried(air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at);
  const ratio = water_kg_h / most.most_kg_h;
  return { water_kg_h, ...most, verdict: verdictOn(ratio), ratio };
}

/**
 * Time that the fibre stays in the drum.
 *
 * hours = drum_m3 * fill * density_kg_m3 / kg_h
 *
 * Hold-up over throughput. A mean: single particles stay shorter or longer.
 *
 * @param fill share of the drum's volume that is filled, fraction
 * @param density_kg_m3 bulk density of the dried fibre, kg/m³
 * @param kg_h dried fibre, kg/h
 */
export function retention(drum_m3: number, fill: number, density_kg_m3: number, kg_h: number) {
  const held_kg = drum_m3 * fill * density_kg_m3;
  const hours = held_kg / kg_h;
  return { held_kg, hours };
}

/** Drum that a stated output and retention need, m³: drum_m3 = m3_h * hours / fill. `retention` turned round, by volume. */
export function drumNeeded(m3_h: number, hours: number, fill: number) {
  const held_m3 = m3_h * hours;
  const drum_m3 = held_m3 / fill;
  return { held_m3, drum_m3 };
}

/**
 * Heat lost through the skin of a drum.
 *
 * loss_kw = u_w_m2k * area_m2 * (inside_c - ambient_c) / 1000, area_m2 = π·d·l + π·d²/2
 *
 * Steady heat transfer through a wall (any textbook): mantle and both ends at one temperature. inside_c is the mean of supply
 * and exhaust. Its share of `dryingHeat` is the shell's part of heat_loss.
 *
 * @param diameter_m diameter of the drum, m
 * @param length_m its length, m
 * @param u_w_m2k heat transfer coefficient from the air inside to that outside, W/m²·K
 */
export function shellLoss(diameter_m: number, length_m: number, inside_c: number, ambient_c: number, u_w_m2k: number) {
  if (inside_c < ambient_c)
    throw new Refusal('inside_c', said`${inside_c} is below ambient_c ${ambient_c}`, 'enter the mean of supply and exhaust temperature');
  const area_m2 = Math.PI * diameter_m * length_m + (Math.PI * diameter_m ** 2) / 2;
  return { area_m2, loss_kw: (u_w_m2k * area_m2 * (inside_c - ambient_c)) / 1000 };
}

/** Days that a store lasts: days = m3 * density_kg_m3 / 1000 / t_day. */
export function stockDays(m3: number, density_kg_m3: number, t_day: number) {
  const stock_t = (m3 * density_kg_m3) / 1000;
  const days = stock_t / t_day;
  return { stock_t, days };
}
