import { budgetItems } from '../../src/budget/items.ts';
import { call } from '../../src/core/call.ts';
import { type Cell, CellError } from '../../src/core/result.ts';
import { addressFrom, blockOf, cellAt } from '../../src/surfaces/pane/addresses.ts';
import { callsIn } from '../../src/surfaces/pane/formula.ts';
import { findRecord } from '../../src/surfaces/pane/records.ts';
import type { CellContent, Filling, HostCell, Place, Selection, SpreadsheetHost } from '../../src/surfaces/pane/spreadsheet-host.ts';

type Contents = Readonly<Record<string, CellContent>>;

/** A small spreadsheet in memory: typed cells, BEDDING formulas that spill, and INDEX and MATCH left without a value. */
export class FakeSpreadsheet implements SpreadsheetHost {
  readonly name = 'the fake';
  readonly #sheets = new Map<string, Map<string, CellContent>>();
  readonly #onSelection = new Set<() => void>();
  readonly #onChange = new Set<() => void>();
  readonly rows: number;
  #selected: Selection = { sheet: '', address: 'A1', active: 'A1' };
  tag = 'en-GB';
  started: string[] = [];

  constructor(sheets: Readonly<Record<string, Contents>>, rows = 200) {
    this.rows = rows;
    for (const [name, cells] of Object.entries(sheets)) this.#sheets.set(name, new Map(Object.entries(cells)));
    this.#selected = { ...this.#selected, sheet: Object.keys(sheets)[0] ?? '' };
  }

  locale = (): string => this.tag;
  sheetNames = async (): Promise<readonly string[]> => [...this.#sheets.keys()];
  selection = async (): Promise<Selection> => this.#selected;

  onSelection = (listener: () => void): (() => void) => {
    this.#onSelection.add(listener);
    return () => this.#onSelection.delete(listener);
  };
  onChange = (listener: () => void): (() => void) => {
    this.#onChange.add(listener);
    return () => this.#onChange.delete(listener);
  };

  #sheet(name: string): Map<string, CellContent> {
    const sheet = this.#sheets.get(name);
    if (!sheet) throw new Error(`no sheet ${name}`);
    return sheet;
  }

  /** What is in the cell itself. */
  content = (sheet: string, address: string): CellContent => this.#sheet(sheet).get(address) ?? null;

  #worked(sheet: string, formula: string): readonly (readonly Cell[])[] {
    const [only] = callsIn(formula, sheet);
    const record = only && findRecord(only.name);
    if (!record) return [['']];
    const args = only.args.map((argument) => {
      if (argument.kind === 'value') return argument.value;
      return argument.kind === 'reference' ? this.#block(argument.place).map((row) => row.map(({ value }) => value)) : null;
    });
    return call(record, args);
  }

  /** The formula whose result covers the cell, with its place in that result. */
  #source(sheet: string, address: string) {
    const at = blockOf(address);
    for (const [from, content] of this.#sheet(sheet)) {
      if (typeof content !== 'string' || !content.startsWith('=')) continue;
      const corner = blockOf(from);
      const row = (at?.top ?? 0) - (corner?.top ?? 0);
      const column = (at?.left ?? 0) - (corner?.left ?? 0);
      if (row < 0 || column < 0) continue;
      const cell = this.#worked(sheet, content)[row]?.[column];
      if (cell !== undefined) return { address: from, formula: content, cell };
    }
    return undefined;
  }

  #cell(sheet: string, address: string): HostCell {
    const source = this.#source(sheet, address);
    if (!source) return { value: this.content(sheet, address) };
    const own = source.address === address ? { formula: source.formula } : {};
    return source.cell instanceof CellError
      ? { value: source.cell.code, error: source.cell.message, ...own }
      : { value: source.cell, ...own };
  }

  #block({ sheet, address }: Place): readonly (readonly HostCell[])[] {
    const { top, left, bottom, right } = blockOf(address) as NonNullable<ReturnType<typeof blockOf>>;
    const upTo = (from: number, to: number) => Array.from({ length: Math.max(0, to - from + 1) }, (_, k) => from + k);
    return upTo(top, Math.min(bottom, this.rows - 1)).map((row) =>
      upTo(left, right).map((column) => this.#cell(sheet, cellAt(row, column))),
    );
  }

  read = async (place: Place): Promise<readonly (readonly HostCell[])[]> => this.#block(place);

  usedRange = async (sheet: string): Promise<string | undefined> => {
    const blocks = [...this.#sheet(sheet)]
      .filter(([, content]) => content !== null)
      .map(([address, content]) => {
        const result = typeof content === 'string' && content.startsWith('=') ? this.#worked(sheet, content) : [['']];
        return blockOf(addressFrom(address, result.length, result[0]?.length ?? 1)) as NonNullable<ReturnType<typeof blockOf>>;
      });
    if (blocks.length === 0) return undefined;
    return `A1:${cellAt(Math.max(...blocks.map(({ bottom }) => bottom)), Math.max(...blocks.map(({ right }) => right)))}`;
  };

  formulaBehind = async ({ sheet, address }: Place): Promise<{ address: string; formula: string } | undefined> => {
    const source = this.#source(sheet, address);
    return source && { address: source.address, formula: source.formula };
  };

  typed = (formula: string): string => formula;

  write = async (fillings: readonly Filling[]): Promise<void> => {
    for (const { sheet, address, contents } of fillings) {
      const { top, left } = blockOf(address) as NonNullable<ReturnType<typeof blockOf>>;
      contents.forEach((row, r) => {
        row.forEach((content, c) => {
          if (content === null) this.#sheet(sheet).delete(cellAt(top + r, left + c));
          else this.#sheet(sheet).set(cellAt(top + r, left + c), content);
        });
      });
    }
    for (const listener of this.#onChange) listener();
  };

  select = async ({ sheet, address }: Place): Promise<void> => {
    this.#selected = { sheet, address, active: address.split(':')[0] as string };
    for (const listener of this.#onSelection) listener();
  };

  startBudget = async (inputs: 'blank' | 'example'): Promise<void> => {
    this.started.push(inputs);
    this.#sheets.set('Inputs', new Map(Object.entries(inputsSheet({}))));
  };
}

const itemRow = (name: string): number => budgetItems.findIndex((item) => item.name === name) + 2;

/** Where the fake's Inputs sheet keeps an item. */
export const inputAt = (name: string): string => `B${itemRow(name)}`;

/** An Inputs sheet of one's own: a heading, then an item a row. */
export function inputsSheet(values: Readonly<Record<string, CellContent>>): Contents {
  const names = budgetItems.map(({ name }) => [`A${itemRow(name)}`, name] as const);
  const given = Object.entries(values).map(([name, value]) => [inputAt(name), value] as const);
  return Object.fromEntries([['A1', 'item'], ['B1', 'value'], ...names, ...given]);
}

export const lastInputRow = budgetItems.length + 1;

/** An invented herd with a dryer, all that is needed and nothing more. */
export const enough: Readonly<Record<string, CellContent>> = {
  Cows: 220,
  Cubicles: 230,
  'Bedding litres per cubicle each time': 8,
  'Days between beddings': 1,
  'Bought price per t': 150,
  'Slurry dry matter': 0.08,
  'Press t per hour running': 5,
  'Dried to dry matter': 0.55,
  'Air m3 per hour': 3000,
  'Hot water temperature': 78,
  'Hot water litres per hour': 2800,
  'Kit cost': 90_000,
  'Power price per kWh': 0.25,
  'Heat price per kWh': 0.03,
  'Labour hours a week with kit': 4,
  'Labour rate': 16,
  'Cost per mastitis case': 300,
};
