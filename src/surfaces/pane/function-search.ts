import MiniSearch from 'minisearch';
import type { FunctionRecord } from '../../core/define.ts';
import { registry } from '../../functions/index.ts';

const idle: ReadonlySet<string> = new Set(
  'a an and are at be by can do does for from have how i in is it many me much my of on or should that the to we what when which will with'.split(
    ' ',
  ),
);

/** Farm words as they are typed: without idle words and plural endings. */
const term = (word: string): string | null => (idle.has(word.toLowerCase()) ? null : word.toLowerCase().replace(/(?<=\w{3})(?:es|s)$/, ''));

const index = new MiniSearch<FunctionRecord & { readonly arguments: string }>({
  idField: 'name',
  fields: ['name', 'finds', 'summary', 'arguments'],
  processTerm: term,
  searchOptions: { prefix: true, fuzzy: (word) => (word.length > 4 ? 0.2 : false), boost: { name: 3, finds: 3, summary: 2 } },
});
index.addAll(
  registry.map((record) => ({
    ...record,
    arguments: record.parameters.map(({ name, says }) => `${name.replaceAll('_', ' ')} ${says}`).join(' '),
  })),
);

const byName = new Map(registry.map((record) => [record.name, record]));

/** The functions that a search finds, best first; all of them, in their own order, where nothing is searched for. */
export function findFunctions(query: string): readonly FunctionRecord[] {
  const words = query.replace(/^=?BEDDING\./i, '').trim();
  if (words === '') return registry;
  const found = index.search(words).map(({ id }) => byName.get(id) as FunctionRecord);
  const isNamed = ({ name }: FunctionRecord): boolean => name.toLowerCase().includes(words.toLowerCase());
  return [...found.filter(isNamed), ...found.filter((record) => !isNamed(record))];
}
