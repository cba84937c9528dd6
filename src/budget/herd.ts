import type { WorkingStep } from '../core/define.ts';
import { citeDefault } from '../core/working.ts';
import { type Answer, Refusal } from '../domain/refusal.ts';
import { functionsIn } from './figure.ts';
import { figures } from './figures.ts';
import { answerOf, type Given, readInputs, saidOf } from './given.ts';
import { budgetItems } from './items.ts';
import { planOf } from './plan.ts';
import { takenFor } from './standing.ts';
import { warningsOf } from './warnings.ts';

export type Table = readonly (readonly unknown[])[];

/** A herd as the budget's functions take it: a range of items beside a range of values. */
export function pairUp(items: Table, values: Table | undefined): Given {
  const names = items.flat();
  const cells = values?.flat() ?? names.map(() => null);
  if (names.length !== cells.length) {
    throw new Refusal('values (table)', `holds ${cells.length} cells beside ${names.length} items`, 'enter two ranges of the same length');
  }
  return readInputs(
    names.map((name, k) => [name, cells[k]] as const),
    (k) => `items row ${k + 1}`,
  );
}

/** The answer's table: every figure with its meaning, then what fires. */
export function herdRows(given: Given) {
  const plan = planOf(given);
  const rows = figures.map((figure) => [figure.key, answerOf(() => figure.value(plan)), figure.unit, saidOf(figure.meaning, plan)]);
  const warnings = warningsOf(plan).map(({ key, value, unit, meaning }) => [key, value, unit, meaning]);
  return { rows: [...rows, ...warnings] };
}

/** Where the working goes further down: `see BEDDING.DRYING.HEAT`. */
const seeFunctions = (how: string | undefined): string => {
  const names = functionsIn(how).map((name) => `BEDDING.${name}`);
  return names.length === 0 ? '' : `see ${names.join(', ')}`;
};

/** The budget's own working: every item with where it comes from, then every figure with the functions and figures behind it. */
export function explainHerd(given: Given): readonly WorkingStep[] {
  const plan = planOf(given);
  const items = budgetItems.map((item): WorkingStep => {
    const { says, unit, fallback } = item.parameter;
    const common = { step: item.name, says, unit };
    if (given.has(item.key)) return { ...common, equation: 'given', value: given.get(item.key) as Answer, source: '' };
    if (!fallback) return { ...common, equation: 'missing', value: '', source: '' };
    return { ...common, equation: 'default', value: takenFor(item, plan) ?? fallback.shown, source: citeDefault(fallback) };
  });
  const results = figures.map(
    (figure): WorkingStep => ({
      step: figure.key,
      says: saidOf(figure.meaning, plan),
      equation: figure.how ?? '',
      value: answerOf(() => figure.value(plan)),
      unit: figure.unit,
      source: seeFunctions(figure.how),
    }),
  );
  return [...items, ...results];
}
