import { type BudgetItem, itemNamed } from '../../budget/items.ts';
import { blockOf, cellAt } from './addresses.ts';
import type { Readable } from './inputs-sheet.ts';
import type { HostCell } from './spreadsheet-host.ts';

/** A figure that another sheet has for an item, which a press puts into the plan. */
export interface Offer {
  readonly value: number;
  /** What it is, with the value as the user reads it. */
  readonly says: (value: string) => string;
  readonly press: string;
  /** It was measured on the plant itself: the item is marked so. */
  readonly isMeasured?: true;
}
export type Offers = ReadonlyMap<BudgetItem, Offer>;

const DIGITS = 3;

/** No more digits than a size deserves, and never less of it. */
function roundedUp(value: number): number {
  const unit = 10 ** (Math.floor(Math.log10(value)) - DIGITS + 1);
  return Number((Math.ceil(value / unit - 1e-9) * unit).toPrecision(DIGITS + 1));
}

/** A table of items on a sheet, found by its headings, and what each of its rows offers. */
interface Table {
  readonly sheet: RegExp;
  readonly first: string;
  readonly column: string;
  readonly offer: (value: number, row: readonly HostCell[]) => Offer | undefined;
}

const tables: readonly Table[] = [
  {
    sheet: /^Size( \(\d+\))?$/i,
    first: 'what',
    column: 'needed',
    offer: (needed) =>
      needed > 0
        ? {
            value: roundedUp(needed),
            says: (value) => `The worst month asks for ${value}, its margin included: see Size.`,
            press: 'Put the needed size into the plan',
          }
        : undefined,
  },
  {
    sheet: /^Acceptance( \(\d+\))?$/i,
    first: 'item',
    column: 'measured',
    // What the sheet itself does not call right is not offered.
    offer: (measured, row) =>
      row.some(({ value }) => String(value ?? '').startsWith('OK'))
        ? {
            value: Number(measured.toPrecision(DIGITS + 1)),
            says: (value) => `Measured on the plant: ${value}: see Acceptance.`,
            press: 'Put the measured value into the plan',
            isMeasured: true,
          }
        : undefined,
  },
];

async function offersOf(host: Readable, { sheet: called, first, column, offer }: Table): Promise<[BudgetItem, Offer][]> {
  const sheet = (await host.sheetNames()).find((name) => called.test(name));
  const used = sheet === undefined ? undefined : blockOf((await host.usedRange(sheet)) ?? '');
  if (sheet === undefined || !used) return [];
  const rows = await host.read({ sheet, address: `A1:${cellAt(used.bottom, used.right)}` });
  const head = rows.findIndex((cells) => cells[0]?.value === first && cells.some(({ value }) => value === column));
  const at = rows[head]?.findIndex(({ value }) => value === column) ?? -1;
  return rows.slice(head + 1).flatMap((cells): [BudgetItem, Offer][] => {
    const [item, value] = [itemNamed(cells[0]?.value), cells[at]?.value];
    const offered = item && typeof value === 'number' ? offer(value, cells) : undefined;
    return item && offered ? [[item, offered]] : [];
  });
}

/** What the sheets Size and Acceptance offer the plan; nothing where the workbook has no such sheet. */
export async function readOffers(host: Readable): Promise<Offers> {
  const found: [BudgetItem, Offer][] = [];
  for (const table of tables) found.push(...(await offersOf(host, table)));
  return new Map(found);
}
