import type { WorkingStep } from '../core/define.ts';
import { citeDefault } from '../core/working.ts';
import type { Budget } from '../domain/budget.ts';
import { type BudgetResult, functionsIn } from '../domain/budget-result.ts';
import { budgetResults } from '../domain/budget-results.ts';
import { warningsOf } from '../domain/budget-warnings.ts';
import { type Answer, Refusal } from '../domain/refusal.ts';
import { budgetItems } from './budget-items.ts';
import { answerOf, budgetOf, defaultsUsed, type GivenInputs, readInputs, standIn, stillMissing } from './budget-reading.ts';

export type Table = readonly (readonly unknown[])[];

export function pairUp(items: Table, values: Table | undefined): GivenInputs {
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

function meaningOf(result: BudgetResult, plan: Budget): string {
  const { meaning } = result;
  if (typeof meaning === 'string') return meaning;
  const said = answerOf(() => meaning(plan));
  return typeof said === 'string' ? said : said.message;
}

export function herdRows(given: GivenInputs) {
  const plan = budgetOf(given);
  const results = budgetResults.map((result) => [result.key, answerOf(() => result.value(plan)), result.unit, meaningOf(result, plan)]);
  const [defaults, missing] = [defaultsUsed(given, plan), stillMissing(given, plan)];
  const counts = [
    ['Defaults used', defaults.length, '', defaults.length === 0 ? 'None: every item was given.' : `${defaults.join('; ')}.`],
    ['Still missing', missing.length, '', missing.length === 0 ? 'Nothing: the plan has all it needs.' : `${missing.join('; ')}.`],
  ];
  const warnings = warningsOf(plan).map(({ key, value, unit, meaning }) => [key, value, unit, meaning]);
  return { rows: [...results, ...counts, ...warnings] };
}

/** Where the working goes further down: `see BEDDING.DRYING.HEAT`. */
const seeFunctions = (how: string): string => {
  const names = functionsIn(how).map((name) => `BEDDING.${name}`);
  return names.length === 0 ? '' : `see ${names.join(', ')}`;
};

/** The budget's own working: every item with where it comes from, then every result with the functions and figures behind it. */
export function explainHerd(given: GivenInputs): readonly WorkingStep[] {
  const plan = budgetOf(given);
  const items = budgetItems.map((item): WorkingStep => {
    const { name, key, parameter } = item;
    const { says, unit, fallback } = parameter;
    if (given.has(key)) return { step: name, says, equation: 'given', value: given.get(key) as Answer, unit, source: '' };
    if (!fallback) return { step: name, says, equation: 'missing', value: '', unit, source: '' };
    return { step: name, says, equation: 'default', value: standIn(item, plan) ?? fallback.shown, unit, source: citeDefault(fallback) };
  });
  const results = budgetResults.map(
    (result): WorkingStep => ({
      step: result.key,
      says: meaningOf(result, plan),
      equation: result.how,
      value: answerOf(() => result.value(plan)),
      unit: result.unit,
      source: seeFunctions(result.how),
    }),
  );
  return [...items, ...results];
}

/** When a warning of BUDGET.HERD fires, in words. */
export { triggers as warningTriggers } from '../domain/budget-warnings.ts';
