export interface Size {
  readonly rows: number;
  readonly columns: number;
}

/**
 * How ranges of different sizes line up, as native array formulas do: n×1 with 1×m gives n×m, a single value stretches.
 * Argument `k` keeps the value for a place in the answer at `row * rowStep[k] + column * columnStep[k]`.
 */
export interface Alignment extends Size {
  readonly rowStep: readonly number[];
  readonly columnStep: readonly number[];
  /** Some range ends before the answer does, so that a place may have no partner there. */
  readonly uneven: boolean;
}

export function align(sizes: readonly Size[]): Alignment {
  const rows = Math.max(1, ...sizes.map((size) => size.rows));
  const columns = Math.max(1, ...sizes.map((size) => size.columns));
  return {
    rows,
    columns,
    rowStep: sizes.map((size) => (size.rows === 1 ? 0 : size.columns)),
    columnStep: sizes.map((size) => (size.columns === 1 ? 0 : 1)),
    uneven: sizes.some((size) => (size.rows !== 1 && size.rows !== rows) || (size.columns !== 1 && size.columns !== columns)),
  };
}

/** Whether a range that may be stretched reaches this place of the answer. */
export const reaches = (size: Size, row: number, column: number): boolean =>
  (size.rows === 1 || row < size.rows) && (size.columns === 1 || column < size.columns);
