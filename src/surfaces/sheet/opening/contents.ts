import { most } from '../most.ts';
import { converted, type Move, type Names, NotHere, tokens } from './formula.ts';
import type { Tally } from './tally.ts';

/** A value that a file holds, as itself. */
export type Stored = string | number | boolean;

/** The grid's word for an error that programs write otherwise (ECMA-376 part 1, 18.18.11); the others are alike. */
const errors: Readonly<Record<string, string>> = { '#VALUE!': '#ERROR', '#REF!': '#REF', '#CALC!': '#ERROR', '#GETTING_DATA': '#N/A' };

/** What the grid would take for a number, a date or a time: no letters but those of `e`, `AM` and `PM`. */
const likeNumber = /^(?=.*\d)[\d\s.,:/%$€eEaApPmM+-]*$/;
const likeTruth = /^(?:true|false)$/i;

/** What a program writes for a letter that XML does not let through (ECMA-376 part 1, 22.9.2.19). */
const unescaped = (text: string): string =>
  text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));

export const textFrom = (text: string): string => unescaped(text).replace(/\r\n?/g, '\n');

/** The text as the content of a cell that shows just this text: an apostrophe before it keeps the grid from reading it as something else. */
export function asText(text: string, tally: Tally): string {
  // The grid makes a link of `[words](address)`, whatever stands before it.
  const linked = /^\[.+\]\(.+\)$/.test(text);
  if (linked) tally.add('broken links');
  const plain = linked ? text.replaceAll('](', '] (') : text;
  const misread = /^['=]/.test(plain) || likeTruth.test(plain) || likeNumber.test(plain);
  return misread ? `'${plain}` : plain;
}

export function asContent(value: Stored, tally: Tally): string {
  if (typeof value === 'string') return asText(value, tally);
  return typeof value === 'number' ? String(value) : String(value).toUpperCase();
}

/** A day and time as ISO 8601 writes it, as the count of days that spreadsheets keep (ECMA-376 part 1, 18.17.4). */
function serial(text: string): number | undefined {
  const at = Date.parse(/T/.test(text) ? `${text.replace(/Z$/, '')}Z` : `${text}T00:00Z`);
  return Number.isNaN(at) ? undefined : at / 86_400_000 + 25_569;
}

export interface RawCell {
  readonly type: string;
  readonly value: string;
  readonly inline: string;
  /** Whether its look shows a number as a date. */
  readonly date: boolean;
}

/** The value that stands in a cell, or its error as the grid writes it. */
export function storedIn(
  { type, value, inline, date }: RawCell,
  strings: readonly string[],
  from1904: boolean,
): Stored | { error: string } {
  if (type === 's') return strings[Number(value)] ?? '';
  if (type === 'inlineStr') return textFrom(inline);
  if (type === 'str') return textFrom(value);
  if (type === 'b') return value.trim() === '1' || value.trim() === 'true';
  if (type === 'e') return { error: errors[value.trim()] ?? value.trim() };
  if (type === 'd') return serial(value.trim()) ?? value;
  const number = Number(value);
  if (value.trim() === '' || !Number.isFinite(number)) return textFrom(value);
  // Such a file counts its days from 1 January 1904 (ECMA-376 part 1, 18.2.28).
  return date && from1904 ? number + 1462 : number;
}

/** What stands in a formula's place where it cannot be worked out here: the value that it had, else its own text. */
function instead(formula: string, stored: Stored | { error: string }, tally: Tally): string {
  if (typeof stored === 'object') return stored.error;
  if (stored !== '') return asContent(stored, tally);
  tally.add('formula without value');
  return `'=${formula}`;
}

export interface Formula {
  readonly text: string;
  readonly parts?: ReturnType<typeof tokens>;
  readonly move?: Move;
}

/** The content of a cell with a formula, and whether it is worked out here. */
export function formulaContent(
  { text, parts, move }: Formula,
  stored: Stored | { error: string },
  names: Names,
  tally: Tally,
): { readonly content: string; readonly live: boolean } {
  try {
    if (text.length > most.lettersInFormula) throw new NotHere('form');
    const formula = `=${converted(parts ?? tokens(text), names, move)}`;
    if (formula.length <= most.lettersInFormula) return { content: formula, live: true };
    tally.add('value for length');
  } catch (fault) {
    if (!(fault instanceof NotHere)) throw fault;
    if (fault.message === 'HYPERLINK') tally.add('value for link');
    else {
      tally.add(text.length > most.lettersInFormula ? 'value for length' : `value for ${fault.reason}`);
      if (fault.reason === 'function') tally.functions.add(fault.message);
    }
  }
  return { content: instead(text, stored, tally), live: false };
}
