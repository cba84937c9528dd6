import { explainHerd, herdRows, pairUp } from '../budget/herd.ts';
import { inputRows } from '../budget/inputs.ts';
import { levers } from '../budget/levers.ts';
import { herds, sweep, usualResults } from '../budget/many.ts';
import { defineSpill } from '../core/define.ts';
import { table, text } from '../core/parameters.ts';
import exampleHerd from '../data/example-herd.json';
import { comparing } from './budget-compare.ts';
import { exampleHerd as asGiven, itemsAndValues, planSources, resultsAsked, workedApart } from './budget-shared.ts';

export const budgetFamily = [
  defineSpill({
    name: 'BUDGET.HERD',
    summary: 'The whole job for one herd: bedding needed, what the kit can make, money, payback, udder health and warnings.',
    finds: 'whole budget, plan, answer, does it pay, will it work, everything',
    parameters: itemsAndValues,
    compute: (items, values) => herdRows(pairUp(items, values)),
    columns: ['key', 'value', 'unit', 'meaning'],
    explain: ([items, values]) => explainHerd(pairUp(items, values)),
    working: {},
    sources: planSources,
    examples: [
      { call: [asGiven.items, asGiven.values], at: ['Fibre needed', 'value'], gives: 243.539, within: 0.001, source: workedApart },
    ],
  }),
  defineSpill({
    name: 'BUDGET.HERDS',
    summary: 'The same for many herds, one row each.',
    finds: 'many farms, list of herds, compare herds, portfolio',
    parameters: [
      table('headings', 'one row: the items’ names above their columns; Herd for a name'),
      table('herds', 'one row for each herd'),
      resultsAsked(usualResults),
    ],
    compute: herds,
    columns: ['Herd', ...usualResults, 'Warnings'],
    working: {},
    sources: planSources,
    examples: [
      {
        call: [[Object.keys(exampleHerd)], [Object.values(exampleHerd)]],
        at: ['1', 'Cover of demand'],
        gives: 1.37626,
        within: 0.00001,
        source: workedApart,
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.SWEEP',
    summary: 'The results for a row of values of one item, all else as it is.',
    finds: 'what if, data table, try values, vary one thing',
    parameters: [
      ...itemsAndValues,
      text('vary', 'the item that is varied'),
      table('over', 'the values it takes'),
      resultsAsked(usualResults),
    ],
    compute: sweep,
    columns: ['vary', ...usualResults, 'Warnings'],
    working: {},
    sources: planSources,
    examples: [
      {
        call: [asGiven.items, asGiven.values, 'Bought price per t', [[165], [200]]],
        at: ['165', 'Saving'],
        gives: 14_648.94,
        within: 75,
        source: `${workedApart}; 0.5 % for moist air`,
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.LEVERS',
    summary: 'What would make it so: for each lever the value at which the herd is just covered and at which the kit just pays.',
    finds: 'what would make it pay, goal seek, break even, what to change, levers',
    parameters: itemsAndValues,
    compute: levers,
    columns: ['lever', 'unit', 'now', 'for cover 1', 'for NPV 0', 'kind', 'score at cover 1', 'score at NPV 0'],
    working: {},
    sources: planSources,
    examples: [
      {
        call: [asGiven.items, asGiven.values],
        at: ['Bought price per t', 'for NPV 0'],
        gives: 170.188,
        within: 0.9,
        source: `${workedApart}: its break-even bedding price; 0.5 % for moist air`,
      },
    ],
  }),
  ...comparing,
  defineSpill({
    name: 'BUDGET.INPUTS',
    summary: 'Every item the budget can be told, with unit, default, range, choices and source.',
    finds: 'list of inputs, items, what do I need to enter',
    parameters: [],
    compute: inputRows,
    columns: ['item', 'unit', 'default', 'lowest', 'highest', 'choices', 'source', 'status'],
    working: {},
    sources: ['project'],
    examples: [{ call: [], at: ['Exhaust humidity', 'default'], gives: 0.75, source: 'by hand: as the list of defaults has it' }],
  }),
];
