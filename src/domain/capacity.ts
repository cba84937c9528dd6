import { mustGetDrier } from './mass-balance.ts';

/** A stage of the plant and the dried fibre it could make, t per day. */
export interface Stage {
  readonly stage: string;
  readonly t_day: number;
}

/** The stage that holds the others back: the one that makes least; of equal ones, within the computer's rounding, the first. */
export function bindingStage<Any extends Stage>(stages: readonly [Any, ...Any[]]): Any {
  const least = Math.min(...stages.map(({ t_day }) => t_day));
  return stages.find(({ t_day }) => t_day <= least * (1 + 1e-9)) ?? stages[0];
}

/**
 * What each stage of the plant could make, all in dried fibre, and which of them holds the others back.
 *
 * slurry_t_day = cake_t_day * dm_in / dm_out
 * press_t_day = press_cake_t_h * press_running_hours * dm_in / dm_out
 * dryer_t_day = evaporation_kg_h / (dm_out / dm_in - 1) * dryer_hours / 1000
 *
 * Mass balance of dry matter from pressed to dried fibre. Each stage as if the others never ran short.
 *
 * @param demand_t_day dried fibre the beds use, t per day
 * @param cake_t_day pressed fibre that the slurry holds, t per day
 * @param press_cake_t_h pressed fibre while the press runs, t per hour
 * @param press_running_hours hours a day that the press runs
 * @param dm_in dry matter of the pressed fibre, fraction
 * @param dm_out dry matter of the dried fibre, fraction, above dm_in
 * @param evaporation_kg_h water the dryer carries off, kg per hour
 * @param dryer_hours hours a day that the dryer runs
 */
export function stageCapacity(
  demand_t_day: number,
  cake_t_day: number,
  press_cake_t_h: number,
  press_running_hours: number,
  dm_in: number,
  dm_out: number,
  evaporation_kg_h: number,
  dryer_hours: number,
) {
  mustGetDrier(dm_in, dm_out);
  const dried_share = dm_in / dm_out;
  const slurry_t_day = cake_t_day * dried_share;
  const press_t_day = press_cake_t_h * press_running_hours * dried_share;
  const dryer_t_day = ((evaporation_kg_h / (dm_out / dm_in - 1)) * dryer_hours) / 1000;
  const stages = [
    { stage: 'slurry', t_day: slurry_t_day },
    { stage: 'press', t_day: press_t_day },
    { stage: 'dryer', t_day: dryer_t_day },
  ] as const;
  const binding = bindingStage<Stage>(stages);
  const cover = binding.t_day / demand_t_day;
  const rows = stages.map((each) => [each.stage, each.t_day, each.t_day / demand_t_day, each === binding ? 'binds' : '']);
  return { dried_share, slurry_t_day, press_t_day, dryer_t_day, binds: binding.stage, cover, rows };
}
