import { type DefaultName, defaultOf } from '../core/bibliography.ts';
import { type Bounds, choice, maybe, number, optional, type Parameter, yesNo } from '../core/parameters.ts';
import type { Unit } from '../core/units.ts';
import type { BudgetInputs } from '../domain/budget-inputs.ts';

export const groups = [
  'Herd and beds',
  'Bedding bought now',
  'Slurry and press',
  'Dryer, air and heat',
  'Kit and money',
  'Udder health',
  'Permission',
] as const;
export type Group = (typeof groups)[number];

/** When a plan cannot do without an item. */
export type Needed = 'always' | 'with a dryer' | 'one of two with a dryer' | 'with a loan';

/** One line of the budget's inputs: the same for BUDGET.INPUTS, the Inputs sheet and the survey. */
export interface BudgetItem {
  readonly name: string;
  readonly key: keyof BudgetInputs;
  readonly parameter: Parameter;
  readonly group: Group;
  readonly needed?: Needed;
  /** What is common on farms, where we hold a figure; a value outside it deserves a second look. */
  readonly usual?: readonly [lowest: number, highest: number];
  /** What to look at on the walk. */
  readonly look: string;
}

interface Extra {
  readonly usual?: readonly [number, number];
  readonly needed?: Needed;
  readonly default?: DefaultName;
  /** What happens where it is left empty and nothing is assumed. */
  readonly empty?: string;
}

function withDefault(parameter: Parameter, extra: Extra): Parameter {
  if (extra.default) return optional(parameter, defaultOf(extra.default));
  return extra.empty === undefined ? parameter : maybe(parameter, extra.empty);
}

function item(group: Group, key: keyof BudgetInputs, parameter: Parameter, look: string, extra: Extra): BudgetItem {
  const { needed, usual } = extra;
  return {
    name: parameter.name,
    key,
    group,
    look,
    parameter: withDefault(parameter, extra),
    ...(needed && { needed }),
    ...(usual && { usual }),
  };
}

/** A group's own builder, so that each line below reads: name, key, unit, bounds, what to look at. */
export const inGroup = (group: Group) => ({
  number: (name: string, key: keyof BudgetInputs, unit: Unit, bounds: Bounds, look: string, extra: Extra = { needed: 'always' }) =>
    item(group, key, number(name, unit, look, bounds), look, extra),
  date: (name: string, key: keyof BudgetInputs, look: string, extra: Extra) =>
    item(group, key, { ...number(name, 'date', look), accepts: 'a date that the sheet knows as one, not as text' }, look, extra),
  choice: (name: string, key: keyof BudgetInputs, choices: readonly [string, ...string[]], look: string, extra: Extra) =>
    item(group, key, choice(name, look, choices), look, extra),
  yesNo: (name: string, key: keyof BudgetInputs, look: string, extra: Extra) => item(group, key, yesNo(name, look), look, extra),
});

export const range = (min: number, max: number): Bounds => ({ min, max });
