import type { BudgetItem } from './budget-item.ts';
import { dryerItems } from './budget-items-dryer.ts';
import { farmItems } from './budget-items-farm.ts';
import { moneyItems } from './budget-items-money.ts';

export { type BudgetItem, type Group, groups, type Needed } from './budget-item.ts';

/** Every item. Names are permanent: users' sheets hold them. */
export const budgetItems: readonly BudgetItem[] = [...farmItems, ...dryerItems, ...moneyItems];
