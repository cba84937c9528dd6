import { warningMark } from '../../budget/warnings.ts';
import { blockOf, cellAt } from './addresses.ts';
import type { CellContent, HostCell, Place, SpreadsheetHost } from './spreadsheet-host.ts';

export interface FoundWarning {
  readonly key: string;
  readonly value: string | number | boolean;
  readonly meaning: string;
  readonly place: Place;
}

export interface Found {
  readonly warnings: readonly FoundWarning[];
  readonly failing: readonly { readonly words: string; readonly place: Place }[];
  readonly hasChecks: boolean;
}

const holds = 'OK';
/** What the workbook says of a check that the figures given do not reach. */
const notReached = 'not worked out';
const text = (value: CellContent | undefined): string => (typeof value === 'string' ? value : '');

/** A row of a BUDGET.HERD table whose key says that it is a warning. */
function warningsIn(row: readonly HostCell[], placeOf: (column: number) => Place): readonly FoundWarning[] {
  return row.flatMap(({ value: key }, k) => {
    const [figure, , meaning] = [row[k + 1], row[k + 2], row[k + 3]];
    if (!text(key).startsWith(warningMark) || text(meaning?.value) === '') return [];
    return [{ key: text(key), value: figure?.value ?? '', meaning: text(meaning?.value), place: placeOf(k) }];
  });
}

/** What the workbook's own cells warn of and which of its checks do not hold. */
export async function scanWorkbook(host: SpreadsheetHost): Promise<Found> {
  const warnings: FoundWarning[] = [];
  const failing: { words: string; place: Place }[] = [];
  const sheets = await host.sheetNames();
  for (const sheet of sheets) {
    const address = await host.usedRange(sheet);
    const corner = address && blockOf(address);
    if (!corner) continue;
    const rows = await host.read({ sheet, address });
    const placeIn =
      (row: number) =>
      (column: number): Place => ({ sheet, address: cellAt(corner.top + row, corner.left + column) });
    for (const [r, row] of rows.entries()) warnings.push(...warningsIn(row, placeIn(r)));
    if (sheet === 'Checks') failing.push(...failuresIn(rows, placeIn));
  }
  return { warnings, failing, hasChecks: sheets.includes('Checks') };
}

/** The cells of the column that reads OK where a check holds, and something else where it does not. */
function failuresIn(
  rows: readonly (readonly HostCell[])[],
  placeIn: (row: number) => (column: number) => Place,
): readonly { words: string; place: Place }[] {
  const columns = new Set(
    rows.flatMap((row) => row.flatMap(({ value, formula }, k) => (formula !== undefined && value === holds ? [k] : []))),
  );
  return rows.flatMap((row, r) =>
    row.flatMap(({ value, formula, error }, k) => {
      if (!columns.has(k) || formula === undefined || value === holds || value === notReached) return [];
      const label = row
        .slice(0, k)
        .map((cell) => text(cell.value))
        .find((words) => words !== '');
      return [{ words: `${label ? `${label}: ` : ''}${error ?? String(value)}`, place: placeIn(r)(k) }];
    }),
  );
}
