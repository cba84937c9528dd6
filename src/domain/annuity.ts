/**
 * What a first saving of 1 at the end of year 1, growing every year from the second, is worth today.
 *
 * annuityFactor = (1 - ((1 + growth) / (1 + rate)) ** life_years) / (rate - growth); life_years / (1 + rate) where rate = growth
 *
 * Present worth of a geometric gradient, any text on engineering economy. Holds for rate and growth above -1, negative ones
 * too. Written with log1p and expm1, so that it stays exact where rate and growth nearly agree and at a rate of nearly 0.
 *
 * @param life_years years that the saving lasts
 * @param rate discount rate, fraction a year
 * @param growth growth of the saving, fraction a year
 */
export function annuityFactor(life_years: number, rate: number, growth: number): number {
  if (rate === growth) return life_years / (1 + rate);
  return -Math.expm1(life_years * Math.log1p((growth - rate) / (1 + rate))) / (rate - growth);
}

/**
 * The level payment in arrears that repays 1 with interest.
 *
 * capitalRecovery = rate / (1 - (1 + rate) ** -life_years); 1 / life_years at a rate of 0
 *
 * Capital recovery factor, the inverse of the annuity factor without growth.
 *
 * @param life_years years, or payments, over which it is repaid
 * @param rate interest, fraction for each of them
 */
export const capitalRecovery = (life_years: number, rate: number): number => 1 / annuityFactor(life_years, rate, 0);
