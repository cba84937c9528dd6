import type { BudgetResult } from './budget-result.ts';
import { kitResults, needsResults } from './budget-results-kit.ts';
import { moneyResults } from './budget-results-money.ts';
import { claimsResults, udderResults } from './budget-results-udder.ts';

/** Every result, in the order of the answer's rows. Keys and their order are fixed: workbooks look them up. */
export const budgetResults: readonly BudgetResult[] = [...needsResults, ...kitResults, ...moneyResults, ...udderResults, ...claimsResults];
