import { describe, expect, it } from 'vitest';
import { define, defineSpill, type FunctionRecord } from '../../src/core/define.ts';
import { maybe, number, optional, table, text } from '../../src/core/parameters.ts';
import { CellError } from '../../src/core/result.ts';
import { explain } from '../../src/core/working.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';

const tenth = { value: 0.1, source: 'project', status: 'judgement' } as const;
const ownChoice = 'Bedding Ledger: this project’s own choice, to be changed where you know better (judgement)';

const dried: FunctionRecord = define({
  name: 'TEST.DRIED',
  summary: 'For these tests.',
  finds: '',
  parameters: [
    number('wet', 'kg', 'wet fibre'),
    optional(number('loss', 'fraction', 'share lost'), tenth),
    maybe(number('air_c', '°C', 'air', { min: -60 }), 'that of the room'),
  ],
  compute: (wet: number, loss: number, air_c: number | undefined) => {
    if (wet === 13) throw new NoAnswer('there is none for 13');
    if (wet === 14) throw new Refusal('wet', 'is an odd load', 'enter another');
    if (wet === 15) throw new CellError('#N/A', 'a row of the table is amiss');
    if (wet === 16) throw new TypeError('a fault of our own');
    const kept = wet === 17 ? Number.NaN : wet * (1 - loss);
    return { kept, lost: wet - kept, root: 1, seen: air_c ?? 20 };
  },
  result: 'kept',
  working: {
    kept: { says: 'Kept', unit: 'kg', how: 'wet * (1 - loss)', source: 'project' },
    lost: { says: 'Lost', unit: 'kg', how: 'wet - kept' },
    root: { says: 'Root', unit: '', solves: 'root == 1', between: ['0', '2'] },
    seen: { says: 'Air taken', unit: '°C', told: 'as given, else that of the room' },
  },
  sources: [],
  examples: [],
});

const spill = (columns: readonly string[], rows: readonly (readonly (string | number)[])[], own?: readonly string[]): FunctionRecord =>
  defineSpill({
    name: 'TEST.SPILL',
    summary: 'For these tests.',
    finds: '',
    parameters: [maybe(table('prices', 'the prices'), 'none')],
    compute: () => ({ count: rows.length, rows, ...(own && { columns: own }) }),
    columns,
    working: { count: { says: 'Rows', unit: '', told: 'counted' } },
    sources: [],
    examples: [],
  });

const given = { equation: 'given', source: '' };

describe('the working of a call', () => {
  it('lists what was given, what stands in for it on whose word, every step, and the answer last', () => {
    expect(explain(dried, [[[200]], null])).toStrictEqual([
      { step: 'wet', says: 'wet fibre', unit: 'kg', value: 200, ...given },
      { step: 'loss', says: 'share lost', unit: 'fraction', equation: 'default', value: 0.1, source: ownChoice },
      { step: 'air_c', says: 'air', unit: '°C', equation: 'default', value: 'that of the room', source: '' },
      { step: 'lost', says: 'Lost', unit: 'kg', equation: 'wet - kept', value: 20, source: '' },
      { step: 'root', says: 'Root', unit: '', equation: 'root == 1', value: 1, source: '' },
      { step: 'seen', says: 'Air taken', unit: '°C', equation: 'as given, else that of the room', value: 20, source: '' },
      { step: 'kept', says: 'Kept', unit: 'kg', equation: 'wet * (1 - loss)', value: 180, source: ownChoice },
    ]);
  });

  it.each([null, undefined, '', [[null]], [[undefined]], [['']], [], [[]]])('takes the default where nothing is given: %j', (blank) => {
    expect(explain(dried, [200, blank])[1]).toMatchObject({ equation: 'default', value: 0.1 });
  });

  it.each([0, [[0]]])('takes a zero as given: %j', (zero) => {
    expect(explain(dried, [200, zero, zero]).slice(1, 3)).toMatchObject([
      { step: 'loss', value: 0, ...given },
      { step: 'air_c', value: 0, ...given },
    ]);
  });
});

describe('a refused call', () => {
  const refused = { step: 'refused', says: 'Why there is no answer', unit: '', source: 'TEST.DRIED' };

  it('shows its refusal alone where an argument cannot be read', () => {
    const why = 'wet (kg): is missing; enter a number from 0 to 1,000,000,000';
    expect(explain(dried, [null])).toStrictEqual([{ ...refused, equation: why, value: why }]);
    const notThere = explain(dried, [{ code: '#N/A' }]);
    expect(notThere).toHaveLength(1);
    expect(notThere[0]?.value).toBeInstanceOf(NoAnswer);
  });

  it.each([
    [13, 'there is none for 13', NoAnswer],
    [14, 'wet (kg): is an odd load; enter another', String],
    [15, 'a row of the table is amiss', NoAnswer],
  ])('shows what it was given and then why not: %d', (wet, why, kind) => {
    const steps = explain(dried, [wet]);
    expect(steps.map(({ step }) => step)).toEqual(['wet', 'loss', 'air_c', 'refused']);
    expect(steps[3]).toMatchObject({ ...refused, equation: why });
    expect(Object(steps[3]?.value)).toBeInstanceOf(kind);
  });

  it('shows its steps where only the answer is no number', () => {
    const steps = explain(dried, [17]);
    expect(steps.map(({ step }) => step).slice(3)).toEqual(['lost', 'root', 'seen', 'kept', 'refused']);
    expect(steps.at(-1)).toMatchObject({ ...refused, equation: expect.stringContaining('too large or too small') });
  });

  it('is not one where the fault is ours', () => {
    expect(() => explain(dried, [16])).toThrow(TypeError);
  });
});

describe('the working of a table', () => {
  const noMore = { says: '', equation: '', source: '' };

  it('tells how many rows it was given, or that it was given none', () => {
    expect(explain(spill(['key'], []), [[[1], [2]]])[0]).toMatchObject({ step: 'prices', value: '2 rows', ...given });
    expect(explain(spill(['key'], []), [])[0]).toMatchObject({ step: 'prices', equation: 'default', value: 'none' });
  });

  it('names every cell by its row and column, behind the steps on the way', () => {
    const costs = spill(
      ['material', 'cost', 'labour'],
      [
        ['sand', 4, 5],
        ['straw', 6, 7],
      ],
    );
    expect(explain(costs, []).slice(1)).toStrictEqual([
      { step: 'count', says: 'Rows', equation: 'counted', value: 2, unit: '', source: '' },
      { step: 'sand: cost', value: 4, unit: '', ...noMore },
      { step: 'sand: labour', value: 5, unit: '', ...noMore },
      { step: 'straw: cost', value: 6, unit: '', ...noMore },
      { step: 'straw: labour', value: 7, unit: '', ...noMore },
    ]);
  });

  it('names a value by its row alone where the table has one value and its unit', () => {
    expect(explain(spill(['item', 'value', 'unit'], [['saving', 9, 'money']]), []).slice(2)).toStrictEqual([
      { step: 'saving', value: 9, unit: 'money', ...noMore },
    ]);
  });

  it('takes more or fewer columns, or others, as they are', () => {
    const steps = (columns: readonly string[], row: readonly (string | number)[], own?: readonly string[]) =>
      explain(spill(columns, [row], own), [])
        .slice(2)
        .map(({ step }) => step);
    expect(steps(['item', 'value'], ['a', 1])).toEqual(['a: value']);
    expect(steps(['item', 'value', 'unit', 'note'], ['a', 1, 'kg', 'so'])).toEqual(['a: value', 'a: unit', 'a: note']);
    expect(steps(['item', 'cost', 'value'], ['a', 1, 2])).toEqual(['a: cost', 'a: value']);
    expect(steps(['item', 'value', 'unit'], ['a', 1, 2], ['item', 'low', 'high'])).toEqual(['a: low', 'a: high']);
  });

  it('is told by a function itself where it knows more', () => {
    const own = { step: 'own', says: 'Own', equation: '', value: 1, unit: '', source: '' };
    const record = { ...spill(['key', 'cost'], [['a', 1]]), explain: () => [own] };
    expect(explain(record, []).slice(1)).toEqual([own]);
  });

  it('says why there is none', () => {
    const record = { ...spill(['key'], []), parameters: [text('name', 'a name')] };
    expect(explain(record, [5]).map(({ step }) => step)).toEqual(['refused']);
  });
});
