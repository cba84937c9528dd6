import type { Budget } from '../domain/budget.ts';
import { ifNone } from '../domain/budget-inputs.ts';
import { noDryer } from '../domain/budget-kit.ts';
import { nearestValue } from '../domain/budget-levers.ts';
import { spell } from '../domain/spell.ts';
import { pairUp, type Table } from './budget-herd.ts';
import { type BudgetItem, budgetItems } from './budget-items.ts';
import { answerOf, budgetOf, type GivenInputs, irrelevant } from './budget-reading.ts';

const leverKeys = [
  'interval_days',
  'litres',
  'capture',
  'press_hours_day',
  'air_m3_h',
  'heat',
  'target_dm',
  'kit_cost',
  'bought_price_per_t',
  'heat_price',
] as const;

const itemOf = (key: string): BudgetItem => budgetItems.find((item) => item.key === key) as BudgetItem;

/** Heat is moved by whichever of its two items sets the supply temperature. */
function heatLever(given: GivenInputs, plan: Budget): BudgetItem {
  if (!given.has('water_l_h')) return itemOf('heat_kw');
  if (!given.has('heat_kw')) return itemOf('water_l_h');
  return itemOf(ifNone(() => plan.kit.now.supply().set_by, 'water') === 'heat' ? 'heat_kw' : 'water_l_h');
}

const span = (item: BudgetItem, lowest: number, highest: number) => `between ${spell(lowest)} and ${spell(highest)} ${item.parameter.unit}`;

export function levers(items: Table, values: Table | undefined) {
  const given = pairUp(items, values);
  const plan = budgetOf(given);
  const rows = leverKeys.map((key) => {
    const item = key === 'heat' ? heatLever(given, plan) : itemOf(key);
    const now = answerOf(() => plan.get(item.key));
    if (irrelevant(item, plan)) return [item.name, item.parameter.unit, typeof now === 'number' ? now : noDryer, noDryer, noDryer];
    if (typeof now !== 'number') return [item.name, item.parameter.unit, now, now, now];
    const range = item.parameter.range as readonly [number, number];
    // Both goals try the same values first, and a plan keeps what it has worked out.
    const plans = new Map<number, Budget>();
    const planWith = (value: number): Budget => {
      const known = plans.get(value) ?? budgetOf(new Map([...given, [item.key, value]]));
      plans.set(value, known);
      return known;
    };
    const nearest = (figure: (plan: Budget) => number, target: number, goal: string) =>
      nearestValue(planWith, now, range, {
        figure,
        target,
        none: (low, high) => `no value ${span(item, low, high)} makes ${goal}, all else as it is`,
      });
    return [
      item.name,
      item.parameter.unit,
      now,
      nearest((of) => of.kit.limit().cover, 1, 'the cover exactly 1'),
      nearest((of) => of.money.npv(), 0, 'the kit just pay'),
    ];
  });
  return { rows };
}
