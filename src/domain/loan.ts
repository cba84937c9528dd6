import { annuityFactor } from './annuity.ts';
import { repayment } from './investment.ts';

/**
 * A loan with level payments, year by year: opening balance, interest, repaid, closing balance.
 *
 * What is owed after k payments is worth the payments still to come: payment * annuityFactor(payments - k, rate_per_payment, 0);
 * interest is rate_per_payment of that at each payment.
 *
 * @param borrowed money borrowed
 * @param years years over which it is repaid
 * @param rate interest, fraction a year, charged in equal parts with each payment
 * @param payments_per_year payments a year, in arrears
 */
export function loanSchedule(borrowed: number, years: number, rate: number, payments_per_year: number) {
  const { payments, rate_per_payment, payment } = repayment(borrowed, years, rate, payments_per_year);
  const owedAfter = (paid: number) => (paid === 0 ? borrowed : payment * annuityFactor(payments - paid, rate_per_payment, 0));
  const rows = Array.from({ length: years }, (_, yearsBefore) => {
    const paid = yearsBefore * payments_per_year;
    const opening = owedAfter(paid);
    const closing = owedAfter(paid + payments_per_year);
    let interest = 0;
    for (let k = 0; k < payments_per_year; k++) interest += rate_per_payment * owedAfter(paid + k);
    return [yearsBefore + 1, opening, interest, opening - closing, closing];
  });
  return { payments, rate_per_payment, payment, rows };
}
