import { NoAnswer } from './refusal.ts';

/**
 * Moist air as a mixture of perfect gases, by the equations of ASHRAE Handbook Fundamentals 2017 (SI), ch. 1.
 * Their humidity ratio runs below that of the Handbook's real-gas table: 0.3–0.7 % up to 50 °C, 1.3 % at 85 °C.
 * `rh` is a fraction, `humidity_ratio` kg of water per kg of dry air, enthalpy kJ per kg of dry air above 0 °C.
 */

export const ZERO_C_IN_K = 273.15;
/** Molar mass of water over that of dry air, eq. 20. */
const MASS_RATIO = 0.621945;
const DRY_AIR_KJ_KG_K = 1.006;
const VAPOUR_KJ_KG_K = 1.86;

/** Pressure of the standard atmosphere, Pa; eq. 3, from −5,000 to 11,000 m. */
export function standardPressure(altitude_m: number): number {
  return 101_325 * (1 - 2.25577e-5 * altitude_m) ** 5.2559;
}

/** Natural logarithm of the saturation pressure in Pa: nearly straight in temperature, so that solving on it is quick. */
function logSaturation(t_c: number): number {
  const t = t_c + ZERO_C_IN_K;
  return t_c < 0
    ? -5674.5359 / t + 6.3925247 + (((-9.484024e-13 * t + 2.0747825e-9) * t + 6.2215701e-7) * t - 9.677843e-3) * t + 4.1635019 * Math.log(t)
    : -5800.2206 / t + 1.3914993 + ((-1.4452093e-8 * t + 4.1764768e-5) * t - 4.8640239e-2) * t + 6.5459673 * Math.log(t);
}

/** Its derivative, per K. */
export function logSaturationSlope(t_c: number): number {
  const t = t_c + ZERO_C_IN_K;
  return t_c < 0
    ? 5674.5359 / (t * t) + ((-4 * 9.484024e-13 * t + 3 * 2.0747825e-9) * t + 2 * 6.2215701e-7) * t - 9.677843e-3 + 4.1635019 / t
    : 5800.2206 / (t * t) + (-3 * 1.4452093e-8 * t + 2 * 4.1764768e-5) * t - 4.8640239e-2 + 6.5459673 / t;
}

/**
 * Pressure of saturated water vapour, Pa: over ice below 0 °C (eq. 5, from −100 °C), over water from there up (eq. 6, to 200 °C).
 * The two meet at the triple point, 0.01 °C, so that there is a jump of 0.01 % at 0 °C.
 */
export function saturationPressure(t_c: number): number {
  return Math.exp(logSaturation(t_c));
}

/** Humidity ratio, kg/kg; eq. 12 and 20. Only where the vapour's pressure is below `pressure_pa`. */
export function humidityRatio(t_c: number, rh: number, pressure_pa: number): number {
  const vapour_pa = rh * saturationPressure(t_c);
  return (MASS_RATIO * vapour_pa) / (pressure_pa - vapour_pa);
}

/** Relative humidity, fraction; eq. 12 and 20. Above 1 where the air cannot hold that much. */
export function relativeHumidity(t_c: number, humidity_ratio: number, pressure_pa: number): number {
  return (pressure_pa * humidity_ratio) / (MASS_RATIO + humidity_ratio) / saturationPressure(t_c);
}

/** Heat to warm moist air by one degree, kJ per kg of dry air and K; from eq. 30. */
export function heatCapacity(humidity_ratio: number): number {
  return DRY_AIR_KJ_KG_K + VAPOUR_KJ_KG_K * humidity_ratio;
}

/** Enthalpy, kJ per kg of dry air; eq. 30. */
export function enthalpy(t_c: number, humidity_ratio: number): number {
  return DRY_AIR_KJ_KG_K * t_c + humidity_ratio * (2501 + VAPOUR_KJ_KG_K * t_c);
}

/** Volume, m³ of moist air per kg of dry air; eq. 26. */
export function specificVolume(t_c: number, humidity_ratio: number, pressure_pa: number): number {
  return (287.042 * (t_c + ZERO_C_IN_K) * (1 + 1.607858 * humidity_ratio)) / pressure_pa;
}

/**
 * Temperature at which a function of temperature that rises through zero crosses it, °C: Newton's steps, halving the bracket
 * instead whenever a step would leave it. A crossing in the jump of the saturation pressure at 0 °C is 0 °C.
 *
 * @param value in logarithms of pressure, below zero at `low` and not below zero at `high`
 * @param slope its derivative
 */
function crossingTemperature(value: (t: number) => number, slope: (t: number) => number, low: number, high: number, start: number): number {
  let t = start;
  for (let step = 0; step < 100; step++) {
    const over = value(t);
    if (Math.abs(over) < 1e-12) return t;
    if (over > 0) high = t;
    else low = t;
    // So near to it that it would long have been met, were it not in the jump.
    if (high - low < 1e-12) return 0;
    const aimed = t - over / slope(t);
    t = aimed > low && aimed < high ? aimed : (low + high) / 2;
  }
  throw new NoAnswer('the state of the air could not be found from these figures; check the temperatures and humidities given');
}

/** Temperature at which the air's water begins to settle out, °C: eq. 5 and 6 solved for it. Below 0 °C it is the frost point. */
export function dewPoint(t_c: number, rh: number): number {
  const target = logSaturation(t_c) + Math.log(rh);
  // Straight in 1/T by Clausius and Clapeyron: close enough that two or three steps remain.
  const t = t_c + ZERO_C_IN_K;
  const start = t / (1 - Math.log(rh) / (logSaturationSlope(t_c) * t)) - ZERO_C_IN_K;
  return crossingTemperature((x) => logSaturation(x) - target, logSaturationSlope, -100, t_c, start);
}

/**
 * Temperature of air that has taken up liquid water, giving up its own heat, until it is at relative humidity `rh`, °C.
 *
 * enthalpy(t, w) - enthalpy(warm_c, humidity_ratio) == (w - humidity_ratio) * liquid_kj_kg, with w = humidityRatio(t, rh, pressure_pa)
 *
 * With `rh` 1 and the water at the answer's own temperature this is the thermodynamic wet-bulb temperature, eq. 31 and 33.
 * Solved on the logarithm of the vapour's pressure, which is nearly straight and has no pole where that pressure nears the air's.
 *
 * @param warm_c temperature before it takes up water; its relative humidity there must be below `rh`
 * @param humidity_ratio humidity ratio before, above 0
 * @param liquid_kj_kg enthalpy of the water taken up, kJ/kg
 */
export function humidifiedTemperature(
  warm_c: number,
  humidity_ratio: number,
  liquid_kj_kg: number,
  rh: number,
  pressure_pa: number,
): number {
  const held_kj_kg = enthalpy(warm_c, humidity_ratio) - humidity_ratio * liquid_kj_kg;
  const evaporation_kj_kg = (t: number) => 2501 + VAPOUR_KJ_KG_K * t - liquid_kj_kg;
  /** The humidity ratio for which the heat suffices; it falls as the temperature rises. */
  const afforded = (t: number) => (held_kj_kg - DRY_AIR_KJ_KG_K * t) / evaporation_kj_kg(t);
  const logOf = (w: number) => Math.log((pressure_pa * w) / (MASS_RATIO + w));
  const logRh = Math.log(rh);
  const slope = (t: number) => {
    const w = afforded(t);
    return logSaturationSlope(t) + (heatCapacity(w) * MASS_RATIO) / (evaporation_kj_kg(t) * w * (MASS_RATIO + w));
  };
  return crossingTemperature((t) => logRh + logSaturation(t) - logOf(afforded(t)), slope, -100, warm_c, warm_c);
}
