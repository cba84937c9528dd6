import { NoAnswer, type Refusal } from '../domain/refusal.ts';
import { spell } from '../domain/spell.ts';
import { answerOf, Missing } from './given.ts';
import { type BudgetItem, budgetItems, itemOf } from './items.ts';
import type { Plan } from './plan.ts';

/** What a plan rests on beside what was given: what stands in, and what it still lacks. */

/** Whether the item plays a part in this plan; where that cannot be told yet, a dryer's does and a loan's does not. */
export function playsPart(item: BudgetItem, plan: Plan): boolean {
  const { only } = item;
  if (plan.given.isOut(item)) return false;
  if (only === undefined) return true;
  const isSo = answerOf(() => (only === 'with a dryer' ? plan.needs.has_dryer : plan.inputs.borrowed > 0));
  return typeof isSo === 'boolean' ? isSo : only === 'with a dryer' && plan.given.get('dryer') !== 'no';
}

/** Whether another item was given that will do in its place. */
const isReplaced = ({ instead }: BudgetItem, plan: Plan): boolean => instead !== undefined && plan.given.has(instead);

/** What stands in for an item that was not given; undefined where nothing does, or nothing can yet. */
export function takenFor(item: BudgetItem, plan: Plan): string | number | undefined {
  const { key, parameter, follows, standIn } = item;
  if ((parameter.fallback?.value === undefined && !follows && !standIn) || isReplaced(item, plan)) return undefined;
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

/** Whether the plan cannot do without the item: it is needed, or nothing is held that could stand in for it. */
function isLacking(item: BudgetItem, plan: Plan): boolean {
  if (item.needed) return !item.instead || item.place < itemOf(item.instead).place;
  const taken = item.standIn && answerOf(() => plan.inputs[item.key]);
  return taken instanceof NoAnswer && !(taken instanceof Missing);
}

/** Items that are still needed for the whole answer; of two of which one will do, the first stands for both. */
export const missingOf = (plan: Plan): readonly BudgetItem[] =>
  budgetItems.filter((item) => !plan.given.has(item.key) && playsPart(item, plan) && !isReplaced(item, plan) && isLacking(item, plan));

/** Such an item by name, with the other that would do as well. */
export const sayMissing = ({ name, instead }: BudgetItem): string => (instead ? `${name} or ${itemOf(instead).name}` : name);

const opposed = budgetItems.filter(({ against }) => against !== undefined);

/** Why values cannot be used that another rules out, though each could be by itself. */
export const clashesOf = (plan: Plan): readonly Refusal[] =>
  opposed.flatMap((item) => (playsPart(item, plan) ? (plan.given.clash(item) ?? []) : []));

/** Why values that were given cannot be used: each by itself, then those that another rules out. */
export const refusalsOf = (plan: Plan): readonly Refusal[] => [...plan.given.refused, ...clashesOf(plan)];
