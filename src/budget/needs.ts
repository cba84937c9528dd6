import { cubicleDemand, herdDemand } from '../domain/demand.ts';
import { driedDensity } from '../domain/materials.ts';
import type { Given } from './given.ts';
import type { Inputs } from './items.ts';
import { keepAnswers, OnDemand } from './on-demand.ts';

/** What the beds need: of fibre, and of the material bought now. Equations: demand.ts, materials.ts. */
export class Needs extends OnDemand {
  private readonly inputs: Inputs;

  constructor({ inputs }: Given) {
    super(SUMS);
    this.inputs = inputs;
  }

  /** No dryer is told by drying to the very dry matter that the press gives. */
  get has_dryer() {
    return this.inputs.target_dm > this.inputs.cake_dm;
  }

  get fibre_density_kg_m3() {
    const { fresh_density_kg_m3, cake_dm, target_dm } = this.inputs;
    return this.has_dryer
      ? driedDensity(fresh_density_kg_m3, cake_dm, target_dm, this.inputs.shrinkage).dried_density_kg_m3
      : fresh_density_kg_m3;
  }

  get fibre_kg_cubicle_day() {
    const { litres, interval_days } = this.inputs;
    return cubicleDemand(litres, interval_days, this.fibre_density_kg_m3).kg_cubicle_day;
  }

  get bought_kg_cubicle_day() {
    const { litres_now, interval_days_now, bought_density_kg_m3 } = this.inputs;
    return cubicleDemand(litres_now, interval_days_now, bought_density_kg_m3).kg_cubicle_day;
  }

  get fibre_t_year() {
    return this.yearly(this.fibre_kg_cubicle_day, this.inputs.fibre_loss);
  }

  get bought_t_year() {
    return this.yearly(this.bought_kg_cubicle_day, this.inputs.bought_loss);
  }

  /** What it would take to bed with the bought material just as the fibre is bedded: the measure for topping up. */
  get bought_like_fibre_t_year() {
    const { litres, interval_days, bought_density_kg_m3, bought_loss } = this.inputs;
    return this.yearly(cubicleDemand(litres, interval_days, bought_density_kg_m3).kg_cubicle_day, bought_loss);
  }

  get demand_t_day() {
    return this.fibre_t_year / this.inputs.housed_days;
  }

  private yearly(kg_cubicle_day: number, loss: number): number {
    return herdDemand(this.inputs.cubicles, kg_cubicle_day, this.inputs.housed_days, loss).t_year;
  }
}

const SUMS = keepAnswers(Needs);
