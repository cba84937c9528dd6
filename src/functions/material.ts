import { besideWord } from '../core/arithmetic.ts';
import { defaultOf } from '../core/bibliography.ts';
import { define, defineSpill } from '../core/define.ts';
import { number, optional } from '../core/parameters.ts';
import figures from '../data/materials.json';
import { driedDensity, materialDensity, materialDryMatter, materialTable, ovenDryMatter } from '../domain/materials.ts';
import { material as bedding, bulkDensity, dryMatter } from './shared.ts';

/** Where a looked-up figure comes from: shown with it, since no two materials share a source. */
const provenance = {
  found_in: { says: 'Where the figure was found, and others that disagree', unit: 'text', told: 'looked up; SOURCES has each in full' },
  trust: {
    says: 'How far to trust it',
    unit: 'text',
    told: 'seen in the source; quoted by another; memory, not checked; computed; practice of the trade; judgement of this project',
  },
} as const;

const lookedUp = (figure: 'density_kg_m3' | 'dm'): string =>
  besideWord(
    Object.entries(figures).map(([name, held]) => [name, 'value' in held[figure] ? held[figure].value : undefined]),
    'material',
  );

export const material = [
  define({
    name: 'MATERIAL.DENSITY',
    summary: 'Bulk density to start from for a bedding material; weigh a bucket of your own.',
    finds: 'weight, kg per cubic metre, heavy, loose, sawdust, straw, sand',
    parameters: [bedding('material', 'bedding material')],
    compute: materialDensity,
    result: 'density_kg_m3',
    working: {
      ...provenance,
      density_kg_m3: { says: 'Bulk density', unit: 'kg/m³', told: 'looked up', closed: lookedUp('density_kg_m3') },
    },
    sources: ['ahn-2016', 'ahn-2020', 'nrcs-651-4', 'ferraz-2020'],
    examples: [{ call: ['sawdust'], gives: 178, source: 'Ahn et al. 2016, abstract: sawdust 178 kg/m³' }],
  }),

  define({
    name: 'MATERIAL.DRYMATTER',
    summary: 'Dry matter to start from for a bedding material; test a sample of your own.',
    finds: 'DM, moisture, how dry, wet',
    parameters: [bedding('material', 'bedding material')],
    compute: materialDryMatter,
    result: 'dm',
    working: { ...provenance, dm: { says: 'Dry matter', unit: 'fraction', told: 'looked up', closed: lookedUp('dm') } },
    sources: ['university-laboratory', 'bernard-2003', 'fibre-trade-press'],
    examples: [{ call: ['sand'], gives: 0.966, source: 'Bernard et al. 2003: sand bedding, 96.6 % dry matter' }],
  }),

  define({
    name: 'MATERIAL.DRIEDDENSITY',
    summary: 'Bulk density of fibre once dried, if its heap shrinks by the stated share.',
    finds: 'lighter, weight after drying, dried fibre, shrink',
    parameters: [
      bulkDensity('density_kg_m3', 'bulk density before drying'),
      dryMatter('dm_in', 'dry matter before drying'),
      dryMatter('dm_out', 'dry matter after drying'),
      optional(number('shrinkage', 'fraction', 'share of its volume that it loses', { max: 0.5 }), defaultOf('shrinkage')),
    ],
    compute: driedDensity,
    result: 'dried_density_kg_m3',
    working: {
      mass_kept: { says: 'Share of the mass left', unit: 'fraction', how: 'dm_in / dm_out' },
      volume_kept: { says: 'Share of the volume left', unit: 'fraction', how: '1 - shrinkage' },
      dried_density_kg_m3: { says: 'Bulk density, dried', unit: 'kg/m³', how: 'density_kg_m3 * mass_kept / volume_kept' },
    },
    sources: ['mass-balance'],
    examples: [
      { call: [300, 0.36, 0.6, 0], gives: 180, within: 1e-9, source: 'by hand: 300 × 0.36 ÷ 0.6, no shrinkage: the least it can be' },
      { call: [300, 0.36, 0.6, 0.2], gives: 225, within: 1e-9, source: 'by hand: the same ÷ 0.8' },
    ],
  }),

  define({
    name: 'MATERIAL.OVENDM',
    summary: 'Dry matter from an oven or microwave test of a sample. Stay with a microwave: dry fibre can catch fire.',
    finds: 'moisture test, microwave, weigh, sample, DM test, scales',
    parameters: [
      number('wet_g', 'g', 'container and wet sample', { above: 0 }),
      number('dry_g', 'g', 'container and dried sample', { above: 0 }),
      optional(number('container_g', 'g', 'the empty container'), defaultOf('container_g')),
    ],
    compute: ovenDryMatter,
    result: 'dm',
    working: {
      wet_sample_g: { says: 'Wet sample', unit: 'g', how: 'wet_g - container_g' },
      dry_sample_g: { says: 'Dried sample', unit: 'g', how: 'dry_g - container_g' },
      dm: { says: 'Dry matter', unit: 'fraction', how: 'dry_sample_g / wet_sample_g' },
    },
    sources: ['iso-18134'],
    examples: [{ call: [350, 155, 50], gives: 0.35, within: 1e-9, source: 'by hand: 105 g left of 300 g' }],
  }),

  defineSpill({
    name: 'MATERIAL.TABLE',
    summary: 'Every bedding material with its default figures, their sources and how far each is to be trusted.',
    finds: 'list, compare materials, reference, kg per cow',
    parameters: [],
    compute: materialTable,
    columns: ['material', 'density', 'dry matter', 'kg per cow per day', 'source', 'status'],
    working: {},
    sources: [
      'ahn-2016',
      'ahn-2020',
      'nrcs-651-4',
      'ferraz-2020',
      'university-laboratory',
      'bernard-2002',
      'bernard-2003',
      'uk-beds-2013',
      'uk-straw-survey',
    ],
    examples: [
      { call: [], at: ['sawdust', 'density'], gives: 178, source: 'Ahn et al. 2016, abstract: sawdust 178 kg/m³' },
      { call: [], at: ['digested fibre', 'density'], gives: '#N/A', source: 'no figure was found' },
    ],
  }),
];
