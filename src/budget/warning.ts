import type { Unit } from '../core/units.ts';
import { spell } from '../domain/spell.ts';
import type { Plan } from './plan.ts';

/** How a warning is written down, once; warnings.ts lists them all. */

/** When a figure is warned of: the test, and the same in words. */
interface Threshold {
  readonly words: string;
  readonly isPassed: (value: number, plan: Plan) => boolean;
}

type Limit = number | readonly [words: string, limit: (plan: Plan) => number];

const wordsOf = (limit: Limit): string => (typeof limit === 'number' ? spell(limit) : limit[0]);
const limitOf = (limit: Limit, plan: Plan): number => (typeof limit === 'number' ? limit : limit[1](plan));

export const below = (limit: Limit): Threshold => ({
  words: `below ${wordsOf(limit)}`,
  isPassed: (value, plan) => value < limitOf(limit, plan),
});
export const above = (limit: Limit): Threshold => ({
  words: `above ${wordsOf(limit)}`,
  isPassed: (value, plan) => value > limitOf(limit, plan),
});
export const orLess = (limit: number): Threshold => ({ words: `${spell(limit)} or less`, isPassed: (value) => value <= limit });
export const orMore = (limit: number): Threshold => ({ words: `${spell(limit)} or more`, isPassed: (value) => value >= limit });
export const outside = (lowest: number, highest: number): Threshold => ({
  words: `below ${spell(lowest)} or above ${spell(highest)}`,
  isPassed: (value) => value < lowest || value > highest,
});

interface Common {
  /** Plans in which it is looked for at all. */
  readonly only?: 'with a dryer';
  /** What it means and what to do. */
  readonly meaning: string | ((plan: Plan) => string);
}

/** Of a figure that passes a threshold, which is written once and gives test and words. */
interface OfFigure extends Common {
  /** The figure in words, where the warning's own name does not say it. */
  readonly of?: string;
  readonly value: (plan: Plan) => number;
  readonly when: Threshold;
}

/** Of anything else. */
interface OfPlan extends Common {
  /** When it fires, in words. */
  readonly trigger: string;
  /** What the row shows, or false where all is well. */
  readonly fires: (plan: Plan) => number | string | false;
}

export interface WarningEntry<Key extends string = string> extends OfPlan {
  readonly key: Key;
  readonly unit: Unit;
}

export function warning<const Key extends string>(key: Key, unit: Unit, entry: OfFigure | OfPlan): WarningEntry<Key> {
  if ('fires' in entry) return { key, unit, ...entry };
  const { of, value, when, ...rest } = entry;
  const fires = (plan: Plan) => {
    const figure = value(plan);
    return when.isPassed(figure, plan) && figure;
  };
  return { key, unit, ...rest, trigger: of ? `${of} ${when.words}` : when.words, fires };
}
