import { describe, expect, it } from 'vitest';
import { choice, maybe, number, optional, type Parameter, REFUSED, table, text, yesNo } from '../../src/core/parameters.ts';
import { schemaOf } from './schema-of.ts';

/** What becomes of a cell. Our own rule and zod's, made from the same bounds, must agree on it. */
function read(parameter: Parameter, cell: unknown): unknown {
  const value = parameter.read(cell);
  const { success, data } = schemaOf(parameter).safeParse(cell);
  expect(success ? data : REFUSED).toEqual(value);
  return value;
}

describe('a number', () => {
  it.each([
    [{ min: 1, max: 9 }, [1, 5, 9], [0.999, 9.001]],
    [{ above: 1, max: 9 }, [1.001, 9], [1, 9.001]],
    [{ min: 1, below: 9 }, [1, 8.999], [0.999, 9]],
    [{ above: 1, below: 9 }, [1.001, 8.999], [1, 9]],
    [{ min: 1, max: 9, whole: true }, [1, 9], [1.5, 10]],
    [{ min: 1, max: 9, slip: { when: (value: number) => value === 5, hint: 'five?' } }, [4, 6], [5]],
  ] as const)('keeps to its limits: %o', (bounds, good, bad) => {
    const parameter = number('a', 'kg', 'a', bounds);
    expect(parameter.range).toEqual([1, 9]);
    expect(good.map((cell) => read(parameter, cell))).toEqual(good);
    for (const cell of bad) expect(read(parameter, cell), String(cell)).toBe(REFUSED);
  });

  it('without limits of its own keeps to those of its unit', () => {
    expect(number('share', 'fraction', 'a share').range).toEqual([0, 1]);
    expect(number('year', 'days', 'days', { min: 1 }).range).toEqual([1, 366]);
  });

  it.each(['5', true, null, undefined, '', Number.NaN, Number.POSITIVE_INFINITY])('is nothing else: %s', (cell) => {
    expect(read(number('a', '', 'a'), cell)).toBe(REFUSED);
  });
});

describe('a word', () => {
  it('of a list is known whatever its case and outer spaces, and given as listed', () => {
    const kind = choice('kind', 'kind', ['Sand', 'straw']);
    expect([' sand', 'SAND ', 'Straw'].map((cell) => read(kind, cell))).toEqual(['Sand', 'Sand', 'straw']);
    for (const cell of ['san', '', '  ', 1, true, null]) expect(read(kind, cell), String(cell)).toBe(REFUSED);
    expect(kind).toMatchObject({ unit: 'text', choices: ['Sand', 'straw'], accepts: 'Sand or straw' });
  });

  it('may be yes or no, in words or as a tick', () => {
    const dried = yesNo('dried', 'dried');
    expect([true, 'yes', ' Yes ', 'TRUE', 'true'].map((cell) => read(dried, cell))).toEqual(Array(5).fill('yes'));
    expect([false, 'no', 'NO ', 'False'].map((cell) => read(dried, cell))).toEqual(Array(4).fill('no'));
    for (const cell of ['y', '', 1, 0, null]) expect(read(dried, cell), String(cell)).toBe(REFUSED);
    expect(dried).toMatchObject({ unit: 'yes or no', choices: ['yes', 'no'], accepts: 'yes or no' });
  });

  it('of any kind loses its outer spaces and is at most 255 characters without them', () => {
    const name = text('name', 'a name');
    const longest = 'x'.repeat(255);
    expect([' two words ', longest, ` ${longest} `].map((cell) => read(name, cell))).toEqual(['two words', longest, longest]);
    expect(name).toMatchObject({ unit: 'text', accepts: 'text of at most 255 characters' });
    for (const cell of ['', '   ', `${longest}x`, 5, true, null]) expect(read(name, cell), String(cell).slice(0, 20)).toBe(REFUSED);
  });
});

describe('a table', () => {
  it('is a whole range', () => {
    const rows = table('rows', 'rows');
    expect(rows).toMatchObject({ table: true, unit: 'table', accepts: 'a range of cells' });
    expect(
      read(rows, [
        [1, null],
        ['a', true],
      ]),
    ).toEqual([
      [1, null],
      ['a', true],
    ]);
    expect(read(rows, 5)).toBe(REFUSED);
  });
});

describe('an argument that may be left out', () => {
  it('says what stands in for it, on whose word', () => {
    const loss = number('loss', 'fraction', 'share lost');
    const tenth = { value: 0.1, source: 'project', status: 'judgement' } as const;
    expect(optional(loss, tenth)).toEqual({ ...loss, fallback: tenth });
    expect(maybe(loss, 'none').fallback).toEqual({ value: undefined, shown: 'none', source: 'project', status: 'judgement' });
  });
});
