import type { FunctionRecord } from '../../core/define.ts';
import { type Handed, layOut } from '../../native/index.ts';
import { budgetWorkbook } from '../../workbook/index.ts';
import { prefix } from '../namespace.ts';
import { addressFrom, blockOf, cellAt, referenceTo } from './addresses.ts';
import type { CallExplained } from './cell-explanation.ts';
import { type Argument, literal } from './formula.ts';
import { isBlankCell } from './inputs-sheet.ts';
import { findRecord } from './records.ts';
import type { Filling, Place, SpreadsheetHost } from './spreadsheet-host.ts';

type Parameter = FunctionRecord['parameters'][number];

/** The cell of a range that this place of a spill uses, with its sheet in every case. */
function cellOf({ sheet, address }: Place, { row, column }: CallExplained['offset']): string {
  const block = blockOf(address);
  if (!block) return address;
  const { top, left, bottom, right } = block;
  return `'${sheet.replaceAll("'", "''")}'!${cellAt(top === bottom ? top : top + row, left === right ? left : left + column)}`;
}

/** An empty cell stands for the default, as it does for the function. */
function orDefault(cell: string, { fallback }: Parameter): string {
  if (!fallback) return cell;
  return `IF(${cell}="",${fallback.value === undefined ? '""' : literal(fallback.value as string | number)},${cell})`;
}

function handed(argument: Argument, parameter: Parameter, offset: CallExplained['offset']): Handed {
  switch (argument.kind) {
    case 'omitted':
      return undefined;
    case 'value':
      return literal(argument.value);
    case 'reference':
      return orDefault(cellOf(argument.place, offset), parameter);
    case 'call':
      return handedCall(argument.name, argument.args, offset);
    default:
      throw new Error(`${argument.text} is worked out by the spreadsheet itself: put it into a cell of its own and refer to that.`);
  }
}

function handedCall(name: string, args: readonly Argument[], offset: CallExplained['offset']): Exclude<Handed, string | undefined> {
  const record = findRecord(name);
  if (!record) throw new Error(`${name} is no function of ours.`);
  const own = name.slice(prefix.length);
  return { name: own, args: args.map((argument, k) => handed(argument, record.parameters[k] as Parameter, offset)) };
}

const asked = new WeakMap<CallExplained, boolean>();

function isArithmetic({ record, steps, name, args, offset }: CallExplained): boolean {
  if (record.columns || steps.some(({ step }) => step === 'refused')) return false;
  try {
    layOut(handedCall(name, args, offset), 'A1');
    return true;
  } catch {
    return false;
  }
}

/** Whether a call gives one figure and is arithmetic in every step. */
export function canBeLaidOut(call: CallExplained): boolean {
  const known = asked.get(call) ?? isArithmetic(call);
  asked.set(call, known);
  return known;
}

/** The last column that a sheet of the budget is laid out for: its notes run over the free cells up to there. */
function plannedRight(name: string): number {
  const sheet = budgetWorkbook().sheets.find((one) => one.name === name.replace(/ \(\d+\)$/, ''));
  return (sheet?.columns.length ?? 0) - 1;
}

/** Right of all that is filled in, level with the cell: nothing stands there, not even a formula that shows nothing. */
async function freePlace(host: SpreadsheetHost, { sheet, address }: Place, rows: number, columns: number): Promise<string> {
  const used = blockOf((await host.usedRange(sheet)) ?? 'A1');
  const top = blockOf(address)?.top ?? 0;
  for (let left = Math.max(used?.right ?? 0, plannedRight(sheet)) + 2; ; left += columns + 1) {
    const corner = cellAt(top, left);
    const cells = await host.read({ sheet, address: addressFrom(corner, rows, columns) });
    if (cells.flat().every(isBlankCell)) return corner;
  }
}

/** Lays a call out in native formulas beside the cell that it stands in; where, and the cell of the answer. */
export async function layOutBeside(host: SpreadsheetHost, place: Place, { record, name, args, offset }: CallExplained): Promise<Place> {
  const call = handedCall(name, args, offset);
  const { contents } = layOut(call, 'A1');
  const corner = await freePlace(host, place, contents.length + 1, contents[0]?.length ?? 1);
  const { top, left } = blockOf(corner) as NonNullable<ReturnType<typeof blockOf>>;
  const below = cellAt(top + 1, left);
  const laid = layOut(call, below);
  const title = `${record.name} of ${referenceTo(place)} in formulas of the spreadsheet’s own; they refuse nothing that is out of range`;
  const fillings: readonly Filling[] = [
    { sheet: place.sheet, address: corner, contents: [[title]] },
    { sheet: place.sheet, address: below, contents: laid.contents },
  ];
  await host.write(fillings);
  return { sheet: place.sheet, address: laid.answer };
}
