import { type FigureAt, nearestValue } from '../domain/nearest-value.ts';
import { spell } from '../domain/spell.ts';
import { noDryer } from './dryer.ts';
import { answerOf, type Given, ifNone } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import { type BudgetItem, itemOf } from './items.ts';
import { type Plan, planOf } from './plan.ts';
import { playsPart } from './standing.ts';

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

/** Heat is moved by whichever of its two items sets the supply temperature. */
function heatLever(given: Given, plan: Plan): BudgetItem {
  if (!given.has('water_l_h')) return itemOf('heat_kw');
  if (!given.has('heat_kw')) return itemOf('water_l_h');
  return itemOf(ifNone(() => plan.kit.usual.set_by, 'water') === 'heat' ? 'heat_kw' : 'water_l_h');
}

const within = (item: BudgetItem, lowest: number, highest: number) =>
  `between ${spell(lowest)} and ${spell(highest)} ${item.parameter.unit}`;

/** A figure of the plan, or nothing where it has none. */
function number(work: () => number): number | undefined {
  const found = answerOf(work);
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
}

/** Cover and NPV of the plan with one item changed. Both searches begin with the same values, so each is worked out once. */
function figuresWith(given: Given, { key }: BudgetItem): readonly [cover: FigureAt, npv: FigureAt] {
  const known = new Map<number, readonly [number | undefined, number | undefined]>();
  const both = (value: number) => {
    let figures = known.get(value);
    if (!figures) {
      const plan = planOf(given, new Map([[key, value]]));
      figures = [number(() => plan.kit.limit.cover), number(() => plan.money.npv)];
      known.set(value, figures);
    }
    return figures;
  };
  return [(value) => both(value)[0], (value) => both(value)[1]];
}

export function levers(items: Table, values: Table | undefined) {
  const given = pairUp(items, values);
  const plan = planOf(given);
  const rows = leverKeys.map((key) => {
    const item = key === 'heat' ? heatLever(given, plan) : itemOf(key);
    const now = answerOf(() => plan.inputs[item.key]);
    if (!playsPart(item, plan)) return [item.name, item.parameter.unit, typeof now === 'number' ? now : noDryer, noDryer, noDryer];
    if (typeof now !== 'number') return [item.name, item.parameter.unit, now, now, now];
    const range = item.parameter.range as readonly [number, number];
    const [coverAt, npvAt] = figuresWith(given, item);
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
