import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated, type Shown } from './evaluated.ts';

const sheet = 'Size';
const at = (book: Evaluated, label: string, column: string, on = sheet): Shown => {
  const found = book.cells(on).find(({ text, address }) => text === label && /^[AB]\d+$/.test(address)) as Shown;
  return book.read(on, column + found.address.slice(1));
};
const onInputs = (book: Evaluated, item: string): string => at(book, item, 'C', 'Inputs').address;

describe('the size that the worst month asks for', () => {
  it('covers every month with its margin once it is put into the plan', () => {
    const book = new Evaluated(budgetWorkbook());
    for (const item of ['Air m3 per hour', 'Heat available kW', 'Hot water litres per hour'])
      book.type('Inputs', onInputs(book, item), String(Number(at(book, item, 'D').value) * 1.02));
    const short = book.cells('Months').filter(({ text }) => text === 'short');
    expect(short).toEqual([]);
  });

  it('calls no line enough that is not given', () => {
    const book = new Evaluated(budgetWorkbook());
    expect(at(book, 'Hot water litres per hour', 'F').text).toBe('too small');
    book.type('Inputs', onInputs(book, 'Hot water litres per hour'), '');
    expect(at(book, 'Hot water litres per hour', 'F').text).toBe('not given');
    book.type('Inputs', onInputs(book, 'Drum m3'), '');
    expect(at(book, 'Drum m3', 'F').text).toBe('not given');
  });

  it('says why where a size cannot be had: a thin slurry takes more than a cow makes', () => {
    const book = new Evaluated(budgetWorkbook());
    book.type('Inputs', onInputs(book, 'Slurry dry matter'), '2%');
    expect(at(book, 'Slurry per cow', 'D').message).toMatch(/more than a cow makes: it would take the slurry of \d+ cows/);
    expect(at(book, 'Slurry per cow', 'F').text).toMatch(/^cannot be had/);
  });

  it('goes by the coldest month of Inputs while Months has a gap, and says so', () => {
    const book = new Evaluated(budgetWorkbook());
    expect(at(book, 'The worst month is', 'B').text).toMatch(/^the worst of Months/);
    book.type('Months', 'C14', '');
    expect(at(book, 'The worst month is', 'B').text).toMatch(/^the coldest month of Inputs/);
    expect(at(book, 'Air m3 per hour', 'D').value).toBeGreaterThan(0);
  });

  it('holds the drum’s own loss against the heat loss of the plan: 6 W/m²K over skin and ends', () => {
    const book = new Evaluated(budgetWorkbook());
    const area = Math.PI * 1.6 * 5.5 + (Math.PI * 1.6 ** 2) / 2;
    const [supply, exhaust] = ['Supply temperature', 'Exhaust temperature'].map((key) => Number(at(book, key, 'B', 'Figures').value)) as [
      number,
      number,
    ];
    // By hand: U·A·(T_i − T_a), outdoors 9 °C.
    expect(at(book, 'The skin loses', 'B').value).toBeCloseTo((6 * area * ((supply + exhaust) / 2 - 9)) / 1000, 9);
    expect(at(book, 'as a share of the heat put in', 'B').value).toBeGreaterThan(0.1);
    expect(book.cells(sheet).map(({ text }) => text)).toContain('the skin alone loses more: raise Heat loss or lag the drum');
  });
});
