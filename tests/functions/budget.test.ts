import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import worked from './worked-herd.json';
import {
  column,
  herd,
  inputs,
  nothingMade,
  pressAlone,
  recordOf,
  resultOf,
  rowOf,
  sentence,
  tooLittle,
  warningsOf,
  without,
} from './worked-herd.ts';

/** Plain arithmetic, held to 1e-6. All else rests on moist air, where the independent working used other formulas: 0.5 %. */
const dryAir = new Set([
  'Dried fibre density',
  'Fibre per cubicle per day',
  'Bought per cubicle per day',
  'Fibre needed',
  'Bought needed',
  'Slurry',
  'Pressed fibre',
  'Liquid dry matter',
  'Slurry could make',
  'Press could make',
  'Press hours needed',
  'Bought-in cost',
  'Bought-in cost with labour',
  'Labour with kit',
  'Repairs',
  'Ownership cost',
  'Bought-in per cubicle',
  'Loan payments',
  'Hygiene score, fibre',
  'Hygiene score, present bedding',
  'Cover of demand',
  'Fibre made',
]);

describe('the worked herd', () => {
  it.each(Object.entries(worked.results))('gives %s', (key, { value, unit }) => {
    const answer = herd(inputs);
    const row = answer.find(([found]) => found === key);
    expect(row?.[2]).toBe(unit);
    if (value === '#N/A') return expect(sentence(row?.[1])).toMatch(/^#N\/A .{10,}/);
    if (typeof value === 'string') return expect(row?.[1]).toBe(value);
    const tolerance = dryAir.has(key) ? 1e-6 : 0.005;
    // A difference of larger figures is judged by their size: the saving is left over from 37,553 a year.
    const size = ['NPV', 'NPV after tax', 'Saving after capital'].includes(key) ? 118_000 : Math.abs(value);
    return expect(Math.abs((row?.[1] as number) - value)).toBeLessThanOrEqual(tolerance * size);
  });

  it('lists its results in the fixed order', () => {
    const keys = herd(inputs)
      .slice(1)
      .map((row) => row[0]);
    expect(keys.slice(0, Object.keys(worked.results).length)).toEqual(Object.keys(worked.results));
  });
});

it('points in its working from each result to the functions behind it, each once', () => {
  const working = call(recordOf('WORKING'), ['BUDGET.HERD', [column(Object.keys(inputs)), column(Object.values(inputs))]]);
  expect(rowOf(working, 'Power')[4]).toBe('see BEDDING.PLANT.ELECTRICITY');
  expect(rowOf(working, 'Fibre per cubicle per day')[4]).toBe('see BEDDING.DEMAND.CUBICLE');
  expect(rowOf(working, 'NPV after tax')[4]).toBe('see BEDDING.INVEST.CASHFLOW');
});

describe('what was not given', () => {
  it('gives every row and names what is missing where nothing was given', () => {
    const answer = herd({ Cows: '' });
    expect(answer.slice(1, 60).map((row) => row[0])).toEqual(
      herd(inputs)
        .slice(1, 60)
        .map((row) => row[0]),
    );
    expect(sentence(rowOf(answer, 'Slurry')[1])).toBe('#N/A Cows is missing: enter a number from 1 to 20,000');
    expect(rowOf(answer, 'Still missing')[3]).toContain('Cows; Cubicles');
    expect(warningsOf({ Cows: '' })).toEqual(['Permission']);
  });

  it('goes on with what does not rest on the missing item', () => {
    const answer = herd(without('Kit cost'));
    expect(rowOf(answer, 'Fibre needed')[1]).toBeTypeOf('number');
    expect(sentence(rowOf(answer, 'Payback')[1])).toContain('Kit cost is missing');
    expect(rowOf(answer, 'Still missing').slice(1)).toEqual([1, '', 'Kit cost.']);
  });

  it('asks for water or heat, whichever is known', () => {
    const neither = without('Hot water litres per hour');
    expect(sentence(resultOf(neither, 'Supply temperature'))).toContain('at least one of them');
    expect(rowOf(herd(neither), 'Still missing').slice(1)).toEqual([1, '', 'Hot water litres per hour or Heat available kW.']);
    expect(resultOf({ ...neither, 'Heat available kW': 60 }, 'Supply temperature')).toBeCloseTo(69.05, 9);
    expect(resultOf({ ...neither, 'Heat available kW': 30 }, 'Heat needed')).toBeCloseTo(30, 9);
    expect(resultOf({ ...neither, 'Heat available kW': 90, 'Air measured at': 'ambient' }, 'Supply temperature')).toBeCloseTo(69.05, 9);
    expect(resultOf({ ...inputs, 'Hot water litres per hour': 500 }, 'Supply temperature')).toBe(
      (call(recordOf('DRYING.SUPPLYTEMP'), [3200, 7, 0.85, 500, 80, 0.85, 150])[0] as unknown[])[0],
    );
  });

  it('names every default that it used, and what it took where that hangs on other items', () => {
    expect(rowOf(herd(inputs), 'Defaults used')[3]).toContain('Exhaust humidity 0.75');
    expect(rowOf(herd(inputs), 'Defaults used')[3]).toContain('; Fibre kind dried fibre; Material now sawdust; Bought density 178; ');
    expect(rowOf(herd({ ...inputs, 'Material now': 'digested fibre' }), 'Defaults used')[3]).not.toContain('Bought density');
    const working = call(recordOf('WORKING'), ['BUDGET.HERD', [column(Object.keys(inputs)), column(Object.values(inputs))]]);
    expect(rowOf(working, 'Bought density')[2]).toBe(178);
    expect(rowOf(herd({ ...inputs, 'Exhaust humidity': 0.8 }), 'Defaults used')[3]).not.toContain('Exhaust humidity');
  });
});

describe('what cannot be used', () => {
  it('silences only the results that rest on it, with its sentence', () => {
    const answer = herd({ ...inputs, 'Slurry dry matter': 7.5 });
    const said = '#VALUE! Slurry dry matter (fraction): 7.5 is above 0.15; enter 7.5% or 0.075';
    expect(sentence(rowOf(answer, 'Pressed fibre')[1])).toBe(said);
    expect(sentence(rowOf(answer, 'NPV')[1])).toBe(said);
    expect(rowOf(answer, 'Fibre needed')[1]).toBeCloseTo(243.539, 3);
  });

  it.each([
    ['an unknown item', { ...inputs, Cowz: 3 }, /items row 43: "Cowz" is not an item of the budget; enter a name/],
    ['an item given twice', { ...inputs, ' cows ': 3 }, /items row 43: Cows is given twice; enter each item once/],
  ])('refuses %s and names its row', (_, given, said) => {
    expect(sentence(herd(given)[0]?.[0])).toMatch(said);
  });

  it('refuses two ranges that are not of a length', () => {
    expect(sentence(call(recordOf('BUDGET.HERD'), [column(['Cows', 'Cubicles']), column([1])])[0]?.[0])).toMatch(/same length/);
  });

  it.each([
    ['Dried to dry matter', 0.85, /no data is held on how fibre gives off water/],
    ['Altitude', 0.85, /is this a humidity\?/],
    ['Saving growth', 3, /is this a number of years\?; enter 3% or 0.03/],
    ['Saving growth', 0.25, /0.25 is above 0.2; enter a number from -0.2 to 0.2/],
    ['Slurry dry matter', 0.15, /Slurry dry matter \(fraction\): 0.15 is not below Pressed dry matter 0.15; enter/],
  ])('%s at %s is refused with its reason', (item, value, said) => {
    const pressed = item === 'Slurry dry matter' ? 0.15 : 0.355;
    const answers = herd({ ...inputs, 'Pressed dry matter': pressed, [item]: value }).map((row) => sentence(row[1]));
    expect(answers.some((answer) => said.test(answer))).toBe(true);
  });
});

describe('a plan without a dryer', () => {
  it('is limited by slurry and press alone, and needs no air, heat or dryer items', () => {
    const answer = herd(pressAlone);
    expect(rowOf(answer, 'Dried fibre density')[1]).toBe(300);
    expect(rowOf(answer, 'What limits')[1]).toBe('slurry');
    expect(rowOf(answer, 'Heat')[1]).toBe(0);
    expect(sentence(rowOf(answer, 'Dryer could make')[1])).toContain('there is no dryer');
    expect(rowOf(answer, 'Still missing')[1]).toBe(0);
    expect(rowOf(answer, 'Defaults used')[3]).toContain('fresh fibre');
    expect(rowOf(answer, 'Defaults used')[3]).not.toContain('Exhaust humidity');
  });

  it('says of every figure of the dryer that there is none, and does not judge a stated drum', () => {
    const answer = herd(pressAlone);
    for (const key of [
      'Heat needed',
      'Evaporation',
      'Dried output',
      'Exhaust dew point',
      'Dryer hours needed',
      'Stated output against the air',
      'Retention',
    ])
      expect(sentence(rowOf(answer, key)[1]), key).toMatch(/^#N\/A there is no dryer/);
    const drum = { 'Stated output m3 per hour': 3, 'Stated retention hours': 8, 'Drum m3': 14, 'Drum fill': 0.3 };
    expect(warningsOf({ ...pressAlone, ...drum })).not.toContain('Stated drum');
    const levers = call(recordOf('BUDGET.LEVERS'), [column(Object.keys(pressAlone)), column(Object.values(pressAlone))]);
    for (const lever of ['Air m3 per hour', 'Heat available kW', 'Heat price per kWh'])
      expect(rowOf(levers, lever).slice(2, 5).map(sentence).join(), lever).toMatch(/^(#N\/A there is no dryer[^,]*,?){3}$/);
  });

  it('scores the fibre as fresh', () => {
    expect(resultOf(pressAlone, 'Hygiene score, fibre')).toBeGreaterThan(resultOf(inputs, 'Hygiene score, fibre') as number);
  });
});

describe('a shortfall', () => {
  it('is topped up with bought bedding for just the share that is not made', () => {
    const answer = herd(tooLittle);
    const [needed, made, topped] = ['Fibre needed', 'Fibre made', 'Topped up with bought'].map(
      (key) => rowOf(answer, key)[1] as number,
    ) as [number, number, number];
    expect(made / needed).toBeCloseTo(rowOf(answer, 'Cover of demand')[1] as number, 9);
    expect(topped).toBeCloseTo((1 - made / needed) * (rowOf(answer, 'Bought needed')[1] as number), 6);
  });

  it('makes nothing, and says so, where the air carries nothing off', () => {
    const answer = herd(nothingMade);
    for (const key of ['Dryer could make', 'Cover of demand', 'Fibre made', 'Heat', 'Power']) expect(rowOf(answer, key)[1], key).toBe(0);
    expect(sentence(rowOf(answer, 'Dried output')[1])).toMatch(/^#N\/A this air carries nothing off/);
    expect(rowOf(answer, 'Topped up with bought')[1]).toBe(rowOf(answer, 'Bought needed')[1]);
    expect(sentence(rowOf(answer, 'Full cost per tonne')[1])).toBe('#N/A no fibre is made');
    expect(sentence(rowOf(answer, 'Break-even bedding price')[1])).toBe('#N/A the fibre replaces no bought bedding');
    expect(sentence(rowOf(answer, 'Break-even heat price')[1])).toBe('#N/A no heat is used');
  });
});
