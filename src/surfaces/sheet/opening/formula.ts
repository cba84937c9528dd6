/** A piece of a formula as it stands in a file (ECMA-376 part 1, 18.17.2). */
interface Token {
  readonly kind: 'string' | 'quoted' | 'error' | 'lines' | 'call' | 'sheet' | 'cell' | 'number' | 'name' | 'space' | 'mark';
  readonly text: string;
}

const letter = String.raw`[\p{L}_\\]`;
const inWord = String.raw`[\p{L}\p{N}_.\\?]`;
const kinds: Readonly<Record<Token['kind'], string>> = {
  string: `"(?:[^"]|"")*"`,
  quoted: `'(?:[^']|'')*'!`,
  error: String.raw`#(?:N\/A|REF!|VALUE!|DIV\/0!|NAME\?|NULL!|NUM!)`,
  lines: String.raw`\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}(?![\p{L}\p{N}_.(!$\\])|\$?\d{1,7}:\$?\d{1,7}(?![\p{L}\p{N}_.(!])`,
  call: String.raw`${letter}${inWord}*\(`,
  sheet: `${inWord}+!`,
  cell: String.raw`\$?[A-Za-z]{1,3}\$?[1-9]\d{0,6}(?![\p{L}\p{N}_.(!\\])`,
  number: String.raw`(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`,
  name: `${letter}${inWord}*`,
  space: String.raw`\s+`,
  mark: '<=|>=|<>|[-+*/^&=<>(),:;%{}]',
};
const token = new RegExp(
  Object.entries(kinds)
    .map(([kind, form]) => `(?<${kind}>${form})`)
    .join('|'),
  'uy',
);

/** Why a formula cannot go on being worked out here. */
export type Reason = 'function' | 'other file' | 'table' | 'name' | 'form';

export class NotHere extends Error {
  readonly reason: Reason;

  constructor(reason: Reason, what = '') {
    super(what);
    this.reason = reason;
  }
}

/** The pieces of a formula, each letter looked at a few times at most however it is built. */
export function tokens(formula: string): readonly Token[] {
  const found: Token[] = [];
  token.lastIndex = 0;
  while (token.lastIndex < formula.length) {
    const at = token.lastIndex;
    const groups = token.exec(formula)?.groups;
    if (!groups) throw new NotHere(formula[at] !== '[' ? 'form' : /^\d+\]/.test(formula.slice(at + 1, at + 12)) ? 'other file' : 'table');
    for (const kind in groups) if (groups[kind] !== undefined) found.push({ kind: kind as Token['kind'], text: groups[kind] });
  }
  return found;
}

/** What a formula of the file may name. */
export interface Names {
  /** Functions that are known here, in capitals. */
  readonly functions: ReadonlySet<string>;
  /** Defined names in capitals, and what stands in their place; undefined for one that cannot be put in place. */
  readonly defined: ReadonlyMap<string, string | undefined>;
  /** The sheets' names in capitals, and what each is called here. */
  readonly sheets: ReadonlyMap<string, string>;
}

/** How far a formula that is shared has moved from the cell that it was written for. */
export interface Move {
  readonly rows: number;
  readonly columns: number;
}

const numberOf = (letters: string): number => [...letters].reduce((sum, one) => 26 * sum + (one.charCodeAt(0) & 31), 0);

export function lettersOf(column: number): string {
  return column <= 0 ? '' : lettersOf(Math.floor((column - 1) / 26)) + String.fromCharCode(65 + ((column - 1) % 26));
}

/** The reference as it reads from the cell it has moved to: what has no `$` moves with it. */
function moved(reference: string, { rows, columns }: Move): string {
  let outside = false;
  const text = reference.replace(/(\$?)([A-Za-z]{1,3})(?=[$\d]|$|:)|(\$?)(\d+)/g, (whole, fixed, letters, fixedRow, row) => {
    const number: number = letters === undefined ? Number(row) + (fixedRow ? 0 : rows) : numberOf(letters) + (fixed ? 0 : columns);
    outside ||= number < 1;
    if (fixed || fixedRow) return whole;
    return letters === undefined ? String(number) : lettersOf(number);
  });
  return outside ? '#REF' : text;
}

/** A sheet's name as a formula writes it. */
const prefixOf = (name: string): string => (/^[A-Za-z_]\w*$/.test(name) ? `${name}!` : `'${name.replaceAll("'", "''")}'!`);

const prefixes = /^(?:_xlfn\.|_xlws\.|_xll\.|_xludf\.)+/i;

/** Functions that the grid has under another name, called alike. */
const alike: Readonly<Record<string, string>> = { LOG10: 'LOG' };

function called(text: string, { functions }: Names): string {
  const own = text.slice(0, -1).replace(prefixes, '').toUpperCase();
  const name = functions.has(own) ? own : (alike[own] ?? own);
  if (!functions.has(name)) throw new NotHere('function', name);
  return `${name}(`;
}

function onSheet({ kind, text }: Token, { sheets }: Names): string {
  const name = kind === 'quoted' ? text.slice(1, -2).replaceAll("''", "'") : text.slice(0, -1);
  if (name.includes('[')) throw new NotHere('other file');
  if (name.includes(':')) throw new NotHere('form');
  const here = sheets.get(name.toUpperCase());
  return here === undefined ? '#REF' : prefixOf(here);
}

function named(text: string, { defined }: Names): string {
  const name = text.toUpperCase();
  if (name === 'TRUE' || name === 'FALSE') return name;
  const instead = defined.get(name);
  if (instead === undefined) throw new NotHere('name', text);
  return instead;
}

function errorHere(text: string): string {
  if (text === '#N/A') return 'NA()';
  if (text === '#REF!') return '#REF';
  throw new NotHere('form');
}

const ends = ({ kind, text }: Token): boolean =>
  ['string', 'error', 'lines', 'cell', 'number', 'name'].includes(kind) || [')', '}', '%'].includes(text);
const begins = ({ kind, text }: Token): boolean => (kind === 'mark' ? text === '(' || text === '{' : kind !== 'space');

/** What the grid cannot parse: blocks that cross or are joined, and a block whose end is worked out. */
function checkForm(all: readonly Token[]): void {
  const solid = all.filter(({ kind }) => kind !== 'space');
  const brackets: string[] = [];
  solid.forEach((one, k) => {
    const [before, behind] = [solid[k - 1], solid[k + 1]];
    const joined = one.text === ',' && brackets.at(-1) === '(';
    const crossed = before !== undefined && ends(before) && begins(one);
    const halfBlock = one.text === ':' && (before?.kind !== 'cell' || behind?.kind !== 'cell');
    if (joined || crossed || halfBlock) throw new NotHere('form');
    if (one.kind === 'call' || one.text === '(' || one.text === '{') brackets.push(one.kind === 'call' ? 'call' : one.text);
    if ((one.text === ')' || one.text === '}') && brackets.pop() === undefined) throw new NotHere('form');
  });
  if (solid.length === 0 || brackets.length > 0) throw new NotHere('form');
}

function here({ kind, text }: Token, names: Names, move: Move): string {
  if (kind === 'call') return called(text, names);
  if (kind === 'cell' || kind === 'lines') return move.rows === 0 && move.columns === 0 ? text : moved(text, move);
  if (kind === 'name') return named(text, names);
  return kind === 'error' ? errorHere(text) : text;
}

/** The formula as the grid reads it, without its `=`; throws NotHere with the reason where it cannot be worked out here. */
export function converted(all: readonly Token[], names: Names, move: Move = { rows: 0, columns: 0 }): string {
  checkForm(all);
  let text = '';
  let gone = false;
  all.forEach((one, k) => {
    if (one.kind === 'sheet' || one.kind === 'quoted') {
      const prefix = all[k + 1]?.kind === 'error' ? '' : onSheet(one, names);
      gone = prefix === '#REF';
      text += prefix;
      return;
    }
    // Of a block on a sheet that is not there, only the error stays.
    gone &&= one.kind === 'cell' || one.kind === 'lines' || one.text === ':';
    if (!gone) text += here(one, names, move);
  });
  return text;
}

/** What a defined name stands for, where that can be written in its place: a block of cells that stays put, or a value. */
export function standsFor(formula: string, names: Names): string | undefined {
  try {
    const all = tokens(formula);
    const solid = all.filter(({ kind }) => kind !== 'space');
    const form = solid.map(({ kind, text }) => (kind === 'mark' ? text : kind)).join(' ');
    const stays = solid.every(({ kind, text }) => (kind !== 'cell' && kind !== 'lines') || !/(^|:|[A-Za-z])(?!\$)[A-Za-z\d]/.test(text));
    if (/^(sheet|quoted) (cell( : cell)?|lines)$/.test(form) && stays) return converted(all, names);
    if (/^(-? ?number|string)$/.test(form)) return form.startsWith('-') ? `(${formula})` : formula;
    return undefined;
  } catch (fault) {
    if (fault instanceof NotHere) return undefined;
    throw fault;
  }
}
