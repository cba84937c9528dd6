/**
 * A workbook as plain data, the same for every host. Formulas are written as an English Excel user types them
 * (`=BEDDING.DEMAND.HERD(B2,B3)`); addresses are A1 within the sheet.
 */
export type Style =
  | 'title' /* the sheet's name at its top */
  | 'lead' /* what the sheet is for, or an answer in words */
  | 'section' /* a heading within the sheet */
  | 'heading' /* a table's header cell */
  | 'label'
  | 'input' /* the only cells that are typed in */
  | 'required' /* an input that must be given */
  | 'output'
  | 'strong' /* an output that matters most */
  | 'note' /* small print: unit, source, status, caution */
  | 'warning' /* a sentence that calls for action */
  | 'check'; /* a cell that reads `OK` or says what is broken */

export type Format = 'text' | 'whole' | 'one' | 'two' | 'three' | 'percent' | 'percent1' | 'money' | 'money2' | 'date' | 'general';

export interface SheetCell {
  /** A formula where it begins with `=`; a number stays a number. */
  readonly content: string | number | boolean;
  readonly style?: Style;
  readonly format?: Format;
  readonly wrap?: true;
  readonly align?: 'left' | 'right' | 'centre';
  /** A drop-down; items never hold a comma. */
  readonly choices?: readonly string[];
  /** A drop-down of what stands in a range, as other sheets write it: Excel takes no long list but from cells. */
  readonly choicesIn?: string;
}

/** Colours a range where a formula, written for its top-left cell, is true. Colour is never the only sign. */
export interface Rule {
  readonly range: string;
  readonly when: string;
  readonly look: 'good' | 'watch' | 'bad' | 'quiet';
}

export interface Series {
  readonly name: string;
  readonly values: string;
}

export interface Chart {
  readonly kind: 'column' | 'stacked column' | 'bar' | 'line' | 'scatter';
  readonly title: string;
  readonly across: string;
  readonly up: string;
  /** The cells that hold the labels, or the x values of a scatter or line. */
  readonly labels: string;
  readonly series: readonly Series[];
  /** The cell under its top-left corner, and its size in pixels. */
  readonly at: string;
  readonly width: number;
  readonly height: number;
}

export interface Sheet {
  readonly name: string;
  /** Widths in pixels, from column A. */
  readonly columns: readonly number[];
  /** How many rows the sheet must have for its spills. */
  readonly rows: number;
  readonly cells: Readonly<Record<string, SheetCell>>;
  /** Heights in pixels by row number, for text that wraps where a formula spills: no host fits those rows by itself. */
  readonly heights?: Readonly<Record<number, number>>;
  readonly merges?: readonly string[];
  readonly rules?: readonly Rule[];
  readonly charts?: readonly Chart[];
  readonly freeze?: { readonly rows: number; readonly columns: number };
  readonly landscape?: true;
  /** Prints on a single sheet of A4; otherwise one page wide and as long as it needs. */
  readonly onePage?: true;
  /** The rows that begin a new page, so that a table and its chart stay together. */
  readonly pagesFrom?: readonly number[];
}

export interface Workbook {
  readonly sheets: readonly Sheet[];
}
