import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
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
});
