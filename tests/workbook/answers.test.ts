import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { inventedHerds } from '../../src/workbook/invented-herds.ts';
import { Evaluated } from './evaluated.ts';

const filled = budgetWorkbook();
const sheetNames = filled.sheets.map(({ name }) => name);
const errorCode = /^#(N\/A|ERROR|VALUE!|REF!|NAME\?|DIV\/0!|NUM!|SPILL!|CYCLE|BAD_EXPR)/;
const errorsOn = (book: Evaluated, sheet: string) => book.cells(sheet).filter(({ text }) => errorCode.test(text));

/** The cell right of a label in the first column that holds it. */
function beside(book: Evaluated, sheet: string, label: string) {
  const cell = book.cells(sheet).find(({ value }) => value === label);
  if (!cell) throw new Error(`${sheet} has no ${label}`);
  const [, letters = '', row] = /^([A-Z]+)(\d+)$/.exec(cell.address) ?? [];
  return book.read(sheet, `${String.fromCharCode(letters.charCodeAt(0) + 1)}${row}`);
}
const inputCell = (book: Evaluated, item: string) => beside(book, 'Inputs', item).address;
const words = (book: Evaluated) => book.cells('Answer').map(({ text }) => text);

describe('the workbook with the invented herd', () => {
  const book = new Evaluated(filled);

  it('shows no error anywhere, but for figures that do not exist, which say why', () => {
    const found = sheetNames.flatMap((sheet) => errorsOn(book, sheet).map((cell) => ({ sheet, ...cell })));
    expect(found.filter(({ sheet, text }) => sheet !== 'Figures' || text !== '#N/A')).toEqual([]);
    for (const { message } of found) expect(message).toMatch(/\w+ \w+ \w+/);
  });

  it('passes every check of its own', () => {
    expect(beside(book, 'Checks', 'All checks').text).toMatch(/^all OK: \d+ checks$/);
    expect(beside(book, 'Answer', 'Sums checked two ways').text).toBe(beside(book, 'Checks', 'All checks').text);
  });

  it('sets the currency sign before money, and names who prepared it, where they are given', () => {
    const named = new Evaluated(filled);
    expect(beside(named, 'Answer', 'NPV').address).toMatch(/^F/);
    const unit = () => named.read('Answer', beside(named, 'Answer', 'NPV').address.replace('F', 'G')).text;
    expect(unit()).toBe('money');
    named.type('Inputs', 'H5', '£');
    named.type('Inputs', 'C6', 'the plant’s adviser');
    expect(unit()).toBe('£');
    expect(words(named)).toContainEqual(expect.stringMatching(/^It saves £[\d,]+ a year before what it costs to own/));
    expect(words(named)).toContainEqual(expect.stringMatching(/; prepared by the plant’s adviser/));
    named.type('Inputs', 'H5', 'GBP');
    expect(words(named)).toContainEqual(expect.stringMatching(/^It saves GBP [\d,]+ a year/));
  });

  it('counts a figure typed over a formula, by sheet and column, and no longer says that all is well', () => {
    const typedOver = new Evaluated(filled);
    const saving = beside(typedOver, 'Answer', 'Saving').address;
    const lost = `Answer, column ${saving[0]}`;
    const formula = filled.sheets[0]?.cells[saving]?.content;
    typedOver.type('Answer', saving, '99000');
    expect(beside(typedOver, 'Answer', 'Sums checked two ways').text).toBe('1 typed over: see Checks');
    expect(typedOver.read('Checks', beside(typedOver, 'Checks', lost).address.replace('B', 'C')).text).toBe('1');
    typedOver.type('Answer', saving, String(formula));
    expect(beside(typedOver, 'Answer', 'Sums checked two ways').text).toMatch(/^all OK: \d+ checks$/);
  });

  it('says in words first what limits the kit, whether it pays, and that the stated output cannot be', () => {
    const said = words(book);
    expect(said).toContainEqual(
      expect.stringMatching(/^The dryer, not the slurry, sets the limit: it can make 1\.\d\d times what the beds need\.$/),
    );
    expect(said).toContainEqual(
      expect.stringMatching(/^It saves [\d,]+ a year before what it costs to own, and pays back in \d\.\d years\.$/),
    );
    expect(said).toContainEqual(
      expect.stringMatching(
        /^The stated output needs 1\.\d\d times the water this air can carry at the best for the supplier: not with this air\.$/,
      ),
    );
    expect(said).toContainEqual(expect.stringMatching(/span \d+–\d+: 0 is best; a planning aid, no diagnosis: talk to your vet/));
  });

  it('names three changes of kit or price for the beds, and three for the money', () => {
    expect(words(book).filter((text) => /: from [\d.,%]+ to [\d.,%]+/.test(text))).toHaveLength(6);
  });

  it('gives each of the two hundred herds its answer', () => {
    const herds = book.cells('Herds').filter(({ address, text }) => address.startsWith('A') && /^Herd \d+$/.test(text));
    expect(herds).toHaveLength(inventedHerds().length);
    const limits = new Set(book.cells('Herds').flatMap(({ address, text }) => (/^C\d+$/.test(address) ? [text] : [])));
    expect([...limits]).toEqual(expect.arrayContaining(['slurry', 'press', 'dryer']));
  });
});

describe('an input that changes', () => {
  it('changes the answer: cheaper bought bedding makes the kit pay less', () => {
    const book = new Evaluated(filled);
    const before = Number(beside(book, 'Answer', 'NPV').value);
    book.type('Inputs', inputCell(book, 'Bought price per t'), '150');
    expect(Number(beside(book, 'Answer', 'NPV').value)).toBeLessThan(before);
    book.type('Inputs', inputCell(book, 'Bought price per t'), '250');
    expect(Number(beside(book, 'Answer', 'NPV').value)).toBeGreaterThan(0);
    expect(words(book)).toContain('How far it may go and still pay');
    expect(beside(book, 'Checks', 'All checks').text).toMatch(/^all OK/);
  });

  it('shows its own sentence where it cannot be used, and Answer points to it', () => {
    const book = new Evaluated(filled);
    book.type('Inputs', inputCell(book, 'Slurry dry matter'), '7.5');
    expect(book.read('Answer', 'A3').text).toMatch(/^An input cannot be used: Slurry dry matter \(fraction\): 7\.5 is above/);
    expect(book.cells('Inputs').map(({ text }) => text)).toContain('cannot be so high');
    expect(book.cells('Figures').map(({ message }) => message)).toContainEqual(
      expect.stringContaining('Slurry dry matter (fraction): 7.5 is above'),
    );
    expect(errorsOn(book, 'Answer')).toEqual([]);
  });

  it.each([
    ['Dried to dry matter', '30%', 'cannot be below pressed'],
    ['Grant', '200000', 'cannot be above kit cost'],
    ['Life years', '7.5', 'cannot be a part'],
    ['Bed', 'feathers', 'cannot be used'],
    ['Cows', 'many', 'cannot be used'],
    ['Kit cost', '0', 'cannot be so low'],
    ['Slurry dry matter', '11%', 'above usual'],
    ['Discount rate', '', ''],
  ])('is told beside it what is wrong: %s of %s', (item, typed, said) => {
    const book = new Evaluated(filled);
    const cell = inputCell(book, item);
    book.type('Inputs', cell, typed);
    expect(book.read('Inputs', cell.replace('C', 'E')).text).toBe(said);
  });

  it('is told beside it what a dryer’s items are there for, by whether there is one', () => {
    const book = new Evaluated(budgetWorkbook({ blank: true }));
    const type = (item: string, typed: string) => book.type('Inputs', inputCell(book, item), typed);
    const said = (item: string) => book.read('Inputs', inputCell(book, item).replace('C', 'E')).text;
    const dryers = ['Dried to dry matter', 'Air m3 per hour', 'Hot water litres per hour', 'Heat available kW'];
    expect(dryers.map(said)).toEqual(['missing', 'missing', 'missing', 'missing']);
    type('Dryer', 'no');
    expect(dryers.map(said)).toEqual(['', '', '', '']);
    type('Pressed dry matter', '34%');
    for (const [item, typed] of [
      ['Dried to dry matter', '56%'],
      ['Air m3 per hour', '3000'],
    ] as const) {
      type(item, typed);
      expect(said(item)).toBe('not used: no dryer');
    }
    type('Dryer', 'yes');
    expect(dryers.map(said)).toEqual(['ok', 'ok', 'missing', 'missing']);
    type('Heat available kW', '50');
    expect(dryers.map(said)).toEqual(['ok', 'ok', '', 'ok']);
    type('Dried to dry matter', '34%');
    expect(said('Dried to dry matter')).toBe('cannot equal pressed');
    type('Dryer', '');
    expect(said('Dried to dry matter')).toBe('below usual');
    expect(said('Air m3 per hour')).toBe('not used: no dryer');
  });

  it.each([
    ['Dried to dry matter', '34%'],
    ['Dryer', 'no'],
  ])('without a dryer, told by %s, leaves the drying aside and still answers', (item, typed) => {
    const book = new Evaluated(filled);
    book.type('Inputs', inputCell(book, item), typed);
    expect(beside(book, 'Answer', 'What limits').text).toMatch(/slurry|press/);
    expect(words(book)).toContainEqual(expect.stringMatching(/^The (slurry|press) sets the limit/));
    expect(errorsOn(book, 'Answer')).toEqual([]);
    expect(beside(book, 'Checks', 'All checks').text).toMatch(/^\d+ OK, [1-9]\d* not worked out$/);
  });

  it('with the longest life, the longest loan and no country still has room for every table', () => {
    const book = new Evaluated(filled);
    book.type('Inputs', inputCell(book, 'Life years'), '40');
    book.type('Inputs', inputCell(book, 'Loan years'), '40');
    book.type('Inputs', inputCell(book, 'Country'), '');
    for (const sheet of sheetNames) expect(errorsOn(book, sheet).filter(({ text }) => text.includes('SPILL'))).toEqual([]);
    expect(beside(book, 'Checks', 'All checks').text).toMatch(/^all OK: \d+ checks$/);
  });

  it('shows a broken check on Answer', () => {
    const book = new Evaluated(filled);
    const net = book.cells('Investment').find(({ value }) => value === 'before tax, native');
    const [, column = '', row = ''] = /^([A-Z]+)(\d+)$/.exec(net?.address ?? '') ?? [];
    book.type('Investment', `${column}${Number(row) + 3}`, '0');
    expect(beside(book, 'Answer', 'Sums checked two ways').text).toMatch(/broken: see below$/);
  });
});

describe('the blank workbook', () => {
  const blank = budgetWorkbook({ blank: true });
  const book = new Evaluated(blank);

  it('is the same workbook with nothing filled in', () => {
    expect(blank.sheets.map(({ name }) => name)).toEqual(sheetNames);
    const given = Object.entries(blank.sheets[1]?.cells ?? {}).filter(
      ([, { style, content }]) => /input|required/.test(String(style)) && content !== '',
    );
    expect(given).toEqual([]);
  });

  it('says on Answer what is still missing, with no error in sight', () => {
    expect(book.read('Answer', 'A3').text).toMatch(/^Still missing on Inputs: Cows; Cubicles; /);
    expect(words(book)).toContainEqual(expect.stringMatching(/^Fill in Inputs/));
    expect(sheetNames.filter((name) => name !== 'Figures' && errorsOn(book, name).length > 0)).toEqual([]);
  });

  it('marks on Inputs what is missing', () => {
    expect(book.cells('Inputs').filter(({ text }) => text === 'missing').length).toBeGreaterThan(10);
  });

  it('breaks no check: what cannot be worked out yet is not counted', () => {
    expect(beside(book, 'Checks', 'All checks').text).toMatch(/^\d+ OK, [1-9]\d* not worked out$/);
  });

  it('comes to the same answer as the filled one once the same is typed in', () => {
    const typed = Object.entries(filled.sheets[1]?.cells ?? {}).filter(([, { style }]) => style === 'input' || style === 'required');
    const sheets = blank.sheets.map((sheet) =>
      sheet.name === 'Inputs' ? { ...sheet, cells: { ...sheet.cells, ...Object.fromEntries(typed) } } : sheet,
    );
    const [typedIn, example] = [new Evaluated({ sheets }), new Evaluated(filled)];
    for (const key of ['NPV', 'Cover of demand', 'Hygiene score, fibre']) {
      expect(beside(typedIn, 'Answer', key).value).toBe(beside(example, 'Answer', key).value);
    }
  });
});
