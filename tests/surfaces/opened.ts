import { type Locale, Model, registries } from '@odoo/o-spreadsheet';
import { Window } from 'happy-dom';
import { mendReferences } from '../../src/surfaces/sheet/cell-references.ts';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { assemble } from '../../src/surfaces/sheet/opening/assemble.ts';
import { whatIsLeftOut } from '../../src/surfaces/sheet/opening/left-out.ts';
import { type Progress, readXlsx } from '../../src/surfaces/sheet/opening/workbook.ts';
import '../workbook/evaluate.ts';

mendReferences();

// The grid's own reader takes looks and rules apart with the page's means.
const { DOMParser, XMLSerializer } = new Window();
Object.assign(globalThis, { DOMParser, XMLSerializer });

export interface Opened {
  readonly model: Model;
  /** The sentence of what came along otherwise or not at all. */
  readonly said: string;
  readonly progress: readonly Progress[];
  /** What a cell shows, and what its entry box would hold. */
  value(address: string): unknown;
  shown(address: string): string;
  content(address: string): string | undefined;
}

/** Opens a spreadsheet file as the page does, worked out without a page. */
export function opened(bytes: Uint8Array, locale: Locale = locales[0]): Opened {
  const progress: Progress[] = [];
  const read = readXlsx(bytes, new Set(registries.functionRegistry.getKeys()), (made) => progress.push(made));
  const { data, losses } = assemble(read, locale);
  const model = new Model(data);
  const at = (address: string) => {
    const [, sheet, letters = '', row = ''] = /^(?:(.*)!)?([A-Z]+)(\d+)$/.exec(address) ?? [];
    const sheetId = sheet === undefined ? model.getters.getSheetIds()[0] : model.getters.getSheetIdByName(sheet);
    const col = [...letters].reduce((sum, one) => 26 * sum + one.charCodeAt(0) - 64, 0) - 1;
    return { sheetId: sheetId ?? 'none', col, row: Number(row) - 1 };
  };
  return {
    model,
    progress,
    said: whatIsLeftOut(losses, read.unknownFunctions),
    value: (address) => model.getters.getEvaluatedCell(at(address)).value,
    shown: (address) => model.getters.getEvaluatedCell(at(address)).formattedValue,
    content: (address) => {
      const cell = model.getters.getCell(at(address));
      return cell?.isFormula ? cell.compiledFormula.toFormulaString(model.getters) : cell?.content;
    },
  };
}
