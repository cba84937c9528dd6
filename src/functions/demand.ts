import { defaultOf } from '../core/bibliography.ts';
import { define } from '../core/define.ts';
import { number, optional } from '../core/parameters.ts';
import { cubicleDemand, dispenserLoads, herdDemand, layingDepth, sameVolume } from '../domain/demand.ts';
import { bulkDensity, cubicles, dispenser, housedDays, intervalDays, litres } from './shared.ts';

export const demand = [
  define({
    name: 'DEMAND.DEPTH',
    summary: 'Litres of bedding that lay one cubicle to a given depth.',
    finds: 'how deep, layer, thickness, bed size, volume, mattress, litres per cubicle',
    parameters: [
      number('length_m', 'm', 'length of the bedded part of the cubicle', { above: 0, max: 10 }),
      number('width_m', 'm', 'width of the bedded part', { above: 0, max: 10 }),
      number('depth_m', 'm', 'depth laid, as a mean over the bed', { above: 0, max: 1 }),
    ],
    compute: layingDepth,
    result: 'litres',
    working: { litres: { says: 'Laid in a cubicle', unit: 'litres', how: '1000 * length_m * width_m * depth_m' } },
    sources: ['arithmetic'],
    examples: [{ call: [1.8, 1.2, 0.02], gives: 43.2, within: 1e-9, source: 'by hand: 18 dm × 12 dm × 0.2 dm' }],
  }),

  define({
    name: 'DEMAND.CUBICLE',
    summary: 'Bedding per cubicle per day, from what is laid each time.',
    finds: 'kg per cow, bedding rate, how much bedding, daily, dose',
    parameters: [litres, intervalDays, bulkDensity('density_kg_m3', 'bulk density of the bedding as it is laid')],
    compute: cubicleDemand,
    result: 'kg_cubicle_day',
    working: {
      kg_each_time: { says: 'Laid each time', unit: 'kg', how: 'litres / 1000 * density_kg_m3' },
      kg_cubicle_day: { says: 'Per cubicle per day', unit: 'kg/day', how: 'kg_each_time / interval_days' },
    },
    sources: ['arithmetic'],
    examples: [{ call: [18, 2, 178], gives: 1.602, within: 1e-9, source: 'by hand: 0.018 m³ × 178 kg/m³ ÷ 2 days' }],
  }),

  define({
    name: 'DEMAND.HERD',
    summary: 'Bedding that a herd uses in a year.',
    finds: 'how much bedding, tonnes, annual use, need',
    parameters: [
      cubicles,
      number('kg_cubicle_day', 'kg/day', 'bedding laid per cubicle per day, fresh mass', { max: 200 }),
      housedDays,
      optional(number('loss', 'fraction', 'share lost in store, handling and dosing', { below: 1 }), defaultOf('loss')),
    ],
    compute: herdDemand,
    result: 't_year',
    working: {
      laid_t_year: { says: 'Laid in the cubicles', unit: 't/year', how: 'cubicles * kg_cubicle_day * housed_days / 1000' },
      t_year: { says: 'Needed, with what is lost', unit: 't/year', how: 'laid_t_year / (1 - loss)' },
    },
    sources: ['mass-balance'],
    examples: [
      {
        call: [420, 1.602, 300, 0.05],
        gives: 212.476,
        within: 0.001,
        source: 'by hand: 420 × 1.602 × 300 ÷ 1000 = 201.852 t laid, ÷ 0.95',
      },
      { call: [100, 9.6], gives: 350.4, within: 1e-9, source: 'by hand: 100 × 9.6 × 365 ÷ 1000' },
    ],
  }),

  define({
    name: 'DEMAND.SAMEVOLUME',
    summary: 'Mass of another material that fills the same space.',
    finds: 'swap, replace sawdust, compare, equivalent, convert, instead of',
    parameters: [
      number('kg', 'kg', 'mass of the first material'),
      bulkDensity('density_from', 'its bulk density'),
      bulkDensity('density_to', 'bulk density of the other material'),
    ],
    compute: sameVolume,
    result: 'kg_other',
    working: {
      volume_m3: { says: 'Space it fills', unit: 'm³', how: 'kg / density_from' },
      kg_other: { says: 'Mass of the other material', unit: 'kg', how: 'volume_m3 * density_to' },
    },
    sources: ['arithmetic'],
    examples: [{ call: [178, 178, 200], gives: 200, within: 1e-9, source: 'by hand: 178 kg at 178 kg/m³ is one cubic metre' }],
  }),

  define({
    name: 'DEMAND.LOADS',
    summary: 'Whole dispenser loads that bed every cubicle once.',
    finds: 'fills, bucket, trips, rounds, bedding dispenser, spreader, how many loads',
    parameters: [cubicles, litres, dispenser],
    compute: dispenserLoads,
    result: 'loads',
    working: {
      bedding_m3: { says: 'Bedding laid each time', unit: 'm³', how: 'cubicles * litres / 1000' },
      loads: { says: 'Loads, rounded up', unit: 'loads', how: 'wholeLoads(bedding_m3, dispenser_m3)' },
    },
    sources: ['arithmetic'],
    examples: [
      { call: [420, 18, 2], gives: 4, source: 'by hand: 7.56 m³ ÷ 2 m³ is 3.78, so four loads' },
      { call: [1500, 20, 0.1], gives: 300, source: 'by hand: 30 m³ ÷ 0.1 m³, a whole number of loads' },
    ],
  }),
];
