import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { capitalRecovery } from '../../src/domain/annuity.ts';
import {
  boughtCost,
  costPerTonne,
  distinctKeys,
  heatCost,
  homeCost,
  optionsCost,
  ownershipCost,
  spreadingHours,
  updatedPrice,
} from '../../src/domain/cost.ts';
import { Refusal } from '../../src/domain/refusal.ts';
import { between } from './between.ts';

test('a price by volume and the same price by weight buy the same load', () => {
  fc.assert(
    fc.property(between(1, 500), between(20, 2000), (price, density) => {
      expect(costPerTonne(price, density).price_per_t * (density / 1000)).toBeCloseTo(price, 9);
    }),
  );
});

test('a price brought forward in two steps is the price brought forward in one', () => {
  const halfway = updatedPrice(100, 3, 0.04).updated_price;
  expect(updatedPrice(halfway, 4, 0.04).updated_price).toBeCloseTo(updatedPrice(100, 7, 0.04).updated_price, 9);
  expect(updatedPrice(100, 7, -0.04).updated_price).toBeLessThan(100);
});

describe('bought-in bedding', () => {
  test('is hauled in whole loads', () => {
    expect(boughtCost(100, 50, 25, 10)).toEqual({ bedding_year: 5000, loads: 4, haulage_year: 40, cost_year: 5040 });
    expect(boughtCost(100.1, 50, 25, 10).loads).toBe(5);
    expect(boughtCost(30, 50, 0.1, 10).loads).toBe(300);
  });

  test('needs no load where no haulage is charged, but asks for it where it is', () => {
    expect(boughtCost(100, 50, undefined, 0).cost_year).toBe(5000);
    expect(() => boughtCost(100, 50, undefined, 10)).toThrow(Refusal);
    expect(() => boughtCost(100, 50, undefined, 10)).toThrow(/^load_t: is missing although haulage is charged/);
  });
});

describe('ownership', () => {
  test('is the outlay spread evenly where money costs nothing', () => {
    expect(ownershipCost(10_000, 8, 0, 2000).ownership_year).toBeCloseTo(1000, 9);
    expect(ownershipCost(10_000, 8, 1e-12, 2000).ownership_year).toBeCloseTo(1000, 6);
  });

  test('is what is used up, recovered with interest, and interest on what is left', () => {
    fc.assert(
      fc.property(between(1000, 1e6), fc.integer({ min: 1, max: 40 }), between(0, 0.5), between(0, 1), (capital, n, rate, left) => {
        const usual = (1 - left) * capital * capitalRecovery(n, rate) + left * capital * rate;
        expect(Math.abs(ownershipCost(capital, n, rate, left * capital).ownership_year - usual)).toBeLessThan(1e-9 * capital);
      }),
    );
  });
});

test('heat from a poorer boiler takes more fuel', () => {
  expect(heatCost(9000, 0.8, 10, 1).cost).toBeCloseTo(720, 9);
  expect(heatCost(9000, 0.8, 10, 0.5).cost).toBeCloseTo(1440, 9);
});

test('a dispenser that is nearly large enough makes a trip more', () => {
  expect(spreadingHours(100, 20, 1, 2, 6, 365).hours_year).toBeCloseTo(36.5, 9);
  expect(spreadingHours(100, 20, 1, 1.99, 6, 365).hours_year).toBeCloseTo(73, 9);
});

test('home-made bedding costs what its parts cost', () => {
  expect(homeCost(100, 50, 0.2, 4, 15, 500, 600, 0.05, 2, 900, 40)).toEqual({
    power_year: 1000,
    heat_year: expect.closeTo(3000, 9),
    other_year: 200,
    labour_year: 2400,
    cost_year: expect.closeTo(8000, 9),
  });
});

describe('options side by side', () => {
  const option = (material: string, price_per_t: number, extra_year = 0) => ({
    material,
    kg_cubicle_day: 1,
    price_per_t,
    labour_h_week: 7,
    extra_year,
  });
  const keys = (...options: ReturnType<typeof option>[]) => {
    const names = distinctKeys(options.map(({ material }) => material));
    const apart = options.map((one, k) => ({ ...one, material: names[k] as string }));
    return optionsCost(apart, 10, 100, 14).rows.map(([key]) => key);
  };

  test('stand cheapest first, whatever the order given', () => {
    expect(keys(option('straw', 90), option('sand', 20), option('sawdust', 160))).toEqual(['sand', 'straw', 'sawdust']);
    expect(keys(option('straw', 90, -200), option('sand', 20))).toEqual(['straw', 'sand']);
  });

  test('add bedding, labour over the housed weeks and extras, and share them among the cubicles', () => {
    const [row] = optionsCost([option('straw', 90, 50)], 10, 100, 14).rows;
    expect(row).toEqual(['straw', 1, 90, expect.closeTo(1400, 9), 50, expect.closeTo(1540, 9), expect.closeTo(154, 9)]);
  });

  test('keep every key its own, numbered in the order given', () => {
    expect(keys(option('Straw', 3), option('straw', 1), option('straw', 2))).toEqual(['straw 2', 'straw 3', 'Straw']);
    expect(keys(option('straw', 1), option('straw', 2), option('straw 2', 3))).toEqual(['straw', 'straw 3', 'straw 2']);
  });
});
