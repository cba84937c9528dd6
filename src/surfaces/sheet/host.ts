import { type Arg, type FunctionResultObject, helpers, type Locale, type Matrix, registries } from '@odoo/o-spreadsheet';
import type { FunctionMetadata, FunctionsFile, ParameterMetadata } from '../../core/metadata.ts';
import { inLocale } from '../in-locale.ts';
import { namespace, prefix } from '../namespace.ts';
import { bcp47 } from './locales.ts';

const errorCode = {
  invalidValue: '#VALUE!',
  notAvailable: '#N/A',
  divisionByZero: '#DIV/0!',
  invalidNumber: '#NUM!',
  nullReference: '#NULL!',
  invalidName: '#NAME?',
  invalidReference: '#REF!',
} as const;

class HostError extends Error {
  readonly code: string;

  constructor(code: string, message = '') {
    super(message);
    this.code = code;
  }
}

type Associated = (...given: unknown[]) => unknown;
type Result = FunctionResultObject | Matrix<FunctionResultObject>;

/** The grid has no `#VALUE!`: its own sign for an error with a message is `#ERROR`. */
const gridError = (code: string, message: string): FunctionResultObject => ({ value: code === '#VALUE!' ? '#ERROR' : code, message });

/** A cell of the grid as Excel would hand it over: a blank is null, an error is an error object. */
function toHost(cell: FunctionResultObject | undefined): unknown {
  const value = cell?.value ?? null;
  return helpers.isEvaluationError(value) ? new HostError(String(value), cell?.message) : value;
}

/** The grid keeps its matrices by column, Excel hands them over by row. */
const transposed = <T>(matrix: readonly (readonly T[])[]): T[][] => (matrix[0] ?? []).map((_, k) => matrix.map((line) => line[k] as T));

const toHostMatrix = (arg: Arg): unknown => {
  if (arg === undefined) return null;
  return Array.isArray(arg) ? transposed(arg.map((column) => column.map(toHost))) : [[toHost(arg)]];
};

type Words = (text: string) => string;

/** A text that was handed in, such as a herd's name, comes back as it was; any other is a sentence of ours. */
function wordsFor(args: readonly Arg[], locale: Locale): Words {
  let handedIn: ReadonlySet<unknown> | undefined;
  return (text) => {
    const ours = inLocale(text, bcp47(locale));
    if (ours === text) return text;
    handedIn ??= new Set(args.flat(2).map((cell) => cell?.value));
    return handedIn.has(text) ? text : ours;
  };
}

function toGrid(cell: unknown, words: Words): FunctionResultObject {
  if (cell instanceof HostError) return gridError(cell.code, words(cell.message));
  if (typeof cell === 'string') return { value: words(cell) };
  if (typeof cell === 'boolean' || (typeof cell === 'number' && Number.isFinite(cell))) return { value: cell };
  return gridError('#NUM!', 'this cell has no value that can be shown');
}

function toGridResult(result: unknown, words: Words): Result {
  if (!Array.isArray(result) || !Array.isArray(result[0]) || result[0].length === 0) return toGrid(result, words);
  if (result.length === 1 && result[0].length === 1) return toGrid(result[0][0], words);
  return transposed((result as unknown[][]).map((row) => row.map((cell) => toGrid(cell, words))));
}

/** An omitted argument is null, a repeating one a list, and last comes the invocation, as in Excel. */
const toHostArguments = ({ id, parameters }: FunctionMetadata, args: readonly Arg[]): unknown[] => [
  ...parameters.map(({ repeating }, k) => (repeating ? args.slice(k).map(toHostMatrix) : toHostMatrix(args[k]))),
  { functionName: id },
];

function compute(metadata: FunctionMetadata, associated: Associated, args: readonly Arg[], locale: Locale): Result {
  const words = wordsFor(args, locale);
  try {
    return toGridResult(associated(...toHostArguments(metadata, args)), words);
  } catch (thrown) {
    if (thrown instanceof HostError) return gridError(thrown.code, words(thrown.message));
    throw thrown;
  }
}

const gridArgument = ({ name, description, optional, repeating }: ParameterMetadata) => ({
  name,
  description,
  type: ['RANGE<ANY>' as const, 'ANY' as const],
  acceptMatrix: true,
  acceptErrors: true,
  optional: optional ?? false,
  repeating: repeating ?? false,
});

/**
 * The embedded sheet's stand-in for what Excel gives dist/functions.js, so that the very same file runs in both: what it
 * associates becomes a function of the grid.
 */
export function installCustomFunctions({ functions }: FunctionsFile): void {
  const known = new Map(functions.map((metadata) => [metadata.id, metadata]));
  const associate = (id: string, associated: Associated): void => {
    const metadata = known.get(id);
    if (!metadata) throw new Error(`${id} is associated but not in functions.json: build both anew`);
    registries.functionRegistry.replace(`${prefix}${metadata.name}`, {
      description: metadata.description,
      category: namespace,
      args: metadata.parameters.map(gridArgument),
      compute(...args) {
        return compute(metadata, associated, args, this.locale);
      },
      isExported: false,
    });
  };
  Object.assign(globalThis, { CustomFunctions: { Error: HostError, ErrorCode: errorCode, associate } });
}
