import type { Model } from '@odoo/o-spreadsheet';
import { addressOf, placeOf } from '../../src/workbook/grid.ts';
import type { Workbook } from '../../src/workbook/model.ts';
import { evaluate } from './evaluate.ts';

export interface Shown {
  readonly address: string;
  readonly value: string | number | boolean | null;
  /** As it is read on screen. */
  readonly text: string;
  readonly message: string | undefined;
}

/** A workbook that can be read and typed into by sheet name and address. */
export class Evaluated {
  readonly #model: Model;
  readonly #sheetIds: ReadonlyMap<string, string>;

  constructor(workbook: Workbook) {
    this.#model = evaluate(workbook);
    const { getters } = this.#model;
    this.#sheetIds = new Map(getters.getSheetIds().map((id) => [getters.getSheetName(id), id]));
  }

  #position(sheet: string, address: string) {
    const { column: col, row } = placeOf(address);
    return { sheetId: this.#sheetIds.get(sheet) as string, col, row };
  }

  read(sheet: string, address: string): Shown {
    const { value, formattedValue, message } = this.#model.getters.getEvaluatedCell(this.#position(sheet, address));
    return { address, value: value as Shown['value'], text: formattedValue, message };
  }

  type(sheet: string, address: string, content: string): void {
    this.#model.dispatch('UPDATE_CELL', { ...this.#position(sheet, address), content });
  }

  /** Every cell that shows something. */
  cells(sheet: string): readonly Shown[] {
    const sheetId = this.#sheetIds.get(sheet) as string;
    const { getters } = this.#model;
    const found: Shown[] = [];
    for (let row = 0; row < getters.getNumberRows(sheetId); row++) {
      for (let col = 0; col < getters.getNumberCols(sheetId); col++) {
        const { type, value, formattedValue, message } = getters.getEvaluatedCell({ sheetId, col, row });
        if (type !== 'empty') found.push({ address: addressOf(col, row), value: value as Shown['value'], text: formattedValue, message });
      }
    }
    return found;
  }
}
