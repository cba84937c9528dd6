import { type Command, lockedSheetAllowedCommands, type Model, registries, UIPlugin } from '@odoo/o-spreadsheet';

/** A cell and what is to stand in it, as the grid stores it. */
export interface CellFilling {
  readonly sheetId: string;
  readonly row: number;
  readonly col: number;
  readonly content: string;
}

interface FillCells {
  readonly type: 'FILL_CELLS';
  readonly cells: readonly CellFilling[];
}

/** What a sheet lacks in rows or columns for all of the cells to stand on it. */
interface Growth {
  readonly sheetId: string;
  readonly sheetName: string;
  readonly dimension: 'ROW' | 'COL';
  readonly base: number;
  readonly position: 'after';
  readonly quantity: number;
}

function growthFor(getters: Model['getters'], cells: readonly CellFilling[]): readonly Growth[] {
  const furthest = new Map<string, { row: number; col: number }>();
  for (const { sheetId, row, col } of cells) {
    const before = furthest.get(sheetId) ?? { row: 0, col: 0 };
    furthest.set(sheetId, { row: Math.max(before.row, row), col: Math.max(before.col, col) });
  }
  return [...furthest].flatMap(([sheetId, { row, col }]) => {
    const has = { ROW: getters.getNumberRows(sheetId), COL: getters.getNumberCols(sheetId) };
    const common = { sheetId, sheetName: getters.getSheetName(sheetId), position: 'after' } as const;
    return (['ROW', 'COL'] as const)
      .map((dimension): Growth => {
        const needed = (dimension === 'ROW' ? row : col) + 1;
        return { ...common, dimension, base: has[dimension] - 1, quantity: needed - has[dimension] };
      })
      .filter(({ quantity }) => quantity > 0);
  });
}

/** The grid undoes in one step what one of its commands did, and has none that fills cells here and there. */
class FillCellsPlugin extends UIPlugin {
  override handle(command: Command | FillCells): void {
    if (command.type !== 'FILL_CELLS') return;
    for (const growth of growthFor(this.getters, command.cells)) this.dispatch('ADD_COLUMNS_ROWS', growth);
    for (const cell of command.cells) this.dispatch('UPDATE_CELL', cell);
  }
}

/** Before the first workbook is made. A locked sheet may be on show while another one is filled; each cell's own sheet is asked. */
export function addFillCells(): void {
  registries.featurePluginRegistry.add('fill_cells', FillCellsPlugin);
  lockedSheetAllowedCommands.add('FILL_CELLS' as Command['type']);
}

/**
 * Fills all of the cells in one step that one undo takes back, or none: then it gives the first that cannot be filled. A sheet
 * that ends before a cell grows to it.
 */
export function fillCells(model: Model, cells: readonly CellFilling[]): CellFilling | undefined {
  const { getters } = model;
  const onSheet = ({ sheetId, row, col }: CellFilling): boolean =>
    row < getters.getNumberRows(sheetId) && col < getters.getNumberCols(sheetId);
  const grows = growthFor(getters, cells).every((growth) => model.canDispatch('ADD_COLUMNS_ROWS', growth).isSuccessful);
  const stuck = cells.find((cell) => (onSheet(cell) ? !model.canDispatch('UPDATE_CELL', cell).isSuccessful : !grows));
  if (stuck) return stuck;
  (model.dispatch as (type: string, payload: Omit<FillCells, 'type'>) => unknown)('FILL_CELLS', { cells });
  return undefined;
}
