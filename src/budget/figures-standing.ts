import { figure } from './figure.ts';
import { defaultsOf, missingOf, refusalsOf, sayMissing, sayTaken } from './standing.ts';

const listed = (names: readonly string[], none: string): string => (names.length === 0 ? none : `${names.join('; ')}.`);

/** What the plan rests on. */
export const standingFigures = [
  figure('Defaults used', '', {
    value: (plan) => defaultsOf(plan).length,
    meaning: (plan) =>
      listed(
        defaultsOf(plan).map((item) => sayTaken(item, plan)),
        'None: every item was given.',
      ),
  }),
  figure('Still missing', '', {
    value: (plan) => missingOf(plan).length,
    meaning: (plan) => listed(missingOf(plan).map(sayMissing), 'Nothing: the plan has all it needs.'),
  }),
  figure('Refused inputs', '', {
    value: (plan) => refusalsOf(plan).length,
    meaning: (plan) =>
      listed(
        refusalsOf(plan).map(({ message }) => message),
        'None: every value given can be used.',
      ),
  }),
] as const;
