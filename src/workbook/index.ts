import type { Workbook } from './model.ts';
import { answerSheet } from './sheets/answer.ts';
import { figuresSheet } from './sheets/figures.ts';
import { inputsSheet } from './sheets/inputs.ts';

export { inputsPlace } from './sheets/inputs.ts';

export interface WorkbookOptions {
  /** The same workbook with nothing filled in. */
  readonly blank?: boolean;
}

/** The budget as a workbook: what a farm fills in, and what follows from it. The first sheet is the one that is read first. */
export const budgetWorkbook = ({ blank = false }: WorkbookOptions = {}): Workbook => ({
  sheets: [answerSheet(), inputsSheet(blank), figuresSheet()],
});
