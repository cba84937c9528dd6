/** How a set of ranges of different sizes lines up, as native array formulas do: n×1 with 1×m gives n×m, a single value stretches. */
export interface Alignment {
  readonly rows: number;
  readonly columns: number;
  /** Where argument `k` keeps the value for a place in the answer, or -1 where its range has no partner there. */
  readonly indexOf: (k: number, row: number, column: number) => number;
}

export interface Size {
  readonly rows: number;
  readonly columns: number;
}

export function align(sizes: readonly Size[]): Alignment {
  let rows = 1;
  let columns = 1;
  for (const size of sizes) {
    rows = Math.max(rows, size.rows);
    columns = Math.max(columns, size.columns);
  }
  const indexOf = (k: number, row: number, column: number): number => {
    const size = sizes[k] as Size;
    const r = size.rows === 1 ? 0 : row;
    const c = size.columns === 1 ? 0 : column;
    return r < size.rows && c < size.columns ? r * size.columns + c : -1;
  };
  return { rows, columns, indexOf };
}
