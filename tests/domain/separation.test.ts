import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import {
  bufferTank,
  cakeWithReturn,
  captureShare,
  dilutedDryMatter,
  liquidDryMatter,
  pressedCake,
  pressRunningHours,
  pressThroughput,
  slurryProduced,
} from '../../src/domain/separation.ts';
import { between } from './between.ts';

/** Slurry, cake and capture of any press: the slurry is always the wetter. */
const press = fc.record({ slurry_dm: between(0.005, 0.15), cake_dm: between(0.16, 0.9), capture: between(0.01, 0.99) });

test('pressed fibre and liquid together hold the mass and the dry matter of the slurry', () => {
  fc.assert(
    fc.property(press, between(0.1, 1000), ({ slurry_dm, cake_dm, capture }, slurry_t) => {
      const { cake_t } = pressedCake(slurry_t, slurry_dm, cake_dm, capture);
      const { liquid_dm } = liquidDryMatter(slurry_dm, cake_dm, capture);
      const liquid_t = slurry_t - cake_t;
      expect(liquid_t).toBeGreaterThan(0);
      expect(Math.abs((cake_t * cake_dm + liquid_t * liquid_dm) / (slurry_t * slurry_dm) - 1)).toBeLessThan(1e-12);
    }),
  );
});

test('three samples give back the capture that made them', () => {
  fc.assert(
    fc.property(press, ({ slurry_dm, cake_dm, capture }) => {
      const { liquid_dm, cake_share } = liquidDryMatter(slurry_dm, cake_dm, capture);
      const back = captureShare(slurry_dm, cake_dm, liquid_dm);
      expect(back.capture).toBeCloseTo(capture, 9);
      expect(back.cake_share).toBeCloseTo(cake_share, 9);
    }),
  );
});

test('a press that catches more makes more fibre and leaves a thinner liquid', () => {
  fc.assert(
    fc.property(press, ({ slurry_dm, cake_dm, capture }) => {
      const more = Math.min(1, capture * 1.1);
      expect(pressedCake(1, slurry_dm, cake_dm, more).cake_t).toBeGreaterThan(pressedCake(1, slurry_dm, cake_dm, capture).cake_t);
      expect(liquidDryMatter(slurry_dm, cake_dm, more).liquid_dm).toBeLessThan(liquidDryMatter(slurry_dm, cake_dm, capture).liquid_dm);
    }),
  );
});

test('samples in an order that no press can give are refused by name', () => {
  expect(() => pressedCake(10, 0.3, 0.25, 0.3)).toThrow('slurry_dm: 0.3 is not below cake_dm 0.25');
  expect(() => liquidDryMatter(0.25, 0.25, 0.3)).toThrow(Refusal);
  expect(() => captureShare(0.08, 0.25, 0.08)).toThrow('liquid_dm: 0.08 is not below slurry_dm 0.08');
});

test('wash water adds to the slurry and thins it, the dry matter staying the same', () => {
  const { slurry_t_day } = slurryProduced(400, 64, 8);
  expect(slurry_t_day).toBeCloseTo(28.8, 12);
  const { diluted_dm } = dilutedDryMatter(0.085, 64, 8);
  expect(slurry_t_day * diluted_dm).toBeCloseTo(slurryProduced(400, 64, 0).slurry_t_day * 0.085, 12);
});

test('a press that never rests works all its hours', () => {
  expect(pressThroughput(6, 60, 0, 24)).toEqual({ duty: 1, running_hours_day: 24, t_day: 144 });
});

test('running just long enough for the day’s slurry takes exactly that slurry', () => {
  const { running_hours_day } = pressRunningHours(28.8, 6);
  expect(pressThroughput(6, 1, 0, running_hours_day).t_day).toBeCloseTo(28.8, 12);
});

test('more slurry than a press can take in a day shows as more than 24 hours', () => {
  expect(pressRunningHours(200, 6).running_hours_day).toBeGreaterThan(24);
});

test('the buffer holds a whole day’s slurry when the press stands still, and its margin', () => {
  expect(bufferTank(30, 0, 0.1).buffer_m3).toBeCloseTo(33, 12);
  expect(bufferTank(30, 24, 0.1).buffer_m3).toBe(0);
});

describe('fibre that comes back from the beds', () => {
  test('adds up to the sum of all rounds', () => {
    fc.assert(
      fc.property(between(0.1, 50), between(0, 0.99), between(0, 0.99), (cake, returned, recaught) => {
        let [sum, round] = [0, cake];
        for (; round > 1e-12; round *= returned * recaught) sum += round;
        const { with_return_t, from_beds_t } = cakeWithReturn(cake, returned, recaught);
        expect(with_return_t).toBeCloseTo(sum, 8);
        expect(with_return_t - from_beds_t).toBeCloseTo(cake, 10);
      }),
    );
  });
  test('without end has no answer', () => expect(() => cakeWithReturn(6, 1, 1)).toThrow(NoAnswer));
});
