/** Heat capacity of liquid water, kJ/kg·K: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 32 (h = 4.186 t). */
export const WATER_KJ_KG_K = 4.186;

/**
 * Density of liquid water at atmospheric pressure, kg/m³.
 *
 * Kell 1975, J. Chem. Eng. Data 20:97, eq. 16. Holds from 0 to 150 °C. Above 100 °C water in a heating circuit is under
 * pressure, which adds less than 0.05 % at 5 bar. The divisor also circulates with two digits swapped (16.897850); ours
 * gives the tabulated densities.
 *
 * @param t_c temperature of the water, °C
 */
export function waterDensity(t_c: number): number {
  const above = ((((-280.54253e-12 * t_c + 105.56302e-9) * t_c - 46.170461e-6) * t_c - 7.9870401e-3) * t_c + 16.945176) * t_c + 999.83952;
  return above / (1 + 16.87985e-3 * t_c);
}
