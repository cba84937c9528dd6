import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { internalRateOfFlows } from '../../src/domain/internal-rate.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';
import { between } from './between.ts';

/** Flows that have these rates and no others: the product of x − (1 + rate) over all of them, first year first. */
function flowsWith(rates: readonly number[]): number[] {
  let flows = [1];
  for (const rate of rates) flows = Array.from({ length: flows.length + 1 }, (_, k) => (flows[k] ?? 0) - (1 + rate) * (flows[k - 1] ?? 0));
  return flows;
}

const rateFrom = between(-0.9, 5);

test('the one rate of an outlay that comes back once is found, from −90 % to 500 %', () => {
  fc.assert(
    fc.property(rateFrom, fc.integer({ min: 1, max: 60 }), (rate, years) => {
      const flows = [-1, ...Array(years - 1).fill(0), (1 + rate) ** years];
      expect(internalRateOfFlows(flows)).toBeCloseTo(rate, 9);
    }),
  );
});

test('two or three rates well apart are all told', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.integer({ min: -8, max: 20 }), { minLength: 2, maxLength: 3 }), (tenths) => {
      const rates = tenths.map((tenth) => tenth / 10).sort((one, other) => one - other);
      const told = rates.map((rate) => `${(100 * rate).toFixed(1)}%`).join(', ');
      expect(() => internalRateOfFlows(flowsWith(rates))).toThrow(told);
    }),
  );
});

test('rates far out are found too, whatever the money is counted in', () => {
  for (const scale of [0.1, 1, 1000]) {
    expect(internalRateOfFlows([-scale, 1000 * scale])).toBeCloseTo(999, 9);
    expect(internalRateOfFlows([-1000 * scale, scale])).toBeCloseTo(-0.999, 12);
  }
});

test('the rate of a level saving is found in about eight steps, so that a hundred thousand rows stay quick', () => {
  const cases = Array.from({ length: 30 }, (_, k) => [0.1, 0.2, 0.3].map((share) => [-1, ...Array(5 + k).fill(share)])).flat();
  const size = vi.spyOn(Math, 'abs');
  for (const flows of cases) internalRateOfFlows(flows);
  const calls = size.mock.calls.length;
  size.mockRestore();
  // One for each flow and two more to bound the rate, then two a step.
  const bounding = cases.reduce((sum, flows) => sum + flows.length + 2, 0);
  expect((calls - bounding) / 2 / cases.length).toBeLessThan(8.5);
});

test('a rate at which the worth only touches nothing is told once', () => {
  expect(internalRateOfFlows([100, -200, 100])).toBe(0);
  expect(internalRateOfFlows([-4, 4, -1])).toBe(-0.5);
  expect(internalRateOfFlows([-100, 240, -144])).toBeCloseTo(0.2, 6);
});

test('more than one rate is told as a sentence, lowest first, without minus nothing', () => {
  expect(() => internalRateOfFlows(flowsWith([0, 0.5]))).toThrow(
    /^there is more than one rate at which it breaks even: 0\.0%, 50\.0%; use NPV instead$/,
  );
  expect(() => internalRateOfFlows([1, 2])).toThrow(/^no rate makes what comes back worth what was paid$/);
});

test('flows that never change sign have no rate', () => {
  for (const flows of [[], [0, 0], [-1, -2], [5, 0, 3]]) expect(() => internalRateOfFlows(flows)).toThrow(NoAnswer);
});

test('idle years before, between and after change nothing', () => {
  expect(internalRateOfFlows([0, 0, -100, 0, 121, 0])).toBeCloseTo(0.1, 12);
  expect(internalRateOfFlows([-121, 100, ...Array(30).fill(0)])).toBeCloseTo(100 / 121 - 1, 12);
});
