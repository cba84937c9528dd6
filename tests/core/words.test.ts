import { describe, expect, it, test } from 'vitest';
import { choice, maybe, number, optional, type Parameter, table, text, yesNo } from '../../src/core/parameters.ts';
import { describe as describeParameter, missing, nameWithUnit, quoted, refusal } from '../../src/core/words.ts';

const judged = { source: 'project', status: 'judgement' } as const;

describe('an argument’s help', () => {
  it('says what it is, its unit, its range and what stands in for it', () => {
    const loss = optional(number('loss', 'fraction', 'share lost in store', { below: 1 }), { value: 0.05, ...judged });
    expect(describeParameter(loss)).toBe('share lost in store (fraction): a number from 0, below 1. Left out: 0.05');
  });

  it.each([
    [number('n', '', 'how many'), 'how many: a number from -1,000,000,000 to 1,000,000,000'],
    [text('name', 'its name'), 'its name: text of at most 255 characters'],
    [table('rows', 'the rows'), 'the rows: a range of cells'],
    [yesNo('dried', 'whether it is dried'), 'whether it is dried: yes or no'],
  ])('names no unit where there is none: %#', (parameter: Parameter, expected) => {
    expect(describeParameter(parameter)).toBe(expected);
  });

  it('writes a default as a sentence does', () => {
    const price = number('price', 'money', 'price', { min: 0, max: 5e6 });
    expect(describeParameter(optional(price, { value: 1234567, ...judged }))).toMatch(/ 5,000,000\. Left out: 1,234,570$/);
    expect(describeParameter(optional(choice('kind', 'kind', ['a', 'b']), { value: 'b', ...judged }))).toBe('kind: a or b. Left out: b');
  });

  it('says in words what is worked out where nothing is given', () => {
    expect(describeParameter(maybe(number('t', '°C', 'air', { min: 0, max: 9 }), 'the larger of the two'))).toBe(
      'air (°C): a number from 0 to 9. Left out: the larger of the two',
    );
    const held = optional(number('t', '°C', 'air', { min: 0, max: 9 }), { value: 3, shown: 'about 3', ...judged });
    expect(describeParameter(held)).toMatch(/Left out: about 3$/);
  });
});

describe('what to enter', () => {
  it.each([
    [{ min: 1, max: 9 }, 'a number from 1 to 9'],
    [{ above: 1, max: 9 }, 'a number above 1, at most 9'],
    [{ min: 1, below: 9 }, 'a number from 1, below 9'],
    [{ above: 1, below: 9 }, 'a number above 1, below 9'],
    [{ min: 1, max: 9, whole: true }, 'a whole number from 1 to 9'],
  ] as const)('is said with its limits: %o', (bounds, expected) => {
    expect(number('a', 'kg', 'a', bounds).accepts).toBe(expected);
  });

  it('is the list where there are few words to choose from', () => {
    expect(choice('kind', 'kind', ['sand', 'straw']).accepts).toBe('sand or straw');
    expect(choice('kind', 'kind', ['sand', 'straw', 'fibre']).accepts).toBe('one of sand, straw, fibre');
  });
});

test.each([
  [1234.5, '1,234.5'],
  [0.1 + 0.2, '0.3'],
  [true, 'TRUE'],
  [false, 'FALSE'],
  [{ code: '#REF!' }, 'an error'],
  ['  two\n  lines ', '"two lines"'],
  ['x'.repeat(40), `"${'x'.repeat(40)}"`],
  ['x'.repeat(41), `"${'x'.repeat(39)}…"`],
])('%o is quoted as %s', (cell, expected) => expect(quoted(cell)).toBe(expected));

describe('a refusal', () => {
  const between = number('a', 'kg', 'a', { min: 1, max: 9 });
  const open = number('a', 'kg', 'a', { above: 1, below: 9 });
  const whole = number('a', 'cows', 'a', { min: 1, max: 9, whole: true });
  const name = text('name', 'its name');

  it.each([
    [between, 0.5, 'a (kg): 0.5 is below 1; enter a number from 1 to 9'],
    [between, 1e4, 'a (kg): 10,000 is above 9; enter a number from 1 to 9'],
    [open, 1, 'a (kg): 1 is not above 1; enter a number above 1, below 9'],
    [open, 9, 'a (kg): 9 is not below 9; enter a number above 1, below 9'],
    [whole, 2.5, 'a (cows): 2.5 is not a whole number; enter a whole number from 1 to 9'],
    [between, 'two', 'a (kg): "two" is text, not a number; enter a number from 1 to 9'],
    [between, true, 'a (kg): TRUE is not a number; enter a number from 1 to 9'],
    [whole, Number.POSITIVE_INFINITY, 'a (cows): not a number is not a number; enter a whole number from 1 to 9'],
    [between, { code: '#REF!' }, 'a (kg): the cell it reads holds an error; mend that cell first, then enter a number from 1 to 9'],
    [name, '   ', 'name (text): is blank; enter text of at most 255 characters'],
    [name, 'x'.repeat(256), `name (text): "${'x'.repeat(39)}…" is too long; enter text of at most 255 characters`],
    [name, 5, 'name (text): 5 is a number, not text; enter text of at most 255 characters'],
    [name, true, 'name (text): TRUE is not text; enter text of at most 255 characters'],
    [choice('kind', 'kind', ['sand', 'straw']), 'chaff', 'kind (text): "chaff" is not one of the choices; enter sand or straw'],
    [yesNo('dried', 'dried'), 1, 'dried (yes or no): 1 is not one of the choices; enter yes or no'],
  ] as const)('says what is wrong and what would do: %#', (parameter: Parameter, cell, expected) => {
    expect(refusal(parameter, cell)).toBe(expected);
  });

  it('asks about a likely slip before anything else', () => {
    const slip = { when: (value: number) => value > 1900, hint: 'is this a number of years?' };
    const life = number('life', '', 'life', { min: 1, max: 2000, slip });
    expect(refusal(life, 1950)).toBe('life: 1,950: is this a number of years?; enter a number from 1 to 2,000');
    expect(refusal(life, 2026)).toBe('life: 2,026: is this a number of years?; enter a number from 1 to 2,000');
    expect(refusal(life, 0)).toBe('life: 0 is below 1; enter a number from 1 to 2,000');
  });

  const share = number('share', 'fraction', 'a share', { min: 0.05 });

  it.each([
    [share, 35, 'enter 35% or 0.35'],
    [share, 100, 'enter 100% or 1'],
    [share, 2, 'enter a number from 0.05 to 1'],
    [share, 200, 'enter a number from 0.05 to 1'],
    [share, '35', 'enter a number from 0.05 to 1'],
    [number('share', 'fraction', 'a share', { below: 0.5 }), 1, 'enter a number from 0, below 0.5'],
    [number('share', 'fraction', 'a share', { below: 0.5 }), 0.5, 'enter a number from 0, below 0.5'],
    [number('a', 'kg', 'a', { max: 1 }), 35, 'enter a number from 0 to 1'],
  ])('asks for the per cent that was meant, where it would do: %#', (parameter, cell, expected) => {
    expect(refusal(parameter, cell).split('; ').at(-1)).toBe(expected);
  });

  it('names the unit, where there is one', () => {
    expect(nameWithUnit(share)).toBe('share (fraction)');
    expect(missing(number('count', '', 'how many', { min: 0, max: 2 }))).toBe('count: is missing; enter a number from 0 to 2');
  });
});
