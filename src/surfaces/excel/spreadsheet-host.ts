import { budgetWorkbook } from '../../workbook/index.ts';
import { type Block, blockOf, cellAt } from '../pane/addresses.ts';
import type { CellContent, Filling, HostCell, Place, SpreadsheetHost } from '../pane/spreadsheet-host.ts';
import { addressOf } from './references.ts';
import { inExcel } from './trouble.ts';
import { writeWorkbook } from './write-workbook.ts';

/** What the host needs of the page that it is on. */
export interface Page {
  ask(question: string): Promise<boolean>;
  tell(sentence: string): void;
}

/** Excel's codes that are about Excel itself; a function's own sentence stays in its cell, where Excel shows it. */
const sentences: Readonly<Record<string, string>> = {
  '#BUSY!': 'Excel is still working this out.',
  '#NAME?':
    'Excel does not know a name in this formula. If it is one of the BEDDING functions, they have not loaded yet: close the workbook and open it again.',
  '#SPILL!': 'The table has no room: clear the cells below and to the right of the formula.',
  '#CONNECT!': 'Excel could not reach the add-in’s functions.',
};

/** A block with more cells than this is read only as far as the sheet is filled, so that a whole column can be selected. */
const MANY_CELLS = 10_000;

type Placed = Pick<Excel.Range, 'rowIndex' | 'columnIndex' | 'rowCount' | 'columnCount'>;
const PLACED = 'rowIndex, columnIndex, rowCount, columnCount';
const blockAt = ({ rowIndex, columnIndex, rowCount, columnCount }: Placed): Block => ({
  top: rowIndex,
  left: columnIndex,
  bottom: rowIndex + rowCount - 1,
  right: columnIndex + columnCount - 1,
});

const sheetOf = (context: Excel.RequestContext, name: string): Excel.Worksheet => context.workbook.worksheets.getItem(name);
const isFormula = (content: unknown): content is string => typeof content === 'string' && content.startsWith('=');

async function readable(sheet: Excel.Worksheet, address: string): Promise<Excel.Range | undefined> {
  const { top, left, bottom, right } = blockOf(address) as Block;
  if ((bottom - top + 1) * (right - left + 1) <= MANY_CELLS) return sheet.getRange(address);
  const used = sheet.getUsedRangeOrNullObject(true).load(PLACED);
  await sheet.context.sync();
  if (used.isNullObject) return undefined;
  const filled = blockAt(used);
  const cut = { top, left, bottom: Math.min(bottom, filled.bottom), right: Math.min(right, filled.right) };
  return cut.bottom < top || cut.right < left ? undefined : sheet.getRange(addressOf(cut));
}

/** The addresses of those cells whose formula is that of another cell which spills into them. */
async function spilledInto(
  sheet: Excel.Worksheet,
  { top, left }: Block,
  formulas: readonly (readonly unknown[])[],
): Promise<ReadonlySet<string>> {
  const seen = new Set<string>();
  const candidates: { readonly at: string; readonly parent: Excel.Range }[] = [];
  for (const [r, row] of formulas.entries()) {
    for (const [c, formula] of row.entries()) {
      if (!isFormula(formula)) continue;
      const at = cellAt(top + r, left + c);
      if (seen.has(formula)) candidates.push({ at, parent: sheet.getRange(at).getSpillParentOrNullObject().load(PLACED) });
      seen.add(formula);
    }
  }
  if (candidates.length > 0) await sheet.context.sync();
  return new Set(candidates.filter(({ at, parent }) => !parent.isNullObject && addressOf(blockAt(parent)) !== at).map(({ at }) => at));
}

async function readBlock(context: Excel.RequestContext, { sheet: name, address }: Place): Promise<HostCell[][]> {
  const sheet = sheetOf(context, name);
  const range = (await readable(sheet, address))?.load('values, formulas, valueTypes, rowIndex, columnIndex, hasSpill');
  if (!range) return [];
  await context.sync();
  const corner = { ...(blockOf(address) as Block), top: range.rowIndex, left: range.columnIndex };
  const spilled = range.hasSpill === false ? new Set() : await spilledInto(sheet, corner, range.formulas);
  return range.values.map((row, r) =>
    row.map((value: string | number | boolean, c): HostCell => {
      const type = range.valueTypes[r]?.[c];
      const formula = range.formulas[r]?.[c] as unknown;
      const own = isFormula(formula) && !spilled.has(cellAt(corner.top + r, corner.left + c));
      return {
        value: type === 'Empty' ? null : value,
        ...(own && { formula }),
        ...(type === 'Error' && { error: sentences[String(value)] ?? String(value) }),
      };
    }),
  );
}

/** Text goes in as text: without its apostrophe, Excel would make a date of `1/2` and a number of `007`. */
function excelContent(content: CellContent): string | number | boolean {
  if (content === null) return '';
  if (typeof content !== 'string' || isFormula(content) || content === '') return content;
  const staysText = /^\p{L}\P{N}*$/u.test(content) && !/^(true|false)$/i.test(content);
  return staysText ? content : `'${content}`;
}

async function fill(context: Excel.RequestContext, fillings: readonly Filling[]): Promise<void> {
  const ranges = fillings.map(({ sheet, address, contents }) => {
    const { top, left } = blockOf(address) as Block;
    const block = { top, left, bottom: top + contents.length - 1, right: left + (contents[0]?.length ?? 1) - 1 };
    return sheetOf(context, sheet).getRange(addressOf(block)).load('numberFormat');
  });
  await context.sync();
  ranges.forEach((range, k) => {
    const { contents } = fillings[k] as Filling;
    // In a cell formatted as text, Excel would keep a formula or number as text.
    const freed = contents.map((row, r) =>
      row.map((content, c) =>
        range.numberFormat[r]?.[c] === '@' && (isFormula(content) || typeof content === 'number') ? 'General' : null,
      ),
    );
    if (freed.some((row) => row.some((format) => format !== null))) range.numberFormat = freed;
    range.formulas = contents.map((row) => row.map(excelContent));
  });
  await context.sync();
}

async function behind(context: Excel.RequestContext, { sheet, address }: Place) {
  const cell = sheetOf(context, sheet).getRange(address).load('formulas');
  const parent = cell.getSpillParentOrNullObject().load(`formulas, ${PLACED}`);
  await context.sync();
  const [found, at] = parent.isNullObject ? [cell.formulas, address] : [parent.formulas, addressOf(blockAt(parent))];
  const formula = found[0]?.[0] as unknown;
  return isFormula(formula) ? { address: at, formula } : undefined;
}

async function selected(context: Excel.RequestContext) {
  const range = context.workbook.getSelectedRange().load(PLACED);
  const active = context.workbook.getActiveCell().load(PLACED);
  const sheet = context.workbook.worksheets.getActiveWorksheet().load('name');
  await context.sync();
  return { sheet: sheet.name, address: addressOf(blockAt(range)), active: addressOf(blockAt(active)) };
}

type Registered = OfficeExtension.EventHandlerResult<unknown>;

/** Without its events the pane still works when it is used, so a failure to listen is not worth a sentence. */
function listen(register: (workbook: Excel.Workbook) => readonly Registered[]): () => void {
  const registered = inExcel(async (context) => {
    const results = register(context.workbook);
    await context.sync();
    return results;
  }).catch(() => []);
  return () =>
    void registered.then(async (results) => {
      for (const result of results) result.remove();
      await results[0]?.context.sync();
    });
}

/** The pane's view of Excel. */
export function excelHost({ ask, tell }: Page, locale: string): SpreadsheetHost {
  return {
    name: 'Excel',
    locale: () => locale,
    // Excel does not tell an add-in how its formulas are typed.
    typed: (formula) => formula,
    sheetNames: () =>
      inExcel(async (context) => {
        const sheets = context.workbook.worksheets.load('items/name');
        await context.sync();
        return sheets.items.map(({ name }) => name);
      }),
    selection: () => inExcel(selected),
    onSelection: (listener) => {
      const heard = async () => listener();
      return listen(({ worksheets, onSelectionChanged }) => [onSelectionChanged.add(heard), worksheets.onActivated.add(heard)]);
    },
    onChange: (listener) => {
      const heard = async () => listener();
      return listen(({ worksheets: { onChanged, onCalculated, onAdded, onDeleted } }) => [
        onChanged.add(heard),
        onCalculated.add(heard),
        onAdded.add(heard),
        onDeleted.add(heard),
      ]);
    },
    read: (from) => inExcel((context) => readBlock(context, from)),
    usedRange: (sheet) =>
      inExcel(async (context) => {
        const used = sheetOf(context, sheet).getUsedRangeOrNullObject(true).load(PLACED);
        await context.sync();
        return used.isNullObject ? undefined : addressOf(blockAt(used));
      }),
    formulaBehind: (cell) => inExcel((context) => behind(context, cell)),
    write: (fillings) => inExcel((context) => fill(context, fillings)),
    select: ({ sheet, address }) =>
      inExcel(async (context) => {
        const target = sheetOf(context, sheet);
        target.activate();
        target.getRange(address).select();
        await context.sync();
      }),
    async startBudget(inputs) {
      const written = await writeWorkbook(budgetWorkbook({ blank: inputs === 'blank' }), ask);
      if (written) tell(written.sentence);
    },
  };
}
