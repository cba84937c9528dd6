import type { SheetData, WorkbookData } from '@odoo/o-spreadsheet';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { readCopy, tool } from '../../src/surfaces/sheet/keeping/copy.ts';
import { inWords } from '../../src/surfaces/sheet/keeping/mend.ts';
import { Later, readWorkbook, Unreadable } from '../../src/surfaces/sheet/readable.ts';
import { hostileFiles, savedCopy } from '../browser/hostile-files.ts';
import '../workbook/evaluate.ts';

beforeAll(() => {
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
});

const copy = (): WorkbookData => savedCopy() as unknown as WorkbookData;
const first = (data: WorkbookData): SheetData => data.sheets[0] as SheetData;
const read = (data: unknown, by = tool) => readCopy({ json: JSON.stringify(data), at: 0, tool: by });

describe('a kept copy that does not open as it is', () => {
  it('opens without what it has too much of, and says how much that is', () => {
    const data = copy();
    first(data).cells = Object.fromEntries(
      Array.from({ length: 320_000 }, (_, k) => [`${'ABCDEFGH'[k % 8]}${1 + Math.floor(k / 8)}`, '1']),
    );
    first(data).rowNumber = 40_000;
    const { data: opened, leftOut } = read(data);
    // The merged block D1:E2 has its place too.
    expect(Object.keys(first(opened).cells)).toHaveLength(300_000);
    expect(inWords(leftOut)).toBe('20,000 cells and 1 merged block');
  }, 120_000);

  it('keeps a formula that grew too long as a text that can be read', () => {
    const data = copy();
    const formula = `=SUM(1${',1'.repeat(5000)})`;
    first(data).cells['A30'] = formula;
    const { data: opened, leftOut } = read(data);
    expect(first(opened).cells['A30']).toBe(`'${formula}`);
    expect(inWords(leftOut)).toBe('1 formula of over 8,192 letters, now text');
  });

  it('loses the one thing that is at fault, not the sheet that it stands on', () => {
    const data = copy();
    const sheet = first(data) as unknown as Record<string, unknown[]>;
    (sheet['conditionalFormats']?.[0] as { rule: object }).rule = { type: 'unheard of' };
    (sheet['figures']?.[2] as { width: unknown }).width = 'wide';
    const { data: opened, leftOut } = read(data);
    expect(inWords(leftOut)).toBe('1 colour rule and 1 chart');
    expect(first(opened).figures).toHaveLength(first(copy()).figures.length - 1);
    expect(first(opened).cells).toEqual(first(copy()).cells);
  });

  it('is told apart: damaged, or of a later version of this page or of the grid', () => {
    for (const json of ['{}', '[]', '7', '{"version":"19.3.2","sheets":[]}', '{"version":"19.3.2","she']) {
      expect(() => readCopy({ json, at: 0, tool }), json).toThrow(Unreadable);
      expect(() => readCopy({ json, at: 0, tool }), json).not.toThrow(Later);
    }
    expect(() => read(copy(), '99.0.0')).toThrow('it was kept by a later version of this page, 99.0.0');
    expect(() => read({ ...copy(), version: '99.1' })).toThrow(Later);
  });

  it('opens or is refused, and what opens is whole by the page’s own rule', () => {
    let opened = 0;
    for (const { name, content } of hostileFiles()) {
      const json = typeof content === 'string' ? content : new TextDecoder().decode(content);
      try {
        const { data } = readCopy({ json, at: 0, tool });
        opened++;
        expect(() => readWorkbook(JSON.stringify(data)), name).not.toThrow();
      } catch (fault) {
        expect(fault, name).toBeInstanceOf(Unreadable);
      }
    }
    expect(opened).toBeGreaterThan(100);
  }, 120_000);
});
