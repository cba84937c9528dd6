import { Model } from '@odoo/o-spreadsheet';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { sendAsMade } from '../../src/surfaces/sheet/one-author.ts';
import { addRoom, sayWhatHasNoRoom } from '../../src/surfaces/sheet/room.ts';
import { most } from '../../src/surfaces/sheet/workbook-shape.ts';

beforeAll(() => {
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
  addRoom();
});

const size = { colNumber: 26, rowNumber: 200 };

function open(sheets: readonly object[] = [{ id: 'one', name: 'One', ...size }]): { model: Model; said: string[] } {
  const model = new Model({ sheets: [...sheets] });
  sendAsMade(model);
  const said: string[] = [];
  sayWhatHasNoRoom(model, (sentence) => said.push(sentence));
  return { model, said };
}

function paste(model: Model, text: string, left = 0, top = 0): boolean {
  const target = [{ left, right: left, top, bottom: top }];
  return model.dispatch('PASTE_FROM_OS_CLIPBOARD', { target, clipboardContent: { text } } as never).isSuccessful;
}

const filled = (model: Model): number => model.getters.getCells('one').length;
const block = (rows: number, columns: number): string => Array.from({ length: rows }, () => '1\t'.repeat(columns - 1) + 1).join('\n');

describe('what would make a workbook larger than this page opens is refused in words before it is done', () => {
  it('forty thousand rows of eight numbers', () => {
    const { model, said } = open();
    expect(paste(model, block(40_000, 8))).toBe(false);
    expect(filled(model)).toBe(0);
    expect(said).toEqual(['A sheet takes at most 300,000 filled cells: this was not done.']);
  });

  it('what has no place beside what is there, and a cell copied over a block', () => {
    const whole = most.cells;
    // A full sheet takes the grid half a minute to open.
    most.cells = 1000;
    const { model, said } = open();
    expect(paste(model, block(100, 9))).toBe(true);
    expect(paste(model, block(51, 2), 10)).toBe(false);
    model.selection.selectCell(0, 0);
    model.dispatch('COPY');
    expect(model.dispatch('PASTE', { target: [{ left: 12, right: 13, top: 0, bottom: 50 }] }).isSuccessful).toBe(false);
    expect(paste(model, block(50, 2), 10)).toBe(true);
    expect(model.dispatch('UPDATE_CELL', { sheetId: 'one', col: 20, row: 0, content: '1' }).isSuccessful).toBe(false);
    expect(filled(model)).toBe(1000);
    expect(said).toEqual(said.map(() => 'A sheet takes at most 300,000 filled cells: this was not done.'));
    expect(said).toHaveLength(3);
    most.cells = whole;
  });

  it('what reaches past the last row or column that opens', () => {
    const { model, said } = open();
    expect(paste(model, block(100_001, 1))).toBe(false);
    expect(paste(model, block(1, 703))).toBe(false);
    const add = (dimension: 'ROW' | 'COL', quantity: number) =>
      model.dispatch('ADD_COLUMNS_ROWS', { sheetId: 'one', sheetName: 'One', dimension, base: 0, quantity, position: 'before' })
        .isSuccessful;
    expect([add('ROW', most.rows - size.rowNumber + 1), add('COL', most.columns - size.colNumber + 1)]).toEqual([false, false]);
    expect(said.map((sentence) => sentence.split(':')[0])).toEqual([
      'A sheet takes at most 100,000 rows',
      'A sheet takes at most 702 columns',
      'A sheet takes at most 100,000 rows',
      'A sheet takes at most 702 columns',
    ]);
  });

  it('the 201st sheet, a name of a page’s length, a cell of a million letters and one', () => {
    const { model, said } = open(Array.from({ length: 200 }, (_, k) => ({ id: `s${k}`, name: `s${k}`, ...size })));
    expect(model.dispatch('CREATE_SHEET', { sheetId: 'more', name: 'More', position: 0 }).isSuccessful).toBe(false);
    expect(model.dispatch('RENAME_SHEET', { sheetId: 's0', oldName: 's0', newName: 'n'.repeat(1001) }).isSuccessful).toBe(false);
    const content = 'x'.repeat(most.lettersInCell + 1);
    expect(model.dispatch('UPDATE_CELL', { sheetId: 's0', col: 0, row: 0, content }).isSuccessful).toBe(false);
    expect(said).toHaveLength(3);
  });

  it('and nothing else is', () => {
    const { model, said } = open();
    expect(paste(model, block(150, 8))).toBe(true);
    model.selection.selectCell(0, 0);
    model.dispatch('COPY');
    expect(model.dispatch('PASTE', { target: [{ left: 10, right: 10, top: 0, bottom: 150 }] }).isSuccessful).toBe(true);
    expect(said).toEqual([]);
  });
});
