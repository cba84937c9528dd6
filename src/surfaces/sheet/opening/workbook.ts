import { most } from '../most.ts';
import { Archive } from './archive.ts';
import { textFrom } from './contents.ts';
import { type Names, standsFor } from './formula.ts';
import { type Looks, readLooks } from './looks.ts';
import { atMost, Refused } from './refusing.ts';
import { addressOf, type Book, SheetCells } from './sheet-cells.ts';
import { type Group, SheetFrame, type Size } from './sheet-frame.ts';
import { colourRules, entryRules } from './sheet-rules.ts';
import { type Loss, Tally } from './tally.ts';
import { type Attributes, childOf, childrenOf, type Element, textOf, treeOf, walk } from './xml.ts';

/** One sheet of a spreadsheet file, read as far as this page goes. */
export interface SheetRead {
  readonly name: string;
  readonly isVisible: boolean;
  readonly rowNumber: number;
  readonly colNumber: number;
  readonly contents: Record<string, string>;
  /** Blocks of cells and the number of their look. */
  readonly looks: Record<string, number>;
  readonly merges: readonly string[];
  readonly panes: { readonly xSplit: number; readonly ySplit: number };
  readonly rows: Record<number, Size>;
  readonly cols: Record<number, Size>;
  readonly headerGroups: { readonly ROW: readonly Group[]; readonly COL: readonly Group[] };
  /** For the grid's own reader: head, colour rules and entry rules of the sheet. */
  readonly head: string;
  readonly colourRules: string;
  readonly entryRules: string;
}

export interface WorkbookRead {
  readonly sheets: readonly SheetRead[];
  readonly looks: Looks;
  readonly theme: string | undefined;
  readonly rules: { readonly colour: number; readonly entry: number };
  readonly losses: Partial<Record<Loss, number>>;
  readonly unknownFunctions: readonly string[];
}

export interface Progress {
  readonly sheet: number;
  readonly sheets: number;
  readonly cells: number;
}

/** What the archive itself says of the parts that are not opened. */
const partsLeftOut: readonly (readonly [Loss, RegExp])[] = [
  ['charts', /\/charts\/chart[^/]*\.xml$/i],
  ['pictures', /\/media\/[^/]+$/i],
  ['pivots', /\/pivotTables\/[^/]+\.xml$/i],
  ['tables', /\/tables\/[^/]+\.xml$/i],
  ['notes', /\/comments[^/]*\.xml$/i],
  ['macros', /\/vbaProject\.bin$/i],
  ['chart sheets', /\/(chartsheets|dialogsheets|macrosheets)\/[^/]+\.xml$/i],
  ['controls', /\/(ctrlProps|activeX)\/[^/]+\.xml$/i],
];

/** Texts that cells share, without how they are spoken (ECMA-376 part 1, 18.4.8). */
function sharedStrings(xml: string | undefined): readonly string[] {
  const texts: string[] = [];
  let text = '';
  let takes = false;
  let phonetic = false;
  if (xml === undefined) return texts;
  walk(xml, {
    open: (name) => {
      if (name === 'si') text = '';
      if (name === 'rPh') phonetic = true;
      takes = name === 't' && !phonetic;
    },
    text: (content) => {
      if (takes) text += content;
    },
    close: (name) => {
      if (name === 't') takes = false;
      if (name === 'rPh') phonetic = false;
      if (name === 'si') texts.push(textFrom(text));
    },
  });
  return texts;
}

interface Listed {
  readonly name: string;
  readonly isVisible: boolean;
  readonly path: string;
}

/** The sheets in the order of their tabs. */
function listed(workbook: Element, targets: ReadonlyMap<string, { readonly target: string; readonly kind: string }>): readonly Listed[] {
  const all = childrenOf(childOf(workbook, 'sheets'), 'sheet');
  atMost(all.length, most.sheets, (count, limit) => `the file has ${count} sheets, and this page opens up to ${limit}`);
  const found = all.flatMap(({ attributes }): Listed[] => {
    const id = Object.entries(attributes).find(([key]) => key.endsWith(':id'))?.[1] ?? '';
    const { target, kind } = targets.get(id) ?? {};
    const name = attributes['name'] ?? '';
    if (name === '' || name.length > most.lettersInName || name in Object.prototype)
      throw new SyntaxError('a sheet without a name of its own');
    return target === undefined || kind !== 'worksheet'
      ? []
      : [{ name, isVisible: (attributes['state'] ?? 'visible') === 'visible', path: target }];
  });
  if (found.length === 0) throw new Refused('the file has no sheet with cells');
  if (new Set(found.map(({ name }) => name.toUpperCase())).size < found.length) throw new SyntaxError('two sheets of one name');
  return found;
}

/** Marks that no spreadsheet program lets into a sheet's name, as the grid's references could not be told from them. */
const nameHere = (name: string): string => name.replace(/[*?/\\[\]:]/g, '-');

/** What each defined name stands for on a sheet: the sheet's own first, then those of the workbook (ECMA-376 part 1, 18.2.5). */
function namesBySheet(defined: readonly Element[], bare: Names): (sheet: number) => Names {
  const scopes = new Map<string, Map<string, string | undefined>>();
  for (const name of defined) {
    const scope = name.attributes['localSheetId'] ?? '';
    const inScope = scopes.get(scope) ?? new Map<string, string | undefined>();
    scopes.set(scope, inScope.set((name.attributes['name'] ?? '').toUpperCase(), standsFor(textOf(name), bare)));
  }
  const ofAll = scopes.get('') ?? new Map();
  return (sheet) => {
    const own = scopes.get(String(sheet));
    return { ...bare, defined: own ? new Map([...ofAll, ...own]) : ofAll };
  };
}

/** The looks in blocks along each row: those of cells, else of their row, else of their column. */
function looksOf(cells: SheetCells, frame: SheetFrame, rows: number, columns: number, tally: Tally): Record<string, number> {
  const blocks: Record<string, number> = {};
  const told = [...cells.looks.values()].reduce((sum, row) => sum + row.size, 0);
  const wide = [...frame.columns].filter(([column, { look }]) => look > 0 && column <= columns);
  const rowsLook = [...frame.rows].some(([row, { look }]) => look > 0 && row <= rows);
  const whole = told + rows * (rowsLook ? columns : wide.length) <= most.cells;
  if (!whole && (rowsLook || wide.length > 0)) tally.add('looks of empty cells');
  const empty = new Map<number, number>();
  for (let row = 1; row <= rows; row++) {
    const own = cells.looks.get(row) ?? empty;
    const inRow = whole ? (frame.rows.get(row)?.look ?? 0) : 0;
    if (own.size === 0 && inRow === 0 && (!whole || wide.length === 0)) continue;
    const lookAt = (column: number): number => own.get(column) ?? (inRow || (whole && frame.columns.get(column)?.look) || 0);
    for (let start = 1; start <= columns; ) {
      const look = lookAt(start);
      let end = start;
      while (end < columns && lookAt(end + 1) === look) end++;
      if (look > 0) blocks[`${addressOf({ row, column: start })}:${addressOf({ row, column: end })}`] = look;
      start = end + 1;
    }
  }
  return blocks;
}

function readSheet(
  { name, isVisible, path }: Listed,
  archive: Archive,
  book: Book,
  names: Names,
): SheetRead & { readonly rules: WorkbookRead['rules'] } {
  const xml = archive.text(path);
  if (xml === undefined) throw new SyntaxError('a sheet without a part');
  const here = nameHere(name);
  const cells = new SheetCells(name, book, names);
  const frame = new SheetFrame(book.tally);
  walk(xml, {
    open: (element: string, attributes: Attributes) => {
      cells.open(element, attributes);
      frame.open(element, attributes);
    },
    text: (content) => {
      cells.text(content);
      frame.text(content);
    },
    close: (element) => {
      cells.close(element);
      frame.close();
    },
  });
  const [rowNumber, colNumber] = [
    Math.min(most.rows, Math.max(100, cells.last.row + 20)),
    Math.min(most.columns, Math.max(26, cells.last.column + 3)),
  ];
  const end = { row: rowNumber, column: colNumber };
  const colour = colourRules(frame.named('conditionalFormatting'), names, end);
  const entry = entryRules(frame.named('dataValidations'), names, end);
  return {
    name: here,
    isVisible,
    rowNumber,
    colNumber,
    contents: cells.contents,
    looks: looksOf(cells, frame, rowNumber, colNumber, book.tally),
    merges: frame.merges(end),
    panes: frame.panes(),
    rows: frame.sizes('rows', rowNumber),
    cols: frame.sizes('columns', colNumber),
    headerGroups: { ROW: frame.groups('rows', rowNumber), COL: frame.groups('columns', colNumber) },
    head: frame.head(),
    colourRules: colour.xml,
    entryRules: entry.xml,
    rules: { colour: colour.count, entry: entry.count },
  };
}

const isTrue = (value: string | undefined): boolean => value === '1' || value === 'true';

/**
 * Reads a spreadsheet file (ECMA-376, also with macros), in work that grows with its size and no faster.
 * Throws Refused with a sentence, or any other error where the file is damaged.
 */
export function readXlsx(bytes: Uint8Array, functions: ReadonlySet<string>, progress: (made: Progress) => void): WorkbookRead {
  const archive = new Archive(bytes);
  const path = [...archive.relations('').values()].find(({ kind }) => kind === 'officeDocument')?.target ?? 'xl/workbook.xml';
  const xml = archive.text(path);
  if (xml === undefined) throw new SyntaxError('no workbook');
  const workbook = treeOf(xml);
  const relations = archive.relations(path);
  const part = (kind: string): string | undefined => {
    const target = [...relations.values()].find((relation) => relation.kind === kind)?.target;
    return target === undefined ? undefined : archive.text(target);
  };
  const tally = new Tally();
  for (const [loss, pattern] of partsLeftOut) tally.add(loss, archive.names.filter((name) => pattern.test(name)).length);
  const sheets = listed(workbook, relations);
  tally.add('renamed sheets', sheets.filter(({ name }) => nameHere(name) !== name).length);
  const defined = childrenOf(childOf(workbook, 'definedNames'), 'definedName').filter(
    ({ attributes }) => !attributes['name']?.startsWith('_xlnm'),
  );
  atMost(defined.length, most.names, (count, limit) => `the file has ${count} defined names, and this page opens up to ${limit}`);
  tally.add('names', defined.filter(({ attributes }) => !isTrue(attributes['hidden'])).length);
  const known = new Set([...functions].filter((name) => name !== 'HYPERLINK'));
  const here = new Map(sheets.map(({ name }) => [name.toUpperCase(), nameHere(name)]));
  const from1904 = isTrue(childOf(workbook, 'workbookPr')?.attributes['date1904']);
  tally.add('dates from 1904', from1904 ? 1 : 0);
  const book: Book = {
    strings: sharedStrings(part('sharedStrings')),
    looks: readLooks(part('styles')),
    from1904,
    tally,
    filled: 0,
    letters: 0,
    progress: () => undefined,
  };
  const theme = part('theme');
  if (theme !== undefined) walk(theme, {});
  const tabs = childrenOf(childOf(workbook, 'sheets'), 'sheet').map(({ attributes }) => attributes['name']);
  const namesOn = namesBySheet(defined, { functions: known, sheets: here, defined: new Map() });
  const read = sheets.map((sheet, k) => {
    book.progress = (cells) => progress({ sheet: k + 1, sheets: sheets.length, cells });
    book.progress(book.filled);
    return readSheet(sheet, archive, book, namesOn(tabs.indexOf(sheet.name)));
  });
  return {
    sheets: read,
    looks: book.looks,
    theme,
    rules: { colour: read.reduce((sum, { rules }) => sum + rules.colour, 0), entry: read.reduce((sum, { rules }) => sum + rules.entry, 0) },
    losses: tally.counts,
    unknownFunctions: [...tally.functions],
  };
}
