import { NoAnswer, Refusal } from '../domain/refusal.ts';
import { saidOf } from './given.ts';
import type { Plan } from './plan.ts';
import type { WarningEntry } from './warning.ts';
import { bedsWarnings } from './warnings-beds.ts';
import { kitWarnings } from './warnings-kit.ts';
import { moneyWarnings } from './warnings-money.ts';

/** Something the user should know before relying on the plan. */
export interface Warning {
  readonly key: string;
  /** The figure that fires it, and its unit. */
  readonly value: number | string;
  readonly unit: string;
  /** What it means and what to do. */
  readonly meaning: string;
}

const entries = [...kitWarnings, ...moneyWarnings, ...bedsWarnings] as const;

export type WarningKey = (typeof entries)[number]['key'];

/** Every warning, in the order in which they are told. */
export const warnings: readonly WarningEntry<WarningKey>[] = entries;

/** How a warning's row is led. */
export const warningMark = 'Warning: ';

/** When the warning of that row fires: `cover of demand below 1`. */
export const warningTriggers: ReadonlyMap<string, string> = new Map(warnings.map(({ key, trigger }) => [`${warningMark}${key}`, trigger]));

/** What fires it, or false: what rests on a missing or refused input stays quiet, as its own row says so already. */
function firing({ only, fires }: WarningEntry, plan: Plan): number | string | false {
  try {
    return (only === undefined || plan.needs.has_dryer) && fires(plan);
  } catch (thrown) {
    if (thrown instanceof NoAnswer || thrown instanceof Refusal) return false;
    throw thrown;
  }
}

/** All that fires for this plan, in a fixed order. */
export const warningsOf = (plan: Plan): readonly Warning[] =>
  warnings.flatMap((entry) => {
    const value = firing(entry, plan);
    if (value === false) return [];
    const { key, unit, meaning } = entry;
    return [{ key: `${warningMark}${key}`, value, unit, meaning: saidOf(meaning, plan) }];
  });

/** How many fire, without a word of what they mean. */
export const warningCount = (plan: Plan): number =>
  warnings.reduce((count, entry) => (firing(entry, plan) === false ? count : count + 1), 0);
