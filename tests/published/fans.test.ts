import { describe, expect, test } from 'vitest';
import defaults from '../../src/data/defaults.json';
import { electricityUsed, fanFlow, fanPower } from '../../src/domain/plant.ts';

/** Flow in cfm and power in hp: the laws are ratios, so any unit will do. Tolerance: half of the last digit printed. */
describe('fan laws', () => {
  test('worked example (seen): 1,200 → 1,500 turns a minute, 10,000 → 12,500, 5 → 9.77', () => {
    expect(fanFlow(10_000, 1200, 1500).m3_h).toBe(12_500);
    expect(Math.abs(fanPower(5, 1200, 1500).kw - 9.77)).toBeLessThan(0.005);
  });
  test('course sheet on fan laws, question 1 (seen): 2,000 → 1,500 turns a minute, 6,000 → 4,500, 6 → 2.53', () => {
    expect(fanFlow(6000, 2000, 1500).m3_h).toBe(4500);
    expect(Math.abs(fanPower(6, 2000, 1500).kw - 2.53)).toBeLessThan(0.005);
  });
  test('the same, question 2 (seen): 1,300 → 1,500, 2,000 → 2,308, 1.0 → 1.54', () => {
    expect(Math.abs(fanFlow(2000, 1300, 1500).m3_h - 2308)).toBeLessThan(0.5);
    expect(Math.abs(fanPower(1, 1300, 1500).kw - 1.54)).toBeLessThan(0.005);
  });
  test('by hand: 50 → 55 Hz gives 1.10 of the flow for 1.331 of the power', () => {
    expect(fanFlow(1, 50, 55).m3_h).toBeCloseTo(1.1, 12);
    expect(fanPower(1, 50, 55).kw).toBeCloseTo(1.331, 12);
  });
});

/** Electrical Engineering Portal, load-flow sheet (seen): motors to 15 kW, load factor 0.7, efficiency 0.85. */
test('a motor of up to 15 kW defaults to the load factor and efficiency of the load-flow guide', () => {
  expect([defaults.motor_load_factor.value, defaults.motor_efficiency.value]).toEqual([0.7, 0.85]);
  expect(electricityUsed(15, 1, 0.7, 0.85).electric_kw).toBeCloseTo(12.353, 3);
});
