import { dryingHeat, evaporation } from '../domain/drying.ts';
import { heatedTemperature, supplyTemperature } from '../domain/heater.ts';
import { NoAnswer, Refusal } from '../domain/refusal.ts';
import { said } from '../domain/spell.ts';
import { type Given, ifNone, Missing } from './given.ts';
import { itemOf } from './items.ts';
import type { Needs } from './needs.ts';
import { keepAnswers, OnDemand } from './on-demand.ts';

/** Stands in place of every figure of a dryer where there is none. */
export const noDryer = new NoAnswer('there is no dryer: the fibre is used at the dry matter the press gives');

const neitherWaterNorHeat = new Missing(
  `${itemOf('water_l_h').name} or ${itemOf('heat_kw').name} is missing: enter at least one of them on Inputs`,
);

/** The outdoor air that a dryer works with. */
export const inUsualAir = { c: 'ambient_c', rh: 'ambient_rh' } as const;
export const inColdestMonth = { c: 'coldest_c', rh: 'coldest_rh' } as const;
type OutdoorAir = typeof inUsualAir | typeof inColdestMonth;

/** The air dryer in one state of the outdoor air. Equations: heater.ts, drying.ts. */
export class Dryer extends OnDemand {
  private readonly given: Given;
  private readonly needs: Needs;
  private readonly outdoor: OutdoorAir;

  constructor(given: Given, needs: Needs, outdoor: OutdoorAir) {
    super(SUMS);
    this.given = given;
    this.needs = needs;
    this.outdoor = outdoor;
  }

  /** The temperature that the hot water gives; where its flow is not known, it is taken to be enough. */
  get off_water_c() {
    const { inputs } = this.given;
    const { air_m3_h, effectiveness, altitude_m, air_at } = inputs;
    const [ambient_c, ambient_rh] = [inputs[this.outdoor.c], inputs[this.outdoor.rh]];
    const water_l_h = this.given.maybe('water_l_h') ?? Number.POSITIVE_INFINITY;
    const { water_c } = inputs;
    if (water_c <= ambient_c) {
      throw new Refusal(
        itemOf('water_c').name,
        said`${water_c} is not above the coldest month’s temperature ${ambient_c}`,
        'enter the temperature of the hot water to the heater',
      );
    }
    return supplyTemperature(air_m3_h, ambient_c, ambient_rh, water_l_h, water_c, effectiveness, altitude_m, air_at).supply_c;
  }

  /** The temperature that the heat gives. More than the air can take up sets no limit, no more than where none is stated. */
  get off_heat_c() {
    const heat_kw = this.given.maybe('heat_kw');
    if (heat_kw === undefined) return Number.POSITIVE_INFINITY;
    const { inputs } = this.given;
    const { air_m3_h, altitude_m, air_at } = inputs;
    const [ambient_c, ambient_rh] = [inputs[this.outdoor.c], inputs[this.outdoor.rh]];
    return ifNone(() => heatedTemperature(air_m3_h, ambient_c, ambient_rh, heat_kw, altitude_m, air_at).supply_c, Number.POSITIVE_INFINITY);
  }

  get set_by(): 'heat' | 'water' {
    if (!this.needs.has_dryer) throw noDryer;
    if (this.given.maybe('water_l_h') === undefined && this.given.maybe('heat_kw') === undefined) throw neitherWaterNorHeat;
    const { off_water_c, off_heat_c } = this;
    return off_heat_c < off_water_c ? 'heat' : 'water';
  }

  get supply_c() {
    return this.set_by === 'heat' ? this.off_heat_c : this.off_water_c;
  }

  /** The drying air as the equations take it. Asks for the supply temperature first, which says so where there is no dryer. */
  air() {
    const { supply_c } = this;
    const { inputs } = this.given;
    return [inputs.air_m3_h, inputs[this.outdoor.c], inputs[this.outdoor.rh], supply_c, inputs.altitude_m, inputs.air_at] as const;
  }

  get heat_kw() {
    return dryingHeat(...this.air()).heat_kw;
  }

  get exhaust() {
    return evaporation(...this.air(), this.given.inputs.exhaust_rh, this.given.inputs.heat_loss, undefined);
  }

  get dried_kg_h() {
    return this.exhaust.evaporation_kg_h / (this.given.inputs.target_dm / this.given.inputs.cake_dm - 1);
  }

  /** A dryer that carries nothing off makes nothing; its own figures then have no answer, but the plan has. */
  get dryer_t_day() {
    if (!this.needs.has_dryer) throw noDryer;
    return (ifNone(() => this.dried_kg_h, 0) * this.given.inputs.dryer_hours_day) / 1000;
  }
}

const SUMS = keepAnswers(Dryer);
