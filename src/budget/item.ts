import { type DefaultName, defaultOf } from '../core/bibliography.ts';
import { type Bounds, choice, maybe, number, optional, type Parameter, yesNo } from '../core/parameters.ts';
import type { Unit } from '../core/units.ts';

/** How an item of the budget is written down, once; items.ts lists them all and derives the rest. */

export const groups = [
  'Herd and beds',
  'Bedding bought now',
  'Slurry and press',
  'Dryer, air and heat',
  'Kit and money',
  'Udder health',
  'Permission',
] as const;
export type Group = (typeof groups)[number];

/** How the user came by a value, surest first: its doubt goes by it. The heading under which it is marked. */
export const waysOfKnowing = ['measured', 'read off', 'told', 'guessed'] as const;
export const howKnown = 'how known';

/** Plans in which an item plays a part; in others neither its lack nor its default is told. */
export type Only = 'with a dryer' | 'with a loan';

/** What stands in for an item that was not given, worked out from other items. */
export interface StandIn<Others extends string> {
  /** The items it comes from, by key. */
  readonly of: readonly Others[];
  readonly by: (...values: never[]) => string | number;
  /** The same as a formula of the sheet, given the cells of those items. */
  readonly formula: (...cells: string[]) => string;
}

/** Which value of which item takes another out of the plan, and the item whose value is taken then. */
export interface Unless<Others extends string> {
  readonly item: Others;
  readonly is: string;
  readonly as: Others;
}

/** What another item rules out, and the words in which it is refused. */
export interface Against<Others extends string> {
  readonly is: 'at most' | 'at least' | 'above';
  readonly item: Others;
  /** Where that item has that value, being equal is ruled out too. */
  readonly aboveIf?: { readonly item: Others; readonly is: string };
  /** The other item as the refusal names it, and in the one or two words that the check column has room for. */
  readonly called: string;
  readonly short: string;
  /** What to enter instead. */
  readonly enter: string;
}

export interface ItemEntry<Value = unknown, Others extends string = string> {
  /** Permanent: users' sheets hold it. */
  readonly name: string;
  /** Unit, bounds, default and reading, as those of any function's argument. */
  readonly parameter: Parameter<Value>;
  readonly group: Group;
  /** What to look at on the walk. */
  readonly look: string;
  /** What is common on farms, where we hold a figure; a value outside it deserves a second look. */
  readonly usual?: readonly [lowest: number, highest: number];
  readonly only?: Only;
  /** No plan can do without it, where it plays a part. */
  readonly needed?: true;
  /** A plan can do without it, but what stands in decides so much that it is asked for with what is needed. */
  readonly asked?: true;
  /** Another item that will do in its place: neither its lack nor its default is told where that one is given. */
  readonly instead?: Others;
  /** Taken to be as another item where not given; it stays what it was taken to be while that item varies. */
  readonly follows?: Others;
  readonly standIn?: StandIn<Others>;
  /** Where that item has that value, this one plays no part, whatever was typed, and another's value is taken. */
  readonly unless?: Unless<Others>;
  readonly against?: Against<Others>;
}

interface Extra<Others extends string> extends Omit<ItemEntry<unknown, Others>, 'name' | 'parameter' | 'group' | 'look' | 'only'> {
  readonly default?: DefaultName;
  /** What happens where it is left empty and nothing is assumed. */
  readonly empty?: string;
}

/** A group's own builder, so that each entry reads: name, unit, bounds, what to look at, and what else there is to it. */
export function inGroup(group: Group, only?: Only) {
  function entry<Value, const Others extends string>(
    bare: Parameter<Value>,
    { default: held, empty, ...rest }: Extra<Others>,
  ): ItemEntry<Value, Others> {
    const parameter = held ? optional(bare, defaultOf(held)) : empty === undefined ? bare : (maybe(bare, empty) as Parameter<Value>);
    return { name: parameter.name, parameter, group, look: parameter.says, ...(only && { only }), ...rest };
  }
  return {
    number: <const Others extends string = never>(
      name: string,
      unit: Unit,
      bounds: Bounds,
      look: string,
      extra: Extra<Others> = { needed: true },
    ) => entry<number, Others>(number(name, unit, look, bounds), extra),
    date: (name: string, look: string, extra: Extra<never>) =>
      entry<number, never>({ ...number(name, 'date', look), accepts: 'a date that the sheet knows as one, not as text' }, extra),
    choice: <const Choices extends readonly [string, ...string[]], const Others extends string = never>(
      name: string,
      choices: Choices,
      look: string,
      extra: Extra<Others>,
    ) => entry<Choices[number], Others>(choice(name, look, choices), extra),
    yesNo: (name: string, look: string, extra: Extra<never>) => entry<'yes' | 'no', never>(yesNo(name, look), extra),
  };
}

export const range = (min: number, max: number): Bounds => ({ min, max });
