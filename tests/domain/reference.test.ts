import { describe, expect, test } from 'vitest';
import { cautions, conditionsFor, countries } from '../../src/domain/reference.ts';

const rulesOf = (country: (typeof countries)[number]) => conditionsFor(country).rows.map((row) => row.join(' | '));

describe('the rules on manure fibre', () => {
  test.each(countries)('%s has a first line under its own name and asks for a recheck in every line', (country) => {
    const { rows } = conditionsFor(country);
    expect(rows[0]?.[0]).toBe(country);
    for (const row of rows) expect(row[4]).toMatch(/milk buyer/);
  });

  test('list every country where none is named, each key once', () => {
    const keys = conditionsFor().rows.map(([key]) => key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(keys).toEqual(expect.arrayContaining([...countries]));
    expect(keys.filter((key) => key?.startsWith('Germany'))).toEqual(['Germany', 'Germany 2', 'Germany 3', 'Germany 4']);
  });

  test.each(['Northern Ireland', 'Ireland', 'France', 'Denmark', 'United States', 'other'] as const)(
    '%s, where the position is not known, is told to ask',
    (country) => expect(rulesOf(country)[0]).toMatch(/: ask/),
  );

  test('in England, Wales and Scotland ask before a dryer is ordered, since heated fibre is not settled', () => {
    for (const country of ['England', 'Wales', 'Scotland'] as const) {
      expect(rulesOf(country).join()).toMatch(/drum-dried fibre.*ask before you order a dryer/);
      expect(rulesOf(country)[0]).toMatch(/can be withdrawn at any time/);
    }
  });

  test('say how each was come by, and what is only remembered stays so', () => {
    expect(rulesOf('England').join()).toMatch(/within about 12 hours.*recalled, not checked \(memory\)/);
    expect(rulesOf('Germany')[0]).toMatch(/not permitted.*a German farm page \(seen\)/);
  });
});

describe('the cautions', () => {
  const said = cautions().rows.map((row) => row.join(' | '));
  test.each([
    [/slurry gas.*at least 30 minutes.*health and safety authority/],
    [/pits and tanks.*breathing apparatus and two people outside/],
    [/machinery.*guards.*engineer/],
    [/hot water.*scalds.*heating engineer/],
    [/dust and fire.*heats in a heap.*dust burn.*insurer/],
    [/udder health.*no diagnosis.*vet/],
    [/law.*authority.*milk buyer/],
    [/tax.*accountant/],
  ])('cover %s', (pattern) => expect(said.some((row) => pattern.test(row))).toBe(true));
});
