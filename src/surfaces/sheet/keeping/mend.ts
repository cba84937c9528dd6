import { helpers, type WorkbookData } from '@odoo/o-spreadsheet';
import { Unreadable } from '../readable.ts';
import { most, workbookShape } from '../workbook-shape.ts';

type Part = Record<string, unknown>;

/** What was left out so that the rest opens: how many of what. */
export type LeftOut = ReadonlyMap<string, number>;

/** What a part of a workbook is called to its user. A fault anywhere within one of them costs that one alone. */
const parts: Readonly<Record<string, string>> = {
  cells: 'cells',
  styles: 'looks',
  formats: 'looks',
  borders: 'looks',
  merges: 'merged blocks',
  rows: 'row settings',
  cols: 'column settings',
  headerGroups: 'groups of rows or columns',
  panes: 'frozen panes',
  conditionalFormats: 'colour rules',
  dataValidationRules: 'entry rules',
  tables: 'tables',
  figures: 'charts',
  pivots: 'tables',
  customTableStyles: 'looks',
  namedRanges: 'names',
};
const tooLong = `formulas of over ${most.lettersInFormula.toLocaleString('en-GB')} letters, now text`;
/** These stand alone; the others hold many, and only those at fault go. */
const single = new Set(['headerGroups', 'panes']);

/** `B2`, `A1:C9`. */
const isBlock = /^[A-Z]{1,3}[1-9]\d{0,6}(:[A-Z]{1,3}[1-9]\d{0,6})?$/;

const isPart = (value: unknown): value is Part => typeof value === 'object' && value !== null;

const sizeOf = (address: string): number => {
  const { left, top, right, bottom } = helpers.toZone(address);
  return (right - left + 1) * (bottom - top + 1);
};

class Mending {
  readonly leftOut = new Map<string, number>();

  #count(what: string, howMany: number): void {
    if (howMany > 0) this.leftOut.set(what, (this.leftOut.get(what) ?? 0) + howMany);
  }

  #first<T>(list: unknown, highest: number, what: string): T[] {
    const all = Array.isArray(list) ? (list as T[]) : [];
    this.#count(what, all.length - highest);
    return all.slice(0, highest);
  }

  /** As much of the sheet as fits a sheet that opens; a cell that the grid has no place for cannot be shown anyway. */
  #fit(sheet: Part): void {
    const within = (value: unknown, highest: number): number =>
      Number.isInteger(value) && (value as number) >= 1 ? Math.min(value as number, highest) : highest;
    const [rows, columns] = [within(sheet['rowNumber'], most.rows), within(sheet['colNumber'], most.columns)];
    Object.assign(sheet, { rowNumber: rows, colNumber: columns });
    if (typeof sheet['name'] === 'string') sheet['name'] = sheet['name'].slice(0, most.lettersInName);
    sheet['merges'] = this.#first(sheet['merges'], 20_000, 'merged blocks');
    sheet['figures'] = this.#first(sheet['figures'], 1000, 'charts');
    const inside = (address: string): boolean => {
      if (!isBlock.test(address)) return false;
      const { left, top, right, bottom } = helpers.toZone(address);
      return left <= right && top <= bottom && right < columns && bottom < rows;
    };
    let room = most.cells;
    const fits = (address: string): boolean => {
      if (!inside(address)) return false;
      room -= sizeOf(address);
      return room >= 0;
    };
    for (const name of ['cells', 'styles', 'formats', 'borders'] as const) {
      const given = isPart(sheet[name]) ? sheet[name] : {};
      const kept = Object.entries(given).filter(([address]) => (name === 'cells' ? fits(address) : inside(address)));
      this.#count(parts[name] as string, Object.keys(given).length - kept.length);
      sheet[name] = Object.fromEntries(kept.map(([address, content]) => [address, this.#shortened(content)]));
    }
    const merges = (sheet['merges'] as string[]).filter((merge) => fits(String(merge)));
    this.#count('merged blocks', (sheet['merges'] as string[]).length - merges.length);
    sheet['merges'] = merges;
  }

  /** A formula too long to be worked out stays readable as text, behind an apostrophe. */
  #shortened(content: unknown): unknown {
    if (typeof content !== 'string' || !content.startsWith('=') || content.length <= most.lettersInFormula) return content;
    this.#count(tooLong, 1);
    return `'${content}`;
  }

  /** Takes out the part that a fault lies in; false where the workbook cannot be without it. */
  #takeOut(data: Part, path: readonly PropertyKey[]): boolean {
    const steps = path.map(String);
    const inSheet = steps[0] === 'sheets' && steps.length > 2;
    const holder = inSheet ? ((data['sheets'] as unknown[])[Number(steps[1])] as Part) : data;
    const [name, key] = inSheet ? steps.slice(2) : steps;
    if (name === undefined || !(name in parts)) return false;
    const held = holder[name];
    if (single.has(name)) delete holder[name];
    else if (key === undefined) holder[name] = Array.isArray(held) ? [] : {};
    else if (isPart(held)) delete held[key as keyof typeof held];
    this.#count(parts[name] as string, 1);
    return true;
  }

  /** Lists keep their order; what was taken out of one leaves a hole until here. */
  #closed(data: Part): Part {
    for (const sheet of data['sheets'] as Part[]) {
      for (const [name, held] of Object.entries(sheet)) if (Array.isArray(held)) sheet[name] = held.filter(() => true);
    }
    return data;
  }

  mend(data: Part): WorkbookData {
    data['sheets'] = this.#first<unknown>(data['sheets'], most.sheets, 'sheets').filter(isPart);
    for (const sheet of data['sheets'] as Part[]) this.#fit(sheet);
    for (let round = 0; round < 20; round++) {
      const looked = workbookShape.safeParse(data);
      if (looked.success) return data as unknown as WorkbookData;
      const places = new Map(looked.error.issues.map(({ path }) => [path.slice(0, path[0] === 'sheets' ? 4 : 2).join('/'), path]));
      for (const path of places.values()) if (!this.#takeOut(data, path)) throw new Unreadable('the file is damaged');
      this.#closed(data);
    }
    throw new Unreadable('the file is damaged');
  }
}

/** The workbook without the parts that do not open, and how many of each; throws where it is none without them. */
export function mend(data: unknown): { readonly data: WorkbookData; readonly leftOut: LeftOut } {
  if (!isPart(data)) throw new Unreadable('the file is damaged');
  const mending = new Mending();
  return { data: mending.mend(data), leftOut: mending.leftOut };
}

/** `12 cells and 1 chart`; nothing where nothing was left out. */
export function inWords(leftOut: LeftOut): string {
  const said = [...leftOut].map(([what, count]) => `${count.toLocaleString('en-GB')} ${count === 1 ? what.replace(/s\b/, '') : what}`);
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said.at(-1)}`;
}
