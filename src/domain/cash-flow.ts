import { repayment } from './investment.ts';
import { Refusal } from './refusal.ts';

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
 * Cash flow year by year after tax, and what is left once the loan is paid.
 *
 * tax = tax_rate * (saving - allowance), a relief where negative; net = saving - tax, with the end value in the last year;
 * left after loan = net - loan payments. Year 0 is -capital with or without a loan. Tax is paid in the year it arises and
 * loan interest is not relieved. Loan payments are monthly; where the loan outlasts the kit, the years after its life show them.
 *
 * @param saving_year saving in the first year, money, growing from year 2
 * @param rate discount rate, fraction a year
 * @param tax_rate tax on profit, fraction
 * @param first_year_allowance share of the outlay allowed in year 1, fraction; pool only
 * @param writing_down share allowed every year, fraction
 * @param loan_years years over which what is borrowed is repaid
 * @param loan_rate interest, fraction a year
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
) {
  const loanYears = borrowed > 0 ? given('loan_years', loan_years) : 0;
  const loan_payment_year = borrowed > 0 ? 12 * repayment(borrowed, loanYears, given('loan_rate', loan_rate), 12).payment : 0;
  const allowances = capitalAllowances(capital, life_years, residual, first_year_allowance, writing_down, method, balance_at_end);
  let cumulative = 0;
  let npv_after_tax = 0;
  const rowOf = (year: number, saving: number, allowance: number, endValue: number) => {
    const tax = tax_rate * (saving - allowance);
    const net = year === 0 ? -capital : saving - tax + endValue;
    const discounted = net / (1 + rate) ** year;
    const loanPayment = year > 0 && year <= loanYears ? loan_payment_year : 0;
    cumulative += net;
    npv_after_tax += discounted;
    return [year, saving, allowance, tax, net, cumulative, discounted, npv_after_tax, loanPayment, net - loanPayment];
  };
  const rows = Array.from({ length: 1 + Math.max(life_years, loanYears) }, (_, year) => {
    const isInLife = year > 0 && year <= life_years;
    const saving = isInLife ? saving_year * (1 + growth) ** (year - 1) : 0;
    return rowOf(year, saving, isInLife ? (allowances[year - 1] as number) : 0, year === life_years ? residual : 0);
  });
  return { loan_payment_year, npv_after_tax, rows };
}

/** Terms of a loan are needed as soon as anything is borrowed. */
function given(argument: string, value: number | undefined): number {
  if (value === undefined) throw new Refusal(argument, 'is missing although money is borrowed', 'enter it, or leave borrowed at 0');
  return value;
}
