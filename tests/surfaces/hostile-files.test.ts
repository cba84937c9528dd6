import { Model, type SheetData, type WorkbookData } from '@odoo/o-spreadsheet';
import { describe, expect, it } from 'vitest';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { readWorkbook, Unreadable, whyUnreadable } from '../../src/surfaces/sheet/readable.ts';
import { toGrid } from '../../src/surfaces/sheet/to-grid.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { type HostileFile, hostileFiles, savedCopy } from '../browser/hostile-files.ts';
import '../workbook/evaluate.ts';

/** Works out every sheet, cell and chart, as looking through the workbook would. */
function lookThrough({ getters, dispatch }: Pick<Model, 'getters' | 'dispatch'>): void {
  for (const sheetIdTo of getters.getSheetIds()) {
    dispatch('ACTIVATE_SHEET', { sheetIdFrom: getters.getActiveSheetId(), sheetIdTo });
    getters.getEvaluatedCells(sheetIdTo);
    for (const { id } of getters.getFigures(sheetIdTo)) getters.getChartRuntime(getters.getChartIdFromFigureId(id) ?? '');
  }
}

/** What the page says of the file; nothing where it opens it. */
function open({ content }: HostileFile): string {
  try {
    const model = new Model(readWorkbook(typeof content === 'string' ? content : new TextDecoder().decode(content)));
    lookThrough(model);
    return '';
  } catch (fault) {
    return whyUnreadable(fault);
  }
}

describe('200 hostile files', () => {
  const files = hostileFiles();

  it('are as many, and each is another', () => {
    expect(new Set(files.map(({ name }) => name)).size).toBe(200);
  });

  it.each(files.map((file) => [file.name, file] as const))('opens or is refused in words: %s', (_, file) => {
    expect(open(file)).toMatch(/^$|^the file .{20,}/);
  });

  it('leave every object of the page as it was', () => {
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect('polluted' in {} || 'ran' in globalThis).toBe(false);
    expect(new Model(readWorkbook(JSON.stringify(savedCopy()))).getters.getSheetIds()).toHaveLength(2);
  });
});

describe('what people save themselves', () => {
  it('opens: the budget as it is written, and sheets with what the grid’s menus add', () => {
    expect(() => readWorkbook(JSON.stringify(toGrid(budgetWorkbook(), locales[0])))).not.toThrow();
    const model = new Model(readWorkbook(JSON.stringify(savedCopy())));
    const sheetId = model.getters.getActiveSheetId();
    const done = [
      model.dispatch('CREATE_SHEET', { sheetId: 'added', name: 'Added', position: 1 }),
      model.dispatch('GROUP_HEADERS', { sheetId, dimension: 'ROW', start: 4, end: 6 }),
      model.dispatch('FREEZE_ROWS', { sheetId, quantity: 4 }),
      model.dispatch('HIDE_COLUMNS_ROWS', { sheetId: 'added', dimension: 'COL', elements: [2] }),
      model.dispatch('UPDATE_CELL', { sheetId: 'added', col: 0, row: 0, content: '<b>mine</b>', style: { bold: true, fontSize: 12 } }),
    ];
    expect(done.every(({ isSuccessful }) => isSuccessful)).toBe(true);
    expect(() => readWorkbook(JSON.stringify(model.exportData()))).not.toThrow();
  });

  it('of a later version is told apart from a damaged one', () => {
    expect(() => readWorkbook('{"version":"99.1"}')).toThrow(Unreadable);
    expect(() => readWorkbook('{"version":"99.1"}')).toThrow('saved by a later version of this page');
  });

  it('with a formula longer than any spreadsheet program takes, is refused for that', () => {
    const formula = (letters: number): string => {
      const copy = savedCopy() as unknown as WorkbookData;
      (copy.sheets[0] as SheetData).cells['A1'] = `=LEN("${'x'.repeat(letters - 8)}")`;
      return JSON.stringify(copy);
    };
    expect(() => readWorkbook(formula(8192))).not.toThrow();
    expect(() => readWorkbook(formula(8193))).toThrow('the file holds a formula of more than 8,192 characters');
  });
});
