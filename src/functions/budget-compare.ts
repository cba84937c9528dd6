import { howSure, usualDoubts } from '../budget/how-sure.ts';
import { measure } from '../budget/measure.ts';
import { months } from '../budget/months.ts';
import { plans, usualComparison } from '../budget/plans.ts';
import { size } from '../budget/size.ts';
import { defaultOf } from '../core/bibliography.ts';
import { defineSpill } from '../core/define.ts';
import { maybe, number, optional, table, text, yesNo } from '../core/parameters.ts';
import { exampleHerd, itemsAndValues, planSources, resultsAsked, workedApart } from './budget-shared.ts';

const ranges = table('ranges', 'rows of item, low, likely, high: the extremes that are thought possible; likely blank: the value in use');
const draws = optional(number('draws', '', 'how many plans are drawn', { min: 100, max: 100_000, whole: true }), defaultOf('plan_draws'));
const seed = optional(
  number('seed', '', 'any whole number: the same one gives the same answer', { min: 0, max: 999_999_999, whole: true }),
  defaultOf('seed'),
);

const monthsTable = table('months', 'rows of month, days housed, outdoor °C, outdoor humidity, heat kW, hot water litres per hour');

/** The worked herd's saving. */
const saving = 14_648.94;

/** A year of twelve months alike, in the weather that the budget takes for the whole year. */
const alike = Array.from({ length: 12 }, (_, k) => [`month ${k + 1}`, 25, 7, 0.85, null, null]);

/** Many plans of one herd: part of the family BUDGET. */
export const comparing = [
  defineSpill({
    name: 'BUDGET.PLANS',
    summary: 'Plans side by side: the herd as given, and beside it others that differ in some items; what the dearer one earns.',
    finds: 'compare, options, press alone, larger dryer, which kit, variants, alternatives, extra money',
    parameters: [
      ...itemsAndValues,
      table('changes', 'first row: a corner cell and the plans’ names; then an item a row and its value in each plan, none to take it out'),
      resultsAsked(usualComparison),
    ],
    compute: plans,
    columns: ['key', 'unit', 'base'],
    working: {},
    sources: planSources,
    examples: [
      {
        call: [
          exampleHerd.items,
          exampleHerd.values,
          [
            ['', 'dearer kit'],
            ['Kit cost', 128_000],
          ],
          [['NPV']],
        ],
        at: ['Extra capital over base', 'dearer kit'],
        gives: 10_000,
        within: 1e-9,
        source: 'by hand: 128,000 less 118,000',
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.RANGE',
    summary: 'How sure the whole plan is: each result over many plans drawn between the low and the high of any items.',
    finds: 'how sure, risk, chance, odds, uncertainty, Monte Carlo, percentile, doubt, worst case',
    parameters: [...itemsAndValues, ranges, resultsAsked(usualDoubts), draws, seed],
    compute: howSure,
    columns: ['result', 'unit', 'mean', '10th percentile', 'median', '90th percentile', 'chance', 'good when', 'no answer'],
    working: {},
    sources: [...planSources, 'mckay-1979', 'hyndman-fan-1996'],
    examples: [
      {
        call: [exampleHerd.items, exampleHerd.values, [['Kit cost', 118_000, null, 118_000]], [['Saving']], 100],
        at: ['Saving', 'median'],
        gives: saving,
        within: 75,
        source: `nothing in doubt, so the plan itself: ${workedApart}; 0.5 % for moist air`,
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.MEASURE',
    summary: 'Which figure to measure next: how much of the doubt about a result each item brings, and what knowing it is worth.',
    finds: 'what to measure, sample, value of information, sensitivity, which matters most, weigh a bucket',
    parameters: [...itemsAndValues, ranges, optional(text('result', 'key of the result'), defaultOf('measured_result')), draws, seed],
    compute: measure,
    columns: ['item', 'low', 'likely', 'high', 'share of doubt', 'worth knowing', 'how to measure'],
    working: {},
    sources: [...planSources, 'mckay-1979', 'plischke-2013', 'raiffa-schlaifer-1961'],
    examples: [
      {
        call: [exampleHerd.items, exampleHerd.values, [['Kit cost', 90_000, null, 140_000]], 'NPV', 2000],
        at: ['Kit cost', 'share of doubt'],
        gives: 1,
        within: 0.005,
        source: 'by hand: one figure alone brings all the doubt; its bins are narrow, not points',
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.MONTHS',
    summary: 'The year month by month: what the kit makes in each month’s weather, what is topped up, and the year’s saving with that.',
    finds: 'winter, summer, season, monthly, frost, shortfall, cold weather, top up, turn the fan down',
    parameters: [
      ...itemsAndValues,
      monthsTable,
      optional(yesNo('turn_down', 'whether the fan is turned down where that makes more'), defaultOf('turn_down')),
    ],
    compute: months,
    columns: [
      'month',
      'days',
      'supply temperature',
      'air',
      'limit',
      'cover',
      'needed t',
      'made t',
      'topped up t',
      'power cost',
      'heat cost',
    ],
    working: {},
    sources: planSources,
    examples: [
      {
        call: [exampleHerd.items, exampleHerd.values, alike],
        at: ['year: saving', 'days'],
        gives: saving,
        within: 75,
        source: `twelve months alike are the year: ${workedApart}; 0.5 % for moist air`,
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.SIZE',
    summary: 'The least press, air, heat, hot water, drum and buffer that cover this herd in its worst month, beside what is planned.',
    finds: 'how big, sizing, specify, least kit, boiler size, fan size, drum size, tank',
    parameters: [
      ...itemsAndValues,
      maybe(monthsTable, 'the coldest month of the items'),
      optional(number('margin', 'fraction', 'by how much more than needed the kit is to make'), defaultOf('size_margin')),
      optional(
        number('retention_hours', 'hours', 'time that the fibre is to stay in the drum', { above: 0 }),
        defaultOf('retention_hours'),
      ),
      optional(number('water_fall_k', 'K', 'by how much the hot water may cool in the heater', { above: 0 }), defaultOf('water_fall')),
    ],
    compute: (items, values, table, margin, retention_hours, water_fall_k) =>
      size(items, values, table, { margin, retention_hours, water_fall_k }),
    columns: ['what', 'unit', 'now', 'needed', 'times'],
    working: {},
    sources: planSources,
    examples: [
      {
        call: [exampleHerd.items, exampleHerd.values],
        at: ['Buffer m3', 'needed'],
        gives: 10.56,
        within: 1e-9,
        source: 'by hand: 28.8 t a day × 8 of 24 hours × 1.1',
      },
    ],
  }),
];
