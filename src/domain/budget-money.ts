import { annuityFactor } from './annuity.ts';
import type { BeddingNeeds } from './budget-bedding.ts';
import { type Get, once } from './budget-inputs.ts';
import type { KitPlan } from './budget-kit.ts';
import { cashFlow } from './cash-flow.ts';
import { boughtCost, ownershipCost } from './cost.ts';
import { discountedPayback, internalRate, loanCover, netPresentValue, payback, repayment } from './investment.ts';
import { electricityUsed } from './plant.ts';
import { NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';

/** The usual load and efficiency of farm motors of this size; see `load_factor` and `efficiency` in data/defaults.json. */
export interface MotorHabit {
  readonly load_factor: number;
  readonly efficiency: number;
}

/** A break-even that would be negative is none. */
function breakEven(value: number): number {
  if (value < 0) throw new NoAnswer('there is none: even at nothing the kit would not pay back at the discount rate');
  return value;
}

/** Partial budget and investment: saving before capital, then what the capital costs. Equations: cost.ts, investment.ts. */
export function moneyPlan(get: Get, needs: BeddingNeeds, kit: KitPlan, motor: MotorHabit) {
  const weeks = () => get('housed_days') / 7;
  const labourCost = (hours_week: number) => hours_week * get('labour_rate') * weeks();
  const buy = (t_year: number) => boughtCost(t_year, get('bought_price_per_t'), get('load_t'), get('haulage_per_load')).cost_year;

  const bought_cost = once(() => buy(needs.bought_t_year()));
  const bought_with_labour = once(() => bought_cost() + labourCost(get('labour_h_week_now')));
  const topped_up_t_year = once(() => (1 - kit.made_share()) * needs.bought_like_fibre_t_year());
  const top_up_cost = once(() => buy(topped_up_t_year()));

  const kwhOf = (motor_kw: number, hours: number) => electricityUsed(motor_kw, hours, motor.load_factor, motor.efficiency).kwh;
  /** Power and heat are charged for the fibre that is made, not for what could not be made. */
  const power_kwh_year = once(() => {
    const press = kwhOf(get('press_kw'), kit.press_hours_needed() * kit.duty());
    const dryer = needs.has_dryer() && kit.made_share() > 0 ? kwhOf(get('dryer_kw'), kit.dryer_hours_needed()) : 0;
    return (press + dryer) * get('housed_days') * kit.made_share();
  });
  const heat_kwh_year = once(() => {
    if (!needs.has_dryer() || kit.made_share() === 0) return 0;
    return kit.usual.heat_kw() * kit.dryer_hours_needed() * get('housed_days') * kit.made_share();
  });
  const power_cost = once(() => power_kwh_year() * get('power_price'));
  const heat_cost = once(() => (needs.has_dryer() ? heat_kwh_year() * get('heat_price') : 0));
  const labour_kit = once(() => labourCost(get('labour_h_week_kit')));
  const repairs = once(() => get('kit_cost') * get('repairs_share'));
  const running_cost = once(() => power_cost() + heat_cost() + labour_kit() + repairs());
  const saving = once(() => bought_with_labour() - running_cost() - top_up_cost());

  const capital = once(() => {
    const grant = get('grant');
    if (grant > get('kit_cost'))
      throw new Refusal('Grant', said`${grant} is above the kit cost ${get('kit_cost')}`, 'enter a grant from 0 to the kit cost');
    return get('kit_cost') - grant;
  });
  const ownership = once(() => ownershipCost(capital(), get('life_years'), get('discount_rate'), get('end_value')).ownership_year);
  const full_cost = once(() => running_cost() + ownership());
  const full_cost_per_t = once(() => {
    if (kit.fibre_made_t_year() === 0) throw new NoAnswer('no fibre is made');
    return full_cost() / kit.fibre_made_t_year();
  });
  const saving_after_capital = once(() => saving() - ownership());
  const bought_per_cubicle = once(() => bought_with_labour() / get('cubicles'));
  const home_per_cubicle = once(() => (full_cost() + top_up_cost()) / get('cubicles'));

  const payback_years = once(() => payback(capital(), saving(), get('saving_growth'), get('life_years')).years);
  const discounted_payback_years = once(
    () => discountedPayback(capital(), saving(), get('discount_rate'), get('saving_growth'), get('life_years')).years,
  );
  const npv = once(
    () => netPresentValue(capital(), saving(), get('life_years'), get('discount_rate'), get('saving_growth'), get('end_value')).npv,
  );
  const irr = once(() => internalRate(capital(), saving(), get('life_years'), get('saving_growth'), get('end_value')).irr);
  const npv_after_tax = once(
    () =>
      cashFlow(
        capital(),
        saving(),
        get('life_years'),
        get('discount_rate'),
        get('saving_growth'),
        get('end_value'),
        get('tax_rate'),
        get('first_year_allowance'),
        get('yearly_allowance'),
        'pool',
        'no',
        0,
        undefined,
        undefined,
      ).npv_after_tax,
  );

  /** By how much the first year's saving misses the one at which NPV is 0; negative where there is more than enough. */
  const saving_short = once(() => -npv() / annuityFactor(get('life_years'), get('discount_rate'), get('saving_growth')));
  const replaced_t_year = () => needs.bought_t_year() - topped_up_t_year();
  const break_even_price = once(() => {
    if (replaced_t_year() <= 0) throw new NoAnswer('the fibre replaces no bought bedding');
    return breakEven(get('bought_price_per_t') + saving_short() / replaced_t_year());
  });
  const break_even_heat_price = once(() => {
    if (!needs.has_dryer()) throw new NoAnswer('there is no dryer, so no heat is bought');
    if (heat_kwh_year() === 0) throw new NoAnswer('no heat is used');
    return breakEven(get('heat_price') - saving_short() / heat_kwh_year());
  });
  const break_even_kit_cost = once(() => breakEven(get('kit_cost') + npv()));

  const loan_payments = once(() => {
    const borrowed = get('borrowed');
    if (borrowed === 0) return 0;
    if (borrowed > get('kit_cost'))
      throw new Refusal('Borrowed', said`${borrowed} is above the kit cost ${get('kit_cost')}`, 'enter an amount from 0 to the kit cost');
    return 12 * repayment(borrowed, get('loan_years'), get('loan_rate'), 12).payment;
  });
  const loan_cover = once(() => {
    if (loan_payments() === 0) throw new NoAnswer('nothing is borrowed');
    return loanCover(saving(), loan_payments()).cover;
  });
  return {
    bought_cost,
    bought_with_labour,
    topped_up_t_year,
    top_up_cost,
    power_kwh_year,
    heat_kwh_year,
    power_cost,
    heat_cost,
    labour_kit,
    repairs,
    running_cost,
    saving,
    capital,
    ownership,
    full_cost,
    full_cost_per_t,
    saving_after_capital,
    bought_per_cubicle,
    home_per_cubicle,
    payback_years,
    discounted_payback_years,
    npv,
    irr,
    npv_after_tax,
    break_even_price,
    break_even_heat_price,
    break_even_kit_cost,
    loan_payments,
    loan_cover,
  };
}

export type MoneyPlan = ReturnType<typeof moneyPlan>;
