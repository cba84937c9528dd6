import { call } from '../../core/call.ts';
import type { FunctionRecord, WorkingStep } from '../../core/define.ts';
import type { Cell } from '../../core/result.ts';
import { explain } from '../../core/working.ts';
import { prefix } from '../namespace.ts';
import { blockOf, cellAt } from './addresses.ts';
import { type Argument, type Call, callsIn, placesIn } from './formula.ts';
import { asArgument } from './inputs-sheet.ts';
import { sayValue } from './numbers.ts';
import { findRecord } from './records.ts';
import type { Place, SpreadsheetHost } from './spreadsheet-host.ts';

/** One call behind a cell, worked out again from the cells it reads. */
export interface CallExplained extends Call {
  readonly record: FunctionRecord;
  /** Which place of its spill the cell is. */
  readonly offset: Offset;
  readonly steps: readonly WorkingStep[];
  /** Where arguments and budget items come from, by name. */
  readonly cells: ReadonlyMap<string, Place>;
  /** Of a table: the row that the cell shows, its key first. */
  readonly row?: readonly Cell[];
}

export interface Explained {
  readonly place: Place;
  readonly formula?: string;
  readonly calls: readonly CallExplained[];
  /** What is to be said instead of, or beside, the calls. */
  readonly words?: string;
  /** The cells that a formula of the spreadsheet's own reads. */
  readonly reads: readonly Place[];
}

interface Offset {
  readonly row: number;
  readonly column: number;
}

/** An argument that only the spreadsheet itself can work out. */
class NotOurs extends Error {}

async function argumentValue(host: SpreadsheetHost, argument: Argument): Promise<unknown> {
  switch (argument.kind) {
    case 'omitted':
      return null;
    case 'value':
      return argument.value;
    case 'reference':
      return (await host.read(argument.place)).map((row) => row.map(asArgument));
    case 'call': {
      const record = findRecord(argument.name);
      if (!record || !argument.name.startsWith(prefix)) throw new NotOurs(argument.name);
      return call(record, await Promise.all(argument.args.map((inner) => argumentValue(host, inner))));
    }
    default:
      throw new NotOurs(argument.text);
  }
}

/** A range stands for the one cell of it that this place of the spill uses. */
function oneOf(argument: unknown, { row, column }: Offset): unknown {
  if (!Array.isArray(argument)) return argument;
  const line = argument.length === 1 ? argument[0] : argument[row];
  return line?.length === 1 ? line[0] : line?.[column];
}

/** Where the value of each item stands, where items and values are two ranges side by side. */
async function itemCells(host: SpreadsheetHost, [items, values]: readonly Argument[]): Promise<Map<string, Place>> {
  const cells = new Map<string, Place>();
  const block = values?.kind === 'reference' ? blockOf(values.place.address) : undefined;
  if (items?.kind !== 'reference' || values?.kind !== 'reference' || !block) return cells;
  (await host.read(items.place)).forEach(([name], k) => {
    if (typeof name?.value === 'string')
      cells.set(name.value.trim(), { sheet: values.place.sheet, address: cellAt(block.top + k, block.left) });
  });
  return cells;
}

async function cellsOf(host: SpreadsheetHost, record: FunctionRecord, args: readonly Argument[]): Promise<Map<string, Place>> {
  const cells = record.parameters[0]?.name === 'items' ? await itemCells(host, args) : new Map<string, Place>();
  args.forEach((argument, k) => {
    const name = record.parameters[k]?.name;
    if (name && argument.kind === 'reference') cells.set(name, argument.place);
  });
  return cells;
}

/** @param wanted the key of the row that is asked for, where that is not the row of the cell itself */
async function explainCall(host: SpreadsheetHost, { name, args }: Call, offset: Offset, wanted?: string): Promise<CallExplained> {
  const record = findRecord(name);
  if (!record) throw new NotOurs(name);
  const values = await Promise.all(args.map((argument) => argumentValue(host, argument)));
  const cells = await cellsOf(host, record, args);
  const common = { record, name, args, offset, cells };
  if (!record.columns)
    return {
      ...common,
      steps: explain(
        record,
        values.map((value) => oneOf(value, offset)),
      ),
    };
  const [, ...rows] = call(record, values);
  const row = wanted === undefined ? rows[offset.row - 1] : rows.find(([key]) => key === wanted);
  return { ...common, steps: explain(record, values), ...(row && { row }) };
}

const isOurs = ({ name }: Call): boolean => name.startsWith(prefix);

interface Picked {
  readonly call: Call;
  readonly key: string;
}

/** `INDEX(range, MATCH(key, keys, 0))` picks a row of a table by its key: the table's own call is what explains it. */
async function pickedBy(host: SpreadsheetHost, { name, args: [, match] }: Call): Promise<readonly Picked[]> {
  if (name !== 'INDEX' || match?.kind !== 'call' || match.name !== 'MATCH') return [];
  const [wanted, keys] = match.args;
  if (!wanted || keys?.kind !== 'reference') return [];
  const key =
    wanted.kind === 'reference' ? (await host.read(wanted.place))[0]?.[0]?.value : wanted.kind === 'value' ? wanted.value : undefined;
  const { sheet, address } = keys.place;
  const behind = await host.formulaBehind({ sheet, address: address.split(':')[0] as string });
  const ours = behind && callsIn(behind.formula, sheet).find(isOurs);
  return ours && typeof key === 'string' ? [{ call: ours, key }] : [];
}

/** Why a cell shows what it shows. */
export async function explainCell(host: SpreadsheetHost, place: Place): Promise<Explained> {
  const behind = await host.formulaBehind(place);
  if (!behind) {
    const cell = (await host.read(place))[0]?.[0];
    const typed = cell && cell.value !== null && cell.value !== '';
    return {
      place,
      calls: [],
      reads: [],
      words: typed
        ? `${place.address} holds ${typeof cell.value === 'string' ? `“${cell.value}”` : sayValue(cell.value, '', host.locale(), 12)}, typed in: nothing is worked out there.`
        : `${place.address} is blank.`,
    };
  }
  const { formula } = behind;
  const calls = callsIn(formula, place.sheet);
  const [at, from] = [blockOf(place.address), blockOf(behind.address)];
  const offset = { row: (at?.top ?? 0) - (from?.top ?? 0), column: (at?.left ?? 0) - (from?.left ?? 0) };
  const common = { place, formula };
  try {
    const ours = calls.filter(isOurs).filter(({ start }, _, all) => !all.some((outer) => outer.start < start && start < outer.end));
    if (ours.length > 0) return { ...common, reads: [], calls: await Promise.all(ours.map((one) => explainCall(host, one, offset))) };
    const picked = (await Promise.all(calls.map((one) => pickedBy(host, one)))).flat();
    if (picked.length > 0) {
      const explained = picked.map((one) => explainCall(host, one.call, { row: 0, column: 0 }, one.key));
      return { ...common, reads: [], calls: await Promise.all(explained) };
    }
  } catch (fault) {
    if (!(fault instanceof NotOurs)) throw fault;
    return {
      ...common,
      calls: [],
      reads: placesIn(formula, place.sheet),
      words: `${fault.message} is worked out by the spreadsheet itself, inside the call. Put it into a cell of its own and refer to that: then this can be explained.`,
    };
  }
  return {
    ...common,
    calls: [],
    reads: placesIn(formula, place.sheet),
    words: 'This formula is the spreadsheet’s own; the panel explains BEDDING functions only.',
  };
}
