import { type CellPosition, helpers, type Model, type Zone } from '@odoo/o-spreadsheet';
import { budgetWorkbook } from '../../workbook/index.ts';
import type { CellContent, HostCell, Place, Selection, SpreadsheetHost } from '../pane/spreadsheet-host.ts';
import { ask } from './page.ts';
import { toGrid } from './to-grid.ts';
import type { View } from './view.ts';

const { toXC, toZone } = helpers;

const addressOf = ({ left, top, right, bottom }: Zone): string => {
  const start = toXC(left, top);
  return left === right && top === bottom ? start : `${start}:${toXC(right, bottom)}`;
};

function sheetIdOf({ getters }: Model, name: string): string {
  const id = getters.getSheetIds().find((sheetId) => getters.getSheetName(sheetId) === name);
  if (id === undefined) throw new Error(`There is no sheet named ${name} in this workbook.`);
  return id;
}

/** The block as far as the sheet reaches. */
function zoneWithin({ getters }: Model, sheetId: string, address: string): Zone {
  const zone = toZone(address);
  return {
    ...zone,
    right: Math.min(zone.right, getters.getNumberCols(sheetId) - 1),
    bottom: Math.min(zone.bottom, getters.getNumberRows(sheetId) - 1),
  };
}

const upTo = (first: number, last: number): number[] => Array.from({ length: Math.max(0, last - first + 1) }, (_, k) => first + k);

function formulaIn({ getters }: Model, position: CellPosition): string | undefined {
  const cell = getters.getCell(position);
  return cell?.isFormula ? cell.compiledFormula.toFormulaString(getters) : undefined;
}

function hostCell(model: Model, position: CellPosition): HostCell {
  const { value, message } = model.getters.getEvaluatedCell(position);
  const formula = formulaIn(model, position);
  const isError = helpers.isEvaluationError(value);
  const code = value === '#ERROR' ? '#VALUE!' : value;
  return {
    value: code === '' ? null : code,
    ...(formula !== undefined && { formula }),
    ...(isError && { error: message || String(code) }),
  };
}

const contentOf = (content: CellContent): string => {
  if (content === null) return '';
  if (typeof content === 'boolean') return content ? 'TRUE' : 'FALSE';
  return String(content);
};

/** The embedded sheet as the pane sees it. */
export function paneHost(view: View): SpreadsheetHost {
  const model = (): Model => view.shown.model;

  const selection = (): Selection => {
    const { getters } = model();
    const { sheetId, col, row } = getters.getActivePosition();
    return { sheet: getters.getSheetName(sheetId), address: addressOf(getters.getSelectedZone()), active: toXC(col, row) };
  };

  return {
    name: 'this sheet',
    locale: () => model().getters.getLocale().code.replace('_', '-'),
    sheetNames: async () =>
      model()
        .getters.getSheetIds()
        .map((id) => model().getters.getSheetName(id)),
    selection: async () => selection(),
    onSelection(listener) {
      let before = '';
      return view.onMove(() => {
        const now = JSON.stringify(selection());
        if (now !== before) listener();
        before = now;
      });
    },
    onChange: (listener) => view.onChange(listener),
    async read({ sheet, address }) {
      const sheetId = sheetIdOf(model(), sheet);
      const { left, right, top, bottom } = zoneWithin(model(), sheetId, address);
      return upTo(top, bottom).map((row) => upTo(left, right).map((col) => hostCell(model(), { sheetId, col, row })));
    },
    async usedRange(sheet) {
      const sheetId = sheetIdOf(model(), sheet);
      const { getters } = model();
      const filled = getters.getEvaluatedCellsPositions(sheetId).filter((position) => getters.getEvaluatedCell(position).value !== null);
      if (filled.length === 0) return undefined;
      const [columns, rows] = [filled.map(({ col }) => col), filled.map(({ row }) => row)];
      return addressOf({ left: Math.min(...columns), right: Math.max(...columns), top: Math.min(...rows), bottom: Math.max(...rows) });
    },
    async formulaBehind({ sheet, address }) {
      const sheetId = sheetIdOf(model(), sheet);
      const { left: col, top: row } = toZone(address);
      const position = model().getters.getArrayFormulaSpreadingOn({ sheetId, col, row }) ?? { sheetId, col, row };
      const formula = formulaIn(model(), position);
      return formula === undefined ? undefined : { address: toXC(position.col, position.row), formula };
    },
    async write({ sheet, address }, contents) {
      const sheetId = sheetIdOf(model(), sheet);
      const { left, top } = toZone(address);
      contents.forEach((line, down) => {
        line.forEach((content, across) => {
          const done = model().dispatch('UPDATE_CELL', { sheetId, col: left + across, row: top + down, content: contentOf(content) });
          if (!done.isSuccessful) throw new Error(`${toXC(left + across, top + down)} on ${sheet} could not be filled in.`);
        });
      });
    },
    async select({ sheet, address }: Place) {
      const sheetIdTo = sheetIdOf(model(), sheet);
      const sheetIdFrom = model().getters.getActiveSheetId();
      if (sheetIdTo !== sheetIdFrom) model().dispatch('ACTIVATE_SHEET', { sheetIdFrom, sheetIdTo });
      const zone = toZone(address);
      model().selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone });
    },
    async startBudget(inputs) {
      if (!(await ask('Put the budget’s sheets in place of this workbook?', 'Put them in place', 'Keep this one'))) return;
      await view.show(toGrid(budgetWorkbook({ blank: inputs === 'blank' }), model().getters.getLocale()));
    },
  };
}
