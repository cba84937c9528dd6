import { type BudgetItem, itemNamed } from '../../budget/items.ts';
import { blockOf, cellAt } from './addresses.ts';
import type { SpreadsheetHost } from './spreadsheet-host.ts';

/** What the worst month asks of the kit, by the item that plans it. */
export type NeededSizes = ReadonlyMap<BudgetItem, number>;

const sizeName = /^Size( \(\d+\))?$/i;
const DIGITS = 3;

/** No more digits than a size deserves, and never less of it. */
export function roundedUp(value: number): number {
  const unit = 10 ** (Math.floor(Math.log10(value)) - DIGITS + 1);
  return Number((Math.ceil(value / unit - 1e-9) * unit).toPrecision(DIGITS + 1));
}

/** The sizes as the sheet Size has them, its table found by its headings; none where the workbook has no such sheet. */
export async function readNeededSizes(host: SpreadsheetHost): Promise<NeededSizes> {
  const sizes = new Map<BudgetItem, number>();
  const sheet = (await host.sheetNames()).find((name) => sizeName.test(name));
  const used = sheet === undefined ? undefined : blockOf((await host.usedRange(sheet)) ?? '');
  if (sheet === undefined || !used) return sizes;
  const rows = await host.read({ sheet, address: `A1:${cellAt(used.bottom, used.right)}` });
  const head = rows.findIndex((cells) => cells[0]?.value === 'what');
  const column = rows[head]?.findIndex(({ value }) => value === 'needed') ?? -1;
  if (column < 0) return sizes;
  for (const cells of rows.slice(head + 1)) {
    const item = itemNamed(cells[0]?.value);
    const value = cells[column]?.value;
    if (item && typeof value === 'number' && value > 0) sizes.set(item, roundedUp(value));
  }
  return sizes;
}
