import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bibliography } from '../../src/core/bibliography.ts';
import { call } from '../../src/core/call.ts';
import type { Example, FunctionRecord } from '../../src/core/define.ts';
import { type Parameter, REFUSED } from '../../src/core/parameters.ts';
import { CellError, toCell } from '../../src/core/result.ts';
import { whyRefused } from '../../src/core/words.ts';
import { explain } from '../../src/core/working.ts';
import { registry } from '../../src/functions/index.ts';
import { saidOf, schemaOf } from '../core/schema-of.ts';
import { workOut } from './work-out.ts';

const cases = registry.map((record) => [record.name, record] as const);
const exampleCalls = registry.flatMap((record) =>
  record.examples.map((example, k) => [`${record.name} ${k + 1}`, record, example] as const),
);
const only = (record: FunctionRecord, args: readonly unknown[]) => call(record, args)[0]?.[0];
/** A call that works, with every argument in its place, to be spoilt one argument at a time. */
const goodCall = (record: FunctionRecord): readonly unknown[] => {
  const { call: given } = record.examples[0] as Example;
  return record.parameters.map((_, k) => given[k] ?? null);
};

describe('every function', () => {
  it.each(cases)('%s has an example, a summary and words to find it by', (_, record) => {
    expect(record.examples.length).toBeGreaterThan(0);
    expect(record.summary).toMatch(/\.$/);
    expect(record.finds.length).toBeGreaterThan(5);
    expect(record.sources.length).toBeGreaterThan(0);
  });

  it.each(exampleCalls)('%s agrees with its outside answer', (_, record, example) => {
    const answer = call(record, example.call);
    const column = example.at ? (answer[0] as readonly unknown[]).indexOf(example.at[1]) : 0;
    const row = example.at ? answer.find(([key]) => String(key) === example.at?.[0]) : answer[0];
    const found = row?.[column];
    if (typeof example.gives === 'string') return expect(found instanceof CellError ? found.code : found).toBe(example.gives);
    expect(found, found instanceof CellError ? found.message : undefined).toBeTypeOf('number');
    return expect(Math.abs((found as number) - example.gives)).toBeLessThanOrEqual(example.within ?? 1e-9 * Math.abs(example.gives));
  });

  it.each(exampleCalls)(
    '%s: its working ends in the very number it returns, and every line of arithmetic is true',
    (_, record, example) => {
      const steps = explain(record, example.call);
      const answer = call(record, example.call);
      const last = toCell(steps.at(-1)?.value);
      const cells = answer.at(-1) as readonly unknown[];
      if (!record.columns) expect(last).toStrictEqual(answer[0]?.[0]);
      else if (!record.explain) expect([cells[1], cells.at(-1)]).toContainEqual(last);
      for (const problem of workOut(record, example.call)) expect.fail(problem);
    },
  );

  it.each(cases)('%s takes its defaults from data that carry source and status', (_, record) => {
    for (const { fallback, name, read } of record.parameters) {
      if (!fallback) continue;
      expect(
        bibliography.map(({ id }) => id),
        name,
      ).toContain(fallback.source);
      expect(['seen', 'quoted', 'memory', 'computed', 'practice', 'judgement']).toContain(fallback.status);
      if (fallback.value === undefined) expect(fallback.shown, name).toMatch(/\w/);
      else expect(read(fallback.value), name).toBe(fallback.value);
    }
  });

  it('has names that are all different, and arguments that are all different within one', () => {
    const names = registry.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const { name, parameters } of registry) {
      expect(new Set(parameters.map((parameter) => parameter.name)).size, name).toBe(parameters.length);
    }
  });
});

/** What people really type, beside plain mistakes. 35 stands for 35 %. */
const slips: readonly unknown[] = [
  'text',
  '35',
  35,
  -1,
  1e308,
  -1e308,
  Number.NaN,
  Number.POSITIVE_INFINITY,
  true,
  '<b>',
  'constructor',
  { code: '#N/A' },
  { code: '#DIV/0!' },
];

function badArguments(parameter: Parameter): readonly unknown[] {
  if (parameter.table || parameter.repeating) return [];
  return slips.filter((slip) => parameter.read(slip) === REFUSED);
}

const sentence = (parameter: Parameter) => new RegExp(`^${parameter.name.replace(/[()|]/g, '\\$&')} ?\\(?.*: .{2,}; .{5,}`);

describe('a bad argument', () => {
  const spoilt = registry.flatMap((record) =>
    record.parameters
      .map((parameter, k) => [record.name, parameter.name, record, k] as const)
      .filter(([, , , k]) => badArguments(record.parameters[k] as Parameter).length > 0),
  );

  it.each(spoilt)('%s %s is refused in its own words', (_name, _argument, record, k) => {
    const parameter = record.parameters[k] as Parameter;
    for (const bad of badArguments(parameter)) {
      const answer = only(record, goodCall(record).toSpliced(k, 1, bad));
      expect(answer, String(bad)).toBeInstanceOf(CellError);
      const sentences = (answer as CellError).message.split(' | ');
      expect(
        sentences.some((part) => sentence(parameter).test(part)),
        sentences.join('\n'),
      ).toBe(true);
    }
  });

  const numbers = registry.flatMap((record) =>
    record.parameters.filter(({ range }) => range).map((parameter) => [record.name, parameter.name, parameter] as const),
  );

  it.each(numbers)('%s %s refuses 1e308 either way and a number that is none', (_name, _argument, parameter) => {
    for (const bad of [1e308, -1e308, Number.NaN, Number.POSITIVE_INFINITY]) expect(parameter.read(bad)).toBe(REFUSED);
  });

  const fractions = numbers.filter(([, , { unit }]) => unit === 'fraction');

  it.each(fractions)('%s %s refuses 35 for 35 % and says what would be right', (_name, _argument, parameter) => {
    expect(parameter.read(35)).toBe(REFUSED);
  });

  const needed = registry.flatMap((record) =>
    record.parameters.flatMap((parameter, k) =>
      parameter.fallback || parameter.repeating ? [] : [[record.name, parameter.name, record, k] as const],
    ),
  );

  it.each(needed)('%s without %s says that it is missing', (_name, argument, record, k) => {
    const answer = only(record, goodCall(record).toSpliced(k, 1, null)) as CellError;
    expect(answer.code).toBe('#VALUE!');
    expect(answer.message).toContain(`${argument}`);
    expect(answer.message).toContain('is missing; enter');
  });

  const broadcasting = cases.filter(([, { columns, parameters }]) => !columns && parameters.length > 0);

  it.each(broadcasting)('%s leaves the neighbours of a bad row alone', (_, record) => {
    const good = goodCall(record);
    const expected = only(record, good);
    const answer = call(record, good.toSpliced(0, 1, [[good[0]], [{ code: '#REF!' }], [good[0]]]));
    expect(answer.map(([cell]) => (cell instanceof CellError ? cell.code : cell))).toEqual(
      [expected, '#VALUE!', expected].map((cell) => (cell instanceof CellError ? cell.code : cell)),
    );
  });

  it.each(broadcasting.filter(([, { parameters }]) => parameters.length > 1))('%s says where two ranges do not line up', (_, record) => {
    const good = goodCall(record);
    const answer = call(record, [[[good[0]], [good[0]], [good[0]]], [[good[1]], [good[1]]], ...good.slice(2)]);
    const [lonely] = answer[2] as readonly unknown[];
    expect(lonely).toMatchObject({ code: '#N/A', message: expect.stringContaining('make the ranges the same size') });
  });
});

describe('the rule of an argument and zod’s for the same bounds', () => {
  const all = new Map(
    registry.flatMap(({ parameters }) =>
      parameters
        .filter(({ table }) => !table)
        .map((parameter) => [`${parameter.name} (${parameter.unit}) ${parameter.accepts}`, parameter] as const),
    ),
  );
  const anything = fc.oneof(
    fc.double(),
    fc.integer(),
    fc.integer({ min: -2, max: 400 }),
    fc.double({ min: -1, max: 2 }),
    fc.string(),
    fc.boolean(),
    fc.constantFrom('yes', ' No ', 'TRUE', 'Deep', 'sand '),
  );

  it.each([...all])('%s agree on what is accepted, and why not', (_, parameter) => {
    const schema = schemaOf(parameter);
    const agree = (cell: unknown): void => {
      const { success, error } = schema.safeParse(cell);
      expect(parameter.read(cell) !== REFUSED, String(cell)).toBe(success);
      if (error) expect(whyRefused(parameter, cell).problem, String(cell)).toMatch(saidOf(error.issues));
    };
    for (const edge of parameter.range ?? []) for (const near of [edge, edge - 1e-9, edge + 1e-9]) agree(near);
    fc.assert(fc.property(anything, agree), { numRuns: 100 });
  });
});
