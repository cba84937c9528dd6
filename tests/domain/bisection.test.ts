import fc from 'fast-check';
import { expect, test } from 'vitest';
import { crossing } from '../../src/domain/bisection.ts';
import { between } from './between.ts';

test('finds where a rising or a falling function crosses zero, to the last bit', () => {
  fc.assert(
    fc.property(between(-1e6, 1e6), (root) => {
      const risen = crossing((x) => x - root, -1e6, 1e6) as number;
      const fallen = crossing((x) => root - x, -1e6, 1e6) as number;
      for (const found of [risen, fallen]) expect(Math.abs(found - root)).toBeLessThanOrEqual(1e-15 * Math.max(1, Math.abs(root)));
    }),
  );
});

test('finds a root that lies at either end', () => {
  expect(crossing((x) => x, 0, 5)).toBe(0);
  expect(crossing((x) => x - 5, 0, 5)).toBe(5);
  expect(crossing((x) => 5 - x, 0, 5)).toBe(5);
});

test('does not pass off an end as a root where there is none', () => {
  expect(crossing((x) => x + 1, 0, 5)).toBeUndefined();
  expect(crossing((x) => -x - 1, 0, 5)).toBeUndefined();
  expect(crossing(() => Number.NaN, 0, 5)).toBeUndefined();
});
