import { describe, expect, test } from 'vitest';
import references from '../../src/data/references.json';

const tables = import.meta.glob<unknown>('../../src/data/*.json', { eager: true, import: 'default' });

interface Row {
  readonly path: string;
  readonly source: string;
  readonly status: unknown;
}

/** Every object of a data file that names a source, at whatever depth. */
function rowsOf(path: string, value: unknown): Row[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.entries(value).flatMap(([key, part]) => rowsOf(`${path}/${key}`, part));
  return 'source' in value
    ? [{ path, source: String(value.source), status: 'status' in value ? value.status : undefined }, ...inside]
    : inside;
}

const rows = Object.entries(tables).flatMap(([path, value]) => rowsOf(path.replace(/.*\//, ''), value));
const statuses = ['seen', 'quoted', 'memory', 'computed', 'practice', 'judgement'];
/** How far a figure can be trusted, most first: a row may be as good as its source was read, never better. */
const rank = (status: unknown) => ['seen', 'quoted', 'memory'].indexOf(String(status));

describe('figures held as data', () => {
  test('name a source that the bibliography lists, and a known status', () => {
    expect(rows.length).toBeGreaterThan(100);
    expect(rows.filter(({ source }) => !(source in references))).toEqual([]);
    expect(rows.filter(({ status }) => !statuses.includes(String(status)))).toEqual([]);
  });

  test('never claim to be better known than the source they cite', () => {
    const better = rows.filter(({ source, status }) => {
      const held = rank(references[source as keyof typeof references]?.status);
      return held >= 0 && rank(status) >= 0 && rank(status) < held;
    });
    expect(better).toEqual([]);
  });
});
