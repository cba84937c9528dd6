import { helpers, type Locale, type SheetData, type WorkbookData } from '@odoo/o-spreadsheet';
import { borders, looks, numberFormatOf, styles } from '../../workbook/look.ts';
import type { Sheet, SheetCell, Workbook } from '../../workbook/model.ts';
import { figureOf } from './charts.ts';

/** Numbers things alike once, as the grid's files do: cells hold the number of their style, format or border. */
class Numbered<T> {
  readonly byNumber: Record<number, T> = {};
  readonly #numbers = new Map<string, number>();

  numberOf(thing: T): number {
    const key = JSON.stringify(thing);
    const known = this.#numbers.get(key);
    if (known !== undefined) return known;
    const number = this.#numbers.size + 1;
    this.#numbers.set(key, number);
    this.byNumber[number] = thing;
    return number;
  }
}

interface Shared {
  readonly styles: Numbered<object>;
  readonly formats: Numbered<string>;
  readonly borders: Numbered<object>;
}

function contentOf({ content }: SheetCell): string {
  if (typeof content === 'boolean') return content ? 'TRUE' : 'FALSE';
  return String(content);
}

function styleOf({ style, wrap, align }: SheetCell): object {
  return {
    ...(style && styles[style]),
    ...(wrap && { wrapping: 'wrap', verticalAlign: 'top' }),
    ...(align && { align: align === 'centre' ? 'center' : align }),
  };
}

type Criterion = { readonly type: 'isValueInList' | 'isValueInRange'; readonly values: string[]; readonly displayStyle: 'arrow' };

function criterionOf({ choices, choicesIn }: SheetCell): Criterion | undefined {
  if (choices) return { type: 'isValueInList', values: [...choices], displayStyle: 'arrow' };
  return choicesIn === undefined ? undefined : { type: 'isValueInRange', values: [choicesIn], displayStyle: 'arrow' };
}

function choiceRules(cells: Sheet['cells']): SheetData['dataValidationRules'] {
  const byCriterion = new Map<string, string[]>();
  for (const [address, cell] of Object.entries(cells)) {
    const criterion = criterionOf(cell);
    if (!criterion) continue;
    const key = JSON.stringify(criterion);
    byCriterion.set(key, [...(byCriterion.get(key) ?? []), address]);
  }
  return [...byCriterion].map(([key, ranges], k) => ({
    id: `choices-${k}`,
    ranges,
    isBlocking: false,
    criterion: JSON.parse(key) as Criterion,
  }));
}

const colourRules = (rules: Sheet['rules']): SheetData['conditionalFormats'] =>
  (rules ?? []).map(({ range, when, look }, k) => ({
    id: `rule-${k}`,
    ranges: [range],
    rule: { type: 'CellIsRule', operator: 'customFormula', values: [when.startsWith('=') ? when : `=${when}`], style: looks[look] },
  }));

function sheetData(sheet: Sheet, id: string, shared: Shared): SheetData {
  const cells: SheetData['cells'] = {};
  const styled: Record<string, number> = {};
  const formatted: Record<string, number> = {};
  const bordered: Record<string, number> = {};
  let lastColumn = sheet.columns.length;
  for (const [address, cell] of Object.entries(sheet.cells)) {
    lastColumn = Math.max(lastColumn, helpers.toZone(address).right + 1);
    cells[address] = contentOf(cell);
    const style = styleOf(cell);
    if (Object.keys(style).length > 0) styled[address] = shared.styles.numberOf(style);
    const format = numberFormatOf(cell);
    if (format) formatted[address] = shared.formats.numberOf(format);
    const border = cell.style && borders[cell.style];
    if (border) bordered[address] = shared.borders.numberOf(border);
  }
  return {
    ...helpers.createEmptySheet(id, sheet.name),
    colNumber: Math.max(lastColumn, 12),
    rowNumber: sheet.rows,
    cells,
    styles: styled,
    formats: formatted,
    borders: bordered,
    merges: [...(sheet.merges ?? [])],
    cols: Object.fromEntries(sheet.columns.map((size, k) => [k, { size }])),
    rows: Object.fromEntries(Object.entries(sheet.heights ?? {}).map(([row, size]) => [Number(row) - 1, { size }])),
    conditionalFormats: colourRules(sheet.rules),
    dataValidationRules: choiceRules(sheet.cells),
    figures: (sheet.charts ?? []).map((chart, k) => figureOf(chart, `${id}-chart-${k}`)),
    areGridLinesVisible: false,
    ...(sheet.freeze && { panes: { xSplit: sheet.freeze.columns, ySplit: sheet.freeze.rows } }),
  };
}

/** The workbook as the grid reads it. What the grid stores is written in canonical English whatever its locale shows. */
export function toGrid(workbook: Workbook, locale: Locale): WorkbookData {
  const shared: Shared = { styles: new Numbered(), formats: new Numbered(), borders: new Numbered() };
  const sheets = workbook.sheets.map((sheet, k) => sheetData(sheet, `sheet-${k + 1}`, shared));
  return {
    ...helpers.createEmptyWorkbookData(),
    sheets,
    styles: shared.styles.byNumber,
    formats: shared.formats.byNumber,
    borders: shared.borders.byNumber,
    settings: { locale },
  };
}
