import { afterEach, describe, expect, it, vi } from 'vitest';
import { excelHost } from '../../src/surfaces/excel/spreadsheet-host.ts';
import { patience } from '../patience.ts';
import { MockSheets } from './excel-sheets-mock.ts';

const farm = () => ({
  Inputs: {
    A1: { value: 'Cows' },
    B1: { value: 240 },
    A2: { value: 'Permission confirmed' },
    B2: { value: true },
    B4: { value: '', formula: '=IF(B1>0,"","x")' },
  },
  'Fibre and drying': {
    A1: { value: 'key', formula: '=BEDDING.MATERIAL.TABLE()' },
    B1: { value: 'value', from: 'A1' },
    A2: { value: 'sand', from: 'A1' },
    B2: { value: 1680, from: 'A1' },
    D1: { value: '#N/A', formula: '=BEDDING.INVEST.IRR(1,2,3)', error: true as const },
    D2: { value: '#BUSY!', formula: '=BEDDING.INVEST.IRR(1,2,3)', error: true as const },
    E1: { value: '007', format: '@' },
  },
  Empty: {},
});

function open(sheets: ConstructorParameters<typeof MockSheets>[0] = farm()) {
  const excel = new MockSheets(sheets);
  vi.stubGlobal('Excel', excel.excel);
  const told = vi.fn();
  return { excel, told, host: excelHost({ ask: async () => true, tell: told }, 'en-GB') };
}
afterEach(() => vi.unstubAllGlobals());

const fault = (code: string, message = 'raw text of the vendor') => Object.assign(new Error(message), { code });

describe('the pane reading Excel', () => {
  it('sees the sheets, and the locale of its numbers', async () => {
    const { host } = open();
    expect(await host.sheetNames()).toEqual(['Inputs', 'Fibre and drying', 'Empty']);
    expect(host.locale()).toBe('en-GB');
  });

  it('reads values row by row, blank apart from empty text', async () => {
    const { host } = open();
    expect(await host.read({ sheet: 'Inputs', address: 'A1:B4' })).toEqual([
      [{ value: 'Cows' }, { value: 240 }],
      [{ value: 'Permission confirmed' }, { value: true }],
      [{ value: null }, { value: null }],
      [{ value: null }, { value: '', formula: '=IF(B1>0,"","x")' }],
    ]);
  });

  it('gives a formula only to the cell that holds it, not to those it spills into, and tells like formulas apart from that', async () => {
    const { host } = open();
    const rows = await host.read({ sheet: 'Fibre and drying', address: 'A1:D2' });
    expect(rows.map((row) => row.map(({ formula }) => formula))).toEqual([
      ['=BEDDING.MATERIAL.TABLE()', undefined, undefined, '=BEDDING.INVEST.IRR(1,2,3)'],
      [undefined, undefined, undefined, '=BEDDING.INVEST.IRR(1,2,3)'],
    ]);
  });

  it('says what Excel’s own errors mean, and passes on the code of ours, whose sentence Excel keeps to itself', async () => {
    const { host } = open();
    const [[missing], [busy]] = (await host.read({ sheet: 'Fibre and drying', address: 'D1:D2' })) as [[unknown], [unknown]];
    expect(missing).toMatchObject({ value: '#N/A', error: '#N/A' });
    expect(busy).toMatchObject({ value: '#BUSY!', error: 'Excel is still working this out.' });
  });

  it('reads a whole column only as far as it is filled, and an empty sheet as nothing', async () => {
    const { host } = open();
    expect(await host.read({ sheet: 'Inputs', address: 'B1:B1048576' })).toHaveLength(4);
    expect(await host.read({ sheet: 'Empty', address: 'A1:B1048576' })).toEqual([]);
    expect(await host.read({ sheet: 'Inputs', address: 'M1:M1048576' })).toEqual([]);
  });

  it('knows the block that is filled in, or that there is none', async () => {
    const { host } = open();
    expect(await host.usedRange('Inputs')).toBe('A1:B4');
    expect(await host.usedRange('Empty')).toBeUndefined();
  });

  it('finds the formula behind a cell: its own, that of the cell it spills from, or none', async () => {
    const { host } = open();
    expect(await host.formulaBehind({ sheet: 'Fibre and drying', address: 'B2' })).toEqual({
      address: 'A1',
      formula: '=BEDDING.MATERIAL.TABLE()',
    });
    expect(await host.formulaBehind({ sheet: 'Inputs', address: 'B4' })).toEqual({ address: 'B4', formula: '=IF(B1>0,"","x")' });
    expect(await host.formulaBehind({ sheet: 'Inputs', address: 'B1' })).toBeUndefined();
  });

  it('knows what is selected', async () => {
    const { excel, host } = open();
    excel.active = { sheet: 'Fibre and drying', address: 'B2:C9', cell: 'B4' };
    expect(await host.selection()).toEqual({ sheet: 'Fibre and drying', address: 'B2:C9', active: 'B4' });
  });
});

describe('the pane writing to Excel', () => {
  it('fills a block; null empties a cell', async () => {
    const { excel, host } = open();
    await host.write([
      {
        sheet: 'Inputs',
        address: 'B1',
        contents: [
          [260, '=B1*2'],
          [null, 'sand'],
        ],
      },
    ]);
    expect(excel.sheets['Inputs']).toMatchObject({ B1: { value: 260 }, C1: { formula: '=B1*2' }, C2: { value: 'sand' } });
    expect(excel.sheets['Inputs']?.['B2']).toBeUndefined();
  });

  it('keeps text that looks like a date or a number as text', async () => {
    const { excel, host } = open();
    await host.write([{ sheet: 'Inputs', address: 'B1', contents: [['1/2', '007', 'true', 'mattress', 'chopped straw']] }]);
    const { B1, C1, D1, E1, F1 } = excel.sheets['Inputs'] as Record<string, { value: unknown }>;
    expect([B1?.value, C1?.value, D1?.value, E1?.value, F1?.value]).toEqual(["'1/2", "'007", "'true", 'mattress', 'chopped straw']);
  });

  it('frees a cell formatted as text, in which Excel would show the formula instead of its answer', async () => {
    const { excel, host } = open();
    await host.write([{ sheet: 'Fibre and drying', address: 'E1', contents: [['=BEDDING.SOURCES()']] }]);
    expect(excel.sheets['Fibre and drying']?.['E1']).toMatchObject({ formula: '=BEDDING.SOURCES()', format: 'General' });
  });

  it('shows a sheet and selects a cell on it', async () => {
    const { excel, host } = open();
    await host.select({ sheet: 'Fibre and drying', address: 'D1' });
    expect(excel.active).toMatchObject({ sheet: 'Fibre and drying', address: 'D1' });
  });
});

describe('the pane listening to Excel', () => {
  it('hears of another cell or sheet selected until it stops', async () => {
    const { excel, host } = open();
    const heard = vi.fn();
    const stop = host.onSelection(heard);
    await vi.waitFor(() => expect(excel.handlers.get('onSelectionChanged')).toHaveLength(1), patience.wait);
    await excel.fire('onSelectionChanged');
    await excel.fire('onActivated');
    expect(heard).toHaveBeenCalledTimes(2);
    stop();
    await vi.waitFor(() => expect(excel.handlers.get('onSelectionChanged')).toHaveLength(0), patience.wait);
    expect(excel.handlers.get('onActivated')).toHaveLength(0);
  });

  it('hears of cells typed in, worked out anew, and of sheets that come and go', async () => {
    const { excel, host } = open();
    const heard = vi.fn();
    host.onChange(heard);
    await vi.waitFor(() => expect(excel.handlers.get('onDeleted')).toHaveLength(1), patience.wait);
    for (const event of ['onChanged', 'onCalculated', 'onAdded', 'onDeleted']) await excel.fire(event);
    expect(heard).toHaveBeenCalledTimes(4);
  });

  it('stays usable where Excel refuses the events', async () => {
    const { excel, host } = open();
    excel.fault = fault('NotImplemented');
    const stop = host.onChange(() => undefined);
    excel.fault = undefined;
    stop();
    expect(await host.usedRange('Inputs')).toBe('A1:B4');
  });
});

describe('what Excel cannot do is told in words', () => {
  it.each([
    ['a cell is being typed in', fault('InvalidOperationInCellEditMode'), /Press Enter or Esc/],
    ['a protected sheet', fault('AccessDenied'), /unprotect it on the Review tab/],
    ['a protected sheet under another code', fault('GeneralException', 'The cell is protected'), /unprotect it on the Review tab/],
    ['a version of Excel that lacks the call', fault('ApiNotFound'), /too old/],
    ['several blocks selected', fault('InvalidSelection'), /one cell or one block/],
    ['a code nobody foresaw', fault('SomethingNew'), /SomethingNew/],
  ])('%s', async (_, thrown, sentence) => {
    const { excel, host } = open();
    excel.fault = thrown;
    await expect(host.write([{ sheet: 'Inputs', address: 'B1', contents: [[1]] }])).rejects.toThrow(sentence);
    await expect(host.selection()).rejects.toThrow(sentence);
  });

  it('a sheet that is gone', async () => {
    const { host } = open();
    await expect(host.read({ sheet: 'Gone', address: 'A1' })).rejects.toThrow(/renamed or deleted/);
  });

  it('never shows the vendor’s raw text', async () => {
    const { excel, host } = open();
    excel.fault = fault('GeneralException');
    await expect(host.selection()).rejects.not.toThrow(/raw text/);
  });
});
