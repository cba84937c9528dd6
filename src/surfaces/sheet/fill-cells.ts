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

/** The grid undoes in one step what one of its commands did, and has none that fills cells here and there. */
class FillCellsPlugin extends UIPlugin {
  override handle(command: Command | FillCells): void {
    if (command.type !== 'FILL_CELLS') return;
    for (const cell of command.cells) this.dispatch('UPDATE_CELL', cell);
  }
}

/** Before the first workbook is made. A locked sheet may be on show while another one is filled; each cell's own sheet is asked. */
export function addFillCells(): void {
  registries.featurePluginRegistry.add('fill_cells', FillCellsPlugin);
  lockedSheetAllowedCommands.add('FILL_CELLS' as Command['type']);
}

/** Fills all of the cells in one step that one undo takes back, or none: then it gives the first that cannot be filled. */
export function fillCells(model: Model, cells: readonly CellFilling[]): CellFilling | undefined {
  const stuck = cells.find((cell) => !model.canDispatch('UPDATE_CELL', cell).isSuccessful);
  if (stuck) return stuck;
  (model.dispatch as (type: string, payload: Omit<FillCells, 'type'>) => unknown)('FILL_CELLS', { cells });
  return undefined;
}
