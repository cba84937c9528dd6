import { crossing } from './bisection.ts';
import { specificVolume, standardPressure, ZERO_C_IN_K } from './moist-air.ts';
import { NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';

/** m/s², standard gravity. */
const GRAVITY_M_S2 = 9.80665;

/** Sizes for which the fall of a sphere in air is worked out, mm: below, air no longer acts as a continuum. */
export const SMALLEST_PARTICLE_MM = 0.001;
export const LARGEST_PARTICLE_MM = 100;

/** Density of dry air at 101,325 Pa, kg/m³. */
const airDensity = (gas_c: number) => 1 / specificVolume(gas_c, 0, standardPressure(0));

/** Viscosity of air, Pa·s, by Sutherland's law. */
export const airViscosity = (gas_c: number) => {
  const kelvin = gas_c + ZERO_C_IN_K;
  return (1.716e-5 * (kelvin / ZERO_C_IN_K) ** 1.5 * (ZERO_C_IN_K + 110.4)) / (kelvin + 110.4);
};

/**
 * Drag coefficient of a sphere: Schiller and Naumann 1933, and Newton's 0.44 where that is larger, from a Reynolds
 * number near 1000. Taking the larger joins the two without the gap of 0.4 % that a switch at exactly 1000 leaves.
 */
export const sphereDrag = (reynolds: number) => Math.max((24 / reynolds) * (1 + 0.15 * reynolds ** 0.687), 0.44);

/**
 * Terminal speed of a falling sphere, m/s: where its drag carries its weight.
 *
 * The balance is solved for the Reynolds number: sphereDrag(reynolds) * reynolds ** 2 equals `pull`, which knows no
 * speed. Drag is at least Stokes's and at least Newton's, so their two answers bound the number from above.
 */
export function fallSpeed(diameter_mm: number, particle_kg_m3: number, gas_kg_m3: number, viscosity_pa_s: number): number {
  const diameter_m = diameter_mm / 1000;
  const pull = ((4 / 3) * gas_kg_m3 * (particle_kg_m3 - gas_kg_m3) * GRAVITY_M_S2 * diameter_m ** 3) / viscosity_pa_s ** 2;
  const highest = Math.min(pull / 24, Math.sqrt(pull / 0.44));
  const reynolds = crossing((number) => sphereDrag(number) * number ** 2 - pull, highest / 1000, highest) ?? highest;
  return (reynolds * viscosity_pa_s) / (gas_kg_m3 * diameter_m);
}

function airAround(particle_kg_m3: number, gas_c: number) {
  const gas_kg_m3 = airDensity(gas_c);
  if (particle_kg_m3 <= gas_kg_m3)
    throw new Refusal(
      'particle_kg_m3',
      said`${particle_kg_m3} is not above that of air`,
      'enter the density of the particle itself, not of a heap',
    );
  return { gas_kg_m3, viscosity_pa_s: airViscosity(gas_c) };
}

/**
 * Speed at which a particle falls through still air; air rising faster carries it off.
 *
 * 3 * sphereDrag(reynolds) * gas_kg_m3 * settling_m_s ** 2 = 4 * 9.80665 * (particle_kg_m3 - gas_kg_m3) * diameter_m
 *
 * Drag of a sphere by Schiller and Naumann 1933, see sphereDrag; dry air at 101,325 Pa. Holds for one round particle
 * between 0.001 and 100 mm. Fibres are long and flat and fall slower: an upper bound.
 *
 * @param diameter_mm diameter, mm
 * @param particle_kg_m3 density of the particle itself, kg/m³
 * @param gas_c temperature of the air, °C
 */
export function settlingSpeed(diameter_mm: number, particle_kg_m3: number, gas_c: number) {
  const { gas_kg_m3, viscosity_pa_s } = airAround(particle_kg_m3, gas_c);
  const settling_m_s = fallSpeed(diameter_mm, particle_kg_m3, gas_kg_m3, viscosity_pa_s);
  const reynolds = (gas_kg_m3 * settling_m_s * diameter_mm) / 1000 / viscosity_pa_s;
  return { gas_kg_m3, viscosity_pa_s, settling_m_s, reynolds };
}

/**
 * Largest particle that rising air blows out; coarser ones fall into the bin: the size that settlingSpeed gives this speed.
 *
 * 3 * sphereDrag(reynolds) * gas_kg_m3 * speed_m_s ** 2 = 4 * 9.80665 * (particle_kg_m3 - gas_kg_m3) * diameter_m
 *
 * Holds where settlingSpeed does. Real chimneys have slower air at the wall and gusts: a planning figure.
 *
 * @param speed_m_s speed of the air upwards, m/s
 * @param particle_kg_m3 density of the particle itself, kg/m³
 * @param gas_c temperature of the air, °C
 */
export function carryover(speed_m_s: number, particle_kg_m3: number, gas_c: number) {
  const { gas_kg_m3, viscosity_pa_s } = airAround(particle_kg_m3, gas_c);
  const leftOver = (diameter_mm: number) => {
    const reynolds = (gas_kg_m3 * speed_m_s * diameter_mm) / 1000 / viscosity_pa_s;
    const lift = 3 * sphereDrag(reynolds) * gas_kg_m3 * speed_m_s ** 2;
    return lift - (4 * GRAVITY_M_S2 * (particle_kg_m3 - gas_kg_m3) * diameter_mm) / 1000;
  };
  if (leftOver(SMALLEST_PARTICLE_MM) < 0)
    throw new NoAnswer(said`air this slow blows nothing out: even ${SMALLEST_PARTICLE_MM} mm falls faster`);
  const diameter_mm = crossing(leftOver, SMALLEST_PARTICLE_MM, LARGEST_PARTICLE_MM);
  if (diameter_mm === undefined) throw new NoAnswer(said`air this fast blows out everything up to ${LARGEST_PARTICLE_MM} mm`);
  return { gas_kg_m3, viscosity_pa_s, diameter_mm };
}
