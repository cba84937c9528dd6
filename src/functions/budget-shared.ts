import { maybe, table } from '../core/parameters.ts';
import herd from '../data/example-herd.json';

/** What the functions of the budget share. */

export const itemsAndValues = [
  table('items', 'names of the budget’s items, in any order'),
  maybe(table('values', 'their values, beside them; blank where not given'), 'nothing given yet'),
] as const;

/** What the plan rests on as a whole; each result names the functions that hold the rest. */
export const planSources = ['mass-balance', 'ashrae-2017', 'iowa-c1-50', 'engineering-economy', 'project'] as const;

/** The herd of the examples, as two columns. */
export const exampleHerd = { items: Object.keys(herd).map((name) => [name]), values: Object.values(herd).map((value) => [value]) };
export const workedApart = 'an invented herd, worked independently of this code from the same equations';

export const resultsAsked = (usual: readonly string[]) => maybe(table('results', 'keys of the results wanted'), usual.join('; '));
