import { Refusal } from './refusal.ts';
import { said } from './spell.ts';

/** Drying raises the dry matter; the other way round the two are swapped. */
export function mustGetDrier(dm_in: number, dm_out: number): void {
  if (dm_in < dm_out) return;
  throw new Refusal('dm_in', said`${dm_in} is not below dm_out ${dm_out}`, 'enter a dry matter below that of the dried fibre');
}

/**
 * Water to evaporate so that a mass of dried material is made, in the unit of that mass.
 *
 * water = dried * (dm_out / dm_in - 1)
 *
 * Dry matter is neither made nor lost: wet * dm_in = dried * dm_out. Good for any material.
 *
 * @param dried mass of dried material, fresh mass
 * @param dm_in dry matter before drying, fraction of fresh mass
 * @param dm_out dry matter after
 */
export function waterToEvaporate(dried: number, dm_in: number, dm_out: number) {
  mustGetDrier(dm_in, dm_out);
  const wet = (dried * dm_out) / dm_in;
  const water = dried * (dm_out / dm_in - 1);
  return { wet, water };
}

/**
 * Dried material that a mass of wet material gives, in the unit of that mass.
 *
 * dried = wet * dm_in / dm_out
 *
 * The same balance as in `waterToEvaporate`.
 */
export function driedYield(wet: number, dm_in: number, dm_out: number) {
  mustGetDrier(dm_in, dm_out);
  const dry_matter = wet * dm_in;
  const dried = dry_matter / dm_out;
  return { dry_matter, dried };
}

/**
 * Dry matter that wet material reaches when a known rate of water is taken from it.
 *
 * dm_out = min(1, wet_kg_h * dm_in / (wet_kg_h - evaporation_kg_h))
 *
 * The same balance as in `waterToEvaporate`. A balance only: the last water of a material is bound and does not leave it at the
 * rate of the first.
 *
 * @param wet_kg_h wet material fed, kg/h
 * @param evaporation_kg_h water taken from it, kg/h
 */
export function finalDryMatter(wet_kg_h: number, dm_in: number, evaporation_kg_h: number) {
  const water_kg_h = wet_kg_h * (1 - dm_in);
  // All the water there is, worked out another way, may differ in its last digits.
  if (evaporation_kg_h > water_kg_h + 1e-9 * wet_kg_h) {
    throw new Refusal(
      'evaporation_kg_h',
      said`${evaporation_kg_h} is more than the ${Number(water_kg_h.toPrecision(4))} kg of water an hour in the material`,
      'enter less evaporation, or more or wetter material',
    );
  }
  const dry_matter_kg_h = wet_kg_h * dm_in;
  const dried_kg_h = wet_kg_h - evaporation_kg_h;
  const dm_out = Math.min(1, dry_matter_kg_h / dried_kg_h);
  return { water_kg_h, dry_matter_kg_h, dried_kg_h, dm_out };
}
