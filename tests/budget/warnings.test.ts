import { describe, expect, it } from 'vitest';
import { warningsOf } from '../../src/budget/warnings.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';
import { type Figures, planOf } from './plan-of.ts';
import { beyond, never } from './warnings-beyond.ts';

const keysOf = (change: Partial<Figures>) => warningsOf(planOf(change)).map(({ key }) => key.slice('Warning: '.length));

describe('a warning', () => {
  it('stays quiet where every figure stands just at its trigger', () => {
    expect(keysOf({})).toEqual([]);
    expect(keysOf({ cow_dm_kg_day: 4 })).toEqual([]);
    expect(keysOf({ heat_mj_kg: 2.6 })).toEqual([]);
  });

  it.each(beyond)('%s fires just beyond it, with its figure and the whole of what to do', (key, change, value, unit, meaning) => {
    expect(warningsOf(planOf(change))).toContainEqual({ key: `Warning: ${key}`, value, unit, meaning });
  });

  it('fires alone, except where one follows from another', () => {
    const together = beyond.map(([, change]) => keysOf(change)).filter((keys) => keys.length > 1);
    expect(together).toEqual([
      ['Cover', 'Thin margin'],
      ['Cover', 'Thin margin'],
    ]);
  });

  it('says that very dry fibre may burn, beside the dust, from beyond 67 %', () => {
    expect(warningsOf(planOf({ target_dm: 0.671 })).map(({ meaning }) => meaning)).toEqual([
      'Fibre above about 60 % dry matter is dusty (common practice, no source): extract or damp it down, and mind lungs and fire.',
      'Drying this far costs heat for little gain, and dry fibre and its dust burn: ask about fire safety before you plan on it.',
    ]);
  });

  it('judges a score at the very edge of a band as both raised and near the edge', () => {
    expect(keysOf({ fibre_score: 50, present_score: 50 })).toEqual(['Score', 'Band edge']);
    expect(keysOf({ fibre_score: 71.9, present_score: 70 })).toEqual(['Score']);
    expect(keysOf({ fibre_score: 72, present_score: 70 })).toEqual(['Score', 'Band edge']);
  });

  it('says nothing of a loan’s term where nothing is borrowed', () => {
    expect(keysOf({ borrowed: 0, loan_years: 12 })).toEqual([]);
  });

  it('says nothing of the price’s age or the mastitis margin where their items were not given', () => {
    expect(keysOf({ price_date: new NoAnswer('Price date is missing'), budget_date: 90_000 })).toEqual([]);
    expect(keysOf({ cases_per_100_now: new NoAnswer('Cases per 100 now is missing'), cases_to_npv_0: never })).toEqual([]);
  });
});
