import { describe, expect, test } from 'vitest';
import { lyingByAmount, lyingTimes } from '../../src/domain/welfare.ts';

const hoursAt = (dm: number, trial: string) => lyingTimes(dm).rows.find(([key]) => key === trial)?.[1] as number;

/** Tolerance: 0.05 h, half of the last digit printed; the printed standard errors are eight times that. */
const printed = 0.05;

describe('Reich et al. 2010, J. Dairy Sci., abstract (seen): 10.4 ± 0.4 h at 34.7 % DM, 11.5 ± 0.4 h at 89.8 %', () => {
  test('wettest bed, taken as 35 %', () => expect(Math.abs(hoursAt(0.35, 'Reich 2010') - 10.4)).toBeLessThan(printed));
  test('driest bed', () => expect(Math.abs(hoursAt(0.898, 'Reich 2010') - 11.5)).toBeLessThan(printed));
});

describe('Fregonesi et al. 2007, J. Dairy Sci. 90:5468 (difference quoted, hours from memory)', () => {
  test('8.8 h at 26.5 % and 13.8 h at 86.4 % DM', () => {
    expect(hoursAt(0.265, 'Fregonesi 2007')).toBeCloseTo(8.8, 9);
    expect(hoursAt(0.864, 'Fregonesi 2007')).toBeCloseTo(13.8, 9);
  });
  test('about 5 h a day less on the wet bed', () => {
    expect(Math.abs(hoursAt(0.864, 'Fregonesi 2007') - hoursAt(0.265, 'Fregonesi 2007') - 5)).toBeLessThan(printed);
  });
});

describe('Tucker & Weary 2004, J. Dairy Sci. 87:2889, abstract (seen)', () => {
  test('12.3 ± 0.53 h on bare mattresses', () => expect(Math.abs(lyingByAmount(0).hours_day - 12.3)).toBeLessThan(printed));
  test('13.8 ± 0.53 h with 7.5 kg of sawdust', () => expect(Math.abs(lyingByAmount(7.5).hours_day - 13.8)).toBeLessThan(printed));
});
