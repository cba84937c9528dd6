import fc from 'fast-check';
import { expect, it } from 'vitest';
import { driedYield, finalDryMatter, waterToEvaporate } from '../../src/domain/mass-balance.ts';
import { Refusal } from '../../src/domain/refusal.ts';
import { between } from './between.ts';

const mass = between(0.001, 1e6);
const dryMatters = fc.tuple(between(0.05, 1), between(0.05, 1)).filter(([dm_in, dm_out]) => dm_in < dm_out);
const near = (found: number, expected: number, size = expected) =>
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(1e-9 * Math.abs(size));

it('makes and loses neither mass nor dry matter', () => {
  fc.assert(
    fc.property(mass, dryMatters, (wet, [dm_in, dm_out]) => {
      const { dried } = driedYield(wet, dm_in, dm_out);
      const balance = waterToEvaporate(dried, dm_in, dm_out);
      near(balance.wet, wet);
      near(dried + balance.water, wet);
      near(dried * dm_out, wet * dm_in);
    }),
  );
});

it('reaches the dry matter for which just that water was taken', () => {
  fc.assert(
    fc.property(mass, dryMatters, (wet_kg_h, [dm_in, dm_out]) => {
      const { dried } = driedYield(wet_kg_h, dm_in, dm_out);
      near(finalDryMatter(wet_kg_h, dm_in, wet_kg_h - dried).dm_out, dm_out);
    }),
  );
});

it('leaves nothing but dry matter when all the water is taken, and the same material when none is', () => {
  expect(finalDryMatter(100, 0.35, 65).dm_out).toBe(1);
  // 65 with the digits that another way of working it out leaves.
  expect(finalDryMatter(100, 0.35, 65.00000000000001).dm_out).toBe(1);
  expect(finalDryMatter(100_000, 0.35, 65_000.00001).dm_out).toBe(1);
  expect(finalDryMatter(100, 0.35, 0).dm_out).toBe(0.35);
});

it('refuses to take more water than there is, and says how much there is', () => {
  expect(() => finalDryMatter(100, 0.35, 66)).toThrow(
    new Refusal(
      'evaporation_kg_h',
      '66 is more than the 65 kg of water an hour in the material',
      'enter less evaporation, or more or wetter material',
    ),
  );
});

it.each([
  ['alike', 0.6, 0.6],
  ['swapped', 0.6, 0.35],
])('refuses dry matters that are %s', (_, dm_in, dm_out) => {
  const refusal = new Refusal('dm_in', `${dm_in} is not below dm_out ${dm_out}`, 'enter a dry matter below that of the dried fibre');
  expect(() => waterToEvaporate(100, dm_in, dm_out)).toThrow(refusal);
  expect(() => driedYield(100, dm_in, dm_out)).toThrow(refusal);
});
