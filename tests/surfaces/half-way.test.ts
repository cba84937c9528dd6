import { type CoreCommand, Model, registries, UIPlugin, type WorkbookData } from '@odoo/o-spreadsheet';
import { beforeAll, beforeEach, expect, it, vi } from 'vitest';
import { surviveFaults } from '../../src/surfaces/sheet/half-way.ts';
import { sendAsMade } from '../../src/surfaces/sheet/one-author.ts';

const sheetId = 'one';
const type = (on: Model, row: number, content: string) => on.dispatch('UPDATE_CELL', { sheetId, col: 0, row, content });
const shown = (on: Model, rows: number): unknown[] =>
  Array.from({ length: rows }, (_, row) => on.getters.getEvaluatedCell({ sheetId, col: 0, row }).value);

let model: Model;
let goOn: ReturnType<typeof vi.fn<(data: WorkbookData) => void>>;
let giveUp: ReturnType<typeof vi.fn<() => void>>;

/** Stops behind a change of the cell and of the next one, as a fault in the grid would. */
class StopsPlugin extends UIPlugin {
  override handle(command: CoreCommand): void {
    if (command.type !== 'UPDATE_CELL' || command.content !== 'half') return;
    this.dispatch('UPDATE_CELL', { ...command, row: command.row + 1, content: 'the other half' });
    throw new Error('stopped half-way');
  }
}

beforeAll(() => {
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
  registries.featurePluginRegistry.add('stops', StopsPlugin);
});

beforeEach(() => {
  model = new Model({ sheets: [{ id: sheetId, cells: { A2: '=A1*2' } }] });
  [goOn, giveUp] = [vi.fn<(data: WorkbookData) => void>(), vi.fn<() => void>()];
  surviveFaults(model, { goOn, giveUp });
  sendAsMade(model);
  type(model, 0, '7');
});

it('a command that stops half-way is taken back whole, and the workbook goes on as it was before', () => {
  const before = model._exportData(false).sheets;
  expect(type(model, 2, 'half').isSuccessful).toBe(false);
  const [[data]] = goOn.mock.calls as [[WorkbookData]];
  expect(data.sheets).toEqual(before);
  const again = new Model(data);
  type(again, 0, '8');
  expect(shown(again, 4)).toEqual([8, 16, null, null]);
});

it('a command that was made whole, but could not be sent, is kept', async () => {
  const { session } = model as unknown as {
    session: { commandSquisher: { squish: () => never }; move: (to: object) => void };
  };
  session.commandSquisher.squish = () => {
    throw new Error('cannot be sent');
  };
  expect(type(model, 2, 'whole').isSuccessful).toBe(false);
  const [[data]] = goOn.mock.calls as [[WorkbookData]];
  expect(shown(new Model(data), 3)).toEqual([7, 14, 'whole']);
  // What is waiting would be sent again here, and fail again where nobody could catch it.
  session.move({ sheetId, col: 1, row: 1 });
  await new Promise((done) => setTimeout(done));
});

it('one that stops before it begins takes back nothing of the one before it', () => {
  const { uiHandlers } = model as unknown as { uiHandlers: { allowDispatch: () => never }[] };
  for (const handler of uiHandlers) {
    handler.allowDispatch = () => {
      throw new Error('stopped at the question');
    };
  }
  type(model, 2, 'never');
  const [[data]] = goOn.mock.calls as [[WorkbookData]];
  expect(shown(new Model(data), 3)).toEqual([7, 14, null]);
});

it('where the workbook cannot be brought out, that is said, and the old model takes nothing more', () => {
  model._exportData = () => {
    throw new Error('cannot be brought out');
  };
  type(model, 2, 'half');
  expect(giveUp).toHaveBeenCalledOnce();
  expect(goOn).not.toHaveBeenCalled();
  expect(type(model, 0, '9').isSuccessful).toBe(false);
  expect(shown(model, 1)).toEqual([7]);
});
