import type { Budget } from './budget.ts';
import type { Answer } from './refusal.ts';

/** One row of the budget's answer. */
export interface BudgetResult {
  readonly key: string;
  readonly unit: string;
  /** How it comes about, in the names of items and results in brackets; a test works it out and compares. Empty where it is told in words. */
  readonly how: string;
  readonly meaning: string | ((budget: Budget) => string);
  readonly value: (budget: Budget) => Answer;
}

/** The functions of ours that an equation calls, each once: `PLANT.ELECTRICITY`. */
export const functionsIn = (how: string): readonly string[] => [...new Set(how.match(/[A-Z]+\.[A-Z]+(?=\()/g) ?? [])];

export const row = (key: string, unit: string, value: BudgetResult['value'], meaning: BudgetResult['meaning'], how = ''): BudgetResult => ({
  key,
  unit,
  value,
  meaning,
  how,
});
