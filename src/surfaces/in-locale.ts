/** How a place writes its numbers. */
export interface Marks {
  readonly group: string;
  readonly decimal: string;
}

const known = new Map<string, Marks>();

/** @param locale a BCP 47 tag, e.g. `de-DE` */
export function marksOf(locale: string): Marks {
  const before = known.get(locale);
  if (before) return before;
  const parts = new Intl.NumberFormat(locale, { useGrouping: true }).formatToParts(1_234_567.8);
  const mark = (type: string) => parts.find((part) => part.type === type)?.value ?? '';
  const marks = { group: mark('group'), decimal: mark('decimal') };
  known.set(locale, marks);
  return marks;
}

/** What was quoted stays as it was typed, and a name in square brackets as it is spelled. */
const asItStands = /"[^"]*"|“[^”]*”|\[[^\]]*\]/;

/**
 * 1,234.5 or 0.35 as `spell` writes them, standing alone: no part of a version, a date, an address or a DOI, and not the
 * number of a table or an equation.
 */
const number =
  /(?<![\p{L}\p{N}_/]|[\p{N}][.,:-]|\b(?:chapter|equation|eq\.|example|fig\.|figure|part|section|table|version) )(?:\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d+\.\d+)(?:e[-+]?\d+)?(?![\p{L}\p{N}_/]|[.,:]\p{N})/iu;

const pieces = new RegExp(`${asItStands.source}|${number.source}|[(),]`, 'giu');

/**
 * A sentence of ours with its numbers as the locale writes them. Where the comma is a decimal mark, semicolons part the
 * arguments of a call in it, as they do in that locale's formulas.
 */
export function inLocale(sentence: string, locale: string): string {
  const { group, decimal } = marksOf(locale);
  if (decimal === '.' && group === ',') return sentence;
  const brackets: boolean[] = [];
  return sentence.replace(pieces, (piece, at: number) => {
    if (/^["“[]/.test(piece)) return piece;
    if (piece === '(') brackets.push(/\w/.test(sentence[at - 1] ?? ''));
    if (piece === ')') brackets.pop();
    const ofCall = brackets.at(-1) === true && decimal === ',';
    if (piece === ',') return ofCall ? ';' : piece;
    return piece.replace(/[.,]/g, (mark) => (mark === '.' ? decimal : ofCall ? ';' : group));
  });
}
