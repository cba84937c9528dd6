import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loanSchedule } from '../../src/domain/loan.ts';
import { between } from './between.ts';

const loans = fc.tuple(between(100, 1e6), fc.integer({ min: 1, max: 40 }), between(0, 0.5), fc.constantFrom(1, 2, 4, 12, 52));

test('a loan closes at 0, what is repaid sums to what was borrowed, and every year is paid in full', () => {
  fc.assert(
    fc.property(loans, ([borrowed, years, rate, often]) => {
      const { payment, rows } = loanSchedule(borrowed, years, rate, often);
      let before = borrowed;
      let repaidInAll = 0;
      for (const [, opening = 0, interest = 0, repaid = 0, closing = 0] of rows) {
        expect(opening).toBe(before);
        expect(interest).toBeGreaterThanOrEqual(0);
        expect(Math.abs(interest + repaid - often * payment)).toBeLessThan(1e-9 * borrowed);
        repaidInAll += repaid;
        before = closing;
      }
      expect(rows).toHaveLength(years);
      expect(before).toBe(0);
      expect(Math.abs(repaidInAll / borrowed - 1)).toBeLessThan(1e-12);
    }),
  );
});

test('without interest, interest is nothing at all', () => {
  const { rows } = loanSchedule(1000, 3, 0, 12);
  expect(rows.map(([, , interest]) => interest)).toEqual([0, 0, 0]);
});

test('paying more often costs less interest', () => {
  const interestOf = (often: number) => loanSchedule(10_000, 5, 0.08, often).rows.reduce((sum, [, , interest = 0]) => sum + interest, 0);
  expect(interestOf(12)).toBeLessThan(interestOf(4));
  expect(interestOf(4)).toBeLessThan(interestOf(1));
});
