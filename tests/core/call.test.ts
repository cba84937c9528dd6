import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import { define, type FunctionRecord } from '../../src/core/define.ts';
import { maybe, number, optional } from '../../src/core/parameters.ts';
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
    return { total: a === 15 ? Number.NaN : a - b * c + (d ?? 0) };
  },
  result: 'total',
  working: { total: { says: 'Total', unit: 'kg', how: 'a - b * c + d' } },
  sources: [],
  examples: [],
});

const plain = (args: readonly unknown[]) =>
  call(sum, args).map((row) => row.map((cell) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell)));

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
  it('name every bad argument of a row together', () => {
    expect(plain(['x', 2000])[0]?.[0]).toBe(
      '#VALUE! a (kg): "x" is text, not a number; enter a number from 0 to 1,000,000,000 | b (kg): 2,000 is above 1,000; enter a number from 0 to 1,000',
    );
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
  });

  it('suggest the per cent that was meant', () => {
    expect(plain([1, 1, 35])[0]?.[0]).toBe('#VALUE! c (fraction): 35 is above 1; enter 35% or 0.35');
  });

  it('quote long or odd text short and on one line', () => {
    expect(plain([`${'long '.repeat(30)}\n<script>`, 1])[0]?.[0]).toMatch(/^#VALUE! a \(kg\): "long long [^\n]{20,40}…" is text/);
  });
});
