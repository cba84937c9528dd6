import { describe, expect, it } from 'vitest';
import { define, defineSpill, type FunctionRecord, type Line } from '../../src/core/define.ts';
import { functionsFile } from '../../src/core/metadata.ts';
import { number, optional, type Parameter, text } from '../../src/core/parameters.ts';

const fallback = { value: 1, source: 'project', status: 'judgement' } as const;
const kg = (name: string): Parameter<number> => number(name, 'kg', 'how much', { max: 10 });
const left = (name: string): Parameter<number> => optional(kg(name), fallback);
const names: Parameter<string> = { ...text('names', 'names'), repeating: true };

const taking = (parameters: readonly Parameter[], unit: Line['unit'] = 'kg'): FunctionRecord => ({
  ...define({
    name: 'TEST.TAKE',
    summary: 'For these tests.',
    finds: '',
    parameters: [],
    compute: () => ({ total: 1 }),
    result: 'total',
    working: { total: { says: 'Total', unit, told: 'one' } },
    sources: [],
    examples: [],
  }),
  parameters,
});

const told = (record: FunctionRecord) => functionsFile([record]).functions[0];
/** Each argument as Excel shows it: `[a]` may be left out, `a…` may be given again and again. */
const shape = (parameters: readonly Parameter[]) =>
  told(taking(parameters))?.parameters.map(({ name, optional, repeating }) => {
    const given = repeating ? `${name}…` : name;
    return optional ? `[${given}]` : given;
  });

describe('what a host is told of a function', () => {
  it('is its name, what it gives in which unit, and every argument as a matrix of anything, errors too', () => {
    expect(functionsFile([taking([kg('a'), left('b')])])).toStrictEqual({
      allowErrorForDataTypeAny: true,
      functions: [
        {
          id: 'TEST.TAKE',
          name: 'TEST.TAKE',
          description: 'For these tests. Unit: kg.',
          parameters: [
            { name: 'a', description: 'how much (kg): a number from 0 to 10', type: 'any', dimensionality: 'matrix' },
            {
              name: 'b',
              description: 'how much (kg): a number from 0 to 10. Left out: 1',
              type: 'any',
              dimensionality: 'matrix',
              optional: true,
            },
          ],
          result: { dimensionality: 'matrix' },
        },
      ],
    });
  });

  it.each(['', 'text'] as const)('names no unit where there is none to name: "%s"', (unit) => {
    expect(told(taking([], unit))?.description).toBe('For these tests.');
  });

  it('names the columns of a table', () => {
    const record = defineSpill({
      name: 'TEST.TABLE',
      summary: 'For these tests.',
      finds: '',
      parameters: [],
      compute: () => ({ rows: [] }),
      columns: ['material', 'cost'],
      working: {},
      sources: [],
      examples: [],
    });
    expect(told(record)?.description).toBe('For these tests. Gives a table: material, cost.');
  });
});

describe('an argument may be left out', () => {
  it.each([
    [
      [kg('a'), left('b')],
      ['a', '[b]'],
    ],
    [
      [left('a'), kg('b'), left('c')],
      ['a', 'b', '[c]'],
    ],
    [
      [left('a'), left('b')],
      ['[a]', '[b]'],
    ],
    [
      [kg('a'), left('b'), names],
      ['a', '[b]', 'names…'],
    ],
    [
      [kg('a'), names],
      ['a', 'names…'],
    ],
  ])('only behind all that are needed, as Excel asks: %#', (parameters, expected) => {
    expect(shape(parameters)).toEqual(expected);
  });
});
