import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { countPerVolume } from '../../src/domain/bedding-counts.ts';
import { breakEvenCases, caseRate, casesCost, dirtyShare } from '../../src/domain/udder-health.ts';
import { between } from './between.ts';

const positive = between(1, 1e5);

describe('mastitis cases and money', () => {
  test('the break-even cases cost exactly the saving', () => {
    fc.assert(
      fc.property(positive, positive, positive, (saving, cows, price) => {
        const { cases_per_100 } = breakEvenCases(saving, cows, price);
        expect(casesCost(cases_per_100, cows, price).cost_year / saving).toBeCloseTo(1, 9);
      }),
    );
  });

  test('half a year of records counts double, so a herd can be judged before the year is out', () => {
    expect(caseRate(10, 200, 182.5).cases_per_100).toBeCloseTo(2 * caseRate(10, 200, 365).cases_per_100, 9);
  });

  test('a saving of nothing or less has no cases that could eat it', () => {
    expect(() => breakEvenCases(0, 400, 280)).toThrow(/no saving/);
    expect(() => breakEvenCases(-2384, 400, 280)).toThrow(/no saving/);
  });
});

describe('dirty udders', () => {
  test('are those that score 3 or 4, as a share of all scored', () => expect(dirtyShare(50, 32, 12, 6).dirty_udders).toBe(0.18));
  test('cannot be told from no cows at all', () => expect(() => dirtyShare(0, 0, 0, 0)).toThrow(/all four counts are 0/));
});

test('a count per gram of light bedding is smaller per cm³: a million at 0.3 g/cm³ is 300,000', () => {
  expect(countPerVolume(1e6, 300).cfu_per_cm3).toBeCloseTo(3e5, 6);
});
