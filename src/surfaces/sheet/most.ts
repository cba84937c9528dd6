/** Workbooks up to this size still open in a moment; the grid takes any size that a file claims, and hangs. */
export const most = {
  sheets: 200,
  rows: 100_000,
  columns: 702,
  cells: 300_000,
  looks: 65_000,
  rules: 2000,
  merges: 20_000,
  names: 10_000,
  letters: 40_000_000,
  lettersInCell: 1_000_000,
  /** Microsoft's 'Excel specifications and limits', length of formula contents (from memory); the grid hangs on much longer ones. */
  lettersInFormula: 8192,
  lettersInName: 1000,
};
