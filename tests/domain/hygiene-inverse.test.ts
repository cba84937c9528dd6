import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hygieneScore } from '../../src/domain/hygiene.ts';
import { beds } from '../../src/domain/hygiene-factors.ts';
import { fibreReach, longestInterval, lowestDryMatter } from '../../src/domain/hygiene-inverse.ts';
import { materials } from '../../src/domain/materials.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';
import { between } from './between.ts';

const rest = fc.tuple(
  fc.option(fc.constantFrom(...materials), { nil: undefined }),
  fc.option(between(-20, 45), { nil: undefined }),
  fc.option(between(0, 1), { nil: undefined }),
  fc.option(fc.constantFrom(...beds), { nil: undefined }),
  fc.option(between(0.1, 3), { nil: undefined }),
);

describe('the longest interval', () => {
  test('gives back the interval that the target score came from', () => {
    fc.assert(
      fc.property(between(0.05, 1), between(0.25, 2), rest, (dm, days, others) => {
        const target = hygieneScore(dm, days, ...others).score;
        expect(longestInterval(dm, target, ...others).interval_days).toBeCloseTo(days, 6);
      }),
    );
  });

  test('keeps the score at or below the target', () => {
    fc.assert(
      fc.property(between(0.05, 1), between(0, 100), rest, (dm, target, others) => {
        try {
          const { interval_days, score } = longestInterval(dm, target, ...others);
          expect(score).toBeLessThanOrEqual(target + 1e-9);
          expect(hygieneScore(dm, interval_days, ...others).score).toBe(score);
        } catch (thrown) {
          expect(thrown).toBeInstanceOf(NoAnswer);
          expect(hygieneScore(dm, 0.25, ...others).score).toBeGreaterThan(target);
        }
      }),
    );
  });

  test('stops where growth studies stop: 2 days on organic bedding and on what is not known, 14 on sand and limestone', () => {
    expect(longestInterval(0.9, 100, 'sawdust').interval_days).toBe(2);
    expect(longestInterval(0.9, 100).interval_days).toBe(2);
    expect(longestInterval(0.96, 100, 'sand').interval_days).toBe(14);
    expect(longestInterval(0.98, 100, 'limestone').interval_days).toBe(14);
  });

  test('does not exist where even bedding four times a day misses the target, and says the score that would be left', () => {
    expect(() => longestInterval(0.35, 20, 'fresh fibre')).toThrow(/even bedding every 0.25 days the score is \d+\.\d \((raised|high)\)/);
  });
});

describe('the lowest dry matter', () => {
  test('gives back the dry matter that the target score came from, where the score falls with it', () => {
    fc.assert(
      fc.property(between(0.26, 0.89), between(0.25, 14), rest, (dm, days, others) => {
        const target = hygieneScore(dm, days, ...others).score;
        expect(lowestDryMatter(days, target, ...others).dm).toBeCloseTo(dm, 6);
      }),
    );
  });

  test('is the lowest: a hair wetter passes the target', () => {
    fc.assert(
      fc.property(between(0.26, 0.89), between(0.25, 14), rest, (dm, days, others) => {
        const target = hygieneScore(dm, days, ...others).score;
        const answer = lowestDryMatter(days, target, ...others);
        expect(answer.score).toBeLessThanOrEqual(target);
        expect(hygieneScore(answer.dm - 1e-4, days, ...others).score).toBeGreaterThan(target);
      }),
    );
  });

  test('is 0.15 where the wettest bedding already meets the target', () => {
    expect(lowestDryMatter(1, 100, 'sand').dm).toBe(0.15);
  });

  test('is 0.90, not drier, where nothing less meets the best that dryness can do', () => {
    const best = hygieneScore(0.95, 2).score;
    expect(lowestDryMatter(2, best).dm).toBeCloseTo(0.9, 9);
  });

  test('does not exist where even 0.95 misses the target', () => {
    expect(() => lowestDryMatter(2, 5, 'fresh fibre')).toThrow(/even at 0.95 dry matter the score is/);
  });

  test('says where fibre cannot be made so dry, and nothing of other materials', () => {
    expect(fibreReach(0.38, 'fresh fibre')).toBe('within what is known of making fibre');
    expect(fibreReach(0.45, 'fresh fibre')).toMatch(/would have to be dried/);
    expect(fibreReach(0.8, 'dried fibre')).toBe('within what is known of making fibre');
    expect(fibreReach(0.85, 'dried fibre')).toMatch(/no sorption data/);
    expect(fibreReach(0.85, 'sawdust')).toBeUndefined();
    expect(fibreReach(0.85)).toBeUndefined();
  });
});
