import type { Workbook } from '../../workbook/model.ts';
import { inExcel } from './trouble.ts';
import { writeChart } from './write-chart.ts';
import { writeSheet } from './write-sheet.ts';

/** What was added, as a sentence that also says how to take it out again. */
export interface Written {
  readonly sheets: readonly string[];
  readonly sentence: string;
}

const list = (names: readonly string[]): string =>
  names.length < 2 ? names.join() : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** The sheets that are there, and which of them hold anything. */
async function lookAround(context: Excel.RequestContext) {
  const { worksheets } = context.workbook;
  worksheets.load('items/name');
  await context.sync();
  const used = worksheets.items.map((sheet) => sheet.getUsedRangeOrNullObject(true).load('address'));
  await context.sync();
  const names = worksheets.items.map(({ name }) => name);
  return { names, filled: names.filter((_, k) => !used[k]?.isNullObject) };
}

/** The first number that leaves all new sheets names of their own; all carry the same one, so that they stay together. */
function freeNames(wanted: readonly string[], taken: readonly string[]): ReadonlyMap<string, string> {
  const inUse = new Set(taken.map((name) => name.toLowerCase()));
  for (let number = 1; ; number++) {
    const names = wanted.map((name) => (number === 1 ? name : `${name} (${number})`));
    if (names.every((name) => !inUse.has(name.toLowerCase()))) return new Map(wanted.map((name, k) => [name, names[k] as string]));
  }
}

async function removeAgain(context: Excel.RequestContext, names: readonly string[]): Promise<void> {
  const added = names.map((name) => context.workbook.worksheets.getItemOrNullObject(name).load('name'));
  await context.sync();
  for (const sheet of added) if (!sheet.isNullObject) sheet.delete();
  await context.sync();
}

/** Adds all sheets in one batch. Where Excel fails half-way, those already added go again, and nothing else is touched. */
async function addSheets(context: Excel.RequestContext, workbook: Workbook, names: ReadonlyMap<string, string>): Promise<void> {
  const newName = (name: string): string => names.get(name) ?? name;
  const { application, worksheets } = context.workbook;
  try {
    application.suspendApiCalculationUntilNextSync();
    application.suspendScreenUpdatingUntilNextSync();
    const added = workbook.sheets.map((sheet) => worksheets.add(newName(sheet.name)));
    const rangeOf = (sheet: string, address: string) => worksheets.getItem(newName(sheet)).getRange(address);
    for (const [k, sheet] of workbook.sheets.entries()) {
      const target = added[k] as Excel.Worksheet;
      writeSheet(target, sheet, newName);
      for (const chart of sheet.charts ?? []) writeChart(target, chart, sheet.name, rangeOf);
    }
    added[0]?.activate();
    added[0]?.getRange('A1').select();
    await context.sync();
  } catch (fault) {
    await removeAgain(context, [...names.values()]).catch(() => undefined);
    throw fault;
  }
}

/**
 * Writes the workbook's sheets beside those that are there; none is overwritten, renamed or removed.
 *
 * @param ask puts a question to the user before a workbook that holds anything is touched
 * @returns undefined where the user declined
 */
export function writeWorkbook(workbook: Workbook, ask: (question: string) => Promise<boolean>): Promise<Written | undefined> {
  return inExcel(async (context) => {
    const { names: taken, filled } = await lookAround(context);
    const names = freeNames(
      workbook.sheets.map(({ name }) => name),
      taken,
    );
    const sheets = [...names.values()];
    if (filled.length > 0) {
      const holds = filled.length === 1 ? `the sheet ${list(filled)}` : `${filled.length} sheets`;
      const question = `This workbook already has ${holds} with something in it. Add ${list(sheets)} beside what is there? Nothing will be overwritten.`;
      if (!(await ask(question))) return undefined;
    }
    await addSheets(context, workbook, names);
    const sentence = `Added ${list(sheets)}. To take them out again, delete these sheets: right-click a sheet’s tab and choose Delete. Undo may not bring back every step.`;
    return { sheets, sentence };
  });
}
