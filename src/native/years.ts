import { itemOf } from '../budget/items.ts';
import type { Line } from '../core/define.ts';
import { addressOf } from '../workbook/grid.ts';
import { yearsName } from './steps.ts';

/** The longest life that a budget takes; a table has a row for each year of it, of which those beyond the life are 0. */
export const LONGEST = itemOf('life_years').parameter.range?.[1] ?? 40;

/** One table year by year, as formulas without `=`. */
export interface YearTable {
  readonly heading: string;
  readonly columns: readonly string[];
  readonly equations: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly found: YearColumns;
}

/** Where the columns of a table stand. */
export interface YearColumns {
  /** The cells of a column, from year 0 on. */
  column(name: string): string;
  /** Its last cell. */
  last(name: string): string;
}

type Aside = (label: string, formula: string) => string;

/** Writes one equation of a row: a name of this row's columns is asked of `inYear`, what it needs on the way goes to `aside`. */
export type WriteYear = (how: string, inYear: (name: string) => string | undefined, aside: Aside) => string;

/** The cell above: the year before. */
export const yearBefore = (cell: string): string => cell.replace(/\d+$/, (row) => String(Number(row) - 1));

/** Tables by years, one below the other on a sheet of their own. */
export class Years {
  readonly tables: YearTable[] = [];
  readonly #known = new Map<string, YearColumns>();
  /** The row of the next table's heading, counted from 0; a title, what the sheet is for and a free row stand above. */
  #next = 3;

  table(
    heading: string,
    byYear: Readonly<Record<string, Line & { readonly how: string }>>,
    given: ReadonlyMap<string, string>,
    write: WriteYear,
  ): YearColumns {
    const key = JSON.stringify([heading, ...given]);
    const known = this.#known.get(key);
    if (known) return known;
    const first = this.#next + 3;
    const cell = (column: number, year: number): string => `${yearsName}!${addressOf(column, first + year)}`;
    const names = Object.keys(byYear);
    let columns: string[] = [];
    let equations: string[] = [];
    /** @param before the columns as they will stand; a column may ask for the year before of one to its right */
    const rowOf = (year: number, before: readonly string[]): readonly string[] => {
      const row = [String(year)];
      [columns, equations] = [['year'], ['']];
      const put = (label: string, equation: string, formula: string): string => {
        columns.push(label);
        equations.push(equation);
        return cell(row.push(formula) - 1, year);
      };
      const aside: Aside = (label, formula) => {
        const at = row.indexOf(formula);
        return at > 0 ? cell(at, year) : put(label, '', formula);
      };
      const inYear = (name: string): string | undefined => {
        if (name !== 'year' && !names.includes(name)) return undefined;
        return cell(before.indexOf(name), year);
      };
      for (const name of names) put(name, byYear[name]?.how ?? '', write(byYear[name]?.how ?? '', inYear, aside));
      return row;
    };
    rowOf(0, ['year', ...names]);
    const placed = columns;
    const rows = Array.from({ length: LONGEST + 1 }, (_, year) => rowOf(year, placed));
    this.#next = first + rows.length + 1;
    const place = (name: string): number => {
      const at = columns.indexOf(name);
      if (at < 0) throw new Error(`no column of ${heading} is called ${name}`);
      return at;
    };
    const found: YearColumns = {
      column: (name) => `${cell(place(name), 0)}:${addressOf(place(name), first + LONGEST)}`,
      last: (name) => cell(place(name), LONGEST),
    };
    this.tables.push({ heading, columns, equations, rows, found });
    this.#known.set(key, found);
    return found;
  }
}
