import { REFUSED } from '../core/parameters.ts';
import { isBlank } from '../core/result.ts';
import { quoted, whyRefused } from '../core/words.ts';
import { NoAnswer, Refusal } from '../domain/refusal.ts';
import { said } from '../domain/spell.ts';
import { type BudgetItem, budgetItems, type Inputs, type ItemKey, itemCalled, itemNamed, itemOf, nameOfItem } from './items.ts';

/** An item that is needed was not given. */
export class Missing extends NoAnswer {}

/** Items at other values than were given; undefined takes an item out, as if it had not been given. */
export type Changes = ReadonlyMap<ItemKey, unknown>;

const defaults: readonly unknown[] = budgetItems.map(({ parameter }) => parameter.fallback?.value);
const following = budgetItems.filter(({ follows }) => follows !== undefined);

/** Whether another item takes this one out of the plan. */
const isOut = ({ unless }: BudgetItem, values: readonly unknown[]): boolean =>
  unless !== undefined && values[itemOf(unless.item).place] === unless.is;

/**
 * What was given for one herd, by item: a usable value, or the refusal that says why it is not. `inputs` hands out what the
 * plan goes by: what was given, else the default, else what another item gives.
 */
export class Given {
  /** By the item's place; undefined where it was not given. Nothing is filled in. */
  private readonly typed: readonly unknown[];
  /** The same with what stands in. */
  private readonly values: readonly unknown[];
  readonly inputs: Inputs;

  constructor(typed: readonly unknown[], values: readonly unknown[]) {
    this.typed = typed;
    this.values = values;
    this.inputs = new Taken(values) as unknown as Inputs;
  }

  has(key: ItemKey): boolean {
    return this.typed[itemOf(key).place] !== undefined;
  }

  /** What was typed for it, or its refusal; undefined where nothing was. */
  get(key: ItemKey): unknown {
    return this.typed[itemOf(key).place];
  }

  /** The input, or undefined where the plan has none; a refused one is thrown. For what a plan can do without. */
  maybe<Key extends ItemKey>(key: Key): Inputs[Key] | undefined {
    return this.values[itemOf(key).place] === undefined ? undefined : this.inputs[key];
  }

  /** Every refusal of what was typed, in the order of the items. */
  get refused(): readonly Refusal[] {
    return this.typed.filter((value) => value instanceof Refusal);
  }

  /** Whether another item takes this one out of the plan, whatever was typed for it. */
  isOut(item: BudgetItem): boolean {
    return isOut(item, this.values);
  }

  /** The refusal of an item that another rules out, both usable by themselves; or nothing. */
  clash(item: BudgetItem): Refusal | undefined {
    return clashOf(item, this.values);
  }

  /**
   * The same herd with some items at other values. What follows another item (`Litres now`, `Days now`) stays what it was
   * taken to be here, unless it is itself among the changes; it does not thereby count as given. A changed item that another
   * took out of the plan takes effect.
   */
  changed(changes: Changes): Given {
    const [typed, values] = [this.typed.slice(), this.values.slice()];
    for (const { place, follows } of following) {
      if (values[place] === undefined) values[place] = values[itemOf(follows as ItemKey).place];
    }
    for (const [key, value] of changes) {
      const item = itemOf(key);
      const { place, unless } = item;
      if (unless && value !== undefined && isOut(item, values) && !changes.has(unless.item)) {
        typed[itemOf(unless.item).place] = values[itemOf(unless.item).place] = undefined;
      }
      typed[place] = value;
      values[place] = value ?? defaults[place];
    }
    return new Given(typed, values);
  }
}

/** The inputs of a plan, each a getter: throws a Refusal where what was typed cannot be used, Missing where nothing stands in. */
class Taken {
  readonly values: readonly unknown[];

  constructor(values: readonly unknown[]) {
    this.values = values;
  }
}

/** The refusal of an item that another rules out; nothing where either is missing or refused by itself. */
function clashOf(item: BudgetItem, values: readonly unknown[]): Refusal | undefined {
  const { against, place } = item;
  if (!against || isOut(item, values)) return undefined;
  const [value, other] = [values[place], values[itemOf(against.item).place]];
  if (typeof value !== 'number' || typeof other !== 'number') return undefined;
  const { aboveIf } = against;
  const is = aboveIf && values[itemOf(aboveIf.item).place] === aboveIf.is ? 'above' : against.is;
  const isFine = is === 'at most' ? value <= other : is === 'at least' ? value >= other : value > other;
  if (isFine) return undefined;
  const how = { 'at most': 'is above', 'at least': 'is below', above: 'is not above' }[is];
  return new Refusal(nameOfItem(item), said`${value} ${how} ${against.called} ${other}`, `enter ${against.enter}`);
}

function getterOf(item: BudgetItem): (this: Taken) => unknown {
  const { place, follows, standIn, unless, against, name, parameter } = item;
  const missing = new Missing(`${name} is missing: enter ${parameter.accepts}`);
  const otherwise = (inputs: Inputs): unknown => {
    if (follows) return inputs[follows];
    if (!standIn) throw missing;
    return (standIn.by as (...values: unknown[]) => unknown)(...standIn.of.map((key) => inputs[key]));
  };
  return function (this: Taken) {
    const ruling = unless && this.values[itemOf(unless.item).place];
    if (typeof ruling === 'object') throw ruling;
    if (unless && ruling === unless.is) return (this as unknown as Inputs)[unless.as];
    const value = this.values[place];
    if (value === undefined) return otherwise(this as unknown as Inputs);
    if (typeof value === 'object') throw value;
    const refusal = against && clashOf(item, this.values);
    if (refusal) throw refusal;
    return value;
  };
}

for (const item of budgetItems) Object.defineProperty(Taken.prototype, item.key, { get: getterOf(item) });

function readItem(item: BudgetItem, cell: unknown): unknown {
  const value = item.parameter.read(cell);
  if (value !== REFUSED) return value;
  const { problem, accepted } = whyRefused(item.parameter, cell);
  return new Refusal(nameOfItem(item), problem, accepted);
}

/**
 * The items that names in a range stand for, each once; undefined where the cell is blank.
 *
 * @param place names where a name stands, for the words of a refusal
 */
export function readNames(names: readonly unknown[], place: (k: number) => string): readonly (BudgetItem | undefined)[] {
  const seen = new Set<BudgetItem>();
  return names.map((name, k) => {
    if (isBlank(name)) return undefined;
    const item = itemNamed(name);
    if (!item)
      throw new Refusal(place(k), `${quoted(name)} is not an item of the budget`, 'enter a name as BEDDING.BUDGET.INPUTS lists it');
    if (seen.has(item)) throw new Refusal(place(k), `${item.name} is given twice`, 'enter each item once');
    seen.add(item);
    return item;
  });
}

/** One herd's cells, in the order of their items. */
export function readCells(items: readonly (BudgetItem | undefined)[], cells: readonly unknown[], place: (k: number) => string): Given {
  const typed: unknown[] = new Array(budgetItems.length).fill(undefined);
  const values = defaults.slice();
  for (const [k, item] of items.entries()) {
    const cell = cells[k];
    if (isBlank(cell)) continue;
    if (!item) throw new Refusal(place(k), 'has a value but no item', 'enter a name as BEDDING.BUDGET.INPUTS lists it');
    typed[item.place] = values[item.place] = readItem(item, cell);
  }
  return new Given(typed, values);
}

/** Pairs of item and cell as they stand in two ranges. */
export function readInputs(pairs: readonly (readonly [name: unknown, cell: unknown])[], place: (k: number) => string): Given {
  const items = readNames(
    pairs.map(([name]) => name),
    place,
  );
  return readCells(
    items,
    pairs.map(([, cell]) => cell),
    place,
  );
}

/** A refusal in the words of the items: the equations know `slurry_dm`, the user typed `Slurry dry matter`. */
function inItemWords({ argument, problem, accepted }: Refusal): Refusal {
  const item = itemCalled(argument);
  const said = problem.replace(/\b[a-z]+(?:_\w+)+/g, (name) => itemCalled(name)?.name ?? name);
  return new Refusal(item ? nameOfItem(item) : argument, said, accepted);
}

/** An answer of the plan, or the reason why there is none. */
export function answerOf<Value>(work: () => Value): Value | NoAnswer | Refusal {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof Refusal) return inItemWords(thrown);
    if (thrown instanceof NoAnswer) return thrown;
    throw thrown;
  }
}

/** What is said of a plan; where that rests on what is missing or refused, the reason is said instead. */
export function saidOf<Plan>(words: string | ((plan: Plan) => string), plan: Plan): string {
  if (typeof words === 'string') return words;
  const said = answerOf(() => words(plan));
  return typeof said === 'string' ? said : said.message;
}

/** What `work` gives, or `otherwise` where there is no answer. What is missing stays missing. */
export function ifNone<Value>(work: () => Value, otherwise: Value): Value {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof NoAnswer && !(thrown instanceof Missing)) return otherwise;
    throw thrown;
  }
}
