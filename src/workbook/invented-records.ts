/** Two invented years of a herd’s monthly record, twelve months before and twelve after the change of bedding. */

/** Serial number of the first day of a month, as spreadsheets count. */
const firstOf = (year: number, month: number): number => Date.UTC(year, month - 1, 1) / 86_400_000 + 25_569;

export const inventedChange = firstOf(2025, 11);

/** Undefined where nothing is on record: real books have gaps. */
type Row = readonly (number | string | undefined)[];

// cows, cases, E. coli, Klebsiella, streptococci, staphylococci, other; cell count; dry matter, litres, t bought; count, unit, organism, sample
const months: readonly Row[] = [
  [258, 9, 3, 0, 3, 0, 1, 187, 0.89, 9, 12.6],
  [260, 10, 3, 0, 4, 1, 0, 194, 0.88, 9, 13.1],
  [259, 8, 2, 0, 3, 0, 1, 190, 0.87, 9, 12.9],
  [261, 7, 2, 0, 2, 0, 0, 183, 0.88, 9, 12.2],
  [262, 6, 1, 0, 3, 0, 1, 176, 0.9, 9, 12.8, 4.1, 'log10 per g', 'coliforms', 'used'],
  [260, 5, undefined, undefined, undefined, undefined, undefined, 171, 0.9, 9, 12.4],
  [259, 6, 2, 0, 2, 1, 0, 174, 0.91, 9, 12.9],
  [260, 7, 3, 0, 2, 0, 1, 182, 0.91, 9, 13.2],
  [261, 8, 3, 1, 2, 0, 1, 189, 0.9, 9, 12.7, 9200, 'per g', 'coliforms', 'used'],
  [258, 7, 2, 0, 3, 0, 1, 186, 0.9, 9, 12.5],
  [259, 6, 2, 0, 2, 0, 0, 180, 0.89, 9, 12.4],
  [260, 8, 3, 0, 2, 1, 1, 185, 0.89, 9, 12.9],
  [261, 9, 3, 1, 3, 0, 1, 191, 0.55, 11, 4.1],
  [262, 8, 3, 0, 3, 0, 1, 198, 0.53, 11, 2.2],
  [263, 10, 4, 1, 3, 0, 1, 203, 0.5, 11, 2.6, 4.6, 'log10 per g', 'coliforms', 'used'],
  [260, 7, 3, 0, 2, 0, 1, 195, 0.51, 11, 2],
  [],
  [261, 6, 2, 0, 2, 0, 1, 181, 0.57, 11, 0.9],
  [262, 5, 2, 0, 1, 0, 1, undefined, 0.58, 11, 0],
  [260, 7, 2, 1, 2, 1, 0, 184, 0.58, 11, 0, 61_000, 'per g', 'coliforms', 'used'],
  [259, 9, 4, 1, 2, 0, 1, 193, 0.57, 11, 0],
  [258, 7, 3, 0, 2, 0, 1, 188, 0.57, 11, 0],
  [260, 6, 2, 0, 2, 0, 1, 183, 0.56, 11, 0.7],
  [261, 8, 3, 0, 3, 0, 1, 189, 0.55, 11, 1.1],
];

/** By row of the record: the month and what was written beside it. */
export const inventedRecords: readonly Row[] = months.map((row, k) => (row.length === 0 ? [] : [firstOf(2024, 11 + k), ...row]));
