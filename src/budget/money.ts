import { defaultOf } from '../core/bibliography.ts';
import { annuityFactor } from '../domain/annuity.ts';
import { cashFlow } from '../domain/cash-flow.ts';
import { boughtCost, ownershipCost } from '../domain/cost.ts';
import { discountedPayback, internalRate, loanCover, netPresentValue, payback, repayment } from '../domain/investment.ts';
import { electricityUsed } from '../domain/plant.ts';
import { NoAnswer } from '../domain/refusal.ts';
import type { Given } from './given.ts';
import type { Inputs } from './items.ts';
import type { Kit } from './kit.ts';
import type { Needs } from './needs.ts';
import { keepAnswers, OnDemand } from './on-demand.ts';

/** The usual load and efficiency of farm motors of this size. */
const motor = { load_factor: defaultOf('motor_load_factor').value, efficiency: defaultOf('motor_efficiency').value };

const kwhOf = (motor_kw: number, hours: number): number => electricityUsed(motor_kw, hours, motor.load_factor, motor.efficiency).kwh;

/** A break-even that would be negative is none. */
function breakEven(value: number): number {
  if (value < 0) throw new NoAnswer('there is none: even at nothing the kit would not pay back at the discount rate');
  return value;
}

/** Partial budget and investment: saving before capital, then what the capital costs. Equations: cost.ts, investment.ts. */
export class Money extends OnDemand {
  private readonly inputs: Inputs;
  private readonly needs: Needs;
  private readonly kit: Kit;

  constructor({ inputs }: Given, needs: Needs, kit: Kit) {
    super(SUMS);
    this.inputs = inputs;
    this.needs = needs;
    this.kit = kit;
  }

  private labourCost(hours_week: number): number {
    return (hours_week * this.inputs.labour_rate * this.inputs.housed_days) / 7;
  }

  /** What so many tonnes of the bought bedding cost, haulage with it. */
  bought(t_year: number): number {
    return boughtCost(t_year, this.inputs.bought_price_per_t, this.inputs.load_t, this.inputs.haulage_per_load).cost_year;
  }

  get bought_cost() {
    return this.bought(this.needs.bought_t_year);
  }

  get bought_with_labour() {
    return this.bought_cost + this.labourCost(this.inputs.labour_h_week_now);
  }

  /** What is short is bought and laid as the herd is bedded now. */
  get topped_up_t_year() {
    return (1 - this.kit.made_share) * this.needs.bought_t_year;
  }

  get top_up_cost() {
    return this.bought(this.topped_up_t_year);
  }

  /** Power and heat are charged for the fibre that is made, not for what could not be made. */
  get power_kwh_year() {
    const { press_kw, dryer_kw, housed_days } = this.inputs;
    const { made_share } = this.kit;
    const press = kwhOf(press_kw, this.kit.press_hours_needed * this.kit.duty);
    const dryer = this.needs.has_dryer && made_share > 0 ? kwhOf(dryer_kw, this.kit.dryer_hours_needed) : 0;
    return (press + dryer) * housed_days * made_share;
  }

  get heat_kwh_year() {
    const { made_share } = this.kit;
    if (!this.needs.has_dryer || made_share === 0) return 0;
    return this.kit.usual.heat_kw * this.kit.dryer_hours_needed * this.inputs.housed_days * made_share;
  }

  get power_cost() {
    return this.power_kwh_year * this.inputs.power_price;
  }

  get heat_cost() {
    return this.needs.has_dryer ? this.heat_kwh_year * this.inputs.heat_price : 0;
  }

  get labour_kit() {
    return this.labourCost(this.inputs.labour_h_week_kit);
  }

  get repairs() {
    return this.inputs.kit_cost * this.inputs.repairs_share;
  }

  get running_cost() {
    return this.power_cost + this.heat_cost + this.labour_kit + this.repairs;
  }

  get saving() {
    return this.bought_with_labour - this.running_cost - this.top_up_cost;
  }

  /** What the bought tonnes that the fibre replaces are worth, less the saving: INVEST.SENSITIVITY calls it the running cost. */
  get net_running_cost() {
    return this.inputs.bought_price_per_t * this.replaced_t_year - this.saving;
  }

  get invoice_price() {
    return this.inputs.bought_bill_last_year / this.inputs.bought_t_last_year;
  }

  get invoice_against_plan() {
    return this.inputs.bought_t_last_year / this.needs.bought_by_volume_t_year;
  }

  get capital() {
    return this.inputs.kit_cost - this.inputs.grant;
  }

  get ownership() {
    const { life_years, discount_rate, end_value } = this.inputs;
    return ownershipCost(this.capital, life_years, discount_rate, end_value).ownership_year;
  }

  get full_cost() {
    return this.running_cost + this.ownership;
  }

  get full_cost_per_t() {
    if (this.kit.fibre_made_t_year === 0) throw new NoAnswer('no fibre is made');
    return this.full_cost / this.kit.fibre_made_t_year;
  }

  get saving_after_capital() {
    return this.saving - this.ownership;
  }

  get bought_per_cubicle() {
    return this.bought_with_labour / this.inputs.cubicles;
  }

  get home_per_cubicle() {
    return (this.full_cost + this.top_up_cost) / this.inputs.cubicles;
  }

  get payback_years() {
    return payback(this.capital, this.saving, this.inputs.saving_growth, this.inputs.life_years).years;
  }

  get discounted_payback_years() {
    const { discount_rate, saving_growth, life_years } = this.inputs;
    return discountedPayback(this.capital, this.saving, discount_rate, saving_growth, life_years).years;
  }

  get npv() {
    const { life_years, discount_rate, saving_growth, end_value } = this.inputs;
    return netPresentValue(this.capital, this.saving, life_years, discount_rate, saving_growth, end_value).npv;
  }

  get irr() {
    const { life_years, saving_growth, end_value } = this.inputs;
    return internalRate(this.capital, this.saving, life_years, saving_growth, end_value).irr;
  }

  get npv_after_tax() {
    const { inputs } = this;
    // The loan brings its relief alone: the worth of the kit does not change with how it is paid for.
    const isRelieved = inputs.interest_relief === 'yes' && inputs.borrowed > 0;
    const [borrowed, years, rate] = isRelieved ? [inputs.borrowed, inputs.loan_years, inputs.loan_rate] : [0, undefined, undefined];
    return cashFlow(
      this.capital,
      this.saving,
      inputs.life_years,
      inputs.discount_rate,
      inputs.saving_growth,
      inputs.end_value,
      inputs.tax_rate,
      inputs.first_year_allowance,
      inputs.yearly_allowance,
      inputs.allowance_method,
      inputs.balance_at_end,
      borrowed,
      years,
      rate,
      inputs.interest_relief,
    ).npv_after_tax;
  }

  /** What a first saving of 1 is worth over the life. */
  get annuity_factor() {
    return annuityFactor(this.inputs.life_years, this.inputs.discount_rate, this.inputs.saving_growth);
  }

  /** By how much the first year's saving misses the one at which NPV is 0; negative where there is more than enough. */
  private get saving_short() {
    return -this.npv / this.annuity_factor;
  }

  /** Bought bedding that the fibre takes the place of. */
  private get replaced_t_year() {
    return this.needs.bought_t_year - this.topped_up_t_year;
  }

  get break_even_price() {
    if (this.replaced_t_year <= 0) throw new NoAnswer('the fibre replaces no bought bedding');
    return breakEven(this.inputs.bought_price_per_t + this.saving_short / this.replaced_t_year);
  }

  get break_even_heat_price() {
    if (!this.needs.has_dryer) throw new NoAnswer('there is no dryer, so no heat is bought');
    if (this.heat_kwh_year === 0) throw new NoAnswer('no heat is used');
    return breakEven(this.inputs.heat_price - this.saving_short / this.heat_kwh_year);
  }

  get break_even_kit_cost() {
    return breakEven(this.inputs.kit_cost + this.npv / (1 + this.annuity_factor * this.inputs.repairs_share));
  }

  get loan_payments() {
    const { borrowed } = this.inputs;
    return borrowed === 0 ? 0 : 12 * repayment(borrowed, this.inputs.loan_years, this.inputs.loan_rate, 12).payment;
  }

  get loan_cover() {
    if (this.loan_payments === 0) throw new NoAnswer('nothing is borrowed');
    return loanCover(this.saving, this.loan_payments).cover;
  }
}

const SUMS = keepAnswers(Money);
