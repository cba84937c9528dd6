import { helpers, type Model } from '@odoo/o-spreadsheet';
import { strToU8, zipSync } from 'fflate';
import { budgetWorkbook } from '../../workbook/index.ts';
import type { Sheet } from '../../workbook/model.ts';
import { fileName } from './files.ts';
import { escaped } from './opening/xml.ts';
import { element, setUpPage } from './xlsx-page.ts';

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
  /** What the file is called, without its ending: the herd and the day. */
  readonly title: string;
  /** When, in words. */
  readonly made: string;
  readonly sheetNames: readonly string[];
  readonly strings: readonly string[];
  /** The sheets whose print is planned, by their name. */
  readonly planned: ReadonlyMap<string, Sheet>;
  /** Every formula in it is one that other programs know. */
  readonly recalculates: boolean;
}

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
function namePrintRanges(workbook: Document, { model, sheetNames, planned }: Book): void {
  const names = element(workbook, 'definedNames', {});
  sheetNames.forEach((name, k) => {
    const sheet = planned.get(name);
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

/** Whoever opens it works every formula out anew: the grid takes numbers for equal that differ by less than 2e-16 (18.2.2). */
function mendBook(workbook: Document, book: Book): void {
  namePrintRanges(workbook, book);
  if (!book.recalculates) return;
  const sheets = workbook.querySelector('workbook > sheets');
  (workbook.querySelector('workbook > definedNames') ?? sheets)?.after(element(workbook, 'calcPr', { fullCalcOnLoad: '1' }));
}

/** The sheets on which functions of ours stand, of which this file holds the values alone. */
const sheetsOfOurs = ({ getters }: Model): readonly string[] =>
  getters
    .getSheetIds()
    .filter((id) =>
      Object.values(getters.getCells(id)).some(
        (cell) => cell.isFormula && /BEDDING\./i.test(cell.compiledFormula.toFormulaString(getters)),
      ),
    )
    .map((id) => getters.getSheetName(id));

const isFilled = (row: Element): boolean => row.querySelector('c > v, c > f, c > is') !== null;

/** Says in the first free row what of the file stands still. */
function sayWhatStandsStill(worksheet: Document, { model, sheetNames, made }: Book): void {
  const still = sheetsOfOurs(model);
  const data = worksheet.querySelector('sheetData');
  if (still.length === 0 || !data) return;
  const rows = new Map([...data.children].map((row) => [Number(row.getAttribute('r')), row]));
  let number = 2;
  for (let row = rows.get(number); row && isFilled(row); row = rows.get(number)) number++;
  let row = rows.get(number);
  if (!row) {
    row = element(worksheet, 'row', { r: String(number) });
    data.insertBefore(row, [...rows].find(([other]) => other > number)?.[1] ?? null);
  }
  const address = `A${number}`;
  const cell = row.querySelector(`c[r="${address}"]`) ?? row.insertBefore(element(worksheet, 'c', { r: address }), row.firstChild);
  cell.setAttribute('t', 'inlineStr');
  const text = element(worksheet, 't', {});
  const where = still.length > 4 ? `${still.length} of ${sheetNames.length} sheets` : still.join(', ');
  text.textContent = `Values only, of ${made}, where BEDDING functions stood (${where}). Export with formulas makes a copy that recalculates.`;
  const string = element(worksheet, 'is', {});
  string.append(text);
  cell.append(string);
}

/** Here a value of ours stands where the page has a formula: what counts and colours formulas typed over would take it for one. */
function forgetTypedOver(worksheet: Document): void {
  const asks = ({ textContent }: Element): boolean => /ISFORMULA\(/.test(textContent ?? '');
  for (const formula of [...worksheet.querySelectorAll('c > f')].filter(asks)) {
    formula.parentElement?.removeAttribute('cm');
    formula.remove();
  }
  for (const formula of [...worksheet.querySelectorAll('cfRule > formula')].filter(asks)) {
    const rule = formula.parentElement;
    const rules = rule?.parentElement;
    rule?.remove();
    if (rules?.childElementCount === 0) rules.remove();
  }
}

function mendWorksheet(worksheet: Document, name: string, book: Book): void {
  const { strings, planned, title } = book;
  mendErrors(worksheet, strings);
  forgetTypedOver(worksheet);
  // The grid writes an empty error style where a list only advises; the schema has none.
  for (const rule of worksheet.querySelectorAll('dataValidation[errorStyle=""]')) rule.removeAttribute('errorStyle');
  setUpPage(worksheet, planned.get(name), title);
  if (name === book.sheetNames[0] && !book.recalculates) sayWhatStandsStill(worksheet, book);
}

/** A text that the grid marks as such by an apostrophe before it; the file has its own mark for a text. */
function unmarkTexts(strings: Document): void {
  for (const text of strings.getElementsByTagName('t')) text.textContent = (text.textContent ?? '').replace(/^'/, '');
}

const core = 'docProps/core.xml';
const packages = 'http://schemas.openxmlformats.org/package/2006';

/** What the file says of itself (ECMA-376 part 2, 8.3): its title and the time, by the names of Dublin Core. */
const properties = (title: string, at: Date): string => `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<cp:coreProperties xmlns:cp="${packages}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"><dc:title>${escaped(title)}</dc:title><dcterms:created xsi:type="dcterms:W3CDTF">${at.toISOString().slice(0, 19)}Z</dcterms:created></cp:coreProperties>`;

/** Adds an entry to a list of parts or relationships, whose entries know no other namespace. */
function list(part: Document, name: string, attributes: Record<string, string>): void {
  const entry = part.createElementNS(part.documentElement.namespaceURI, name);
  for (const [key, value] of Object.entries(attributes)) entry.setAttribute(key, value);
  part.documentElement.append(entry);
}

const mends: Readonly<Record<string, (part: Document, book: Book) => void>> = {
  'xl/workbook.xml': mendBook,
  'xl/sharedStrings.xml': unmarkTexts,
  '[Content_Types].xml': (part) =>
    list(part, 'Override', { ContentType: 'application/vnd.openxmlformats-package.core-properties+xml', PartName: `/${core}` }),
  '_rels/.rels': (part) =>
    list(part, 'Relationship', { Id: 'properties', Type: `${packages}/relationships/metadata/core-properties`, Target: core }),
};

function mended(path: string, xml: string, book: Book): string {
  const number = /^xl\/worksheets\/sheet(\d+)\.xml$/.exec(path)?.[1];
  const mend = mends[path];
  if (!mend && number === undefined) return xml;
  const part = parse(xml);
  if (mend) mend(part, book);
  else mendWorksheet(part, book.sheetNames[Number(number)] ?? '', book);
  return new XMLSerializer().serializeToString(part);
}

type Files = Awaited<ReturnType<Model['exportXLSX']>>['files'];

function stringsOf(files: Files): readonly string[] {
  const shared = files.find((file) => file.path === 'xl/sharedStrings.xml');
  if (!shared || !('content' in shared)) return [];
  return [...parse(shared.content).querySelectorAll('si')].map((entry) => entry.textContent ?? '');
}

const bytesOf = (dataUrl: string): Uint8Array => Uint8Array.from(atob(dataUrl.split(',')[1] ?? ''), (letter) => letter.charCodeAt(0));

/** A spreadsheet file to be saved. */
export interface Exported {
  readonly name: string;
  readonly content: Uint8Array<ArrayBuffer>;
}

/** What makes a file other than the budget's own. */
type Kind = Partial<Pick<Book, 'planned' | 'title' | 'recalculates'>>;

const plannedBudget = (): Book['planned'] => new Map(budgetWorkbook().sheets.map((sheet) => [sheet.name, sheet]));

/**
 * The workbook for any spreadsheet program. Formulas that every program knows stay formulas; ours become the values they
 * have now, since no other program has our functions.
 */
export async function toXlsx(
  model: Model,
  { planned = plannedBudget(), title = fileName(model, '').slice(0, -1), recalculates = false }: Kind = {},
): Promise<Uint8Array<ArrayBuffer>> {
  const { files } = await model.exportXLSX();
  const at = new Date();
  const book: Book = {
    model,
    title,
    made: at.toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' }),
    sheetNames: model.getters.getSheetIds().map((id) => model.getters.getSheetName(id)),
    strings: stringsOf(files),
    planned,
    recalculates,
  };
  const entries = files.map((file): [string, Uint8Array] => [
    file.path,
    'imageSrc' in file ? bytesOf(file.imageSrc) : strToU8(mended(file.path, file.content, book)),
  ]);
  return zipSync(Object.fromEntries([...entries, [core, strToU8(properties(book.title, at))]]), { level: 9 });
}
