import { describe, expect, it } from 'vitest';
import { herd, type Inputs, inputs, pressAlone, resultOf, rowOf, sentence, without } from './worked-herd.ts';

const caution = 'a planning aid, no diagnosis: talk to your vet. Its weights are judgement.';

describe('a result that items of the plan speak against', () => {
  const refused: readonly (readonly [change: Inputs, key: string, says: string])[] = [
    [
      { 'Dried to dry matter': 0.3 },
      'Fibre needed',
      '#VALUE! Dried to dry matter (fraction): 0.3 is below the pressed dry matter 0.355; enter the dry matter the dryer reaches, or Dryer no where there is none',
    ],
    [
      { 'Hot water temperature': 22, 'Outdoor temperature': 22 },
      'Supply temperature',
      '#VALUE! Hot water temperature (°C): 22 is not above the outdoor temperature 22; enter the temperature of the hot water to the heater',
    ],
    [
      { 'Hot water temperature': 22, 'Coldest month temperature': 25 },
      'Supply temperature, coldest month',
      '#VALUE! Hot water temperature (°C): 22 is not above the coldest month’s temperature 25; enter the temperature of the hot water to the heater',
    ],
    [{ Grant: 118_001 }, 'NPV', '#VALUE! Grant (money): 118,001 is above the kit cost 118,000; enter a grant from 0 to the kit cost'],
    [
      { Borrowed: 118_001 },
      'Loan payments',
      '#VALUE! Borrowed (money): 118,001 is above the kit cost 118,000; enter an amount from 0 to the kit cost',
    ],
    [
      { 'Kit cost': 300_000 },
      'Break-even heat price',
      '#N/A there is none: even at nothing the kit would not pay back at the discount rate',
    ],
  ];

  it.each(refused)('%j: %s says why, in the words of the items', (change, key, says) =>
    expect(sentence(resultOf({ ...inputs, ...change }, key))).toBe(says),
  );

  it('is given where grant or loan cover the whole kit', () => {
    expect(resultOf({ ...inputs, Grant: 118_000 }, 'Payback')).toBe(0);
    expect(resultOf({ ...inputs, Borrowed: 118_000 }, 'Loan payments')).toBeCloseTo((14_959.86439834608 * 118_000) / 82_600, 6);
  });
});

describe('a plan without a loan or a dryer', () => {
  it('has no loan payments and no cover of them, and asks for no terms', () => {
    const answer = herd(without('Borrowed', 'Loan years', 'Loan rate'));
    expect(rowOf(answer, 'Loan payments')[1]).toBe(0);
    expect(sentence(rowOf(answer, 'Loan cover')[1])).toBe('#N/A nothing is borrowed');
  });

  it('takes power for the press alone, and has no break-even price of heat', () => {
    const answer = herd(pressAlone);
    const hours = (rowOf(answer, 'Press hours needed')[1] as number) / 2;
    // By hand: rating · load 0.7 / efficiency 0.85 · hours · days · price, for the share that is made.
    const kw = (5.5 * 0.7) / 0.85;
    const share = (rowOf(answer, 'Fibre made')[1] as number) / (rowOf(answer, 'Fibre needed')[1] as number);
    expect(rowOf(answer, 'Power')[1]).toBeCloseTo(kw * hours * 300 * share * 0.26, 6);
    expect(sentence(rowOf(answer, 'Break-even heat price')[1])).toBe('#N/A there is no dryer, so no heat is bought');
  });
});

describe('what a result means', () => {
  it.each([
    [{}, 'hot water', 'hot water'],
    [{ 'Heat available kW': 58 }, 'hot water', 'heat available'],
    [{ 'Heat available kW': 30 }, 'heat available', 'heat available'],
  ])('says with %j what sets the supply temperature, usually and in the coldest month', (change, usual, coldest) => {
    const answer = herd({ ...inputs, ...change });
    expect(rowOf(answer, 'Supply temperature')[3]).toBe(`Warm air into the drum; the ${usual} sets it.`);
    expect(rowOf(answer, 'Supply temperature, coldest month')[3]).toBe(
      `Warm air into the drum in the coldest month; the ${coldest} sets it.`,
    );
  });

  it('names the band of a score, and both where what was not given could move it', () => {
    const given = herd(inputs);
    expect(rowOf(given, 'Hygiene score, fibre')[3]).toBe(`moderate: 0 is best; ${caution}`);
    expect(rowOf(given, 'Hygiene score, present bedding')[3]).toBe(`moderate: 0 is best; ${caution}`);
    expect(rowOf(given, 'Hygiene span, fibre')).toEqual([
      'Hygiene span, fibre',
      '48–48',
      '0–100',
      `moderate over what was not given; ${caution}`,
    ]);
    const guessed = herd(without('Shed temperature', 'Dirty udders'));
    expect(rowOf(guessed, 'Hygiene span, fibre').slice(1)).toEqual([
      '40–69',
      '0–100',
      `moderate to raised over what was not given; ${caution}`,
    ]);
    expect(rowOf(guessed, 'Hygiene span, present bedding')[1]).toBe('26–55');
    expect(rowOf(given, 'Lying time, fibre')[1]).toBe('10.9–11.4');
  });
});
