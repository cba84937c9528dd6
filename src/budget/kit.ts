import { bindingStage } from '../domain/capacity.ts';
import { claim, drumNeeded, retention } from '../domain/drying.ts';
import { driedDensity } from '../domain/materials.ts';
import { liquidDryMatter, pressedCake, slurryProduced } from '../domain/separation.ts';
import { Dryer, inColdestMonth, inUsualAir } from './dryer.ts';
import type { Given } from './given.ts';
import type { Inputs } from './items.ts';
import type { Needs } from './needs.ts';
import { keepAnswers, OnDemand } from './on-demand.ts';

/** What can hold the kit back, in the order in which a tie is told. */
type StageName = 'slurry' | 'press' | 'dryer';

/** Pressed fibre as light as is met with, for the best that a stated output can be. */
const LIGHTEST_FRESH_KG_M3 = 200;

/** What slurry, press and dryer can make, and which of them sets the limit. Equations: separation.ts, drying.ts, capacity.ts. */
export class Kit extends OnDemand {
  private readonly given: Given;
  private readonly inputs: Inputs;
  private readonly needs: Needs;
  readonly usual: Dryer;
  readonly coldest: Dryer;

  constructor(given: Given, needs: Needs) {
    super(SUMS);
    this.given = given;
    this.inputs = given.inputs;
    this.needs = needs;
    this.usual = new Dryer(given, needs, inUsualAir);
    this.coldest = new Dryer(given, needs, inColdestMonth);
  }

  get slurry_t_day() {
    const { cows, litres_cow_day, water_litres_cow_day } = this.inputs;
    return slurryProduced(cows, litres_cow_day, water_litres_cow_day).slurry_t_day;
  }

  get cake_t_day() {
    const { slurry_dm, cake_dm, capture } = this.inputs;
    return pressedCake(this.slurry_t_day, slurry_dm, cake_dm, capture).cake_t;
  }

  get liquid_dm() {
    const { slurry_dm, cake_dm, capture } = this.inputs;
    return liquidDryMatter(slurry_dm, cake_dm, capture).liquid_dm;
  }

  get cow_dm_kg_day() {
    return (1000 * this.slurry_t_day * this.inputs.slurry_dm) / this.inputs.cows;
  }

  get cake_t_h() {
    const { press_t_h, slurry_dm, cake_dm, capture } = this.inputs;
    return pressedCake(press_t_h, slurry_dm, cake_dm, capture).cake_t;
  }

  get duty() {
    const { minutes_on, minutes_off } = this.inputs;
    return minutes_on / (minutes_on + minutes_off);
  }

  /** Tonnes of finished fibre from a tonne of cake. */
  get dried_per_cake() {
    return this.inputs.cake_dm / this.inputs.target_dm;
  }

  get slurry_could_t_day() {
    return this.cake_t_day * this.dried_per_cake;
  }

  get press_could_t_day() {
    return this.cake_t_h * this.inputs.press_hours_day * this.duty * this.dried_per_cake;
  }

  get limit() {
    return this.limitWith(this.usual);
  }

  get coldest_limit() {
    return this.limitWith(this.coldest);
  }

  private limitWith(dryer: Dryer) {
    const stages = [
      { stage: 'slurry' as StageName, t_day: this.slurry_could_t_day },
      { stage: 'press' as StageName, t_day: this.press_could_t_day },
      ...(this.needs.has_dryer ? [{ stage: 'dryer' as StageName, t_day: dryer.dryer_t_day }] : []),
    ] as const;
    const { stage, t_day } = bindingStage(stages);
    const { needs } = this;
    return {
      stage,
      t_day,
      stages,
      /** What holds the kit back can be told before the beds' need can. */
      get cover() {
        return t_day / needs.demand_t_day;
      },
    };
  }

  get made_share() {
    return Math.min(1, this.limit.cover);
  }

  get fibre_made_t_year() {
    return this.needs.fibre_t_year * this.made_share;
  }

  get press_hours_needed() {
    return this.needs.demand_t_day / this.dried_per_cake / this.cake_t_h / this.duty;
  }

  get dryer_hours_needed() {
    return (1000 * this.needs.demand_t_day) / this.usual.dried_kg_h;
  }

  get dried_m3_h() {
    return this.usual.dried_kg_h / this.needs.fibre_density_kg_m3;
  }

  get stated_ratio() {
    const { stated_m3_h, cake_dm, target_dm } = this.inputs;
    return claim(stated_m3_h * this.needs.fibre_density_kg_m3, cake_dm, target_dm, ...this.usual.air()).ratio;
  }

  /** The same at the best for the supplier: light fibre where its weight was not typed, and air as hot as the water. */
  get stated_at_best() {
    const { inputs } = this;
    const { stated_m3_h, cake_dm, target_dm, water_c } = inputs;
    const fresh_density_kg_m3 = this.given.has('fresh_density_kg_m3') ? inputs.fresh_density_kg_m3 : LIGHTEST_FRESH_KG_M3;
    const density_kg_m3 = driedDensity(fresh_density_kg_m3, cake_dm, target_dm, inputs.shrinkage).dried_density_kg_m3;
    const air = [inputs.air_m3_h, inputs.ambient_c, inputs.ambient_rh, water_c, inputs.altitude_m, inputs.air_at] as const;
    return claim(stated_m3_h * density_kg_m3, cake_dm, target_dm, ...air).ratio;
  }

  /** What is laid now, as a share of the dry matter that the slurry holds: the most of it that can be bedding. */
  get bedding_in_slurry() {
    const { bought_dm, cubicles, slurry_dm } = this.inputs;
    return (this.needs.bought_kg_cubicle_day * bought_dm * cubicles) / 1000 / (this.slurry_t_day * slurry_dm);
  }

  get stated_drum_m3() {
    const { stated_m3_h, stated_hours, drum_fill } = this.inputs;
    return drumNeeded(stated_m3_h, stated_hours, drum_fill).drum_m3;
  }

  get retention_hours() {
    const { drum_m3, drum_fill } = this.inputs;
    return retention(drum_m3, drum_fill, this.needs.fibre_density_kg_m3, this.usual.dried_kg_h).hours;
  }
}

const SUMS = keepAnswers(Kit);
