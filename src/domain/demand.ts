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
