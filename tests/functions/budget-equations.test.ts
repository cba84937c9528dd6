import { describe, expect, it } from 'vitest';
import { figures } from '../../src/budget/figures.ts';
import { budgetItems } from '../../src/budget/items.ts';
import { call } from '../../src/core/call.ts';
import { CellError, type Matrix } from '../../src/core/result.ts';
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
  (...args: unknown[]) => {
    const { columns } = recordOf(name);
    const answer = call(recordOf(name), args);
    return columns ? answer : answer[0]?.[0];
  };

/** What our equations say beside names, signs and functions. */
const words = {
  min: Math.min,
  ifNotNegative: (value: number) => (value < 0 ? new CellError('#N/A', 'none') : value),
  ifNone: (value: unknown, otherwise: number) => (typeof value === 'number' ? value : otherwise),
  least: (...stages: (string | number)[]) => {
    const could = stages.filter((_, k) => k % 2 === 1) as number[];
    return stages[2 * could.indexOf(Math.min(...could))];
  },
  row: (table: Matrix, key: string) => table.find(([found]) => found === key)?.[1],
  span: (table: Matrix) => ['lowest', 'highest'].map((key) => Number(words.row(table, key)).toFixed(0)).join('–'),
  trials: (table: Matrix) => {
    const hours = table.slice(1, 3).flatMap(([, found]) => (typeof found === 'number' ? [found] : []));
    return [Math.min(...hours), Math.max(...hours)].map((one) => one.toFixed(1)).join('–');
  },
  last: (table: Matrix, column: string) => (table.at(-1) as unknown[])[(table[0] as unknown[]).indexOf(column)],
  worth: (table: Matrix, column: string, rate: number) => {
    const k = (table[0] as unknown[]).indexOf(column);
    return table.slice(1).reduce((sum, row, year) => sum + Number(row[k] ?? 0) / (1 + rate) ** year, 0);
  },
  none: new CellError('#N/A', 'none'),
};

/** The result worked out from its equation, each name in brackets an item or another result of the plan. */
function workedOut(how: string, given: Inputs, plan: Record<string, unknown>): unknown {
  const known = (name: string) =>
    given[name] ?? plan[name] ?? standing[name] ?? budgetItems.find((item) => item.name === name)?.parameter.fallback?.value;
  const sum = how
    .replace(/\[([^\]]+)\]/g, (_, name) => `known(${JSON.stringify(name)})`)
    .replace(/\b([A-Z]+\.[A-Z]+)\(/g, (_, name) => `functions("${name}")(`);
  const scope = {
    known,
    functions,
    isGiven: (name: string) => given[name] !== undefined,
    ifGiven: (name: string, otherwise: number) => given[name] ?? otherwise,
    ...words,
  };
  return new Function(...Object.keys(scope), `return ${sum}`)(...Object.values(scope));
}

const equations = figures.flatMap(({ key, how }) => (how === undefined ? [] : [[key, how] as const]));

describe.each([
  ['the worked herd', inputs],
  ['a herd with too little slurry, and a grant', tooLittle],
  [
    'a herd bedded otherwise now',
    { ...inputs, 'Bought price per t': 400, 'Litres now': 12, 'Days now': 3, 'Bought density': 200, 'Bought dry matter': 0.85 },
  ],
  [
    'a herd whose invoices are known, with heat and a loan’s relief',
    {
      ...inputs,
      'Bought price per t': 400,
      'Bought t last year': 190,
      'Bought bill last year': 41_000,
      'Heat available kW': 58,
      'Interest relief': 'yes',
      'Allowance method': 'straight',
      'Rest allowed in the last year': 'yes',
    },
  ],
])('for %s', (_, given) => {
  it.each(equations)('%s is what its equation gives', (key, how) => {
    const plan: Record<string, unknown> = Object.fromEntries(herd(given).map((row) => [row[0], row[1]]));
    const found = workedOut(how, given, plan);
    if (plan[key] instanceof CellError) expect(found instanceof CellError || Number.isNaN(found), String(found)).toBe(true);
    else if (typeof plan[key] === 'string') expect(found).toBe(plan[key]);
    else expect(found).toBeCloseTo(plan[key] as number, 6);
  });
});

it('stands beside every figure that is not a count', () => {
  expect(figures.flatMap(({ key, how }) => (how === undefined ? [key] : []))).toEqual(['Defaults used', 'Still missing', 'Refused inputs']);
});
