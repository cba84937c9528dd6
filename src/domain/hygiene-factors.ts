import factors from '../data/hygiene-factors.json';
import { interpolate } from './interpolate.ts';
import type { Material } from './materials.ts';

/**
 * The seven factors of the hygiene score. Each has a weight and a level f, from 0 (best) to 1 (worst). Weights and levels
 * are this project's judgement, in data/hygiene-factors.json beside the studies for and against; they are not fitted to data.
 */
export type Factor = keyof typeof factors;

export type Bed = keyof typeof factors.bed.levels;

/** How the cubicle is made under its bedding. */
export const beds = Object.keys(factors.bed.levels) as [Bed, ...Bed[]];

/** f of dry matter: straight lines through the points held, flat outside them. */
export const dryMatterLevel = (dm: number): number => interpolate(factors.dm.points, dm);

/** How fast germs fill the bedding, per day: the drier, the slower. */
export const growthRate = (dm: number): number => interpolate(factors.interval_days.growth_per_day, dm);

/**
 * f of the days between beddings: the mean of a level that rises as 1 - exp(-growth_per_day * t) over the interval.
 *
 * f = 1 - (1 - exp(-growth_per_day * interval_days)) / (growth_per_day * interval_days)
 *
 * Judgement: a level that saturates, as counts in sand and sawdust did (Kristula; Hogan 1999).
 */
const intervalLevel = (growth_per_day: number, interval_days: number): number =>
  1 + Math.expm1(-growth_per_day * interval_days) / (growth_per_day * interval_days);

/** f of the material; undefined where it was not given, as for those below. */
export const materialLevel = (material?: Material): number | undefined => material && factors.material.levels[material];

/** f of the air in the shed. */
export const shedLevel = (shed_c?: number): number | undefined =>
  shed_c === undefined ? undefined : interpolate(factors.shed_c.points, shed_c);

/** f of the share of cows whose udders score 3 or 4. */
export const udderLevel = (dirty_udders?: number): number | undefined =>
  dirty_udders === undefined ? undefined : interpolate(factors.dirty_udders.points, dirty_udders);

/** f of a deep bed or a mattress. */
export const bedLevel = (bed?: Bed): number | undefined => bed && factors.bed.levels[bed];

/** f of cows per cubicle. */
export const stockingLevel = (stocking?: number): number | undefined =>
  stocking === undefined ? undefined : interpolate(factors.stocking.points, stocking);

/** f of each factor; undefined where the factor was not given. */
export type Levels = Readonly<Record<Factor, number | undefined>>;

/** What a score is made from, in the order in which every function of the family takes it. The last five may be missing. */
export type ScoreArguments = [
  dm: number,
  interval_days: number,
  material?: Material | undefined,
  shed_c?: number | undefined,
  dirty_udders?: number | undefined,
  bed?: Bed | undefined,
  stocking?: number | undefined,
];

export const levelsOf = (...[dm, interval_days, material, shed_c, dirty_udders, bed, stocking]: ScoreArguments): Levels => ({
  dm: dryMatterLevel(dm),
  interval_days: intervalLevel(growthRate(dm), interval_days),
  material: materialLevel(material),
  shed_c: shedLevel(shed_c),
  dirty_udders: udderLevel(dirty_udders),
  bed: bedLevel(bed),
  stocking: stockingLevel(stocking),
});

/** A factor's weight, or 0 where it was not given. */
export const weightIfGiven = (weight: number, f: number | undefined): number => (f === undefined ? 0 : weight);

/** A factor's weight times its level, or 0 where it was not given. */
export const weightedIfGiven = (weight: number, f: number | undefined): number => (f === undefined ? 0 : weight * f);

/** A study's finding for or against a factor, with where it comes from and how far it was checked. */
interface Evidence {
  readonly stands: string;
  readonly says: string;
  readonly source: string;
  readonly status: string;
}

/** What is held of a factor besides its shape. */
export interface FactorFacts {
  readonly weight: number;
  /** The lowest and highest f that the factor can have. */
  readonly best: number;
  readonly worst: number;
  readonly evidence: readonly Evidence[];
  /** How strong the evidence is, in words. */
  readonly strength: string;
}

function factsOf(factor: Factor): FactorFacts {
  const held = factors[factor];
  const reach = 'levels' in held ? Object.values(held.levels) : 'points' in held ? held.points.map(([, f]) => f as number) : [0, 1];
  return {
    weight: held.weight,
    best: Math.min(...reach),
    worst: Math.max(...reach),
    evidence: held.evidence,
    strength: held.strength,
  };
}

/** Every factor in the order of the functions' arguments. */
export const factorFacts: readonly (readonly [Factor, FactorFacts])[] = (Object.keys(factors) as Factor[]).map((factor) => [
  factor,
  factsOf(factor),
]);
