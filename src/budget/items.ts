import type { Parameter } from '../core/parameters.ts';
import { nameWithUnit } from '../core/words.ts';
import type { ItemEntry } from './item.ts';
import { dryerItems } from './items-dryer.ts';
import { farmItems } from './items-farm.ts';
import { moneyItems } from './items-money.ts';

const entries = { ...farmItems, ...dryerItems, ...moneyItems };

/** An item by the name that the equations use. Spelled once, as the entry's own; a key without an entry does not compile. */
export type ItemKey = keyof typeof entries;

/** What a budget may be told: the kind of every value follows from its entry. */
export type Inputs = { readonly [Key in ItemKey]: (typeof entries)[Key]['parameter'] extends Parameter<infer Value> ? Value : never };

/** One line of the budget's inputs: the same for BUDGET.INPUTS, the Inputs sheet and the survey. */
export interface BudgetItem extends ItemEntry<unknown, ItemKey> {
  readonly key: ItemKey;
  /** Where its value stands among those of a plan. */
  readonly place: number;
}

/** Here it is that an entry naming an item that there is not does not compile. */
const known: Readonly<Record<ItemKey, ItemEntry<unknown, ItemKey>>> = entries;

/** Every item. Names are permanent: users' sheets hold them. */
export const budgetItems: readonly BudgetItem[] = (Object.keys(known) as ItemKey[]).map((key, place) => ({ ...known[key], key, place }));

const byKey = Object.fromEntries(budgetItems.map((item) => [item.key, item])) as Record<ItemKey, BudgetItem>;
const byName = new Map(budgetItems.map((item) => [item.name.toLowerCase(), item]));

export const itemOf = (key: ItemKey): BudgetItem => byKey[key];

/** The item of that name, whatever the case and outer spaces. */
export const itemNamed = (name: unknown): BudgetItem | undefined =>
  typeof name === 'string' ? byName.get(name.trim().toLowerCase()) : undefined;

/** The item that an equation calls by this name, as in a refusal of the domain's. */
export const itemCalled = (name: string): BudgetItem | undefined => budgetItems.find(({ key }) => key === name) ?? itemNamed(name);

/** `Grant (money)`: an item as a refusal leads with it. */
export const nameOfItem = ({ parameter }: BudgetItem): string => nameWithUnit(parameter);

/** Whether it is asked for before all others. The loan's own items stay beside the loan: nothing is missing without one. */
export const askedFirst = ({ needed, asked, only }: BudgetItem): boolean => (needed === true && only !== 'with a loan') || asked === true;

/** When a needed item is: `with a dryer`, `one of two with a dryer`, `unless Dryer is no`; empty where no plan can do without. */
export const whenNeeded = ({ instead, only, unless }: BudgetItem): string =>
  `${instead ? 'one of two ' : ''}${only ?? (unless ? `unless ${itemOf(unless.item).name} is ${unless.is}` : '')}`;
