import { Model } from '@odoo/o-spreadsheet';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { sendAsMade } from '../../src/surfaces/sheet/one-author.ts';

const sheetId = 'one';

function paste(text: string): Model {
  const model = new Model({ sheets: [{ id: sheetId, colNumber: 20, rowNumber: 13_100 }] });
  sendAsMade(model);
  const target = [{ left: 0, right: 0, top: 0, bottom: 0 }];
  model.dispatch('PASTE_FROM_OS_CLIPBOARD', { clipboardContent: { text }, target });
  return model;
}

const valueAt = (model: Model, col: number, row: number): unknown => model.getters.getEvaluatedCell({ sheetId, col, row }).value;
const lines = (count: number, line: (row: number) => string): string => Array.from({ length: count }, (_, row) => line(row + 1)).join('\n');

beforeAll(() => void vi.spyOn(console, 'debug').mockImplementation(() => undefined));

describe('what is pasted from elsewhere', () => {
  it.each([
    ['two cells', lines(2, (row) => `text ${row}`), [0, 1], 'text 2'],
    ['running totals in four lines', lines(4, (row) => `=SUM(B$1:B${row})`), [0, 3], 0],
    [
      '13,000 lines of ten texts',
      lines(13_000, (row) => Array.from({ length: 10 }, (_, k) => `text ${k} of ${row}`).join('\t')),
      [9, 12_999],
      'text 9 of 13000',
    ],
  ])(
    'is there, what is typed after it too, and both are taken back and done again: %s',
    { timeout: 600_000 },
    (_, text, [col, row], value) => {
      const model = paste(text);
      expect(valueAt(model, col as number, row as number)).toBe(value);
      model.dispatch('UPDATE_CELL', { sheetId, col: 15, row: 0, content: '7' });
      expect(valueAt(model, 15, 0)).toBe(7);
      for (let k = 0; k < 2; k++) model.dispatch('REQUEST_UNDO');
      expect([valueAt(model, col as number, row as number), valueAt(model, 15, 0)]).toEqual([null, null]);
      for (let k = 0; k < 2; k++) model.dispatch('REQUEST_REDO');
      expect([valueAt(model, col as number, row as number), valueAt(model, 15, 0)]).toEqual([value, 7]);
    },
  );
});
