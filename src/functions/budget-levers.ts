import type { Budget } from '../domain/budget.ts';
import { ifNone } from '../domain/budget-inputs.ts';
import { noDryer } from '../domain/budget-kit.ts';
import { type FigureAt, nearestValue } from '../domain/budget-levers.ts';
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
  return itemOf(ifNone(() => plan.kit.usual.supply().set_by, 'water') === 'heat' ? 'heat_kw' : 'water_l_h');
}

const within = (item: BudgetItem, lowest: number, highest: number) =>
  `between ${spell(lowest)} and ${spell(highest)} ${item.parameter.unit}`;

/** A figure of the plan, or nothing where it has none. */
function figure(work: () => number): number | undefined {
  const found = answerOf(work);
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
}

/** Cover and NPV of the plan with one item changed. Both searches begin with the same values, so each is worked out once. */
function figuresWith(given: GivenInputs, { key }: BudgetItem): readonly [cover: FigureAt, npv: FigureAt] {
  const known = new Map<number, readonly [number | undefined, number | undefined]>();
  const both = (value: number) => {
    let figures = known.get(value);
    if (!figures) {
      const plan = budgetOf(given, { key, value });
      figures = [figure(() => plan.kit.limit().cover), figure(plan.money.npv)];
      known.set(value, figures);
    }
    return figures;
  };
  return [(value) => both(value)[0], (value) => both(value)[1]];
}

/** The bedding bought now stays as it is while a lever moves the fibre's, also where it was left to follow. */
function withPresentHeld(given: GivenInputs): GivenInputs {
  const held = new Map(given);
  const follows = [
    ['litres_now', 'litres'],
    ['interval_days_now', 'interval_days'],
  ] as const;
  for (const [present, fibre] of follows) if (!held.has(present) && held.has(fibre)) held.set(present, held.get(fibre));
  return held;
}

export function levers(items: Table, values: Table | undefined) {
  const given = pairUp(items, values);
  const plan = budgetOf(given);
  const held = withPresentHeld(given);
  const rows = leverKeys.map((key) => {
    const item = key === 'heat' ? heatLever(given, plan) : itemOf(key);
    const now = answerOf(() => plan.get(item.key));
    if (irrelevant(item, plan)) return [item.name, item.parameter.unit, typeof now === 'number' ? now : noDryer, noDryer, noDryer];
    if (typeof now !== 'number') return [item.name, item.parameter.unit, now, now, now];
    const range = item.parameter.range as readonly [number, number];
    const [coverAt, npvAt] = figuresWith(held, item);
    const none = (goal: string) => `no value ${within(item, ...range)} makes ${goal}, all else as it is`;
    return [
      item.name,
      item.parameter.unit,
      now,
      nearestValue(coverAt, 1, now, range, none('the cover exactly 1')),
      nearestValue(npvAt, 0, now, range, none('the kit just pay')),
    ];
  });
  return { rows };
}
