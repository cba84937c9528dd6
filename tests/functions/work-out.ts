/// <reference types="vite/client" />

import { readArguments } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { CellError } from '../../src/core/result.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';

const modules = import.meta.glob('../../src/domain/*.ts', { eager: true }) as Record<string, Record<string, unknown>>;

/** What a line of working may use: the arguments, the steps, plain mathematics, and what the domain exports. */
function scope(): Record<string, unknown> {
  const { abs, ceil, cos, exp, floor, log, max, min, PI, round, sign, sqrt } = Math;
  const exported = Object.assign({}, ...Object.values(modules)) as Record<string, unknown>;
  return { abs, ceil, cos, exp, floor, log, max, min, PI, round, sign, sqrt, ...exported };
}

const near = (found: unknown, expected: unknown, tolerance: number): boolean => {
  if (typeof found !== 'number' || typeof expected !== 'number') return found === expected;
  return Object.is(found, expected) || Math.abs(found - expected) <= tolerance * Math.max(1, Math.abs(expected));
};

const known = scope();

function evaluate(sum: string, values: Record<string, unknown>): unknown {
  const all = { ...known, ...values };
  return new Function(...Object.keys(all), `return (${sum});`)(...Object.values(all));
}

/** Whether the two sides of an equation are equal at what was found, or cross within a hair of it where they are too steep for that. */
function meet(sides: readonly string[], step: string, values: Record<string, unknown>): boolean {
  const at = (aside: number) =>
    sides.map((side) => evaluate(side, { ...values, [step]: (values[step] as number) + aside })) as [number, number];
  const gap = (aside: number) => at(aside).reduce((left, right) => left - right);
  if (near(...at(0), 1e-6)) return true;
  const signs = [-1e-9, 0, 1e-9].map((aside) => Math.sign(gap(aside)));
  return signs.includes(1) && signs.includes(-1);
}

/** Works every line of a function's working out for one call, and says where it does not give what `compute` gave. */
export function workOut(record: FunctionRecord, args: readonly unknown[]): string[] {
  const given = readArguments(record, args);
  if (given instanceof CellError) return [];
  let steps: Record<string, unknown>;
  try {
    steps = record.compute(...(given as never[])) as Record<string, unknown>;
  } catch (thrown) {
    if (thrown instanceof NoAnswer || thrown instanceof Refusal) return [];
    throw thrown;
  }
  const values = { ...Object.fromEntries(record.parameters.map(({ name }, k) => [name, given[k]])), ...steps };
  return Object.entries(record.working).flatMap(([step, line]) => {
    if ('told' in line || typeof steps[step] === 'object') return [];
    const sum = 'solves' in line ? line.solves : line.how;
    try {
      if ('solves' in line) return meet(sum.split('=='), step, values) ? [] : [`${record.name} ${step}: ${sum} is not so`];
      const found = evaluate(sum, values);
      return near(found, steps[step], 1e-9) ? [] : [`${record.name} ${step}: ${sum} gives ${String(found)} against ${String(steps[step])}`];
    } catch (fault) {
      return [`${record.name} ${step}: ${sum} cannot be worked out: ${String(fault)}`];
    }
  });
}
