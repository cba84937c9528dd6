import { spell } from '../domain/spell.ts';
import { answerOf } from './given.ts';
import { type BudgetItem, budgetItems, itemOf } from './items.ts';
import type { Plan } from './plan.ts';

/** What a plan rests on beside what was given: what stands in, and what it still lacks. */

/** Whether the item plays a part in this plan; where that cannot be told yet, a dryer's does and a loan's does not. */
export function playsPart({ only }: BudgetItem, plan: Plan): boolean {
  if (only === undefined) return true;
  const isSo = answerOf(() => (only === 'with a dryer' ? plan.needs.has_dryer : plan.inputs.borrowed > 0));
  return typeof isSo === 'boolean' ? isSo : only === 'with a dryer';
}

/** What stands in for an item that was not given; undefined where nothing does, or nothing can yet. */
export function takenFor({ key, parameter, follows, standIn }: BudgetItem, plan: Plan): string | number | undefined {
  if (parameter.fallback?.value === undefined && !follows && !standIn) return undefined;
  const value = answerOf(() => plan.inputs[key]);
  return typeof value === 'string' || typeof value === 'number' ? value : undefined;
}

/** Items that were not given and for which something else stands in. */
export const defaultsOf = (plan: Plan): readonly BudgetItem[] =>
  budgetItems.filter((item) => !plan.given.has(item.key) && playsPart(item, plan) && takenFor(item, plan) !== undefined);

/** Such an item with what stands in: `Shrinkage 0.1`. */
export function sayTaken(item: BudgetItem, plan: Plan): string {
  const value = takenFor(item, plan);
  return `${item.name} ${typeof value === 'number' ? spell(value) : value}`;
}

/** Items that are still needed for the whole answer; of two of which one will do, the first stands for both. */
export const missingOf = (plan: Plan): readonly BudgetItem[] =>
  budgetItems.filter((item) => {
    if (!item.needed || plan.given.has(item.key) || !playsPart(item, plan)) return false;
    const other = item.instead && itemOf(item.instead);
    return !other || (!plan.given.has(other.key) && item.place < other.place);
  });

/** Such an item by name, with the other that would do as well. */
export const sayMissing = ({ name, instead }: BudgetItem): string => (instead ? `${name} or ${itemOf(instead).name}` : name);
