import { defaultOf } from '../core/bibliography.ts';
import { define } from '../core/define.ts';
import { number, optional } from '../core/parameters.ts';
import {
  bufferTank,
  cakeWithReturn,
  captureShare,
  dilutedDryMatter,
  liquidDryMatter,
  pressedCake,
  pressRunningHours,
  pressThroughput,
  slurryProduced,
} from '../domain/separation.ts';
import { dryMatter, slurryDryMatter } from './shared.ts';

const slurry = slurryDryMatter('slurry_dm', 'dry matter of the slurry as it reaches the press');
const cake = dryMatter('cake_dm', 'dry matter of the pressed fibre');
const capture = number('capture', 'fraction', 'share of the slurry’s dry matter that ends in the pressed fibre', { min: 0.01 });
const running = number('t_h_running', 't/h', 'slurry pressed while the press runs', { above: 0, max: 1000 });

export const fibre = [
  define({
    name: 'FIBRE.SLURRY',
    summary: 'Slurry that comes to the press each day.',
    finds: 'muck, manure, how much slurry, wash water, parlour washings',
    parameters: [
      number('cows', 'cows', 'cows whose slurry is collected', { min: 1 }),
      number('litres_cow_day', 'litres/day', 'undiluted slurry per cow', { above: 0, max: 150 }),
      optional(
        number('water_litres_cow_day', 'litres/day', 'wash and rain water with it, per cow', { max: 500 }),
        defaultOf('water_litres_cow_day'),
      ),
    ],
    compute: slurryProduced,
    result: 'slurry_t_day',
    working: {
      with_water_litres_cow_day: { says: 'Per cow, with water', unit: 'litres/day', how: 'litres_cow_day + water_litres_cow_day' },
      slurry_t_day: { says: 'Slurry, one cubic metre taken as one tonne', unit: 't/day', how: 'cows * with_water_litres_cow_day / 1000' },
    },
    sources: ['slurry-storage-examples'],
    examples: [
      {
        call: [100, 330 / 7],
        gives: 528 / (16 * 7),
        within: 1e-9,
        source: 'Irish storage guidance, quoted: 100 cows × 0.33 m³ a week × 16 weeks = 528 m³',
      },
    ],
  }),

  define({
    name: 'FIBRE.DILUTEDDM',
    summary: 'Dry matter of slurry once wash water has run in.',
    finds: 'thin, watery, dilution, parlour washings, rain',
    parameters: [
      slurryDryMatter('dm', 'dry matter of the undiluted slurry'),
      number('litres', 'litres', 'undiluted slurry', { above: 0 }),
      number('water_litres', 'litres', 'water over the same time'),
    ],
    compute: dilutedDryMatter,
    result: 'diluted_dm',
    working: {
      total_litres: { says: 'Slurry and water', unit: 'litres', how: 'litres + water_litres' },
      diluted_dm: { says: 'Dry matter, diluted', unit: 'fraction', how: 'dm * litres / total_litres' },
    },
    sources: ['mass-balance'],
    examples: [{ call: [0.1, 60, 20], gives: 0.075, within: 1e-12, source: 'by hand: 6 parts of dry matter in 80' }],
  }),

  define({
    name: 'FIBRE.CAKE',
    summary: 'Pressed fibre that comes from slurry.',
    finds: 'solids, separator, press, yield, how much fibre, manure bedding',
    parameters: [number('slurry_t', 't', 'slurry pressed'), slurry, cake, capture],
    compute: pressedCake,
    result: 'cake_t',
    working: {
      dry_matter_t: { says: 'Dry matter in the slurry', unit: 't', how: 'slurry_t * slurry_dm' },
      caught_t: { says: 'Dry matter caught', unit: 't', how: 'dry_matter_t * capture' },
      cake_t: { says: 'Pressed fibre', unit: 't', how: 'caught_t / cake_dm', only: 'slurry_dm < cake_dm' },
    },
    sources: ['mass-balance', 'hjorth-2010', 'moller-2000'],
    examples: [
      { call: [1, 0.08, 0.32, 0.3], gives: 0.075, within: 1e-12, source: 'by hand: 0.08 × 0.30 ÷ 0.32' },
      {
        call: [1, 0.08, 0.25, 0.40064],
        gives: 0.12821,
        within: 1e-5,
        source: 'by hand: slurry 8 %, pressed 25 %, liquid 5.5 % dry matter',
      },
    ],
  }),

  define({
    name: 'FIBRE.LIQUIDDM',
    summary: 'Dry matter of the liquid that the press leaves.',
    finds: 'separated liquid, filtrate, thin fraction, lagoon',
    parameters: [slurry, cake, capture],
    compute: liquidDryMatter,
    result: 'liquid_dm',
    working: {
      cake_share: { says: 'Pressed fibre per tonne of slurry', unit: 'fraction', how: 'slurry_dm * capture / cake_dm' },
      liquid_dm: {
        says: 'Dry matter of the liquid',
        unit: 'fraction',
        how: 'slurry_dm * (1 - capture) / (1 - cake_share)',
        only: 'slurry_dm < cake_dm',
      },
    },
    sources: ['mass-balance', 'hjorth-2010'],
    examples: [{ call: [0.08, 0.32, 0.3], gives: 0.056 / 0.925, within: 1e-12, source: 'by hand: 0.056 of dry matter in 0.925' }],
  }),

  define({
    name: 'FIBRE.CAPTURE',
    summary: 'Share of the slurry’s dry matter that a press catches, from three samples.',
    finds: 'separation efficiency, how well does the press work, test a separator, samples',
    parameters: [slurry, cake, slurryDryMatter('liquid_dm', 'dry matter of the liquid')],
    compute: captureShare,
    result: 'capture',
    working: {
      cake_share: {
        says: 'Pressed fibre per tonne of slurry',
        unit: 'fraction',
        how: '(slurry_dm - liquid_dm) / (cake_dm - liquid_dm)',
      },
      capture: { says: 'Share of dry matter caught', unit: 'fraction', how: 'cake_share * cake_dm / slurry_dm' },
    },
    sources: ['mass-balance', 'hjorth-2010', 'moller-2000'],
    examples: [{ call: [0.08, 0.25, 0.055], gives: 0.40064, within: 5e-6, source: 'by hand: 0.25 × 0.025 ÷ (0.08 × 0.195)' }],
  }),

  define({
    name: 'FIBRE.THROUGHPUT',
    summary: 'Slurry that a press takes in a day when it runs and rests by turns.',
    finds: 'timer, on and off, intermittent, press capacity, per day',
    parameters: [
      running,
      number('minutes_on', 'minutes', 'minutes running', { above: 0, max: 10_080 }),
      number('minutes_off', 'minutes', 'minutes at rest before it runs again', { max: 10_080 }),
      optional(number('hours_day', 'h/day', 'hours a day over which it runs and rests', { above: 0 }), defaultOf('press_day_hours')),
    ],
    compute: pressThroughput,
    result: 't_day',
    working: {
      duty: { says: 'Share of the time running', unit: 'fraction', how: 'minutes_on / (minutes_on + minutes_off)' },
      running_hours_day: { says: 'Running', unit: 'h/day', how: 'hours_day * duty' },
      t_day: { says: 'Slurry pressed', unit: 't/day', how: 't_h_running * running_hours_day' },
    },
    sources: ['arithmetic'],
    examples: [{ call: [6, 30, 30, 16], gives: 48, within: 1e-9, source: 'by hand: 6 t/h for half of 16 hours' }],
  }),

  define({
    name: 'FIBRE.RUNTIME',
    summary: 'Hours a press must run to get through a day’s slurry; above 24 one press will not do.',
    finds: 'press hours, running time, long enough',
    parameters: [number('t_day', 't/day', 'slurry to press'), running],
    compute: pressRunningHours,
    result: 'running_hours_day',
    working: { running_hours_day: { says: 'Running', unit: 'h/day', how: 't_day / t_h_running' } },
    sources: ['arithmetic'],
    examples: [{ call: [28.8, 6], gives: 4.8, within: 1e-9, source: 'by hand: 28.8 t at 6 t/h' }],
  }),

  define({
    name: 'FIBRE.BUFFER',
    summary: 'What the tank before the press must hold while it stands still. Pits and stores have rules of their own: ask the authority.',
    finds: 'reception, mixing tank, storage, overnight, weekend',
    parameters: [
      number('slurry_t_day', 't/day', 'slurry that comes in, evenly round the clock'),
      number('press_hours_day', 'h/day', 'hours a day that the press is at work'),
      optional(number('margin', 'fraction', 'room to spare'), defaultOf('buffer_margin')),
    ],
    compute: bufferTank,
    result: 'buffer_m3',
    working: {
      waiting_m3: { says: 'Slurry that waits', unit: 'm³', how: 'slurry_t_day * (24 - press_hours_day) / 24' },
      buffer_m3: { says: 'Tank, with room to spare', unit: 'm³', how: 'waiting_m3 * (1 + margin)' },
    },
    sources: ['reception-pit-rules'],
    examples: [{ call: [28.8, 16], gives: 10.56, within: 1e-9, source: 'by hand: 28.8 × 8 ÷ 24 = 9.6, and a tenth more' }],
  }),

  define({
    name: 'FIBRE.RETURN',
    summary: 'Pressed fibre once bedding scraped from the beds comes back with the slurry and is caught again.',
    finds: 'recycled bedding, comes back, sand, sawdust in slurry, scraped off, more fibre later, steady state',
    parameters: [
      number('cake_t', 't', 'fibre pressed from the cows’ slurry alone: FIBRE.CAKE'),
      number('returned', 'fraction', 'share of the bedding’s dry matter that comes back with the slurry: measure it'),
      number('recaught', 'fraction', 'share of that which the press catches again: measure it'),
    ],
    compute: cakeWithReturn,
    result: 'with_return_t',
    working: {
      again: { says: 'Share of each round that comes round again', unit: 'fraction', how: 'returned * recaught' },
      from_beds_t: { says: 'Of it, from the beds', unit: 't', how: 'with_return_t - cake_t' },
      with_return_t: {
        says: 'Pressed fibre, the sum of all rounds: cake × (1 + again + again² + …)',
        unit: 't',
        how: 'cake_t / (1 - again)',
        only: 'again < 1',
        source: 'mass-balance',
      },
    },
    notes: [
      'The steady state, after some weeks. Both are shares of dry matter; no figure is held: take samples before fibre is bedded and after.',
      'Only fibre comes back to be used: with sand or sawdust in the beds today’s samples hold what tomorrow’s will not.',
    ],
    sources: ['mass-balance'],
    examples: [{ call: [6, 0.5, 0.4], gives: 7.5, within: 1e-12, source: 'by hand: 6 + 1.2 + 0.24 + 0.048 + … = 6 ÷ 0.8' }],
  }),
];
