import { describe, expect, test } from 'vitest';
import { NoAnswer } from '../../src/domain/refusal.ts';
import { lyingRange, lyingTimes, welfareTable } from '../../src/domain/welfare.ts';

const hoursAt = (dm: number, trial: string) => lyingTimes(dm).rows.find(([key]) => key === trial)?.[1];

describe('lying time by dry matter', () => {
  test('keeps each trial to its own ends', () => {
    expect(hoursAt(0.3, 'Reich 2010')).toBeInstanceOf(NoAnswer);
    expect(hoursAt(0.3, 'Fregonesi 2007')).toBeCloseTo(8.8 + (5 * 0.035) / 0.599, 9);
    expect(hoursAt(0.88, 'Fregonesi 2007')).toBeInstanceOf(NoAnswer);
    expect(hoursAt(0.88, 'Reich 2010')).toBeCloseTo(11.46, 9);
  });

  test('has the same lines whatever the dry matter, so that a look-up by name works', () => {
    const keys = ['Reich 2010', 'Fregonesi 2007', 'goal', 'disagreement'];
    for (const dm of [0.1, 0.3, 0.6, 0.88, 1]) expect(lyingTimes(dm).rows.map(([key]) => key)).toEqual(keys);
  });

  test('says in words that one trial has four times the slope of the other, which it has', () => {
    const slope = (trial: string) => ((hoursAt(0.8, trial) as number) - (hoursAt(0.4, trial) as number)) / 0.4;
    expect(slope('Fregonesi 2007') / slope('Reich 2010')).toBeCloseTo(4.17, 2);
    expect(String(lyingTimes(0.6).rows.at(-1)?.[2])).toMatch(/four times as much/);
  });

  test('shows each trial with its range, beds, source and status, and how far they disagree', () => {
    // By hand: 10.4 + 2 · 0.25 = 10.9 and 8.8 + 5 · 0.335 / 0.599 = 11.596.
    expect(lyingTimes(0.6).rows).toEqual([
      ['Reich 2010', expect.closeTo(10.9, 9), '0.35 to 0.9 DM; sawdust, non-lactating cows, ± 0.4 h', 'Reich and others 2010', 'seen'],
      [
        'Fregonesi 2007',
        expect.closeTo(11.596, 3),
        '0.265 to 0.864 DM; sawdust on mattresses, non-lactating cows, a line through its two beds',
        'Fregonesi and others 2007, bedding',
        'memory',
      ],
      ['goal', 12, 'any bedding', 'Veterinary Clinics 2019', 'seen'],
      [
        'disagreement',
        expect.closeTo(0.696, 3),
        expect.stringMatching(/read both, not the mean$/),
        'this project’s own choice',
        'computed',
      ],
    ]);
  });

  test('tells no disagreement where only one trial speaks', () => {
    for (const dm of [0.3, 0.88]) expect(hoursAt(dm, 'disagreement')).toEqual(new NoAnswer('the trials do not both cover this dry matter'));
    expect(hoursAt(0.3, 'Reich 2010')).toEqual(new NoAnswer('Reich 2010 says nothing outside 0.35 to 0.9 DM'));
  });

  test('ranges over the trials that cover a dry matter, and has no answer where none does', () => {
    expect(lyingRange(0.5)).toEqual({ lowest: expect.closeTo(10.7, 9), highest: expect.closeTo(8.8 + (5 * 0.235) / 0.599, 9) });
    const { lowest, highest } = lyingRange(0.3);
    expect(lowest).toBe(highest);
    expect(() => lyingRange(0.2)).toThrow(/no lying trial covers a dry matter of 0.2/);
    expect(() => lyingRange(0.95)).toThrow(NoAnswer);
  });
});

test('the table of findings has one line per finding, each with source and status, and claims no milk', () => {
  const { rows } = welfareTable();
  expect(new Set(rows.map(([finding]) => finding)).size).toBe(rows.length);
  expect(rows.find(([finding]) => String(finding).startsWith('Milk gained'))?.[1]).toBe('not supported');
});
