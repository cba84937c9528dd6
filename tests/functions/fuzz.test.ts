import fc from 'fast-check';
import { expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { call } from '../../src/core/call.ts';
import type { Example, FunctionRecord } from '../../src/core/define.ts';
import type { Parameter } from '../../src/core/parameters.ts';
import { CellError } from '../../src/core/result.ts';
import { registry } from '../../src/functions/index.ts';

/** 100,000 by `npm run fuzz`. Fewer for LEVERS, which works a whole plan out some thousand times in a call. */
const runs = Number(process.env['FUZZ_RUNS'] ?? 1000);
const runsOf = ({ name }: FunctionRecord): number => (name === 'BUDGET.LEVERS' ? runs / 10 : runs);
const HOUR = 3_600_000;

type Arbitrary = fc.Arbitrary<unknown>;

const oddNumbers = [0, -0, -1, 35, 0.0035, 5e-324, 1e-300, 1e15, 2 ** 53, 1e308, -1e308, Number.NaN, Infinity, -Infinity];
const oddTexts = [
  '',
  ' ',
  '35',
  '1e5',
  '=1+1',
  '<img src=x onerror=alert(1)>',
  '</script>',
  '$' + '{x}',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'Herd',
  'İ',
  '\u0000',
  '\ud800',
  '\u202eabc',
  'x'.repeat(10_000),
];
/** Errors as the hosts hand them over, and what Excel's richer cells may hold. */
const oddThings = [null, undefined, true, false, { code: '#N/A' }, { code: '#DIV/0!', message: '' }, {}, { type: 'Entity', text: 'x' }];

const hostileCell: Arbitrary = fc.oneof(
  fc.constantFrom<unknown>(...oddNumbers, ...oddTexts, ...oddThings),
  fc.double(),
  fc.integer({ min: -5, max: 500 }),
  fc.double({ min: 0, max: 1 }),
  fc.string(),
);

const within = ([lowest, highest]: readonly [number, number]): Arbitrary =>
  fc.oneof(
    fc.constantFrom(lowest, highest, lowest + 1e-9, highest - 1e-9, Math.ceil(lowest), Math.floor(highest)),
    fc.double({ min: lowest, max: highest, noNaN: true }),
    fc.integer({ min: Math.ceil(lowest), max: Math.floor(Math.max(highest, Math.ceil(lowest))) }),
  );

/** What the argument takes, to its very bounds: the worst numbers are those that are let in. */
function takenCell({ range, choices }: Parameter, example: unknown): Arbitrary {
  const other = range ? within(range) : choices ? fc.constantFrom(...choices, choices[0]?.toUpperCase()) : fc.constant(example);
  return fc.oneof(fc.constant(example), other);
}

/** Ragged, empty and stretched ranges; seldom a huge one, of one cell over and over. */
function rangeOf(cell: Arbitrary): Arbitrary {
  const matrix = (rows: number, columns: number) =>
    fc.array(fc.array(cell, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });
  return fc.oneof(
    { weight: 40, arbitrary: fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })).chain(([r, c]) => matrix(r, c)) },
    { weight: 20, arbitrary: fc.array(fc.array(cell, { maxLength: 3 }), { maxLength: 3 }) },
    { weight: 1, arbitrary: cell.chain((one) => fc.constantFrom(Array(3000).fill([one]), [Array(500).fill(one)])) },
  );
}

const budgetEdges = budgetItems.flatMap(({ parameter: { range } }) => range ?? []);
const spoilingCell: Arbitrary = fc.oneof(
  hostileCell,
  fc.constantFrom(...budgetEdges),
  fc.constantFrom(...budgetItems.map(({ name }) => name)),
);

/** The example's own table with a few of its cells changed, so that what is deep inside is reached. */
const spoilt = (table: readonly (readonly unknown[])[]): Arbitrary =>
  fc.array(fc.tuple(fc.nat(), fc.nat(), spoilingCell), { maxLength: 4 }).map((changes) => {
    const cells = table.map((row) => [...row]);
    for (const [r, c, cell] of changes) {
      const row = cells[r % cells.length];
      if (row) row[c % row.length] = cell;
    }
    return cells;
  });

function argumentOf(record: FunctionRecord, parameter: Parameter, k: number): Arbitrary {
  const given = (record.examples[0] as Example).call[k];
  const hostile = fc.oneof(hostileCell, rangeOf(hostileCell));
  if (parameter.repeating) return fc.oneof(fc.constant(given), fc.array(hostile, { maxLength: 6 }), hostile);
  if (Array.isArray(given)) return fc.oneof({ weight: 6, arbitrary: spoilt(given) }, { weight: 1, arbitrary: hostile });
  const taken = takenCell(parameter, given);
  return fc.oneof({ weight: 8, arbitrary: taken }, { weight: 3, arbitrary: rangeOf(taken) }, { weight: 1, arbitrary: hostile });
}

const argumentsOf = (record: FunctionRecord) => fc.tuple(...record.parameters.map((parameter, k) => argumentOf(record, parameter, k)));

function faultOf(cell: unknown): string | undefined {
  if (cell instanceof CellError) {
    if (cell.message.length < 10) return `says only "${cell.message}"`;
    return /^#(VALUE!|N\/A)$/.test(cell.code) ? undefined : `has the code ${cell.code}`;
  }
  if (typeof cell === 'number') return Number.isFinite(cell) ? undefined : `is ${cell}`;
  return typeof cell === 'string' || typeof cell === 'boolean' ? undefined : `is ${typeof cell}`;
}

function check(answer: readonly (readonly unknown[])[]): void {
  const width = answer[0]?.length ?? 0;
  if (width === 0) expect.fail('the answer is empty');
  for (const row of answer) {
    if (row.length !== width) expect.fail(`a row of ${row.length} cells beside one of ${width}`);
    for (const cell of row) {
      const fault = faultOf(cell);
      if (fault) expect.fail(`a cell ${fault}`);
    }
  }
}

it.each(registry.map((record) => [record.name, record] as const))(
  '%s answers anything at all with a rectangle of numbers, words and errors that say why',
  (_, record) => {
    fc.assert(
      fc.property(argumentsOf(record), (given) => check(call(record, given))),
      { numRuns: runsOf(record) },
    );
  },
  HOUR,
);

const working = registry.find(({ name }) => name === 'WORKING') as FunctionRecord;

it(
  'WORKING explains every function whatever it is given',
  () => {
    const asked = fc.constantFrom(...registry.filter(({ name }) => name !== 'WORKING' && name !== 'BUDGET.LEVERS'));
    const calls = asked.chain((record) => argumentsOf(record).map((given) => [record.name, given] as const));
    fc.assert(
      fc.property(calls, ([name, given]) => check(call(working, [name, given]))),
      { numRuns: 10 * runs },
    );
  },
  HOUR,
);
