import { describe, expect, test } from 'vitest';
import { captureShare, liquidDryMatter, pressedCake, slurryProduced } from '../../src/domain/separation.ts';

/** Worked by hand from the two balances, to the digits shown; half of the last digit is the tolerance. */
describe('separation of slurry at 8 % dry matter, by hand', () => {
  test('pressed 25 %, liquid 5.5 %: 40.064 % caught, 0.12821 t of cake per t', () => {
    const { capture, cake_share } = captureShare(0.08, 0.25, 0.055);
    expect(Math.abs(capture - 0.40064)).toBeLessThan(5e-6);
    expect(Math.abs(cake_share - 0.12821)).toBeLessThan(5e-6);
  });
  test('pressed 35.5 %, 30 % caught: 0.0676 t of cake per t, liquid 6.01 %', () => {
    expect(Math.abs(pressedCake(1, 0.08, 0.355, 0.3).cake_t - 0.0676)).toBeLessThan(5e-5);
    expect(Math.abs(liquidDryMatter(0.08, 0.355, 0.3).liquid_dm - 0.0601)).toBeLessThan(5e-5);
  });
});

/** Quoted. The sums are exact in the examples, so only the length of a month, taken as 365/12 days, needs any tolerance. */
describe('worked examples of slurry storage in official guidance', () => {
  test('United Kingdom: 130 cows × 1.59 m³ a month × 5 months = 1,033.5 m³', () => {
    const month = 365 / 12;
    expect(slurryProduced(130, 1590 / month, 0).slurry_t_day * month * 5).toBeCloseTo(1033.5, 6);
  });
  test('Ireland: 100 cows × 0.33 m³ a week × 16 weeks = 528 m³', () => {
    expect(slurryProduced(100, 330 / 7, 0).slurry_t_day * 7 * 16).toBeCloseTo(528, 6);
  });
});

/** Two published figures for one cow, both rounded: RB209 (quoted) and Scotland, NVZ table F, at 650 kg (seen). */
test('64 litres a day and 1.93 m³ a month of 365/12 days are the same cow within 1 %', () => {
  expect(Math.abs((slurryProduced(1, 64, 0).slurry_t_day * 365) / 12 / 1.93 - 1)).toBeLessThan(0.01);
});
