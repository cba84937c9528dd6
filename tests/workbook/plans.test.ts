import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated, type Shown } from './evaluated.ts';

const sheet = 'Plans';
const placed = (book: Evaluated, text: string): Shown => {
  const found = book.cells(sheet).find((cell) => cell.text === text);
  if (!found) throw new Error(`Plans shows no ${text}`);
  return found;
};
const rowOf = ({ address }: Shown): string => address.replace(/\D/g, '');
/** A plan's or bedding's line in the comparison, whose columns are found by their headings. */
function inComparison(book: Evaluated, name: string, heading: string): Shown {
  const column = placed(book, heading).address.replace(/\d/g, '');
  const line = book.cells(sheet).find(({ address, text }) => text === name && address.startsWith('A'));
  return book.read(sheet, `${column}${rowOf(line as Shown)}`);
}
/** Where a plan's change of an item is typed. */
const changeOf = (book: Evaluated, item: string, column: string): string => `${column}${rowOf(placed(book, item))}`;
const inputCell = (book: Evaluated, item: string): string =>
  (book.cells('Inputs').find(({ value }) => value === item) as Shown).address.replace('B', 'C');

describe('plans side by side', () => {
  it('stand on one line each with the beddings bought, the budget’s own figures among them', () => {
    const book = new Evaluated(budgetWorkbook());
    const figure = (key: string) => {
      const { address } = book.cells('Figures').find(({ text }) => text === key) as Shown;
      return book.read('Figures', address.replace('A', 'B')).value;
    };
    const base = 'as on Inputs: press and dryer';
    expect(inComparison(book, base, 'NPV').value).toBe(figure('NPV'));
    expect(inComparison(book, base, 'cost per cubicle a year').value).toBe(figure('Home fibre per cubicle'));
    expect(inComparison(book, 'now: sawdust', 'cost per cubicle a year').value).toBe(figure('Bought-in per cubicle'));
    for (const bedding of ['sand', 'chopped straw', 'shavings', 'press alone', 'larger dryer'])
      expect(inComparison(book, bedding, 'cost per cubicle a year').value).toBeGreaterThan(0);
  });

  it('never show a score without its span', () => {
    const book = new Evaluated(budgetWorkbook());
    for (const name of ['now: sawdust', 'sand', 'press alone', 'as on Inputs: press and dryer']) {
      expect(inComparison(book, name, 'score').value).toBeTypeOf('number');
      expect(inComparison(book, name, 'score’s span').text).toMatch(/^\d+–\d+ (low|moderate|raised|high)$/);
    }
  });

  it('call no score low or high where there is none', () => {
    const book = new Evaluated(budgetWorkbook({ blank: true }));
    for (const name of ['now: sawdust', 'as on Inputs', 'press alone', 'larger dryer'])
      expect(inComparison(book, name, 'score’s span').text, name).toBe('–');
  });

  it('say what the dearer plan’s extra money earns: a kit dearer by 10,000 and nothing else is worth as much less and its repairs', () => {
    const book = new Evaluated(budgetWorkbook());
    const column = 'D';
    book.type(sheet, `${column}${rowOf(placed(book, 'what differs'))}`, 'dearer');
    book.type(sheet, changeOf(book, 'Kit cost', column), '106000');
    const [extraCapital, extraNpv] = ['Extra capital over base', 'Extra NPV over base'].map(
      (key) => book.read(sheet, `F${rowOf(placed(book, key))}`).value,
    );
    expect(extraCapital).toBe(10_000);
    // By hand: repairs of 3 % a year on it, growing 2 % a year, at 7 % over 10 years.
    const years = (1 - (1.02 / 1.07) ** 10) / (0.07 - 0.02);
    expect(Number(extraNpv)).toBeCloseTo(-10_000 - 300 * years, 6);
  });

  it('leave the plan’s money away, not at another plan’s price, where its kit cost is none', () => {
    const book = new Evaluated(budgetWorkbook());
    book.type(sheet, changeOf(book, 'Kit cost', 'B'), 'none');
    expect(inComparison(book, 'press alone', 'NPV').text).toBe('–');
    expect(inComparison(book, 'press alone', 'cover, coldest month').value).toBeGreaterThan(1);
    expect(inComparison(book, 'larger dryer', 'NPV').value).toBeTypeOf('number');
  });

  it.each([
    ['Kit cost', '-5', 'Kit cost'],
    ['Dried to dry matter', '95%', 'Dried to dry matter'],
    ['Air m3 per hour', 'much', 'Air m3 per hour'],
  ])('refuse %s of %s loudly, in that plan alone', (item, typed, said) => {
    const book = new Evaluated(budgetWorkbook());
    const cell = changeOf(book, item, 'C');
    book.type(sheet, cell, typed);
    expect(book.read(sheet, cell.replace('C', 'J')).text).toBe('cannot be used');
    const npv = `E${rowOf(placed(book, 'Extra NPV over base'))}`;
    expect(book.read(sheet, npv).message).toContain(said);
    expect(inComparison(book, 'larger dryer', 'NPV').text).toBe('–');
    expect(inComparison(book, 'press alone', 'NPV').value).toBeTypeOf('number');
  });

  it('begin an empty budget with starts that carry no invented price', () => {
    const book = new Evaluated(budgetWorkbook({ blank: true }));
    for (const column of ['B', 'C']) expect(book.read(sheet, changeOf(book, 'Kit cost', column)).text).toBe('none');
    book.type('Inputs', inputCell(book, 'Air m3 per hour'), '3000');
    expect(book.read(sheet, changeOf(book, 'Air m3 per hour', 'C')).value).toBe(4500);
  });
});
