import { defaultOf } from '../core/bibliography.ts';
import { REFUSED } from '../core/parameters.ts';
import { isBlank } from '../core/result.ts';
import { nameWithUnit, quoted, whyRefused } from '../core/words.ts';
import { type Budget, budget } from '../domain/budget.ts';
import { type BudgetInputs, type Get, Missing } from '../domain/budget-inputs.ts';
import { NoAnswer, Refusal } from '../domain/refusal.ts';
import { spell } from '../domain/spell.ts';
import { type BudgetItem, budgetItems } from './budget-items.ts';

type Key = keyof BudgetInputs;

const itemByName = new Map(budgetItems.map((item) => [item.name.toLowerCase(), item]));
const itemByKey = new Map(budgetItems.map((item) => [item.key, item]));

/** The item of that name, whatever the case and outer spaces. */
export const itemNamed = (name: unknown): BudgetItem | undefined =>
  typeof name === 'string' ? itemByName.get(name.trim().toLowerCase()) : undefined;

/** What was given for one herd: a usable value or the reason why it is not. Nothing is filled in. */
export type GivenInputs = ReadonlyMap<Key, unknown>;

function readItem(item: BudgetItem, cell: unknown): unknown {
  const value = item.parameter.read(cell);
  if (value !== REFUSED) return value;
  const { problem, accepted } = whyRefused(item.parameter, cell);
  return new Refusal(nameWithUnit(item.parameter), problem, accepted);
}

/** A refusal in the words of the items: the equations know `slurry_dm`, the user typed `Slurry dry matter`. */
function inItemWords({ argument, problem, accepted }: Refusal): Refusal {
  const item = itemByKey.get(argument as Key) ?? itemNamed(argument);
  const said = problem.replace(/\b[a-z]+(?:_\w+)+/g, (name) => itemByKey.get(name as Key)?.name ?? name);
  return new Refusal(item ? nameWithUnit(item.parameter) : argument, said, accepted);
}

/** Pairs of item and cell as they stand in two ranges. `place` names where one comes from, for the words of a refusal. */
export function readInputs(pairs: readonly (readonly [name: unknown, cell: unknown])[], place: (k: number) => string): GivenInputs {
  const given = new Map<Key, unknown>();
  const seen = new Set<Key>();
  pairs.forEach(([name, cell], k) => {
    if (isBlank(name) && isBlank(cell)) return;
    const item = itemNamed(name);
    if (!item)
      throw new Refusal(
        place(k),
        isBlank(name) ? 'has a value but no item' : `${quoted(name)} is not an item of the budget`,
        'enter a name as BEDDING.BUDGET.INPUTS lists it',
      );
    if (seen.has(item.key)) throw new Refusal(place(k), `${item.name} is given twice`, 'enter each item once');
    seen.add(item.key);
    if (!isBlank(cell)) given.set(item.key, readItem(item, cell));
  });
  return given;
}

/** One item at another value than was given. */
export interface Change {
  readonly key: Key;
  readonly value: number;
}

/** The inputs as the plan asks for them: given, else the default, else missing. */
function getter(given: GivenInputs, change?: Change): Get {
  const maybe = (key: Key): unknown => {
    const value = (key === change?.key ? change.value : given.get(key)) ?? itemByKey.get(key)?.parameter.fallback?.value;
    if (value instanceof Refusal) throw value;
    return value;
  };
  const need = (key: Key): unknown => {
    const value = maybe(key);
    if (value === undefined) throw new Missing(`${itemByKey.get(key)?.name} is missing: enter ${itemByKey.get(key)?.parameter.accepts}`);
    return value;
  };
  return Object.assign(need, { maybe }) as Get;
}

const motor = { load_factor: defaultOf('motor_load_factor').value, efficiency: defaultOf('motor_efficiency').value };

export const budgetOf = (given: GivenInputs, change?: Change): Budget => budget(getter(given, change), motor);

/** A result of the plan, or the reason why there is none. */
export function answerOf<Value>(work: () => Value): Value | NoAnswer | Refusal {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal) return inItemWords(thrown);
    if (thrown instanceof NoAnswer) return thrown;
    throw thrown;
  }
}

/** The first refused input, or nothing. */
export const refusedInput = (given: GivenInputs): Refusal | undefined => [...given.values()].find((value) => value instanceof Refusal);

/** Defaults that hang on other items, so that none is fixed: what the plan takes in their place. */
const taken: Readonly<Partial<Record<Key, (plan: Budget) => string | number>>> = {
  fibre_kind: (plan) => plan.udder.fibre_kind(),
  bought_density_kg_m3: (plan) => plan.needs.bought_density_kg_m3(),
  bought_dm: (plan) => plan.needs.bought_dm(),
  litres_now: (plan) => plan.get('litres'),
  interval_days_now: (plan) => plan.needs.interval_days_now(),
};

/** Items that play no part without a dryer, so that neither their lack nor their defaults are told. */
export function irrelevant(item: BudgetItem, plan: Budget): boolean {
  if (item.group !== 'Dryer, air and heat' && item.key !== 'heat_price') return false;
  if (item.key === 'target_dm' || item.key === 'fresh_density_kg_m3') return false;
  try {
    return !plan.needs.has_dryer();
  } catch {
    return false;
  }
}

/** What stands in for an item that was not given; undefined where nothing does, or nothing can yet. */
export function standIn({ key, parameter }: BudgetItem, plan: Budget): string | number | undefined {
  const value = parameter.fallback?.value ?? answerOf(() => taken[key]?.(plan));
  return typeof value === 'string' || typeof value === 'number' ? value : undefined;
}

/** Items for which a default stands in, each with its value: `Shrinkage 0.1`. */
export function defaultsUsed(given: GivenInputs, plan: Budget): readonly string[] {
  return budgetItems
    .filter(({ key }) => !given.has(key))
    .filter((item) => !irrelevant(item, plan))
    .flatMap((item) => {
      const value = standIn(item, plan);
      return value === undefined ? [] : `${item.name} ${typeof value === 'number' ? spell(value) : value}`;
    });
}

/** Items that are still needed for the whole answer; water and heat, of which one will do, are one. */
export function stillMissing(given: GivenInputs, plan: Budget): readonly string[] {
  const hasHeat = given.has('water_l_h') || given.has('heat_kw');
  const hasLoan = Number(given.get('borrowed') ?? 0) > 0;
  const lacks = budgetItems.filter((item) => {
    if (given.has(item.key) || !item.needed || irrelevant(item, plan)) return false;
    if (item.needed === 'with a loan') return hasLoan;
    return item.needed !== 'one of two with a dryer' || (!hasHeat && item.key === 'water_l_h');
  });
  return lacks.map(({ name, key }) => (key === 'water_l_h' ? `${name} or ${itemByKey.get('heat_kw')?.name}` : name));
}
