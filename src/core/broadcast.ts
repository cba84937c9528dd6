export interface Size {
  readonly rows: number;
  readonly columns: number;
}

/** The size of the answer. */
interface Alignment extends Size {
  /** Some range ends before the answer does, so that a place may have no partner there. */
  readonly uneven: boolean;
}

/** How ranges of different sizes line up, as native array formulas do: n×1 with 1×m gives n×m, a single value stretches. */
export function align(sizes: readonly Size[]): Alignment {
  const rows = Math.max(1, ...sizes.map((size) => size.rows));
  const columns = Math.max(1, ...sizes.map((size) => size.columns));
  return { rows, columns, uneven: sizes.some((size) => !reaches(size, rows - 1, columns - 1)) };
}

/** Whether a range that may be stretched reaches this place of the answer. */
export const reaches = (size: Size, row: number, column: number): boolean =>
  (size.rows === 1 || row < size.rows) && (size.columns === 1 || column < size.columns);
