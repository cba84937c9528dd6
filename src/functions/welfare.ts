import { define, defineSpill } from '../core/define.ts';
import { number } from '../core/parameters.ts';
import { lyingByAmount, lyingTimes, welfareTable } from '../domain/welfare.ts';
import { dryMatter } from './shared.ts';

export const welfare = [
  defineSpill({
    name: 'WELFARE.LYING',
    summary: 'Hours a day that cows would lie at this dry matter, by each published trial. The trials disagree; no milk is claimed for it.',
    finds: 'lying time, cow comfort, wet beds, rest, hours lying',
    parameters: [dryMatter('dm', 'dry matter of the bedding the cows lie on')],
    compute: lyingTimes,
    columns: ['trial', 'hours per day', 'range', 'source', 'status'],
    working: {},
    inRows: {
      'Reich 2010': {
        says: 'Lying time by this trial, inside its own range only',
        unit: 'h/day',
        how: '10.4 + 2 * (dm - 0.35)',
        only: 'dm >= 0.35 && dm <= 0.9',
        source: 'reich-2010',
      },
      'Fregonesi 2007': {
        says: 'Lying time by this trial, inside its own range only',
        unit: 'h/day',
        how: '8.8 + (13.8 - 8.8) * (dm - 0.265) / (0.864 - 0.265)',
        only: 'dm >= 0.265 && dm <= 0.864',
        source: 'fregonesi-2007-bedding',
      },
    },
    sources: ['reich-2010', 'fregonesi-2007-bedding', 'lying-goal-2019', 'efsa-2023', 'project'],
    examples: [
      {
        call: [0.898],
        at: ['Reich 2010', 'hours per day'],
        gives: 11.5,
        within: 0.05,
        source: 'Reich 2010, abstract: 11.5 ± 0.4 h at 89.8 %; half of the last digit printed',
      },
      {
        call: [0.265],
        at: ['Fregonesi 2007', 'hours per day'],
        gives: 8.8,
        within: 1e-9,
        source: 'Fregonesi 2007, from memory: 8.8 h at 26.5 %',
      },
    ],
  }),

  define({
    name: 'WELFARE.LYINGAMOUNT',
    summary: 'Hours a day that cows would lie on mattresses by how much sawdust is on them; one trial, its two ends only.',
    finds: 'how much bedding on mattresses, depth of bedding, comfort, lying time',
    parameters: [number('kg_sawdust', 'kg', 'sawdust lying on the mattress', { max: 7.5 })],
    compute: lyingByAmount,
    result: 'hours_day',
    working: { hours_day: { says: 'Lying time', unit: 'h/day', how: '12.3 + 0.2 * kg_sawdust', source: 'tucker-weary-2004' } },
    sources: ['tucker-weary-2004'],
    examples: [
      { call: [0], gives: 12.3, within: 1e-9, source: 'Tucker and Weary 2004, abstract: 12.3 ± 0.53 h on bare mattresses' },
      { call: [7.5], gives: 13.8, within: 1e-9, source: 'Tucker and Weary 2004, abstract: 13.8 ± 0.53 h with 7.5 kg of sawdust' },
    ],
  }),

  defineSpill({
    name: 'WELFARE.TABLE',
    summary: 'Published findings on lying time, hocks and stocking, those that contradict each other too.',
    finds: 'hock injury, lesions, overstocking, cow comfort, studies, welfare',
    parameters: [],
    compute: welfareTable,
    columns: ['finding', 'figure', 'unit', 'source', 'status'],
    working: {},
    sources: [
      'lying-goal-2019',
      'reich-2010',
      'fregonesi-2007-bedding',
      'tucker-weary-2004',
      'tucker-2009',
      'sand-depth-2005',
      'fregonesi-2007-stocking',
      'stocking-2016',
      'zaffino-heyerhoff-2014',
      'barrientos-2013',
      'potterton-2011',
      'husfeldt-endres-2012',
      'efsa-2023',
      'frechette-2022-hygiene',
      'frechette-2022-scc',
      'frechette-2021',
      'rowbotham-ruegg-2015',
      'aghamohammadi-2018',
      'project',
    ],
    examples: [
      {
        call: [],
        at: ['Hocks: odds of injury on sand against mattress', 'figure'],
        gives: 0.07,
        source: 'Zaffino Heyerhoff 2014, abstract: odds ratio 0.07',
      },
    ],
  }),
];
