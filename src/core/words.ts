import type * as z from 'zod/mini';
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

function problem(parameter: Parameter, cell: unknown, issue: z.core.$ZodIssue): string {
  const said = quoted(cell);
  switch (issue.code) {
    case 'too_small':
      return typeof cell === 'string'
        ? 'is blank'
        : `${said} is ${issue.inclusive ? 'below' : 'not above'} ${spell(Number(issue.minimum))}`;
    case 'too_big':
      return typeof cell === 'string'
        ? `${said} is too long`
        : `${said} is ${issue.inclusive ? 'above' : 'not below'} ${spell(Number(issue.maximum))}`;
    case 'custom':
      return `${said}: ${issue.params?.['hint']}`;
    case 'invalid_value':
      return `${said} is not one of the choices`;
    default:
      if (!parameter.range) return typeof cell === 'number' ? `${said} is a number, not text` : `${said} is not text`;
      if (typeof cell === 'string') return `${said} is text, not a number`;
      return Number.isFinite(cell) ? `${said} is not a whole number` : `${said} is not a number`;
  }
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

/** Why a cell that `read` refused cannot be used, and what would do instead. Asks zod, so it is not for the hot path. */
export function whyRefused(parameter: Parameter, cell: unknown): { readonly problem: string; readonly accepted: string } {
  if (typeof cell === 'object') {
    return { problem: 'the cell it reads holds an error', accepted: `mend that cell first, then enter ${parameter.accepts}` };
  }
  const issues = parameter.schema.safeParse(cell).error?.issues;
  const issue = issues?.find(({ code }) => code === 'custom') ?? issues?.[0];
  if (!issue) throw new Error(`${parameter.name}: the compiled rule and its schema disagree on ${quoted(cell)}`);
  return { problem: problem(parameter, cell, issue), accepted: remedy(parameter, cell) };
}

/** `dm_in (fraction): 35 is above 1; enter 35% or 0.35`. */
export function refusal(parameter: Parameter, cell: unknown): string {
  const why = whyRefused(parameter, cell);
  return `${nameWithUnit(parameter)}: ${why.problem}; ${why.accepted}`;
}
