import type { Place } from './spreadsheet-host.ts';

/** A block of cells, counted from 0, both ends included. */
export interface Block {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

const columnNumber = (letters: string): number =>
  [...letters.toUpperCase()].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;

/** `A`, `Z`, `AA`: a column counted from 0, as a sheet heads it. */
export function columnLetters(column: number): string {
  const rest = Math.floor(column / 26);
  return (rest > 0 ? columnLetters(rest - 1) : '') + String.fromCharCode(65 + (column % 26));
}

const cellPattern = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i;

/** `B4:D9` as a block, or undefined where it is no address. */
export function blockOf(address: string): Block | undefined {
  const corners = address.split(':').map((corner) => cellPattern.exec(corner.trim()));
  const [first, last = first] = corners;
  if (!first || !last || corners.length > 2) return undefined;
  const columns = [first, last].map((corner) => columnNumber(corner[1] as string));
  const rows = [first, last].map((corner) => Number(corner[2]) - 1);
  return { top: Math.min(...rows), left: Math.min(...columns), bottom: Math.max(...rows), right: Math.max(...columns) };
}

export const cellAt = (row: number, column: number): string => `${columnLetters(column)}${row + 1}`;

/** The address of a block whose top left cell is given. */
export function addressFrom(corner: string, rows: number, columns: number): string {
  const { top, left } = blockOf(corner) as Block;
  return rows === 1 && columns === 1 ? corner : `${cellAt(top, left)}:${cellAt(top + rows - 1, left + columns - 1)}`;
}

/** Whether the cell lies in the block. */
export function covers(address: string, cell: string): boolean {
  const [block, one] = [blockOf(address), blockOf(cell)];
  return (
    block !== undefined &&
    one !== undefined &&
    one.top >= block.top &&
    one.top <= block.bottom &&
    one.left >= block.left &&
    one.left <= block.right
  );
}

const needsNoQuotes = /^[A-Za-z_][A-Za-z0-9_]*$/;

/** A reference as a formula on `from` writes it: the sheet only where it is another one. */
export function referenceTo({ sheet, address }: Place, from?: string): string {
  if (sheet === from) return address;
  return `${needsNoQuotes.test(sheet) ? sheet : `'${sheet.replaceAll("'", "''")}'`}!${address}`;
}

/** `'Fibre and drying'!$B$4` or `B4` read on the sheet `on`; undefined where it is no reference. */
export function placeOf(reference: string, on: string): Place | undefined {
  const match = /^(?:(?:'((?:[^']|'')+)'|([^'!:]+))!)?([^!]+)$/.exec(reference.trim());
  if (!match) return undefined;
  const address = (match[3] as string).replaceAll('$', '').toUpperCase();
  return blockOf(address) && { sheet: match[1]?.replaceAll("''", "'") ?? match[2] ?? on, address };
}
