import { describe, expect, test } from 'vitest';
import { type FigureAt, nearestValue } from '../../src/domain/nearest-value.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';

const none = 'no value between 0 and 10 makes the cover exactly 1, all else as it is';
const nearest = (figureAt: FigureAt, target: number, now: number) => nearestValue(figureAt, target, now, [0, 10], none);

describe('the lever value at which a figure comes to its target', () => {
  test.each<[what: string, figureAt: FigureAt, target: number, now: number, found: number]>([
    ['above where it stands, the figure rising', (x) => 3 * x, 21, 2, 7],
    ['above where it stands, the figure falling', (x) => -3 * x, -21, 2, 7],
    ['below where it stands, the figure rising', (x) => 3 * x, 3, 2, 1],
    ['below where it stands, the figure falling', (x) => -3 * x, -3, 2, 1],
    ['at the very top of its range', (x) => x, 10, 2, 10],
    ['at the very bottom of its range, which its figure just touches', (x) => -x, 0, 2, 0],
    ['where it stands already', (x) => x, 2, 2, 2],
    ['where it stands at the top of its range', (x) => x, 9, 10, 9],
    ['on the nearer of two sides, below', (x) => Math.abs(x - 5), 2, 4, 3],
    ['on the nearer of two sides, above', (x) => Math.abs(x - 5), 2, 6, 7],
    ['beyond values at which the plan has no such figure', (x) => (x > 3 && x < 8 ? undefined : x), 9, 2, 9],
    ['beyond them too where the figure falls', (x) => (x > 3 && x < 8 ? undefined : -x), -9, 2, 9],
    ['beyond a value without figure amid the halving', (x) => (x > 6.5 && x < 6.8 ? undefined : x), 7, 2, 7],
    ['beyond it too where the figure falls', (x) => (x > 6.5 && x < 6.8 ? undefined : -x), -7, 2, 7],
    ['where a figure that jumps first passes it', (x) => (x < 4.2 ? 0 : 8), 5, 2, 4.2],
  ])('is found %s', (_, figureAt, target, now, found) => expect(nearest(figureAt, target, now)).toBeCloseTo(found, 9));

  test('is told not to be there where no value within the range reaches it', () =>
    expect(nearest((x) => x, 10.1, 2)).toEqual(new NoAnswer(none)));

  test('is not looked for where the plan has no such figure to begin with', () =>
    expect(nearest((x) => (x > 5 ? x : undefined), 7, 2)).toEqual(
      new NoAnswer('the plan has no such figure yet: see what is still missing'),
    ));
});
