import { type Argument, call } from '../../core/call.ts';
import type { FunctionRecord } from '../../core/define.ts';
import { CellError } from '../../core/result.ts';
import { registry } from '../../functions/index.ts';
import { prefix } from '../namespace.ts';

const byName = new Map(registry.map((record) => [record.name, record]));

export const findRecord = (name: string): FunctionRecord | undefined => byName.get(name.toUpperCase().replace(prefix, ''));

export function recordOf(name: string): FunctionRecord {
  const record = findRecord(name);
  if (!record) throw new Error(`The function ${name} is not part of this build.`);
  return record;
}

/** One figure from a one-cell function, or the function's own sentence as an error. */
export function figure(name: string, args: readonly Argument[]): number {
  const cell = call(recordOf(name), args)[0]?.[0];
  if (cell instanceof CellError) throw new Error(cell.message);
  return Number(cell);
}
