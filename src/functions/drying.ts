import { define } from '../core/define.ts';
import { number } from '../core/parameters.ts';
import { driedYield, finalDryMatter, waterToEvaporate } from '../domain/mass-balance.ts';
import { dryer } from './dryer.ts';
import { heater } from './heater.ts';
import { dmIn, dmOut } from './shared.ts';
import { trial } from './trial.ts';

/** The family DRYING: first what goes in and comes out by mass alone, then the heat, then what the air carries off. */
export const drying = [
  define({
    name: 'DRYING.WATER',
    summary: 'Water to evaporate to make a mass of dried material.',
    finds: 'moisture, how much water, evaporate, dry down',
    parameters: [number('dried', '', 'mass of dried material, in any unit; the answer is in the same', { min: 0 }), dmIn, dmOut],
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
    parameters: [number('wet', '', 'mass of wet material, in any unit; the answer is in the same', { min: 0 }), dmIn, dmOut],
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
      dm_out: { says: 'Dry matter reached', unit: 'fraction', how: 'min(1, dry_matter_kg_h / dried_kg_h)' },
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
  ...trial,
];
