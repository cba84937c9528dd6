import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editable, isoDayOf, parseNumber, readIn, sayValue, serialOf, showIn } from '../../src/surfaces/pane/numbers.ts';

describe('numbers as they are typed', () => {
  it.each([
    ['1,234.5', 'en-GB', 1234.5],
    ['1.234,5', 'de-DE', 1234.5],
    ['1 234,5', 'fr-FR', 1234.5],
    ['0,35', 'de-DE', 0.35],
    ['.5', 'en-GB', 0.5],
    ['−12', 'en-GB', -12],
    ['35 %', 'en-GB', 0.35],
    ['1e3', 'en-GB', 1000],
  ])('reads %s in %s', (text, locale, value) => expect(parseNumber(text, locale)).toBe(value));

  it.each([
    ['0,35', 'en-GB'],
    ['1.5', 'de-DE'],
    ['12,34,567', 'en-GB'],
    ['about 5', 'en-GB'],
    ['', 'en-GB'],
    ['.', 'en-GB'],
  ])('does not guess at %s in %s', (text, locale) => expect(parseNumber(text, locale)).toBeUndefined());

  it('reads back whatever it shows for editing', () => {
    const twelve = fc.double({ min: -1e9, max: 1e9, noNaN: true }).map((value) => Number(value.toPrecision(12)));
    fc.assert(
      fc.property(twelve, fc.constantFrom('en-GB', 'de-DE', 'fr-FR'), (value, locale) => {
        expect(parseNumber(editable(value, locale), locale)).toBeCloseTo(value, 6);
      }),
    );
  });

  it('takes a fraction as a per cent, with or without the sign', () => {
    expect(readIn('fraction', '35', 'en-GB')).toBe(0.35);
    expect(readIn('fraction', '35%', 'en-GB')).toBe(0.35);
    expect(showIn('fraction', 0.075, 'en-GB')).toBe('7.5');
  });
});

describe('numbers as they are said', () => {
  it('has four figures, the unit, and per cent for a fraction', () => {
    expect(sayValue(243.539, 't/year', 'en-GB')).toBe('243.5 t/year');
    expect(sayValue(14648.9, 'per year', 'en-GB')).toBe('14,649 per year');
    expect(sayValue(0.355, 'fraction', 'en-GB')).toBe('35.5 %');
    expect(sayValue(47.51, '0–100', 'en-GB')).toBe('48');
  });

  // The first day that spreadsheets count rightly is 1 March 1900, number 61; 1 January 2026 is 46023 in any of them.
  it('counts days as spreadsheets do', () => {
    expect(serialOf('1900-03-01')).toBe(61);
    expect(serialOf('2026-01-01')).toBe(46_023);
    expect(isoDayOf(46_023)).toBe('2026-01-01');
    expect(sayValue(46_023, 'date', 'en-GB')).toBe('1 January 2026');
  });
});
