import { addressOf, placeOf } from '../../src/workbook/grid.ts';
import { borders, type Look, styles } from '../../src/workbook/look.ts';
import type { Sheet } from '../../src/workbook/model.ts';
import { BESIDE, heightOf, linesIn, ROW, textWidth } from '../../src/workbook/text-size.ts';
import type { Evaluated, Shown } from './evaluated.ts';

export type Measure = (text: string, type: Look) => number;

interface Zone {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function zoneOf(range: string): Zone {
  const [first = '', last = first] = range.split(':');
  const [from, to] = [placeOf(first), placeOf(last)];
  return { left: from.column, top: from.row, right: to.column, bottom: to.row };
}

const within = (column: number, row: number, { left, right, top, bottom }: Zone): boolean =>
  column >= left && column <= right && row >= top && row <= bottom;

/** What of a sheet is cut off as the grid draws it: a text runs over free cells only, a figure over none, wrapped lines stand in their row. */
export function cutOff(book: Evaluated, sheet: Sheet, measure: Measure = textWidth, figuresOnly = false): readonly string[] {
  const shown = new Map(book.cells(sheet.name).map((cell) => [cell.address, cell]));
  const merges = (sheet.merges ?? []).map(zoneOf);
  const wide = (left: number, right: number): number => sheet.columns.slice(left, right + 1).reduce((sum, width) => sum + width, 0);
  const taken = (column: number, row: number): boolean =>
    (shown.get(addressOf(column, row))?.text ?? '') !== '' || merges.some((merge) => within(column, row, merge)) || bordered(column, row);
  const bordered = (column: number, row: number): boolean => {
    const style = sheet.cells[addressOf(column, row)]?.style;
    return Boolean(style && borders[style]?.left);
  };

  const found: string[] = [];
  const complain = ({ address, text }: Shown, what: string): void => {
    found.push(`${sheet.name}!${address} ${what}: ${text}`);
  };
  for (const cell of shown.values()) {
    const { column, row } = placeOf(cell.address);
    if (cell.text === '' || column >= sheet.columns.length) continue;
    const { style, wrap, align } = sheet.cells[cell.address] ?? {};
    const type = style ? styles[style] : {};
    const figure = typeof cell.value === 'number';
    if (figuresOnly && !figure) continue;
    const merge = merges.find((zone) => within(column, row, zone));
    const zone = { ...(merge ?? { left: column, right: column, top: row, bottom: row }) };
    if (!merge && !wrap && !figure) {
      if (align === 'right') while (zone.left > 0 && !taken(zone.left - 1, row)) zone.left--;
      else while (zone.right + 1 < sheet.columns.length && !taken(zone.right + 1, row)) zone.right++;
    }
    const room = wide(zone.left, zone.right) - BESIDE;
    if (!wrap || figure) {
      const lacks = measure(cell.text, type) - room;
      if (lacks > 0) complain(cell, `lacks ${Math.ceil(lacks)} px of ${room}`);
      continue;
    }
    const lines = linesIn(cell.text, room, type);
    let high = 0;
    for (let r = zone.top; r <= zone.bottom; r++) high += sheet.heights?.[r + 1] ?? ROW;
    if (heightOf(lines, type) > high) complain(cell, `needs ${lines} lines, ${heightOf(lines, type)} px of ${high}`);
  }
  return found;
}
