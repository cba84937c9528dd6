import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import { define, defineSpill, type FunctionRecord } from '../../src/core/define.ts';
import { maybe, number, optional, type Parameter, table } from '../../src/core/parameters.ts';
import { CellError } from '../../src/core/result.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';

const none = { value: 1, source: 'project', status: 'judgement' } as const;

/** a − b × c + d, so that every mix-up of arguments shows. */
const sum: FunctionRecord = define({
  name: 'TEST.SUM',
  summary: 'For these tests only.',
  finds: '',
  parameters: [
    number('a', 'kg', 'first'),
    number('b', 'kg', 'second', { max: 1000 }),
    optional(number('c', 'fraction', 'third'), none),
    maybe(number('d', 'kg', 'fourth'), 'nothing'),
  ],
  compute: (a: number, b: number, c: number, d: number | undefined) => {
    if (a === 13) throw new NoAnswer('there is none for 13');
    if (a === 14) throw new Refusal('b', 'does not go with 14', 'enter another');
    if (a === 16) throw new Refusal('heat and air', 'do not go together', 'enter one of them');
    if (a === 17) throw new TypeError('a fault of our own');
    return { total: a === 15 ? Number.NaN : a - b * c + (d ?? 0) };
  },
  result: 'total',
  working: { total: { says: 'Total', unit: 'kg', how: 'a - b * c + d' } },
  sources: [],
  examples: [],
});

const plain = (args: readonly unknown[], record = sum) =>
  call(record, args).map((row) => row.map((cell) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell)));

describe('ranges', () => {
  it('answer cell by cell, single values stretched', () => {
    expect(plain([[[1], [2], [3]], 10, 0.5])).toEqual([[-4], [-3], [-2]]);
  });

  it('of n×1 and 1×m give n×m', () => {
    expect(plain([[[100], [200]], [[1, 2, 3]]])).toEqual([
      [99, 98, 97],
      [199, 198, 197],
    ]);
  });

  it('that end too soon have no partner there', () => {
    const answer = plain([
      [[1], [2], [3]],
      [[1], [2]],
    ]);
    expect(answer.slice(0, 2)).toEqual([[0], [0]]);
    expect(answer[2]?.[0]).toBe('#N/A b: this range has no cell here; make the ranges the same size');
  });

  it('that end too soon to the right have none there either', () => {
    const noCell = '#N/A b: this range has no cell here; make the ranges the same size';
    expect(plain([[[1, 2, 3]], [[1, 2]]])).toEqual([[0, 0, noCell]]);
    expect(plain([[[1], [2], [3]], [[1, 2]]])[2]).toEqual([2, 1]);
  });

  it('may be ragged or empty without harm', () => {
    expect(plain([[[1], []], 1])).toEqual([[0], ['']]);
    expect(plain([[], 1])[0]?.[0]).toContain('a (kg): is missing');
    expect(plain([[[]], 1])[0]?.[0]).toContain('a (kg): is missing');
  });
});

describe('blanks', () => {
  it.each([null, undefined, ''])('are null, undefined and empty text: %s', (blank) => {
    expect(plain([10, 4, blank, blank])).toEqual([[6]]);
    expect(plain([blank, 4])[0]?.[0]).toBe('#VALUE! a (kg): is missing; enter a number from 0 to 1,000,000,000');
  });

  it('are not zero: a zero is taken as typed', () => {
    expect(plain([10, 0])).toEqual([[10]]);
  });

  it('in every ranged required cell of a row make the row blank, whatever else is wrong', () => {
    expect(
      plain([
        [[1], ['']],
        [[1], [null]],
        [[0.5], [35]],
      ])[1],
    ).toEqual(['']);
  });

  it('are not what cannot be read: such a row is refused', () => {
    expect(
      plain([
        [[1], ['x']],
        [[1], [null]],
      ])[1]?.[0],
    ).toMatch(/^#VALUE! a \(kg\): "x" is text.* \| b \(kg\): is missing/);
    expect(
      plain([
        [[1], ['x']],
        [[1], ['y']],
      ])[1]?.[0],
    ).toMatch(/^#VALUE! a .* \| b /);
  });

  it('in one ranged required cell are that row’s error', () => {
    expect(
      plain([
        [[1], [2]],
        [[1], ['']],
      ])[1]?.[0],
    ).toContain('b (kg): is missing');
  });

  it('in an optional range take the default, also where nothing else is ranged', () => {
    expect(plain([10, 4, [[0.5], ['']]])).toEqual([[8], [6]]);
  });
});

describe('refusals', () => {
  it('of an equation that names no single argument stand as they are', () => {
    expect(plain([16, 1])[0]?.[0]).toBe('#VALUE! heat and air: do not go together; enter one of them');
  });

  it('hide no fault of ours', () => {
    expect(() => call(sum, [17, 1])).toThrow(TypeError);
  });

  it('name every bad argument of a row together', () => {
    expect(plain(['x', 2000])[0]?.[0]).toBe(
      '#VALUE! a (kg): "x" is text, not a number; enter a number from 0 to 1,000,000,000 | b (kg): 2,000 is above 1,000; enter a number from 0 to 1,000',
    );
  });

  it('name them all where every argument is bad', () => {
    expect(String(plain(['x', 'x', 'x', 'x'])[0]?.[0]).match(/"x" is text, not a number/g)).toHaveLength(4);
  });

  it('of a domain function carry the argument’s unit', () => {
    expect(plain([14, 1])[0]?.[0]).toBe('#VALUE! b (kg): does not go with 14; enter another');
  });

  it('say why there is no answer, as not available', () => {
    expect(plain([13, 1])[0]?.[0]).toBe('#N/A there is none for 13');
  });

  it('stand in for anything that is no number', () => {
    expect(plain([15, 1])[0]?.[0]).toContain('#VALUE! the answer is too large or too small');
  });

  it('pass #N/A on as #N/A and name the cell’s argument', () => {
    expect(plain([{ code: '#N/A' }, 1])[0]?.[0]).toMatch(/^#N\/A a \(kg\): the cell it reads holds an error; mend that cell first/);
    expect(plain([{ code: '#DIV/0!' }, 1])[0]?.[0]).toMatch(/^#VALUE! a \(kg\)/);
    expect(plain([{ code: '#N/A' }, { code: '#N/A' }])[0]?.[0]).toMatch(/^#N\/A a .* \| b /);
    expect(plain([{ code: '#N/A' }, 2000])[0]?.[0]).toMatch(/^#VALUE! a .* \| b /);
  });

  it('suggest the per cent that was meant', () => {
    expect(plain([1, 1, 35])[0]?.[0]).toBe('#VALUE! c (fraction): 35 is above 1; enter 35% or 0.35');
  });

  it('quote long or odd text short and on one line', () => {
    expect(plain([`${'long '.repeat(30)}\n<script>`, 1])[0]?.[0]).toMatch(/^#VALUE! a \(kg\): "long long [^\n]{20,40}…" is text/);
  });
});

describe('a table as the answer', () => {
  const prices: FunctionRecord = defineSpill({
    name: 'TEST.PRICES',
    summary: 'For these tests only.',
    finds: '',
    parameters: [number('times', '', 'times', { min: 0, max: 9 }), maybe(table('prices', 'prices'), 'none')],
    compute: (times, given) => {
      if (times === 3) throw new Refusal('times', 'is unlucky', 'enter another');
      if (times === 4) return { rows: [], columns: ['other'] };
      const rows = (given ?? []).map(([name, price], k) => [String(name), times * Number(price), k === 0 ? undefined : new NoAnswer('so')]);
      return { rows };
    },
    columns: ['name', 'price', 'note'],
    working: {},
    sources: [],
    examples: [],
  });

  it('has its header above its rows, blanks as empty text and errors in their own cells', () => {
    expect(
      plain(
        [
          2,
          [
            ['sand', 3],
            ['straw', 4],
          ],
        ],
        prices,
      ),
    ).toEqual([
      ['name', 'price', 'note'],
      ['sand', 6, ''],
      ['straw', 8, '#N/A so'],
    ]);
    expect(plain([4], prices)).toEqual([['other']]);
  });

  it.each([
    null,
    undefined,
    [
      [null, ''],
      ['', null],
    ],
  ])('takes a range of blanks as left out: %j', (blank) => {
    expect(plain([2, blank], prices)).toHaveLength(1);
  });

  it('takes a range with a blank row as given', () => {
    expect(
      plain(
        [
          2,
          [
            [null, null],
            ['sand', 3],
          ],
        ],
        prices,
      ),
    ).toHaveLength(3);
  });

  it('hands blank cells of its range on as one kind of nothing', () => {
    expect(
      plain(
        [
          2,
          [
            ['', 1],
            [undefined, 2],
          ],
        ],
        prices,
      )
        .slice(1)
        .map(([name]) => name),
    ).toEqual(['null', 'null']);
  });

  it('takes one cell where one is asked for, and says what it was given instead', () => {
    const many = (size: string) => `#VALUE! times: is a range of ${size} cells; enter a number from 0 to 9 in one cell`;
    expect(plain([[[2]]], prices)).toHaveLength(1);
    expect(plain([[[1], [2]]], prices)).toEqual([[many('2 × 1')]]);
    expect(plain([[[1, 2, 3]]], prices)).toEqual([[many('1 × 3')]]);
    expect(
      plain(
        [
          [
            [1, 2],
            [3, 4],
          ],
        ],
        prices,
      ),
    ).toEqual([[many('2 × 2')]]);
  });

  it('gives way to the one reason why there is none', () => {
    expect(plain([10], prices)).toEqual([['#VALUE! times: 10 is above 9; enter a number from 0 to 9']]);
    expect(plain([{ code: '#N/A' }], prices)[0]?.[0]).toMatch(/^#N\/A times: the cell it reads holds an error/);
    expect(plain([3], prices)).toEqual([['#VALUE! times: is unlucky; enter another']]);
  });
});

describe('an equation', () => {
  const counted = (parameters: readonly Parameter[], columns?: readonly string[]): FunctionRecord => ({
    ...sum,
    parameters,
    compute: (...given: readonly unknown[]) => ({ total: given.length, rows: [given.map((value) => JSON.stringify(value) ?? 'nothing')] }),
    ...(columns && { columns }),
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9])('of %d arguments is given just those', (count) => {
    const parameters = Array.from({ length: count }, (_, k) => number(`a${k}`, 'kg', 'a'));
    expect(plain(Array(count + 1).fill(1), counted(parameters))).toEqual([[count]]);
  });

  it('is given an argument that repeats as a list, empty where it is left out', () => {
    const record = counted([{ ...number('a', 'kg', 'a'), repeating: true }], ['given']);
    expect(plain([[1, [[2]]]], record)[1]).toEqual(['[1,[[2]]]']);
    expect(plain([null], record)[1]).toEqual(['[]']);
  });
});
