import { budgetWorkbook } from '../../src/workbook/index.ts';

const [answer] = budgetWorkbook().sheets;

/** Where a figure stands on Answer, found by its label: `Answer!B24`. */
export function onAnswer(label: string): string {
  const found = Object.entries(answer?.cells ?? {}).find(([, { content }]) => content === label)?.[0];
  if (!found) throw new Error(`Answer has no ${label}`);
  return `Answer!${found.replace(/^[A-Z]/, (column) => String.fromCharCode(column.charCodeAt(0) + 1))}`;
}
