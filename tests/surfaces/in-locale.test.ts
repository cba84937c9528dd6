import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { describe as describeArgument } from '../../src/core/words.ts';
import { said, spell } from '../../src/domain/spell.ts';
import { registry } from '../../src/functions/index.ts';
import { inLocale } from '../../src/surfaces/in-locale.ts';

const arguments_ = registry.flatMap(({ parameters }) => parameters);
/** Of the size that our sentences write out in full. */
const figure = fc.double({ min: 1e-4, max: 1e12, noNaN: true });

describe('a sentence in the numbers of a locale', () => {
  it.each([
    ['dm_in (fraction): 35 is above 1; enter 35% or 0.35', 'dm_in (fraction): 35 is above 1; enter 35% or 0,35'],
    ['a number from -1,000,000.5 to 1,200', 'a number from -1.000.000,5 to 1.200'],
    ['takes 4.6 to 9.2, usually 0.45–0.62.', 'takes 4,6 to 9,2, usually 0,45–0,62.'],
    ['0.785 × diameter² × length', '0,785 × diameter² × length'],
    ['2.25577e-5 is too small', '2,25577e-5 is too small'],
  ])('%s', (english, german) => {
    expect(inLocale(english, 'de-DE')).toBe(german);
    expect(inLocale(english, 'en-GB')).toBe(english);
    expect(inLocale(english, 'en-IE')).toBe(english);
  });

  it('has the marks of the locale’s own standard data (CLDR, as the engine carries it)', () => {
    fc.assert(
      fc.property(figure, fc.constantFrom('de-DE', 'fr-FR', 'en-GB'), (value, locale) => {
        const own = new Intl.NumberFormat(locale, { maximumFractionDigits: 20 }).format(Number(value.toPrecision(6)));
        expect(inLocale(spell(value), locale)).toBe(own);
      }),
    );
  });

  it('has every number of the sentence in it, and the words between as they were', () => {
    fc.assert(
      fc.property(figure, figure, (one, other) => {
        const sentence = inLocale(said`cubicles (cubicles): ${-one} is below ${other}; enter ${other}, ${one} or "${one}".`, 'de-DE');
        const [a, b] = [one, other].map((value) => inLocale(spell(value), 'de-DE'));
        expect(sentence).toBe(`cubicles (cubicles): -${a} is below ${b}; enter ${b}, ${a} or "${spell(one)}".`);
      }),
    );
  });

  it('parts arguments by semicolons where the comma is a decimal mark, and leaves lists, brackets and names alone', () => {
    expect(inLocale('min(1, waste(0.5, 2)) of [Hygiene score, fibre] (1, 2 and 3), or 1, 2', 'fr-FR')).toBe(
      'min(1; waste(0,5; 2)) of [Hygiene score, fibre] (1, 2 and 3), or 1, 2',
    );
  });

  it.each([
    'Veterinary Record, doi 10.1002/vetr.3605, 2021',
    'ECMA-376 part 1, 18.3.1.99; version 19.3 of 25.12.2026',
    'Holman, Heat Transfer, example 10.11; table 3.2, equation 4.5',
    '"1.5 t" is text, not a number',
    'pages 12,13',
    'B2.5x and H2.1',
  ])('leaves what is no amount of ours alone: %s', (sentence) => {
    expect(inLocale(sentence, 'de-DE')).toBe(sentence);
  });

  it('changes no word that a cell must hold exactly: the choices and the items of the budget', () => {
    const words = [...arguments_.flatMap(({ choices }) => choices ?? []), ...budgetItems.map(({ name }) => name)];
    expect(words.length).toBeGreaterThan(100);
    expect(words.map((word) => inLocale(word, 'de-DE'))).toEqual(words);
  });

  it('leaves no dot but before three digits in what any function says of its arguments in German', () => {
    const sentences = arguments_.map((parameter) => inLocale(describeArgument(parameter), 'de-DE'));
    expect(sentences.filter((sentence) => /\d\.(?!\d{3}\b)\d/.test(sentence))).toEqual([]);
  });
});
