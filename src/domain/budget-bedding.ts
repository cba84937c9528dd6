import { type Get, once } from './budget-inputs.ts';
import { cubicleDemand, herdDemand } from './demand.ts';
import { densityOf, driedDensity, dryMatterOf } from './materials.ts';
import { Refusal } from './refusal.ts';
import { said } from './spell.ts';

/** What the beds need: of fibre, and of the material bought now. Equations: demand.ts, materials.ts. */
export function beddingNeeds(get: Get) {
  /** No dryer is told by drying to the very dry matter that the press gives. */
  const has_dryer = once(() => {
    const pressed = get('cake_dm');
    const target = get('target_dm');
    if (target < pressed) {
      throw new Refusal(
        'Dried to dry matter',
        said`${target} is below the pressed dry matter ${pressed}`,
        'enter the dry matter the dryer reaches, or that of the pressed fibre where there is no dryer',
      );
    }
    return target > pressed;
  });
  const fibre_density_kg_m3 = once(() => {
    const fresh = get('fresh_density_kg_m3');
    return has_dryer() ? driedDensity(fresh, get('cake_dm'), get('target_dm'), get('shrinkage')).dried_density_kg_m3 : fresh;
  });
  const bought_density_kg_m3 = once(() => get.maybe('bought_density_kg_m3') ?? densityOf(get('material_now')));
  const bought_dm = once(() => get.maybe('bought_dm') ?? dryMatterOf(get('material_now')));
  const interval_days_now = once(() => get.maybe('interval_days_now') ?? get('interval_days'));
  const fibre_kg_cubicle_day = once(() => cubicleDemand(get('litres'), get('interval_days'), fibre_density_kg_m3()).kg_cubicle_day);
  const bought_kg_cubicle_day = once(
    () => cubicleDemand(get.maybe('litres_now') ?? get('litres'), interval_days_now(), bought_density_kg_m3()).kg_cubicle_day,
  );
  const yearly = (kg_cubicle_day: number, loss: number) => herdDemand(get('cubicles'), kg_cubicle_day, get('housed_days'), loss).t_year;
  const fibre_t_year = once(() => yearly(fibre_kg_cubicle_day(), get('fibre_loss')));
  const bought_t_year = once(() => yearly(bought_kg_cubicle_day(), get('bought_loss')));
  /** What it would take to bed with the bought material just as the fibre is bedded: the measure for topping up. */
  const bought_like_fibre_t_year = once(() =>
    yearly(cubicleDemand(get('litres'), get('interval_days'), bought_density_kg_m3()).kg_cubicle_day, get('bought_loss')),
  );
  const demand_t_day = once(() => fibre_t_year() / get('housed_days'));
  return {
    has_dryer,
    fibre_density_kg_m3,
    bought_density_kg_m3,
    bought_dm,
    interval_days_now,
    fibre_kg_cubicle_day,
    bought_kg_cubicle_day,
    fibre_t_year,
    bought_t_year,
    bought_like_fibre_t_year,
    demand_t_day,
  };
}

export type BeddingNeeds = ReturnType<typeof beddingNeeds>;
