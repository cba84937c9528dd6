/// <reference types="vite/client" />

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { annuityFactor } from '../../src/domain/annuity.ts';
import { beds } from '../../src/domain/hygiene-factors.ts';
import { materials } from '../../src/domain/materials.ts';
import { equations } from '../../src/functions/equations.ts';

const modules = import.meta.glob('../../src/domain/**/*.ts', { eager: true }) as Record<string, Record<string, unknown>>;
const domain = Object.assign({}, ...Object.values(modules)) as Record<string, unknown>;

const { abs, ceil, exp, log, max, min, round } = Math;
const annuityYears = (factor: number, rate: number, growth: number): number =>
  rate === growth ? factor * (1 + rate) : log(1 - factor * (rate - growth)) / log((1 + growth) / (1 + rate));
const scope: Readonly<Record<string, unknown>> = { ...domain, annuityYears, abs, ceil, exp, log, max, min, round };

function evaluate(sum: string, values: Readonly<Record<string, unknown>>): unknown {
  const all = { ...scope, ...values };
  return new Function(...Object.keys(all), `return (${sum});`)(...Object.values(all));
}

const between = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const given = <Value>(value: fc.Arbitrary<Value>) => fc.option(value, { nil: undefined });
/** Rates as people write them, to a tenth of a per cent. */
const rate = fc.integer({ min: -200, max: 500 }).map((thousandths) => thousandths / 1000);

/** Arguments over which each equation is to hold. */
const samples: Readonly<Record<string, fc.Arbitrary<readonly unknown[]>>> = {
  saturationPressure: fc.tuple(between(-40, 200)),
  humidityRatio: fc
    .tuple(between(-40, 95), between(0.05, 1), between(60_000, 105_000))
    .filter(([t, rh, pressure]) => t < 80 || rh * 101_325 < pressure),
  relativeHumidity: fc.tuple(between(-40, 200), between(0.0001, 0.5), between(60_000, 105_000)),
  enthalpy: fc.tuple(between(-40, 200), between(0, 0.5)),
  specificVolume: fc.tuple(between(-40, 200), between(0, 0.5), between(60_000, 105_000)),
  dewPoint: fc
    .tuple(fc.integer({ min: -300, max: 950 }), fc.integer({ min: 5, max: 100 }))
    .map(([tenths, percent]) => [tenths / 10, percent / 100]),
  waterDensity: fc.tuple(between(0, 150)),
  sphereDrag: fc.tuple(between(0.001, 100_000)),
  annuityFactor: fc.tuple(fc.integer({ min: 1, max: 40 }), rate, rate),
  annuityYears: fc.tuple(between(0.1, 1.5), rate, rate),
  capitalRecovery: fc.tuple(fc.integer({ min: 1, max: 40 }), between(0, 0.5)),
  wholeLoads: fc.tuple(between(0.01, 10_000), between(0.1, 50)),
  dryMatterLevel: fc.tuple(between(0.05, 1)),
  shedLevel: fc.tuple(given(between(-20, 45))),
  udderLevel: fc.tuple(given(between(0, 1))),
  stockingLevel: fc.tuple(given(between(0.1, 3))),
  growthRate: fc.tuple(between(0.05, 1)),
  materialLevel: fc.tuple(given(fc.constantFrom(...materials))),
  bedLevel: fc.tuple(given(fc.constantFrom(...beds))),
  weightIfGiven: fc.tuple(between(0, 20), given(between(0, 1))),
  weightedIfGiven: fc.tuple(between(0, 20), given(between(0, 1))),
};

const near = (found: unknown, expected: unknown): boolean =>
  Object.is(found, expected) || abs((found as number) - (expected as number)) <= 1e-9 * max(1, abs(expected as number));

/** What the line says, beside what the code gives: as an equation, and as plain cells hold it. */
function differences(name: string, values: readonly unknown[]): readonly string[] {
  const line = equations[name] as (typeof equations)[string];
  const answer = (scope[name] as (...given: readonly unknown[]) => unknown)(...values);
  const named = Object.fromEntries(line.of.map((parameter, k) => [parameter, values[k]]));
  const sums = [...('how' in line ? [line.how] : []), ...(line.closed ? [line.closed] : [])];
  const wrong = sums.filter((sum) => !near(evaluate(sum, named), answer));
  if (!('solves' in line)) return wrong;
  const [left = '', right = ''] = line.solves.split('==');
  const [low, high] = line.between.map((end) => evaluate(end, named) as number) as [number, number];
  const found = { ...named, [name]: answer };
  const inside = (answer as number) >= low - 1e-9 && (answer as number) <= high + 1e-9;
  // In the jump of the vapour's pressure at 0 °C the two sides pass each other without meeting.
  const meets = answer === 0 || near(evaluate(left, found), evaluate(right, found));
  return meets && inside ? wrong : [line.solves];
}

/** Held by tests of their own: the score and its inverses, and the chances of counts. */
const told = new Set([
  ...['hygieneScore', 'longestStudied', 'fibreReach'],
  ...['poissonLimits', 'binomialLimits', 'binomialAtLeast', 'binomialAtMost', 'recordPower', 'studentQuantile'],
]);

describe('the equation of', () => {
  it.each(Object.keys(equations).filter((name) => !told.has(name)))('%s is what the code works out', (name) => {
    const property = fc.property(samples[name] ?? expect.fail(`${name} has no sample`), (values) => {
      expect(differences(name, values)).toEqual([]);
    });
    fc.assert(property);
  });

  it('annuityYears turns annuityFactor round', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), between(0, 0.3), between(-0.1, 0.1), (years, discount, growth) => {
        fc.pre(abs(discount - growth) > 1e-4);
        expect(annuityYears(annuityFactor(years, discount, growth), discount, growth)).toBeCloseTo(years, 5);
      }),
    );
  });
});
