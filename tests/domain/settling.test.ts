import fc from 'fast-check';
import { expect, test } from 'vitest';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { carryover, LARGEST_PARTICLE_MM, SMALLEST_PARTICLE_MM, settlingSpeed, sphereDrag } from '../../src/domain/settling.ts';
import { between } from './between.ts';

/** Sizes spread evenly over their decades, from dust to chips. */
const size = between(Math.log10(SMALLEST_PARTICLE_MM), Math.log10(LARGEST_PARTICLE_MM)).map((exponent) =>
  Math.min(Math.max(10 ** exponent, SMALLEST_PARTICLE_MM), LARGEST_PARTICLE_MM),
);
const particle = between(2, 3000);
const air = between(-50, 200);

test('at the settling speed the drag carries the weight, for every size, density and temperature', () => {
  fc.assert(
    fc.property(size, particle, air, (diameter_mm, particle_kg_m3, gas_c) => {
      const { settling_m_s, gas_kg_m3, reynolds } = settlingSpeed(diameter_mm, particle_kg_m3, gas_c);
      const drag = (sphereDrag(reynolds) * gas_kg_m3 * settling_m_s ** 2) / 2 / 4;
      const weight = ((particle_kg_m3 - gas_kg_m3) * 9.80665 * diameter_mm) / 1000 / 6;
      expect(Math.abs(drag / weight - 1)).toBeLessThan(1e-9);
    }),
  );
});

test('air as fast as a particle falls carries off exactly that particle', () => {
  fc.assert(
    fc.property(size, particle, air, (diameter_mm, particle_kg_m3, gas_c) => {
      fc.pre(diameter_mm > SMALLEST_PARTICLE_MM && diameter_mm < LARGEST_PARTICLE_MM);
      const { settling_m_s } = settlingSpeed(diameter_mm, particle_kg_m3, gas_c);
      expect(Math.abs(carryover(settling_m_s, particle_kg_m3, gas_c).diameter_mm / diameter_mm - 1)).toBeLessThan(1e-9);
    }),
  );
});

test('bigger and heavier particles fall faster', () => {
  fc.assert(
    fc.property(between(0.001, 90), between(2, 2000), air, (diameter_mm, particle_kg_m3, gas_c) => {
      const speed = settlingSpeed(diameter_mm, particle_kg_m3, gas_c).settling_m_s;
      expect(settlingSpeed(diameter_mm * 1.01, particle_kg_m3, gas_c).settling_m_s).toBeGreaterThan(speed);
      expect(settlingSpeed(diameter_mm, particle_kg_m3 * 1.01, gas_c).settling_m_s).toBeGreaterThan(speed);
    }),
  );
});

test('drag falls without a step where the two laws meet near a Reynolds number of 1000', () => {
  expect(sphereDrag(980)).toBeGreaterThan(0.44);
  for (const reynolds of [995, 1000, 1e5]) expect(sphereDrag(reynolds)).toBe(0.44);
});

test('air too slow or too fast for any size we know says so', () => {
  expect(() => carryover(1e-7, 500, 30)).toThrow(/blows nothing out/);
  expect(() => carryover(60, 10, 30)).toThrow(NoAnswer);
  expect(() => carryover(60, 10, 30)).toThrow(/everything up to 100 mm/);
});

test('a particle no heavier than air is refused', () => {
  const { gas_kg_m3 } = settlingSpeed(1, 500, 20);
  expect(() => settlingSpeed(1, gas_kg_m3, 20)).toThrow(Refusal);
  expect(() => settlingSpeed(1, 1.1, 20)).toThrow(Refusal);
  expect(() => carryover(1, 1.1, 20)).toThrow(/not of a heap/);
});
