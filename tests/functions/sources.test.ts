import { describe, expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { bibliography } from '../../src/core/bibliography.ts';
import { call } from '../../src/core/call.ts';
import { explain } from '../../src/core/working.ts';
import { registry } from '../../src/functions/index.ts';

const files = import.meta.glob<unknown>('../../src/data/*.json', { eager: true, import: 'default' });
/** An invented herd is no figure that anyone relies on; the references are the sources themselves. */
const noFigures = ['example-herd.json', 'references.json'];
const data = Object.entries(files)
  .map(([path, value]) => [path.replace(/.*\//, ''), value] as const)
  .filter(([file]) => !noFigures.includes(file));

/** What stands beside a figure and is not itself one. */
const labels = ['source', 'status', 'missing'];

/** Every number or text held as data that has no source and status beside or above it, nor a reason why it is missing. */
function unsourced(path: string, value: unknown, sourced: boolean): string[] {
  if (typeof value !== 'object' || value === null) return sourced ? [] : [path];
  const own = 'missing' in value || ('source' in value && 'status' in value);
  return Object.entries(value)
    .filter(([key]) => !labels.includes(key))
    .flatMap(([key, part]) => unsourced(`${path}/${key}`, part, sourced || own));
}

/** Every source that a data file names, in its own field or within a text. */
function named(value: unknown): string[] {
  if (typeof value === 'string') return value.match(/\b[a-z0-9]+(?:-[a-z0-9]+)+\b/g) ?? [];
  if (typeof value !== 'object' || value === null) return [];
  return [...('source' in value ? [String(value.source)] : []), ...Object.values(value).flatMap(named)];
}

const ids = bibliography.map(({ id }) => id as string);

describe('figures and their sources', () => {
  it.each(data)('%s holds no figure without a source and a status', (file, value) => {
    expect(unsourced(file, value, false)).toEqual([]);
  });

  it('every source in the list is used by a function, a step, a default or a figure', () => {
    const used = new Set<string | undefined>([
      ...registry.flatMap(({ sources, working }) => [...sources, ...Object.values(working).map(({ source }) => source)]),
      ...registry.flatMap(({ parameters }) => parameters.map(({ fallback }) => fallback?.source)),
      ...budgetItems.map(({ parameter }) => parameter.fallback?.source),
      ...data.flatMap(([, value]) => named(value)),
    ]);
    expect(ids.filter((id) => !used.has(id))).toEqual([]);
  });

  it('every default of the data is taken by an argument or an item of the budget', () => {
    const taken = new Set(
      [...registry.flatMap(({ parameters }) => parameters), ...budgetItems.map(({ parameter }) => parameter)].map(
        ({ fallback }) => fallback,
      ),
    );
    const defaults = Object.entries(files['../../src/data/defaults.json'] as Record<string, never>);
    expect(defaults.filter(([, held]) => !taken.has(held)).map(([name]) => name)).toEqual([]);
  });

  it.each(registry.map(({ name, sources }) => [name, sources] as const))('%s names its sources, each once', (_, sources) => {
    expect(sources.length).toBeGreaterThan(0);
    expect(new Set(sources).size).toBe(sources.length);
    expect(sources.filter((id) => !ids.includes(id))).toEqual([]);
  });

  it('every source has a short name of its own', () => {
    expect(new Set(bibliography.map(({ name }) => name)).size).toBe(bibliography.length);
    for (const { name } of bibliography) expect(name).toMatch(/^.{3,45}$/);
  });
});

describe('what a user reads', () => {
  /** Ids of two words and more: one word alone, such as project, may well stand in a sentence. */
  const spoken = ids.filter((id) => id.includes('-') && id !== 'fan-laws' && id !== 'mass-balance' && id !== 'numpy-financial');
  const holdsId = (text: unknown): boolean => spoken.some((id) => String(text).includes(id));
  const calls = registry
    .filter(({ name }) => name !== 'SOURCES')
    .flatMap((record) => record.examples.map((example, k) => [`${record.name} ${k + 1}`, record, example] as const));

  it.each(calls)('%s speaks of sources in words, in its answer and in its working', (_, record, example) => {
    expect(call(record, example.call).flat().filter(holdsId)).toEqual([]);
    expect(
      explain(record, example.call)
        .flatMap((step) => Object.values(step))
        .filter(holdsId),
    ).toEqual([]);
  });
});
