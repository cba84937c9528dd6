import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cubicleDemand, dispenserLoads, herdDemand, layingDepth, sameVolume, wholeLoads } from '../../src/domain/demand.ts';
import { between } from './between.ts';

const positive = (max: number) => fc.double({ min: 1e-3, max, noNaN: true });

test('a layer twice as deep takes twice the litres', () => {
  expect(layingDepth(2, 1.2, 0.05).litres).toBeCloseTo(120, 9);
  expect(layingDepth(2, 1.2, 0.1).litres).toBeCloseTo(240, 9);
});

test('bedding laid half as often for the same litres halves the daily kilograms', () => {
  expect(cubicleDemand(20, 2, 178).kg_cubicle_day).toBeCloseTo(cubicleDemand(20, 1, 178).kg_cubicle_day / 2, 12);
});

test('what is bought, less what is lost, is what is laid', () => {
  fc.assert(
    fc.property(positive(5000), positive(50), positive(366), between(0, 0.9), (cubicles, kg, days, loss) => {
      const { laid_t_year, t_year } = herdDemand(cubicles, kg, days, loss);
      expect(t_year * (1 - loss)).toBeCloseTo(laid_t_year, 6);
      expect(t_year).toBeGreaterThanOrEqual(laid_t_year);
    }),
  );
});

test('swapping a material for another and back gives the first mass again', () => {
  fc.assert(
    fc.property(positive(1e4), positive(2000), positive(2000), (kg, from, to) => {
      const back = sameVolume(sameVolume(kg, from, to).kg_other, to, from).kg_other;
      expect(Math.abs(back / kg - 1)).toBeLessThan(1e-12);
    }),
  );
});

test('loads always carry everything, and one load less would not', () => {
  fc.assert(
    fc.property(positive(5000), positive(500), positive(20), (cubicles, litres, dispenser_m3) => {
      const { bedding_m3, loads } = dispenserLoads(cubicles, litres, dispenser_m3);
      expect(loads * dispenser_m3).toBeGreaterThanOrEqual(bedding_m3 * (1 - 1e-8));
      expect((loads - 1) * dispenser_m3).toBeLessThan(bedding_m3);
    }),
  );
});

test('a quantity that fills its loads exactly is not rounded up by binary noise', () => {
  expect(30 / 0.1).toBe(300);
  expect(0.3 / 0.1).toBeLessThan(3);
  expect(wholeLoads(30, 0.1)).toBe(300);
  expect(wholeLoads(0.3, 0.1)).toBe(3);
  expect(wholeLoads(2.1, 0.7)).toBe(3);
  expect(1.1 * 3).toBeGreaterThan(3.3);
  expect(wholeLoads(1.1 * 3, 1.1)).toBe(3);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), fc.integer({ min: 1, max: 1000 }), (loads, tenths) => {
      expect(wholeLoads(loads * (tenths / 10), tenths / 10)).toBe(loads);
    }),
  );
});

test('the least bit over a full load is another load, and nothing is none', () => {
  expect(wholeLoads(30.001, 0.1)).toBe(301);
  expect(wholeLoads(1e-6, 10)).toBe(1);
  expect(wholeLoads(0, 10)).toBe(0);
});
