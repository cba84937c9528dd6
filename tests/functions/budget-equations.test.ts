import { describe, expect, it } from 'vitest';
import { figures } from '../../src/budget/figures.ts';
import { budgetItems } from '../../src/budget/items.ts';
import { call } from '../../src/core/call.ts';
import { CellError } from '../../src/core/result.ts';
import { herd, type Inputs, inputs, recordOf, tooLittle } from './worked-herd.ts';

const standing: Inputs = {
  'Litres now': 18,
  'Days now': 2,
  'Bought density': 178,
  'Bought dry matter': 0.9,
  'Fibre kind': 'dried fibre',
  'Material now': 'sawdust',
};
const functions =
  (name: string) =>
  (...args: unknown[]) =>
    (call(recordOf(name), args)[0] as unknown[])[0];

/** The result worked out from its equation, each name in brackets an item or another result of the plan. */
function workedOut(how: string, given: Inputs, plan: Record<string, unknown>): unknown {
  const known = (name: string) =>
    given[name] ?? plan[name] ?? standing[name] ?? budgetItems.find((item) => item.name === name)?.parameter.fallback?.value;
  const sum = how
    .replace(/\[([^\]]+)\]/g, (_, name) => `known(${JSON.stringify(name)})`)
    .replace(/\b([A-Z]+\.[A-Z]+)\(/g, (_, name) => `functions("${name}")(`);
  return new Function('known', 'functions', 'min', `return ${sum}`)(known, functions, Math.min);
}

const equations = figures.flatMap(({ key, how }) => (how === undefined ? [] : [[key, how] as const]));

describe.each([
  ['the worked herd', inputs],
  ['a herd with too little slurry, and a grant', tooLittle],
  [
    'a herd bedded otherwise now',
    { ...inputs, 'Bought price per t': 400, 'Litres now': 12, 'Days now': 3, 'Bought density': 200, 'Bought dry matter': 0.85 },
  ],
])('for %s', (_, given) => {
  it.each(equations)('%s is what its equation gives', (key, how) => {
    const plan: Record<string, unknown> = Object.fromEntries(herd(given).map((row) => [row[0], row[1]]));
    const found = workedOut(how, given, plan);
    if (plan[key] instanceof CellError) expect(found).toBeInstanceOf(CellError);
    else expect(found).toBeCloseTo(plan[key] as number, 6);
  });
});
