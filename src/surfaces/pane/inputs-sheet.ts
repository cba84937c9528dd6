import { howKnown } from '../../budget/item.ts';
import { type BudgetItem, itemNamed } from '../../budget/items.ts';
import { REFUSED } from '../../core/parameters.ts';
import { blockOf, cellAt } from './addresses.ts';
import type { CellContent, HostCell, Place, SpreadsheetHost } from './spreadsheet-host.ts';
import { refusalIn } from './survey-units.ts';

export const inputsSheetName = 'Inputs';

/** Where an item stands in the workbook, and what its cell holds. */
export interface Entry extends Place {
  readonly cell: HostCell;
  /** Where it is marked how the user came by the value; none where the sheet has no such column. */
  readonly mark?: Marked;
}

interface Marked {
  readonly address: string;
  readonly value: string;
}

export type Inputs = ReadonlyMap<BudgetItem, Entry>;

const blank: HostCell = { value: null };

type Rows = readonly (readonly HostCell[])[];

/** The column with the items' names: that with most of them, wherever it has been moved. */
function nameColumn(rows: Rows): number {
  const counts = (rows[0] ?? []).map((_, column) => rows.filter((row) => itemNamed(row[column]?.value)).length);
  return counts.indexOf(Math.max(...counts));
}

/** The column in which it is marked how each item is known, by its heading. */
const markColumn = (rows: Rows): number => Math.max(-1, ...rows.map((row) => row.findIndex(({ value }) => value === howKnown)));

/** All that reading the budget's sheets asks of a host. */
export type Readable = Pick<SpreadsheetHost, 'sheetNames' | 'read' | 'usedRange'>;

/** The items of one sheet, found by their names, each with the cell to its right. */
async function itemsOf(host: Readable, sheet: string): Promise<Inputs> {
  const inputs = new Map<BudgetItem, Entry>();
  const used = blockOf((await host.usedRange(sheet)) ?? '');
  if (!used) return inputs;
  const rows = await host.read({ sheet, address: `A1:${cellAt(used.bottom, used.right)}` });
  const [column, marks] = [nameColumn(rows), markColumn(rows)];
  rows.forEach((row, r) => {
    const item = itemNamed(row[column]?.value);
    if (!item || inputs.has(item)) return;
    const mark = marks < 0 ? {} : { mark: { address: cellAt(r, marks), value: String(row[marks]?.value ?? '') } };
    inputs.set(item, { sheet, address: cellAt(r, column + 1), cell: row[column + 1] ?? blank, ...mark });
  });
  return inputs;
}

/** `Inputs (2)`: how the budget's sheet is named beside a sheet of the user's own that has its name. */
const inputsName = new RegExp(`^${inputsSheetName}( \\(\\d+\\))?$`, 'i');

/** The budget's inputs: the first sheet of that name that holds items; undefined where the workbook has none. */
export async function readInputsSheet(host: Readable): Promise<Inputs | undefined> {
  for (const sheet of (await host.sheetNames()).filter((name) => inputsName.test(name))) {
    const inputs = await itemsOf(host, sheet);
    if (inputs.size > 0) return inputs;
  }
  return undefined;
}

/** What a budget is known by: each stands right of its label, above the items. */
export const namesOfBudget = ['Herd', 'Prepared by', 'Currency sign'] as const;
const above = { rows: 12, columns: 12 };

/** Those of the names that the sheet with the inputs has room for. */
export async function readNames(host: Readable, sheet: string): Promise<ReadonlyMap<string, Entry>> {
  const rows = await host.read({ sheet, address: `A1:${cellAt(above.rows, above.columns)}` });
  const found = rows.flatMap((row, r) =>
    row.flatMap(({ value }, c): [string, Entry][] => {
      const cell = row[c + 1];
      return cell && namesOfBudget.some((label) => label === value) ? [[String(value), { sheet, address: cellAt(r, c + 1), cell }]] : [];
    }),
  );
  return new Map(found);
}

export const isBlankCell = ({ value, formula, error }: HostCell): boolean =>
  formula === undefined && error === undefined && (value === null || value === '');

/** What a cell holds, as an argument of a function: an error becomes one that names itself. */
export const asArgument = ({ value, error }: HostCell): unknown => (error === undefined ? value : { code: String(value), message: error });

/** Why what stands in an item's cell cannot be used, or undefined where it can. */
export function refusedCell(item: BudgetItem, cell: HostCell): string | undefined {
  const content = asArgument(cell);
  return isBlankCell(cell) || item.parameter.read(content) !== REFUSED ? undefined : refusalIn(item, content);
}

/** Writes items into the sheet, each into its own cell. */
export async function writeInputs(
  host: SpreadsheetHost,
  inputs: Inputs,
  values: readonly (readonly [BudgetItem, CellContent])[],
): Promise<void> {
  const fillings = values.map(([item, value]) => {
    const entry = inputs.get(item);
    if (!entry) throw new Error(`The ${inputsSheetName} sheet has no row named ${item.name}: write that name below the others.`);
    return { sheet: entry.sheet, address: entry.address, contents: [[value]] };
  });
  await host.write(fillings);
}
