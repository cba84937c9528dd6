import { most } from '../most.ts';
import { asContent, type Formula, formulaContent, type RawCell, storedIn, textFrom } from './contents.ts';
import { lettersOf, type Names, NotHere, tokens } from './formula.ts';
import type { Looks } from './looks.ts';
import { atMost, Refused } from './refusing.ts';
import type { Tally } from './tally.ts';
import type { Attributes, Listener } from './xml.ts';

/** All that a sheet's cells need to know of their workbook. */
export interface Book {
  readonly strings: readonly string[];
  readonly looks: Looks;
  readonly from1904: boolean;
  readonly tally: Tally;
  /** How many filled cells the sheets read so far have together, and how many letters stand in them. */
  filled: number;
  letters: number;
  progress: (cells: number) => void;
}

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** The place of an address such as `C5`; undefined where it is none. */
export function placeOf(address: string): Place | undefined {
  const [, letters = '', row = ''] = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/.exec(address) ?? [];
  if (row === '') return undefined;
  return { column: [...letters].reduce((sum, one) => 26 * sum + one.charCodeAt(0) - 64, 0), row: Number(row) };
}

export const addressOf = ({ row, column }: Place): string => lettersOf(column) + row;

interface Shared extends Place {
  readonly text: string;
  readonly parts: ReturnType<typeof tokens> | undefined;
}

/** Formulas over a block that may reach into the same row; each cell is held against them. */
const mostSpills = 200;

/** Every so many cells the page hears how far the reading has come. */
const stride = 5000;

/** Reads the cells of one sheet as they go by. */
export class SheetCells implements Listener {
  readonly contents: Record<string, string> = {};
  /** The look of each cell that has one of its own, by row and column. */
  readonly looks = new Map<number, Map<number, number>>();
  /** The row and the column of the last that is filled. */
  readonly last = { row: 0, column: 0 };
  readonly #sheet: string;
  readonly #book: Book;
  readonly #names: Names;
  readonly #shared = new Map<string, Shared>();
  #spills: { top: number; left: number; bottom: number; right: number }[] = [];
  #looked = 0;
  #row = 0;
  #column = 0;
  #cell: Attributes | undefined;
  #formula: Attributes | undefined;
  #texts = { v: '', f: '', t: '' };
  #in: 'v' | 'f' | 't' | undefined;
  #phonetic = false;

  constructor(sheet: string, book: Book, names: Names) {
    this.#sheet = sheet;
    this.#book = book;
    this.#names = names;
  }

  open(name: string, attributes: Attributes): void {
    if (name === 'row') {
      this.#row = attributes['r'] === undefined ? this.#row + 1 : Number(attributes['r']);
      if (!Number.isInteger(this.#row) || this.#row < 1) throw new SyntaxError('a row without a place');
      this.#column = 0;
      this.#spills = this.#spills.filter(({ bottom }) => bottom >= this.#row);
    } else if (name === 'c') {
      const place = attributes['r'] === undefined ? { row: this.#row, column: this.#column + 1 } : placeOf(attributes['r']);
      if (!place || place.row < 1) throw new SyntaxError('a cell without a place');
      this.#column = place.column;
      this.#row = place.row;
      this.#cell = attributes;
      this.#formula = undefined;
      this.#texts = { v: '', f: '', t: '' };
    } else if (this.#cell && name === 'f') {
      this.#formula = attributes;
      this.#in = 'f';
    } else if (this.#cell && name === 'rPh') this.#phonetic = true;
    else if (this.#cell && (name === 'v' || (name === 't' && !this.#phonetic))) this.#in = name;
  }

  text(content: string): void {
    if (this.#in) this.#texts[this.#in] += content;
  }

  close(name: string): void {
    if (name === 'rPh') this.#phonetic = false;
    if (name === this.#in) this.#in = undefined;
    if (name !== 'c' || !this.#cell) return;
    this.#ended(this.#cell);
    this.#cell = undefined;
  }

  #ended(cell: Attributes): void {
    const place = { row: this.#row, column: this.#column };
    const { count, dates, untexted } = this.#book.looks;
    const asked = Number(cell['s'] ?? 0);
    const look = asked > 0 && asked < count ? asked : 0;
    const { v, f, t } = this.#texts;
    const isEmpty = v === '' && t === '' && f === '' && this.#formula?.['si'] === undefined;
    const raw: RawCell = { type: cell['t'] ?? 'n', value: v, inline: t, date: (dates[look] ?? '') !== '' };
    const { content, isText } = isEmpty ? { content: '', isText: true } : this.#read(place, raw);
    const twin = untexted.get(look);
    const unmarked = content.replace(/^'/, '');
    // A look that makes text of all that is typed suits texts alone, and those need no mark.
    const suits = isText && !unmarked.startsWith('=');
    this.#look(place, twin === undefined || suits ? look : twin);
    this.#fill(place, twin !== undefined && suits ? unmarked : content);
  }

  /** What the cell that has just ended holds here, and whether that is a text of its own. */
  #read(place: Place, raw: RawCell): { readonly content: string; readonly isText: boolean } {
    const stored = storedIn(raw, this.#book.strings, this.#book.from1904);
    const formula = this.#formulaAt(place);
    if (formula) {
      const { content, live } = formulaContent(formula, stored, this.#names, this.#book.tally);
      if (live && this.#formula?.['t'] === 'array') this.#spill(this.#formula['ref'] ?? '');
      return { content, isText: false };
    }
    // What a formula over a block has spilled is worked out by it again.
    if (this.#spills.some((one) => one.left <= place.column && place.column <= one.right && one.top <= place.row))
      return { content: '', isText: false };
    if (typeof stored === 'object') return { content: stored.error, isText: false };
    return { content: asContent(stored, this.#book.tally), isText: typeof stored === 'string' };
  }

  /** The formula in the cell that has just ended; one that is shared stands in full where it is first met. */
  #formulaAt(place: Place): Formula | undefined {
    if (!this.#formula) return undefined;
    const { t: type, si: index } = this.#formula;
    const text = textFrom(this.#texts.f).trim();
    if (type === 'dataTable') {
      this.#book.tally.add('value for data table');
      return undefined;
    }
    if (type !== 'shared' || index === undefined) return text === '' ? undefined : { text };
    if (text !== '') this.#shared.set(index, { text, ...place, parts: this.#parts(text) });
    const shared = this.#shared.get(index);
    if (!shared) return undefined;
    const move = { rows: place.row - shared.row, columns: place.column - shared.column };
    return { text: shared.text, move, ...(shared.parts && { parts: shared.parts }) };
  }

  #parts(text: string): ReturnType<typeof tokens> | undefined {
    try {
      return text.length > most.lettersInFormula ? undefined : tokens(text);
    } catch (fault) {
      if (fault instanceof NotHere) return undefined;
      throw fault;
    }
  }

  #spill(block: string): void {
    const [start, end] = block.split(':').map(placeOf);
    if (start && end && this.#spills.length < mostSpills)
      this.#spills.push({ top: start.row, left: start.column, bottom: end.row, right: end.column });
  }

  #look({ row, column }: Place, look: number): void {
    if (look === 0) return;
    // Looks alone never keep a file from being opened: those beyond are of empty cells, as all filled cells are fewer.
    if (this.#looked++ >= 2 * most.cells || row > most.rows || column > most.columns) return;
    const inRow = this.looks.get(row) ?? new Map<number, number>();
    this.looks.set(row, inRow.set(column, look));
  }

  #fill(place: Place, content: string): void {
    if (content === '') return;
    const book = this.#book;
    const sheet = `the sheet ‘${this.#sheet}’`;
    atMost(place.row, most.rows, (row, limit) => `${sheet} reaches down to row ${row}, and this page opens up to ${limit} rows`);
    if (place.column > most.columns)
      throw new Refused(
        `${sheet} reaches to column ${lettersOf(place.column)}, and this page opens up to column ${lettersOf(most.columns)}`,
      );
    atMost(++book.filled, most.cells, (_, limit) => `the file has more than ${limit} filled cells, the most that this page opens`);
    atMost(
      content.length,
      most.lettersInCell,
      (letters, limit) => `a cell of ${sheet} holds ${letters} characters, and this page opens up to ${limit}`,
    );
    book.letters += content.length;
    atMost(
      book.letters,
      most.letters,
      (_, limit) => `the cells hold more than ${limit} characters together, the most that this page opens`,
    );
    if (book.filled % stride === 0) book.progress(book.filled);
    this.last.row = Math.max(this.last.row, place.row);
    this.last.column = Math.max(this.last.column, place.column);
    this.contents[addressOf(place)] = content;
  }
}
