import type { Workbook } from '../workbook/model.ts';
import { crossChecksSheet } from './cross-checks.ts';
import { nativeInputs, type Typed } from './inputs.ts';
import { PlanCells } from './plan.ts';
import { figuresSheet, solvingSheet, workingSheet, yearsSheet } from './sheets.ts';

export type { Typed } from './inputs.ts';
export { type Handed, layOut } from './laid-out.ts';
export { readMeName, readMeSheet } from './read-me.ts';

/** The plan of a herd in formulas that any spreadsheet program recalculates, without a function of ours. */
export function nativeWorkbook(typed: Typed): Workbook {
  const plan = new PlanCells();
  const inputs = nativeInputs(typed, plan.calls);
  const { steps, solving, years } = plan.calls;
  const checks = crossChecksSheet(plan.calls).sheet();
  return { sheets: [inputs, figuresSheet(plan), workingSheet(steps), yearsSheet(years), solvingSheet(solving), checks] };
}
