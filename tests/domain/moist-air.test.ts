import { describe, expect, test, vi } from 'vitest';
import {
  dewPoint,
  humidifiedTemperature,
  humidityRatio,
  logSaturationSlope,
  relativeHumidity,
  saturationPressure,
  standardPressure,
} from '../../src/domain/moist-air.ts';

/** Every logarithm is one look at the saturation curve or the vapour's pressure: what solving costs. */
function meanLogarithms(calls: readonly (() => unknown)[]): number {
  const log = vi.spyOn(Math, 'log');
  for (const call of calls) call();
  const { length } = log.mock.calls;
  log.mockRestore();
  return length / calls.length;
}

const from = (start: number, end: number, step: number) =>
  Array.from({ length: Math.floor((end - start) / step) + 1 }, (_, k) => start + k * step);

describe('solving for a temperature takes a handful of steps, so that a hundred thousand rows stay quick', () => {
  test('three for a dew point, beside three logarithms to set out', () => {
    const calls = from(-40, 190, 5).flatMap((t_c) => [0.01, 0.1, 0.3, 0.6, 0.9, 0.99].map((rh) => () => dewPoint(t_c, rh)));
    expect(meanLogarithms(calls)).toBeLessThan(3 + 3.3);
  });

  test('six or seven, of two logarithms each, for air that takes up water', () => {
    const pressure_pa = standardPressure(0);
    const calls = [-30, 0, 20, 40].flatMap((ambient_c) => {
      const w = humidityRatio(ambient_c, 0.8, pressure_pa);
      const warmed = from(ambient_c + 5, 195, 10).flatMap((warm_c) => [0.5, 0.75, 1].map((rh) => [warm_c, rh] as const));
      const drier = warmed.filter(([warm_c, rh]) => relativeHumidity(warm_c, w, pressure_pa) < rh);
      return drier.map(
        ([warm_c, rh]) =>
          () =>
            humidifiedTemperature(warm_c, w, 4.186 * 20, rh, pressure_pa),
      );
    });
    expect(meanLogarithms(calls)).toBeLessThan(1 + 2 * 6.6);
  });
});

describe('at the jump of the saturation pressure at 0 °C', () => {
  test('the curve over water begins at 0 °C itself', () => {
    expect(logSaturationSlope(0)).toBeCloseTo(logSaturationSlope(1e-9), 9);
    expect(logSaturationSlope(-1e-9)).not.toBeCloseTo(logSaturationSlope(0), 3);
  });

  test('air that holds just what lies between ice and water has its dew point there', () => {
    const between_pa = (saturationPressure(-1e-12) + saturationPressure(0)) / 2;
    expect(dewPoint(20, between_pa / saturationPressure(20))).toBe(0);
  });
});
