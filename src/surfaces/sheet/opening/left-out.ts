import type { Reason } from './formula.ts';
import { inDigits } from './refusing.ts';
import type { Loss } from './tally.ts';

type Counts = Partial<Record<Loss, number>>;

const leftOut: Partial<Record<Loss, readonly [one: string, many: string]>> = {
  charts: ['chart', 'charts'],
  pictures: ['picture', 'pictures'],
  pivots: ['pivot table', 'pivot tables'],
  links: ['link', 'links'],
  notes: ['sheet’s notes', 'sheets’ notes'],
  tables: ['table’s frame', 'tables’ frames'],
  filters: ['filter', 'filters'],
  'chart sheets': ['sheet without cells', 'sheets without cells'],
  controls: ['button or control', 'buttons and controls'],
  macros: ['set of macros', 'sets of macros'],
  'colour rules': ['colouring rule', 'colouring rules'],
  'entry rules': ['rule of entry', 'rules of entry'],
  'number formats': ['form of numbers', 'forms of numbers'],
  'protected sheets': ['sheet’s protection', 'sheets’ protection'],
  'looks of empty cells': ['sheet’s looks of empty cells', 'sheets’ looks of empty cells'],
};

const reasons: Readonly<Record<Reason | 'link' | 'length' | 'data table', string>> = {
  function: 'with functions that this page does not know',
  'other file': 'that read another file',
  table: 'that name a table',
  name: 'that use a name worked out by a formula',
  form: 'written in a way that this page cannot read',
  link: 'that made a link',
  length: 'longer than spreadsheet programs take',
  'data table': 'of a what-if table',
};

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;

const counted = (count: number, one: string, many: string): string => `${inDigits(count)} ${count === 1 ? one : many}`;

/** At most this many functions are named. */
const named = 6;

function asValues(counts: Counts, functions: readonly string[]): string {
  const shown = functions.slice(0, named).join(', ') + (functions.length > named ? ' and others' : '');
  const parts = Object.entries(reasons).flatMap(([reason, words]) => {
    const count = counts[`value for ${reason as keyof typeof reasons}`] ?? 0;
    return count === 0 ? [] : [`${inDigits(count)} ${words}${reason === 'function' ? ` (${shown})` : ''}`];
  });
  if (parts.length === 0) return '';
  const lost = counts['formula without value'] ?? 0;
  return `Formulas that are now the value they had: ${listed(parts)}${lost > 0 ? `; ${inDigits(lost)} of them had none and stand as text` : ''}.`;
}

/** What of a file came along otherwise than it was, or not at all, counted by kind; empty where all of it did. */
export function whatIsLeftOut(counts: Counts, functions: readonly string[]): string {
  const out = Object.entries(leftOut).flatMap(([loss, [one, many]]) => {
    const count = counts[loss as Loss] ?? 0;
    return count === 0 ? [] : [counted(count, one, many)];
  });
  if (counts.looks) out.push('all looks of cells');
  const names = counts.names ?? 0;
  const renamed = counts['renamed sheets'] ?? 0;
  const links = counts['broken links'] ?? 0;
  return [
    out.length > 0 ? `Left out: ${listed(out)}.` : '',
    asValues(counts, functions),
    names > 0 ? `Formulas hold the cells and values themselves in place of ${counted(names, 'defined name', 'defined names')}.` : '',
    renamed > 0
      ? `${counted(renamed, 'sheet has', 'sheets have')} another mark in the name, where no spreadsheet program lets its own stand.`
      : '',
    links > 0 ? `${counted(links, 'text', 'texts')} written as a link got a space, to stay text.` : '',
    counts['dates from 1904'] ? 'Its days, counted from 1904, are now counted as here.' : '',
  ]
    .filter(Boolean)
    .join(' ');
}
