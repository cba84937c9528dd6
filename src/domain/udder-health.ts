import { NoAnswer, Refusal } from './refusal.ts';

/**
 * Clinical mastitis cases per 100 cows per year, from a count over any stretch of time.
 *
 * cases_per_100 = 100 * cases / (cows * days / 365)
 *
 * @param cases clinical cases recorded
 * @param cows cows in the herd, on average over that time
 * @param days days that the record covers
 */
export function caseRate(cases: number, cows: number, days: number) {
  const cow_years = (cows * days) / 365;
  return { cow_years, cases_per_100: (100 * cases) / cow_years };
}

/**
 * What clinical mastitis costs a herd in a year.
 *
 * cost_year = cases_per_100 * cows / 100 * cost_per_case
 *
 * @param cases_per_100 cases per 100 cows per year
 * @param cost_per_case all that a case costs: milk, drugs, labour, cows lost
 */
export function casesCost(cases_per_100: number, cows: number, cost_per_case: number) {
  const cases_year = (cases_per_100 * cows) / 100;
  return { cases_year, cost_year: cases_year * cost_per_case };
}

/**
 * Extra clinical cases per 100 cows per year that would eat a whole saving.
 *
 * cases_per_100 = 100 * saving_year / cost_per_case / cows
 *
 * No forecast: it says how many extra cases there may be before the saving is gone, not how many there will be.
 *
 * @param saving_year what the change saves a year, before any extra mastitis
 * @param cost_per_case what one case costs
 */
export function breakEvenCases(saving_year: number, cows: number, cost_per_case: number) {
  if (saving_year <= 0) throw new NoAnswer('there is no saving that extra mastitis cases could eat');
  const cases_year = saving_year / cost_per_case;
  return { cases_year, cases_per_100: (100 * cases_year) / cows };
}

/**
 * Share of the cows whose udders score 3 or 4, on the four-point chart from 1 (clean) to 4 (caked).
 *
 * dirty_udders = (score3 + score4) / (score1 + score2 + score3 + score4)
 *
 * @param score1 cows that score 1, and so on
 */
export function dirtyShare(score1: number, score2: number, score3: number, score4: number) {
  const cows = score1 + score2 + score3 + score4;
  if (cows === 0) throw new Refusal('score1', 'all four counts are 0', 'enter how many cows got each score');
  return { cows, dirty_udders: (score3 + score4) / cows };
}
