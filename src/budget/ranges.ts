import { number, type Parameter, text } from '../core/parameters.ts';
import { readRow } from '../core/read-table.ts';
import { CellError, isBlank } from '../core/result.ts';
import { quoted } from '../core/words.ts';
import { Refusal } from '../domain/refusal.ts';
import { said } from '../domain/spell.ts';
import { type Draws, drawSpreads, type Spread } from '../domain/uncertainty.ts';
import type { Figure } from './figure.ts';
import { answerOf, type Given } from './given.ts';
import type { Table } from './herd.ts';
import { type BudgetItem, type ItemKey, itemNamed, nameOfItem } from './items.ts';
import { type Plan, planOf } from './plan.ts';
import { clashesOf } from './standing.ts';

/** An item of which nobody knows the exact value, and how far it may lie. */
export interface Range extends Spread {
  readonly item: BudgetItem;
}

const preference = 'is a preference, not a risk';

function itemOfRow(where: string, name: unknown): BudgetItem {
  const item = itemNamed(name);
  if (!item) throw new Refusal(where, `${quoted(name)} is not an item of the budget`, 'enter a name as BEDDING.BUDGET.INPUTS lists it');
  if (item.key === 'discount_rate') throw new Refusal(where, `${item.name} ${preference}`, 'vary it with BEDDING.BUDGET.SWEEP');
  if (!item.parameter.range) throw new Refusal(where, `${item.name} is a word, not a number`, 'compare words with BEDDING.BUDGET.PLANS');
  return item;
}

const columnsOf = ({ parameter: { unit, bounds } }: BudgetItem) => {
  const value = (name: string): Parameter<number> => number(name, unit, `${name} value`, bounds);
  return [text('item', 'name of an item'), value('low'), value('likely'), value('high')] as const;
};

function readRange(where: string, cells: readonly unknown[], plan: Plan): Range {
  const [name, low, likely, high] = cells;
  const item = itemOfRow(where, name);
  if (plan.given.isOut(item)) throw new Refusal(where, `${item.name} plays no part in this plan`, 'take the row out, or say Dryer yes');
  const inUse = isBlank(likely) ? answerOf(() => plan.inputs[item.key]) : likely;
  if (typeof inUse === 'object')
    throw new Refusal(`${where}, likely`, 'is blank, and the plan has no value of its own', `enter it: ${item.parameter.accepts}`);
  const row = readRow(where, columnsOf(item), [name, low, inUse, high]);
  if (row instanceof CellError) throw row;
  const [, lowest, likeliest, highest] = row;
  if (lowest <= likeliest && likeliest <= highest) return { item, low: lowest, likely: likeliest, high: highest };
  throw new Refusal(
    where,
    said`${nameOfItem(item)}: ${lowest}; ${likeliest}; ${highest} do not rise`,
    'enter low at most likely, and likely at most high',
  );
}

/** The ranges of a table; blank rows are passed over. */
export function readRanges(ranges: Table, plan: Plan): readonly Range[] {
  const read = ranges.flatMap((cells, k) => (cells.every(isBlank) ? [] : [readRange(`ranges row ${k + 1}`, cells, plan)]));
  read.forEach(({ item }, k) => {
    const again = read.findIndex((other) => other.item === item);
    if (again !== k) throw new Refusal('ranges (table)', `${item.name} is given twice`, 'enter each item once');
  });
  return read;
}

const roundedIfWhole = ({ parameter }: BudgetItem, value: number): number => (parameter.bounds?.whole ? Math.floor(value + 0.5) : value);

/** What every draw gave: the items' values and the figures asked for; undefined where the plan had no such figure. */
export interface Drawn {
  readonly items: readonly Draws[];
  readonly figures: readonly (readonly (number | undefined)[])[];
}

/** A figure's number in one plan; undefined where there is none. */
function numberIn(plan: Plan, figure: Figure): number | undefined {
  const answer = answerOf(() => figure.value(plan));
  return typeof answer === 'number' && Number.isFinite(answer) ? answer : undefined;
}

/**
 * Plans with every item drawn from its range: triangular, independent of each other, one draw from each of as many equally
 * likely slices. What two items rule out together in a draw leaves that draw without an answer.
 */
export function drawPlans(given: Given, ranges: readonly Range[], figures: readonly Figure[], draws: number, seed: number): Drawn {
  const items = drawSpreads(ranges, draws, seed).map((drawn, k) => drawn.map((value) => roundedIfWhole((ranges[k] as Range).item, value)));
  const answers = figures.map((): (number | undefined)[] => new Array(draws).fill(undefined));
  const changes = new Map<ItemKey, number>();
  for (let draw = 0; draw < draws; draw++) {
    ranges.forEach(({ item }, k) => void changes.set(item.key, (items[k] as Draws)[draw] as number));
    const plan = planOf(given, changes);
    if (clashesOf(plan).length > 0) continue;
    figures.forEach((figure, k) => {
      (answers[k] as (number | undefined)[])[draw] = numberIn(plan, figure);
    });
  }
  return { items, figures: answers };
}
