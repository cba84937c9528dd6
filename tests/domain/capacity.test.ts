import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bindingStage, stageCapacity } from '../../src/domain/capacity.ts';
import { between } from './between.ts';

test('the stage that makes least binds', () => {
  expect(
    bindingStage([
      { stage: 'slurry', t_day: 3 },
      { stage: 'press', t_day: 1 },
      { stage: 'dryer', t_day: 2 },
    ]).stage,
  ).toBe('press');
});

test('of stages that make the same, the first binds, binary noise or not', () => {
  expect(
    bindingStage([
      { stage: 'slurry', t_day: 0.1 + 0.2 },
      { stage: 'press', t_day: 0.3 },
    ]).stage,
  ).toBe('slurry');
  expect(
    bindingStage([
      { stage: 'slurry', t_day: 0 },
      { stage: 'press', t_day: 0 },
    ]).stage,
  ).toBe('slurry');
});

test('a plant is covered as often as its binding stage allows', () => {
  const { rows, binds, cover } = stageCapacity(0.8, 1.83, 0.436, 8, 0.355, 0.58, 44.1, 20);
  expect(rows.map(([stage]) => stage)).toEqual(['slurry', 'press', 'dryer']);
  expect(rows.map(([, , , mark]) => mark)).toEqual(['binds', '', '']);
  expect(binds).toBe('slurry');
  expect(cover).toBe(rows[0]?.[2]);
});

test('water and dry matter balance over the dryer', () => {
  const dm = between(0.05, 1);
  fc.assert(
    fc.property(dm, dm, between(1, 500), between(1, 24), (dm_in, dm_out, water, hours) => {
      fc.pre(dm_in < dm_out * 0.999);
      const { dryer_t_day } = stageCapacity(1, 1, 1, 1, dm_in, dm_out, water, hours);
      const pressed_t_day = dryer_t_day + (water * hours) / 1000;
      expect(Math.abs((pressed_t_day * dm_in) / (dryer_t_day * dm_out) - 1)).toBeLessThan(1e-9);
    }),
  );
});

test('a dryer that carries nothing off covers nothing, and binds', () => {
  const { binds, cover } = stageCapacity(0.8, 1.83, 0.436, 8, 0.355, 0.58, 0, 20);
  expect([binds, cover]).toEqual(['dryer', 0]);
});

test('fibre pressed as dry as it is wanted is refused, since nothing is left to dry', () => {
  expect(() => stageCapacity(0.8, 1.83, 0.436, 8, 0.58, 0.58, 44.1, 20)).toThrow('dm_in: 0.58 is not below dm_out 0.58');
});
