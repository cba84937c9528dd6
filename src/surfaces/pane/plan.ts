import { readInputs } from '../../budget/given.ts';
import { type BudgetItem, budgetItems } from '../../budget/items.ts';
import { planOf as budgetPlan } from '../../budget/plan.ts';
import { defaultsOf, missingOf, playsPart } from '../../budget/standing.ts';
import { warningMark } from '../../budget/warnings.ts';
import { call } from '../../core/call.ts';
import { type Cell, CellError } from '../../core/result.ts';
import { inLocale } from '../in-locale.ts';
import { asArgument, type Inputs, isBlankCell, refusedCell } from './inputs-sheet.ts';
import { recordOf } from './records.ts';

export interface Result {
  readonly key: string;
  readonly value: Cell;
  readonly unit: string;
  readonly meaning: string;
}

/** What the inputs come to: the very answer that BUDGET.HERD gives in a cell. */
export interface Plan {
  /** Why there is no plan at all, in a sentence; the rest is then empty. */
  readonly refused?: string;
  readonly results: ReadonlyMap<string, Result>;
  readonly warnings: readonly Result[];
  readonly missing: readonly BudgetItem[];
  readonly defaulted: readonly BudgetItem[];
  /** Items that play no part, whatever their cells hold: the dryer's without a dryer, the loan's without a loan. */
  readonly idle: readonly BudgetItem[];
  /** Items whose cell holds what cannot be used, by itself or beside another's, with the reason. */
  readonly unusable: readonly (readonly [BudgetItem, string])[];
}

/** The two columns that BUDGET.HERD takes. */
const herdArguments = (inputs: Inputs): readonly [items: unknown[][], values: unknown[][]] => [
  [...inputs.keys()].map(({ name }) => [name]),
  [...inputs.values()].map(({ cell }) => [asArgument(cell)]),
];

/** @param locale how numbers are written in what it says */
export function planOf(inputs: Inputs, locale: string): Plan {
  const ours = (cell: Cell): Cell => (cell instanceof CellError ? new CellError(cell.code, inLocale(cell.message, locale)) : cell);
  const answer = call(recordOf('BUDGET.HERD'), herdArguments(inputs));
  const whole = answer[0]?.[0];
  const unusable = (otherwise?: (item: BudgetItem) => string | undefined): Plan['unusable'] =>
    [...inputs].flatMap(([item, { cell }]) => {
      const why = refusedCell(item, cell) ?? otherwise?.(item);
      return why === undefined ? [] : [[item, inLocale(why, locale)] as const];
    });
  if (whole instanceof CellError) {
    const nothing = { results: new Map(), warnings: [], missing: [], defaulted: [], idle: [] };
    return { ...nothing, refused: inLocale(whole.message, locale), unusable: unusable() };
  }
  const rows = answer.slice(1).map(
    ([key, value, unit, meaning]): Result => ({
      key: String(key),
      value: ours(value as Cell),
      unit: String(unit),
      meaning: inLocale(String(meaning), locale),
    }),
  );
  const given = readInputs(
    [...inputs].filter(([, { cell }]) => !isBlankCell(cell)).map(([{ name }, { cell }]) => [name, asArgument(cell)] as const),
    () => 'Inputs',
  );
  const plan = budgetPlan(given);
  const onSheet = (items: readonly BudgetItem[]) => [...inputs.keys()].filter((item) => items.includes(item));
  return {
    results: new Map(rows.map((row) => [row.key, row])),
    warnings: rows.filter(({ key }) => key.startsWith(warningMark)),
    missing: onSheet(missingOf(plan)),
    defaulted: onSheet(defaultsOf(plan)),
    idle: budgetItems.filter((item) => !playsPart(item, plan)),
    unusable: unusable((item) => (playsPart(item, plan) ? plan.given.clash(item)?.message : undefined)),
  };
}
