import type { Fallback } from './bibliography.ts';
import { type Unit, widestRange } from './units.ts';
import { acceptedNumber, acceptedText } from './words.ts';

/** Stands for a cell whose content a parameter cannot use; words.ts then says why. */
export const REFUSED: unique symbol = Symbol('refused');

/** One argument of a function, or one column of a table argument. */
export interface Parameter<Value = unknown, Name extends string = string> {
  readonly name: Name;
  readonly unit: Unit;
  /** What it is, in farm words, without unit, range or default: those are added wherever it is shown. */
  readonly says: string;
  /** The rule for one cell: a closure of the bounds or choices below, so that a good value costs next to nothing. */
  readonly read: (cell: unknown) => Value | typeof REFUSED;
  /** What to enter, e.g. `a number from 0.05 to 1`. */
  readonly accepts: string;
  /** The ends of a number, its own or its unit's, and all that bounds it. */
  readonly range?: readonly [lowest: number, highest: number];
  readonly bounds?: Bounds;
  readonly choices?: readonly string[];
  /** Absent on a required parameter. */
  readonly fallback?: Fallback;
  /** A table takes its whole range at once; everything else is read cell by cell. */
  readonly table?: true;
  /** Only on the last argument: it may be given any number of times, and every time may be a cell or a range. */
  readonly repeating?: true;
}

type ValueOf<P> = P extends Parameter<infer Value> ? Value : never;
export type ValuesOf<Ps extends readonly Parameter[]> = { [K in keyof Ps]: ValueOf<Ps[K]> };

export interface Bounds {
  readonly min?: number;
  readonly max?: number;
  /** Greater than, not equal. */
  readonly above?: number;
  /** Less than, not equal. */
  readonly below?: number;
  readonly whole?: true;
  /** A sentence for a value that is a likely slip, e.g. `is this a number of years?`, and which values it is for. */
  readonly slip?: { readonly when: (value: number) => boolean; readonly hint: string };
}

/** A number in a stated unit, within its bounds and the unit's widest range. */
export function number<const Name extends string>(name: Name, unit: Unit, says: string, bounds: Bounds = {}): Parameter<number, Name> {
  const [widestMin, widestMax] = widestRange(unit);
  const lowest = bounds.above ?? bounds.min ?? widestMin;
  const highest = bounds.below ?? bounds.max ?? widestMax;
  const { slip, whole } = bounds;
  const openBelow = bounds.above !== undefined;
  const openAbove = bounds.below !== undefined;
  const read = (cell: unknown): number | typeof REFUSED => {
    if (typeof cell !== 'number' || !(cell >= lowest && cell <= highest)) return REFUSED;
    if ((openBelow && cell === lowest) || (openAbove && cell === highest)) return REFUSED;
    if ((whole && !Number.isInteger(cell)) || slip?.when(cell)) return REFUSED;
    return cell;
  };
  return { name, unit, says, read, accepts: acceptedNumber(bounds, lowest, highest), range: [lowest, highest], bounds };
}

/** One of a closed list of words, whatever the case and outer spaces. */
export function choice<const Name extends string, const Choices extends readonly [string, ...string[]]>(
  name: Name,
  says: string,
  choices: Choices,
): Parameter<Choices[number], Name> {
  const known = new Map(choices.map((word) => [word.toLowerCase(), word]));
  return {
    name,
    unit: 'text',
    says,
    read: (cell) => (typeof cell === 'string' && known.get(cell.trim().toLowerCase())) || REFUSED,
    accepts: acceptedText(choices),
    choices,
  };
}

const spokenYes = new Map<unknown, 'yes' | 'no'>([
  [true, 'yes'],
  [false, 'no'],
  ['yes', 'yes'],
  ['no', 'no'],
  ['true', 'yes'],
  ['false', 'no'],
]);
const yesOrNo = (cell: unknown) => spokenYes.get(typeof cell === 'string' ? cell.trim().toLowerCase() : cell);

/** yes, no, TRUE or FALSE. */
export function yesNo<const Name extends string>(name: Name, says: string): Parameter<'yes' | 'no', Name> {
  return {
    name,
    unit: 'yes or no',
    says,
    read: (cell) => yesOrNo(cell) ?? REFUSED,
    accepts: acceptedText(['yes', 'no']),
    choices: ['yes', 'no'],
  };
}

/** Free text, such as a name. */
export function text<const Name extends string>(name: Name, says: string): Parameter<string, Name> {
  return {
    name,
    unit: 'text',
    says,
    read: (cell) => (typeof cell === 'string' && cell.trim() !== '' && cell.trim().length <= 255 ? cell.trim() : REFUSED),
    accepts: 'text of at most 255 characters',
  };
}

/** A whole range handed over as it stands, blanks as null; the function reads it itself. */
export function table<const Name extends string>(name: Name, says: string): Parameter<readonly (readonly unknown[])[], Name> {
  return {
    name,
    unit: 'table',
    says,
    read: (cell) => (Array.isArray(cell) ? cell : REFUSED),
    accepts: 'a range of cells',
    table: true,
  };
}

/** Makes a parameter optional: the fallback stands in for a blank or omitted cell. */
export function optional<Value, const Name extends string>(parameter: Parameter<Value, Name>, fallback: Fallback): Parameter<Value, Name> {
  return { ...parameter, fallback };
}

/** Makes a parameter optional with nothing in its place: the function gets undefined. */
export function maybe<Value, const Name extends string>(
  parameter: Parameter<Value, Name>,
  shown: string,
): Parameter<Value | undefined, Name> {
  return { ...parameter, fallback: { value: undefined, shown, source: 'project', status: 'judgement' } };
}
