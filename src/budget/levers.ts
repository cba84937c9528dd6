import { type GapAt, nearestValue } from '../domain/nearest-value.ts';
import { type Answer, NoAnswer } from '../domain/refusal.ts';
import { spell } from '../domain/spell.ts';
import { noDryer } from './dryer.ts';
import { answerOf, type Given, ifNone } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import { type BudgetItem, type ItemKey, itemOf } from './items.ts';
import { type Plan, planOf } from './plan.ts';
import { playsPart } from './standing.ts';

/** What a lever changes. What lays less or wetter bedding is never told as a way to make a plan pay. */
export type LeverKind = 'kit' | 'price' | 'bedding';

interface Lever {
  readonly key: ItemKey;
  readonly kind: LeverKind;
  /** It moves the money alone, so that no value of it changes the cover. */
  readonly onlyMoney?: true;
  /** The lowest that the other items allow, where that is above the item's own lowest. */
  readonly from?: (plan: Plan) => number;
}

/** Heat is moved by whichever of its two items sets the supply temperature. */
function heatKey(given: Given, plan: Plan): ItemKey {
  if (!given.has('water_l_h')) return 'heat_kw';
  if (!given.has('heat_kw')) return 'water_l_h';
  return ifNone(() => plan.kit.usual.set_by, 'water') === 'heat' ? 'heat_kw' : 'water_l_h';
}

const leversFor = (given: Given, plan: Plan): readonly Lever[] => [
  { key: 'interval_days', kind: 'bedding' },
  { key: 'litres', kind: 'bedding' },
  { key: 'capture', kind: 'kit' },
  { key: 'press_hours_day', kind: 'kit' },
  { key: 'air_m3_h', kind: 'kit' },
  { key: heatKey(given, plan), kind: 'kit' },
  { key: 'target_dm', kind: 'bedding', from: ({ inputs }) => inputs.cake_dm },
  { key: 'kit_cost', kind: 'kit', onlyMoney: true, from: ({ inputs }) => Math.max(inputs.grant, inputs.borrowed) },
  { key: 'bought_price_per_t', kind: 'price', onlyMoney: true },
  { key: 'heat_price', kind: 'price', onlyMoney: true },
];

/** The least that is still above a bound which is itself not allowed. */
const JUST_ABOVE = 1e-6;

/** The values that the item and the other items allow. */
function rangeOf({ from }: Lever, { parameter }: BudgetItem, plan: Plan): readonly [number, number] {
  const [lowest, highest] = parameter.range as readonly [number, number];
  const own = parameter.bounds?.above === undefined ? lowest : lowest + JUST_ABOVE;
  const others = from && answerOf(() => from(plan));
  return [typeof others === 'number' ? Math.max(own, others) : own, highest];
}

/** A figure of the plan, or nothing where it has none. */
function number(work: () => number): number | undefined {
  const found = answerOf(work);
  return typeof found === 'number' && Number.isFinite(found) ? found : undefined;
}

interface Goal {
  readonly name: string;
  readonly gap: (plan: Plan) => number;
}
const covered: Goal = { name: 'the cover 1', gap: ({ kit }) => kit.limit.cover - 1 };
const paying: Goal = { name: 'the kit just pay', gap: ({ money }) => money.npv };

/** The value at which the goal comes to be met or missed, or why there is none. */
function valueFor(
  goal: Goal,
  plan: Plan,
  planAt: (value: number) => Plan,
  now: number,
  item: BudgetItem,
  range: readonly [number, number],
): Answer {
  const here = number(() => goal.gap(plan));
  if (here === undefined) return new NoAnswer('the plan has no such figure yet: see what is still missing');
  const gapAt: GapAt = (value) => (value === now ? here : number(() => goal.gap(planAt(value))));
  const found = nearestValue(gapAt, now, range);
  if (found !== undefined) return found;
  const within = `between ${spell(range[0])} and ${spell(range[1])} ${item.parameter.unit}`;
  return new NoAnswer(
    here >= 0 ? `every value ${within} keeps it so, all else as it is` : `no value ${within} makes ${goal.name}, all else as it is`,
  );
}

function rowOf(lever: Lever, given: Given, plan: Plan): readonly (Answer | undefined)[] {
  const item = itemOf(lever.key);
  const { unit } = item.parameter;
  const now = answerOf(() => plan.inputs[lever.key]) as Answer;
  const none = !playsPart(item, plan) ? noDryer : typeof now === 'number' ? undefined : now;
  if (none) return [item.name, unit, typeof now === 'number' ? now : none, none, none, lever.kind, undefined, undefined];
  // Both searches begin with the same values: each plan is made once.
  const plans = new Map<number, Plan>();
  const planAt = (value: number): Plan => {
    const known = plans.get(value) ?? planOf(given, new Map([[lever.key, value]]));
    plans.set(value, known);
    return known;
  };
  const range = rangeOf(lever, item, plan);
  const found = [covered, paying].map((goal) =>
    lever.onlyMoney && goal === covered
      ? new NoAnswer('it moves the money alone, not what can be made')
      : valueFor(goal, plan, planAt, now as number, item, range),
  );
  const scores = found.map((value) => (typeof value === 'number' ? answerOf(() => planAt(value).udder.fibre_score) : undefined));
  return [item.name, unit, now, ...found, lever.kind, ...scores];
}

export function levers(items: Table, values: Table | undefined) {
  const given = pairUp(items, values);
  const plan = planOf(given);
  return { rows: leversFor(given, plan).map((lever) => rowOf(lever, given, plan)) };
}
