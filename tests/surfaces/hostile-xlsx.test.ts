import { registries } from '@odoo/o-spreadsheet';
import { unzipSync } from 'fflate';
import { afterAll, describe, expect, it } from 'vitest';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { assemble } from '../../src/surfaces/sheet/opening/assemble.ts';
import { kindOf } from '../../src/surfaces/sheet/opening/kinds.ts';
import { Refused } from '../../src/surfaces/sheet/opening/refusing.ts';
import { readXlsx, type WorkbookRead } from '../../src/surfaces/sheet/opening/workbook.ts';
import { toXlsx } from '../../src/surfaces/sheet/xlsx.ts';
import { evaluate } from '../workbook/evaluate.ts';
import { type HostileXlsx, hostileXlsx } from './hostile-xlsx.ts';
import { opened } from './opened.ts';
import { WorkDone } from './work-done.ts';
import { rows, xlsxMade } from './xlsx-made.ts';

const ours = await toXlsx(
  evaluate({
    sheets: [
      {
        name: 'Plan',
        columns: [90, 60],
        rows: 30,
        cells: { A1: { content: 'Herd', style: 'title' }, B1: { content: 12.5, format: 'two' }, B2: { content: '=B1*2', style: 'output' } },
        merges: ['A4:B4'],
        rules: [{ range: 'B1:B9', when: '$B1>1', look: 'bad' }],
      },
    ],
  }),
);
const files = hostileXlsx({ 'our export': unzipSync(ours) as Record<string, Uint8Array<ArrayBuffer>> }, 130);

const functions = new Set(registries.functionRegistry.getKeys());

/** What is read of a file, or why it is refused. */
function readOrRefused(bytes: Uint8Array<ArrayBuffer>): WorkbookRead | string {
  const kind = kindOf(bytes);
  if (typeof kind === 'object') return kind.is;
  try {
    return readXlsx(bytes, functions, () => undefined);
  } catch (fault) {
    return fault instanceof Refused ? fault.message : 'the file is damaged or no spreadsheet';
  }
}

/** How much there is of a file to read, and of what comes of it. */
function size(bytes: Uint8Array, read: WorkbookRead | string): number {
  let letters = bytes.length;
  try {
    unzipSync(bytes, {
      filter: ({ originalSize }) => {
        letters += originalSize;
        return false;
      },
    });
  } catch {}
  if (typeof read === 'string') return letters;
  return read.sheets.reduce(
    (sum, { contents, looks, rowNumber, colNumber }) => sum + JSON.stringify([contents, looks]).length + rowNumber + colNumber,
    letters,
  );
}

describe('hostile spreadsheet files', () => {
  const work = new WorkDone(/surfaces\/sheet\/opening\/|\/saxen\//);
  afterAll(() => work.close());

  const cost = (bytes: Uint8Array<ArrayBuffer>): { readonly read: WorkbookRead | string; readonly perLetter: number } => {
    work.count();
    const read = readOrRefused(bytes);
    return { read, perLetter: work.count() / size(bytes, read) };
  };
  const plain = xlsxMade({
    sheets: {
      Data: rows(
        ...Array.from({ length: 400 }, (_, k) =>
          Array.from({ length: 10 }, (_, c) => `<c r="${String.fromCharCode(65 + c)}${k + 1}"><v>${k * c}</v></c>`).join(''),
        ),
      ),
    },
  });
  const ofPlain = cost(plain).perLetter;

  it('are as many, and the same each time', () => {
    expect(new Set(files.map(({ name }) => name)).size).toBe(130);
    expect(ofPlain).toBeGreaterThan(0);
  });

  it.each(files.map((file) => [file.name, file] as const))(
    'opens or is refused in words, in work that grows with its size alone: %s',
    (_, { bytes }: HostileXlsx) => {
      const { read, perLetter } = cost(bytes);
      expect(perLetter).toBeLessThan(5 * ofPlain);
      if (typeof read === 'string') expect(read).toMatch(/^(the (file|sheet)|a cell of|it is|the cells) .{8,}/);
      else expect(assemble(read, locales[0]).data.sheets.length).toBeGreaterThan(0);
    },
  );

  it('leave every object of the page as it was', () => {
    expect(Object.keys(Object.prototype)).toEqual([]);
    expect('polluted' in {}).toBe(false);
    expect(opened(ours).value('B2')).toBe(25);
  });
});
