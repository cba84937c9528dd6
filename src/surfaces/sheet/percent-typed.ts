import { type CoreCommand, registries, UIPlugin } from '@odoo/o-spreadsheet';

const doubled = /^([+-]?\d+(?:[.,]\d*)?)\s*%\s*%$/;

/**
 * In a cell of percentages the grid puts `%` behind the first digit typed; who then types `35%`, as the sheet asks,
 * is left with `35%%`, which is text. The second mark goes again, within the same step for undo.
 */
class PercentTypedPlugin extends UIPlugin {
  override handle(command: CoreCommand): void {
    if (command.type !== 'UPDATE_CELL' || !command.content) return;
    const number = doubled.exec(command.content)?.[1];
    const { sheetId, col, row } = command;
    if (number && this.getters.getCell({ sheetId, col, row })?.format?.includes('%')) {
      this.dispatch('UPDATE_CELL', { sheetId, col, row, content: `${number.replace(',', '.')}%` });
    }
  }
}

/** Before the first workbook is made. */
export function addPercentTyped(): void {
  registries.featurePluginRegistry.add('percent_typed', PercentTypedPlugin);
}
