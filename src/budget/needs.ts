import { cubicleDemand, herdDemand } from '../domain/demand.ts';
import { driedDensity } from '../domain/materials.ts';
import type { Given } from './given.ts';
import type { Inputs } from './items.ts';
import { keepAnswers, OnDemand } from './on-demand.ts';

/** What the beds need: of fibre, and of the material bought now. Equations: demand.ts, materials.ts. */
export class Needs extends OnDemand {
  private readonly given: Given;
  private readonly inputs: Inputs;

  constructor(given: Given) {
    super(SUMS);
    this.given = given;
    this.inputs = given.inputs;
  }

  /** Without a dryer, said so or not, the fibre is dried to the very dry matter that the press gives. */
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

  /** What tells how much is bedded now: the litres where they were given, else last year's tonnes, else the fibre's volume. */
  get amount_now_from(): 'litres' | 'tonnes' | 'fibre' {
    if (this.given.has('litres_now')) return 'litres';
    return this.given.has('bought_t_last_year') ? 'tonnes' : 'fibre';
  }

  get bought_kg_cubicle_day() {
    const { inputs } = this;
    if (this.amount_now_from !== 'tonnes') return this.bought_by_volume_kg;
    return (inputs.bought_t_last_year * (1 - inputs.bought_loss) * 1000) / (inputs.cubicles * inputs.housed_days);
  }

  private get bought_by_volume_kg() {
    const { litres_now, interval_days_now, bought_density_kg_m3 } = this.inputs;
    return cubicleDemand(litres_now, interval_days_now, bought_density_kg_m3).kg_cubicle_day;
  }

  get fibre_t_year() {
    return this.yearly(this.fibre_kg_cubicle_day, this.inputs.fibre_loss);
  }

  get bought_t_year() {
    return this.amount_now_from === 'tonnes' ? this.inputs.bought_t_last_year : this.bought_by_volume_t_year;
  }

  /** What the beds would take by the litres now, or as the fibre where they were not given: what an invoice is held against. */
  get bought_by_volume_t_year() {
    return this.yearly(this.bought_by_volume_kg, this.inputs.bought_loss);
  }

  get demand_t_day() {
    return this.fibre_t_year / this.inputs.housed_days;
  }

  private yearly(kg_cubicle_day: number, loss: number): number {
    return herdDemand(this.inputs.cubicles, kg_cubicle_day, this.inputs.housed_days, loss).t_year;
  }
}

const SUMS = keepAnswers(Needs);
