import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated, type Shown } from './evaluated.ts';

const sheet = 'Investment';
const at = (book: Evaluated, label: string, column: string, on = sheet): Shown => {
  const found = book.cells(on).find(({ text, address }) => text === label && /^[AB]\d+$/.test(address)) as Shown;
  return book.read(on, column + found.address.slice(1));
};
const value = (book: Evaluated, label: string): Shown['value'] => at(book, label, 'B').value;
const type = (book: Evaluated, item: string, typed: string): void => book.type('Inputs', at(book, item, 'C', 'Inputs').address, typed);
/** Own money at the end of each year, with parts replaced. */
function own(book: Evaluated): readonly number[] {
  const head = book.cells(sheet).find(({ text }) => text === 'own money, parts too') as Shown;
  const row = Number(head.address.slice(1));
  return Array.from({ length: 11 }, (_, year) => Number(book.read(sheet, `X${row + 1 + year}`).value));
}
const firstPart = (book: Evaluated): number => Number(at(book, 'part replaced', 'A').address.slice(1)) + 1;

describe('own money year by year', () => {
  it('agrees with a sum by hand: saving, tax with its allowances, the loan’s payments', () => {
    const book = new Evaluated(budgetWorkbook());
    const saving = Number(at(book, 'Saving', 'B', 'Figures').value);
    // By hand from the inputs: 96,000 less 12,000 grant, 40,000 borrowed over 8 years at 6.8 %, monthly; tax 20 %, 40 % allowed in
    // the first year, then 14 % of the pool; saving 2 % more each year.
    const month = 0.068 / 12;
    const payments = (12 * 40_000 * month) / (1 - (1 + month) ** -96);
    const pools = [84_000, 84_000 * 0.6, 84_000 * 0.6 * 0.86];
    const allowances = [84_000 * 0.4, (pools[1] as number) * 0.14, (pools[2] as number) * 0.14];
    let sum = -84_000 + 40_000;
    const expected = [sum];
    allowances.forEach((allowance, k) => {
      const saved = saving * 1.02 ** k;
      sum += saved - 0.2 * (saved - allowance) - payments;
      expected.push(sum);
    });
    own(book)
      .slice(0, 4)
      .forEach((money, year) => {
        expect(money).toBeCloseTo(expected[year] as number, 6);
      });
    expect(value(book, 'Deepest')).toBe(-44_000);
  });

  it('is less by a part that is replaced, from its year on, and the NPV by the part discounted', () => {
    const book = new Evaluated(budgetWorkbook());
    const [before, npv] = [own(book), Number(value(book, 'NPV after tax, parts too'))];
    const row = firstPart(book);
    book.type(sheet, `A${row}`, 'screw');
    book.type(sheet, `B${row}`, '4');
    book.type(sheet, `C${row}`, '5000');
    expect(at(book, 'screw', 'D').text).toBe('yes');
    own(book).forEach((money, year) => {
      expect(money).toBeCloseTo((before[year] as number) - (year < 4 ? 0 : 5000), 6);
    });
    expect(Number(value(book, 'NPV after tax, parts too'))).toBeCloseTo(npv - 5000 / 1.07 ** 4, 6);
  });

  it.each([
    ['12', '5000'],
    ['2.5', '5000'],
    ['3', '-5000'],
    ['3', ''],
  ])('says so where a part in year %s for %s is not counted', (year, cost) => {
    const book = new Evaluated(budgetWorkbook());
    const before = own(book);
    const row = firstPart(book);
    book.type(sheet, `B${row}`, year);
    book.type(sheet, `C${row}`, cost);
    expect(book.read(sheet, `D${row}`).text).toMatch(/^no: /);
    expect(own(book)).toEqual(before);
  });

  it('is never said to be back where it is not within the life', () => {
    const book = new Evaluated(budgetWorkbook());
    type(book, 'Bought price per t', '120');
    expect(value(book, 'Back in year')).toBe('not within its life');
    expect(Number(value(book, 'At the end of the life'))).toBeLessThan(0);
  });
});

describe('tax', () => {
  it('goes by the choices on Inputs, and still agrees with the spreadsheet’s own NPV', () => {
    const book = new Evaluated(budgetWorkbook());
    type(book, 'Allowance method', 'straight');
    type(book, 'Rest allowed in the last year', 'yes');
    type(book, 'Interest relief', 'yes');
    expect(at(book, 'NPV after tax', 'D').value).toBe(0);
    expect(at(book, 'All checks', 'B', 'Checks').text).toMatch(/^all OK/);
  });
});
