import { heatCapacity, humidityRatio, specificVolume, standardPressure, ZERO_C_IN_K } from './moist-air.ts';
import { NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';
import { WATER_KJ_KG_K, waterDensity } from './water.ts';

/** Where a fan's flow is read: hot, behind the heater, or cold, before it. */
export const airPlaces = ['supply', 'ambient'] as const;
export type AirAt = (typeof airPlaces)[number];

/** The highest supply temperature that the saturation equations cover, °C. */
const HOTTEST_C = 200;

/** Outdoor air as it goes through the heater: it takes up heat but no water, so its humidity ratio stays. */
export function outdoorAir(ambient_c: number, ambient_rh: number, altitude_m: number) {
  const pressure_pa = standardPressure(altitude_m);
  const humidity_ratio = humidityRatio(ambient_c, ambient_rh, pressure_pa);
  return { pressure_pa, humidity_ratio };
}

/** Temperature of the air where its flow was measured, °C. */
export const measuredAt = (ambient_c: number, supply_c: number, air_at: AirAt) => (air_at === 'supply' ? supply_c : ambient_c);

/**
 * Dry air in a measured flow, kg/h: the flow over the volume of moist air per kg of dry air, both where it was measured.
 * ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 3, 5, 6, 20 and 26.
 */
export function airFlow(air_m3_h: number, ambient_c: number, ambient_rh: number, supply_c: number, altitude_m: number, air_at: AirAt) {
  const { pressure_pa, humidity_ratio } = outdoorAir(ambient_c, ambient_rh, altitude_m);
  const measured_c = measuredAt(ambient_c, supply_c, air_at);
  const air_kg_h = air_m3_h / specificVolume(measured_c, humidity_ratio, pressure_pa);
  return { pressure_pa, humidity_ratio, measured_c, air_kg_h };
}

/** Air off a heater is never colder than the air before it; such a pair of readings is a slip. */
export function mustBeHeated(supply_c: number, ambient_c: number): void {
  if (supply_c >= ambient_c) return;
  throw new Refusal('supply_c', said`${supply_c} is below ambient_c ${ambient_c}`, 'enter the temperature of the air after the heater');
}

function mustBeHotter(water_c: number, ambient_c: number): void {
  if (water_c > ambient_c) return;
  throw new Refusal(
    'water_c',
    said`${water_c} is not above ambient_c ${ambient_c}`,
    'enter the temperature of the hot water to the heater',
  );
}

/** Heat to warm a flow of air and of water by one degree, kJ/h·K. Enthalpy of moist air: eq. 30; of water: eq. 32. */
function exchanged(flow: ReturnType<typeof airFlow>, water_l_h: number, water_c: number) {
  const air_kj_h_k = flow.air_kg_h * heatCapacity(flow.humidity_ratio);
  const water_kj_h_k = (water_l_h / 1000) * waterDensity(water_c) * WATER_KJ_KG_K;
  return { ...flow, air_kj_h_k, water_kj_h_k };
}

/**
 * Temperature to which a heat warms a flow of air, °C; Infinity where no temperature is enough.
 *
 * A flow measured hot holds less air the hotter it gets, so the temperature is on both sides of the balance
 * heat = V/v(T)·c·(T − T_a). The volume v is proportional to the absolute temperature, which leaves a linear equation.
 */
function warmedBy(heat_kj_h: number, air_m3_h: number, ambient_c: number, ambient_rh: number, altitude_m: number, air_at: AirAt): number {
  const { humidity_ratio, air_kg_h } = airFlow(air_m3_h, ambient_c, ambient_rh, ambient_c, altitude_m, air_at);
  const rise_c = heat_kj_h / (air_kg_h * heatCapacity(humidity_ratio));
  if (air_at === 'ambient') return ambient_c + rise_c;
  const perKelvin = rise_c / (ambient_c + ZERO_C_IN_K);
  return perKelvin < 1 ? ambient_c + rise_c / (1 - perKelvin) : Number.POSITIVE_INFINITY;
}

/**
 * Heat that hot water gives off between flow and return.
 *
 * heat_kw = water_kg_h / 3600 * 4.186 * (flow_c - return_c)
 *
 * The flow is taken as metered at the flow temperature. Density: Kell 1975, from 0 to 150 °C. The heat capacity is that of
 * warm water, 0.3 % low at 80 °C and 2 % low at 140 °C.
 *
 * @param water_l_h flow, litres per hour
 * @param flow_c temperature to the heater, °C
 * @param return_c temperature back from it, °C
 */
export function hotWaterHeat(water_l_h: number, flow_c: number, return_c: number) {
  if (return_c > flow_c) {
    throw new Refusal('return_c', said`${return_c} is above flow_c ${flow_c}`, 'enter the temperature of the water that comes back cooled');
  }
  const density_kg_m3 = waterDensity(flow_c);
  const water_kg_h = (water_l_h / 1000) * density_kg_m3;
  const heat_kw = (water_kg_h / 3600) * WATER_KJ_KG_K * (flow_c - return_c);
  return { density_kg_m3, water_kg_h, heat_kw };
}

/**
 * Temperature of air off a hot-water heater.
 *
 * supply_c = ambient_c + effectiveness * min(air_kj_h_k, water_kj_h_k) * (water_c - ambient_c) / air_kj_h_k
 *
 * Effectiveness of a heat exchanger by its definition (Kays and London; any heat-transfer textbook): heat passed over the
 * most that could pass, which the smaller of the two heat capacity flows sets. With too little water the air does not get hot.
 * Holds without frost or condensation on the coil.
 *
 * @param air_m3_h air, m³/h, measured at `air_at`
 * @param water_l_h hot water, litres per hour, metered at `water_c`
 * @param effectiveness of the heater, fraction
 */
export function supplyTemperature(
  air_m3_h: number,
  ambient_c: number,
  ambient_rh: number,
  water_l_h: number,
  water_c: number,
  effectiveness: number,
  altitude_m: number,
  air_at: AirAt,
) {
  mustBeHotter(water_c, ambient_c);
  const span_c = water_c - ambient_c;
  const water_gives_kj_h = effectiveness * (water_l_h / 1000) * waterDensity(water_c) * WATER_KJ_KG_K * span_c;
  const withAllOfTheWater = warmedBy(water_gives_kj_h, air_m3_h, ambient_c, ambient_rh, altitude_m, air_at);
  const supply_c = Math.min(ambient_c + effectiveness * span_c, withAllOfTheWater);
  const flow = airFlow(air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at);
  return { ...exchanged(flow, water_l_h, water_c), supply_c };
}

/**
 * Effectiveness of a hot-water heater from temperatures read on it.
 *
 * effectiveness = air_kj_h_k * (supply_c - ambient_c) / (min(air_kj_h_k, water_kj_h_k) * (water_c - ambient_c))
 *
 * The same definition as in `supplyTemperature`, turned round. Above 1 the readings cannot all be right.
 */
export function heaterEffectiveness(
  air_m3_h: number,
  ambient_c: number,
  ambient_rh: number,
  supply_c: number,
  water_l_h: number,
  water_c: number,
  altitude_m: number,
  air_at: AirAt,
) {
  mustBeHotter(water_c, ambient_c);
  mustBeHeated(supply_c, ambient_c);
  const flows = exchanged(airFlow(air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at), water_l_h, water_c);
  const passed_kj_h = flows.air_kj_h_k * (supply_c - ambient_c);
  const most_kj_h = Math.min(flows.air_kj_h_k, flows.water_kj_h_k) * (water_c - ambient_c);
  const ratio = passed_kj_h / most_kj_h;
  if (ratio > 1 + 1e-6) {
    if (supply_c > water_c) {
      throw new Refusal(
        'supply_c',
        said`${supply_c} is above water_c ${water_c}`,
        'check both thermometers: air cannot leave hotter than the water comes',
      );
    }
    throw new Refusal(
      'water_l_h',
      said`${water_l_h} litres/h gives off at most ${(most_kj_h / 3600).toFixed(1)} kW, but the air took up ${(passed_kj_h / 3600).toFixed(1)} kW`,
      'check the water meter first, then the air flow and where it was measured',
    );
  }
  return { ...flows, passed_kj_h, most_kj_h, effectiveness: Math.min(1, ratio) };
}

/**
 * Temperature that a heat source of known output gives a flow of air.
 *
 * heat_kw * 3600 == air_kg_h * heatCapacity(humidity_ratio) * (supply_c - ambient_c)
 *
 * Enthalpy of moist air at constant humidity ratio: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 30. No answer above 200 °C,
 * where the saturation equations end.
 *
 * @param heat_kw heat that reaches the air, kW
 */
export function heatedTemperature(
  air_m3_h: number,
  ambient_c: number,
  ambient_rh: number,
  heat_kw: number,
  altitude_m: number,
  air_at: AirAt,
) {
  const supply_c = warmedBy(heat_kw * 3600, air_m3_h, ambient_c, ambient_rh, altitude_m, air_at);
  if (supply_c > HOTTEST_C) {
    throw new NoAnswer(said`${heat_kw} kW is more than this air can take up below ${HOTTEST_C} °C; enter less heat or more air`);
  }
  const flow = airFlow(air_m3_h, ambient_c, ambient_rh, supply_c, altitude_m, air_at);
  const air_kj_h_k = flow.air_kg_h * heatCapacity(flow.humidity_ratio);
  return { ...flow, air_kj_h_k, supply_c };
}
