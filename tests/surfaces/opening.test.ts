import { Model } from '@odoo/o-spreadsheet';
import { constantFrom, sample, string } from 'fast-check';
import { describe, expect, it } from 'vitest';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { asText } from '../../src/surfaces/sheet/opening/contents.ts';
import { Tally } from '../../src/surfaces/sheet/opening/tally.ts';
import { opened } from './opened.ts';
import { rows, xlsxMade } from './xlsx-made.ts';

const text = (address: string, words: string): string =>
  `<c r="${address}" t="inlineStr"><is><t xml:space="preserve">${words}</t></is></c>`;
const worked = (address: string, formula: string, value = ''): string => `<c r="${address}"><f>${formula}</f><v>${value}</v></c>`;
const open = (...lines: readonly string[]) => opened(xlsxMade({ sheets: { Data: rows(...lines) } }));

const fonts =
  '<fonts count="2"><font><sz val="11"/><name val="Arial"/></font><font><sz val="10.5"/><b/><name val="Calibri"/></font></fonts>';
const styles = `<numFmts count="1"><numFmt numFmtId="164" formatCode="[$-F800]dddd, mmmm dd, yyyy"/></numFmts>${fonts}<fills count="1"><fill><patternFill patternType="none"/></fill></fills><borders count="1"><border/></borders><cellXfs count="5"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/><xf numFmtId="14" fontId="1" fillId="0" borderId="0"/><xf numFmtId="164" fontId="0" fillId="0" borderId="0"/><xf numFmtId="3" fontId="0" fillId="0" borderId="0"/><xf numFmtId="9" fontId="0" fillId="0" borderId="0"/></cellXfs>`;

describe('text in a spreadsheet file', () => {
  const words = [
    '00123',
    '50%',
    'TRUE',
    'false',
    '=1+1',
    '=HYPERLINK("http://example.org/"&amp;B1,"look")',
    '1/2',
    '3-4-2024',
    '12:30',
    "'tis",
    ' 7 ',
    '1e5',
    '$5',
  ];

  it.each(words)('stays the same text, whether it stands in its cell or is shared: %s', (word) => {
    const plain = word.replaceAll('&amp;', '&');
    const book = opened(
      xlsxMade({
        strings: [`<t xml:space="preserve">${word}</t>`],
        sheets: { Data: rows(text('A1', word), '<c r="A2" t="s"><v>0</v></c>', `<c r="A3" t="str"><f>T(A1)</f><v>${word}</v></c>`) },
      }),
    );
    for (const address of ['A1', 'A2', 'A3']) expect(book.value(address), address).toBe(plain);
    expect(book.model.getters.getEvaluatedCell({ sheetId: book.model.getters.getActiveSheetId(), col: 0, row: 0 }).link).toBeUndefined();
  });

  it('stays itself whatever it is, in every locale', () => {
    const letters = constantFrom(...'0123456789.,:/-%$€ eEamp+()=\'"[]ABtrue#!');
    const words = [...sample(string({ unit: letters, maxLength: 12 }), 2000), ...sample(string({ unit: 'grapheme' }), 500)];
    for (const locale of locales) {
      const cells = Object.fromEntries(words.map((word, k) => [`A${k + 1}`, asText(word, new Tally())]));
      const { getters } = new Model({ sheets: [{ id: 's', rowNumber: words.length, colNumber: 1, cells }], settings: { locale } });
      const read = words.map((_, row) => getters.getEvaluatedCell({ sheetId: 's', col: 0, row }).value ?? '');
      expect(read).toEqual(words.map((word) => (/^\[.+\]\(.+\)$/.test(word) ? word.replaceAll('](', '] (') : word)));
    }
  });

  it('stays text, and numbers numbers, in cells whose look makes text of what is typed', () => {
    const looks = styles.replace('numFmtId="9"', 'numFmtId="49"');
    const book = opened(
      xlsxMade({
        styles: looks,
        sheets: {
          Data: rows(
            '<c r="A1" s="4" t="inlineStr"><is><t>00123</t></is></c><c r="B1" s="4" t="inlineStr"><is><t>=1+1</t></is></c><c r="C1" s="4"><v>5</v></c><c r="D1" s="4"><f>C1*2</f><v>10</v></c>',
          ),
        },
      }),
    );
    expect(['A1', 'B1', 'C1', 'D1'].map(book.value)).toEqual(['00123', '=1+1', 5, 10]);
    expect(book.content('A1')).toBe('00123');
  });

  it('is read with its runs, without how it is spoken, and with the letters that XML does not let through', () => {
    const book = opened(
      xlsxMade({
        strings: ['<r><t>Long </t></r><r><t>Lane</t></r><rPh sb="0" eb="1"><t>spoken</t></rPh>', '<t>a_x000A_b</t>'],
        sheets: { Data: rows('<c r="A1" t="s"><v>0</v></c><c r="B1" t="s"><v>1</v></c>') },
      }),
    );
    expect(book.value('A1')).toBe('Long Lane');
    expect(book.value('B1')).toBe('a\nb');
  });

  it('written as a link stays text, and that is said', () => {
    const book = open(text('A1', '[here](https://example.org/?out)'));
    expect(book.value('A1')).toBe('[here] (https://example.org/?out)');
    expect(book.said).toBe('1 text written as a link got a space, to stay text.');
  });
});

describe('formulas in a spreadsheet file', () => {
  it('that are shared move with their cell: a running total, a block that stays, a column and a quoted sheet', () => {
    const shared = (k: number, formula = ''): string =>
      `<c r="B${k}"><f t="shared" ${formula && 'ref="B1:B3"'} si="0">${formula}</f><v>0</v></c>`;
    const book = opened(
      xlsxMade({
        sheets: {
          Data: rows(
            `<c r="A1"><v>1</v></c>${shared(1, 'A$1+A1+$A1+$A$1+SUM(\'Other one\'!A1:$A$9)+LEN("A1")+LOG10(100)')}`,
            `<c r="A2"><v>2</v></c>${shared(2)}`,
            `<c r="A3"><v>3</v></c>${shared(3)}`,
          ),
          'Other one': rows('<c r="A1"><v>100</v></c>'),
        },
      }),
    );
    expect(book.content('B3')).toBe('=A$1+A3+$A3+$A$1+SUM(\'Other one\'!A3:$A$9)+LEN("A1")+LOG(100)');
    expect(book.value('B1')).toBe(1 + 1 + 1 + 1 + 100 + 2 + 2);
    expect(book.said).toBe('');
  });

  it('with a running total open, whether written out or shared', () => {
    const total = (k: number): string => `<c r="A${k}"><v>${k}</v></c>${worked(`B${k}`, `SUM(A$1:A${k})`)}`;
    const book = open(total(1), total(2), total(3));
    expect([1, 2, 3].map((k) => book.value(`B${k}`))).toEqual([1, 3, 6]);
    expect(book.content('B1')).toBe('=SUM(A$1:A1)');
  });

  it.each([
    ['LET(_xlpm.x,2,_xlpm.x*3)', '6', 6, '1 with functions that this page does not know (LET)'],
    ['[1]Prices!A1*2', '8', 8, '1 that read another file'],
    ["'[1]Last year'!A1", '9', 9, '1 that read another file'],
    ['SUM(Feed[Cost])', '10', 10, '1 that name a table'],
    ['HYPERLINK("http://example.org/"&amp;B1,"look")', 'look', 'look', '1 that made a link'],
    ['A1:A3 A2:B2', '3', 3, '1 written in a way that this page cannot read'],
    ['SUM((A2,A3))', '5', 5, '1 written in a way that this page cannot read'],
    [`LEN("${'x'.repeat(8200)}")`, '8200', 8200, '1 longer than spreadsheet programs take'],
  ])('that cannot be worked out here keep the value that they had, and are counted: %.40s', (formula, stored, value, said) => {
    const book = open(`<c r="A1" t="${typeof value === 'string' ? 'str' : 'n'}"><f>${formula}</f><v>${stored}</v></c>`);
    expect(book.value('A1')).toBe(value);
    expect(book.said).toBe(`Formulas that are now the value they had: ${said}.`);
  });

  it('without any value that cannot be worked out stand as text', () => {
    const book = open(worked('A1', 'LET(x,1,x)'));
    expect(book.value('A1')).toBe('=LET(x,1,x)');
    expect(book.said).toContain('1 of them had none and stand as text');
  });

  it('of later programs lose their prefix; errors, unknown sheets and functions in words of the grid', () => {
    const book = open(
      worked('A1', '_xlfn.CONCAT("a","b")', 'ab'),
      worked('A2', 'IFERROR(#N/A,7)', '7'),
      worked('A3', 'Gone!A1:B2', '#REF!'),
      '<c r="A4" t="e"><v>#VALUE!</v></c>',
    );
    expect([book.value('A1'), book.value('A2'), book.value('A3'), book.value('A4')]).toEqual(['ab', 7, '#REF', '#ERROR']);
  });

  it('name what a defined name stood for: cells, numbers and texts, the sheet’s own before the workbook’s', () => {
    const names =
      '<definedNames><definedName name="Rate">Data!$B$1</definedName><definedName name="Off">-0.5</definedName><definedName name="Feed">Data!$B$1:$B$2</definedName><definedName name="Off" localSheetId="1">2</definedName><definedName name="Moves">OFFSET(Data!$B$1,1,0)</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Data!$A$1:$B$9</definedName></definedNames>';
    const book = opened(
      xlsxMade({
        names,
        sheets: {
          Data: rows(
            `${worked('A1', 'Rate*2^Off')}<c r="B1"><v>8</v></c>`,
            `${worked('A2', 'SUM(feed)')}<c r="B2"><v>1</v></c>`,
            worked('A3', 'Moves', '1'),
          ),
          'Sheet 2': rows(worked('A1', 'Off')),
        },
      }),
    );
    expect(book.content('A1')).toBe('=Data!$B$1*2^(-0.5)');
    expect(book.value('A2')).toBe(9);
    expect(book.value('Sheet 2!A1')).toBe(2);
    expect(book.value('A3')).toBe(1);
    expect(book.said).toBe(
      'Formulas that are now the value they had: 1 that use a name worked out by a formula. Formulas hold the cells and values themselves in place of 5 defined names.',
    );
  });

  it('name a sheet with an apostrophe as it is called', () => {
    const book = opened(xlsxMade({ sheets: { "Bob's": rows('<c r="A1"><v>1</v></c>', worked('A2', "'Bob''s'!A1*2", '2')) } }));
    expect(book.value("Bob's!A2")).toBe(2);
    expect(book.said).toBe('');
  });

  it('over a block spill as they did, and what they had spilled is not typed in again', () => {
    const book = open(
      '<c r="A1"><v>1</v></c><c r="B1"><f t="array" ref="B1:B2">A1:A2*2</f><v>2</v></c>',
      '<c r="A2"><v>2</v></c><c r="B2"><v>4</v></c>',
    );
    expect([book.value('B1'), book.value('B2')]).toEqual([2, 4]);
    expect(book.content('B2')).toBeUndefined();
  });
});

describe('looks in a spreadsheet file', () => {
  it('with a font of 10.5 points open, and keep it', () => {
    const book = opened(xlsxMade({ styles, sheets: { Data: rows('<c r="A1" s="1"><v>45000</v></c>') } }));
    const { style } = book.model.getters.getCell({ sheetId: book.model.getters.getActiveSheetId(), col: 0, row: 0 }) ?? {};
    expect(style).toMatchObject({ fontSize: 10.5, bold: true });
  });

  // 5 March 2019 is day 43529 counted from 1900 and 42067 from 1904 (ECMA-376 part 1, 18.17.4.1).
  it.each([
    ['1900', '', 43_529],
    ['1904', '<workbookPr date1904="1"/>', 42_067],
  ])('show days counted from %s as the day that they are, day before month where the reader writes so', (_, workbookPr, day) => {
    const book = opened(
      xlsxMade({
        styles,
        workbookPr,
        sheets: {
          Data: rows(
            `<c r="A1" s="1"><v>${day}</v></c><c r="B1" s="2"><v>${day}</v></c><c r="C1" t="d" s="1"><v>2019-03-05</v></c><c r="D1"><v>${day}</v></c>`,
          ),
        },
      }),
    );
    expect([book.shown('A1'), book.shown('B1')]).toEqual(['05/03/2019', 'Tuesday, March 05, 2019']);
    expect(book.value('D1')).toBe(day);
  });

  it('by number alone are those of the standard (18.8.30)', () => {
    const book = opened(xlsxMade({ styles, sheets: { Data: rows('<c r="A1" s="3"><v>12345.6</v></c><c r="B1" s="4"><v>0.5</v></c>') } }));
    expect([book.shown('A1'), book.shown('B1')]).toEqual(['12,346', '50%']);
  });

  it('come with sizes, hidden rows, groups, merges and frozen rows; panes that are only split are none', () => {
    const data =
      '<row r="1" ht="30" customHeight="1"><c r="A1"><v>1</v></c></row><row r="2" hidden="1"><c r="A2"><v>2</v></c></row><row r="3" outlineLevel="1"><c r="A3"><v>3</v></c></row>';
    const cols = '<cols><col min="1" max="2" width="14.3" customWidth="1"/></cols>';
    const view = (state: string, by: number): string =>
      `<sheetViews><sheetView workbookViewId="0"><pane xSplit="0" ySplit="${by}" state="${state}"/></sheetView></sheetViews>`;
    const book = opened(
      xlsxMade({
        before: view('frozen', 1) + cols,
        behind: '<mergeCells><mergeCell ref="A5:B6"/><mergeCell ref="B6:C7"/></mergeCells>',
        sheets: { Data: data },
      }),
    );
    const { getters } = book.model;
    const sheetId = getters.getActiveSheetId();
    expect([getters.getColSize(sheetId, 1), getters.getRowSize(sheetId, 0), getters.isRowHidden(sheetId, 1)]).toEqual([100, 40, true]);
    expect(getters.getMerges(sheetId)).toHaveLength(1);
    expect(getters.getHeaderGroups(sheetId, 'ROW')).toMatchObject([{ start: 2, end: 2 }]);
    expect(getters.getPaneDivisions(sheetId)).toEqual({ xSplit: 0, ySplit: 1 });
    const split = opened(xlsxMade({ before: view('split', 2400), sheets: { Data: data } }));
    expect(split.model.getters.getPaneDivisions(split.model.getters.getActiveSheetId())).toEqual({ xSplit: 0, ySplit: 0 });
  });

  it('by rule colour what they did, down to where the sheet ends, and lists offer what they did', () => {
    const behind =
      '<conditionalFormatting sqref="A1:A1048576"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>Limit</formula></cfRule></conditionalFormatting><dataValidations count="2"><dataValidation type="list" sqref="B1"><formula1>Kinds</formula1></dataValidation><dataValidation type="textLength" sqref="C1"><formula1>3</formula1></dataValidation></dataValidations>';
    const names =
      '<definedNames><definedName name="Limit">5</definedName><definedName name="Kinds">Data!$E$1:$E$2</definedName></definedNames>';
    const book = opened(
      xlsxMade({
        names,
        behind,
        styles: styles.replace(
          '</cellXfs>',
          '</cellXfs><dxfs count="1"><dxf><fill><patternFill><bgColor rgb="FFFF0000"/></patternFill></fill></dxf></dxfs>',
        ),
        sheets: { Data: rows('<c r="A1"><v>9</v></c>') },
      }),
    );
    const sheetId = book.model.getters.getActiveSheetId();
    expect(book.model.getters.getCellConditionalFormatStyle({ sheetId, col: 0, row: 0 })).toMatchObject({ fillColor: '#FF0000' });
    expect(book.model.getters.getValidationRuleForCell({ sheetId, col: 1, row: 0 })?.criterion).toMatchObject({ type: 'isValueInRange' });
    expect(book.said).toContain('Left out: 1 rule of entry.');
  });
});

describe('what is left out of a spreadsheet file', () => {
  it('is counted and said by kind', () => {
    const others = {
      'xl/charts/chart1.xml': '<c/>',
      'xl/charts/chart2.xml': '<c/>',
      'xl/media/image1.png': 'x',
      'xl/vbaProject.bin': 'x',
      'xl/pivotTables/pivotTable1.xml': '<p/>',
    };
    const book = opened(
      xlsxMade({
        others,
        macros: true,
        behind: '<hyperlinks><hyperlink ref="A1" location="Data!A1"/></hyperlinks>',
        sheets: { Data: rows('<c r="A1"><v>1</v></c>') },
      }),
    );
    expect(book.said).toBe('Left out: 2 charts, 1 picture, 1 pivot table, 1 link and 1 set of macros.');
  });

  it('is nothing where all of it came along', () => {
    expect(open('<c><v>1</v></c><c><v>2</v></c>').said).toBe('');
    expect(open('<c><v>1</v></c><c><v>2</v></c>').value('B1')).toBe(2);
  });
});
