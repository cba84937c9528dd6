import { defaultOf } from '../core/bibliography.ts';
import { define } from '../core/define.ts';
import { number, optional } from '../core/parameters.ts';
import { breakEvenCases, caseRate, casesCost, dirtyShare } from '../domain/udder-health.ts';
import { udderRecords } from './udder-records.ts';

const cows = number('cows', 'cows', 'cows in the herd', { min: 1 });
const costPerCase = number('cost_per_case', 'per case', 'all that one clinical case costs: milk, drugs, labour, cows lost', { above: 0 });
const scored = <const Name extends string>(name: Name, look: string) =>
  number(name, 'cows', `cows whose udders score ${look}`, { whole: true });

export const udder = [
  define({
    name: 'UDDER.RATE',
    summary: 'Clinical mastitis cases per 100 cows per year, from a record of any length.',
    finds: 'mastitis rate, incidence, cases per 100 cows, how much mastitis',
    parameters: [
      number('cases', 'cases', 'clinical cases recorded'),
      cows,
      optional(number('days', 'days', 'days that the record covers', { min: 1, max: 3660 }), defaultOf('record_days')),
    ],
    compute: caseRate,
    result: 'cases_per_100',
    working: {
      cow_years: { says: 'Cow-years on record', unit: 'cows', how: 'cows * days / 365' },
      cases_per_100: { says: 'Cases per 100 cows per year', unit: 'per 100 cows/year', how: '100 * cases / cow_years' },
    },
    sources: ['bradley-2007', 'recorded-herds-2023'],
    examples: [
      { call: [48, 240], gives: 20, within: 1e-9, source: 'by hand: 48 cases in a year in 240 cows' },
      { call: [12, 240, 73], gives: 25, within: 1e-9, source: 'by hand: a fifth of a year' },
    ],
  }),

  define({
    name: 'UDDER.COST',
    summary: 'What clinical mastitis costs the herd in a year. Cost per case differs widely between farms: use your own, or ask your vet.',
    finds: 'cost of mastitis, losses, vet bill',
    parameters: [number('cases_per_100', 'per 100 cows/year', 'clinical cases per 100 cows per year: UDDER.RATE'), cows, costPerCase],
    compute: casesCost,
    result: 'cost_year',
    working: {
      cases_year: { says: 'Cases a year', unit: 'cases', how: 'cases_per_100 * cows / 100' },
      cost_year: { says: 'Cost', unit: 'per year', how: 'cases_year * cost_per_case' },
    },
    sources: ['mastitis-cost-uk', 'rollin-2015'],
    examples: [{ call: [40, 250, 300], gives: 30_000, within: 1e-6, source: 'by hand: 100 cases at 300' }],
  }),

  define({
    name: 'UDDER.BREAKEVEN',
    summary:
      'How many extra clinical cases per 100 cows per year would wipe out a saving. Clinical cases only; subclinical mastitis costs as much again. No forecast: talk to your vet.',
    finds: 'extra mastitis cases, break-even, eat the saving, risk to the saving, margin',
    parameters: [number('saving_year', 'per year', 'saving a year, before any extra mastitis'), cows, costPerCase],
    compute: breakEvenCases,
    result: 'cases_per_100',
    working: {
      cases_year: {
        says: 'Extra cases a year that eat the saving',
        unit: 'cases',
        how: 'saving_year / cost_per_case',
        only: 'saving_year > 0',
      },
      cases_per_100: { says: 'Extra cases per 100 cows per year', unit: 'per 100 cows/year', how: '100 * cases_year / cows' },
    },
    notes: [
      'Clinical cases only. On 145 farms subclinical mastitis cost more still: 48% of the whole against 34% (Aghamohammadi 2018), so the true margin is less than half as wide where both rise together.',
    ],
    sources: ['mastitis-cost-uk', 'rollin-2015', 'bradley-2007', 'recorded-herds-2023', 'aghamohammadi-2018'],
    examples: [{ call: [14_000, 400, 280], gives: 12.5, within: 1e-9, source: 'by hand: 50 cases among 400 cows' }],
  }),

  define({
    name: 'UDDER.DIRTY',
    summary: 'Share of the cows scored whose udders are dirty: those that score 3 or 4 of 4.',
    finds: 'udder hygiene score, dirty cows, cleanliness, hygiene scoring',
    parameters: [
      scored('score1', '1: clean'),
      scored('score2', '2: a little dirt'),
      scored('score3', '3: dirty'),
      scored('score4', '4: caked'),
    ],
    compute: dirtyShare,
    result: 'dirty_udders',
    working: {
      cows: { says: 'Cows scored', unit: 'cows', how: 'score1 + score2 + score3 + score4' },
      dirty_udders: { says: 'Share scoring 3 or 4', unit: 'fraction', how: '(score3 + score4) / cows' },
    },
    sources: ['schreiner-ruegg-2003'],
    examples: [{ call: [50, 32, 12, 6], gives: 0.18, within: 1e-9, source: 'by hand: 18 of 100 cows' }],
  }),
  ...udderRecords,
];
