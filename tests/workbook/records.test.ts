import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated } from './evaluated.ts';

const demo = budgetWorkbook();
const blank = budgetWorkbook({ blank: true });
const sheet = 'Records';

const rowOf = (book: Evaluated, label: string): number => {
  const cell = book.cells(sheet).find(({ address, text }) => address.startsWith('A') && text.startsWith(label));
  if (!cell) throw new Error(`no ${label}`);
  return Number(cell.address.slice(1));
};
const words = (book: Evaluated): string =>
  book
    .cells(sheet)
    .filter(({ address }) => /^A(?:[3-9]|1[0-4])$/.test(address))
    .map(({ text }) => text)
    .join('\n');

type Month = readonly [month: string, cows: number | '', cases: number | '', klebsiella?: number];

/** The blank workbook with a book of months typed in. */
function typedIn(months: readonly Month[], change = ''): Evaluated {
  const book = new Evaluated(blank);
  const first = rowOf(book, 'month: any day') + 1;
  if (change) book.type(sheet, `B${rowOf(book, 'First month')}`, change);
  months.forEach(([month, cows, cases, klebsiella], k) => {
    for (const [column, value] of [
      ['A', month],
      ['B', cows],
      ['C', cases],
      ['E', klebsiella ?? ''],
    ] as const)
      if (value !== '') book.type(sheet, `${column}${first + k}`, String(value));
  });
  return book;
}

/** A year of 100 cows with so many cases in its months. */
const year = (of: number, cases: readonly number[]): readonly Month[] =>
  cases.map((count, k) => [`${of}-${String(k + 1).padStart(2, '0')}-15`, 100, count]);
const fourteen = [1, 2, 1, 0, 1, 2, 1, 1, 2, 1, 1, 1];

describe('the record of a year before and a year after', () => {
  it('leaves the exact limits of its few cases open', () => {
    const book = typedIn([...year(2025, fourteen), ...year(2026, fourteen)], '2026-01-01');
    // Garwood 1936 (memory; a calculator maker's page, seen): 14 events, 95 %: 7.65 to 23.49; a year of 100 cows makes it a rate.
    expect(words(book)).toContain('14.0 before (7.7 to 23.5), 14.0 after (7.7 to 23.5)');
    expect(words(book)).toContain('No difference shown, which is not “no worse”: a rise could still hide');
    expect(words(book)).toContain('for your vet to say');
    expect(words(book)).not.toMatch(/\bno worse\b(?!”)/);
  });

  it('compares the same months of the year only, and leaves a month without a row out', () => {
    const book = typedIn([...year(2025, fourteen), ...year(2026, fourteen).slice(0, 3)], '2026-01-01');
    const row = rowOf(book, 'same months of the year');
    expect([book.read(sheet, `B${row + 1}`).value, book.read(sheet, `C${row + 1}`).value]).toEqual([3, 3]);
    expect([book.read(sheet, `B${row + 2}`).value, book.read(sheet, `C${row + 2}`).value]).toEqual([4, 4]);
  });

  it('calls many more cases more, and fewer fewer, each with what it leaves open', () => {
    const many = fourteen.map((count) => 3 * count + 2);
    expect(words(typedIn([...year(2025, fourteen), ...year(2026, many)], '2026-01-01'))).toMatch(
      /MORE cases since the change: ring your vet\. at least \d+% more/,
    );
    expect(words(typedIn([...year(2025, many), ...year(2026, fourteen)], '2026-01-01'))).toMatch(
      /Fewer cases since the change: at least \d+% fewer/,
    );
  });

  it('takes no case at all for no proof', () => {
    const none = fourteen.map(() => 0);
    const book = typedIn([...year(2025, none), ...year(2026, none)], '2026-01-01');
    expect(words(book)).toContain('that shows nothing either way');
    expect(words(book)).toContain('No rise would show: too few cases before');
  });

  it('says how long records must run: 12 months at 34 cases per 100 of 260 cows, as scipy has it', () => {
    // scipy 1.17.1, stats.poisson and binom: power 0.831 after 12 months, below 0.8 after 11, for a rise by half.
    const book = new Evaluated(demo);
    expect(words(book)).toContain(
      'four times in five takes 12 months before and as many after; on record are 12 and 11. Still to come after: 1.',
    );
  });
});

describe('a record with gaps and slips', () => {
  it.each([
    [[['2026-01-01', '', 3]], 'cows are missing'],
    [[['2026-01-01', 100, '']], 'cases are missing: 0 for none'],
    [[['2026-01-01', 100, 1.5]], 'cases cannot be a part'],
    [[['', 100, 1]], 'month is missing: type a date of it'],
    [
      [
        ['2026-01-01', 100, 1],
        ['2026-01-31', 100, 1],
      ],
      'not later than a month above',
    ],
    [
      [
        ['2026-02-01', 100, 1],
        ['2026-01-31', 100, 1],
      ],
      'not later than a month above',
    ],
    [[['2026-01-01', 100, 1, 2]], 'look: more cultured than cases'],
  ] as const)('says what is wrong with a row, at the top too: %j', (months, said) => {
    const book = typedIn(months as readonly Month[]);
    expect(words(book)).toContain(`of the record: ${said}.`);
    const counts = said.startsWith('look') ? 1 : months.length - 1;
    const days = book.cells('Record sums').filter(({ address, value }) => /^C\d+$/.test(address) && typeof value === 'number');
    expect(days).toHaveLength(counts);
  });

  it('says in words what is missing before anything can be compared', () => {
    expect(words(new Evaluated(blank))).toContain('No month is on record yet');
    expect(words(typedIn(year(2025, fourteen)))).toContain('Type the first month on the new bedding above');
    expect(words(typedIn(year(2025, fourteen), '2024-01-01'))).toContain('No month before the change is on record');
    expect(words(typedIn(year(2025, fourteen), '2026-01-01'))).toContain('No month after the change is on record yet');
  });
});

describe('stop rules', () => {
  const klebsiella = 'Klebsiella, cases in the latest';
  it('asks for limits to be agreed before anything else', () => {
    const book = new Evaluated(blank);
    expect(words(book)).toContain('No stop rule is agreed yet');
    expect(book.read(sheet, `D${rowOf(book, klebsiella)}`).text).toBe('no limit agreed');
  });

  it('calls for the vet when Klebsiella passes its limit, and takes months that were not cultured for no record', () => {
    const months = year(2026, [2, 2, 2, 2, 2, 2]);
    const cultured = months.map(([month, cows, cases], k): Month => (k > 3 ? [month, cows, cases, 1] : [month, cows, cases]));
    const book = typedIn(cultured, '2026-01-01');
    book.type(sheet, `B${rowOf(book, klebsiella)}`, '2');
    expect(book.read(sheet, `D${rowOf(book, klebsiella)}`).text).toBe('PASSED');
    expect(words(book)).toContain('A stop rule is PASSED: ring the vet');
    const bare = typedIn(months, '2026-01-01');
    bare.type(sheet, `B${rowOf(bare, klebsiella)}`, '2');
    expect(bare.read(sheet, `D${rowOf(bare, klebsiella)}`).text).toBe('no record yet');
  });
});

it('reads a count in the unit that the laboratory wrote it in', () => {
  const book = typedIn([['2026-01-01', 100, 1]]);
  const first = rowOf(book, 'month: any day') + 1;
  book.type(sheet, `B${rowOf(book, 'A litre of the sample')}`, '0.3');
  for (const [column, value] of [
    ['M', '6'],
    ['N', 'log10 per g'],
    ['O', 'coliforms'],
    ['P', 'used'],
  ] as const)
    book.type(sheet, `${column}${first}`, value);
  // By hand: a million a gram at 0.3 g/cm³ is 300,000 per cm³, 30 times the 10,000 of Patel 2019 (quoted).
  expect(book.read('Record sums', 'H6').value).toBeCloseTo(300_000, 6);
  expect(book.read('Record sums', 'I6').value).toBeCloseTo(30, 9);
  book.type(sheet, `N${first}`, 'per g');
  expect(words(book)).toContain('a logarithm? choose its unit');
});
