import hazards from '../data/cautions.json';
import rules from '../data/conditions.json';
import { sourceName } from './source-name.ts';

/** The countries that rules are held for; `other` says whom to ask. */
export const countries = [
  'England',
  'Wales',
  'Scotland',
  'Northern Ireland',
  'Ireland',
  'Germany',
  'France',
  'Netherlands',
  'Denmark',
  'United States',
  'other',
] as const;

export type Country = (typeof countries)[number];

/** The rules for one country, the one that matters most first; every row after it has its number in the key. */
function rulesOf(country: Country) {
  const held = rules.filter((rule) => rule.countries.includes(country));
  return held.map(({ rule, source, status, date, recheck_with }, k) => {
    const key = k === 0 ? country : `${country} ${k + 1}`;
    return [key, rule, `${sourceName(source)} (${status})`, date, recheck_with];
  });
}

/** Rules on bedding cows on manure fibre, as far as known: each to be rechecked before it is relied on. All countries where none is given. */
export const conditionsFor = (country?: Country) => ({ rows: (country ? [country] : countries).flatMap(rulesOf) });

/** The usual cautions, and who to ask. */
export const cautions = () => ({ rows: hazards.map(({ hazard, caution, ask }) => [hazard, caution, ask]) });
