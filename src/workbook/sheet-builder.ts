import type { Unit } from '../core/units.ts';
import { registry } from '../functions/index.ts';
import { fit } from './fit.ts';
import { resultFormat, shownUnit } from './formats.ts';
import { addressOf, fixed, moved, on, orDash, placeOf } from './grid.ts';
import type { Chart, Format, Rule, Sheet, SheetCell, Style } from './model.ts';
import { ROW } from './text-size.ts';

export type Content = SheetCell['content'];
/** How one cell is to look, by the names of the model; look.ts says what each name looks like. */
export interface CellLook extends Omit<SheetCell, 'content'> {
  /** What a formula may say, the longest of it at least: room is made for it. A text of its own needs no mention. */
  readonly says?: readonly string[];
}

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
  /** How many rows it may need below its header; left out, as many as `says` has. */
  readonly rows?: number;
  /** One for each column; undefined for a word or two, `text` for sentences, which wrap. */
  readonly formats: readonly (Format | undefined)[];
  /** Where it begins, in the row to be written next; left out, at the sheet's edge. */
  readonly column?: string;
  /** Its headings, where they are not the function's usual ones. */
  readonly heads?: readonly string[];
  /** What it may say, row by row; a list where a cell may say one or the other. */
  readonly says?: readonly (readonly unknown[])[];
}

type Settings = Partial<Pick<Sheet, 'freeze' | 'landscape' | 'onePage'>> & {
  readonly blank?: boolean;
  /** Its figures show a dash where they cannot be worked out yet. */
  readonly dashes?: true;
};
/** A chart as wide as the columns that it stands over, from the one to the other. */
export type ChartOf = Omit<Chart, 'at' | 'width'> & { readonly over: readonly [from: string, to: string] };

const overWords: ReadonlySet<string> = new Set(['unit', 'where from', 'in words', 'result']);

/** The headings that a function gives its table. */
function headsOf(formula: string): readonly string[] {
  const name = /BEDDING\.([A-Z.]+)\(/.exec(formula)?.[1];
  return registry.find((record) => record.name === name)?.columns ?? [];
}

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
  readonly #says = new Map<string, readonly string[]>();
  readonly #spilled = new Set<string>();
  readonly #merges: string[] = [];
  readonly #rules: Rule[] = [];
  readonly #charts: (ChartOf & { readonly row: number })[] = [];
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

  /** The cells of a named column, one by one, as other sheets write them. */
  each(name: string): readonly string[] {
    const [first = '', last = first] = this.at(name).split(':');
    const { column, row } = placeOf(first);
    return Array.from({ length: placeOf(last).row - row + 1 }, (_, k) => on(this.name, addressOf(column, row + k)));
  }

  called(name: string, address: string): this {
    this.#names.set(name, address);
    return this;
  }

  /** What was written so far. */
  cells(): readonly (readonly [address: string, cell: SheetCell])[] {
    return Object.entries(this.#cells);
  }

  /** What the invented herd would say here; nothing in a blank workbook. */
  given(value: Content): Content {
    return this.#settings.blank ? '' : value;
  }

  put(address: string, content: Content, style: Style = 'output', { says, ...look }: CellLook = {}): this {
    this.#cells[address] = { content, style, ...look };
    if (says) this.#says.set(address, says);
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

  /** Writes parts beside each other, from the same row on; what follows stands below the longest. */
  sideBySide(...parts: readonly (() => void)[]): this {
    const top = this.row;
    const ends = parts.map((write) => {
      this.row = top;
      write();
      return this.row;
    });
    this.row = Math.max(...ends);
    return this;
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
  spill({ name, formula, says = [], rows = says.length, formats, column = 'A', heads = headsOf(formula) }: Spill): this {
    const first = `${column}${this.row}`;
    formats.forEach((format, right) => {
      const overNumbers = format !== undefined && format !== 'text';
      const content = right === 0 ? this.#dashed(formula) : '';
      const head = heads[right] === undefined ? {} : { says: [heads[right]] };
      this.#spilled.add(moved(first, right));
      this.put(moved(first, right), content, 'heading', { wrap: true, align: overNumbers ? 'right' : 'left', ...head });
      const texts = says.map((row) => [row[right]].flat().filter((one) => typeof one === 'string'));
      for (let down = 1; down <= rows; down++) {
        const address = moved(first, right, down);
        this.#spilled.add(address);
        this.put(address, '', format === 'text' ? 'note' : 'output', {
          ...(overNumbers && { format, align: 'right' }),
          // What wraps stands at the top of its row, so all of a row does.
          ...(formats.includes('text') && { wrap: true }),
          ...(texts[down - 1] && { says: texts[down - 1] as string[] }),
        });
      }
    });
    if (name) this.called(name, `${moved(first, 0, 1)}:${moved(first, formats.length - 1, rows)}`);
    this.row += rows + 1;
    return this;
  }

  /** Leaves room for something so many pixels high below a free row; where it begins. */
  room(height: number): number {
    const row = this.row + 1;
    this.row += Math.ceil(height / ROW) + 2;
    return row;
  }

  /** Charts side by side, below what was written last or in the room that was left for them. */
  charts(charts: readonly ChartOf[], row = this.room(Math.max(...charts.map(({ height }) => height)))): this {
    this.#charts.push(...charts.map((chart) => ({ ...chart, row })));
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
    const fitted = fit({
      columns: this.#columns,
      cells: Object.fromEntries(cells),
      merges: this.#merges,
      says: this.#says,
      spilled: this.#spilled,
    });
    return {
      name: this.name,
      rows: lastRow + 3,
      ...fitted,
      rules: this.#rules,
      charts: this.#placed(fitted.columns),
      pagesFrom: this.#pagesFrom,
      ...settings,
    };
  }

  #placed(columns: readonly number[]): Chart[] {
    return this.#charts.map(({ over: [from, to], row, ...chart }) => {
      const under = columns.slice(placeOf(`${from}1`).column, placeOf(`${to}1`).column + 1);
      return { ...chart, at: `${from}${row}`, width: under.reduce((sum, width) => sum + width, 0) };
    });
  }
}

/** `B3:B9` of a column within a named table, counted from 0. */
export function columnIn(range: string, column: number): string {
  const [first = '', last = ''] = range.split(':');
  const { row, column: left } = placeOf(first);
  return `${addressOf(left + column, row)}:${addressOf(left + column, placeOf(last).row)}`;
}
