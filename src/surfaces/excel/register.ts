import { call } from '../../core/call.ts';
import type { FunctionRecord } from '../../core/define.ts';
import { type Cell, CellError, type Matrix } from '../../core/result.ts';

/** The host's own error. Its class and codes are looked up only here: outside Excel they may come later than `associate`. */
function hostError({ code, message }: CellError): CustomFunctions.Error {
  const { notAvailable, invalidValue } = CustomFunctions.ErrorCode;
  return new CustomFunctions.Error(code === '#N/A' ? notAvailable : invalidValue, message);
}

const isError = (cell: Cell): cell is CellError => cell instanceof CellError;

const hostCell = (cell: Cell) => (isError(cell) ? hostError(cell) : cell);

/** A row without errors goes as it is: a copy of a long range costs as much as working it out. */
const hostRow = (row: readonly Cell[]) => (row.some(isError) ? row.map(hostCell) : row);

function answer(record: FunctionRecord, given: readonly unknown[]): Matrix {
  try {
    return call(record, given.slice(0, record.parameters.length));
  } catch (fault) {
    const said = fault instanceof Error ? fault.message : String(fault);
    return [[new CellError('#VALUE!', `${record.name} stopped on a fault of its own, not on your figures; please report it: ${said}`)]];
  }
}

/**
 * Hands every function to the host. A repeating argument arrives as one list, and behind all arguments
 * the host appends an `invocation`, which none of ours needs.
 */
export function register(records: readonly FunctionRecord[]): void {
  for (const record of records) {
    CustomFunctions.associate(record.name, (...given: unknown[]) => {
      const cells = answer(record, given);
      const only = cells.length === 1 && cells[0]?.length === 1 ? cells[0][0] : undefined;
      if (only instanceof CellError) throw hostError(only);
      return cells.map(hostRow);
    });
  }
}
