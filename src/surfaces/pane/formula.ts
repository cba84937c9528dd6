import { placeOf } from './addresses.ts';
import type { Place } from './spreadsheet-host.ts';

/** One argument of a call, as far as the pane can read it; anything else is left to the spreadsheet. */
export type Argument =
  | { readonly kind: 'omitted' }
  | { readonly kind: 'value'; readonly value: number | string | boolean }
  | { readonly kind: 'reference'; readonly place: Place }
  | ({ readonly kind: 'call' } & Call)
  | { readonly kind: 'other'; readonly text: string };

export interface Call {
  /** In capitals, with its namespace: `BEDDING.DRYING.WATER`. */
  readonly name: string;
  readonly args: readonly Argument[];
}

/** Where a quoted text or sheet name that begins at `at` ends. */
function endOfQuote(text: string, at: number): number {
  const quote = text[at] as string;
  let end = text.indexOf(quote, at + 1);
  while (end >= 0 && text[end + 1] === quote) end = text.indexOf(quote, end + 2);
  return end < 0 ? text.length : end;
}

/** The argument texts between the bracket at `open` and its partner, and where that partner is. */
function bracketed(text: string, open: number): { readonly parts: readonly string[]; readonly close: number } {
  const parts: string[] = [];
  let depth = 0;
  let from = open + 1;
  for (let at = open; at < text.length; at++) {
    const sign = text[at] as string;
    if (sign === '"' || sign === "'") at = endOfQuote(text, at);
    else if ('({'.includes(sign)) depth++;
    else if (')}'.includes(sign) && --depth === 0) return { parts: [...parts, text.slice(from, at)], close: at };
    else if (sign === ',' && depth === 1) {
      parts.push(text.slice(from, at));
      from = at + 1;
    }
  }
  return { parts: [...parts, text.slice(from)], close: text.length };
}

const numberPattern = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?(%?)$/i;

/** `IF(B2:B9="","",B2:B9)` hands blank cells on as blanks where a host would make zeros of them: it stands for its range. */
const asGiven = /^IF\((.+)="","",\1\)$/i;

function argumentOf(raw: string, sheet: string): Argument {
  const text = raw.trim().replace(asGiven, '$1');
  if (text === '') return { kind: 'omitted' };
  const number = numberPattern.exec(text);
  if (number) return { kind: 'value', value: Number.parseFloat(text) / (number[3] ? 100 : 1) };
  if (/^(TRUE|FALSE)$/i.test(text)) return { kind: 'value', value: /^T/i.test(text) };
  if (text.startsWith('"') && endOfQuote(text, 0) === text.length - 1)
    return { kind: 'value', value: text.slice(1, -1).replaceAll('""', '"') };
  const place = placeOf(text, sheet);
  if (place) return { kind: 'reference', place };
  const [call] = callsIn(text, sheet);
  return call && call.start === 0 && call.end === text.length - 1
    ? { kind: 'call', name: call.name, args: call.args }
    : { kind: 'other', text };
}

interface FoundCall extends Call {
  readonly start: number;
  readonly end: number;
}

/** Every call in a formula of that sheet, outer ones before those inside them. */
export function callsIn(formula: string, sheet: string): readonly FoundCall[] {
  const found: FoundCall[] = [];
  const name = /[A-Za-z_][A-Za-z0-9_.]*(?=\()/y;
  for (let at = 0; at < formula.length; at++) {
    const sign = formula[at] as string;
    if (sign === '"' || sign === "'") {
      at = endOfQuote(formula, at);
      continue;
    }
    name.lastIndex = at;
    const match = name.exec(formula);
    if (match) {
      const { parts, close } = bracketed(formula, name.lastIndex);
      const args = parts.length === 1 && parts[0]?.trim() === '' ? [] : parts.map((part) => argumentOf(part, sheet));
      found.push({ name: match[0].toUpperCase(), args, start: at, end: close });
      at = name.lastIndex;
    } else {
      // A reference or number: pass over it whole, so that its tail is not taken for a name.
      while (/[A-Za-z0-9_.$]/.test(formula[at + 1] ?? '') && /[A-Za-z0-9_.$]/.test(sign)) at++;
    }
  }
  return found;
}

const references =
  /"(?:[^"]|"")*"|(?<![\w.])(?:(?:'(?:[^']|'')+'|[A-Za-z_][\w.]*)!)?\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?(?![\w(.])/gi;

/** The cells that a formula of that sheet reads, each once. */
export function placesIn(formula: string, sheet: string): readonly Place[] {
  const texts = new Set((formula.match(references) ?? []).filter((text) => !text.startsWith('"')).map((text) => text.replaceAll('$', '')));
  return [...texts].flatMap((text) => placeOf(text, sheet) ?? []);
}

/** A value as a formula writes it. */
export function literal(value: number | string | boolean): string {
  if (typeof value === 'string') return `"${value.replaceAll('"', '""')}"`;
  return typeof value === 'boolean' ? (value ? 'TRUE' : 'FALSE') : String(value);
}
