import type { Chart, Format, Rule, Sheet, SheetCell, Style } from './model.ts';

export type Content = SheetCell['content'];
export type Look = Omit<SheetCell, 'content'>;

const letterA = 'A'.charCodeAt(0);

/** `A` for 0, `AA` for 26. */
export const letter = (column: number): string =>
  column < 26 ? String.fromCharCode(letterA + column) : letter(Math.floor(column / 26) - 1) + letter(column % 26);

const columnOf = (letters: string): number => [...letters].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - letterA + 1, 0) - 1;

/** Column and row of an address, both counted from 0. */
export function placeOf(address: string): { column: number; row: number } {
  const [, letters = '', digits = ''] = /^\$?([A-Z]+)\$?(\d+)$/.exec(address) ?? [];
  return { column: columnOf(letters), row: Number(digits) - 1 };
}

export const addressOf = (column: number, row: number): string => `${letter(column)}${row + 1}`;

/** `$B$7` or `$B$7:$C$9`: stays put when the formula that holds it is copied. */
export const fixed = (address: string): string => address.replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');

/** `'Udder health'!$B$7`: the address as other sheets write it. */
export const on = (sheet: string, address: string): string => `${/\W/.test(sheet) ? `'${sheet}'` : sheet}!${fixed(address)}`;

export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

export interface Column<Row> {
  readonly heading: string;
  readonly of: (row: Row, at: number) => Content;
  readonly look?: Look | ((row: Row) => Look);
}

type Settings = Partial<Pick<Sheet, 'rows' | 'freeze' | 'landscape' | 'onePage'>>;

/** Fills a sheet cell by cell; `sheet()` is the finished data. Rows are numbered as the spreadsheet numbers them, from 1. */
export class SheetBuilder {
  readonly name: string;
  readonly #columns: readonly number[];
  readonly #settings: Settings;
  readonly #cells: Record<string, SheetCell> = {};
  readonly #merges: string[] = [];
  readonly #rules: Rule[] = [];
  readonly #charts: Chart[] = [];

  constructor(name: string, columns: readonly number[], settings: Settings = {}) {
    this.name = name;
    this.#columns = columns;
    this.#settings = settings;
  }

  put(address: string, content: Content, style: Style = 'output', look: Look = {}): this {
    this.#cells[address] = { content, style, ...look };
    return this;
  }

  /** Cells side by side from `address` on; undefined leaves one alone. */
  across(address: string, contents: readonly (Content | undefined)[], style: Style = 'output', look: Look = {}): this {
    const { column, row } = placeOf(address);
    contents.forEach((content, k) => {
      if (content !== undefined) this.put(addressOf(column + k, row), content, style, look);
    });
    return this;
  }

  /** One cell's content over a block, wrapped within it. */
  block(range: string, content: Content, style: Style, look: Look = {}): this {
    this.#merges.push(range);
    return this.put(range.split(':')[0] as string, content, style, { wrap: true, ...look });
  }

  /** The sheet's name and what it is for. */
  title(words: string, lead: string): this {
    return this.put('A1', words, 'title').put('A2', lead, 'lead');
  }

  /** A heading whose band runs across all columns, or as many as given. */
  section(address: string, words: string, wide?: number): this {
    const { column } = placeOf(address);
    const rest = (wide ?? this.#columns.length - column) - 1;
    return this.across(address, [words, ...Array.from({ length: rest }, () => '')], 'section');
  }

  /** A table with its headings at `address`; returns the row below it. */
  table<Row>(address: string, columns: readonly Column<Row>[], rows: readonly Row[]): number {
    const { column, row } = placeOf(address);
    this.across(
      address,
      columns.map(({ heading }) => heading),
      'heading',
      { wrap: true },
    );
    rows.forEach((item, down) => {
      columns.forEach(({ of, look }, right) => {
        const own = typeof look === 'function' ? look(item) : look;
        this.put(addressOf(column + right, row + 1 + down), of(item, row + 2 + down), own?.style, own);
      });
    });
    return row + 2 + rows.length;
  }

  /** Names over the columns of a spill, and formats for the cells that it will fill. */
  spill(address: string, formula: string, rows: number, formats: readonly (Format | undefined)[], wrapped: readonly number[] = []): this {
    const { column, row } = placeOf(address);
    for (let down = 0; down <= rows; down++) {
      formats.forEach((format, right) => {
        const at = addressOf(column + right, row + down);
        const look: Look = { ...(format && { format }), ...(wrapped.includes(right) && { wrap: true }) };
        this.put(at, '', down === 0 ? 'heading' : 'output', down === 0 ? {} : look);
      });
    }
    return this.put(address, formula, 'heading');
  }

  rule(range: string, when: string, look: Rule['look']): this {
    this.#rules.push({ range, when, look });
    return this;
  }

  chart(chart: Chart): this {
    this.#charts.push(chart);
    return this;
  }

  sheet(): Sheet {
    const lastRow = Math.max(...Object.keys(this.#cells).map((address) => placeOf(address).row + 1));
    return {
      name: this.name,
      columns: this.#columns,
      rows: lastRow + 5,
      cells: this.#cells,
      merges: this.#merges,
      rules: this.#rules,
      charts: this.#charts,
      ...this.#settings,
    };
  }
}
