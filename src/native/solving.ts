import { addressOf } from '../workbook/grid.ts';
import { solvingName } from './steps.ts';

/** Halvings of the bracket: the widest, some 300 °C or a rate of a million, comes down to a billionth. */
const HALVINGS = 52;

const isCell = (text: string): boolean => /^\w+![A-Z]+\d+$/.test(text);

/** One row of a table of halvings, as formulas without `=`. */
type Row = readonly string[];

/** A figure on both sides of its equation, found by halving in plain cells. */
export interface Solved {
  readonly heading: string;
  readonly equation: string;
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
  readonly found: Found;
}

/** Gives the two sides of the equation at a guess; what it needs on the way it writes into further cells of the same row. */
export type Sides = (guess: string, write: (label: string, formula: string) => string) => readonly [left: string, right: string];

export interface Found {
  /** The cell that holds the answer. */
  readonly answer: string;
  /** How far the two sides are still apart there. */
  readonly residual: string;
  /** A formula that is true where the two sides meet there. */
  readonly meets: string;
}

/** Tables of halvings, one below the other on a sheet of their own. */
export class Solving {
  readonly tables: Solved[] = [];
  readonly #known = new Map<string, Found>();
  readonly #once: (label: string, formula: string) => string;

  /** @param once writes what is the same for every guess, outside the tables; gives its cell */
  constructor(once: (label: string, formula: string) => string) {
    this.#once = once;
  }

  /** The row of the next table's heading, counted from 0; a title, what the sheet is for and a free row stand above. */
  #next = 3;

  find(heading: string, equation: string, between: readonly [low: string, high: string], sides: Sides): Found {
    const key = JSON.stringify([between, sides('?', (_, formula) => `(${formula})`)]);
    const known = this.#known.get(key);
    if (known) return known;
    const found = this.#halve(heading, equation, between, sides);
    this.#known.set(key, found);
    return found;
  }

  #halve(heading: string, equation: string, [lowest, highest]: readonly [string, string], sides: Sides): Found {
    const first = this.#next + 2;
    const rows: Row[] = [];
    let columns: string[] = [];
    let right = '';
    const cell = (column: number, k: number) => `${solvingName}!${addressOf(column, first + k)}`;
    for (let k = 0; k <= HALVINGS; k++) {
      const row: string[] = [];
      columns = ['low', 'high', 'guess'];
      const write = (label: string, formula: string): string => {
        if (!formula.includes(`${solvingName}!`)) return isCell(formula) ? formula : this.#once(label, formula);
        const at = row.indexOf(formula);
        if (at >= 0) return cell(at, k);
        columns.push(label);
        return cell(row.push(formula) - 1, k);
      };
      const gap = 3;
      // The first row looks at the low end alone: on which side of the answer its sign stands.
      const sameSide = `(${cell(gap, k - 1)}>0)=(${cell(gap, 0)}>0)`;
      row.push(
        k === 0 ? lowest : `IF(${sameSide},${cell(2, k - 1)},${cell(0, k - 1)})`,
        k === 0 ? highest : `IF(${sameSide},${cell(1, k - 1)},${cell(2, k - 1)})`,
        k === 0 ? cell(0, 0) : `(${cell(0, k)}+${cell(1, k)})/2`,
        '',
      );
      columns.push('left less right');
      const [onLeft, onRight] = sides(cell(2, k), write);
      const left = write('left', onLeft);
      right = write('right', onRight);
      row[gap] = `${left}-${right}`;
      rows.push(row);
    }
    this.#next = first + rows.length + 1;
    const [low, high, answer, residual] = [0, 1, 2, 3].map((column) => cell(column, HALVINGS)) as [string, string, string, string];
    // A step in the equation, as of the pressure of vapour at 0 °C, is met from both sides and never touched.
    const closed = `AND(${low}>${cell(0, 0)},${high}<${cell(1, 0)})`;
    const found = { answer, residual, meets: `OR(ABS(${residual})<=0.000001*MAX(1,ABS(${right})),${closed})` };
    this.tables.push({ heading, equation, columns, rows, found });
    return found;
  }
}
