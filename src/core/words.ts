import { spell } from '../domain/spell.ts';
import type { Bounds, Parameter } from './parameters.ts';

/** `a whole number from 1 to 100`, `a number above 0, at most 1`. */
export function acceptedNumber(bounds: Bounds, lowest: number, highest: number): string {
  const kind = bounds.whole ? 'a whole number' : 'a number';
  if (bounds.above === undefined && bounds.below === undefined) return `${kind} from ${spell(lowest)} to ${spell(highest)}`;
  const low = bounds.above === undefined ? `from ${spell(lowest)}` : `above ${spell(lowest)}`;
  const high = bounds.below === undefined ? `at most ${spell(highest)}` : `below ${spell(highest)}`;
  return `${kind} ${low}, ${high}`;
}

export const acceptedText = (choices: readonly string[]): string =>
  choices.length === 2 ? choices.join(' or ') : `one of ${choices.join(', ')}`;

/** A cell's content as a sentence can quote it: short, on one line. */
export function quoted(cell: unknown): string {
  if (typeof cell === 'object') return 'an error';
  if (typeof cell === 'number') return spell(cell);
  if (typeof cell === 'boolean') return cell ? 'TRUE' : 'FALSE';
  const plain = String(cell).replace(/\s+/g, ' ').trim();
  return `"${plain.length > 40 ? `${plain.slice(0, 39)}…` : plain}"`;
}

/** What is wrong with a number that its bounds refuse. */
function problemOfNumber([lowest, highest]: readonly [number, number], { above, below, slip }: Bounds, cell: number): string {
  const said = quoted(cell);
  if (!Number.isFinite(cell)) return `${said} is not a number`;
  if (slip?.when(cell)) return `${said}: ${slip.hint}`;
  if (above === undefined ? cell < lowest : cell <= lowest)
    return `${said} is ${above === undefined ? 'below' : 'not above'} ${spell(lowest)}`;
  if (below === undefined ? cell > highest : cell >= highest)
    return `${said} is ${below === undefined ? 'above' : 'not below'} ${spell(highest)}`;
  return `${said} is not a whole number`;
}

function problem({ range, bounds = {}, choices }: Parameter, cell: unknown): string {
  if (choices) return `${quoted(cell)} is not one of the choices`;
  if (range) {
    if (typeof cell === 'number') return problemOfNumber(range, bounds, cell);
    return `${quoted(cell)} is ${typeof cell === 'string' ? 'text, not a number' : 'not a number'}`;
  }
  if (typeof cell !== 'string') return `${quoted(cell)} is ${typeof cell === 'number' ? 'a number, not text' : 'not text'}`;
  return cell.trim() === '' ? 'is blank' : `${quoted(cell)} is too long`;
}

/** A per cent typed as a whole number is the commonest slip with fractions: say what would be right. */
function remedy(parameter: Parameter, cell: unknown): string {
  const isPerCent = parameter.unit === 'fraction' && typeof cell === 'number' && cell > 1;
  if (!isPerCent || parameter.read(cell / 100) !== cell / 100) return `enter ${parameter.accepts}`;
  return `enter ${spell(cell)}% or ${spell(cell / 100)}`;
}

/** `dm_in (fraction)`, or the bare name where there is no unit to tell. */
export const nameWithUnit = (parameter: Pick<Parameter, 'name' | 'unit'>): string =>
  parameter.unit === '' ? parameter.name : `${parameter.name} (${parameter.unit})`;

export const missing = (parameter: Parameter): string => `${nameWithUnit(parameter)}: is missing; enter ${parameter.accepts}`;

/** What an argument is, for argument help: `days a year the cubicles are bedded (days/year): a number from 1 to 366. Left out: 365`. */
export function describe(parameter: Parameter): string {
  const { says, unit, accepts, fallback } = parameter;
  const inUnit = unit === '' || unit === 'text' || unit === 'table' || unit === 'yes or no' ? '' : ` (${unit})`;
  const value = typeof fallback?.value === 'number' ? spell(fallback.value) : fallback?.value;
  const leftOut = fallback?.shown ?? value;
  return `${says}${inUnit}: ${accepts}${leftOut === undefined ? '' : `. Left out: ${leftOut}`}`;
}

/** Why a cell that `read` refused cannot be used, and what would do instead. */
export function whyRefused(parameter: Parameter, cell: unknown): { readonly problem: string; readonly accepted: string } {
  if (typeof cell === 'object') {
    return { problem: 'the cell it reads holds an error', accepted: `mend that cell first, then enter ${parameter.accepts}` };
  }
  return { problem: problem(parameter, cell), accepted: remedy(parameter, cell) };
}

/** `dm_in (fraction): 35 is above 1; enter 35% or 0.35`. */
export function refusal(parameter: Parameter, cell: unknown): string {
  const why = whyRefused(parameter, cell);
  return `${nameWithUnit(parameter)}: ${why.problem}; ${why.accepted}`;
}
