/** Addresses as spreadsheets write them. */

const letterA = 'A'.charCodeAt(0);

/** `A` for 0, `AA` for 26. */
export const letter = (column: number): string =>
  column < 26 ? String.fromCharCode(letterA + column) : letter(Math.floor(column / 26) - 1) + letter(column % 26);

const columnOf = (letters: string): number => [...letters].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - letterA + 1, 0) - 1;

/** Column and row of an address, both counted from 0. */
export function placeOf(address: string): { column: number; row: number } {
  const [, letters = '', digits = ''] = /^\$?([A-Z]+)\$?(\d+)$/.exec(address) ?? [];
  return { column: columnOf(letters), row: Number(digits) - 1 };
}

export const addressOf = (column: number, row: number): string => `${letter(column)}${row + 1}`;

export function moved(address: string, right: number, down = 0): string {
  const { column, row } = placeOf(address);
  return addressOf(column + right, row + down);
}

/** `$B$7` or `$B$7:$C$9`: stays put when the formula that holds it is copied. */
export const fixed = (address: string): string => address.replace(/([A-Z]+)(\d+)/g, '$$$1$$$2');

/** `'Udder health'!$B$7`: the address as other sheets write it. */
export const on = (sheet: string, address: string): string => `${/\W/.test(sheet) ? `'${sheet}'` : sheet}!${fixed(address)}`;

export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** A range with its empty cells as empty text: Excel on Windows hands an empty cell to our functions as 0. */
export const asGiven = (range: string): string => `IF(${range}="","",${range})`;

/** A dash where there is no answer yet; the sentence that says why stands on Answer, Inputs and Figures. */
export const orDash = (formula: string): string => `=IFERROR(${formula},"–")`;

/** A dash until every cell named in it is filled in; then the formula's own answer, or the sentence that says what is wrong. */
export function onceTyped(formula: string): string {
  const names = [...new Set(formula.match(/\{\w+\}/g) ?? [])];
  return names.length === 0 ? orDash(formula) : `=IF(COUNT(${names.join(',')})<${names.length},"–",${formula})`;
}
