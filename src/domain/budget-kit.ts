import type { BeddingNeeds } from './budget-bedding.ts';
import { type Get, ifNone, Missing, once } from './budget-inputs.ts';
import { bindingStage } from './capacity.ts';
import { claim, drumNeeded, dryingHeat, evaporation, retention } from './drying.ts';
import { heatedTemperature, supplyTemperature } from './heater.ts';
import { NoAnswer, Refusal } from './refusal.ts';
import { liquidDryMatter, pressedCake, slurryProduced } from './separation.ts';
import { said } from './spell.ts';

/** What can hold the kit back, in the order in which a tie is told. */
type StageName = 'slurry' | 'press' | 'dryer';

/** Stands in place of every figure of a dryer where there is none. */
export const noDryer = new NoAnswer('there is no dryer: the fibre is used at the dry matter the press gives');

const inUsualAir = { whose: 'outdoor', c: 'ambient_c', rh: 'ambient_rh' } as const;
const inColdestMonth = { whose: 'coldest month’s', c: 'coldest_c', rh: 'coldest_rh' } as const;

/** The air dryer in one state of the outdoor air. Equations: heater.ts, drying.ts. */
function dryerIn(get: Get, needs: BeddingNeeds, { whose, c, rh }: typeof inUsualAir | typeof inColdestMonth) {
  const ambient_c = () => get(c);
  const ambient_rh = () => get(rh);

  const offWater = () => {
    // Where only the heat is known, the water is taken to be enough.
    const litres = get.maybe('water_l_h') ?? Number.POSITIVE_INFINITY;
    const water_c = get('water_c');
    if (water_c <= ambient_c()) {
      throw new Refusal(
        'Hot water temperature',
        said`${water_c} is not above the ${whose} temperature ${ambient_c()}`,
        'enter the temperature of the hot water to the heater',
      );
    }
    return supplyTemperature(
      get('air_m3_h'),
      ambient_c(),
      ambient_rh(),
      litres,
      water_c,
      get('effectiveness'),
      get('altitude_m'),
      get('air_at'),
    ).supply_c;
  };
  /** More heat than the air can take up sets no limit, no more than where none is stated. */
  const offHeat = () => {
    const kw = get.maybe('heat_kw') ?? Number.POSITIVE_INFINITY;
    const heated = () => heatedTemperature(get('air_m3_h'), ambient_c(), ambient_rh(), kw, get('altitude_m'), get('air_at')).supply_c;
    return ifNone(heated, Number.POSITIVE_INFINITY);
  };
  const supply = once(() => {
    if (!needs.has_dryer()) throw noDryer;
    if (get.maybe('water_l_h') === undefined && get.maybe('heat_kw') === undefined) {
      throw new Missing('Hot water litres per hour or Heat available kW is missing: enter at least one of them on Inputs');
    }
    const water = offWater();
    const heat = offHeat();
    return heat < water ? { supply_c: heat, set_by: 'heat' as const } : { supply_c: water, set_by: 'water' as const };
  });
  const supply_c = () => supply().supply_c;
  /** Asks for the supply temperature first, which says so where there is no dryer. */
  const air = () => {
    const supplied_c = supply_c();
    return [get('air_m3_h'), ambient_c(), ambient_rh(), supplied_c, get('altitude_m'), get('air_at')] as const;
  };
  const heat_kw = once(() => dryingHeat(...air()).heat_kw);
  const exhaust = once(() => evaporation(...air(), get('exhaust_rh'), get('heat_loss'), undefined));
  const dried_kg_h = once(() => exhaust().evaporation_kg_h / (get('target_dm') / get('cake_dm') - 1));
  /** A dryer that carries nothing off makes nothing; its own figures then have no answer, but the plan has. */
  const dryer_t_day = once(() => {
    if (!needs.has_dryer()) throw noDryer;
    return (ifNone(dried_kg_h, 0) * get('dryer_hours_day')) / 1000;
  });
  return { air, supply, supply_c, heat_kw, exhaust, dried_kg_h, dryer_t_day };
}

/** What slurry, press and dryer can make, and which of them sets the limit. Equations: separation.ts, drying.ts, capacity.ts. */
export function kitPlan(get: Get, needs: BeddingNeeds) {
  const slurry_t_day = once(() => slurryProduced(get('cows'), get('litres_cow_day'), get('water_litres_cow_day')).slurry_t_day);
  const cake_t_day = once(() => pressedCake(slurry_t_day(), get('slurry_dm'), get('cake_dm'), get('capture')).cake_t);
  const liquid_dm = once(() => liquidDryMatter(get('slurry_dm'), get('cake_dm'), get('capture')).liquid_dm);
  const cow_dm_kg_day = once(() => (1000 * slurry_t_day() * get('slurry_dm')) / get('cows'));
  const cake_t_h = once(() => pressedCake(get('press_t_h'), get('slurry_dm'), get('cake_dm'), get('capture')).cake_t);
  const duty = once(() => get('minutes_on') / (get('minutes_on') + get('minutes_off')));
  /** Tonnes of finished fibre from a tonne of cake. */
  const dried_per_cake = () => get('cake_dm') / get('target_dm');

  const usual = dryerIn(get, needs, inUsualAir);
  const coldest = dryerIn(get, needs, inColdestMonth);

  const slurry_could_t_day = once(() => cake_t_day() * dried_per_cake());
  const press_could_t_day = once(() => cake_t_h() * get('press_hours_day') * duty() * dried_per_cake());
  const limitWith = (dryer_t_day: () => number) =>
    once(() => {
      const raw = [
        { stage: 'slurry' as StageName, t_day: slurry_could_t_day() },
        { stage: 'press' as StageName, t_day: press_could_t_day() },
      ] as const;
      const stages = needs.has_dryer() ? ([...raw, { stage: 'dryer' as StageName, t_day: dryer_t_day() }] as const) : raw;
      const limit = bindingStage(stages);
      return { ...limit, cover: limit.t_day / needs.demand_t_day(), stages };
    });
  const limit = limitWith(usual.dryer_t_day);
  const coldest_limit = limitWith(coldest.dryer_t_day);

  const made_share = once(() => Math.min(1, limit().cover));
  const fibre_made_t_year = once(() => needs.fibre_t_year() * made_share());
  const press_hours_needed = once(() => needs.demand_t_day() / dried_per_cake() / cake_t_h() / duty());
  const dryer_hours_needed = once(() => (1000 * needs.demand_t_day()) / usual.dried_kg_h());

  const dried_m3_h = once(() => usual.dried_kg_h() / needs.fibre_density_kg_m3());
  /** For the figures of a dryer that would otherwise ask for their own items first. */
  const withDryer = <Value>(work: () => Value) =>
    once(() => {
      if (!needs.has_dryer()) throw noDryer;
      return work();
    });
  const stated_ratio = withDryer(() => {
    const claimed_kg_h = get('stated_m3_h') * needs.fibre_density_kg_m3();
    return claim(claimed_kg_h, get('cake_dm'), get('target_dm'), ...usual.air()).ratio;
  });
  const stated_drum_m3 = withDryer(() => drumNeeded(get('stated_m3_h'), get('stated_hours'), get('drum_fill')).drum_m3);
  const retention_hours = withDryer(
    () => retention(get('drum_m3'), get('drum_fill'), needs.fibre_density_kg_m3(), usual.dried_kg_h()).hours,
  );
  return {
    slurry_t_day,
    cake_t_day,
    liquid_dm,
    cow_dm_kg_day,
    duty,
    usual,
    coldest,
    slurry_could_t_day,
    press_could_t_day,
    limit,
    coldest_limit,
    made_share,
    fibre_made_t_year,
    press_hours_needed,
    dryer_hours_needed,
    dried_m3_h,
    stated_ratio,
    stated_drum_m3,
    retention_hours,
  };
}

export type KitPlan = ReturnType<typeof kitPlan>;
