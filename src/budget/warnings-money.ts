import { ifNone } from './given.ts';
import type { Plan } from './plan.ts';
import { above, below, orLess, warning } from './warning.ts';

/** Fires with the life where there is no answer within it, though nothing is missing. */
const beyondLife =
  (years: (plan: Plan) => number) =>
  (plan: Plan): number | false =>
    ifNone<number | false>(() => {
      years(plan);
      return false;
    }, plan.inputs.life_years);

/** Of what it costs, saves and returns. */
export const moneyWarnings = [
  warning('Payback', 'years', {
    trigger: 'not within the life, which is shown',
    fires: beyondLife((plan) => plan.money.payback_years),
    meaning: 'The savings do not return the cost of the kit within its life: see Levers for what would.',
  }),
  warning('Discounted payback', 'years', {
    trigger: 'not within the life, which is shown',
    fires: beyondLife((plan) => plan.money.discounted_payback_years),
    meaning:
      'At the discount rate the savings do not return the cost of the kit within its life: see Levers, and ask your accountant which rate is right.',
  }),
  warning('NPV', 'money', {
    value: (plan) => plan.money.npv,
    when: below(0),
    meaning: 'At the discount rate the kit is worth less than it costs: see Levers for the price, cost or output at which it just pays.',
  }),
  warning('Loan cover', 'times', {
    value: (plan) => plan.money.loan_cover,
    when: below(1.25),
    meaning: 'Below 1.25 times most lenders ask for more: talk to your accountant and the lender.',
  }),
  warning('Loan term', 'years', {
    trigger: 'longer than the life',
    fires: ({ inputs }) => inputs.borrowed > 0 && inputs.loan_years > inputs.life_years && inputs.loan_years,
    meaning: 'The loan outlives the kit: ask the lender for a shorter one, or you go on paying for what no longer serves.',
  }),
  warning('Old price', 'days', {
    of: 'days before the budget',
    value: ({ inputs }) => inputs.budget_date - inputs.price_date,
    when: above(365),
    meaning: 'The bedding price is more than a year old: ask for a new quotation, or bring it up to date with COST.UPDATE.',
  }),
  warning('After capital', 'per year', {
    value: (plan) => plan.money.saving_after_capital,
    when: orLess(0),
    meaning: 'Once the kit’s own cost is counted nothing is left of the saving: see Levers for what would leave some.',
  }),
] as const;
