import { strFromU8, unzipSync } from 'fflate';
import { expect, it, vi } from 'vitest';
import { toXlsx } from '../../src/surfaces/sheet/xlsx.ts';
import * as workbook from '../../src/workbook/index.ts';
import { evaluate } from '../workbook/evaluate.ts';
import { opened } from './opened.ts';

const cells = {
  A1: { content: 'Herd' },
  B1: { content: 'Long & Lane' },
  A2: { content: "'00123" },
  A3: { content: "'=1+1" },
  A4: { content: '=NA()' },
  A5: { content: "''tis" },
  A6: { content: '=B1&"!"' },
};
const book = { sheets: [{ name: 'Answer', columns: [80, 80], rows: 20, cells }] };

it('the spreadsheet file carries its title, and each page whose it is, which sheet and which page of how many', async () => {
  const parts = unzipSync(await toXlsx(evaluate(book)));
  const part = (path: string): string => strFromU8(parts[path] as Uint8Array);
  expect(part('docProps/core.xml')).toMatch(/<dc:title>Long Lane bedding \d{4}-\d\d-\d\d<\/dc:title>/);
  expect(part('_rels/.rels')).toContain('Target="docProps/core.xml"');
  expect(part('[Content_Types].xml')).toContain('PartName="/docProps/core.xml"');
  const sheet = part('xl/worksheets/sheet0.xml');
  expect(sheet).toMatch(/<oddHeader>&amp;LLong Lane bedding [\d-]+&amp;R&amp;A<\/oddHeader>/);
  expect(sheet).toContain('&amp;RPage &amp;P of &amp;N</oddFooter>');
  expect(sheet.indexOf('<headerFooter')).toBeGreaterThan(sheet.indexOf('<pageSetup'));
});

it('says in the first free row which of it are values only, and nothing where all recalculates', async () => {
  const back = async (more: Readonly<Record<string, { content: string }>>) =>
    opened(await toXlsx(evaluate({ sheets: [{ name: 'Answer', columns: [80, 80], rows: 20, cells: { ...cells, ...more } }] })));
  const said = (await back({ A8: { content: '=BEDDING.DEMAND.DEPTH(2,1,0.1)' } })).value('A7');
  expect(said).toMatch(/^Values only, of \d+ \w+ \d{4} at \d\d:\d\d, where BEDDING functions stood \(Answer\)\. /);
  expect((await back({})).value('A7')).toBe(null);
});

it('takes no value that stands for a function of ours for a figure typed over a formula', async () => {
  const counted = {
    A1: { content: '=BEDDING.DEMAND.DEPTH(2,1,0.1)' },
    A2: { content: '=1-SUMPRODUCT(--ISFORMULA(A1:A1))' },
    A3: { content: '=IF(A2>0,A2&" typed over","none")' },
  };
  const rules = [{ range: 'A1:A1', when: 'NOT(ISFORMULA(A1))', look: 'bad' as const }];
  const bytes = await toXlsx(evaluate({ sheets: [{ name: 'Answer', columns: [80], rows: 20, cells: counted, rules }] }));
  expect(opened(bytes).value('A3')).toBe('none');
  expect(strFromU8(unzipSync(bytes)['xl/worksheets/sheet0.xml'] as Uint8Array)).not.toMatch(/ISFORMULA|<conditionalFormatting/);
});

it('comes back with text as text, errors as errors and formulas as formulas', async () => {
  const back = opened(await toXlsx(evaluate(book)));
  expect(['A2', 'A3', 'A4', 'A5', 'A6'].map((address) => back.value(address))).toEqual(['00123', '=1+1', '#N/A', "'tis", 'Long & Lane!']);
  expect(back.content('A6')).toBe('=B1&"!"');
});

it('is made from the budget built once', async () => {
  const built = vi.spyOn(workbook, 'budgetWorkbook');
  await toXlsx(evaluate(book));
  expect(built).toHaveBeenCalledTimes(1);
});
