import { afterEach, describe, expect, it, vi } from 'vitest';
import { renameSheets, wholeColumns } from '../../src/surfaces/excel/references.ts';
import { writeWorkbook } from '../../src/surfaces/excel/write-workbook.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { borders, looks, numberFormatOf, styles } from '../../src/workbook/look.ts';
import type { Workbook } from '../../src/workbook/model.ts';
import { type MockSheet, mockExcel, settingsOf } from './excel-mock.ts';

/** Has one of everything that a workbook's data can say. */
const sample: Workbook = {
  sheets: [
    {
      name: 'Answer',
      columns: [100, 200, 64],
      rows: 40,
      cells: {
        A1: { content: 'What it comes to', style: 'title' },
        A2: { content: 'A long sentence. '.repeat(30), style: 'lead', wrap: true },
        A4: { content: "='Farm figures'!B2*2", style: 'strong', format: 'one', align: 'right' },
        B4: { content: '1/2', style: 'note' },
        C4: { content: '=IF(A4>1,"Inputs!A1","")', format: 'text' },
        A6: { content: 0.35, format: 'percent', style: 'output' },
        A7: { content: true, align: 'centre' },
      },
      merges: ['A2:C2'],
      rules: [{ range: 'A4:A6', when: "A4>'Farm figures'!$B$2", look: 'bad' }],
      charts: [
        {
          kind: 'bar',
          title: 'Cost',
          across: 'money a year',
          up: 'bedding',
          labels: "'Farm figures'!A2:A3",
          series: [{ name: 'now', values: "'Farm figures'!B2:B3" }],
          at: 'B8',
          width: 400,
          height: 200,
        },
        {
          kind: 'line',
          title: 'Score',
          across: 'dry matter',
          up: 'score',
          labels: 'A4:C4',
          series: [
            { name: 'low', values: 'A5:C5' },
            { name: 'high', values: 'A6:C6' },
          ],
          at: 'A20',
          width: 300,
          height: 160,
        },
      ],
      freeze: { rows: 1, columns: 1 },
      onePage: true,
    },
    {
      name: 'Farm figures',
      columns: [180, 80],
      rows: 20,
      cells: {
        A1: { content: 'Item', style: 'heading' },
        B2: { content: 12, style: 'required' },
        B3: { content: 'sand', style: 'input', choices: ['sand', 'straw'] },
        B4: { content: '', style: 'input', choices: ['sand', 'straw'] },
        B5: { content: 46000, style: 'input', format: 'date' },
      },
      freeze: { rows: 1, columns: 0 },
      landscape: true,
    },
  ],
};

const never = () => Promise.reject(new Error('asked although there was nothing to ask'));

async function written(
  workbook: Workbook,
  present?: Record<string, string | undefined>,
  ask: (question: string) => Promise<boolean> = never,
) {
  const host = mockExcel(present);
  vi.stubGlobal('Excel', host.excel);
  const result = await writeWorkbook(workbook, ask);
  return { ...host, host, result };
}
afterEach(() => vi.unstubAllGlobals());

/** Everything that the data says of one cell arrived, and a formula never in a cell of text, where Excel would not work it out. */
function expectCells(made: MockSheet, sheet: Workbook['sheets'][number], newName: (name: string) => string) {
  const cells = made.cells();
  for (const [address, cell] of Object.entries(sheet.cells)) {
    const where = `${made.name}!${address}`;
    const given = cells.get(address) ?? {};
    const formula = typeof cell.content === 'string' && cell.content.startsWith('=');
    expect(given['formulas'], where).toBe(formula ? renameSheets(String(cell.content), newName) : cell.content);
    const format = numberFormatOf(cell) ?? 'General';
    expect(given['numberFormat'], where).toBe(format === '@' && (formula || String(cell.content).length > 255) ? 'General' : format);
    const look = cell.style ? styles[cell.style] : {};
    expect([given['format.font.bold'], given['format.font.size'], given['format.font.color'], given['format.fill.color']], where).toEqual([
      look.bold,
      look.fontSize,
      look.textColor,
      look.fillColor,
    ]);
    for (const [side, edge] of Object.entries((cell.style && borders[cell.style]) ?? {}))
      expect(given[`border Edge${side[0]?.toUpperCase()}${side.slice(1)}.color`], where).toBe(edge.color);
    expect(given['format.wrapText'], where).toBe(cell.wrap);
    expect(given['format.horizontalAlignment']?.toString().toLowerCase(), where).toBe(cell.align === 'centre' ? 'center' : cell.align);
    expect(given['dataValidation.rule'], where).toEqual(
      cell.choices || cell.choicesIn
        ? { list: { inCellDropDown: true, source: cell.choices?.join(',') ?? `=${cell.choicesIn}` } }
        : undefined,
    );
  }
  const filled = [...cells].filter(([, given]) => given['formulas'] !== undefined).map(([address]) => address);
  expect(filled.toSorted()).toEqual(Object.keys(sheet.cells).toSorted());
}

const reference = (value: string, sheet: string, newName: (name: string) => string) =>
  (value.includes('!') ? renameSheets(value, newName) : `${newName(sheet)}!${value}`).replace(/^'(.*)'!/, '$1!').replaceAll('$', '');

function expectCharts(made: MockSheet, sheet: Workbook['sheets'][number], newName: (name: string) => string) {
  expect(made.charts).toHaveLength(sheet.charts?.length ?? 0);
  for (const [k, chart] of (sheet.charts ?? []).entries()) {
    const got = made.charts[k];
    const settings = settingsOf(got?.mock as never);
    expect(got?.at).toBe(chart.at);
    expect(settings).toMatchObject({
      'title.text': chart.title,
      width: chart.width * 0.75,
      height: chart.height * 0.75,
      'legend.visible': chart.series.length > 1,
    });
    const across = chart.kind === 'bar' ? 'axes.valueAxis.title.text' : 'axes.categoryAxis.title.text';
    expect(settings[across]).toBe(chart.across);
    expect(got?.series.map(({ mock, values, labels }) => [mock['name'], values, labels])).toEqual(
      chart.series.map(({ name, values }) => [name, reference(values, sheet.name, newName), reference(chart.labels, sheet.name, newName)]),
    );
  }
}

describe.each([
  ['a workbook with one of everything', sample],
  ['the budget workbook', budgetWorkbook()],
  ['the blank budget workbook', budgetWorkbook({ blank: true })],
])('%s, written to Excel', (_, workbook) => {
  it('arrives whole: every cell with its formula, format and look, every chart, rule, merge, width and frozen pane', async () => {
    const { sheet, result } = await written(workbook);
    expect(result?.sheets).toEqual(workbook.sheets.map(({ name }) => name));
    for (const data of workbook.sheets) {
      const made = sheet(data.name);
      expectCells(made, data, (name) => name);
      expectCharts(made, data, (name) => name);
      expect(made.merged).toEqual(data.merges ?? []);
      for (const [k, width] of data.columns.entries()) {
        expect(made.line(wholeColumns(k, k))['format.columnWidth'], `${data.name} column ${k + 1}`).toBe(width * 0.75);
      }
      for (const [row, pixels] of Object.entries(data.heights ?? {})) {
        expect(made.line(`${row}:${row}`)['format.rowHeight'], `${data.name} row ${row}`).toBeGreaterThanOrEqual(pixels * 0.75);
      }
      expect(
        made.rules.map(({ range, mock }) => [range, settingsOf(mock)['custom.rule.formula'], settingsOf(mock)['custom.format.font.color']]),
      ).toEqual(
        (data.rules ?? []).map(({ range, when, look }) => [range, when.startsWith('=') ? when : `=${when}`, looks[look].textColor]),
      );
      expect(made.frozen === undefined).toBe(!data.freeze);
    }
  });

  it('prints on A4, as wide as the page, and begins pages where the sheet says', async () => {
    const { sheet } = await written(workbook);
    for (const data of workbook.sheets) {
      const { page, pagesFrom, mock } = sheet(data.name);
      expect(pagesFrom).toEqual((data.pagesFrom ?? []).map((row) => `A${row}`));
      expect(settingsOf(mock)).toMatchObject({
        'pageLayout.paperSize': 'A4',
        'pageLayout.orientation': data.landscape ? 'Landscape' : 'Portrait',
        'pageLayout.zoom': { horizontalFitToPages: 1, ...(data.onePage && { verticalFitToPages: 1 }) },
      });
      expect(page['area']).toMatch(/^A:[A-Z]+$/);
    }
  });

  it('goes over in three exchanges, far below the 5 MB that Excel on the web takes in one', async () => {
    const { syncs } = (await written(workbook)).host;
    expect(syncs).toBe(3);
    expect(JSON.stringify(workbook).length).toBeLessThan(1_500_000);
  });

  it('has drop-downs, sheet names and formulas of lengths that Excel takes', () => {
    for (const { name, cells } of workbook.sheets) {
      expect(name.length, name).toBeLessThanOrEqual(26);
      for (const [address, { choices, content }] of Object.entries(cells)) {
        expect(choices?.join(',').length ?? 0, address).toBeLessThanOrEqual(255);
        expect(choices?.some((choice) => choice.includes(',')) ?? false, address).toBe(false);
        if (typeof content === 'string') expect(content.length, address).toBeLessThanOrEqual(8192);
      }
    }
  });
});

describe('a workbook that is not empty', () => {
  it('is asked about first, by name of what is there and of what would come', async () => {
    const ask = vi.fn(async () => true);
    await written(sample, { Milk: 'Milk!A1:C9' }, ask);
    expect(ask).toHaveBeenCalledExactlyOnceWith(expect.stringMatching(/Milk.*Answer and Farm figures.*overwritten/s));
  });

  it('stays exactly as it was where the answer is no', async () => {
    const { sheets, result } = await written(sample, { Milk: 'Milk!A1:C9' }, async () => false);
    expect(result).toBeUndefined();
    expect(sheets.map(({ name }) => name)).toEqual(['Milk']);
  });

  it('keeps its own sheets untouched; ours of the same name get a number, all the same one, and formulas, rules and charts follow', async () => {
    const { sheet, sheets, result } = await written(sample, { answer: 'answer!A1', 'Farm figures (2)': undefined }, async () => true);
    expect(result?.sheets).toEqual(['Answer (3)', 'Farm figures (3)']);
    const newName = (name: string) => `${name} (3)`;
    for (const data of sample.sheets) {
      expectCells(sheet(newName(data.name)), data, newName);
      expectCharts(sheet(newName(data.name)), data, newName);
    }
    expect(settingsOf(sheet('Answer (3)').rules[0]?.mock as never)['custom.rule.formula']).toBe("=A4>'Farm figures (3)'!$B$2");
    for (const own of sheets.slice(0, 2)) expect([own.ranges, own.merged, own.charts, own.deleted]).toEqual([[], [], [], false]);
  });

  it('says afterwards what was added and how to take it out again', async () => {
    const { result } = await written(sample);
    expect(result?.sentence).toMatch(/Answer and Farm figures.*delete/s);
  });
});

describe('when Excel fails', () => {
  const fault = (code: string) => Object.assign(new Error('raw text of the vendor'), { code });

  it('half-way, what was added goes again and the reason is told in words', async () => {
    const host = mockExcel({ Milk: 'Milk!A1' });
    host.failOnSync = { at: 3, fault: fault('AccessDenied') };
    vi.stubGlobal('Excel', host.excel);
    await expect(writeWorkbook(sample, async () => true)).rejects.toThrow(/protected.*Review tab/);
    expect(host.sheets.map(({ name, deleted }) => [name, deleted])).toEqual([
      ['Milk', false],
      ['Answer', true],
      ['Farm figures', true],
    ]);
  });

  it('because a cell is being typed in, it says so', async () => {
    const host = mockExcel();
    host.failOnSync = { at: 1, fault: fault('InvalidOperationInCellEditMode') };
    vi.stubGlobal('Excel', host.excel);
    await expect(writeWorkbook(sample, never)).rejects.toThrow('Press Enter or Esc');
  });

  it('with a code that nobody foresaw, it names the code and what to try', async () => {
    const host = mockExcel();
    host.failOnSync = { at: 1, fault: fault('SomethingNew') };
    vi.stubGlobal('Excel', host.excel);
    await expect(writeWorkbook(sample, never)).rejects.toThrow(/SomethingNew.*again/);
  });
});
