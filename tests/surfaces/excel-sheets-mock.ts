import { OfficeMockObject } from 'office-addin-mock';
import { type Block, blockOf, cellAt } from '../../src/surfaces/pane/addresses.ts';

export interface MockCell {
  readonly value: string | number | boolean;
  readonly formula?: string;
  readonly error?: true;
  /** The cell whose formula fills this one. */
  readonly from?: string;
  readonly format?: string;
}

type Cells = Record<string, MockCell>;
type Mock = OfficeMockObject & Record<string, never>;

const mockOf = (object: object) => new OfficeMockObject(object) as Mock;
const WRITABLE = ['formulas', 'numberFormat'] as const;

const typeOf = (cell: MockCell | undefined): string => {
  if (cell === undefined) return 'Empty';
  if (cell.error) return 'Error';
  return { number: 'Double', boolean: 'Boolean', string: 'String' }[typeof cell.value as 'number'];
};

/** Excel as the pane meets it: cells, a selection, events. Strict: what was not loaded and synced cannot be read. */
export class MockSheets {
  readonly sheets: Record<string, Cells>;
  readonly excel: Mock;
  readonly handlers = new Map<string, (() => unknown)[]>();
  active = { sheet: '', address: 'A1', cell: 'A1' };
  fault: unknown;
  syncs = 0;
  readonly #ranges: { readonly sheet: string; readonly block: Block; readonly mock: Mock }[] = [];

  constructor(sheets: Record<string, Cells>) {
    this.sheets = sheets;
    this.active.sheet = Object.keys(sheets)[0] as string;
    const names = Object.keys(sheets).map((name) => mockOf({ name }));
    const worksheets = {
      items: names,
      getItem: (name: string) => this.#sheet(name),
      getActiveWorksheet: () => this.#sheet(this.active.sheet),
      ...Object.fromEntries(
        ['onChanged', 'onCalculated', 'onAdded', 'onDeleted', 'onActivated'].map((event) => [event, this.#event(event)]),
      ),
    };
    const workbook = {
      worksheets,
      getSelectedRange: () => this.#range(this.active.sheet, this.active.address),
      getActiveCell: () => this.#range(this.active.sheet, this.active.cell),
      onSelectionChanged: this.#event('onSelectionChanged'),
    };
    this.excel = mockOf({ context: { workbook } });
    const context = this.excel['context'] as unknown as OfficeMockObject;
    const collection = context['workbook'].worksheets as OfficeMockObject;
    const load = collection.load.bind(collection);
    collection.load = (what) => {
      for (const name of names) name.load('name');
      return load(what === 'items/name' ? 'items' : what);
    };
    const sync = context.sync.bind(context);
    context.sync = async () => {
      this.syncs++;
      if (this.fault) throw this.fault;
      this.#store();
      await sync();
      for (const mock of [...names, ...this.#ranges.map(({ mock }) => mock)]) await mock.sync();
    };
    Object.assign(this.excel, { run: async (batch: (given: unknown) => unknown) => batch(context) });
  }

  fire(event: string): Promise<unknown> {
    return Promise.all((this.handlers.get(event) ?? []).map((handler) => handler()));
  }

  #event(name: string) {
    return {
      add: (handler: () => unknown) => {
        this.handlers.set(name, [...(this.handlers.get(name) ?? []), handler]);
        const remove = () =>
          this.handlers.set(
            name,
            (this.handlers.get(name) ?? []).filter((other) => other !== handler),
          );
        return Object.assign(mockOf({ remove }), { context: this.excel['context'] });
      },
    };
  }

  #sheet(name: string): Mock {
    const cells = this.sheets[name];
    if (!cells) throw Object.assign(new Error('vendor text'), { code: 'ItemNotFound' });
    const sheet = mockOf({
      name,
      getRange: (address: string) => this.#range(name, address),
      getUsedRangeOrNullObject: () => this.#used(name),
      activate: () => {
        this.active.sheet = name;
      },
    });
    this.#ranges.push({ sheet: name, block: blockOf('A1') as Block, mock: sheet });
    return Object.assign(sheet, { context: this.excel['context'] });
  }

  #used(name: string): Mock {
    const blocks = Object.keys(this.sheets[name] as Cells).map((address) => blockOf(address) as Block);
    if (blocks.length === 0) return Object.assign(this.#range(name, 'A1'), { isNullObject: true });
    const least = (key: 'top' | 'left') => Math.min(...blocks.map((block) => block[key]));
    const most = (key: 'bottom' | 'right') => Math.max(...blocks.map((block) => block[key]));
    return Object.assign(this.#range(name, `${cellAt(least('top'), least('left'))}:${cellAt(most('bottom'), most('right'))}`), {
      isNullObject: false,
    });
  }

  #range(name: string, address: string): Mock {
    const cells = this.sheets[name] as Cells;
    const block = blockOf(address) as Block;
    const rows = Array.from({ length: block.bottom - block.top + 1 }, (_, r) =>
      Array.from({ length: block.right - block.left + 1 }, (_, c) => cells[cellAt(block.top + r, block.left + c)]),
    );
    const table = <T>(of: (cell: MockCell | undefined) => T) => rows.map((row) => row.map(of));
    const parents = new Set(Object.values(cells).map(({ from }) => cells[from ?? '']));
    const spills = rows.flat().map((cell) => cell !== undefined && (cell.from !== undefined || parents.has(cell)));
    const mock = mockOf({
      rowIndex: block.top,
      columnIndex: block.left,
      rowCount: rows.length,
      columnCount: rows[0]?.length ?? 0,
      values: table((cell) => cell?.value ?? ''),
      // As Excel shows it, a cell that is spilled into has the formula that fills it.
      formulas: table((cell) => cell?.formula ?? cells[cell?.from ?? '']?.formula ?? cell?.value ?? ''),
      valueTypes: table(typeOf),
      numberFormat: table((cell) => cell?.format ?? 'General'),
      // Excel says null where only some cells spill, which a mock object cannot hold.
      hasSpill: spills.some(Boolean),
      getSpillParentOrNullObject: () => {
        const from = cells[address]?.from;
        return Object.assign(this.#range(name, from ?? address), { isNullObject: from === undefined });
      },
      select: () => Object.assign(this.active, { address }),
    });
    this.#ranges.push({ sheet: name, block, mock });
    return mock;
  }

  /** Takes over what was assigned to ranges since the last sync. */
  #store(): void {
    for (const { sheet, block, mock } of this.#ranges) {
      for (const key of WRITABLE) {
        const assigned: unknown = mock[key];
        if (!Array.isArray(assigned) || assigned === mock['_properties'].get(key)?._valueBeforeLoaded) continue;
        for (const [r, row] of (assigned as unknown[][]).entries())
          for (const [c, content] of row.entries())
            if (content !== null) this.#put(sheet, cellAt(block.top + r, block.left + c), key, content);
        (mock as Record<string, unknown>)[key] = undefined;
      }
    }
  }

  #put(sheet: string, at: string, key: (typeof WRITABLE)[number], content: unknown): void {
    const cells = this.sheets[sheet] as Cells;
    const { formula: _, ...kept } = cells[at] ?? { value: '' };
    if (key === 'numberFormat') cells[at] = { ...(cells[at] ?? { value: '' }), format: String(content) };
    else if (content === '') delete cells[at];
    else
      cells[at] = {
        ...kept,
        ...(typeof content === 'string' && content.startsWith('=') ? { formula: content } : { value: content as string }),
      };
  }
}
