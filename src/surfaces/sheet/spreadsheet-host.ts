import { DEFAULT_LOCALE, helpers, type Locale, type Model, tokenize } from '@odoo/o-spreadsheet';
import { budgetWorkbook } from '../../workbook/index.ts';
import type { CellContent, Filling, Place, SpreadsheetHost } from '../pane/spreadsheet-host.ts';
import { fillCells } from './fill-cells.ts';
import type { Desk } from './keeping/desk.ts';
import { bcp47 } from './locales.ts';
import { ask } from './page.ts';
import { addressOf, reading, sheetIdOf, zoneOf } from './reading.ts';
import { toGrid } from './to-grid.ts';
import type { View } from './view.ts';

/** The grid shows and takes a formula in its locale's marks, and keeps it in the canonical ones. */
function asTyped(formula: string, { decimalSeparator, formulaArgSeparator }: Locale): string {
  const instead = (type: string, value: string): string => {
    if (type === 'NUMBER') return value.replace('.', decimalSeparator);
    if (type === 'ARG_SEPARATOR') return formulaArgSeparator;
    return type === 'ARRAY_ROW_SEPARATOR' && formulaArgSeparator === ';' ? '\\' : value;
  };
  return tokenize(formula, DEFAULT_LOCALE)
    .map(({ type, value }) => instead(type, value))
    .join('');
}

/** The grid keeps what it stores canonical, whatever the locale on show. */
function stored(content: CellContent): string {
  if (content === null) return '';
  return typeof content === 'boolean' ? String(content).toUpperCase() : String(content);
}

function write(model: Model, fillings: readonly Filling[]): void {
  const cells = fillings.flatMap(({ sheet, address, contents }) => {
    const sheetId = sheetIdOf(model, sheet);
    const { top, left } = helpers.toZone(address);
    return contents.flatMap((line, r) => line.map((content, c) => ({ sheetId, row: top + r, col: left + c, content: stored(content) })));
  });
  const stuck = fillCells(model, cells);
  if (stuck) {
    const place = `${model.getters.getSheetName(stuck.sheetId)} ${helpers.toXC(stuck.col, stuck.row)}`;
    throw new Error(`${place} cannot be filled: the sheet is locked or full.`);
  }
}

function select(model: Model, { sheet, address }: Place): void {
  const { getters } = model;
  const sheetIdTo = sheetIdOf(model, sheet);
  const sheetIdFrom = getters.getActiveSheetId();
  if (sheetIdFrom !== sheetIdTo) model.dispatch('ACTIVATE_SHEET', { sheetIdFrom, sheetIdTo });
  const zone = zoneOf(model, sheetIdTo, address);
  model.selection.selectZone({ cell: { col: zone.left, row: zone.top }, zone }, { scrollIntoView: true });
}

/** The embedded sheet as the pane sees it, whichever workbook it shows. */
export function spreadsheetHost(view: View, desk: Desk): SpreadsheetHost {
  const model = (): Model => view.shown.model;
  return {
    ...reading(model),
    name: 'this sheet',
    locale: () => bcp47(model().getters.getLocale()),
    typed: (formula) => asTyped(formula, model().getters.getLocale()),
    selection: async () => {
      const { getters } = model();
      const { sheetId, col, row } = getters.getActivePosition();
      return { sheet: getters.getSheetName(sheetId), address: addressOf(getters.getSelectedZone()), active: helpers.toXC(col, row) };
    },
    onSelection: (listener) => {
      let before = '';
      return view.onMove(() => {
        const { getters } = model();
        const now = JSON.stringify([getters.getActivePosition(), getters.getSelectedZone()]);
        if (now !== before) listener();
        before = now;
      });
    },
    onChange: (listener) => view.onChange(listener),
    write: async (fillings) => write(model(), fillings),
    select: async (place) => select(model(), place),
    startBudget: async (inputs) => {
      const agreed = await ask(
        desk.keeps
          ? 'Start the budget here? The workbook that is open stays in Budgets.'
          : 'Start the budget here? It takes the place of this workbook, which is not kept: save a copy first if you still need it.',
        'Start the budget',
        'Keep this workbook',
      );
      if (agreed) await desk.beginFresh(toGrid(budgetWorkbook({ blank: inputs === 'blank' }), model().getters.getLocale()));
    },
  };
}
