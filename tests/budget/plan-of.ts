import type { Plan } from '../../src/budget/plan.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';

/** Figures of a plan that nothing is to be said against: each just on the quiet side of its warning. */
const allWell = {
  cover: 1.1,
  slurry_could: 2.2,
  press_could: 4,
  dryer_could: 2.5,
  coldest_cover: 1,
  press_hours_needed: 16,
  dryer_hours_needed: 20,
  set_by: 'water',
  coldest_set_by: 'water',
  coldest_supply_c: 55,
  supply_c: 61,
  stated_ratio: 1,
  stated_drum_m3: 14,
  heat_mj_kg: 9.2,
  ambient_c: 8,
  coldest_c: 5,
  target_dm: 0.6,
  cake_dm: 0.34,
  cow_dm_kg_day: 9,
  payback_years: 10 as number | NoAnswer,
  discounted_payback_years: 10 as number | NoAnswer,
  npv: 0,
  loan_cover: 1.25,
  borrowed: 100_000,
  loan_years: 10,
  price_date: 45_000 as number | NoAnswer,
  budget_date: 45_365,
  saving_after_capital: 0.01,
  cases_to_npv_0: 6 as number | NoAnswer,
  cows: 400,
  cases_per_100_now: 30 as number | NoAnswer,
  fibre_score: 46.5,
  present_score: 41.5,
  fibre_kind: 'dried fibre',
  interval_days: 1,
  has_dryer: true,
  stocking: 1,
  permission: 'yes',
  stated_at_best: 1,
  fresh_density_kg_m3: 300,
  amount_now_from: 'litres',
  bought_kg_cubicle_day: 1.6,
  labour_h_week_kit: 6,
  labour_h_week_now: 2 as number | undefined,
  material_now: 'sawdust',
  bedding_in_slurry: 0.1,
  haulage_per_load: 120,
  load_t: 18,
  bought_density_kg_m3: 200,
  bought_price_per_t: 160,
  invoice_price: 170 as number | NoAnswer,
  invoice_against_plan: 1.3 as number | NoAnswer,
  capital: 100_000,
};
export type Figures = typeof allWell;

/** A plan of these figures and no others, so that each can be set to a hair. */
export function planOf(change: Partial<Figures>): Plan {
  const figures = { ...allWell, ...change, press_hours_day: 16, dryer_hours_day: 20, drum_m3: 14, life_years: 10 };
  const stages = [
    { stage: 'slurry', t_day: figures.slurry_could },
    { stage: 'press', t_day: figures.press_could },
    { stage: 'dryer', t_day: figures.dryer_could },
  ];
  const all = {
    ...figures,
    demand_t_day: 2,
    limit: { cover: figures.cover, stage: 'slurry', stages },
    coldest_limit: { cover: figures.coldest_cover, stage: 'dryer' },
    exhaust: { heat_mj_kg: figures.heat_mj_kg },
  };
  /** Every part of the plan hands out the same figures; one that is missing is thrown when it is asked for. */
  const given = { has: (name: keyof typeof all) => all[name] !== undefined, get: (name: keyof typeof all) => all[name] };
  const coldest = { set_by: figures.coldest_set_by, supply_c: figures.coldest_supply_c };
  const part: object = new Proxy(all, {
    get(_, name) {
      if (name === 'given') return given;
      if (name === 'coldest') return coldest;
      if (['inputs', 'needs', 'kit', 'money', 'udder', 'usual'].includes(String(name))) return part;
      const figure = all[name as keyof typeof all];
      if (figure instanceof NoAnswer) throw figure;
      return figure;
    },
  });
  return part as Plan;
}
