import { Model, type WorkbookData } from '@odoo/o-spreadsheet';
import fc from 'fast-check';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { mendReferences } from '../../src/surfaces/sheet/cell-references.ts';
import { forgetOldChanges } from '../../src/surfaces/sheet/history.ts';
import { readCopy, tool } from '../../src/surfaces/sheet/keeping/copy.ts';
import { following, type Revision, restsOn, Telling } from '../../src/surfaces/sheet/keeping/revisions.ts';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { sendAsMade } from '../../src/surfaces/sheet/one-author.ts';
import { toGrid } from '../../src/surfaces/sheet/to-grid.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';

type Step = (model: Model) => unknown;

const small = fc.nat({ max: 5 });
const content = fc.constantFrom('1', '2.5', 'words', '', '=A1+B2', '=SUM(A$1:A3)', "'=not a formula", '35%', '=BEDDING.DEMAND.HERD(C1,2)');
const sheetOf = (model: Model): string => model.getters.getActiveSheetId();
const header = fc.constantFrom<'ROW' | 'COL'>('ROW', 'COL');

/** What people do to a sheet, as the grid's own commands. */
const step: fc.Arbitrary<Step> = fc.oneof(
  {
    weight: 6,
    arbitrary: fc.tuple(small, small, content).map(
      ([col, row, typed]) =>
        (model: Model) =>
          model.dispatch('UPDATE_CELL', { sheetId: sheetOf(model), col, row, content: typed }),
    ),
  },
  { weight: 2, arbitrary: fc.constant<Step>((model) => model.dispatch('REQUEST_UNDO')) },
  { weight: 1, arbitrary: fc.constant<Step>((model) => model.dispatch('REQUEST_REDO')) },
  {
    weight: 2,
    arbitrary: fc.tuple(small, small, fc.array(fc.array(content, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 4 })).map(
      ([left, top, lines]) =>
        (model: Model) =>
          model.dispatch('PASTE_FROM_OS_CLIPBOARD', {
            target: [{ left, top, right: left, bottom: top }],
            clipboardContent: { text: lines.map((line) => line.join('\t')).join('\n') },
          } as never),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(header, small).map(
      ([dimension, base]) =>
        (model: Model) =>
          model.dispatch('ADD_COLUMNS_ROWS', {
            sheetId: sheetOf(model),
            sheetName: model.getters.getActiveSheetName(),
            dimension,
            base,
            quantity: 1,
            position: 'before',
          }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(header, small).map(
      ([dimension, element]) =>
        (model: Model) =>
          model.dispatch('REMOVE_COLUMNS_ROWS', {
            sheetId: sheetOf(model),
            sheetName: model.getters.getActiveSheetName(),
            dimension,
            elements: [element],
          }),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(small, small, fc.boolean()).map(
      ([col, row, bold]) =>
        (model: Model) =>
          model.dispatch('SET_FORMATTING', {
            sheetId: sheetOf(model),
            target: [{ left: col, right: col + 1, top: row, bottom: row }],
            style: { bold },
          }),
    ),
  },
);

function watched(tell: (revision: Revision) => void): Model {
  const model = new Model({ sheets: [{ id: 'one', name: 'One', colNumber: 30, rowNumber: 30 }] }, { transportService: new Telling(tell) });
  forgetOldChanges(model);
  sendAsMade(model);
  return model;
}

const contents = (model: Model): unknown => model._exportData(false).sheets;

beforeAll(() => {
  // As the page does: else the grid writes a range of one cell without its second end when it is opened again.
  mendReferences();
  // The grid tells its own times at every step.
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
});

describe('the changes made upon a copy, written down as text', () => {
  it('make the same workbook again, whatever was typed, pasted, taken back or done again', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(step, fc.nat({ max: 15 })), { minLength: 20, maxLength: 120, size: 'max' }), (steps) => {
        let written: string[] = [];
        let known = new Set<string>();
        let gap = false;
        const model = watched((revision) => {
          const earlier = restsOn(revision);
          gap ||= earlier !== undefined && !known.has(earlier);
          known.add(revision.nextRevisionId);
          written.push(JSON.stringify(revision));
        });
        let copy = JSON.stringify(model._exportData(false));
        for (const [act, kept] of steps) {
          act(model);
          if (!gap && kept > 0) continue;
          // The whole is kept from time to time, and where what is taken back was made before the last copy.
          copy = JSON.stringify(model._exportData(false));
          [known, gap] = [new Set(), false];
        }
        const data = JSON.parse(copy) as WorkbookData;
        written = written.reverse();
        const since = following(
          data.revisionId,
          written.map((text) => JSON.parse(text) as Revision),
        );
        expect(contents(new Model(data, {}, since))).toEqual(contents(model));
      }),
      { numRuns: 25, endOnFailure: true },
    );
  }, 240_000);

  it.each([false, true])('make a new budget again as it is on screen, upon the text of what the grid was given, blank %s', (blank) => {
    const given = toGrid(budgetWorkbook({ blank }), locales[0]);
    const first = JSON.stringify(given);
    const written: string[] = [];
    const model = new Model(given, { transportService: new Telling((revision) => written.push(JSON.stringify(revision))) });
    sendAsMade(model);
    model.dispatch('UPDATE_CELL', { sheetId: sheetOf(model), col: 11, row: 1, content: 'typed at once' });
    const { data, leftOut } = readCopy({ json: first, at: 0, tool });
    expect(leftOut.size).toBe(0);
    const since = following(
      data.revisionId,
      written.map((text) => JSON.parse(text) as Revision),
    );
    expect(since).toHaveLength(1);
    expect(JSON.stringify(contents(new Model(data, {}, since))) === JSON.stringify(contents(model))).toBe(true);
  });

  it('that were made before the copy, or upon another one, are passed over', () => {
    const revision = (from: string, to: string) => ({ type: 'REVISION_UNDONE', serverRevisionId: from, nextRevisionId: to }) as Revision;
    const all = [revision('c', 'd'), revision('a', 'b'), revision('x', 'y'), revision('b', 'c')];
    expect(following('b', all).map(({ nextRevisionId }) => nextRevisionId)).toEqual(['c', 'd']);
    expect(following('nowhere', all)).toEqual([]);
    expect(following('a', [revision('a', 'a')])).toHaveLength(1);
  });

  it('are handed on whole and at once, also those on which the grid’s own shortening stops', () => {
    const told: Revision[] = [];
    const model = watched((revision) => told.push(revision));
    const text = ['=SUM(A$1:A1)', '=SUM(A$1:A2)', '=SUM(A$1:A3)', '=SUM(A$1:A4)'].join('\n');
    const target = [{ left: 1, right: 1, top: 0, bottom: 0 }];
    model.dispatch('PASTE_FROM_OS_CLIPBOARD', { target, clipboardContent: { text } } as never);
    model.dispatch('UPDATE_CELL', { sheetId: 'one', col: 0, row: 0, content: '7' });
    expect(told).toHaveLength(2);
  });
});
