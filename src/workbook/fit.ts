import { addressOf, placeOf } from './grid.ts';
import { borders, styles } from './look.ts';
import type { Format, Sheet, SheetCell } from './model.ts';
import { BESIDE, heightOf, linesIn, ROW, textWidth } from './text-size.ts';

/** A sheet whose columns are as wide as they should at least be, and whose rows have no height yet. */
export interface Draft {
  readonly columns: readonly number[];
  readonly cells: Readonly<Record<string, SheetCell>>;
  readonly merges: readonly string[];
  /** What formulas may say, by the cell in which it stands. */
  readonly says: ReadonlyMap<string, readonly string[]>;
  /** Where the answers of a formula may stand that is written in another cell. */
  readonly spilled: ReadonlySet<string>;
}

/** The pixels of columns that stand in sight beside the panel in a window of 1400: a sentence runs no further that has room enough before. */
const IN_SIGHT = 990;
const ENOUGH = 250;

type Fitted = Pick<Sheet, 'columns' | 'cells' | 'merges' | 'heights'>;

/** The widest figure that a format has to show whole: sums up to 9,999,999 with their signs, and what other units reach. */
const widest: Readonly<Record<Format, string>> = {
  text: '',
  general: '-99999.9999',
  whole: '-9,999,999',
  one: '-999,999.9',
  two: '-99,999.99',
  three: '-9,999.999',
  percent: '-9,999%',
  percent1: '-999.9%',
  money: '-€9,999,999',
  money2: '-€9,999,999.00',
  date: '31/12/2026',
};

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

const isFormula = ({ content }: SheetCell): boolean => typeof content === 'string' && content.startsWith('=');

/**
 * Makes room for every text and figure: columns are widened for what stands in one line, sentences wrap over the free cells
 * to their right, and rows are made as high as what wraps in them needs.
 */
export function fit({ columns: least, cells: written, merges: joined, says, spilled }: Draft): Fitted {
  const columns = [...least];
  const cells: Record<string, SheetCell> = { ...written };
  const merges = [...joined];
  const inMerge = new Set(joined.flatMap((range) => covered(zoneOf(range))));

  const typeOf = ({ style }: SheetCell) => (style ? styles[style] : {});
  const wide = (left: number, right: number): number => columns.slice(left, right + 1).reduce((sum, width) => sum + width, 0);
  const takes = (address: string): boolean => {
    const cell = cells[address];
    if (inMerge.has(address) || spilled.has(address)) return true;
    return cell !== undefined && (cell.content !== '' || Boolean(cell.style && borders[cell.style]?.left));
  };

  /** The last column to the right that a text may run over. */
  const freeUntil = ({ column, row }: { column: number; row: number }): number => {
    let last = column;
    while (last + 1 < columns.length && !takes(addressOf(last + 1, row))) last++;
    return last;
  };

  const textsOf = (address: string, cell: SheetCell): readonly string[] => {
    const said = says.get(address);
    if (said) return said;
    return typeof cell.content === 'string' && !isFormula(cell) ? [cell.content] : [];
  };

  const widen = (column: number, pixels: number): void => {
    columns[column] = Math.max(columns[column] ?? 0, Math.ceil(pixels) + BESIDE + 1);
  };
  const longest = (texts: readonly string[], cell: SheetCell): number => Math.max(0, ...texts.map((text) => textWidth(text, typeOf(cell))));

  const single = Object.entries(cells).filter(([address]) => !inMerge.has(address));
  for (const [address, cell] of single) {
    const { column } = placeOf(address);
    if (column >= columns.length) continue;
    const figure = cell.format ? widest[cell.format] : '';
    // A figure may be typed or worked out in a cell that is empty as yet.
    if (figure !== '' && typeof cell.content !== 'boolean') widen(column, textWidth(figure, typeOf(cell)));
    if (cell.wrap) {
      // No word is broken.
      const words = textsOf(address, cell).flatMap((text) => text.split(/\s/));
      if (cell.style === 'heading' || cell.style === 'label') widen(column, longest(words, cell));
    } else if (oneLine.has(cell.style ?? 'output')) {
      const last = cell.align === 'right' ? column : freeUntil(placeOf(address));
      const lacks = longest(textsOf(address, cell), cell) + BESIDE + 1 - wide(column, last);
      if (lacks > 0) columns[column] = (columns[column] ?? 0) + Math.ceil(lacks);
    }
  }

  for (const [address, cell] of single) {
    if (cell.wrap || oneLine.has(cell.style ?? 'output')) continue;
    const { column, row } = placeOf(address);
    let last = freeUntil({ column, row });
    while (wide(0, last) > IN_SIGHT && wide(column, last - 1) >= ENOUGH) last--;
    if (longest(textsOf(address, cell), cell) + BESIDE <= wide(column, last)) continue;
    cells[address] = { ...cell, wrap: true };
    if (last > column) merges.push(`${address}:${addressOf(last, row)}`);
  }

  const heights: Record<number, number> = {};
  const zones = new Map(merges.map((range) => [range.split(':')[0] as string, zoneOf(range)]));
  for (const [address, cell] of Object.entries(cells)) {
    const { column, row } = placeOf(address);
    const { left, right, top, bottom } = zones.get(address) ?? { left: column, right: column, top: row, bottom: row };
    const room = wide(left, right) - BESIDE;
    const lines = Math.max(1, ...(cell.wrap ? textsOf(address, cell) : []).map((text) => linesIn(text, room, typeOf(cell))));
    const height = heightOf(lines, typeOf(cell)) - ROW * (bottom - top);
    if (height > (heights[bottom + 1] ?? ROW)) heights[bottom + 1] = height;
  }
  return { columns, cells, merges, heights };
}

/** What is read at a glance stays in one line; what says more may wrap. */
const oneLine: ReadonlySet<string> = new Set(['label', 'output', 'strong', 'check', 'heading', 'input', 'required', 'section']);

function covered({ left, right, top, bottom }: Zone): string[] {
  const found: string[] = [];
  for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) found.push(addressOf(column, row));
  return found;
}
