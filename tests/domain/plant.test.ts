import fc from 'fast-check';
import { expect, test } from 'vitest';
import { chimneySpeed, drumTurn, electricityUsed, fanFlow, fanFrequency, fanPower, heatSurplus } from '../../src/domain/plant.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { between } from './between.ts';

test('the setting found for a flow gives that flow', () => {
  fc.assert(
    fc.property(between(100, 50_000), between(20, 70), between(100, 50_000), (rated, rated_hz, wanted) => {
      const { hz } = fanFrequency(rated, rated_hz, wanted);
      expect(Math.abs(fanFlow(rated, rated_hz, hz).m3_h / wanted - 1)).toBeLessThan(1e-12);
    }),
  );
});

test('a fan slowed to half moves half the air for an eighth of the power', () => {
  expect(fanFlow(3200, 50, 25).m3_h).toBeCloseTo(1600, 9);
  expect(fanPower(4, 50, 25).kw).toBeCloseTo(0.5, 12);
});

test('a drum turns slower at a lower frequency', () => {
  expect(drumTurn(2.5, 30, 15).minutes_turn).toBeCloseTo(5, 12);
});

test('a motor draws more than it delivers, and a known shaft power is charged for its losses only', () => {
  expect(electricityUsed(10, 1, 0.7, 0.85).electric_kw).toBeCloseTo(7 / 0.85, 12);
  expect(electricityUsed(6, 100, 1, 0.8).kwh).toBeCloseTo(750, 9);
});

test('heat and electricity never exceed the fuel', () => {
  fc.assert(
    fc.property(between(1, 500), between(0.2, 0.45), between(0.2, 0.5), (electric_kw, electric, heat) => {
      const { fuel_kw, heat_kw } = heatSurplus(electric_kw, electric, heat, 0);
      expect(heat_kw + electric_kw).toBeLessThanOrEqual(fuel_kw * (1 + 1e-12));
    }),
  );
  expect(() => heatSurplus(100, 0.5, 0.6, 0)).toThrow(Refusal);
});

test('an engine whose own users take all its heat has none to give, which is not the same as none at all', () => {
  expect(() => heatSurplus(100, 0.4, 0.4, 100)).toThrow(NoAnswer);
});

test('halving a chimney’s width makes its air four times as fast', () => {
  expect(chimneySpeed(2800, 0.25).speed_m_s).toBeCloseTo(4 * chimneySpeed(2800, 0.5).speed_m_s, 9);
});
