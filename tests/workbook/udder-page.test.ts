import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated, type Shown } from './evaluated.ts';

const sheet = 'Udder health';
const labelled = (book: Evaluated, label: string, on = sheet): Shown =>
  book.cells(on).find(({ text, address }) => text === label && /^[AB]\d+$/.test(address)) as Shown;
const at = (book: Evaluated, label: string, column: string, on = sheet): Shown =>
  book.read(on, column + labelled(book, label, on).address.slice(1));
const type = (book: Evaluated, item: string, typed: string): void => book.type('Inputs', at(book, item, 'C', 'Inputs').address, typed);

describe('the vet’s page', () => {
  it('sets the points of the fibre beside those of the bedding now, and they add up to the two scores', () => {
    const book = new Evaluated(budgetWorkbook());
    expect(at(book, 'All points', 'B').value).toBeCloseTo(Number(at(book, 'Hygiene score, fibre', 'B', 'Answer').value), 9);
    expect(at(book, 'All points', 'C').value).toBeCloseTo(Number(at(book, 'Hygiene score, present bedding', 'B', 'Answer').value), 9);
    expect(at(book, 'All points', 'E').text).toBe(`the fibre is worse by ${at(book, 'All points', 'D').text} points`);
    // Daily bedding, both: what differs is how wet and of what it is.
    expect(at(book, 'All points', 'D').value).toBeGreaterThan(0);
  });

  it('shows the span of either score, as HYGIENE.SPAN has it', () => {
    const book = new Evaluated(budgetWorkbook());
    const spans = [1, 2].map((right) =>
      ['Lowest', 'Highest'].map((end) => Math.round(Number(at(book, end, right === 1 ? 'B' : 'C').value))).join('–'),
    );
    expect(spans).toEqual(['Hygiene span, fibre', 'Hygiene span, present bedding'].map((key) => at(book, key, 'B', 'Answer').text));
    expect(['low', 'moderate', 'raised', 'high']).toContain(at(book, 'Lowest', 'D').text);
  });

  it('calls the same what is the same, and nothing known where a bedding is not known', () => {
    const book = new Evaluated(budgetWorkbook());
    const now = ['Bought dry matter', 'Days now', 'Material now'].map((item) => at(book, item, 'H', 'Inputs').text);
    type(book, 'Dried to dry matter', '80%');
    type(book, 'Bought dry matter', '80%');
    type(book, 'Fibre kind', String(now[2]));
    expect(at(book, 'All points', 'E').text).toBe('the same');
    const blank = new Evaluated(budgetWorkbook({ blank: true }));
    expect(at(blank, 'All points', 'E').text).toBe('not known');
    expect(at(blank, 'All points', 'B').text).toBe('–');
  });

  it('tells how many more cases would take the NPV to 0, as Answer does', () => {
    const book = new Evaluated(budgetWorkbook());
    type(book, 'Kit cost', '60000');
    const cases = at(book, 'Extra cases that would take the NPV to 0', 'B');
    expect(cases.value).toBeGreaterThan(0);
    expect(cases.text).toBe(at(book, 'Mastitis cases to NPV 0', 'B', 'Answer').text);
  });

  it('takes a count in the laboratory’s own unit', () => {
    const book = new Evaluated(budgetWorkbook());
    const perVolume = () => at(book, 'that is, per cubic centimetre', 'B').value;
    const put = (label: string, typed: string) => book.type(sheet, at(book, label, 'B').address, typed);
    // By hand: a million a gram at 300 g a litre is 300,000 a cm³ (evidence: cfu per g ≠ cfu per cm³).
    put('Count', '1000000');
    put('A litre of the sample weighs', '300');
    expect(perVolume()).toBeCloseTo(300_000, 6);
    // Patel and others 2019, quoted: coliforms at most 10,000 per cm³ in used bedding.
    expect(at(book, 'beside the published benchmark', 'B').value).toBeCloseTo(30, 9);
    put('Count', '6');
    expect(at(book, 'to look at', 'B').text).toBe('a logarithm? choose its unit');
    put('its unit', 'log10 per g');
    expect(perVolume()).toBeCloseTo(300_000, 6);
    expect(at(book, 'to look at', 'B').text).toBe('–');
    put('its unit', 'log10 per ml');
    put('A litre of the sample weighs', '');
    expect(perVolume()).toBeCloseTo(1_000_000, 6);
    put('its unit', 'per g');
    expect(perVolume()).toBe('–');
    put('Count', 'many');
    expect(at(book, 'beside the published benchmark', 'B').text).toBe('–');
  });

  it('shows studies on both sides', () => {
    const book = new Evaluated(budgetWorkbook({ blank: true }));
    const reads = book.cells(sheet).flatMap(({ address, text }) => (address.startsWith('D') ? [text] : []));
    expect(reads).toEqual(expect.arrayContaining(['no worse', 'better', 'worse', 'sand better', 'unsure']));
  });
});
