/**
 * Bedding that lies to a given depth in one cubicle.
 *
 * litres = 1000 * length_m * width_m * depth_m
 *
 * Geometry of a level, rectangular bed; a heaped or hollow one needs its mean depth.
 *
 * @param length_m length of the bedded part, m
 * @param width_m width of the bedded part, m
 * @param depth_m depth laid, m
 */
export function layingDepth(length_m: number, width_m: number, depth_m: number) {
  return { litres: 1000 * length_m * width_m * depth_m };
}

/**
 * Bedding laid in a cubicle, spread over the days until the next time.
 *
 * kg_cubicle_day = litres / 1000 * density_kg_m3 / interval_days
 *
 * Holds for the density as it is laid, not as it lies trodden.
 *
 * @param litres bedding laid in a cubicle each time, litres
 * @param interval_days days from one bedding to the next
 * @param density_kg_m3 bulk density as laid, kg/m³, fresh mass
 */
export function cubicleDemand(litres: number, interval_days: number, density_kg_m3: number) {
  const kg_each_time = (litres / 1000) * density_kg_m3;
  const kg_cubicle_day = kg_each_time / interval_days;
  return { kg_each_time, kg_cubicle_day };
}

/**
 * Bedding that a herd uses in a year, with what is lost before it reaches a cubicle.
 *
 * t_year = cubicles * kg_cubicle_day * housed_days / (1 - loss) / 1000
 *
 * Mass balance. Holds for loss below 1.
 *
 * @param cubicles cubicles bedded
 * @param kg_cubicle_day bedding laid, kg per cubicle per day, fresh mass
 * @param housed_days days a year that the cubicles are bedded
 * @param loss fraction lost in store, handling and dosing
 */
export function herdDemand(cubicles: number, kg_cubicle_day: number, housed_days: number, loss: number) {
  const laid_t_year = (cubicles * kg_cubicle_day * housed_days) / 1000;
  const t_year = laid_t_year / (1 - loss);
  return { laid_t_year, t_year };
}

/**
 * The mass of another material that fills the same space.
 *
 * kg_other = kg / density_from * density_to
 *
 * Beds are laid by volume, so materials compare by volume. Says nothing of how long each lasts.
 *
 * @param kg mass of the first material, kg
 * @param density_from its bulk density, kg/m³
 * @param density_to bulk density of the other, kg/m³
 */
export function sameVolume(kg: number, density_from: number, density_to: number) {
  const volume_m3 = kg / density_from;
  const kg_other = volume_m3 * density_to;
  return { volume_m3, kg_other };
}

/**
 * Whole loads that carry a quantity: rounded up, except that a sum which differs from a whole number only by
 * the computer's own rounding counts as that number (30 / 0.1 is 300 loads, not 301).
 */
export function wholeLoads(quantity: number, load: number): number {
  const loads = quantity / load;
  const nearest = Math.round(loads);
  return Math.abs(loads - nearest) <= 1e-9 * nearest ? nearest : Math.ceil(loads);
}

/**
 * Times the dispenser is filled to bed every cubicle once.
 *
 * loads = cubicles * litres / 1000 / dispenser_m3, rounded up
 *
 * @param cubicles cubicles bedded
 * @param litres bedding laid in a cubicle each time, litres
 * @param dispenser_m3 what the dispenser holds, m³
 */
export function dispenserLoads(cubicles: number, litres: number, dispenser_m3: number) {
  const bedding_m3 = (cubicles * litres) / 1000;
  const loads = wholeLoads(bedding_m3, dispenser_m3);
  return { bedding_m3, loads };
}
