import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated, type Shown } from './evaluated.ts';

const sheet = 'Months';
const rowOf = (book: Evaluated, text: string, on = sheet): string => {
  const found = book.cells(on).find((cell) => cell.text === text && cell.address.startsWith('A')) as Shown;
  return found.address.slice(1);
};
const line = (book: Evaluated, label: string): readonly Shown[] =>
  ['B', 'C', 'D'].map((column) => book.read(sheet, column + rowOf(book, label)));
const ofMonth = (book: Evaluated, month: string, column: string): Shown => book.read(sheet, column + rowOf(book, month));
const said = (book: Evaluated): string => book.read(sheet, 'A4').text;

describe('the year by months', () => {
  it('says what is short and what is enough, and how much less the year saves than by the mean', () => {
    const book = new Evaluated(budgetWorkbook());
    const words = book.cells(sheet).filter(({ text }) => text === 'short' || text === 'enough');
    expect(words).toHaveLength(12);
    expect(ofMonth(book, 'January', 'J').text).toBe('short');
    expect(ofMonth(book, 'July', 'J').text).toBe('enough');
    const [byMonths, byMean, less] = line(book, 'Saving').map(({ value }) => Number(value)) as [number, number, number];
    expect(byMonths).toBeLessThan(byMean);
    expect(less).toBeCloseTo(byMonths - byMean, 6);
    expect(said(book)).toMatch(/^Counted by months it saves [\d,]+ a year, \d+ less than by the mean\.$/);
  });

  it('is the mean’s own year where every month has the mean’s weather and an equal share of its days', () => {
    const book = new Evaluated(budgetWorkbook());
    const first = Number(rowOf(book, 'January'));
    for (let row = first; row < first + 12; row++) {
      book.type(sheet, `C${row}`, '9');
      book.type(sheet, `D${row}`, '82%');
    }
    const [byMonths, byMean] = line(book, 'Saving').map(({ value }) => Number(value)) as [number, number];
    expect(byMonths).toBeCloseTo(byMean, 6);
    expect(said(book)).toMatch(/as by the mean\.$/);
  });

  it.each([
    ['C', '', 'temperature missing'],
    ['D', '', 'humidity missing'],
    ['B', '', 'days missing'],
    ['C', 'cold', 'cannot be used'],
    ['D', '88', 'cannot be used'],
    ['B', '40', 'cannot be used'],
    ['F', '-5', 'cannot be used'],
  ])('never calls a month enough whose %s is “%s”, and goes by the mean', (column, typed, word) => {
    const book = new Evaluated(budgetWorkbook());
    book.type(sheet, `${column}${rowOf(book, 'July')}`, typed);
    expect(ofMonth(book, 'July', 'J').text).toBe(word);
    expect(said(book)).toBe('By the mean: 1 of 12 months cannot be counted: see each.');
    expect(line(book, 'Saving')[0]?.text).toBe('–');
  });

  it('takes a month at grass for what it is', () => {
    const book = new Evaluated(budgetWorkbook());
    book.type(sheet, `B${rowOf(book, 'July')}`, '0');
    expect(ofMonth(book, 'July', 'J').text).toBe('at grass');
    expect(book.read(sheet, 'A5').text).toBe(
      'The days housed add up to 334; Inputs has 365. By months the sum counts, by the mean Inputs.',
    );
  });

  it('tops up less with the fan turned down: less air gets hotter on the same heat', () => {
    const book = new Evaluated(budgetWorkbook());
    const before = Number(line(book, 'Topped up with bought')[0]?.value);
    book.type(sheet, `B${rowOf(book, 'Turn the fan down')}`, 'yes');
    expect(Number(line(book, 'Topped up with bought')[0]?.value)).toBeLessThanOrEqual(before);
  });

  it('claims nothing in an empty budget', () => {
    const book = new Evaluated(budgetWorkbook({ blank: true }));
    expect(book.cells(sheet).filter(({ text }) => text === 'days missing')).toHaveLength(12);
    expect(said(book)).toBe('By the mean: no month is filled in yet.');
  });
});
