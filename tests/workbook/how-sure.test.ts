import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated } from './evaluated.ts';

const demo = budgetWorkbook();
const sheet = 'How sure';

const rowOf = (book: Evaluated, label: string, on = sheet, column = 'A', nth = 0): number => {
  const cell = book.cells(on).filter(({ address, text }) => new RegExp(`^${column}\\d+$`).test(address) && text === label)[nth];
  if (!cell) throw new Error(`${on} has no ${label}`);
  return Number(cell.address.slice(1));
};
const density = 'Fresh fibre density';
const mark = (book: Evaluated, item: string, how: string) => book.type('Inputs', `I${rowOf(book, item, 'Inputs', 'B')}`, how);
/** The first of what to measure for the money, and its share. */
const first = (book: Evaluated) => {
  const row = rowOf(book, 'For NPV') + 2;
  return [book.read(sheet, `A${row}`).text, Number(book.read(sheet, `E${row}`).value)] as const;
};

describe('how sure the plan of the invented herd is', () => {
  it('says in one sentence how many of the plans drawn cover, pay and carry their loan, and what to measure', () => {
    const book = new Evaluated(demo);
    expect(book.read(sheet, 'A6').text).toMatch(
      /^Of many plans drawn (\d of 10|hardly any|nearly all) cover the beds, (\d of 10|hardly any|nearly all) pay, and (\d of 10|hardly any|nearly all) carry their loan 1\.25 times\.$/,
    );
    expect(book.read(sheet, 'A7').text).toMatch(/^Most would be told by: Fresh fibre density\. Weigh a full bucket/);
  });

  it('states the sampling error of each chance: √(p(1−p)/n), at none or all 3/n', () => {
    const book = new Evaluated(demo);
    const top = rowOf(book, 'Cover of demand');
    for (let row = top; row < top + 6; row++) {
      const p = Number(book.read(sheet, `C${row}`).value);
      expect(Number(book.read(sheet, `D${row}`).value)).toBeCloseTo(p === 0 || p === 1 ? 3 / 1000 : Math.sqrt((p * (1 - p)) / 1000), 12);
    }
  });

  it('asks for another figure once the one in most doubt was weighed, and the bucket narrows its range', () => {
    const book = new Evaluated(demo);
    const [before, share] = first(book);
    expect(before).toBe(density);
    mark(book, density, 'measured');
    const row = rowOf(book, density);
    expect([book.read(sheet, `E${row}`).value, book.read(sheet, `F${row}`).value]).toEqual([285, 315]);
    const [after] = first(book);
    expect(after).not.toBe(density);
    const again = rowOf(book, density, sheet, 'A', 1);
    expect(Number(book.read(sheet, `E${again}`).value)).toBeLessThan(share / 2);
  });

  it.each([
    ['read off', 270, 330],
    ['told', 240, 360],
    ['guessed', 250, 450],
    ['', 250, 450],
  ])('takes the range from how the figure is known: %s', (how, low, high) => {
    const book = new Evaluated(demo);
    mark(book, density, how);
    const row = rowOf(book, density);
    expect([book.read(sheet, `E${row}`).value, book.read(sheet, `F${row}`).value]).toEqual([low, high]);
  });

  it('is the plan itself where nothing is in doubt', () => {
    const book = new Evaluated(demo);
    const [from, to] = [rowOf(book, 'item') + 1, rowOf(book, 'Repairs share')];
    for (let row = from; row <= to; row++) {
      const inUse = String(book.read(sheet, `B${row}`).value);
      for (const column of ['G', 'H', 'I']) book.type(sheet, `${column}${row}`, inUse);
    }
    const npv = book
      .cells('Figures')
      .find(({ text }) => text === 'NPV')
      ?.address.replace('A', 'B') as string;
    expect(Number(book.read(sheet, `F${rowOf(book, 'NPV')}`).value)).toBeCloseTo(Number(book.read('Figures', npv).value), 6);
  });

  it('says beside a range of the user’s own why it cannot be used, and at the top', () => {
    const book = new Evaluated(demo);
    const row = rowOf(book, density);
    book.type(sheet, `G${row}`, '400');
    expect(book.read(sheet, `J${row}`).text).toBe('low is above likely');
    expect(book.read(sheet, 'A8').text).toBe('A range below cannot be used: see its check column.');
    expect(book.read(sheet, 'A6').text).toBe('');
  });
});

it('asks for Inputs first where nothing is filled in', () => {
  const book = new Evaluated(budgetWorkbook({ blank: true }));
  expect(book.read(sheet, 'A6').text).toMatch(/^Fill in Inputs first/);
  expect(book.read(sheet, 'A7').text).toBe('');
});
