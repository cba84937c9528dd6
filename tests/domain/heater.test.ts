import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dryingHeat } from '../../src/domain/drying.ts';
import { heatedTemperature, heaterEffectiveness, hotWaterHeat, supplyTemperature } from '../../src/domain/heater.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { between } from './between.ts';
import { thrownBy } from './thrown-by.ts';

const outdoor = fc.record({ ambient_c: between(-30, 45), ambient_rh: between(0.05, 1) });
const site = fc.record({ altitude_m: between(-400, 4000), air_at: fc.constantFrom('supply' as const, 'ambient' as const) });
const air_m3_h = between(50, 100_000);

describe('hot water', () => {
  it('gives off nothing where it comes back as hot as it went', () => {
    expect(hotWaterHeat(3000, 80, 80).heat_kw).toBe(0);
  });

  it('is refused where it comes back hotter than it went', () => {
    expect(thrownBy(() => hotWaterHeat(3000, 60, 80))).toMatchObject({ argument: 'return_c', problem: '80 is above flow_c 60' });
  });
});

describe('a hot-water heater', () => {
  const anyHeater = fc
    .tuple(air_m3_h, outdoor, between(10, 50_000), between(1, 85), between(0.05, 1), site)
    .map(([air, { ambient_c, ambient_rh }, water_l_h, over_c, effectiveness, { altitude_m, air_at }]) => {
      const water_c = Math.max(ambient_c, 0) + over_c;
      const steps = supplyTemperature(air, ambient_c, ambient_rh, water_l_h, water_c, effectiveness, altitude_m, air_at);
      return { ...steps, air, ambient_c, ambient_rh, water_l_h, water_c, effectiveness, altitude_m, air_at };
    });

  it('has the effectiveness that its temperatures were worked out from', () => {
    fc.assert(
      fc.property(anyHeater, ({ air, ambient_c, ambient_rh, supply_c, water_l_h, water_c, effectiveness, altitude_m, air_at }) => {
        // A rise below a ten-thousandth of a degree is lost among the digits of the temperatures.
        fc.pre(supply_c - ambient_c > 1e-4);
        const found = heaterEffectiveness(air, ambient_c, ambient_rh, supply_c, water_l_h, water_c, altitude_m, air_at);
        expect(Math.abs(found.effectiveness / effectiveness - 1)).toBeLessThan(1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('takes from the water what it gives to the air, and never more than the water has', () => {
    fc.assert(
      fc.property(anyHeater, ({ air, ambient_c, ambient_rh, supply_c, water_c, water_kj_h_k, altitude_m, air_at }) => {
        expect(supply_c).toBeGreaterThanOrEqual(ambient_c);
        expect(supply_c).toBeLessThanOrEqual(water_c);
        const { heat_kw } = dryingHeat(air, ambient_c, ambient_rh, supply_c, altitude_m, air_at);
        const cooled_c = water_c - (heat_kw * 3600) / water_kj_h_k;
        expect(cooled_c).toBeGreaterThanOrEqual(ambient_c - 1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('does not get the air hot with too little water, and gains nothing from more than enough', () => {
    const off = (water_l_h: number) => supplyTemperature(3200, 7, 0.85, water_l_h, 80, 0.85, 0, 'supply').supply_c;
    expect(off(100)).toBeLessThan(15);
    expect(off(500)).toBeLessThan(45);
    // Enough: 0.85 of the 73 °C between outdoor air and water.
    expect(off(3000)).toBeCloseTo(7 + 0.85 * 73, 9);
    expect(off(30_000)).toBe(off(3000));
  });

  it('is refused where the water is no hotter than the air', () => {
    expect(thrownBy(() => supplyTemperature(3200, 20, 0.6, 3000, 20, 0.85, 0, 'supply'))).toMatchObject({
      argument: 'water_c',
      problem: '20 is not above ambient_c 20',
    });
    expect(thrownBy(() => heaterEffectiveness(3200, 20, 0.6, 30, 3000, 15, 0, 'supply'))).toMatchObject({ argument: 'water_c' });
  });

  it('tells which reading to check where it seems to pass more than there is', () => {
    expect(thrownBy(() => heaterEffectiveness(3200, 7, 0.85, 85, 3000, 80, 0, 'supply'))).toMatchObject({
      argument: 'supply_c',
      accepted: expect.stringContaining('check both thermometers'),
    });
    expect(thrownBy(() => heaterEffectiveness(3200, 7, 0.85, 70, 500, 80, 0, 'supply'))).toMatchObject({
      argument: 'water_l_h',
      accepted: expect.stringContaining('check the water meter'),
    });
    expect(thrownBy(() => heaterEffectiveness(3200, 7, 0.85, 5, 3000, 80, 0, 'supply'))).toMatchObject({ argument: 'supply_c' });
  });

  it('forgives the last digits of readings that make it perfect', () => {
    const { supply_c } = supplyTemperature(3200, 7, 0.85, 500, 80, 1, 0, 'supply');
    expect(heaterEffectiveness(3200, 7, 0.85, supply_c + 1e-6, 500, 80, 0, 'supply').effectiveness).toBe(1);
    expect(thrownBy(() => heaterEffectiveness(3200, 7, 0.85, supply_c + 1e-4, 500, 80, 0, 'supply'))).toBeInstanceOf(Refusal);
  });
});

describe('a heat source of known output', () => {
  it('gives the temperature whose heat it is', () => {
    fc.assert(
      fc.property(air_m3_h, outdoor, between(0, 150), site, (air, { ambient_c, ambient_rh }, rise_c, { altitude_m, air_at }) => {
        const { heat_kw } = dryingHeat(air, ambient_c, ambient_rh, ambient_c + rise_c, altitude_m, air_at);
        const { supply_c } = heatedTemperature(air, ambient_c, ambient_rh, heat_kw, altitude_m, air_at);
        expect(Math.abs(supply_c - (ambient_c + rise_c))).toBeLessThan(1e-9);
      }),
      { numRuns: 500 },
    );
  });

  it('has an answer to 200 °C and not beyond', () => {
    const heatTo = (supply_c: number) => dryingHeat(3200, 7, 0.85, supply_c, 0, 'supply').heat_kw;
    expect(heatedTemperature(3200, 7, 0.85, heatTo(199.9), 0, 'supply').supply_c).toBeCloseTo(199.9, 9);
    expect(thrownBy(() => heatedTemperature(3200, 7, 0.85, heatTo(200.1), 0, 'supply'))).toBeInstanceOf(NoAnswer);
  });

  it.each([
    ['more than the air takes up to 200 °C', 250],
    // Air measured hot thins out as fast as it warms: beyond this no temperature at all is enough.
    ['so much that no temperature would do', 400],
  ])('has no answer for %s', (_, heat_kw) => {
    expect(thrownBy(() => heatedTemperature(3200, 7, 0.85, heat_kw, 0, 'supply'))).toEqual(
      new NoAnswer(`${heat_kw} kW is more than this air can take up below 200 °C; enter less heat or more air`),
    );
  });
});
