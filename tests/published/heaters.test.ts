import { describe, expect, it } from 'vitest';
import { dryingHeat } from '../../src/domain/drying.ts';
import { heatedTemperature, heaterEffectiveness, hotWaterHeat, supplyTemperature } from '../../src/domain/heater.ts';
import { waterDensity } from '../../src/domain/water.ts';

/** The books' air is dry; ours must hold a little water, which adds 0.02 % to its heat capacity. */
const NEARLY_DRY = 0.01;
const litresPerHour = (kg_s: number, t_c: number) => (kg_s * 3600 * 1000) / waterDensity(t_c);
const share = (found: number, printed: number) => Math.abs(found / printed - 1);

/**
 * Holman, Heat Transfer, example 10.11, finned-tube coil: 2.36 m³/s of air enters at 15.55 °C and 101,325 Pa and leaves at
 * 29.44 °C; 0.158 kg/s of water enters at 82.22 °C. Data as seen in worked code; 40.33 kW, 663 W/K, 0.912 and 21.1 °C computed
 * from them. Tolerance 0.3 %: the book's water has 4.196 kJ/kg·K, ours 4.186, and its air is dry.
 */
describe('Holman, example 10.11: a finned coil that heats air', () => {
  const air = [2.36 * 3600, 15.55, NEARLY_DRY] as const;
  const water = [litresPerHour(0.158, 82.22), 82.22] as const;

  it('passes 40.33 kW', () => {
    expect(share(dryingHeat(...air, 29.44, 0, 'ambient').heat_kw, 40.33)).toBeLessThan(0.003);
  });

  it('has the water as the smaller capacity flow, an effectiveness of 0.912, and water leaving at 21.1 °C', () => {
    const coil = heaterEffectiveness(...air, 29.44, ...water, 0, 'ambient');
    expect(coil.water_kj_h_k).toBeLessThan(coil.air_kj_h_k);
    expect(share(coil.water_kj_h_k / 3.6, 663)).toBeLessThan(0.003);
    expect(share(coil.effectiveness, 0.912)).toBeLessThan(0.003);
    const leaves_c = 82.22 - coil.passed_kj_h / coil.water_kj_h_k;
    // 0.3 % of the 61 K that the water falls.
    expect(Math.abs(leaves_c - 21.1)).toBeLessThan(0.2);
  });

  it('warms the air to 29.44 °C, worked from the effectiveness or from the heat', () => {
    // 0.3 % of the 13.89 K that the air rises.
    expect(Math.abs(supplyTemperature(...air, ...water, 0.912, 0, 'ambient').supply_c - 29.44)).toBeLessThan(0.042);
    expect(Math.abs(heatedTemperature(...air, 40.33, 0, 'ambient').supply_c - 29.44)).toBeLessThan(0.042);
  });
});

/**
 * Som, Introduction to Heat Transfer, example 10.7: 10 kg/s of air at 125 °C cooled by 7 kg/s of water at 20 °C, capacity ratio
 * 0.3452, effectiveness 0.9528, 1,010.5 kW, air leaves at 24.95 °C (data seen, answers computed; the book prints 26, rounded
 * on the way). Our heater warms air, so the temperatures are mirrored: an exchanger passes the same heat either way, and the air
 * leaves at 145 − 24.95 °C. Tolerance 0.5 %: the book's air has 1.01 kJ/kg·K.
 */
it('Som, example 10.7, mirrored: air is the smaller capacity flow and 1,010.5 kW pass', () => {
  const one_kg_h_in_m3_h = 1 / dryingHeat(1, 20, NEARLY_DRY, 20, 0, 'ambient').air_kg_h;
  const air = [36_000 * one_kg_h_in_m3_h, 20, NEARLY_DRY] as const;
  const heater = supplyTemperature(...air, litresPerHour(7, 125), 125, 0.9528, 0, 'ambient');
  expect(share(heater.air_kj_h_k / heater.water_kj_h_k, 0.3452)).toBeLessThan(0.007);
  expect(Math.abs(heater.supply_c - (145 - 24.95))).toBeLessThan(0.01);
  expect(share(dryingHeat(...air, heater.supply_c, 0, 'ambient').heat_kw, 1010.5)).toBeLessThan(0.005);
});

it('heat-exchanger textbook (data seen): 1 kg/s of water between 35 and 125 °C is 377.7 kW with 4.197 kJ/kg·K; ours is 4.186, 0.26 % less', () => {
  const { heat_kw } = hotWaterHeat(litresPerHour(1, 125), 125, 35);
  expect(share(heat_kw, (377.7 * 4.186) / 4.197)).toBeLessThan(0.0001);
});
