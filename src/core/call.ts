import { align, reaches, type Size } from './broadcast.ts';
import type { FunctionRecord, SpillSteps } from './define.ts';
import { type Parameter, REFUSED } from './parameters.ts';
import { type Cell, CellError, isBlank, type Matrix, toCell, toCellError } from './result.ts';
import { missing, nameWithUnit, refusal } from './words.ts';

/** An argument as the hosts hand it over: a matrix, a single cell, or null where it was omitted. */
export type Argument = unknown;

const asMatrix = (argument: Argument): readonly (readonly unknown[])[] => {
  if (!Array.isArray(argument)) return [[argument]];
  return Array.isArray(argument[0]) && argument[0].length > 0 ? argument : [[null]];
};

interface Range extends Size {
  readonly cells: readonly (readonly unknown[])[];
}

function asRange(argument: Argument): Range {
  const cells = asMatrix(argument);
  return { cells, rows: cells.length, columns: (cells[0] as readonly unknown[]).length };
}

const isSingle = ({ rows, columns }: Range): boolean => rows === 1 && columns === 1;

/** The cell that a range, stretched where it is one row or one column, has at a place of the answer. */
const cellOf = ({ cells, rows, columns }: Range, row: number, column: number): unknown =>
  (cells[rows === 1 ? 0 : row] as readonly unknown[])[columns === 1 ? 0 : column];

/** A cell that was left empty although something is needed, or that could not be read. */
export class Unusable {
  readonly blank: boolean;
  readonly error: CellError;

  constructor(error: CellError, blank = false) {
    this.blank = blank;
    this.error = error;
  }
}

/** `#N/A` in a cell that is read stays `#N/A`; other errors become ours, with the argument named. */
function unusable(parameter: Parameter, cell: unknown): Unusable {
  if (isBlank(cell)) return new Unusable(new CellError('#VALUE!', missing(parameter)), true);
  const passedOn = (cell as { readonly code?: unknown }).code === '#N/A';
  return new Unusable(new CellError(passedOn ? '#N/A' : '#VALUE!', refusal(parameter, cell)));
}

export function readCell(parameter: Parameter, cell: unknown): unknown {
  const value = parameter.read(cell);
  if (value !== REFUSED) return value;
  return isBlank(cell) && parameter.fallback ? parameter.fallback.value : unusable(parameter, cell);
}

/** A row whose ranged required cells are all blank is blank. */
const isBlankRow = (values: readonly unknown[], ranged: readonly boolean[]): boolean =>
  ranged.some(Boolean) && values.every((value, k) => !ranged[k] || (value instanceof Unusable && value.blank));

/** All that is wrong with one row's values, or undefined where nothing is. */
export function fault(values: readonly unknown[]): CellError | undefined {
  const bad = values.filter((value) => value instanceof Unusable);
  if (bad.length === 0) return undefined;
  const code = bad.every(({ error }) => error.code === '#N/A') ? '#N/A' : '#VALUE!';
  return new CellError(code, bad.map(({ error }) => error.message).join(' | '));
}

/** Calls with the arguments spelled out where there are few: spreading them costs more than most of our equations. */
function compute({ compute }: FunctionRecord, v: readonly unknown[]): Record<string, never> {
  const run = compute as (...given: unknown[]) => Record<string, never>;
  switch (v.length) {
    case 1:
      return run(v[0]);
    case 2:
      return run(v[0], v[1]);
    case 3:
      return run(v[0], v[1], v[2]);
    case 4:
      return run(v[0], v[1], v[2], v[3]);
    case 5:
      return run(v[0], v[1], v[2], v[3], v[4]);
    case 6:
      return run(v[0], v[1], v[2], v[3], v[4], v[5]);
    case 7:
      return run(v[0], v[1], v[2], v[3], v[4], v[5], v[6]);
    default:
      return run(...v);
  }
}

function answer(record: FunctionRecord, values: readonly unknown[]): Cell {
  try {
    return toCell(compute(record, values)[record.result]);
  } catch (thrown) {
    return toCellError(thrown, record.parameters);
  }
}

/**
 * One answer for each place of the aligned ranges; a bad row has its error in its own cell. Cells are read when their turn
 * comes and nothing is kept of them: with plain equations it is memory that takes the time.
 */
function callOneCell(record: FunctionRecord, args: readonly Argument[]): Matrix {
  const { parameters } = record;
  const ranges = parameters.map((_, k) => asRange(args[k]));
  const values = parameters.map((parameter, k) => readCell(parameter, cellOf(ranges[k] as Range, 0, 0)));
  // Most formulas stand alone in their cell, and recalculate by the thousand.
  if (ranges.every(isSingle)) return [[fault(values) ?? answer(record, values)]];
  const { rows, columns, uneven } = align(ranges);
  const ranged = parameters.map(({ fallback }, k) => !fallback && !isSingle(ranges[k] as Range));
  const varying = parameters.map((parameter, k) => ({ parameter, k, range: ranges[k] as Range })).filter(({ range }) => !isSingle(range));
  const fixedSound = values.every((value, k) => !isSingle(ranges[k] as Range) || !(value instanceof Unusable));
  const cellAt = (row: number, column: number): Cell => {
    if (uneven) {
      const lonely = varying.find(({ range }) => !reaches(range, row, column));
      if (lonely) return new CellError('#N/A', `${lonely.parameter.name}: this range has no cell here; make the ranges the same size`);
    }
    let sound = fixedSound;
    for (const { parameter, k, range } of varying) {
      const value = readCell(parameter, cellOf(range, row, column));
      values[k] = value;
      sound &&= !(value instanceof Unusable);
    }
    if (sound) return answer(record, values);
    return isBlankRow(values, ranged) ? '' : (fault(values) ?? answer(record, values));
  };
  const cells = new Array<readonly Cell[]>(rows);
  for (let row = 0; row < rows; row++) {
    const line = [cellAt(row, 0)];
    for (let column = 1; column < columns; column++) line.push(cellAt(row, column));
    cells[row] = line;
  }
  return cells;
}

function readSingle(parameter: Parameter, argument: Argument): unknown {
  if (parameter.repeating) return Array.isArray(argument) ? argument : [];
  const range = asRange(argument);
  if (parameter.table) {
    const empty = range.cells.every((row) => row.every(isBlank));
    return empty ? readCell(parameter, null) : range.cells.map((row) => row.map((cell) => (isBlank(cell) ? null : cell)));
  }
  if (isSingle(range)) return readCell(parameter, cellOf(range, 0, 0));
  const problem = `is a range of ${range.rows} × ${range.columns} cells; enter ${parameter.accepts} in one cell`;
  return new Unusable(new CellError('#VALUE!', `${nameWithUnit(parameter)}: ${problem}`));
}

/** The arguments of a spill as values, or the error that stands in place of the whole table. */
export function readArguments(record: Pick<FunctionRecord, 'parameters'>, args: readonly Argument[]): readonly unknown[] | CellError {
  const values = record.parameters.map((parameter, k) => readSingle(parameter, args[k]));
  return fault(values) ?? values;
}

function callSpill(record: FunctionRecord, columns: readonly string[], args: readonly Argument[]): Matrix {
  const values = readArguments(record, args);
  if (values instanceof CellError) return [[values]];
  try {
    const spill = record.compute(...(values as never[])) as SpillSteps;
    return [spill.columns ?? columns, ...spill.rows.map((row) => row.map(toCell))];
  } catch (thrown) {
    return [[toCellError(thrown, record.parameters)]];
  }
}

/** Calls a function as a cell would. Always a rectangle of cells; never throws for anything a user can type. */
export function call(record: FunctionRecord, args: readonly Argument[]): Matrix {
  return record.columns ? callSpill(record, record.columns, args) : callOneCell(record, args);
}
