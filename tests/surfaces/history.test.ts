import { isDeepStrictEqual } from 'node:util';
import { Model } from '@odoo/o-spreadsheet';
import fc from 'fast-check';
import { beforeAll, expect, it, vi } from 'vitest';
import { forgetOldChanges } from '../../src/surfaces/sheet/history.ts';

type Step = (model: Model) => unknown;

const small = fc.nat({ max: 4 });

/** What a user does, some of it taken back. */
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 8, arbitrary: fc.tuple(small, small, fc.constantFrom('1', '2', 'words', '', '=A1+B2', '=SUM(A1:C3)')).map(write) },
  { weight: 2, arbitrary: fc.constant<Step>((model) => model.dispatch('REQUEST_UNDO')) },
  { weight: 1, arbitrary: fc.tuple(fc.constantFrom<'ROW' | 'COL'>('ROW', 'COL'), small).map(insert) },
  { weight: 1, arbitrary: fc.tuple(fc.constantFrom<'ROW' | 'COL'>('ROW', 'COL'), small).map(remove) },
);

const sheetOf = (model: Model): string => model.getters.getActiveSheetId();

function write([col, row, content]: readonly [number, number, string]): Step {
  return (model) => model.dispatch('UPDATE_CELL', { sheetId: sheetOf(model), col, row, content });
}

function insert([dimension, base]: readonly ['ROW' | 'COL', number]): Step {
  return (model) =>
    model.dispatch('ADD_COLUMNS_ROWS', {
      sheetId: sheetOf(model),
      sheetName: model.getters.getActiveSheetName(),
      dimension,
      base,
      quantity: 1,
      position: 'before',
    });
}

function remove([dimension, element]: readonly ['ROW' | 'COL', number]): Step {
  return (model) =>
    model.dispatch('REMOVE_COLUMNS_ROWS', {
      sheetId: sheetOf(model),
      sheetName: model.getters.getActiveSheetName(),
      dimension,
      elements: [element],
    });
}

const fresh = (): Model => new Model({ sheets: [{ id: 'one', name: 'One', colNumber: 30, rowNumber: 30 }] });

function forgetting(): Model {
  const model = fresh();
  forgetOldChanges(model);
  return model;
}

const contents = (model: Model): unknown => model._exportData(false).sheets;

beforeAll(() => {
  // The grid tells its own times at every step.
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
});

it('takes back, does again and shows the same with old changes forgotten as with all of them kept', () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 150, maxLength: 250, size: 'max' }), (steps) => {
      const [ours, theirs] = [forgetting(), fresh()];
      for (const [k, act] of steps.entries()) {
        act(ours);
        act(theirs);
        if (k % 50 === 0) expect(contents(ours)).toEqual(contents(theirs));
      }
      const before: unknown[] = [];
      for (let k = 0; k < 20; k++) {
        before.push(contents(theirs));
        for (const model of [ours, theirs]) model.dispatch('REQUEST_UNDO');
        expect(contents(ours)).toEqual(contents(theirs));
      }
      // The grid left alone does not always do again what was taken back, where rows or columns went meanwhile.
      for (const expected of before.reverse()) {
        for (const model of [ours, theirs]) model.dispatch('REQUEST_REDO');
        if (!isDeepStrictEqual(contents(theirs), expected)) break;
        expect(contents(ours)).toEqual(expected);
      }
    }),
    { numRuns: 2, endOnFailure: true },
  );
}, 120_000);

it('takes back the last 99 of four hundred changes', () => {
  const model = forgetting();
  const shown = () => model.getters.getEvaluatedCell({ sheetId: 'one', col: 0, row: 0 }).value;
  for (let k = 1; k <= 400; k++) write([0, 0, String(k)])(model);
  for (let k = 0; k < 99; k++) model.dispatch('REQUEST_UNDO');
  expect(shown()).toBe(301);
  expect(model.dispatch('REQUEST_UNDO').isSuccessful).toBe(false);
});

it('holds no more of the changes after a thousand, with a hundred taken back, than after the first few hundred', () => {
  const model = forgetting();
  const { session } = model as unknown as { session: { revisions: { tree: { branches: { operations: unknown[] }[] } } } };
  const held = () => session.revisions.tree.branches.reduce((sum, { operations }) => sum + operations.length, 0);
  const most: number[] = [];
  for (let k = 1; k <= 1000; k++) {
    write([0, k % 20, String(k)])(model);
    if (k % 10 === 0) model.dispatch('REQUEST_UNDO');
    const at = Math.floor(k / 300);
    most[at] = Math.max(most[at] ?? 0, held());
  }
  expect(most[3]).toBeLessThanOrEqual(most[0] as number);
});
