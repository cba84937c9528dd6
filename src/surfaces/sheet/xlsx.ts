import { helpers, type Model } from '@odoo/o-spreadsheet';
import { strToU8, zipSync } from 'fflate';
import { budgetWorkbook } from '../../workbook/index.ts';
import type { Sheet } from '../../workbook/model.ts';

const main = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';

/** What stands behind the page set-up in a worksheet part (ECMA-376 part 1, 18.3.1.99, CT_Worksheet). */
const behindPageSetup = ['headerFooter', 'rowBreaks', 'colBreaks', 'ignoredErrors', 'drawing', 'legacyDrawing', 'tableParts', 'extLst'];

function element(within: Document, name: string, attributes: Record<string, string>): Element {
  const made = within.createElementNS(main, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/** A4, as wide as the page; a sheet that the budget brings lies on it as it is meant to. */
function setUpPage(worksheet: Document, sheet: Sheet | undefined): void {
  const root = worksheet.documentElement;
  const properties = root.querySelector('sheetPr') ?? root.insertBefore(element(worksheet, 'sheetPr', {}), root.firstChild);
  properties.append(element(worksheet, 'pageSetUpPr', { fitToPage: '1' }));
  root.querySelector('pageSetup')?.remove();
  const setup = element(worksheet, 'pageSetup', {
    paperSize: '9',
    orientation: sheet?.landscape ? 'landscape' : 'portrait',
    fitToWidth: '1',
    fitToHeight: sheet?.onePage ? '1' : '0',
  });
  const behind = (parts: readonly string[]): Element | null => root.querySelector(parts.map((name) => `worksheet > ${name}`).join(', '));
  root.insertBefore(setup, behind(behindPageSetup));
  const { pagesFrom = [] } = sheet ?? {};
  if (pagesFrom.length === 0) return;
  const count = String(pagesFrom.length);
  const breaks = element(worksheet, 'rowBreaks', { count, manualBreakCount: count });
  // A break is known by the row above it (ECMA-376 part 1, 18.3.1.3).
  breaks.append(...pagesFrom.map((row) => element(worksheet, 'brk', { id: String(row - 1), max: '16383', man: '1' })));
  root.insertBefore(breaks, behind(behindPageSetup.slice(1)));
}

const parse = (xml: string): Document => new DOMParser().parseFromString(xml, 'application/xml');

/** The grid's errors as ECMA-376 part 1, 18.18.11 (ST_CellType `e`) and Excel know them. */
const errorCodes: Readonly<Record<string, string>> = {
  '#ERROR': '#VALUE!',
  '#N/A': '#N/A',
  '#NUM!': '#NUM!',
  '#DIV/0!': '#DIV/0!',
  '#NAME?': '#NAME?',
  '#NULL!': '#NULL!',
  '#REF': '#REF!',
};

/** The grid writes errors as text, which other formulas would then read as a good value. */
function mendErrors(worksheet: Document, strings: readonly string[]): void {
  for (const cell of worksheet.querySelectorAll('c[t="s"], c[t="str"]')) {
    const value = cell.querySelector('v');
    const shown = cell.getAttribute('t') === 's' ? strings[Number(value?.textContent)] : value?.textContent?.trim();
    const code = errorCodes[shown ?? ''];
    if (!value || code === undefined) continue;
    cell.setAttribute('t', 'e');
    value.textContent = code;
  }
}

interface Book {
  readonly model: Model;
  readonly sheetNames: readonly string[];
  readonly strings: readonly string[];
}

const ofTheBudget = (name: string | undefined): Sheet | undefined => budgetWorkbook().sheets.find((sheet) => sheet.name === name);

/** The last row to print where formulas below it show nothing yet and would be printed as blank pages. */
function lastShownRow({ getters }: Model, sheetId: string): number | undefined {
  const positions = getters.getEvaluatedCellsPositions(sheetId);
  const last = (rows: readonly number[]): number => rows.reduce((most, row) => Math.max(most, row), 0);
  const filled = last(positions.map(({ row }) => row));
  const shown = last(positions.filter((position) => getters.getEvaluatedCell(position).formattedValue !== '').map(({ row }) => row));
  const underChart = getters.getFigures(sheetId).some(({ row }) => row > shown);
  return shown < filled && !underChart ? shown + 1 : undefined;
}

/** What of each sheet is printed, and which rows stand at the top of each of its pages (ECMA-376 part 1, 18.2.5). */
function namePrintRanges(workbook: Document, { model, sheetNames }: Book): void {
  const names = element(workbook, 'definedNames', {});
  sheetNames.forEach((name, k) => {
    const sheet = ofTheBudget(name);
    if (!sheet) return;
    const prefix = `'${name.replaceAll("'", "''")}'!`;
    const define = (kind: string, range: string): void => {
      const defined = element(workbook, 'definedName', { name: `_xlnm.${kind}`, localSheetId: String(k) });
      defined.textContent = prefix + range;
      names.append(defined);
    };
    const [last, row] = [helpers.numberToLetters(sheet.columns.length - 1), lastShownRow(model, model.getters.getSheetIds()[k] as string)];
    define('Print_Area', row === undefined ? `$A:$${last}` : `$A$1:$${last}$${row}`);
    if (sheet.freeze?.rows) define('Print_Titles', `$1:$${sheet.freeze.rows}`);
  });
  if (names.childElementCount > 0) workbook.querySelector('workbook > sheets')?.after(names);
}

function mendWorksheet(worksheet: Document, strings: readonly string[], sheet: Sheet | undefined): void {
  mendErrors(worksheet, strings);
  // The grid writes an empty error style where a list only advises; the schema has none.
  for (const rule of worksheet.querySelectorAll('dataValidation[errorStyle=""]')) rule.removeAttribute('errorStyle');
  setUpPage(worksheet, sheet);
}

function mended(path: string, xml: string, book: Book): string {
  const { sheetNames, strings } = book;
  const number = /^xl\/worksheets\/sheet(\d+)\.xml$/.exec(path)?.[1];
  if (path !== 'xl/workbook.xml' && number === undefined) return xml;
  const part = parse(xml);
  if (number === undefined) namePrintRanges(part, book);
  else mendWorksheet(part, strings, ofTheBudget(sheetNames[Number(number)]));
  return new XMLSerializer().serializeToString(part);
}

type Files = Awaited<ReturnType<Model['exportXLSX']>>['files'];

function stringsOf(files: Files): readonly string[] {
  const shared = files.find((file) => file.path === 'xl/sharedStrings.xml');
  if (!shared || !('content' in shared)) return [];
  return [...parse(shared.content).querySelectorAll('si')].map((entry) => entry.textContent ?? '');
}

const bytesOf = (dataUrl: string): Uint8Array => Uint8Array.from(atob(dataUrl.split(',')[1] ?? ''), (letter) => letter.charCodeAt(0));

/**
 * The workbook for any spreadsheet program. Formulas that every program knows stay formulas; ours become the values they
 * have now, since no other program has our functions.
 */
export async function toXlsx(model: Model): Promise<Uint8Array<ArrayBuffer>> {
  const { files } = await model.exportXLSX();
  const sheetNames = model.getters.getSheetIds().map((id) => model.getters.getSheetName(id));
  const book = { model, sheetNames, strings: stringsOf(files) };
  const entries = files.map((file): [string, Uint8Array] => [
    file.path,
    'imageSrc' in file ? bytesOf(file.imageSrc) : strToU8(mended(file.path, file.content, book)),
  ]);
  return zipSync(Object.fromEntries(entries));
}
