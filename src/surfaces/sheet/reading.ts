import { type CellPosition, helpers, type Model, type Zone } from '@odoo/o-spreadsheet';
import type { HostCell, SpreadsheetHost } from '../pane/spreadsheet-host.ts';

export function sheetIdOf({ getters }: Model, sheet: string): string {
  const id = getters.getSheetIdByName(sheet);
  if (id === undefined) throw new Error(`This workbook has no sheet named ${sheet}.`);
  return id;
}

/** The part of the block that lies on the sheet. */
export function zoneOf({ getters }: Model, sheetId: string, address: string): Zone {
  const { top, left, bottom, right } = helpers.toZone(address);
  const edge = getters.getSheetZone(sheetId);
  return { top, left, bottom: Math.min(bottom, edge.bottom), right: Math.min(right, edge.right) };
}

export const addressOf = ({ top, left, bottom, right }: Zone): string => {
  const corner = helpers.toXC(left, top);
  return top === bottom && left === right ? corner : `${corner}:${helpers.toXC(right, bottom)}`;
};

const numbersFrom = (from: number, to: number): number[] => Array.from({ length: Math.max(0, to - from + 1) }, (_, k) => from + k);

function formulaAt({ getters }: Model, position: CellPosition): string | undefined {
  const cell = getters.getCell(position);
  return cell?.isFormula ? cell.compiledFormula.toFormulaString(getters) : undefined;
}

function cellAt(model: Model, position: CellPosition): HostCell {
  const { type, value, message } = model.getters.getEvaluatedCell(position);
  const formula = formulaAt(model, position);
  const shown = type === 'error' ? { value: value === '#ERROR' ? '#VALUE!' : value, error: message || String(value) } : { value };
  return { ...shown, ...(formula !== undefined && { formula }) };
}

/** What can be read of a workbook without a page: the part of the panel's host that only looks. */
export function reading(model: () => Model): Pick<SpreadsheetHost, 'sheetNames' | 'read' | 'usedRange' | 'formulaBehind'> {
  return {
    sheetNames: async () => {
      const { getters } = model();
      return getters.getSheetIds().map((id) => getters.getSheetName(id));
    },
    read: async ({ sheet, address }) => {
      const sheetId = sheetIdOf(model(), sheet);
      const { top, left, bottom, right } = zoneOf(model(), sheetId, address);
      return numbersFrom(top, bottom).map((row) => numbersFrom(left, right).map((col) => cellAt(model(), { sheetId, row, col })));
    },
    usedRange: async (sheet) => {
      const { getters } = model();
      const sheetId = sheetIdOf(model(), sheet);
      const filled = getters.getEvaluatedCellsPositions(sheetId).filter((position) => getters.getEvaluatedCell(position).type !== 'empty');
      if (filled.length === 0) return undefined;
      const [rows, columns] = [filled.map(({ row }) => row), filled.map(({ col }) => col)];
      const extent = (of: readonly number[]) =>
        of.reduce<[number, number]>(([low, high], one) => [Math.min(low, one), Math.max(high, one)], [Number.POSITIVE_INFINITY, 0]);
      const [[top, bottom], [left, right]] = [extent(rows), extent(columns)];
      return addressOf({ top, bottom, left, right });
    },
    formulaBehind: async ({ sheet, address }) => {
      const { left: col, top: row } = helpers.toZone(address);
      const own: CellPosition = { sheetId: sheetIdOf(model(), sheet), col, row };
      const from = model().getters.getArrayFormulaSpreadingOn(own) ?? own;
      const formula = formulaAt(model(), from);
      return formula === undefined ? undefined : { address: helpers.toXC(from.col, from.row), formula };
    },
  };
}
