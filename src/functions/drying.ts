import { define } from '../core/define.ts';
import { number } from '../core/parameters.ts';
import { drumNeeded, retention, stockDays } from '../domain/drying.ts';
import { driedYield, finalDryMatter, waterToEvaporate } from '../domain/mass-balance.ts';
import { dryer } from './dryer.ts';
import { heater } from './heater.ts';
import { bulkDensity, dmIn, dmOut } from './shared.ts';

const drum = number('drum_m3', 'm³', 'inner volume of the drum: 0.785 × diameter² × length, in metres', { above: 0, max: 10_000 });
const fill = number('fill', 'fraction', 'share of the drum that fibre fills, looked at with the drum stopped', { min: 0.01 });

export const drying = [
  define({
    name: 'DRYING.WATER',
    summary: 'Water to evaporate to make a mass of dried material.',
    finds: 'moisture, how much water, evaporate, dry down',
    parameters: [number('dried', '', 'mass of dried material, in any unit; the answer is in the same'), dmIn, dmOut],
    compute: waterToEvaporate,
    result: 'water',
    working: {
      wet: { says: 'Wet material that goes in', unit: '', how: 'dried * dm_out / dm_in', source: 'mass-balance' },
      water: { says: 'Water to evaporate', unit: '', how: 'dried * (dm_out / dm_in - 1)', source: 'mass-balance' },
    },
    sources: ['mass-balance', 'coulson-richardson-16-5'],
    examples: [
      {
        call: [0.35 * 1.005, 1 / 1.15, 1 / 1.005],
        gives: 0.0508,
        within: 5.1e-5,
        source:
          'Coulson and Richardson vol. 2, example 16.5, as worked: 0.35 kg/s of dry solids from 0.15 to 0.005 kg of water per kg; printed to four places',
      },
      { call: [100, 0.3, 0.9], gives: 200, within: 1e-9, source: 'by hand: 300 kg at 0.30 and 100 kg at 0.90 both hold 90 kg of solids' },
    ],
  }),

  define({
    name: 'DRYING.YIELD',
    summary: 'Dried material that a mass of wet material gives.',
    finds: 'shrink, weight after drying, moisture, dry down',
    parameters: [number('wet', '', 'mass of wet material, in any unit; the answer is in the same'), dmIn, dmOut],
    compute: driedYield,
    result: 'dried',
    working: {
      dry_matter: { says: 'Dry matter in it', unit: '', how: 'wet * dm_in', source: 'mass-balance' },
      dried: { says: 'Dried material', unit: '', how: 'dry_matter / dm_out', source: 'mass-balance' },
    },
    sources: ['mass-balance', 'irri-paddy'],
    examples: [
      {
        call: [1000, 0.75, 0.86],
        gives: 872,
        within: 0.5,
        source: 'IRRI Rice Knowledge Bank: 1,000 kg of paddy from 25 % to 14 % moisture; printed to the kg',
      },
    ],
  }),

  define({
    name: 'DRYING.FINALDM',
    summary: 'Dry matter reached when a known rate of water is taken from wet material.',
    finds: 'how dry, moisture, finish, dry matter out of the dryer',
    parameters: [
      number('wet_kg_h', 'kg/h', 'wet material going in', { above: 0 }),
      dmIn,
      number('evaporation_kg_h', 'kg/h', 'water taken from it, e.g. from DRYING.EVAPORATION'),
    ],
    compute: finalDryMatter,
    result: 'dm_out',
    working: {
      water_kg_h: { says: 'Water in the material', unit: 'kg/h', how: 'wet_kg_h * (1 - dm_in)', source: 'mass-balance' },
      dry_matter_kg_h: { says: 'Dry matter in it', unit: 'kg/h', how: 'wet_kg_h * dm_in', source: 'mass-balance' },
      dried_kg_h: { says: 'Dried material', unit: 'kg/h', how: 'wet_kg_h - evaporation_kg_h', source: 'mass-balance' },
      dm_out: { says: 'Dry matter reached', unit: 'fraction', how: 'dry_matter_kg_h / dried_kg_h' },
    },
    sources: ['mass-balance', 'irri-paddy'],
    examples: [
      {
        call: [1000, 0.75, 128],
        gives: 0.86,
        within: 0.0005,
        source: 'IRRI Rice Knowledge Bank: 1,000 kg of paddy at 25 % moisture less 128 kg is at 14 %; the 872 kg are printed to the kg',
      },
    ],
  }),

  ...heater,

  ...dryer,

  define({
    name: 'DRYING.RETENTION',
    summary: 'Hours that the fibre stays in the drum.',
    finds: 'time in drum, residence, hold-up, how long',
    parameters: [
      drum,
      fill,
      bulkDensity('density_kg_m3', 'bulk density of the dried fibre'),
      number('kg_h', 'kg/h', 'dried fibre leaving', { above: 0 }),
    ],
    compute: retention,
    result: 'hours',
    working: {
      held_kg: { says: 'Fibre in the drum', unit: 'kg', how: 'drum_m3 * fill * density_kg_m3' },
      hours: { says: 'Hours in the drum', unit: 'hours', how: 'held_kg / kg_h' },
    },
    sources: ['mass-balance'],
    examples: [{ call: [10, 0.25, 200, 62.5], gives: 8, within: 1e-9, source: 'by hand: 500 kg in the drum leave at 62.5 kg/h' }],
  }),

  define({
    name: 'DRYING.DRUMNEEDED',
    summary: 'Drum that a stated output and time in the drum need: a second check of a supplier.',
    finds: 'drum size, supplier, check, residence, volume',
    parameters: [
      number('m3_h', 'm³/h', 'stated output of dried fibre', { above: 0 }),
      number('hours', 'hours', 'stated time in the drum', { above: 0 }),
      fill,
    ],
    compute: drumNeeded,
    result: 'drum_m3',
    working: {
      held_m3: { says: 'Fibre in the drum', unit: 'm³', how: 'm3_h * hours' },
      drum_m3: { says: 'Drum needed', unit: 'm³', how: 'held_m3 / fill' },
    },
    sources: ['mass-balance'],
    examples: [{ call: [3, 8, 0.3], gives: 80, within: 1e-9, source: 'by hand: 24 m³ of fibre fill 0.3 of 80 m³' }],
  }),

  define({
    name: 'DRYING.STOCKDAYS',
    summary: 'Days that a store of bedding lasts.',
    finds: 'store, bunker, heap, reserve, how long, breakdown',
    parameters: [
      number('m3', 'm³', 'what the store holds'),
      bulkDensity('density_kg_m3', 'bulk density of what is in it'),
      number('t_day', 't/day', 'bedding used a day', { above: 0 }),
    ],
    compute: stockDays,
    result: 'days',
    working: {
      stock_t: { says: 'Bedding in store', unit: 't', how: 'm3 * density_kg_m3 / 1000' },
      days: { says: 'Days it lasts', unit: 'days', how: 'stock_t / t_day' },
    },
    sources: ['mass-balance'],
    examples: [{ call: [20, 200, 0.8], gives: 5, within: 1e-9, source: 'by hand: 4 t at 0.8 t a day' }],
  }),
];
