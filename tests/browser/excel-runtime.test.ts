import { beforeAll, describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { functionsFile } from '../../src/core/metadata.ts';
import { type Cell, CellError } from '../../src/core/result.ts';
import { registry } from '../../src/functions/index.ts';
import { browser } from './browser.ts';
import { type Call, errorCell, openRuntime, type Reply } from './excel-runtime.ts';

let runtime: Awaited<ReturnType<typeof openRuntime>>;
let answered: readonly (readonly [Call, Reply])[];

beforeAll(async () => {
  expect.addEqualityTesters([close]);
  runtime = await openRuntime(browser);
  const calls = registry.flatMap(callsOf);
  const replies = await runtime.callAll(calls);
  answered = calls.map((sent, k) => [sent, replies[k] as Reply]);
});

/** What the vendor's runtime makes of an error inside a table. */
const wireError = ({ code, message }: CellError) => ({
  valueType: 'CustomFunctionError',
  type: 'Error',
  basicType: 'Error',
  code,
  basicValue: code,
  message,
  errorType: code === '#N/A' ? 'NotAvailable' : 'Value',
});
/** The vendor's numbers for the two codes that carry a sentence. */
const wireCode = { '#N/A': 1, '#VALUE!': 7 } as const;

/** What a call must come out as on Excel's side, worked out by calling the core directly. */
function expected(record: FunctionRecord, args: readonly unknown[]): Reply {
  const cells = call(record, args);
  const only = cells.length === 1 && cells[0]?.length === 1 ? (cells[0][0] as Cell) : undefined;
  if (only instanceof CellError) return { failed: true, code: wireCode[only.code], message: only.message };
  return { failed: false, value: cells.map((row) => row.map((cell) => (cell instanceof CellError ? wireError(cell) : cell))) };
}

/** The browser's own arithmetic may differ from Node's in the last digits of a power, an exponential or a root found by iteration. */
const close = (a: unknown, b: unknown): boolean | undefined =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) : undefined;

const asMatrix = (argument: unknown) => (Array.isArray(argument) ? argument : argument === undefined ? null : [[argument]]);

/** The example's arguments as Excel passes them: every parameter has its place, null where it was left out, repeated ones in a list. */
function exampleArgs({ parameters, examples }: FunctionRecord): unknown[] {
  const given = examples[0]?.call ?? [];
  return parameters.map((parameter, k) => (parameter.repeating ? given.slice(k).flat().map(asMatrix) : asMatrix(given[k])));
}
const replaced = (args: readonly unknown[], k: number, by: unknown) => args.map((argument, at) => (at === k ? by : argument));

/** Everything that Excel is known to put in an argument, each in turn, beside a call that works. */
function callsOf(record: FunctionRecord): Call[] {
  const worked = exampleArgs(record);
  const first = (worked.find((argument) => Array.isArray(argument)) as unknown[][] | undefined)?.[0]?.[0];
  const odd = [
    null,
    [[null]],
    [['']],
    [[0]],
    [[-1]],
    [['not a number']],
    [[true]],
    [[1e308]],
    [[errorCell('#N/A')]],
    [[errorCell('#DIV/0!')]],
    [[first], [''], [errorCell('#REF!')]],
    [[first, 0]],
  ];
  const inTurn = record.parameters.flatMap((parameter, k) =>
    odd.map((argument) => replaced(worked, k, parameter.repeating ? [argument] : argument)),
  );
  return [worked, ...inTurn, record.parameters.map(() => null)].map((args) => ({ name: record.name, args }));
}

describe('the functions file under Microsoft’s own runtime', () => {
  it('registers every function of the registry, and functions.json tells Excel of the same ones', async () => {
    const names = registry.map(({ name }) => name);
    expect(await runtime.registered()).toEqual(names);
    expect(functionsFile(registry).functions.map(({ id }) => id)).toEqual(names);
  });

  it.each(registry.map((record) => [record.name, record] as const))(
    '%s answers as the core does, whatever Excel puts in its arguments',
    (name, record) => {
      const pairs = answered.filter(([sent]) => sent.name === name);
      expect(pairs.length).toBeGreaterThan(record.parameters.length);
      for (const [{ args }, reply] of pairs) {
        const given = JSON.stringify(args);
        expect(reply, given).toEqual(expected(record, args));
        if (reply.failed) expect(reply.message, given).not.toMatch(/^$|fault of its own/);
        else expect(new Set((reply.value as unknown[][]).map((row) => row.length)).size, given).toBe(1);
      }
    },
  );

  it('answers 10,000 calls sent in one message, each with its own figures', async () => {
    const record = registry.find(({ name }) => name === 'DEMAND.HERD') as FunctionRecord;
    const calls = Array.from({ length: 10_000 }, (_, k) => ({ name: record.name, args: [[[k + 1]], [[1.5]], null, null] }));
    const replies = await runtime.callAll(calls);
    expect(replies).toHaveLength(10_000);
    expect(replies).toEqual(calls.map(({ args }) => expected(record, args)));
  });

  it('names an unknown function as an error instead of falling over', async () => {
    expect(await runtime.callAll([{ name: 'NO.SUCH', args: [] }])).toEqual([expect.objectContaining({ failed: true })]);
  });

  it('asks the network for nothing but the page, its script and the vendor’s runtime, and leaves no fault in the console', () => {
    const [ours, vendors] = [/^https:\/\/excel\.example\//, /^https:\/\/appsforoffice\.microsoft\.com\/lib\/1\.1\/hosted\//];
    expect(runtime.requests.filter((url) => ours.test(url)).map((url) => url.replace(ours, ''))).toEqual([
      'functions.html',
      'functions.js',
    ]);
    expect(runtime.requests.filter((url) => !ours.test(url) && !vendors.test(url))).toEqual([]);
    expect(runtime.faults).toEqual([]);
  });
});
