import { loanSchedule } from './loan.ts';
import { type Answer, NoAnswer, Refusal } from './refusal.ts';

export const allowanceMethods = ['pool', 'straight'] as const;
export type AllowanceMethod = (typeof allowanceMethods)[number];

/**
 * Capital allowances of each year, set against the saving before tax.
 *
 * pool: a share of what is left in the pool, in year 1 first_year_allowance where there is one, else writing_down.
 * straight: writing_down of the outlay a year until it is used up.
 * The end value comes off the pool in the last year, before that year's allowance; a pool driven below zero gives a
 * negative one. Where the balance is allowed at the end, the last year takes all that is left, so that the allowances sum
 * to capital - residual.
 *
 * A plain form of reducing-balance and straight-line allowances, not the law of one country: ask an accountant.
 */
export function capitalAllowances(
  capital: number,
  life_years: number,
  residual: number,
  first_year_allowance: number,
  writing_down: number,
  method: AllowanceMethod,
  balance_at_end: 'yes' | 'no',
): number[] {
  let pool = capital;
  return Array.from({ length: life_years }, (_, yearsBefore) => {
    const isLast = yearsBefore === life_years - 1;
    if (isLast) pool -= residual;
    const share = yearsBefore === 0 && first_year_allowance > 0 ? first_year_allowance : writing_down;
    const usual = method === 'pool' ? pool * share : Math.min(capital * writing_down, pool);
    const allowance = isLast && balance_at_end === 'yes' ? pool : usual;
    pool -= allowance;
    return allowance;
  });
}

/**
 * Cash flow year by year after tax, and what is left once the loan is served.
 *
 * tax = tax_rate * (saving - allowance), a relief where negative; net = saving - tax, with the end value in the last year.
 * Year 0 is -capital with or without a loan, so that finance does not change the worth of the kit.
 * left after loan = net + borrowed in year 0, then net - loan payment + relief, relief = tax_rate * interest where it is asked
 * for; its sum is own money. cover = (net + relief) / loan payment.
 *
 * Tax is paid in the year it arises, and there is profit to set every relief against. Loan payments are monthly, their interest
 * that of loanSchedule. Of a loan that outlasts the kit, what is still owed comes off what is left in the last year.
 *
 * @param saving_year saving in the first year, money, growing from year 2
 * @param rate discount rate, fraction a year
 * @param tax_rate tax on profit, fraction
 * @param first_year_allowance share of the outlay allowed in year 1, fraction; pool only
 * @param writing_down share allowed every year, fraction
 * @param loan_years years over which what is borrowed is repaid
 * @param loan_rate interest, fraction a year
 * @param interest_relief whether loan interest is set against tax
 */
export function cashFlow(
  capital: number,
  saving_year: number,
  life_years: number,
  rate: number,
  growth: number,
  residual: number,
  tax_rate: number,
  first_year_allowance: number,
  writing_down: number,
  method: AllowanceMethod,
  balance_at_end: 'yes' | 'no',
  borrowed: number,
  loan_years: number | undefined,
  loan_rate: number | undefined,
  interest_relief: 'yes' | 'no' = 'no',
) {
  const loan = borrowed > 0 ? loanSchedule(borrowed, given('loan_years', loan_years), given('loan_rate', loan_rate), 12) : undefined;
  const loan_payment_year = loan ? 12 * loan.payment : 0;
  const owed_at_end = loan?.rows[life_years - 1]?.[4] ?? 0;
  const allowances = capitalAllowances(capital, life_years, residual, first_year_allowance, writing_down, method, balance_at_end);
  let [cumulative, net_today, relief_today, own_money] = [0, 0, 0, 0];
  const rows = Array.from({ length: life_years + 1 }, (_, year): Answer[] => {
    const saving = year === 0 ? 0 : saving_year * (1 + growth) ** (year - 1);
    const allowance = allowances[year - 1] ?? 0;
    const tax = tax_rate * (saving - allowance);
    const net = year === 0 ? -capital : saving - tax + (year === life_years ? residual : 0);
    const owed = loan?.rows[year - 1];
    const payment = owed ? loan_payment_year : 0;
    const interest = owed?.[2] ?? 0;
    const relief = interest_relief === 'yes' ? tax_rate * interest : 0;
    const left = (year === 0 ? net + borrowed : net - payment + relief) - (year === life_years ? owed_at_end : 0);
    const today = (1 + rate) ** -year;
    cumulative += net;
    net_today += net * today;
    relief_today += relief * today;
    own_money += left;
    const cover = payment > 0 ? (net + relief) / payment : new NoAnswer('there are no loan payments to cover in this year');
    const flow = [year, saving, allowance, tax, net, cumulative, net * today, net_today];
    return [...flow, payment, left, interest, relief, own_money, cover];
  });
  return { loan_payment_year, owed_at_end, net_today, relief_today, npv_after_tax: net_today + relief_today, rows };
}

/** Terms of a loan are needed as soon as anything is borrowed. */
function given(argument: string, value: number | undefined): number {
  if (value === undefined) throw new Refusal(argument, 'is missing although money is borrowed', 'enter it, or leave borrowed at 0');
  return value;
}
