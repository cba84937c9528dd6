import fc from 'fast-check';
import { expect, test } from 'vitest';
import figures from '../../src/data/materials.json';
import references from '../../src/data/references.json';
import { densityOf, driedDensity, dryMatterOf, materials, materialTable, ovenDryMatter } from '../../src/domain/materials.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { withSourceNames } from '../../src/domain/source-name.ts';
import { between } from './between.ts';

test('a reference figure never claims more than its source: one that was not checked stays marked so', () => {
  for (const row of Object.values(figures))
    for (const figure of Object.values(row))
      if ('source' in figure && figure.source === 'unchecked') expect(figure.status).toBe('memory');
      else if ('source' in figure && figure.source === 'project') expect(figure.status).toBe('judgement');
      else if ('source' in figure) expect(references).toHaveProperty([figure.source, 'status'], figure.status);
});

test('a material without a figure says what to measure', () => {
  expect(() => densityOf('digested fibre')).toThrow(/weigh a bucket/);
  expect(() => dryMatterOf('composted fibre')).toThrow(/test a sample/);
  expect(() => densityOf('composted fibre')).toThrow(NoAnswer);
});

test('the table has one row per material, keyed by its name, and says why a figure is missing', () => {
  const { rows } = materialTable();
  expect(rows.map(([name]) => name)).toEqual(materials);
  expect(rows[0]?.slice(0, 4)).toEqual(['sawdust', 178, 0.9, 0.9]);
  for (const row of rows)
    for (const cell of row) expect(typeof cell === 'number' || typeof cell === 'string' || cell instanceof NoAnswer).toBe(true);
  expect(rows[0]?.[5]).toBe('density seen; dry matter memory; use seen');
  expect(rows.find(([name]) => name === 'limestone')?.slice(4)).toEqual([
    'density NRCS field handbook, chapter 4; dry matter this project’s own choice',
    'density memory; dry matter judgement',
  ]);
  const digested = rows.find(([name]) => name === 'digested fibre');
  expect(digested?.[1]).toBeInstanceOf(NoAnswer);
  expect(digested?.[4]).toBe('no figures held');
});

test('published figures that disagree with a default stand beside its source', () => {
  const sawdust = String(materialTable().rows[0]?.[4]);
  expect(sawdust).toContain('192 in NRCS field handbook, chapter 4, memory');
  expect(sawdust).toContain('208 in Ahn and others 2020');
});

test('a source in the midst of a text is named in words, and what only looks like one is left', () =>
  expect(withSourceNames('0.50 where it is green, not kiln-dried; 192 in nrcs-651-4, memory')).toBe(
    '0.50 where it is green, not kiln-dried; 192 in NRCS field handbook, chapter 4, memory',
  ));

test('drying keeps the dry matter of a heap, whatever its shrinkage', () => {
  const dm = between(0.05, 1);
  fc.assert(
    fc.property(between(50, 700), dm, dm, between(0, 0.5), (density, a, b, shrinkage) => {
      fc.pre(a < b);
      const dried = driedDensity(density, a, b, shrinkage);
      expect(Math.abs((dried.dried_density_kg_m3 * dried.volume_kept * b) / (density * a) - 1)).toBeLessThan(1e-12);
    }),
  );
});

test('fibre does not dry to its own dry matter or wetter', () => {
  expect(() => driedDensity(300, 0.6, 0.6, 0.1)).toThrow(Refusal);
  expect(() => driedDensity(300, 0.6, 0.35, 0.1)).toThrow('dm_in: 0.6 is not below dm_out 0.35');
});

test('an oven test gives the same dry matter tared or with its container', () => {
  expect(ovenDryMatter(300, 105, 0).dm).toBeCloseTo(0.35, 12);
  expect(ovenDryMatter(350, 155, 50).dm).toBeCloseTo(0.35, 12);
});

test('weighings that cannot be are refused', () => {
  expect(() => ovenDryMatter(0.25, 0.1 + 0.2, 0)).toThrow(/^dry_g: 0.3 is above wet_g 0.25; a sample cannot gain weight/);
  expect(() => ovenDryMatter(300, 50, 50)).toThrow(/container_g/);
  expect(() => ovenDryMatter(300, 105, 120)).toThrow(/empty container/);
});
