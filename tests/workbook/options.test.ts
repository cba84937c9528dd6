import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated, type Shown } from './evaluated.ts';

const sheet = 'Options';
const find = (book: Evaluated, label: string, on: string): Shown =>
  book.cells(on).find(({ text, address }) => text === label && /^[AB]\d+$/.test(address)) as Shown;
const inUse = (book: Evaluated, item: string): number =>
  Number(book.read('Inputs', `H${find(book, item, 'Inputs').address.slice(1)}`).value);
/** The beddings that are compared, with what each costs a year. */
function compared(book: Evaluated): ReadonlyMap<string, number> {
  const head = book.cells(sheet).find(({ text, address }) => text === 'option' && address.startsWith('A')) as Shown;
  const first = Number(head.address.slice(1)) + 1;
  const rows = Array.from({ length: 6 }, (_, k) => ['A', 'F'].map((column) => book.read(sheet, `${column}${first + k}`)) as [Shown, Shown]);
  return new Map(rows.filter(([name]) => name.text !== '').map(([name, cost]) => [name.text, Number(cost.value)]));
}
const words = (book: Evaluated, row: number): string => book.read(sheet, `I${row}`).text;
/** Rows 7 to 10 are for other beddings; row 10 is empty in the invented herd. */
const put = (book: Evaluated, row: number, cells: Readonly<Record<string, string>>): void => {
  for (const [column, content] of Object.entries(cells)) book.type(sheet, `${column}${row}`, content);
};

describe('beddings side by side', () => {
  it('costs each as a sum by hand does, what is lost added alike', () => {
    const book = new Evaluated(budgetWorkbook());
    const [cubicles, days, lost, rate] = ['Cubicles', 'Housed days', 'Bought lost', 'Labour rate'].map((item) => inUse(book, item)) as [
      number,
      number,
      number,
      number,
    ];
    put(book, 10, { A: 'own', B: '3', C: '50', D: '0', E: '2', F: '100' });
    // By hand: 3 kg laid, what is lost on top, at 50 a tonne; 2 hours in each week that they are housed; 100 more.
    const byHand = ((3 / (1 - lost)) * cubicles * days * 50) / 1000 + 2 * rate * (days / 7) + 100;
    expect(compared(book).get('own')).toBeCloseTo(byHand, 6);
    expect(words(book, 10)).toBe('compared');
  });

  it('takes as many litres as of the fibre where kg is left empty, and says so', () => {
    const book = new Evaluated(budgetWorkbook());
    put(book, 10, { A: 'limestone', C: '50', E: '2' });
    const litres = inUse(book, 'Bedding litres per cubicle each time') / inUse(book, 'Days between beddings');
    // 1,520 kg/m³: NRCS 651-4, from memory.
    expect(book.read(sheet, 'H10').value).toBeCloseTo((litres * 1.52) / (1 - inUse(book, 'Bought lost')), 9);
    expect(words(book, 10)).toBe('compared; kg from litres');
    expect(compared(book).has('limestone')).toBe(true);
  });

  it('leaves out a row that lacks something or cannot be used, says why in that row, and compares the others', () => {
    const cases: readonly (readonly [Readonly<Record<string, string>>, string])[] = [
      [{ A: 'own', C: '50', E: '2' }, 'kg missing'],
      [{ A: 'own', B: '3', E: '2' }, 'price missing'],
      [{ A: 'own', B: '3', C: '50' }, 'labour missing: 0 if none'],
      [{ B: '3', C: '50', E: '2' }, 'name missing'],
      [{ A: 'own', B: 'many', C: '50', E: '2' }, 'cannot use kg: 0 to 200'],
      [{ A: 'own', B: '-3', C: '50', E: '2' }, 'cannot use kg: 0 to 200'],
      [{ A: 'own', B: '3', C: '-50', E: '2' }, 'cannot use price'],
      [{ A: 'own', B: '3', C: 'dear', E: '2' }, 'cannot use price'],
      [{ A: 'own', B: '3', C: '50', D: '-1', E: '2' }, 'cannot use years'],
      [{ A: 'own', B: '3', C: '50', E: '-2' }, 'cannot use labour'],
      [{ A: 'own', B: '3', C: '50', E: '2', F: 'some' }, 'cannot use extra'],
    ];
    const book = new Evaluated(budgetWorkbook());
    const without = compared(book);
    expect(without.size).toBe(5);
    for (const [cells, says] of cases) {
      put(book, 10, { A: '', B: '', C: '', D: '', E: '', F: '', ...cells });
      expect(words(book, 10)).toBe(says);
      expect(compared(book)).toEqual(without);
    }
    put(book, 10, { A: '', B: '', C: '', D: '', E: '', F: '' });
    expect(words(book, 10)).toBe('');
  });

  it('says where the labour of the bedding now is not counted', () => {
    const book = new Evaluated(budgetWorkbook());
    const row = find(book, 'Labour hours a week now', 'Inputs').address.slice(1);
    const notes = () => book.cells(sheet).map(({ text }) => text);
    expect(notes()).not.toContainEqual(expect.stringContaining('looks too cheap'));
    book.type('Inputs', `C${row}`, '');
    expect(notes()).toContainEqual('labour now is not on Inputs: none is counted, so this row looks too cheap');
  });
});
