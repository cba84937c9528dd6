import { NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';

/**
 * Slurry that reaches the press, one cubic metre taken as one tonne.
 *
 * slurry_t_day = cows * (litres_cow_day + water_litres_cow_day) / 1000
 *
 * @param cows cows whose slurry is collected
 * @param litres_cow_day undiluted slurry, litres per cow per day
 * @param water_litres_cow_day wash and rain water that goes with it, litres per cow per day
 */
export function slurryProduced(cows: number, litres_cow_day: number, water_litres_cow_day: number) {
  const with_water_litres_cow_day = litres_cow_day + water_litres_cow_day;
  const slurry_t_day = (cows * with_water_litres_cow_day) / 1000;
  return { with_water_litres_cow_day, slurry_t_day };
}

/**
 * Dry matter of slurry once water has run in. The water is taken to carry no dry matter.
 *
 * diluted_dm = dm * litres / (litres + water_litres)
 *
 * @param dm dry matter of the undiluted slurry, fraction
 * @param litres undiluted slurry, litres
 * @param water_litres water, litres over the same time
 */
export function dilutedDryMatter(dm: number, litres: number, water_litres: number) {
  const total_litres = litres + water_litres;
  return { total_litres, diluted_dm: (dm * litres) / total_litres };
}

function refuseUnlessPressed(slurry_dm: number, cake_dm: number) {
  if (slurry_dm >= cake_dm)
    throw new Refusal(
      'slurry_dm',
      said`${slurry_dm} is not below cake_dm ${cake_dm}`,
      'enter a dry matter below that of the pressed fibre',
    );
}

/**
 * Pressed fibre (cake) that comes from slurry.
 *
 * cake_t = slurry_t * slurry_dm * capture / cake_dm
 *
 * Dry-matter balance over the press; capture is the simple separation efficiency of Hjorth et al. 2010 for dry matter.
 * Holds for slurry_dm below cake_dm. Any one period: a day's slurry gives a day's cake.
 *
 * @param slurry_t slurry pressed, t
 * @param slurry_dm its dry matter as it reaches the press, fraction
 * @param cake_dm dry matter of the pressed fibre, fraction
 * @param capture share of the slurry's dry matter that ends in the cake
 */
export function pressedCake(slurry_t: number, slurry_dm: number, cake_dm: number, capture: number) {
  refuseUnlessPressed(slurry_dm, cake_dm);
  const dry_matter_t = slurry_t * slurry_dm;
  const caught_t = dry_matter_t * capture;
  return { dry_matter_t, caught_t, cake_t: caught_t / cake_dm };
}

/**
 * Dry matter of the liquid that a press leaves.
 *
 * liquid_dm = slurry_dm * (1 - capture) / (1 - slurry_dm * capture / cake_dm)
 *
 * What pressedCake leaves of the dry matter over what it leaves of the mass.
 *
 * @param slurry_dm dry matter of the slurry, fraction
 * @param cake_dm dry matter of the pressed fibre, fraction
 * @param capture share of the slurry's dry matter that ends in the cake
 */
export function liquidDryMatter(slurry_dm: number, cake_dm: number, capture: number) {
  refuseUnlessPressed(slurry_dm, cake_dm);
  const cake_share = (slurry_dm * capture) / cake_dm;
  const liquid_dm = (slurry_dm * (1 - capture)) / (1 - cake_share);
  return { cake_share, liquid_dm };
}

/**
 * Share of the slurry's dry matter that a press catches, from a sample of each of the three streams.
 *
 * capture = cake_dm * (slurry_dm - liquid_dm) / (slurry_dm * (cake_dm - liquid_dm))
 *
 * The two balances of pressedCake and liquidDryMatter solved for capture. Holds for liquid_dm < slurry_dm < cake_dm.
 * A small error in slurry_dm or liquid_dm moves the answer far: sample all three at the same time, more than once.
 *
 * @param slurry_dm dry matter of the slurry, fraction
 * @param cake_dm dry matter of the pressed fibre, fraction
 * @param liquid_dm dry matter of the liquid, fraction
 */
export function captureShare(slurry_dm: number, cake_dm: number, liquid_dm: number) {
  refuseUnlessPressed(slurry_dm, cake_dm);
  if (liquid_dm >= slurry_dm)
    throw new Refusal('liquid_dm', said`${liquid_dm} is not below slurry_dm ${slurry_dm}`, 'enter a dry matter below that of the slurry');
  const cake_share = (slurry_dm - liquid_dm) / (cake_dm - liquid_dm);
  const capture = (cake_share * cake_dm) / slurry_dm;
  return { cake_share, capture };
}

/**
 * Slurry that a press takes in a day when it runs and rests by turns.
 *
 * t_day = t_h_running * minutes_on / (minutes_on + minutes_off) * hours_day
 *
 * @param t_h_running slurry pressed while it runs, t per hour
 * @param minutes_on minutes running
 * @param minutes_off minutes at rest before it runs again
 * @param hours_day hours a day over which it runs and rests
 */
export function pressThroughput(t_h_running: number, minutes_on: number, minutes_off: number, hours_day: number) {
  const duty = minutes_on / (minutes_on + minutes_off);
  const running_hours_day = hours_day * duty;
  return { duty, running_hours_day, t_day: t_h_running * running_hours_day };
}

/**
 * Hours that a press must run to get through a day's slurry. May exceed 24: then one press will not do.
 *
 * running_hours_day = t_day / t_h_running
 *
 * @param t_day slurry to press, t per day
 * @param t_h_running slurry pressed while it runs, t per hour
 */
export function pressRunningHours(t_day: number, t_h_running: number) {
  return { running_hours_day: t_day / t_h_running };
}

/**
 * What the tank before the press must hold while the press stands still.
 *
 * buffer_m3 = slurry_t_day * (24 - press_hours_day) / 24 * (1 + margin)
 *
 * Slurry taken to come evenly round the clock, one tonne to the cubic metre. Not the size of a reception pit or store,
 * nor its freeboard: local codes set those.
 *
 * @param slurry_t_day slurry that comes in, t per day
 * @param press_hours_day hours a day that the press is at work
 * @param margin room to spare, fraction
 */
export function bufferTank(slurry_t_day: number, press_hours_day: number, margin: number) {
  const waiting_m3 = (slurry_t_day * (24 - press_hours_day)) / 24;
  return { waiting_m3, buffer_m3: waiting_m3 * (1 + margin) };
}

/**
 * Pressed fibre once what is scraped from the beds comes back with the slurry: the steady state, after some weeks.
 *
 * with_return_t = cake_t / (1 - returned * recaught)
 *
 * The sum of the geometric series cake_t * (1 + returned * recaught + (returned * recaught) ** 2 + …): of every tonne of dry
 * matter bedded, `returned` reaches the slurry and `recaught` of that is pressed out again. Shares of dry matter, to be
 * measured by samples before and after; none is held.
 *
 * @param cake_t fibre pressed from the slurry of the cows alone, t
 * @param returned share of the bedded dry matter that comes back with the slurry
 * @param recaught share of that which the press catches
 */
export function cakeWithReturn(cake_t: number, returned: number, recaught: number) {
  const again = returned * recaught;
  if (again === 1) throw new NoAnswer('all of it comes back and is caught again: it would pile up without end; check both shares');
  const with_return_t = cake_t / (1 - again);
  return { again, from_beds_t: with_return_t - cake_t, with_return_t };
}
