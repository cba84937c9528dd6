import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airNeeded,
  claim,
  driedOutput,
  drumNeeded,
  dryingHeat,
  evaporation,
  exhaustState,
  retention,
  shellLoss,
  stockDays,
} from '../../src/domain/drying.ts';
import { relativeHumidity, saturationPressure } from '../../src/domain/moist-air.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { between } from './between.ts';
import { thrownBy } from './thrown-by.ts';

/** Any dryer that the functions take, from frost to 190 °C. */
const dryer = fc.record({
  air_m3_h: between(50, 100_000),
  ambient_c: between(-30, 45),
  ambient_rh: between(0.05, 1),
  rise_c: between(0, 145),
  altitude_m: between(-400, 4000),
  air_at: fc.constantFrom('supply' as const, 'ambient' as const),
  exhaust_rh: between(0.2, 1),
  heat_loss: between(0, 0.6),
  feed_c: fc.option(between(0, 60), { nil: undefined }),
});
type Dryer = typeof dryer extends fc.Arbitrary<infer One> ? One : never;

const run = (d: Dryer) =>
  evaporation(d.air_m3_h, d.ambient_c, d.ambient_rh, d.ambient_c + d.rise_c, d.altitude_m, d.air_at, d.exhaust_rh, d.heat_loss, d.feed_c);

/** What it carries off; nothing where it carries nothing. */
function carried(d: Dryer): number {
  try {
    return run(d).evaporation_kg_h;
  } catch (thrown) {
    if (thrown instanceof NoAnswer) return 0;
    throw thrown;
  }
}

const whereItDries = (property: (d: Dryer, steps: ReturnType<typeof run>) => void) =>
  fc.assert(
    fc.property(dryer, (d) => {
      // A thousandth of a kg of water from a tonne of air is no drying.
      const evaporated = carried(d);
      fc.pre(evaporated > 1e-6 * d.air_m3_h);
      property(d, run(d));
    }),
    { numRuns: 1000 },
  );

const close = (found: number, expected: number, within: number) => expect(Math.abs(found - expected)).toBeLessThanOrEqual(within);

describe('a dryer', () => {
  it('sends up the chimney the water it took in and the water it evaporated', () => {
    whereItDries((d, steps) => {
      // Counted as vapour, a perfect gas of 461.52 J/kg·K, in the volume that leaves.
      const vapour_pa = d.exhaust_rh * saturationPressure(steps.exhaust_c);
      const leaving_kg_h = (steps.exhaust_m3_h * vapour_pa) / (461.524 * (steps.exhaust_c + 273.15));
      const entering_kg_h = steps.air_kg_h * steps.humidity_ratio;
      expect(leaving_kg_h / (entering_kg_h + steps.evaporation_kg_h)).toBeCloseTo(1, 5);
    });
  });

  it('spends its heat on evaporation, on warming the air, and on losses, and on nothing else', () => {
    whereItDries((d, steps) => {
      const warmed_kj_h = steps.air_kg_h * (1.006 + 1.86 * steps.humidity_ratio) * (steps.exhaust_c - d.ambient_c);
      const evaporated_kj_h = steps.evaporation_kg_h * (2501 + 1.86 * steps.exhaust_c - 4.186 * steps.fibre_c);
      const heat_kj_h = steps.heat_kw * 3600;
      // To 3 J per kg of air, which is what the jump from ice to water at 0 °C comes to.
      close(warmed_kj_h + evaporated_kj_h + d.heat_loss * heat_kj_h, heat_kj_h, 0.003 * steps.air_kg_h);
    });
  });

  it('leaves its exhaust as damp as it was said to be, between dew point and what the losses leave of the heat', () => {
    whereItDries((d, steps) => {
      close(relativeHumidity(steps.exhaust_c, steps.exhaust_humidity_ratio, steps.pressure_pa), d.exhaust_rh, 1e-9);
      expect(steps.exhaust_dew_point_c).toBeLessThanOrEqual(steps.exhaust_c + 1e-9);
      expect(steps.exhaust_c).toBeLessThan(steps.warm_c);
    });
  });

  it('carries most off with the exhaust saturated and no heat lost, and no more the more it loses or the drier it leaves', () => {
    fc.assert(
      fc.property(dryer, between(0, 1), between(0, 1), (d, more_loss, drier) => {
        const worse = { ...d, heat_loss: d.heat_loss + more_loss * (0.95 - d.heat_loss) };
        const dry = { ...d, exhaust_rh: d.exhaust_rh * (1 - drier) + 0.05 * drier };
        const best = { ...d, exhaust_rh: 1, heat_loss: 0 };
        // Saturation over ice and over water differ by 0.01 % at 0 °C, up to a millionth of a kg per m³ of air.
        const jump = 1e-6 * d.air_m3_h;
        expect(carried(worse)).toBeLessThanOrEqual(carried(d) + jump);
        expect(carried(dry)).toBeLessThanOrEqual(carried(d) + jump);
        expect(carried(d)).toBeLessThanOrEqual(carried(best) + jump);
      }),
      { numRuns: 1000 },
    );
  });

  it('carries off in proportion to its air', () => {
    whereItDries((d, steps) => {
      expect(carried({ ...d, air_m3_h: 2 * d.air_m3_h }) / steps.evaporation_kg_h).toBeCloseTo(2, 9);
    });
  });

  it('takes the air it was given back from the output that air makes', () => {
    fc.assert(
      fc.property(dryer, between(0.15, 0.5), between(0.02, 0.3), (d, dm_in, drier) => {
        fc.pre(carried(d) > 1e-6 * d.air_m3_h);
        const fibre = [dm_in, dm_in + drier] as const;
        const outdoor = [d.ambient_c, d.ambient_rh, d.ambient_c + d.rise_c] as const;
        const rest = [d.altitude_m, d.air_at, d.exhaust_rh, d.heat_loss, d.feed_c] as const;
        const { dried_kg_h } = driedOutput(...fibre, d.air_m3_h, ...outdoor, ...rest);
        const needed = airNeeded(dried_kg_h, ...fibre, ...outdoor, ...rest);
        expect(needed.air_m3_h / d.air_m3_h).toBeCloseTo(1, 9);
        const { heat_kw } = dryingHeat(d.air_m3_h, ...outdoor, d.altitude_m, d.air_at);
        close(needed.heat_kw, heat_kw, 1e-9 * heat_kw);
      }),
      { numRuns: 500 },
    );
  });

  it('has an answer where the exhaust is at freezing point, and carries no less off the warmer the air', () => {
    let last = 0;
    let frosty = 0;
    for (let supply_c = -4; supply_c <= 8; supply_c += 0.001) {
      const steps = evaporation(3000, -10, 0.5, supply_c, 0, 'ambient', 0.9, 0, undefined);
      expect(steps.evaporation_kg_h).toBeGreaterThan(last);
      last = steps.evaporation_kg_h;
      if (Math.abs(steps.exhaust_c) < 0.001) frosty++;
    }
    expect(frosty).toBeGreaterThan(0);
  });

  it('may run above 100 °C, and may leave its exhaust colder than the air outdoors', () => {
    const hot = evaporation(3000, 10, 0.8, 160, 0, 'supply', 0.75, 0.1, undefined);
    expect(hot.exhaust_c).toBeGreaterThan(35);
    expect(hot.exhaust_c).toBeLessThan(50);
    const unheated = evaporation(3000, 30, 0.3, 30, 0, 'supply', 0.9, 0, undefined);
    expect(unheated.exhaust_c).toBeLessThan(30);
    expect(unheated.evaporation_kg_h).toBeGreaterThan(0);
    expect(unheated.heat_mj_kg).toBe(0);
  });

  it('takes the fibre to be as warm as the air outdoors, but not frozen, where nothing is said', () => {
    expect(evaporation(3000, 7, 0.8, 70, 0, 'supply', 0.75, 0.1, undefined).fibre_c).toBe(7);
    expect(evaporation(3000, -7, 0.8, 70, 0, 'supply', 0.75, 0.1, undefined).fibre_c).toBe(0);
    expect(evaporation(3000, 7, 0.8, 70, 0, 'supply', 0.75, 0.1, 0).fibre_c).toBe(0);
  });

  it('has no answer where the air carries nothing off, and says how damp it already is', () => {
    const thrown = thrownBy(() => evaporation(3000, 10, 0.95, 10.5, 0, 'supply', 0.75, 0, undefined));
    expect(thrown).toBeInstanceOf(NoAnswer);
    expect((thrown as NoAnswer).message).toBe(
      'this air carries nothing off: at 10.5 °C it is at 92% humidity before it meets the fibre, and exhaust_rh is 75%; it takes warmer air',
    );
  });

  it('has no answer either, rather than rounding, where the air is damp to the last digit', () => {
    // 10 °C and 75 % outdoors, unheated, into an exhaust of 75 %.
    for (const hair of [0, 1e-16, 1e-13, -1e-13]) {
      expect(thrownBy(() => airNeeded(50, 0.35, 0.6, 10, 0.75 + hair, 10, 0, 'supply', 0.75, 0, undefined))).toBeInstanceOf(NoAnswer);
    }
  });

  it('refuses supply air colder than the air outdoors', () => {
    const refusal = { argument: 'supply_c', problem: '5 is below ambient_c 10' };
    expect(thrownBy(() => evaporation(3000, 10, 0.8, 5, 0, 'supply', 0.75, 0.1, undefined))).toMatchObject(refusal);
    expect(thrownBy(() => dryingHeat(3000, 10, 0.8, 5, 0, 'supply'))).toMatchObject(refusal);
    expect(thrownBy(() => airNeeded(50, 0.35, 0.6, 10, 0.8, 5, 0, 'supply', 0.75, 0.1, undefined))).toMatchObject(refusal);
    expect(thrownBy(() => claim(50, 0.35, 0.6, 3000, 10, 0.8, 5, 0, 'supply'))).toMatchObject(refusal);
  });
});

it.each([
  ['an output', (dm_out: number) => driedOutput(0.35, dm_out, 3000, 10, 0.8, 70, 0, 'supply', 0.75, 0.1, undefined)],
  ['air needed', (dm_out: number) => airNeeded(50, 0.35, dm_out, 10, 0.8, 70, 0, 'supply', 0.75, 0.1, undefined)],
  ['a stated output', (dm_out: number) => claim(50, 0.35, dm_out, 3000, 10, 0.8, 70, 0, 'supply')],
])('%s is not worked out for fibre drier than 0.80, with the reason, nor for fibre that gets no drier', (_, work) => {
  expect(() => work(0.8)).not.toThrow();
  expect(() => work(0.81)).toThrow(
    new Refusal('dm_out', '0.81 is above 0.80, and no sorption data is held for fibre that dry', 'enter at most 0.80'),
  );
  expect(thrownBy(() => work(0.35))).toMatchObject({ argument: 'dm_in' });
});

describe('a stated output', () => {
  const air = [3000, 10, 0.8, 70, 0, 'supply'] as const;
  const most_kg_h = evaporation(...air, 1, 0, undefined).evaporation_kg_h;

  it.each([
    [0.5, 'possible'],
    [1, 'possible'],
    [1.001, 'measure it: self-heating of the fibre may explain it'],
    [1.25, 'measure it: self-heating of the fibre may explain it'],
    [1.251, 'not with this air'],
    [10, 'not with this air'],
  ])('of %d times the most the air can carry: %s', (times, verdict) => {
    // From 0.4 to 0.6, half a kg of water goes for each kg of dried fibre. A hair less, for the rounding of the ratio.
    const stated = claim(2 * times * most_kg_h * (1 - 1e-12), 0.4, 0.6, ...air);
    expect(stated.ratio).toBeCloseTo(times, 9);
    expect(stated.verdict).toBe(verdict);
  });
});

it('shows the exhaust by key, with a unit for every value', () => {
  const { rows, ...steps } = exhaustState(3000, 10, 0.8, 70, 0, 'supply', 0.75, 0.1, undefined);
  expect(rows).toEqual([
    ['temperature', steps.exhaust_c, '°C'],
    ['relative humidity', 0.75, 'fraction'],
    ['humidity ratio', steps.exhaust_humidity_ratio, 'kg/kg'],
    ['dew point', steps.exhaust_dew_point_c, '°C'],
    ['flow', steps.exhaust_m3_h, 'm³/h'],
    ['evaporation', steps.evaporation_kg_h, 'kg/h'],
    ['heat', steps.heat_kw, 'kW'],
    ['heat per kg of water', steps.heat_mj_kg, 'MJ/kg'],
  ]);
  expect(steps.heat_mj_kg).toBeCloseTo((steps.heat_kw * 3600) / steps.evaporation_kg_h / 1000, 9);
});

it('needs the drum that gives back the time in it', () => {
  fc.assert(
    fc.property(between(0.1, 100), between(0.1, 48), between(0.01, 1), between(50, 1000), (m3_h, hours, fill, density_kg_m3) => {
      const { drum_m3 } = drumNeeded(m3_h, hours, fill);
      expect(retention(drum_m3, fill, density_kg_m3, m3_h * density_kg_m3).hours / hours).toBeCloseTo(1, 9);
    }),
  );
});

it('makes a store last the days that its tonnes divided by the daily use give', () => {
  expect(stockDays(20, 200, 0.8)).toEqual({ stock_t: 4, days: 5 });
});

describe('heat through the skin of a drum', () => {
  it('grows with the drum and the difference of temperatures, and is none without one', () => {
    fc.assert(
      fc.property(between(0.2, 5), between(0.5, 20), between(-20, 40), between(0, 120), between(0.2, 20), (d, l, ambient, rise, u) => {
        const { loss_kw } = shellLoss(d, l, ambient + rise, ambient, u);
        expect(shellLoss(d, 2 * l, ambient + rise, ambient, u).loss_kw).toBeGreaterThanOrEqual(loss_kw);
        expect(shellLoss(d, l, ambient, ambient, u).loss_kw).toBe(0);
        expect(shellLoss(d, l, ambient + 2 * rise, ambient, u).loss_kw).toBeCloseTo(2 * loss_kw, 8);
      }),
    );
  });
  it('with readings the wrong way round is refused', () =>
    expect(() => shellLoss(2, 9, 5, 10, 6)).toThrow(/^inside_c: 5 is below ambient_c 10/));
});
