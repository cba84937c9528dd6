import { addressOf } from '../workbook/grid.ts';

/** One line of the working: its cell holds the formula, the columns beside it say what it is. */
export interface Step {
  readonly label: string;
  /** Without its `=`; cells are written in full, `Working!B5`. */
  readonly formula: string;
  readonly unit: string;
  readonly says: string;
  /** The equation in our own names. */
  readonly equation: string;
  readonly source: string;
}

export type Line = { readonly heading: string } | Step;

export const figuresName = 'Figures';
export const workingName = 'Working';
export const solvingName = 'Solving';
export const yearsName = 'Years';
export const crossChecksName = 'Cross-checks';

const valueColumn = 1;
/** Rows above the first line: title, what the sheet is for, headings. */
const above = 4;

/** Writes the working line by line; what has been worked out once is not worked out again. */
export class Steps {
  readonly lines: Line[] = [];
  readonly #cells = new Map<string, string>();
  #heading = '';
  #written = '';

  /** Stands above the next line that is written, if any is and it does not stand there already. Gives the one before. */
  heading(words: string): string {
    const before = this.#heading;
    this.#heading = words;
    return before;
  }

  /** The cell of a step, written now unless the same formula stands already. */
  cell(step: Step): string {
    const known = this.#cells.get(step.formula);
    if (known) return known;
    if (this.#heading !== this.#written) this.lines.push({ heading: this.#heading });
    this.#written = this.#heading;
    this.lines.push(step);
    const address = `${workingName}!${addressOf(valueColumn, above + this.lines.length - 1)}`;
    this.#cells.set(step.formula, address);
    return address;
  }
}
