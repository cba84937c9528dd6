import type { FunctionRecord, Line } from './define.ts';
import type { Parameter } from './parameters.ts';
import { describe } from './words.ts';

export interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: 'any';
  readonly dimensionality: 'matrix';
  readonly optional?: true;
  readonly repeating?: true;
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterMetadata[];
  readonly result: { readonly dimensionality: 'matrix' };
}

/**
 * The functions as every host is told of them. Everything is a matrix of anything: what text in a matrix of numbers
 * becomes is undocumented, and a cell with an error must reach us to be named in our own sentence, which is what
 * `allowErrorForDataTypeAny` asks for.
 */
export interface FunctionsFile {
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
}

const canBeLeftOut = ({ fallback, repeating }: Parameter): boolean => fallback !== undefined || repeating === true;

/** Excel knows optional arguments only behind all that are needed; one before them may still be left blank. */
function parametersMetadata(parameters: readonly Parameter[]): ParameterMetadata[] {
  const lastNeeded = parameters.findLastIndex((parameter) => !canBeLeftOut(parameter));
  return parameters.map((parameter, k) => ({
    name: parameter.name,
    description: describe(parameter),
    type: 'any',
    dimensionality: 'matrix',
    ...(k > lastNeeded && !parameter.repeating && { optional: true as const }),
    ...(parameter.repeating && { repeating: true as const }),
  }));
}

function functionDescription({ summary, columns, result, working }: FunctionRecord): string {
  if (columns) return `${summary} Gives a table: ${columns.join(', ')}.`;
  const { unit } = working[result] as Line;
  return unit === '' || unit === 'text' ? summary : `${summary} Unit: ${unit}.`;
}

export const functionsFile = (records: readonly FunctionRecord[]): FunctionsFile => ({
  allowErrorForDataTypeAny: true,
  functions: records.map((record) => ({
    id: record.name,
    name: record.name,
    description: functionDescription(record),
    parameters: parametersMetadata(record.parameters),
    result: { dimensionality: 'matrix' },
  })),
});
