import type { Model } from '@odoo/o-spreadsheet';
import { answerInShort } from '../../../workbook/index.ts';
import { herdName } from '../files.ts';

/** What tells one budget from another in a list: its herd, and what it last answered. */
export function summaryOf(model: Model): { readonly herd: string; readonly answer: string } {
  const { getters } = model;
  const sheetId = getters.getSheetIdByName(answerInShort.sheet);
  const said = (sheetId === undefined ? [] : answerInShort.rows)
    .map((row) => getters.getEvaluatedCell({ sheetId: sheetId as string, col: 0, row: row - 1 }))
    .filter(({ type }) => type === 'text')
    .map(({ formattedValue }) => formattedValue);
  const herd = herdName(model);
  return { herd: herd === '–' ? '' : herd.slice(0, 100), answer: said.join(' ').slice(0, 400) };
}
