import { capitalRecovery } from './annuity.ts';
import { dispenserLoads, wholeLoads } from './demand.ts';
import { Refusal } from './refusal.ts';

/**
 * Price by weight of bedding that is sold by volume: price_per_t = price_per_m3 / (density_kg_m3 / 1000).
 *
 * @param price_per_m3 price, money per m³
 * @param density_kg_m3 bulk density as sold, kg/m³
 */
export function costPerTonne(price_per_m3: number, density_kg_m3: number) {
  const t_per_m3 = density_kg_m3 / 1000;
  const price_per_t = price_per_m3 / t_per_m3;
  return { t_per_m3, price_per_t };
}

/**
 * An old price brought to a later date: updated_price = price * (1 + inflation) ** years.
 *
 * @param price price at its own date, money
 * @param years years since that date
 * @param inflation rise of prices, fraction a year
 */
export function updatedPrice(price: number, years: number, inflation: number) {
  const rise = (1 + inflation) ** years;
  const updated_price = price * rise;
  return { rise, updated_price };
}

/**
 * Bought-in bedding delivered, per year: cost_year = t_year * price_per_t + loads * haulage_per_load, loads whole.
 *
 * @param t_year bedding bought, t a year
 * @param price_per_t price, money per t
 * @param load_t what a lorry brings, t
 * @param haulage_per_load haulage of each load, whole or part, money
 */
export function boughtCost(t_year: number, price_per_t: number, load_t: number | undefined, haulage_per_load: number) {
  if (haulage_per_load > 0 && load_t === undefined)
    throw new Refusal('load_t', 'is missing although haulage is charged per load', 'enter what a load brings, in t');
  const bedding_year = t_year * price_per_t;
  const loads = load_t === undefined ? 0 : wholeLoads(t_year, load_t);
  const haulage_year = loads * haulage_per_load;
  const cost_year = bedding_year + haulage_year;
  return { bedding_year, loads, haulage_year, cost_year };
}

/**
 * What owning the kit costs a year, depreciation and interest in one level sum.
 *
 * ownership_year = (capital - residual / (1 + rate) ** life_years) * capitalRecovery(life_years, rate)
 *
 * Capital recovery, Iowa State Extension A3-29. Put it in a yearly budget or the outlay in a cash flow, never both.
 *
 * @param capital outlay at the start, money
 * @param life_years years that the kit lasts
 * @param rate interest, fraction a year
 * @param residual what the kit still fetches at the end of its life, money
 */
export function ownershipCost(capital: number, life_years: number, rate: number, residual: number) {
  const residual_today = residual / (1 + rate) ** life_years;
  const recovery_factor = capitalRecovery(life_years, rate);
  const ownership_year = (capital - residual_today) * recovery_factor;
  return { residual_today, recovery_factor, ownership_year };
}

/**
 * Heat from a bought fuel: cost = kwh / (kwh_per_unit * efficiency) * price_per_unit.
 *
 * @param kwh heat needed, kWh
 * @param price_per_unit price of the fuel, money per litre, kg, m³ or kWh
 * @param kwh_per_unit heat in as much of it, kWh
 * @param efficiency share of the fuel's heat that the boiler hands on, fraction
 */
export function heatCost(kwh: number, price_per_unit: number, kwh_per_unit: number, efficiency: number) {
  const units = kwh / (kwh_per_unit * efficiency);
  const cost = units * price_per_unit;
  return { units, cost };
}

/**
 * Hours a year spent with the dispenser: hours_year = housed_days / interval_days * loads * minutes_per_load / 60.
 *
 * @param cubicles cubicles bedded
 * @param litres bedding laid in a cubicle each time, litres
 * @param interval_days days from one bedding to the next
 * @param dispenser_m3 what the dispenser holds, m³
 * @param minutes_per_load minutes to fill, carry and spread a load
 * @param housed_days days a year that the cubicles are bedded
 */
export function spreadingHours(
  cubicles: number,
  litres: number,
  interval_days: number,
  dispenser_m3: number,
  minutes_per_load: number,
  housed_days: number,
) {
  const times_year = housed_days / interval_days;
  const { loads } = dispenserLoads(cubicles, litres, dispenser_m3);
  const hours_year = (times_year * loads * minutes_per_load) / 60;
  return { times_year, loads, hours_year };
}

/**
 * Bedding made at home, per year.
 *
 * cost_year = t_year * (kwh_per_t * power_price + heat_kwh_per_t * heat_price + other_per_t)
 *   + labour_h_week * labour_rate * weeks + maintenance_year + ownership_year
 *
 * @param t_year fibre made, t a year
 * @param kwh_per_t electricity for each t, kWh
 * @param power_price price of it, money per kWh
 * @param labour_h_week labour, hours a week
 * @param labour_rate its cost, money per hour
 * @param maintenance_year repairs and servicing, money a year
 * @param heat_kwh_per_t heat for each t, kWh
 * @param heat_price price of it, money per kWh
 * @param other_per_t anything else for each t, money
 * @param ownership_year cost of owning the kit, money a year
 * @param weeks weeks a year that the labour is needed
 */
export function homeCost(
  t_year: number,
  kwh_per_t: number,
  power_price: number,
  labour_h_week: number,
  labour_rate: number,
  maintenance_year: number,
  heat_kwh_per_t: number,
  heat_price: number,
  other_per_t: number,
  ownership_year: number,
  weeks: number,
) {
  const power_year = t_year * kwh_per_t * power_price;
  const heat_year = t_year * heat_kwh_per_t * heat_price;
  const other_year = t_year * other_per_t;
  const labour_year = labour_h_week * labour_rate * weeks;
  const cost_year = power_year + heat_year + other_year + labour_year + maintenance_year + ownership_year;
  return { power_year, heat_year, other_year, labour_year, cost_year };
}

export interface BeddingOption {
  readonly material: string;
  readonly kg_cubicle_day: number;
  readonly price_per_t: number;
  readonly labour_h_week: number;
  /** Anything else, such as wear of pumps by sand, money a year. */
  readonly extra_year: number;
}

/** Keys that tell the rows apart even where a material comes twice: the second sawdust is `sawdust 2`. Lookups ignore case, so we do. */
export function distinctKeys(names: readonly string[]): string[] {
  const taken = new Set(names.map((name) => name.toLowerCase()));
  const met = new Set<string>();
  return names.map((name) => {
    if (!met.has(name.toLowerCase())) {
      met.add(name.toLowerCase());
      return name;
    }
    let number = 2;
    while (taken.has(`${name} ${number}`.toLowerCase())) number++;
    const key = `${name} ${number}`;
    taken.add(key.toLowerCase());
    return key;
  });
}

/**
 * Beddings side by side, cheapest first, each material once (see distinctKeys): option, t per year, bedding, labour, extra, per year, per cubicle per year.
 *
 * per year = t_year * price_per_t + labour_h_week * weeks * labour_rate + extra_year, with
 * t_year = cubicles * kg_cubicle_day * housed_days / 1000 and weeks = housed_days / 7.
 *
 * @param cubicles cubicles bedded
 * @param housed_days days a year that the cubicles are bedded
 * @param labour_rate cost of labour, money per hour
 */
export function optionsCost(options: readonly BeddingOption[], cubicles: number, housed_days: number, labour_rate: number) {
  const weeks = housed_days / 7;
  const costed = options.map((option) => {
    const t_year = (cubicles * option.kg_cubicle_day * housed_days) / 1000;
    const bedding = t_year * option.price_per_t;
    const labour = option.labour_h_week * weeks * labour_rate;
    return { key: option.material, t_year, bedding, labour, extra: option.extra_year, total: bedding + labour + option.extra_year };
  });
  costed.sort((one, other) => one.total - other.total);
  const rows = costed.map(({ key, t_year, bedding, labour, extra, total }) => [
    key,
    t_year,
    bedding,
    labour,
    extra,
    total,
    total / cubicles,
  ]);
  return { weeks, rows };
}
