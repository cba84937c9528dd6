import * as z from 'zod/mini';
import { type Parameter, yesNo } from '../../src/core/parameters.ts';

const ticked = new Map<unknown, string>([
  [true, 'yes'],
  [false, 'no'],
  ['true', 'yes'],
  ['false', 'no'],
]);

const trimmed = (cell: unknown): unknown => (typeof cell === 'string' ? cell.trim().toLowerCase() : cell);

/** The rule of an argument as zod has it: made from the same bounds and choices, and by nothing of ours that reads a cell. */
export function schemaOf({ unit, table, range, bounds = {}, choices }: Parameter): z.ZodMiniType {
  if (table) return z.array(z.array(z.unknown()));
  if (choices) {
    const words = new Map<unknown, string>(choices.map((word) => [word.toLowerCase(), word]));
    const known = unit === yesNo('', '').unit ? new Map([...words, ...ticked]) : words;
    return z.pipe(
      z.transform((cell) => known.get(trimmed(cell)) ?? cell),
      z.enum(choices as [string, ...string[]]),
    );
  }
  if (!range) return z.string().check(z.trim(), z.minLength(1), z.maxLength(255));
  const { above, below, whole, slip } = bounds;
  return z
    .number()
    .check(
      above === undefined ? z.gte(range[0]) : z.gt(above),
      below === undefined ? z.lte(range[1]) : z.lt(below),
      ...(whole ? [z.int()] : []),
      ...(slip ? [z.refine((value) => !slip.when(value as number), { params: { hint: slip.hint } })] : []),
    );
}

/** The part of our sentence that says what zod found; a likely slip comes before all else. */
export function saidOf(issues: readonly z.core.$ZodIssue[]): RegExp {
  const issue = issues.find(({ code }) => code === 'custom') ?? (issues[0] as z.core.$ZodIssue);
  switch (issue.code) {
    case 'custom':
      return new RegExp(`: ${String(issue.params?.['hint']).replace(/[.?*+()]/g, '\\$&')}$`);
    case 'too_small':
      return issue.origin === 'string' ? /^is blank$/ : issue.inclusive ? / is below / : / is not above /;
    case 'too_big':
      return issue.origin === 'string' ? / is too long$/ : issue.inclusive ? / is above / : / is not below /;
    case 'invalid_value':
      return / is not one of the choices$/;
    default:
      return / is (text, not a number|not a number|not a whole number|a number, not text|not text)$/;
  }
}
