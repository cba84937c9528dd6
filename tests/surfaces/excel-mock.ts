import { OfficeMockObject } from 'office-addin-mock';
import { type Block, blockOf, cellAt } from '../../src/surfaces/pane/addresses.ts';

/** What a cell of the mocked Excel has been given, property by property, e.g. `format.font.bold`. */
export type Given = Record<string, unknown>;

const cellsIn = (address: string): { row: number; column: number; at: string }[] => {
  const { top, left, bottom, right } = blockOf(address) as Block;
  const found = [];
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++) found.push({ row: row - top, column: column - left, at: cellAt(row, column) });
  return found;
};

/** All plain values set on a mocked object and the objects below it, by their dotted names. */
function assigned(mock: object, prefix = ''): [string, unknown][] {
  return Object.entries(mock).flatMap(([key, value]): [string, unknown][] => {
    if (key.startsWith('_') || typeof value === 'function') return [];
    return value instanceof OfficeMockObject ? assigned(value, `${prefix}${key}.`) : [[`${prefix}${key}`, value]];
  });
}

const mockOf = (object: object) => new OfficeMockObject(object) as OfficeMockObject & Record<string, never>;

/** A chart as it was asked for. */
export interface MadeChart {
  readonly kind: string;
  readonly source: string;
  readonly by: string;
  readonly mock: OfficeMockObject;
  readonly series: { readonly mock: OfficeMockObject; values?: string; labels?: string; colour?: string }[];
  at?: string;
}

/** One sheet of the mocked Excel, which remembers all that is done to it. */
export class MockSheet {
  readonly name: string;
  readonly mock: OfficeMockObject & Record<string, never>;
  readonly ranges: { readonly addresses: readonly string[]; readonly mock: OfficeMockObject }[] = [];
  readonly merged: string[] = [];
  readonly charts: MadeChart[] = [];
  readonly rules: { readonly range: string; readonly mock: OfficeMockObject }[] = [];
  readonly page: Given = {};
  readonly pagesFrom: string[] = [];
  frozen: string | undefined;
  active = false;
  selected: string | undefined;
  deleted = false;

  constructor(name: string, usedAddress?: string) {
    this.name = name;
    const used = mockOf({ address: usedAddress ?? '' });
    Object.assign(used, { isNullObject: usedAddress === undefined });
    this.mock = mockOf({
      name,
      pageLayout: {
        headersFooters: { defaultForAllPages: {} },
        setPrintArea: (area: string) => Object.assign(this.page, { area }),
        setPrintTitleRows: (titleRows: string) => Object.assign(this.page, { titleRows }),
      },
      horizontalPageBreaks: {
        add: (address: string) => {
          this.pagesFrom.push(address);
        },
      },
      freezePanes: {
        freezeAt: (address: string) => this.#freeze(`at ${address}`),
        freezeRows: (count: number) => this.#freeze(`rows ${count}`),
        freezeColumns: (count: number) => this.#freeze(`columns ${count}`),
      },
      charts: { add: (kind: string, source: OfficeMockObject, by: string) => this.#addChart(kind, source, by) },
      getRange: (address: string) => this.range(address),
      getRanges: (list: string) => this.range(...list.split(',')),
      getUsedRangeOrNullObject: () => used,
      activate: () =>
        this.#set(() => {
          this.active = true;
        }),
      delete: () =>
        this.#set(() => {
          this.deleted = true;
        }),
    });
    Object.assign(this.mock, { isNullObject: false });
  }

  #set(change: () => void): void {
    change();
  }

  #freeze(how: string): void {
    if (this.frozen) throw new Error(`${this.name} is frozen twice`);
    this.frozen = how;
  }

  #addChart(kind: string, source: OfficeMockObject, by: string): OfficeMockObject {
    const series: MadeChart['series'] = [];
    const add = (name?: string) => {
      const made: MadeChart['series'][number] = {
        mock: mockOf({
          format: {
            line: {},
            fill: {
              setSolidColor: (colour: string) => {
                made.colour = colour;
              },
            },
          },
          setValues: (range: { where: string }) => {
            made.values = range.where;
          },
          setXAxisValues: (range: { where: string }) => {
            made.labels = range.where;
          },
        }),
      };
      if (name !== undefined) Object.assign(made.mock, { name });
      series.push(made);
      return made.mock;
    };
    add();
    const mock = mockOf({
      title: {},
      legend: {},
      axes: { categoryAxis: { title: {} }, valueAxis: { title: {} } },
      series: { getItemAt: (k: number) => series[k]?.mock, add },
      setPosition: (at: string) => {
        made.at = at;
      },
    });
    const made: MadeChart = { kind, source: source['where'], by, mock, series };
    this.charts.push(made);
    return mock;
  }

  range(...addresses: string[]): OfficeMockObject {
    const border = (side: string): OfficeMockObject => {
      const mock = mockOf({});
      this.ranges.push({ addresses, mock: Object.assign(mockOf({}), { [`border ${side}`]: mock }) });
      return mock;
    };
    const mock = mockOf({
      format: { font: {}, fill: {}, borders: { getItem: border } },
      dataValidation: {},
      conditionalFormats: { add: (kind: string) => this.#addRule(kind, addresses.join()) },
      merge: () => this.merged.push(addresses.join()),
      select: () =>
        this.#set(() => {
          this.selected = addresses.join();
        }),
    });
    Object.defineProperty(mock, 'where', { value: `${this.name}!${addresses.join()}`, enumerable: false });
    this.ranges.push({ addresses, mock });
    return mock;
  }

  #addRule(kind: string, range: string): OfficeMockObject {
    if (kind !== 'Custom') throw new Error(`a rule of kind ${kind}`);
    const mock = mockOf({ custom: { rule: {}, format: { font: {}, fill: {} } } });
    this.rules.push({ range, mock });
    return mock;
  }

  /** What each cell ended up with. Contents and formats come as tables, in which null leaves a cell as it is. */
  cells(): Map<string, Given> {
    const all = new Map<string, Given>();
    for (const { addresses, mock } of this.ranges) {
      const given = assigned(mock);
      for (const address of given.length > 0 ? addresses : []) {
        if (!/^[A-Z]+\d+/.test(address)) continue;
        for (const { row, column, at } of cellsIn(address)) {
          const cell = all.get(at) ?? {};
          for (const [property, value] of given) {
            const own = Array.isArray(value) ? (value as unknown[][])[row]?.[column] : value;
            if (own !== null) cell[property] = own;
          }
          all.set(at, cell);
        }
      }
    }
    return all;
  }

  /** What whole rows or columns such as `A:A` or `3:3` were given. */
  line(address: string): Given {
    return Object.fromEntries(this.ranges.filter(({ addresses }) => addresses[0] === address).flatMap(({ mock }) => assigned(mock)));
  }
}

export const settingsOf = (mock: OfficeMockObject): Given => Object.fromEntries(assigned(mock));

/** Stands in for Excel in tests: sheets already there by name, with the address of what they hold, if anything. */
export function mockExcel(present: Readonly<Record<string, string | undefined>> = { Sheet1: undefined }) {
  const sheets = Object.entries(present).map(([name, used]) => new MockSheet(name, used));
  const state = { sheets, syncs: 0, failOnSync: undefined as { at: number; fault: unknown } | undefined };
  const find = (name: string) => sheets.find((sheet) => !sheet.deleted && sheet.name.toLowerCase() === name.toLowerCase());
  const absent = () => Object.assign(mockOf({ name: '' }), { isNullObject: true });
  const excel = mockOf({
    context: {
      workbook: {
        application: { suspendApiCalculationUntilNextSync: () => undefined, suspendScreenUpdatingUntilNextSync: () => undefined },
        worksheets: {
          items: sheets.map(({ mock }) => mock),
          add: (name: string) => {
            if (find(name)) throw Object.assign(new Error('taken'), { code: 'ItemAlreadyExists' });
            const sheet = new MockSheet(name);
            sheets.push(sheet);
            return sheet.mock;
          },
          getItem: (name: string) => {
            const sheet = find(name);
            if (!sheet) throw Object.assign(new Error(name), { code: 'ItemNotFound' });
            return sheet.mock;
          },
          getItemOrNullObject: (name: string) => find(name)?.mock ?? absent(),
        },
      },
    },
  });
  const context = excel['context'] as unknown as OfficeMockObject;
  const worksheets = context['workbook'].worksheets as OfficeMockObject;
  const load = worksheets.load.bind(worksheets);
  // The mocked collection cannot load what belongs to its items: that is asked of each.
  worksheets.load = (what) => {
    if (what !== 'items/name') return load(what);
    for (const { mock } of sheets) mock.load('name');
    return load('items');
  };
  const sync = context.sync.bind(context);
  context.sync = async () => {
    state.syncs++;
    if (state.failOnSync?.at === state.syncs) throw state.failOnSync.fault;
    await sync();
    for (const { mock } of sheets) await mock.sync();
  };
  const run = async (batch: (context: unknown) => Promise<unknown>) => batch(context);
  return Object.assign(state, { excel: { run }, sheet: (name: string) => find(name) as MockSheet });
}
