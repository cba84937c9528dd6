import { defaultOf } from '../core/bibliography.ts';
import { define, defineSpill } from '../core/define.ts';
import { maybe, number, optional, table } from '../core/parameters.ts';
import { readColumn } from '../core/read-table.ts';
import { CellError, type Matrix } from '../core/result.ts';
import { caseChart, type Period } from '../domain/case-chart.ts';
import { recordMonths } from '../domain/record-months.ts';
import { caseInterval, compareCases } from '../domain/udder-records.ts';

const cases = <const Name extends string>(name: Name, says: string) => number(name, 'cases', says, { whole: true });
const cows = <const Name extends string>(name: Name, says: string) => number(name, 'cows', says, { min: 1 });
const days = <const Name extends string>(name: Name, says: string) => number(name, 'days', says, { min: 1, max: 3660 });
const level = optional(number('level', 'fraction', 'how often such limits hold the truth', { min: 0.5, max: 0.999 }), defaultOf('level'));

const ONE_BY_ONE = 'Holds where cases come one by one: repeat cases in a cow and outbreaks make the true interval wider.';

/** One period's cell of each range; a refused one stands in the row's place. */
function readPeriods(ranges: readonly Matrix[]): readonly (Period | CellError | undefined)[] {
  const [of, herd, time] = ranges as readonly [Matrix, Matrix, Matrix | undefined];
  const columns = [
    readColumn(cases('cases', 'clinical cases of the period'), of),
    readColumn(cows('cows', 'cows in the herd'), herd, of.length),
    time ? readColumn(number('days', 'days', 'days of the period', { min: 1 }), time, of.length) : of.map(() => 365 / 12),
  ] as const;
  return of.map((_, k) => {
    const [caseCount, cowCount, dayCount] = columns.map((column) => column[k]);
    if (caseCount === undefined) return undefined;
    const refused = [caseCount, cowCount, dayCount].find((value) => value instanceof CellError);
    if (refused) return refused;
    if (cowCount === undefined || dayCount === undefined) {
      const lacking = cowCount === undefined ? 'cows (cows)' : 'days (days)';
      return new CellError('#VALUE!', `${lacking} row ${k + 1}: is missing; enter it beside the cases, or leave both blank`);
    }
    return { cases: caseCount, cows: cowCount, days: dayCount } as Period;
  });
}

/** The chart of the periods that could be read; one that could not shows why in its rate. */
function chartOf(ranges: readonly Matrix[], baseline: number | undefined, width: number) {
  const read = readPeriods(ranges);
  const chart = caseChart(
    read.map((period) => (period instanceof CellError ? undefined : period)),
    baseline,
    width,
  );
  const rows = chart.rows.map((row, k) => {
    const period = read[k];
    return period instanceof CellError ? row.map((cell, k) => (k === 1 ? (period as never) : cell)) : row;
  });
  return { ...chart, rows };
}

/** What a record of cases says, and how surely. */
export const udderRecords = [
  defineSpill({
    name: 'UDDER.INTERVAL',
    summary: 'Clinical mastitis cases per 100 cows per year, with the lowest and highest rate that so few or many cases leave open.',
    finds: 'how sure is the mastitis rate, confidence interval, chance, small numbers, Poisson, margin of error',
    parameters: [
      cases('cases', 'clinical cases recorded'),
      cows('cows', 'cows in the herd'),
      optional(days('days', 'days that the record covers'), defaultOf('record_days')),
      level,
    ],
    compute: caseInterval,
    columns: ['key', 'value', 'unit'],
    working: {
      cow_years: { says: 'Cow-years on record', unit: 'cows', how: 'cows * days / 365' },
      cases_lowest: {
        says: 'Fewest cases to expect: with any less, so many would come with a chance below (1 − level) / 2',
        unit: 'cases',
        how: 'poissonLimits(cases, level).lowest',
        source: 'garwood-1936',
      },
      cases_highest: {
        says: 'Most cases to expect: with any more, so few would come with a chance below (1 − level) / 2',
        unit: 'cases',
        how: 'poissonLimits(cases, level).highest',
        source: 'garwood-1936',
      },
      rate: { says: 'Cases per 100 cows per year', unit: 'per 100 cows/year', how: '100 * cases / cow_years' },
      lowest: { says: 'Lowest', unit: 'per 100 cows/year', how: '100 * cases_lowest / cow_years' },
      highest: { says: 'Highest', unit: 'per 100 cows/year', how: '100 * cases_highest / cow_years' },
    },
    notes: [ONE_BY_ONE],
    sources: ['garwood-1936', 'loader-2000'],
    examples: [
      {
        call: [14, 100],
        at: ['highest', 'value'],
        gives: 23.49,
        within: 0.005,
        source: 'Garwood 1936, from memory, and a calculator maker’s page, seen: 14 events, 95 %, 7.65 to 23.49',
      },
      { call: [25, 100], at: ['lowest', 'value'], gives: 16.18, within: 0.005, source: 'same: 25 events, 16.18 to 36.90' },
      {
        call: [0, 100],
        at: ['highest', 'value'],
        gives: 3.689,
        within: 5e-4,
        source: 'R package epitools, documentation: 0 events, up to 3.689',
      },
    ],
  }),

  defineSpill({
    name: 'UDDER.COMPARE',
    summary: 'Whether the rate of clinical mastitis changed between two records, and how large a rise the records could still hide.',
    finds: 'before and after, did mastitis change, more cases, worse, significant, difference, p value, new bedding, fewer',
    parameters: [
      cases('cases_before', 'clinical cases before the change'),
      cows('cows_before', 'cows in the herd before it'),
      days('days_before', 'days of record before it'),
      cases('cases_after', 'clinical cases after the change'),
      cows('cows_after', 'cows in the herd after it'),
      days('days_after', 'days of record after it'),
      level,
    ],
    compute: compareCases,
    columns: ['key', 'value', 'unit'],
    working: {
      rate_before: { says: 'Rate before', unit: 'per 100 cows/year', how: '36500 * cases_before / (cows_before * days_before)' },
      rate_after: { says: 'Rate after', unit: 'per 100 cows/year', how: '36500 * cases_after / (cows_after * days_after)' },
      share_if_same: {
        says: 'Share of all cases to expect after, if nothing changed',
        unit: 'fraction',
        how: 'cows_after * days_after / (cows_before * days_before + cows_after * days_after)',
      },
      share_lowest: {
        says: 'Lowest share of all cases after that these counts allow',
        unit: 'fraction',
        how: 'binomialLimits(cases_after, cases_before + cases_after, level).lowest',
        source: 'clopper-pearson-1934',
      },
      share_highest: {
        says: 'Highest share of all cases after',
        unit: 'fraction',
        how: 'binomialLimits(cases_after, cases_before + cases_after, level).highest',
        source: 'clopper-pearson-1934',
      },
      ratio: { says: 'Rate after over rate before', unit: 'times', how: 'rate_after / rate_before' },
      ratio_lowest: {
        says: 'Lowest ratio',
        unit: 'times',
        how: 'share_lowest / (1 - share_lowest) * cows_before * days_before / (cows_after * days_after)',
      },
      ratio_highest: {
        says: 'Highest ratio',
        unit: 'times',
        how: 'share_highest / (1 - share_highest) * cows_before * days_before / (cows_after * days_after)',
      },
      p: {
        says: 'Chance of counts at least so far apart, either way, if nothing changed: twice the smaller tail',
        unit: 'fraction',
        how: 'min(1, 2 * min(binomialAtMost(cases_after, cases_before + cases_after, share_if_same), binomialAtLeast(cases_after, cases_before + cases_after, share_if_same)))',
        source: 'rateratio-test',
      },
      verdict: {
        says: 'Whether it changed',
        unit: 'text',
        told: 'fewer or more where the ratio’s limits leave 1 out, else no difference shown; which is not the same as no difference',
      },
    },
    notes: [
      ONE_BY_ONE,
      'Compare the same months of the year: mastitis has its seasons.',
      'A change is not yet its cause: cows, weather, milking and treatment changed too. Talk to your vet.',
      'p is twice the smaller tail, so that it agrees with the limits; some programs take another.',
    ],
    sources: ['clopper-pearson-1934', 'r-poisson-test', 'rateratio-test', 'loader-2000'],
    examples: [
      {
        call: [21, 3011, 365, 11, 800, 365],
        at: ['ratio highest', 'value'],
        gives: 4.2772659,
        within: 5e-8,
        source:
          'R, poisson.test, documented example, its output in a validation file: 11 in 800 against 21 in 3,011, 0.8584264 to 4.2772659',
      },
      { call: [21, 3011, 365, 11, 800, 365], at: ['ratio lowest', 'value'], gives: 0.8584264, within: 5e-8, source: 'same' },
      {
        call: [9, 16_660, 365, 2, 17_877, 365],
        at: ['verdict', 'value'],
        gives: 'no difference shown',
        source: 'R, rateratio.test, vignette: 2 in 17,877 against 9 in 16,660 is just not significant',
      },
    ],
  }),

  define({
    name: 'UDDER.RECORDMONTHS',
    summary: 'How many months of records, before and again after a change, it takes to see a rise in clinical mastitis of a given size.',
    finds: 'how long to wait, years of records, how many cows, power, sample size, too few cases, trial length',
    parameters: [
      number('cases_per_100', 'per 100 cows/year', 'clinical cases per 100 cows per year before the change: UDDER.RATE', {
        above: 0,
        max: 1000,
      }),
      number('cows', 'cows', 'cows in the herd', { min: 1 }),
      number('rise', 'fraction', 'true rise of the rate to be seen: 50 % is half as many again', { min: 0.05, max: 10 }),
      optional(number('power', 'fraction', 'chance of seeing it', { min: 0.5, max: 0.99 }), defaultOf('power')),
      level,
    ],
    compute: recordMonths,
    result: 'months',
    working: {
      cases_month: { says: 'Cases to expect a month', unit: 'cases', how: 'cases_per_100 * cows / 1200' },
      expected_before: { says: 'Cases to expect before', unit: 'cases', how: 'cases_month * months' },
      expected_after: { says: 'Cases to expect after', unit: 'cases', how: '(1 + rise) * expected_before' },
      power_reached: {
        says: 'Chance that UDDER.COMPARE then says ‘more’, over all counts that may come',
        unit: 'fraction',
        how: 'recordPower(expected_before, rise, level)',
      },
      months: {
        says: 'Months before, and as many after',
        unit: 'months',
        told: 'the first, from 1 to 240, at which that chance is at least power',
      },
    },
    notes: [
      ONE_BY_ONE,
      'A rise too small to be seen may still cost more than the bedding saves: agree with your vet beforehand when to stop.',
    ],
    sources: ['clopper-pearson-1934', 'rateratio-test', 'loader-2000'],
    examples: [
      {
        call: [100, 12, 10, 0.5, 0.5],
        gives: 1,
        source:
          'by hand: 1 case a month before and 11 after; at 50 % both of 2, all of 3 or 4 of 5 cases after are enough, and with 12 to expect fewer than half after has next to no chance',
      },
      {
        call: [34, 260, 0.5],
        gives: 12,
        source:
          'the same sum in another program, scipy 1.17.1, scipy.stats.poisson and binom: power 0.831 after 12 months, below 0.8 after 11',
      },
    ],
  }),

  defineSpill({
    name: 'UDDER.CHART',
    summary: 'Control chart of clinical mastitis, month by month: which months are unlike those before by more than chance.',
    finds: 'monthly record, trend, SPC, control limits, u-chart, out of control, signal, run, season',
    parameters: [
      table('cases', 'clinical cases of each period, a column in order of time; blank where nothing is on record'),
      table('cows', 'cows in the herd in each period: a column, or one cell for all'),
      maybe(table('days', 'days of each period: a column, or one cell for all'), '365/12: months'),
      maybe(number('baseline', '', 'how many of the first periods set the centre', { min: 3, max: 1000, whole: true }), 'all'),
      optional(number('width', '', 'standard deviations from the centre to a limit', { min: 1, max: 6 }), defaultOf('chart_width')),
    ],
    compute: (cases, cows, days, baseline, width) => chartOf([cases, cows, ...(days ? [days] : [])] as Matrix[], baseline, width),
    columns: ['period', 'rate', 'centre', 'lower', 'upper', 'signal'],
    working: {
      baseline_cases: { says: 'Cases in the periods that set the centre', unit: 'cases', told: 'added up' },
      baseline_cow_days: { says: 'Cow-days in them', unit: '', told: 'cows × days, added up' },
      centre: {
        says: 'Centre; a limit lies width × √(centre × 36,500 / (cows × days)) from it, the lower not below 0',
        unit: 'per 100 cows/year',
        how: '36500 * baseline_cases / baseline_cow_days',
        source: 'nist-6-3-3-1',
      },
    },
    notes: [
      'With under 20 cases to expect in a period a false ‘above’ comes about once in 200 periods: look before you act.',
      'Eight periods in a row on one side of the centre are called a run. Seasons make runs: compare with the same months of other years.',
      'Talk to your vet about any signal, and agree beforehand what is then done.',
    ],
    sources: ['nist-6-3-3-1', 'nelson-runs'],
    examples: [
      {
        call: [
          [16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13].map((count) => [count]),
          [[100]],
          [[365]],
        ],
        at: ['24', 'signal'],
        gives: 'above',
        source:
          'NIST/SEMATECH e-Handbook 6.3.3.1: 25 wafers, centre 16, limits 4 and 28, wafer 24 with 31 above; counts from memory, their mean is the 16 seen',
      },
      {
        call: [
          [16, 14, 28, 16, 12, 20, 10, 12, 10, 17, 19, 17, 14, 16, 15, 13, 14, 16, 11, 20, 11, 19, 16, 31, 13].map((count) => [count]),
          [[100]],
          [[365]],
        ],
        at: ['1', 'upper'],
        gives: 28,
        within: 1e-9,
        source: 'same',
      },
    ],
  }),
] as const;
