import { readFileSync } from 'node:fs';
import type { FunctionRecord } from '../../src/core/define.ts';
import { registry } from '../../src/functions/index.ts';

type Call = readonly [id: string, args: readonly unknown[]];

const asMatrix = (argument: unknown) => (Array.isArray(argument) ? argument : argument === undefined ? null : [[argument]]);

/** Arguments as a host passes them: every parameter has its place, null where it was left out, repeated ones in a list. */
const asPassed = ({ parameters }: FunctionRecord, given: readonly unknown[]) =>
  parameters.map((parameter, k) => (parameter.repeating ? given.slice(k).map(asMatrix) : asMatrix(given[k])));

const working = registry.find(({ name }) => name === 'WORKING') as FunctionRecord;

/** Every example, every step on its way, and what each function says to nothing, to a word and to a number too large. */
export const calls: readonly Call[] = registry.flatMap((record) => [
  ...record.examples.flatMap(({ call }): Call[] => [
    [record.name, asPassed(record, call)],
    ['WORKING', asPassed(working, [record.name, ...call])],
  ]),
  ...[null, [['?']], [[1e300]]].map((odd): Call => [record.name, record.parameters.map(({ repeating }) => (repeating ? [odd] : odd))]),
]);

/**
 * dist/functions.js with the least that stands for Excel around it, and then every call. The script's value, printed too
 * where an engine's shell can print, is the list of answers as JSON.
 */
export const script = (): string => `
var run = {};
var CustomFunctions = {
  associate: function (id, given) { run[id] = given; },
  ErrorCode: { invalidValue: '#VALUE!', notAvailable: '#N/A' },
  Error: function (code, message) { this.code = code; this.message = message; },
};
${readFileSync('dist/functions.js', 'utf8')}
var answers = JSON.stringify(${JSON.stringify(calls)}.map(function (call) {
  try { return run[call[0]].apply(null, call[1]); } catch (thrown) { return thrown.code ? thrown : String(thrown); }
}));
if (typeof print === 'function') print(answers);
answers;`;
