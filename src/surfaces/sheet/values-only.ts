import { type EvaluatedCell, helpers, Model, type WorkbookData } from '@odoo/o-spreadsheet';
import { styles } from '../../workbook/look.ts';
import { writeWorkbook } from './readable.ts';

type SheetData = WorkbookData['sheets'][number];

/** What the cell shows, as one would type it to have just that; an error by its code, which the spreadsheet file makes an error again. */
function typedAs({ type, value, format }: EvaluatedCell): string {
  if (type === 'boolean') return value ? 'TRUE' : 'FALSE';
  // The grid takes a text with an apostrophe before it as it stands. In a cell for texts it would show it.
  return type === 'text' && (format !== '@' || /^[='+]/.test(String(value))) ? `'${value}` : String(value);
}

/** A sheet with what its cells show in place of what makes them show it; nothing in it is chosen from lists or locked any more. */
function shownOnly(sheet: SheetData, { getters }: Model, numberOf: (format: string) => number): SheetData {
  const cells: SheetData['cells'] = {};
  const formats = { ...sheet.formats };
  for (const position of getters.getEvaluatedCellsPositions(sheet.id)) {
    const shown = getters.getEvaluatedCell(position);
    if (shown.type === 'empty' || shown.value === '') continue;
    const address = helpers.toXC(position.col, position.row);
    cells[address] = typedAs(shown);
    // A formula hands on how its figures are shown; a value has to be told.
    if (shown.format && getters.getCell(position)?.format === undefined) formats[address] = numberOf(shown.format);
  }
  return { ...sheet, cells, formats, dataValidationRules: [], isLocked: false };
}

/** The name itself, or where another sheet has it the name with a word more; Excel takes 31 letters. */
function freeName(name: string, taken: ReadonlySet<string>): string {
  if (!taken.has(name.toLowerCase())) return name;
  for (let k = 1; ; k++) {
    const word = k === 1 ? ' (values)' : ` (values ${k})`;
    const other = `${name.slice(0, 31 - word.length)}${word}`;
    if (!taken.has(other.toLowerCase())) return other;
  }
}

/** A workbook as values: its data, and what each sheet was called and is called now. */
export interface Values {
  readonly data: WorkbookData;
  readonly names: ReadonlyMap<string, string>;
}

/**
 * The sheets of a workbook as they stand, without a formula, each with a sentence above it.
 *
 * @param left names of sheets that stay out, @param taken and those that its own must not have
 */
export function valuesOnly(model: Model, sentence: string, left: ReadonlySet<string>, taken: readonly string[]): Values {
  const data = JSON.parse(writeWorkbook(model)) as WorkbookData;
  const numbers = new Map(Object.entries(data.formats).map(([number, format]) => [format, Number(number)]));
  const numberOf = (format: string): number => {
    const number = numbers.get(format) ?? Math.max(0, ...numbers.values()) + 1;
    numbers.set(format, number);
    return number;
  };
  const sheets = data.sheets.filter(({ name }) => !left.has(name)).map((sheet) => shownOnly(sheet, model, numberOf));
  const formats = Object.fromEntries([...numbers].map(([format, number]) => [number, format]));
  const names = new Map<string, string>();
  if (sheets.length === 0) return { data: { ...data, sheets }, names };
  const copy = new Model({ ...data, sheets, formats, pivots: {}, namedRanges: {} });
  const used = new Set([...taken, ...sheets.map(({ name }) => name)].map((name) => name.toLowerCase()));
  const clashes = new Set(taken.map((name) => name.toLowerCase()));
  for (const { id: sheetId, name } of sheets) {
    const newName = clashes.has(name.toLowerCase()) ? freeName(name, used) : name;
    names.set(name, newName);
    used.add(newName.toLowerCase());
    copy.dispatch('ADD_COLUMNS_ROWS', { sheetId, sheetName: name, dimension: 'ROW', base: 0, position: 'before', quantity: 1 });
    copy.dispatch('UPDATE_CELL', {
      sheetId,
      col: 0,
      row: 0,
      content: sentence,
      style: { textColor: styles.warning.textColor as string, bold: true },
    });
    if (newName !== name) copy.dispatch('RENAME_SHEET', { sheetId, oldName: name, newName });
  }
  return { data: JSON.parse(writeWorkbook(copy)) as WorkbookData, names };
}
