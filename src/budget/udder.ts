import { hygieneScore, scoreSpan } from '../domain/hygiene.ts';
import type { ScoreArguments } from '../domain/hygiene-factors.ts';
import { NoAnswer } from '../domain/refusal.ts';
import { breakEvenCases } from '../domain/udder-health.ts';
import { lyingRange } from '../domain/welfare.ts';
import type { Given } from './given.ts';
import type { Inputs } from './items.ts';
import type { Money } from './money.ts';
import { keepAnswers, OnDemand } from './on-demand.ts';

const doesNotPay = new NoAnswer('the kit does not pay even without them');

/** What the bedding may do to the udders, as a planning score, and how many cases would eat the saving. Equations: hygiene.ts, udder-health.ts. */
export class Udder extends OnDemand {
  private readonly given: Given;
  private readonly inputs: Inputs;
  private readonly money: Money;

  constructor(given: Given, money: Money) {
    super(SUMS);
    this.given = given;
    this.inputs = given.inputs;
    this.money = money;
  }

  get stocking() {
    return this.inputs.cows / this.inputs.cubicles;
  }

  private fibreFactors(): ScoreArguments {
    const { target_dm, interval_days, fibre_kind, bed } = this.inputs;
    return [target_dm, interval_days, fibre_kind, this.given.maybe('shed_c'), this.given.maybe('dirty_udders'), bed, this.stocking];
  }

  private presentFactors(): ScoreArguments {
    const { bought_dm, interval_days_now, material_now, bed } = this.inputs;
    return [bought_dm, interval_days_now, material_now, this.given.maybe('shed_c'), this.given.maybe('dirty_udders'), bed, this.stocking];
  }

  get fibre_score() {
    return hygieneScore(...this.fibreFactors()).score;
  }

  get present_score() {
    return hygieneScore(...this.presentFactors()).score;
  }

  get fibre_span() {
    return scoreSpan(...this.fibreFactors());
  }

  get present_span() {
    return scoreSpan(...this.presentFactors());
  }

  get fibre_lying() {
    return lyingRange(this.inputs.target_dm);
  }

  get present_lying() {
    return lyingRange(this.inputs.bought_dm);
  }

  /** Extra clinical cases, each year of the life, that would bring NPV to nothing; their cost grows as the saving does. */
  get cases_to_npv_0() {
    const { cows, cost_per_case } = this.inputs;
    if (this.money.npv <= 0) throw doesNotPay;
    return this.money.npv / ((this.money.annuity_factor * cows * cost_per_case) / 100);
  }

  get break_even_cases() {
    return breakEvenCases(this.money.saving, this.inputs.cows, this.inputs.cost_per_case).cases_per_100;
  }

  get break_even_cases_after_capital() {
    return breakEvenCases(this.money.saving_after_capital, this.inputs.cows, this.inputs.cost_per_case).cases_per_100;
  }
}

const SUMS = keepAnswers(Udder);
