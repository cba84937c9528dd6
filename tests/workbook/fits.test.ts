import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import type { Look } from '../../src/workbook/look.ts';
import { Evaluated } from './evaluated.ts';
import { cutOff } from './fits.ts';

const demo = budgetWorkbook();
const blank = budgetWorkbook({ blank: true });

describe('every text and figure stands whole in its place', () => {
  const book = new Evaluated(demo);
  it.each(demo.sheets)('of the invented herd on $name', (sheet) => {
    expect(cutOff(book, sheet)).toEqual([]);
  });
  const empty = new Evaluated(blank);
  it.each(blank.sheets)('of the empty budget on $name', (sheet) => {
    expect(cutOff(empty, sheet)).toEqual([]);
  });

  // Where a browser blocks the carried face, a bare Debian falls back to DejaVu Sans, the widest of the usual ones. Advance
  // widths in 2048ths of its letters' height, of the `hmtx` table of DejaVuSans.ttf and DejaVuSans-Bold.ttf 2.37 (seen).
  const dejavu = { regular: { digit: 1303, mark: 651, sign: 739 }, bold: { digit: 1425, mark: 778, sign: 850 } };
  const inDejavu = (text: string, { bold, fontSize = 10 }: Look): number => {
    const { digit, mark, sign } = bold ? dejavu.bold : dejavu.regular;
    const ems = [...text].map((letter) => (/[0-9]/.test(letter) ? digit : /[.,]/.test(letter) ? mark : letter === '%' ? 2052 : sign));
    return (ems.reduce((sum, one) => sum + one, 0) / 2048) * Math.round((fontSize * 96) / 72);
  };
  it.each(demo.sheets)('figures even in the widest of the usual faces, on $name', (sheet) => {
    expect(cutOff(book, sheet, inDejavu, true)).toEqual([]);
  });
});
