import { describe, expect, test } from 'vitest';
import { airViscosity, fallSpeed, settlingSpeed } from '../../src/domain/settling.ts';

/**
 * Gunn and Kinzer 1949, Journal of Meteorology 6:243, table 2, whole, as quoted in a public cloud-physics code: diameter of
 * the drop in mm and its speed in m/s in still air at 20 °C and 101,325 Pa. Density of water at 20 °C: 998.2 kg/m³.
 */
const drops: readonly (readonly [diameter_mm: number, m_s: number])[] = [
  [0.1, 0.27],
  [0.2, 0.72],
  [0.3, 1.17],
  [0.4, 1.62],
  [0.5, 2.06],
  [0.6, 2.47],
  [0.7, 2.87],
  [0.8, 3.27],
  [0.9, 3.67],
  [1.0, 4.03],
  [1.2, 4.64],
  [1.4, 5.17],
  [1.6, 5.65],
  [1.8, 6.09],
  [2.0, 6.49],
  [2.2, 6.9],
  [2.4, 7.27],
  [2.6, 7.57],
  [2.8, 7.82],
  [3.0, 8.06],
  [3.2, 8.26],
  [3.4, 8.44],
  [3.6, 8.6],
  [3.8, 8.72],
  [4.0, 8.83],
  [4.2, 8.92],
  [4.4, 8.98],
  [4.6, 9.03],
  [4.8, 9.07],
  [5.0, 9.09],
  [5.2, 9.12],
  [5.4, 9.14],
  [5.6, 9.16],
  [5.8, 9.17],
];

const againstMeasured = (diameter_mm: number, m_s: number) => settlingSpeed(diameter_mm, 998.2, 20).settling_m_s / m_s - 1;

describe('Gunn and Kinzer 1949, table 2: water drops in air at 20 °C', () => {
  /** The drag formula itself is good to about 5 % (memory); drops below 2 mm are round. */
  test.each(drops.filter(([mm]) => mm >= 0.2 && mm <= 1.8))('a drop of %d mm falls at %d m/s, within 5 %', (mm, m_s) => {
    expect(Math.abs(againstMeasured(mm, m_s))).toBeLessThan(0.05);
  });

  /** Disputed row, kept: two digits are printed, and Stokes's law, which holds there but for 10 %, gives less than 0.27 too. */
  test('a drop of 0.1 mm comes out 9 % below the 0.27 m/s printed', () => {
    expect(againstMeasured(0.1, 0.27)).toBeGreaterThan(-0.1);
    expect(againstMeasured(0.1, 0.27)).toBeLessThan(0);
  });

  /** No test of a sphere: drops from about 2 mm flatten as they fall, so they fall slower than a sphere would. */
  test.each(drops.filter(([mm]) => mm >= 2))('a drop of %d mm, flattened, falls at %d m/s, slower than a sphere', (mm, m_s) => {
    expect(againstMeasured(mm, m_s)).toBeGreaterThan(0);
  });
});

/**
 * Çengel and Cimbala, Fluid Mechanics, example 10-2 (data seen, speeds computed from them): ash of 50 µm and 1,240 kg/m³ in
 * air at −50 °C and 55 kPa, 287.058 J/(kg·K), 1.474e-5 Pa·s. Stokes's law gives 0.1145 m/s; its Reynolds number is 0.33,
 * where drag is 7 % above Stokes's and the particle so much slower. Tolerance: half of the last digit.
 */
test('volcanic ash of 50 µm falls at 0.1073 m/s, 6 % slower than by Stokes’s law', () => {
  const speed = fallSpeed(0.05, 1240, 55_000 / (287.058 * 223.15), 1.474e-5);
  expect(Math.abs(speed - 0.1073)).toBeLessThan(5e-5);
  expect(speed / 0.1145).toBeGreaterThan(0.93);
  expect(speed).toBeLessThan(0.1145);
});

/** Table of the properties of air at 1 atm in common textbooks (memory): Pa·s and kg/m³. Sutherland's law is within 1 %. */
test.each([
  [0, 1.729e-5, 1.292],
  [20, 1.825e-5, 1.204],
  [50, 1.963e-5, 1.092],
  [100, 2.181e-5, 0.9458],
])('air at %d °C has a viscosity of %d Pa·s and a density of %d kg/m³', (gas_c, viscosity, density) => {
  expect(Math.abs(airViscosity(gas_c) / viscosity - 1)).toBeLessThan(0.01);
  expect(Math.abs(settlingSpeed(1, 1000, gas_c).gas_kg_m3 / density - 1)).toBeLessThan(0.001);
});
