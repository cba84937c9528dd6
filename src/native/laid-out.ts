import { addressOf, placeOf } from '../workbook/grid.ts';
import { Calls } from './calls.ts';
import { solvingSheet, workingSheet } from './sheets.ts';
import { solvingName, workingName } from './steps.ts';

/** An argument as a formula writes it, or a call of ours that gives it; undefined where it is left out. */
export type Handed = string | undefined | { readonly name: string; readonly args: readonly Handed[] };

/** What one call comes to in native formulas. */
export interface LaidOut {
  /** Row by row, from the top left cell on; null where nothing stands. */
  readonly contents: readonly (readonly (string | number | boolean | null)[])[];
  /** The cell of the answer. */
  readonly answer: string;
}

/** Rows of the sheets of a whole plan that do not come along: title and what the sheet is for. */
const above = 3;

/** Words that would be taken for a formula. */
const asWords = (text: string): string => (/^[-+@']/.test(text) ? `'${text}` : text);

/** Texts and cells of other sheets, which stay as they are; and cells of the sheets that are laid out. */
const references = /"[^"]*"|'(?:[^']|'')+'![$A-Z\d:]+|(?:(Working|Solving)!)?\b([A-Z]{1,3}\d+)\b(?!\()/g;

/**
 * One call step by step in formulas that any spreadsheet program knows, where its top left cell is given. What is found by
 * halving stands below the steps. Throws where a step of the function is told in words alone.
 */
export function layOut({ name, args }: Exclude<Handed, string | undefined>, corner: string): LaidOut {
  const calls = new Calls();
  const textOf = (handed: Handed): string | undefined =>
    typeof handed === 'object' ? calls.call(handed.name, handed.args.map(textOf)) : handed;
  const answer = calls.call(name, args.map(textOf));
  const { column: left, row: top } = placeOf(corner);
  const [working, solving] = [workingSheet(calls.steps), solvingSheet(calls.solving)];
  const rowsOfWorking = calls.steps.lines.length + 1;
  const starts = new Map([
    [workingName, top - above],
    [solvingName, top + rowsOfWorking + 1 - above],
  ]);
  const here = (formula: string, on: string): string =>
    formula.replace(references, (whole, sheet: string | undefined, address: string | undefined) => {
      if (address === undefined) return whole;
      const place = placeOf(address);
      return addressOf(place.column + left, place.row + (starts.get(sheet ?? on) as number));
    });
  const filled = new Map<string, string | number | boolean>();
  for (const { name: sheet, cells } of calls.solving.tables.length > 0 ? [working, solving] : [working]) {
    for (const [address, { content }] of Object.entries(cells)) {
      const { column, row } = placeOf(address);
      if (row < above || content === '') continue;
      const text = typeof content !== 'string' ? content : content.startsWith('=') ? here(content, sheet) : asWords(content);
      filled.set(addressOf(column + left, row + (starts.get(sheet) as number)), text);
    }
  }
  const places = [...filled.keys()].map(placeOf);
  const [bottom, right] = [Math.max(...places.map(({ row }) => row)), Math.max(...places.map(({ column }) => column))];
  const contents = Array.from({ length: bottom - top + 1 }, (_, r) =>
    Array.from({ length: right - left + 1 }, (_, c) => filled.get(addressOf(left + c, top + r)) ?? null),
  );
  return { contents, answer: here(answer, workingName) };
}
