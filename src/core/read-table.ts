import { fault, readCell, Unusable } from './call.ts';
import type { Parameter, ValuesOf } from './parameters.ts';
import { CellError, isBlank } from './result.ts';

type Row = readonly unknown[];

/** The values of one row, or all that is wrong with it; `where` leads every refusal, e.g. `drivers row 3, high (money): …`. */
export function readRow<const Columns extends readonly Parameter[]>(
  where: string,
  columns: Columns,
  row: Row,
): ValuesOf<Columns> | CellError {
  const values = columns.map((column, k) => {
    const value = readCell(column, row[k]);
    return value instanceof Unusable ? readCell({ ...column, name: `${where}, ${column.name}` }, row[k]) : value;
  });
  return fault(values) ?? (values as unknown as ValuesOf<Columns>);
}

/**
 * The cells of a table argument that is one column, each as its parameter reads it: undefined where it is blank, its refusal
 * where it is refused. A single cell stands for `rows` of them.
 */
export function readColumn<Value>(
  parameter: Parameter<Value>,
  table: readonly Row[],
  rows = table.length,
): readonly (Value | CellError | undefined)[] {
  const { name } = parameter;
  if (table.some(({ length }) => length !== 1))
    throw new CellError('#VALUE!', `${name} (table): is ${table[0]?.length} columns wide; enter a range of one column`);
  if (table.length !== 1 && table.length !== rows)
    throw new CellError('#VALUE!', `${name} (table): has ${table.length} rows beside ${rows}; enter as many, or one cell`);
  return Array.from({ length: rows }, (_, k) => {
    const cell = table[table.length === 1 ? 0 : k]?.[0];
    if (isBlank(cell)) return undefined;
    const value = readCell({ ...parameter, name: table.length === 1 ? name : `${name} row ${k + 1}` }, cell);
    return value instanceof Unusable ? value.error : (value as Value);
  });
}

interface TableRow<Columns extends readonly Parameter[]> {
  /** Its number in the range. */
  readonly row: number;
  readonly cells: Row;
  readonly values: ValuesOf<Columns> | CellError;
}

/**
 * The rows of a table argument, each with its number in the range, and its values or all that is wrong with them. Wholly blank
 * rows are passed over, so that a range may be longer than what it holds. Throws a CellError where the columns do not fit.
 *
 * @param columnsFor the columns of a row, which may depend on what it holds
 */
export function readRows<const Columns extends readonly Parameter[]>(
  name: string,
  table: readonly Row[],
  columnsFor: (row: Row) => Columns,
): readonly TableRow<Columns>[] {
  const read: TableRow<Columns>[] = [];
  for (const [index, cells] of table.entries()) {
    if (cells.every(isBlank)) continue;
    const columns = columnsFor(cells);
    if (cells.length !== columns.length) {
      const wanted = columns.map((column) => column.name).join(', ');
      throw new CellError('#VALUE!', `${name} (table): has ${cells.length} columns; enter ${columns.length}: ${wanted}`);
    }
    const row = index + 1;
    read.push({ row, cells, values: readRow(`${name} row ${row}`, columns, cells) });
  }
  return read;
}

/** The rows of a table argument that must all be right: as `readRows`, but throws a CellError that names every bad cell. */
export function readTable<const Columns extends readonly Parameter[]>(
  name: string,
  table: readonly Row[],
  columnsFor: (row: Row) => Columns,
): readonly { readonly row: number; readonly values: ValuesOf<Columns> }[] {
  const read = readRows(name, table, columnsFor);
  const bad = fault(read.map(({ values }) => (values instanceof CellError ? new Unusable(values) : values)));
  if (bad) throw bad;
  return read as readonly { readonly row: number; readonly values: ValuesOf<Columns> }[];
}
