import fc from 'fast-check';
import { expect, test } from 'vitest';
import { internalRateOfFlows } from '../../src/domain/internal-rate.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';

/** Flows that have these rates and no others: the product of x − (1 + rate) over all of them, first year first. */
function flowsWith(rates: readonly number[]): number[] {
  let flows = [1];
  for (const rate of rates) flows = Array.from({ length: flows.length + 1 }, (_, k) => (flows[k] ?? 0) - (1 + rate) * (flows[k - 1] ?? 0));
  return flows;
}

const rateFrom = fc.double({ min: -0.9, max: 5, noNaN: true });

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

test('flows that never change sign have no rate', () => {
  for (const flows of [[], [0, 0], [-1, -2], [5, 0, 3]]) expect(() => internalRateOfFlows(flows)).toThrow(NoAnswer);
});

test('idle years before, between and after change nothing', () => {
  expect(internalRateOfFlows([0, 0, -100, 0, 121, 0])).toBeCloseTo(0.1, 12);
});
