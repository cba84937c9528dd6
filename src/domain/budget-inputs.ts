import type { AirAt } from './heater.ts';
import type { Bed } from './hygiene-factors.ts';
import type { Material } from './materials.ts';
import type { Country } from './reference.ts';
import { NoAnswer } from './refusal.ts';

/** What a budget may be told, by the names the equations use. */
export interface BudgetInputs {
  cows: number;
  cubicles: number;
  housed_days: number;
  litres: number;
  interval_days: number;
  fibre_loss: number;
  bed: Bed;
  fibre_kind: FibreKind;
  material_now: Material;
  bought_density_kg_m3: number;
  bought_dm: number;
  bought_price_per_t: number;
  price_date: number;
  budget_date: number;
  load_t: number;
  haulage_per_load: number;
  bought_loss: number;
  litres_now: number;
  interval_days_now: number;
  labour_h_week_now: number;
  litres_cow_day: number;
  water_litres_cow_day: number;
  slurry_dm: number;
  cake_dm: number;
  capture: number;
  press_t_h: number;
  minutes_on: number;
  minutes_off: number;
  press_hours_day: number;
  press_kw: number;
  target_dm: number;
  fresh_density_kg_m3: number;
  shrinkage: number;
  air_m3_h: number;
  air_at: AirAt;
  ambient_c: number;
  ambient_rh: number;
  coldest_c: number;
  coldest_rh: number;
  altitude_m: number;
  water_c: number;
  water_l_h: number;
  heat_kw: number;
  effectiveness: number;
  exhaust_rh: number;
  heat_loss: number;
  dryer_hours_day: number;
  dryer_kw: number;
  drum_m3: number;
  drum_fill: number;
  stated_m3_h: number;
  stated_hours: number;
  kit_cost: number;
  grant: number;
  life_years: number;
  discount_rate: number;
  saving_growth: number;
  end_value: number;
  power_price: number;
  heat_price: number;
  labour_h_week_kit: number;
  labour_rate: number;
  repairs_share: number;
  borrowed: number;
  loan_years: number;
  loan_rate: number;
  tax_rate: number;
  first_year_allowance: number;
  yearly_allowance: number;
  cost_per_case: number;
  cases_per_100_now: number;
  shed_c: number;
  dirty_udders: number;
  country: Country;
  permission: 'yes' | 'no';
}

export const fibreKinds = ['fresh fibre', 'dried fibre', 'digested fibre', 'composted fibre'] as const satisfies readonly Material[];
export type FibreKind = (typeof fibreKinds)[number];

/** An item that is needed was not given. */
export class Missing extends NoAnswer {}

/**
 * Hands out one input. Throws a Refusal where what was typed cannot be used, and Missing, naming the item, where it was
 * not given: so each result says for itself what it still lacks, and the others go on working.
 */
export interface Get {
  <Key extends keyof BudgetInputs>(key: Key): BudgetInputs[Key];
  /** The same for an input that the plan can do without: undefined where it was not given. */
  maybe<Key extends keyof BudgetInputs>(key: Key): BudgetInputs[Key] | undefined;
}

/** Works something out at most once, and remembers a refusal as well as an answer. */
export function once<Value>(work: () => Value): () => Value {
  let kept: (() => Value) | undefined;
  return () => {
    if (!kept) {
      try {
        const value = work();
        kept = () => value;
      } catch (thrown) {
        kept = () => {
          throw thrown;
        };
      }
    }
    return kept();
  };
}

/** What `work` gives, or `otherwise` where there is no answer. What is missing stays missing. */
export function ifNone<Value>(work: () => Value, otherwise: Value): Value {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof NoAnswer && !(thrown instanceof Missing)) return otherwise;
    throw thrown;
  }
}
