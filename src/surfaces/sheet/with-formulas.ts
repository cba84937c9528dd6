import { Model, type WorkbookData } from '@odoo/o-spreadsheet';
import { nativeWorkbook, readMeName, readMeSheet, type Typed } from '../../native/index.ts';
import { budgetWorkbook, herdsName } from '../../workbook/index.ts';
import type { Sheet } from '../../workbook/model.ts';
import { readInputsSheet, readNames } from '../pane/inputs-sheet.ts';
import { fileName, herdName } from './files.ts';
import { tool } from './keeping/copy.ts';
import { reading } from './reading.ts';
import { toGrid } from './to-grid.ts';
import { valuesOnly } from './values-only.ts';
import { type Exported, toXlsx } from './xlsx.ts';

/** What is typed as text stays text, whatever it would be read as. */
const asText = (value: unknown): string | number | boolean =>
  typeof value === 'number' || typeof value === 'boolean' ? value : /^[='+\d.-]/.test(String(value)) ? `'${value}` : String(value);

interface Read extends Typed {
  /** Where they stand. */
  readonly sheet: string;
  readonly workedOut: readonly string[];
}

/** What stands in Inputs, as it was typed; a formula of the user's own as what it gives. */
async function readTyped(model: Model): Promise<Read> {
  const host = reading(() => model);
  const inputs = await readInputsSheet(host);
  const [first] = inputs?.values() ?? [];
  if (!inputs || !first) throw new Error('this workbook has no Inputs sheet to make formulas of');
  const given = [...inputs].filter(([, { cell }]) => cell.value !== null && cell.value !== '');
  const names = await readNames(host, first.sheet);
  const herd = herdName(model);
  return {
    herd: herd === '–' ? '' : String(asText(herd)),
    names: Object.fromEntries([...names].map(([label, { cell }]) => [label, cell.value === null ? '' : String(asText(cell.value))])),
    sheet: first.sheet,
    values: Object.fromEntries(given.map(([{ name }, { cell }]) => [name, asText(cell.value)])),
    known: Object.fromEntries(given.map(([{ name }, entry]) => [name, entry.mark?.value ?? ''])),
    workedOut: given.filter(([, { cell }]) => cell.formula !== undefined).map(([{ name }]) => name),
  };
}

type Numbered = 'styles' | 'formats' | 'borders';

/** Two workbooks in one, the sheets of the first before those of the second. Looks are known by numbers, which must not meet. */
function together(first: WorkbookData, second: WorkbookData): WorkbookData {
  const above = (kind: Numbered): number => Math.max(0, ...Object.keys(second[kind]).map(Number));
  const both = (kind: Numbered) => ({
    ...second[kind],
    ...Object.fromEntries(Object.entries(first[kind]).map(([number, look]) => [Number(number) + above(kind), look])),
  });
  const raised = (sheet: WorkbookData['sheets'][number], kind: Numbered) =>
    Object.fromEntries(Object.entries(sheet[kind]).map(([zone, number]) => [zone, number + above(kind)]));
  const sheets = first.sheets.map((sheet) => ({
    ...sheet,
    id: `formulas-${sheet.id}`,
    styles: raised(sheet, 'styles'),
    formats: raised(sheet, 'formats'),
    borders: raised(sheet, 'borders'),
  }));
  return {
    ...second,
    sheets: [...sheets, ...second.sheets],
    styles: both('styles'),
    formats: both('formats') as WorkbookData['formats'],
    borders: both('borders'),
  };
}

/** One row lower, as every sheet of values stands below its sentence. */
const lowered = (sheet: Sheet): Sheet => ({
  ...sheet,
  ...(sheet.freeze && { freeze: { ...sheet.freeze, rows: sheet.freeze.rows + 1 } }),
  pagesFrom: (sheet.pagesFrom ?? []).map((row) => row + 1),
});

/**
 * The open budget as a spreadsheet file that recalculates anywhere: what was typed, every figure of the plan in native formulas,
 * and the other sheets as values.
 */
export async function exportWithFormulas(model: Model, at = new Date()): Promise<Exported> {
  const typed = await readTyped(model);
  const native = nativeWorkbook(typed);
  const on = at.toLocaleString('en-GB', { dateStyle: 'long', timeStyle: 'short' });
  const sentence = `Values only, worked out on ${on}: this sheet does not follow what is changed on Inputs here.`;
  const leftOut = model.getters.getSheetIdByName(herdsName) === undefined ? [] : [herdsName];
  const values = valuesOnly(model, sentence, new Set([typed.sheet, ...leftOut]), [readMeName, ...native.sheets.map(({ name }) => name)]);
  const about = {
    herd: typed.herd.replace(/^'/, ''),
    on,
    version: tool,
    valueSheets: [...values.names.values()],
    workedOut: typed.workedOut,
    leftOut,
  };
  const sheets = [readMeSheet(about), ...native.sheets];
  const data = together(toGrid({ sheets }, model.getters.getLocale()), values.data);
  const planned = new Map(sheets.map((sheet) => [sheet.name, sheet]));
  for (const sheet of budgetWorkbook().sheets) {
    const name = values.names.get(sheet.name);
    if (name !== undefined) planned.set(name, lowered(sheet));
  }
  const name = fileName(model, 'xlsx', { on: at, kind: 'bedding with formulas' });
  return { name, content: await toXlsx(new Model(data), { planned, title: name.replace(/\.xlsx$/, ''), recalculates: true }) };
}
