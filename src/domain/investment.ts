import { annuityFactor, capitalRecovery } from './annuity.ts';
import { internalRateOfFlows } from './internal-rate.ts';
import { NoAnswer } from './refusal.ts';
import { said } from './spell.ts';

// Savings come at the end of each year and grow from year 2; the saving is before the cost of owning the kit.

/**
 * Years until the savings, each worth less the later it comes, have returned the outlay; straight line within the year.
 *
 * The first year's saving is worth saving_year / (1 + rate), every further one (1 + growth) / (1 + rate) of the one before.
 *
 * Discounted payback, any text on engineering economy. There is none beyond the life, or beyond 100 years where no life is given.
 *
 * @param capital outlay at the start, money
 * @param saving_year saving in the first year, money
 * @param rate discount rate, fraction a year
 * @param growth growth of the saving, fraction a year
 * @param life_years years that the kit lasts
 */
export function discountedPayback(capital: number, saving_year: number, rate: number, growth: number, life_years: number | undefined) {
  if (saving_year <= 0) throw new NoAnswer('there is no saving to pay it back');
  const limit = life_years ?? 100;
  const keeps = (1 + growth) / (1 + rate);
  let next_saving = saving_year / (1 + rate);
  let still_owed = capital;
  let full_years = 0;
  // A year that falls short by rounding alone has paid it back: otherwise a payback of exactly the life would be refused.
  while (still_owed - next_saving > 1e-12 * capital) {
    full_years++;
    if (full_years >= limit) throw new NoAnswer(said`not paid back within ${life_years === undefined ? '' : 'its life of '}${limit} years`);
    still_owed -= next_saving;
    next_saving *= keeps;
  }
  const years = full_years + Math.min(1, still_owed / next_saving);
  return { full_years, still_owed, next_saving, years };
}

/**
 * Years until the savings have returned the outlay, without interest; straight line within the year.
 *
 * The discounted payback at a rate of 0, with the same limits.
 *
 * @param capital outlay at the start, money
 * @param saving_year saving in the first year, money
 * @param growth growth of the saving, fraction a year
 * @param life_years years that the kit lasts
 */
export const payback = (capital: number, saving_year: number, growth: number, life_years: number | undefined) =>
  discountedPayback(capital, saving_year, 0, growth, life_years);

/**
 * Net present value: what the savings and the end value are worth today, less the outlay.
 *
 * npv = saving_year * annuityFactor + residual / (1 + rate) ** life_years - capital
 *
 * @param capital outlay at the start, money
 * @param saving_year saving in the first year, money
 * @param life_years years that the kit lasts
 * @param rate discount rate, fraction a year
 * @param growth growth of the saving, fraction a year
 * @param residual what the kit still fetches at the end of its life, money
 */
export function netPresentValue(capital: number, saving_year: number, life_years: number, rate: number, growth: number, residual: number) {
  const annuity_factor = annuityFactor(life_years, rate, growth);
  const savings_today = saving_year * annuity_factor;
  const residual_today = residual / (1 + rate) ** life_years;
  const npv = savings_today + residual_today - capital;
  return { annuity_factor, savings_today, residual_today, npv };
}

/**
 * Internal rate of return: the discount rate at which net present value is 0. Above -1, negative ones too.
 *
 * Outlay first and end value last leave one change of sign at most, so there is never more than one; there is none where
 * nothing is laid out or nothing comes back.
 *
 * @param capital outlay at the start, money
 * @param saving_year saving in the first year, money
 * @param life_years years that the kit lasts
 * @param growth growth of the saving, fraction a year
 * @param residual what the kit still fetches at the end of its life, money
 */
export function internalRate(capital: number, saving_year: number, life_years: number, growth: number, residual: number) {
  const savings = Array.from({ length: life_years }, (_, year) => saving_year * (1 + growth) ** year);
  savings[life_years - 1] = (savings[life_years - 1] as number) + residual;
  return { irr: internalRateOfFlows([-capital, ...savings]) };
}

/**
 * The price of bought-in bedding at which the kit earns just the discount rate: net present value is 0.
 *
 * price_per_t = (running_year + (capital - residual / (1 + rate) ** life_years) / annuityFactor) / bought_t_year
 *
 * @param capital outlay at the start, money
 * @param bought_t_year bought-in bedding that the kit replaces, t a year: the bought tonnes, not the fibre's
 * @param running_year cost of running the kit, money a year
 * @param life_years years that the kit lasts
 * @param rate discount rate, fraction a year
 * @param growth growth of the saving, fraction a year
 * @param residual what the kit still fetches at the end of its life, money
 */
export function breakEvenPrice(
  capital: number,
  bought_t_year: number,
  running_year: number,
  life_years: number,
  rate: number,
  growth: number,
  residual: number,
) {
  const annuity_factor = annuityFactor(life_years, rate, growth);
  const residual_today = residual / (1 + rate) ** life_years;
  const saving_needed = (capital - residual_today) / annuity_factor;
  const price_per_t = (running_year + saving_needed) / bought_t_year;
  if (price_per_t < 0) throw new NoAnswer('it pays even where bought-in bedding costs nothing');
  return { annuity_factor, residual_today, saving_needed, price_per_t };
}

/**
 * The level payment in arrears that repays a loan with interest.
 *
 * payment = borrowed * capitalRecovery(years * payments_per_year, rate / payments_per_year)
 *
 * @param borrowed money borrowed
 * @param years years over which it is repaid
 * @param rate interest, fraction a year, charged in equal parts with each payment
 * @param payments_per_year payments a year
 */
export function repayment(borrowed: number, years: number, rate: number, payments_per_year: number) {
  const payments = years * payments_per_year;
  const rate_per_payment = rate / payments_per_year;
  const payment = borrowed * capitalRecovery(payments, rate_per_payment);
  return { payments, rate_per_payment, payment };
}

/**
 * How many times the cash of a year covers the year's loan payments.
 *
 * @param cash_year cash there to pay with, money a year
 * @param debt_service_year principal and interest, money a year
 */
export function loanCover(cash_year: number, debt_service_year: number) {
  if (debt_service_year <= 0) throw new NoAnswer('there are no loan payments to cover');
  return { cover: cash_year / debt_service_year };
}

/**
 * The rate of interest that is left once prices have risen.
 *
 * real_rate = (1 + nominal_rate) / (1 + inflation) - 1
 *
 * Fisher equation, exact form. Negative where prices rise faster than money earns.
 *
 * @param nominal_rate interest as quoted, fraction a year
 * @param inflation rise of prices, fraction a year
 */
export const realRate = (nominal_rate: number, inflation: number) => ({ real_rate: (1 + nominal_rate) / (1 + inflation) - 1 });
