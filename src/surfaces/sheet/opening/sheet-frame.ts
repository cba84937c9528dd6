import { most } from '../most.ts';
import { type Place, placeOf } from './sheet-cells.ts';
import type { Tally } from './tally.ts';
import { type Attributes, Builder, childOf, childrenOf, type Element, type Listener, written } from './xml.ts';

export interface Size {
  readonly size?: number;
  readonly isHidden?: boolean;
}
interface Header extends Size {
  readonly level: number;
  readonly look: number;
}
export interface Group {
  readonly start: number;
  readonly end: number;
  readonly isFolded: boolean;
}

/** The grid's own measures of a row's points and a column's characters, so that a file goes out and comes back alike. */
const pointsAPixel = 0.75;
const charactersAPixel = 0.143;

const isTrue = (value: string | undefined): boolean => value === '1' || value === 'true';

function headerOf(attributes: Attributes, measure: string | undefined, by: number, style: string | undefined): Header {
  const size = Number(measure);
  return {
    ...(Number.isFinite(size) && measure !== undefined && { size: Math.min(10_000, Math.max(0, Math.round(size / by))) }),
    ...(isTrue(attributes['hidden']) && { isHidden: true }),
    level: Math.min(7, Number(attributes['outlineLevel'] ?? 0) || 0),
    look: Number(style ?? 0) || 0,
  };
}

/** Rows or columns that lie one level deep together, as the grid folds them; those alike are one. */
function groupsOf(headers: ReadonlyMap<number, Header>, count: number): readonly Group[] {
  const groups = new Map<string, Group>();
  for (let level = 1; level <= 7; level++) {
    let start = 0;
    for (let k = 1; k <= count + 1; k++) {
      const inside = k <= count && (headers.get(k)?.level ?? 0) >= level;
      if (inside && start === 0) start = k;
      if (inside || start === 0) continue;
      const isFolded = Array.from({ length: k - start }, (_, at) => headers.get(start + at)?.isHidden).every(Boolean);
      groups.set(`${start}:${k}`, { start: start - 1, end: k - 2, isFolded });
      start = 0;
    }
  }
  return [...groups.values()];
}

function sizesOf(headers: ReadonlyMap<number, Header>, count: number, groups: readonly Group[]): Record<number, Size> {
  const sizes: Record<number, Size> = {};
  const inFold = new Set<number>();
  for (const { start, end, isFolded } of groups) if (isFolded) for (let k = start; k <= end; k++) inFold.add(k);
  for (const [k, { size, isHidden }] of headers) {
    if (k > count || (size === undefined && !isHidden)) continue;
    // What is folded away is hidden by its group.
    sizes[k - 1] = { ...(size !== undefined && { size }), ...(isHidden && !inFold.has(k - 1) && { isHidden }) };
  }
  return sizes;
}

const takenWhole = new Set(['sheetPr', 'sheetViews', 'mergeCells', 'conditionalFormatting', 'dataValidations']);

/** Reads what of a sheet is not cells: sizes, groups, merges, frozen rows; and keeps its rules. */
export class SheetFrame implements Listener {
  readonly rows = new Map<number, Header>();
  readonly columns = new Map<number, Header>();
  readonly #tally: Tally;
  readonly #parts: Element[] = [];
  readonly #builder = new Builder((element) => this.#parts.push(element));
  #row = 0;

  constructor(tally: Tally) {
    this.#tally = tally;
  }

  open(name: string, attributes: Attributes): void {
    if (this.#builder.busy || takenWhole.has(name)) this.#builder.open(name, attributes);
    else if (name === 'row') this.#openRow(attributes);
    else if (name === 'col') this.#openColumns(attributes);
    else if (name === 'hyperlink') this.#tally.add('links');
    else if (name === 'autoFilter') this.#tally.add('filters');
    else if (name === 'sheetProtection' && isTrue(attributes['sheet'])) this.#tally.add('protected sheets');
  }

  text(content: string): void {
    if (this.#builder.busy) this.#builder.text(content);
  }

  close(): void {
    if (this.#builder.busy) this.#builder.close();
  }

  #openRow(attributes: Attributes): void {
    this.#row = attributes['r'] === undefined ? this.#row + 1 : Number(attributes['r']);
    const header = headerOf(attributes, attributes['ht'], pointsAPixel, attributes['s']);
    const told = header.size !== undefined || header.isHidden || header.level > 0 || header.look > 0;
    if (told && this.#row <= most.rows) this.rows.set(this.#row, header);
  }

  #openColumns(attributes: Attributes): void {
    const header = headerOf(attributes, attributes['width'], charactersAPixel, attributes['style']);
    const last = Math.min(Number(attributes['max']), most.columns);
    for (let column = Math.max(1, Number(attributes['min'])); column <= last; column++) this.columns.set(column, header);
  }

  /** What stands in the sheet under one name, whole. */
  named(name: string): readonly Element[] {
    return this.#parts.filter((part) => part.name === name);
  }

  /** Columns and rows that stay in sight (ECMA-376 part 1, 18.3.1.66); panes that are only split are none. */
  panes(): { xSplit: number; ySplit: number } {
    const view = childOf(this.named('sheetViews')[0], 'sheetView');
    const { state = '', xSplit, ySplit } = childOf(view, 'pane')?.attributes ?? {};
    const count = (value: string | undefined): number =>
      state.startsWith('frozen') ? Math.min(50, Math.max(0, Math.floor(Number(value ?? 0)) || 0)) : 0;
    return { xSplit: count(xSplit), ySplit: count(ySplit) };
  }

  /** Blocks of cells that are one, without those that meet another, which the standard forbids. */
  merges(within: Place): readonly string[] {
    const taken = new Set<number>();
    let looked = 0;
    const isFree = (start: Place, end: Place): boolean => {
      for (let row = start.row; row <= end.row; row++)
        for (let column = start.column; column <= end.column; column++)
          if (looked++ > most.cells || taken.has(row * 1000 + column)) return false;
      return true;
    };
    return childrenOf(this.named('mergeCells')[0], 'mergeCell').flatMap(({ attributes: { ref = '' } }) => {
      const [start, end] = ref.split(':').map(placeOf);
      if (!start || !end || end.row > within.row || end.column > within.column || !isFree(start, end)) return [];
      for (let row = start.row; row <= end.row; row++)
        for (let column = start.column; column <= end.column; column++) taken.add(row * 1000 + column);
      return [ref.replaceAll('$', '')];
    });
  }

  groups(dimension: 'rows' | 'columns', count: number): readonly Group[] {
    return groupsOf(this[dimension], count);
  }

  sizes(dimension: 'rows' | 'columns', count: number): Record<number, Size> {
    return sizesOf(this[dimension], count, this.groups(dimension, count));
  }

  /** The colour of the tab and whether lines are drawn, as the grid's own reader takes them. */
  head(): string {
    const colour = childOf(this.named('sheetPr')[0], 'tabColor');
    const lines = childOf(this.named('sheetViews')[0], 'sheetView')?.attributes['showGridLines'] ?? '1';
    const drawn = lines === '0' || lines === 'false' ? '0' : '1';
    return `<sheetPr>${colour ? written(colour) : ''}</sheetPr><sheetViews><sheetView showGridLines="${drawn}"/></sheetViews>`;
  }
}
