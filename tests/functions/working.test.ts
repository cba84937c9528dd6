import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import type { Parameter } from '../../src/core/parameters.ts';
import { CellError } from '../../src/core/result.ts';
import { explain } from '../../src/core/working.ts';
import { registry } from '../../src/functions/index.ts';
import { workOut } from './work-out.ts';

const oneCell = registry.filter(({ columns }) => !columns).map((record) => [record.name, record] as const);

/** Anything that an argument accepts: mostly near its example, where arguments go together, and now and then far from it. */
function accepted(parameter: Parameter, example: unknown): fc.Arbitrary<unknown> {
  if (parameter.choices) return fc.constantFrom(...parameter.choices);
  const [lowest, highest] = parameter.range ?? [0, 1];
  const near =
    typeof example === 'number'
      ? fc.double({ min: 0.8, max: 1.2, noNaN: true }).map((times) => times * example)
      : fc.constant(example ?? null);
  // Arithmetic is held to be true to nine digits, which a hair's breadth from a limit it is not.
  const far = fc.double({ min: 0.001, max: 1, noNaN: true }).map((share) => lowest + share * (highest - lowest));
  const number = fc.oneof(
    { weight: 5, arbitrary: near },
    { weight: 1, arbitrary: far },
    { weight: 1, arbitrary: fc.constant(example ?? null) },
  );
  return number.map((value) => (typeof value === 'number' && parameter.accepts.startsWith('a whole') ? Math.round(value) : value));
}

const calls = ({ parameters, examples }: FunctionRecord): fc.Arbitrary<unknown[]> =>
  fc.tuple(...parameters.map((parameter, k) => accepted(parameter, examples[0]?.call[k])));

describe('the working of a function', () => {
  it.each(oneCell)('%s ends in the number that the function returns, or in its refusal, and its arithmetic is true', (_, record) => {
    const holds = (args: unknown[]): void => {
      const answer = call(record, args)[0]?.[0];
      const last = explain(record, args).at(-1);
      if (!(answer instanceof CellError)) expect(last?.value).toStrictEqual(answer);
      else {
        expect(last?.step).toBe('refused');
        expect(last?.equation).toBe(answer.message);
      }
      expect(workOut(record, args)).toEqual([]);
    };
    fc.assert(fc.property(calls(record), holds), { numRuns: 60 });
  });
});
