import { align, reaches, type Size } from './broadcast.ts';
import type { FunctionRecord, SpillSteps } from './define.ts';
import { type Parameter, REFUSED } from './parameters.ts';
import { type Cell, CellError, isBlank, type Matrix, toCell, toCellError } from './result.ts';
import { missing, nameWithUnit, refusal } from './words.ts';

/** An argument as the hosts hand it over: a matrix, a single cell, or null where it was omitted. */
export type Argument = unknown;

const asMatrix = (argument: Argument): readonly (readonly unknown[])[] => {
  if (!Array.isArray(argument)) return [[argument]];
  return argument.length > 0 && Array.isArray(argument[0]) && argument[0].length > 0 ? argument : [[null]];
};

/** A cell that was left empty although something is needed, or that could not be read. */
export class Unusable {
  readonly blank: boolean;
  readonly error: CellError;

  constructor(blank: boolean, error: CellError) {
    this.blank = blank;
    this.error = error;
  }
}

/** `#N/A` in a cell that is read stays `#N/A`; other errors become ours, with the argument named. */
function unusable(parameter: Parameter, cell: unknown): Unusable {
  if (isBlank(cell)) return new Unusable(true, new CellError('#VALUE!', missing(parameter)));
  const passedOn = typeof cell === 'object' && cell !== null && 'code' in cell && cell.code === '#N/A';
  return new Unusable(false, new CellError(passedOn ? '#N/A' : '#VALUE!', refusal(parameter, cell)));
}

export function readCell(parameter: Parameter, cell: unknown): unknown {
  const value = parameter.read(cell);
  if (value !== REFUSED) return value;
  return isBlank(cell) && parameter.fallback ? parameter.fallback.value : unusable(parameter, cell);
}

interface Column extends Size {
  readonly values: readonly unknown[];
  /** Every value can be used, so that no row need be looked at again. */
  readonly sound: boolean;
}

function readColumn(parameter: Parameter, argument: Argument): Column {
  const matrix = asMatrix(argument);
  const columns = (matrix[0] as readonly unknown[]).length;
  const values = new Array<unknown>(matrix.length * columns);
  let sound = true;
  let place = 0;
  for (const row of matrix) {
    for (let c = 0; c < columns; c++) {
      let value: unknown = parameter.read(row[c]);
      if (value === REFUSED) {
        value = readCell(parameter, row[c]);
        sound &&= !(value instanceof Unusable);
      }
      values[place++] = value;
    }
  }
  return { rows: matrix.length, columns, values, sound };
}

/** All that is wrong with one row's values, or undefined where nothing is. A row whose ranged required cells are all blank is blank. */
export function fault(values: readonly unknown[], ranged: readonly boolean[]): CellError | '' | undefined {
  const bad = values.filter((value) => value instanceof Unusable);
  if (bad.length === 0) return undefined;
  const blankRow = ranged.some(Boolean) && values.every((value, k) => !ranged[k] || (value instanceof Unusable && value.blank));
  if (blankRow) return '';
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

/** One answer for each place of the aligned ranges; a bad row has its error in its own cell. */
function callOneCell(record: FunctionRecord, args: readonly Argument[]): Matrix {
  const read = record.parameters.map((parameter, k) => readColumn(parameter, args[k]));
  const { rows, columns, rowStep, columnStep, uneven } = align(read);
  const sound = read.every((column) => column.sound);
  const ranged = record.parameters.map(({ fallback }, k) => !fallback && (read[k] as Column).values.length > 1);
  const values = read.map((column) => column.values[0]);
  const varying = read.flatMap((column, k) => (column.values.length > 1 ? [k] : []));
  const cellAt = (row: number, column: number): Cell => {
    if (uneven) {
      const lonely = read.findIndex((size) => !reaches(size, row, column));
      if (lonely >= 0)
        return new CellError('#N/A', `${record.parameters[lonely]?.name}: this range has no cell here; make the ranges the same size`);
    }
    for (const k of varying) values[k] = (read[k] as Column).values[row * (rowStep[k] as number) + column * (columnStep[k] as number)];
    return (sound ? undefined : fault(values, ranged)) ?? answer(record, values);
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
  const matrix = asMatrix(argument);
  if (parameter.table) {
    const empty = matrix.every((row) => row.every(isBlank));
    return empty ? readCell(parameter, null) : matrix.map((row) => row.map((cell) => (isBlank(cell) ? null : cell)));
  }
  if (matrix.length === 1 && matrix[0]?.length === 1) return readCell(parameter, matrix[0][0]);
  return new Unusable(
    false,
    new CellError(
      '#VALUE!',
      `${nameWithUnit(parameter)}: is a range of ${matrix.length} × ${matrix[0]?.length} cells; enter ${parameter.accepts} in one cell`,
    ),
  );
}

/** The arguments of a spill as values, or the error that stands in place of the whole table. */
export function readArguments(record: Pick<FunctionRecord, 'parameters'>, args: readonly Argument[]): readonly unknown[] | CellError {
  const values = record.parameters.map((parameter, k) => readSingle(parameter, args[k]));
  return (fault(values, []) as CellError | undefined) ?? values;
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
