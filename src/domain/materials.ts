import figures from '../data/materials.json';
import { mustGetDrier } from './mass-balance.ts';
import { NoAnswer, Refusal } from './refusal.ts';
import { sourceName, withSourceNames } from './source-name.ts';
import { said } from './spell.ts';

export type Material = keyof typeof figures;

/** The bedding materials known everywhere. */
export const materials = Object.keys(figures) as [Material, ...Material[]];

/** What the fibre may be when it is spread. */
export const fibreKinds = ['fresh fibre', 'dried fibre', 'digested fibre', 'composted fibre'] as const satisfies readonly Material[];
export type FibreKind = (typeof fibreKinds)[number];

/** A reference figure as the data hold it. `also`: other published figures that disagree with it. */
interface Stored {
  readonly value: number;
  readonly source: string;
  readonly status: string;
  readonly also?: string;
}

/** A reference figure with where it comes from in words: `Ahn and others 2016 (also 208 in Ahn and others 2020, seen)`. */
interface Held extends Stored {
  readonly found_in: string;
}

interface NotHeld {
  readonly missing: string;
}

/** A reference figure, or why there is none. */
type Figure = Held | NotHeld;

interface Figures {
  readonly density_kg_m3: Figure;
  readonly dm: Figure;
  readonly kg_cow_day: Figure;
}

/** Put into words once, not for every cell that asks. */
function inWords(figure: Stored | NotHeld): Figure {
  if ('missing' in figure) return figure;
  const name = sourceName(figure.source);
  return { ...figure, found_in: figure.also ? `${name} (also ${withSourceNames(figure.also)})` : name };
}

const figuresOf = Object.fromEntries(
  Object.entries(figures).map(([material, { density_kg_m3, dm, kg_cow_day }]) => [
    material,
    { density_kg_m3: inWords(density_kg_m3), dm: inWords(dm), kg_cow_day: inWords(kg_cow_day) },
  ]),
) as Readonly<Record<Material, Figures>>;

function held(figure: Figure): Held {
  if ('missing' in figure) throw new NoAnswer(figure.missing);
  return figure;
}

/** Default bulk density of a material, kg/m³, loose as delivered. */
export const densityOf = (material: Material): number => held(figuresOf[material].density_kg_m3).value;

/** Default dry matter of a material, as a fraction of fresh mass. */
export const dryMatterOf = (material: Material): number => held(figuresOf[material].dm).value;

/** Default bulk density of a bedding material, kg/m³, from data/materials.json. A weighed bucket of your own is better. */
export function materialDensity(material: Material) {
  const figure = held(figuresOf[material].density_kg_m3);
  return { found_in: figure.found_in, trust: figure.status, density_kg_m3: figure.value };
}

/** Default dry matter of a bedding material, as a fraction, from data/materials.json. A tested sample of your own is better. */
export function materialDryMatter(material: Material) {
  const figure = held(figuresOf[material].dm);
  return { found_in: figure.found_in, trust: figure.status, dm: figure.value };
}

/**
 * Bulk density of fibre after drying.
 *
 * dried_density_kg_m3 = density_kg_m3 * (dm_in / dm_out) / (1 - shrinkage)
 *
 * Mass balance on one cubic metre of wet fibre. No published curve of dried fibre's density was found: this is a bound
 * that holds as long as the heap shrinks by the stated share, and no more. A weighed bucket is better.
 *
 * @param density_kg_m3 bulk density before drying, kg/m³
 * @param dm_in dry matter before drying, fraction
 * @param dm_out dry matter after drying, fraction, above dm_in
 * @param shrinkage share of its volume that the fibre loses, fraction
 */
export function driedDensity(density_kg_m3: number, dm_in: number, dm_out: number, shrinkage: number) {
  mustGetDrier(dm_in, dm_out);
  const mass_kept = dm_in / dm_out;
  const volume_kept = 1 - shrinkage;
  const dried_density_kg_m3 = (density_kg_m3 * mass_kept) / volume_kept;
  return { mass_kept, volume_kept, dried_density_kg_m3 };
}

/**
 * Dry matter from a sample dried in an oven or microwave, weighed with its container both times.
 *
 * dm = (dry_g - container_g) / (wet_g - container_g)
 *
 * ISO 18134 (oven, 105 °C). By microwave: until two weighings differ by less than 1 g. Volatile matter counts as water.
 *
 * @param wet_g container and wet sample, g
 * @param dry_g container and dried sample, g
 * @param container_g the empty container, g; 0 where it was tared
 */
export function ovenDryMatter(wet_g: number, dry_g: number, container_g: number) {
  if (container_g >= dry_g)
    throw new Refusal(
      'container_g',
      said`${container_g} is not below dry_g ${dry_g}`,
      'enter the empty container, and both weighings with it',
    );
  if (dry_g > wet_g)
    throw new Refusal('dry_g', said`${dry_g} is above wet_g ${wet_g}`, 'a sample cannot gain weight by drying; check both weighings');
  const wet_sample_g = wet_g - container_g;
  const dry_sample_g = dry_g - container_g;
  return { wet_sample_g, dry_sample_g, dm: dry_sample_g / wet_sample_g };
}

const shown = (figure: Figure) => ('missing' in figure ? new NoAnswer(figure.missing) : figure.value);

/** What is said of each figure of a row, e.g. `density seen; dry matter memory; use seen`. */
function eachOf({ density_kg_m3, dm, kg_cow_day }: Figures, words: (figure: Held) => string): string {
  const named = { density: density_kg_m3, 'dry matter': dm, use: kg_cow_day };
  const parts = Object.entries(named).map(([name, figure]) => ('missing' in figure ? '' : `${name} ${words(figure)}`));
  return parts.filter(Boolean).join('; ') || 'no figures held';
}

/** Every material with its default figures and how far each can be trusted; other published figures beside their source. */
export function materialTable() {
  const rows = materials.map((material) => {
    const row = figuresOf[material];
    const source = eachOf(row, ({ found_in }) => found_in);
    const status = eachOf(row, (figure) => figure.status);
    return [material, shown(row.density_kg_m3), shown(row.dm), shown(row.kg_cow_day), source, status];
  });
  return { rows };
}
