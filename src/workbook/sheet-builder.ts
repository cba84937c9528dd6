import type { Unit } from '../core/units.ts';
import { resultFormat, shownUnit } from './formats.ts';
import { addressOf, fixed, moved, on, orDash, placeOf } from './grid.ts';
import type { Chart, Format, Rule, Sheet, SheetCell, Style } from './model.ts';

export type Content = SheetCell['content'];
/** How one cell is to look, by the names of the model; look.ts says what each name looks like. */
export type CellLook = Omit<SheetCell, 'content'>;

/** One line of a sheet: label, value (or values side by side), unit, note. */
export interface Fact {
  /** Lets later formulas write `{name}` for its cell; with several values, for the one in their own column. */
  readonly name?: string;
  readonly label: string;
  readonly value: Content | readonly Content[];
  readonly unit: Unit | '';
  readonly format?: Format;
  readonly style?: Style;
  /** Where it comes from; left out, the functions in its formula. */
  readonly note?: string;
  readonly choices?: readonly string[];
  /** An error shows, so that its sentence can be read: for what rests on cells of this sheet. */
  readonly speaks?: true;
}

export interface Spill {
  readonly name?: string;
  readonly formula: string;
  /** How many rows it may need below its header. */
  readonly rows: number;
  /** One for each column; undefined for a word or two, `text` for sentences, which wrap. */
  readonly formats: readonly (Format | undefined)[];
  /** Where it begins, in the row to be written next; left out, at the sheet's edge. */
  readonly column?: string;
  /** Lines of text that its header and its rows need. */
  readonly headLines?: number;
  readonly lines?: number | readonly number[];
}

type Settings = Partial<Pick<Sheet, 'freeze' | 'landscape' | 'onePage'>> & {
  readonly blank?: boolean;
  /** Its figures show a dash where they cannot be worked out yet. */
  readonly dashes?: true;
};
type ChartOf = Omit<Chart, 'at'>;

const overWords: ReadonlySet<string> = new Set(['unit', 'where from', 'in words', 'result']);

/** The height of a row, for how many a chart covers. */
const rowHeight = 23;

/** The names of our functions in formulas, as small print. */
export function functionsIn(formulas: readonly Content[]): string {
  const named = formulas.flatMap((formula) => String(formula).match(/(?<=BEDDING\.)[A-Z.]+(?=\()/g) ?? []);
  return [...new Set(named)].join(', ');
}

/**
 * Writes a sheet from the top down. Cells can be named while they are written: a formula then says `{slurry}`, another
 * sheet asks `from('slurry')`, and no row number is spelled out.
 */
export class SheetBuilder {
  readonly name: string;
  readonly #columns: readonly number[];
  readonly #settings: Settings;
  readonly #cells: Record<string, SheetCell> = {};
  readonly #names = new Map<string, string>();
  /** How far right of its line's first value a cell stands. */
  readonly #shifts = new Map<string, number>();
  readonly #heights: Record<number, number> = {};
  readonly #merges: string[] = [];
  readonly #rules: Rule[] = [];
  readonly #charts: Chart[] = [];
  readonly #pagesFrom: number[] = [];
  /** The next row to be written, as the spreadsheet numbers it. */
  row = 1;

  constructor(name: string, columns: readonly number[], settings: Settings = {}) {
    this.name = name;
    this.#columns = columns;
    this.#settings = settings;
  }

  /** The address of a named cell or range, on this sheet. */
  at(name: string): string {
    const address = this.#names.get(name);
    if (!address) throw new Error(`${this.name} has nothing named ${name}`);
    return address;
  }

  /** The same, as other sheets write it. */
  from(name: string): string {
    return on(this.name, this.at(name));
  }

  called(name: string, address: string): this {
    this.#names.set(name, address);
    return this;
  }

  /** What the invented herd would say here; nothing in a blank workbook. */
  given(value: Content): Content {
    return this.#settings.blank ? '' : value;
  }

  put(address: string, content: Content, style: Style = 'output', look: CellLook = {}): this {
    this.#cells[address] = { content, style, ...look };
    return this;
  }

  /** Cells side by side from `address` on; undefined leaves one alone. */
  across(address: string, contents: readonly (Content | undefined)[], style: Style = 'output', look: CellLook = {}): this {
    contents.forEach((content, k) => {
      if (content !== undefined) this.put(moved(address, k), content, style, look);
    });
    return this;
  }

  /** One cell's content over a block. */
  block(range: string, content: Content, style: Style, look: CellLook = {}): this {
    this.#merges.push(range);
    return this.put(range.split(':')[0] as string, content, style, look);
  }

  /** A heading whose band runs over so many columns, or all that are left. */
  section(address: string, words: string, wide = this.#columns.length - placeOf(address).column): this {
    return this.across(address, [words, ...Array.from({ length: wide - 1 }, () => '')], 'section');
  }

  /** Makes room for so many lines of small print. */
  tall(row: number, lines: number): this {
    this.#heights[row] = Math.max(rowHeight, 14 * lines + 8);
    return this;
  }

  /** A sentence that must not be overlooked, over the sheet's whole width. */
  caution(words: string): this {
    return this.line([words, ...this.#columns.slice(1).map(() => '')], 'warning');
  }

  rule(range: string, when: string, look: Rule['look']): this {
    this.#rules.push({ range, when, look });
    return this;
  }

  /** The sheet's name, what it is for, and a line that says when something is lacking. */
  title(words: string, lead: string, lacking: Content = ''): this {
    this.row = 4;
    this.put('A1', words, 'title').put('A2', lead, 'lead');
    return lacking === ''
      ? this
      : this.put('A3', lacking, 'lead').rule(`A3:${addressOf(this.#columns.length - 1, 2)}`, '$A$3<>""', 'watch');
  }

  /** Starts a part of the sheet below a free row. */
  part(words: string, lead?: string): this {
    this.section(`A${this.row + 1}`, words);
    this.row += 2;
    return lead === undefined ? this : this.line([lead], 'note');
  }

  /** On paper, what is written next begins a new page. */
  newPage(): this {
    this.#pagesFrom.push(this.row);
    return this;
  }

  /** One row of cells. */
  line(contents: readonly (Content | undefined)[], style: Style = 'output', look: CellLook = {}): this {
    this.across(`A${this.row}`, contents, style, look);
    this.row++;
    return this;
  }

  /** Headings of a table, those over numbers to the right. */
  headings(...words: readonly string[]): this {
    words.forEach((word, k) => {
      const left = k === 0 || overWords.has(word);
      this.put(moved(`A${this.row}`, k), word, 'heading', { wrap: true, align: left ? 'left' : 'right' });
    });
    this.row++;
    return this;
  }

  facts(facts: readonly Fact[]): this {
    for (const fact of facts) this.#fact(fact);
    return this;
  }

  #fact({ name, label, value, unit, format = resultFormat(unit), style = 'output', note, choices, speaks }: Fact): void {
    const values = Array.isArray(value) ? (value as readonly Content[]) : [value as Content];
    const first = `B${this.row}`;
    this.put(`A${this.row}`, label, 'label');
    values.forEach((one, k) => {
      const address = moved(first, k);
      this.#shifts.set(address, k);
      this.put(address, speaks ? one : this.#dashed(one), style, {
        format,
        align: format === 'text' ? 'left' : 'right',
        ...(choices && { choices }),
      });
    });
    this.put(moved(first, values.length), shownUnit(unit), 'note');
    this.put(moved(first, values.length + 1), note ?? functionsIn(values), 'note');
    if (name) this.called(name, first);
    this.row++;
  }

  #dashed(content: Content): Content {
    const formula = typeof content === 'string' && content.startsWith('=') && !content.startsWith('=IFERROR(');
    return this.#settings.dashes && formula ? orDash(content.slice(1)) : content;
  }

  /** A function that fills a table; what is named is the table without its header. */
  spill({ name, formula, rows, formats, column = 'A', headLines = 1, lines = 1 }: Spill): this {
    const first = `${column}${this.row}`;
    if (headLines > 1) this.tall(this.row, headLines);
    for (let down = 1; down <= rows; down++) {
      const needed = typeof lines === 'number' ? lines : (lines[down - 1] ?? 1);
      if (needed > 1) this.tall(this.row + down, needed);
    }
    const numbers = (format: Format | undefined): format is Format => format !== undefined && format !== 'text';
    formats.forEach((format, right) => {
      const overNumbers = numbers(format);
      this.put(moved(first, right), '', 'heading', { wrap: true, align: overNumbers ? 'right' : 'left' });
      const number: CellLook = overNumbers ? { format, align: 'right' } : {};
      const look: CellLook = format === 'text' || lines !== 1 ? { ...number, wrap: true } : number;
      for (let down = 1; down <= rows; down++) this.put(moved(first, right, down), '', format === 'text' ? 'note' : 'output', look);
    });
    this.put(first, this.#dashed(formula), 'heading', { wrap: true, align: numbers(formats[0]) ? 'right' : 'left' });
    if (name) this.called(name, `${moved(first, 0, 1)}:${moved(first, formats.length - 1, rows)}`);
    this.row += rows + 1;
    return this;
  }

  chart(chart: ChartOf, column = 'A'): this {
    this.chartAt(`${column}${this.row + 1}`, chart);
    this.row += Math.ceil(chart.height / rowHeight) + 2;
    return this;
  }

  chartAt(at: string, chart: ChartOf): this {
    this.#charts.push({ ...chart, at });
    return this;
  }

  /** `{name}` becomes the named cell's address, moved along for the further values of a line; `{$name}` stays where it is. */
  #filled(content: Content, right: number): Content {
    if (typeof content !== 'string' || !content.startsWith('=')) return content;
    return content.replace(/\{(\$?)([^{}]+)\}/g, (_, stays: string, name: string) => {
      const address = this.at(name);
      return stays || address.includes(':') ? fixed(address) : moved(address, right);
    });
  }

  sheet(): Sheet {
    const lastRow = Math.max(this.row, ...Object.keys(this.#cells).map((address) => placeOf(address).row + 1));
    const { blank: _, dashes: __, ...settings } = this.#settings;
    const cells = Object.entries(this.#cells).map(([address, cell]) => {
      return [address, { ...cell, content: this.#filled(cell.content, this.#shifts.get(address) ?? 0) }] as const;
    });
    return {
      name: this.name,
      columns: this.#columns,
      rows: lastRow + 3,
      cells: Object.fromEntries(cells),
      heights: this.#heights,
      merges: this.#merges,
      rules: this.#rules,
      charts: this.#charts,
      pagesFrom: this.#pagesFrom,
      ...settings,
    };
  }
}

/** `B3:B9` of a column within a named table, counted from 0. */
export function columnIn(range: string, column: number): string {
  const [first = '', last = ''] = range.split(':');
  const { row, column: left } = placeOf(first);
  return `${addressOf(left + column, row)}:${addressOf(left + column, placeOf(last).row)}`;
}
