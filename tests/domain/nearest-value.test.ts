import { describe, expect, test } from 'vitest';
import { type GapAt, nearestValue } from '../../src/domain/nearest-value.ts';

const nearest = (gapAt: GapAt, now: number) => nearestValue(gapAt, now, [0, 10]);

describe('the lever value at which a goal comes to be met', () => {
  test.each<[what: string, gapAt: GapAt, now: number, found: number]>([
    ['above where it stands, the figure rising', (x) => 3 * x - 21, 2, 7],
    ['below where it stands, the figure falling', (x) => 3 - 3 * x, 2, 1],
    ['at the very top of its range', (x) => x - 10, 2, 10],
    ['at the very bottom of its range, which its figure just touches', (x) => -x, 2, 0],
    ['on the nearer of two sides, below', (x) => Math.abs(x - 5) - 2, 4, 3],
    ['on the nearer of two sides, above', (x) => Math.abs(x - 5) - 2, 6, 7],
    ['beyond values at which the plan has no such figure', (x) => (x > 3 && x < 8 ? undefined : x - 9), 2, 9],
    ['where the figure first has an answer', (x) => (x < 6 ? undefined : 1), 2, 6],
    ['where a figure that jumps first passes it', (x) => (x < 4.2 ? -5 : 3), 2, 4.2],
    ['in a window narrower than a step, far away', (x) => 0.01 - (x - 7.03) ** 2, 0.5, 6.93],
    ['in a window so narrow that no step falls into it', (x) => 1e-8 - (x - 7.0312) ** 2, 0.5, 7.0311],
  ])('is found %s', (_, gapAt, now, found) => {
    const value = nearest(gapAt, now) as number;
    expect(value).toBeCloseTo(found, 6);
    expect(gapAt(value)).toBeGreaterThanOrEqual(0);
  });

  test.each<[what: string, gapAt: GapAt, now: number, found: number]>([
    ['below where it stands, the figure rising', (x) => 3 * x - 3, 2, 1],
    ['above where it stands, the figure falling', (x) => 21 - 3 * x, 2, 7],
    ['where it stands already', (x) => x - 2, 2, 2],
    ['before a figure that jumps', (x) => (x < 4.2 ? 5 : -3), 2, 4.2],
    ['before a dip so narrow that no step falls into it', (x) => (x - 7.0312) ** 2 - 1e-8, 0.5, 7.0311],
  ])('is the last that still meets it %s', (_, gapAt, now, found) => {
    const value = nearest(gapAt, now) as number;
    expect(value).toBeCloseTo(found, 6);
    expect(gapAt(value)).toBeGreaterThanOrEqual(0);
  });

  test('is not there where no value of the range changes whether it is met', () => {
    expect(nearest((x) => x - 10.1, 2)).toBeUndefined();
    expect(nearest((x) => x + 0.1, 2)).toBeUndefined();
    expect(nearest((x) => Math.sin(40 * x) - 1.001, 2)).toBeUndefined();
  });
});
