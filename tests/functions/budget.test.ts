import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import { CellError, type Matrix } from '../../src/core/result.ts';
import { budgetResults } from '../../src/domain/budget-results.ts';
import { budgetItems } from '../../src/functions/budget-items.ts';
import { registry } from '../../src/functions/index.ts';
import worked from './worked-herd.json';

const recordOf = (name: string) => {
  const record = registry.find((candidate) => candidate.name === name);
  if (!record) throw new Error(`no ${name}`);
  return record;
};
const column = (values: readonly unknown[]) => values.map((value) => [value]);

type Inputs = Record<string, number | string | boolean>;
const inputs: Inputs = worked.inputs;

const herd = (given: Inputs): Matrix => call(recordOf('BUDGET.HERD'), [column(Object.keys(given)), column(Object.values(given))]);
const rowOf = (answer: Matrix, key: string) => answer.find((row) => row[0] === key) ?? [];
const sentence = (cell: unknown) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : String(cell));
const resultOf = (given: Inputs, key: string) => rowOf(herd(given), key)[1];
const warningsOf = (given: Inputs) =>
  herd(given)
    .map((row) => String(row[0]))
    .filter((key) => key.startsWith('Warning: '))
    .map((key) => key.slice(9));
const without = (...names: string[]): Inputs => Object.fromEntries(Object.entries(inputs).filter(([name]) => !names.includes(name)));
const pressAlone: Inputs = {
  ...without(
    'Air m3 per hour',
    'Hot water temperature',
    'Hot water litres per hour',
    'Heat price per kWh',
    'Drum m3',
    'Drum fill',
    'Stated output m3 per hour',
  ),
  'Dried to dry matter': 0.355,
};

/** These rest on moist air, where the independent working used other formulas: 0.5 %. All else is plain arithmetic: 1e-6. */
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
    expect(resultOf({ ...neither, 'Heat available kW': 60 }, 'Supply temperature')).toBeCloseTo(69.05, 1);
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
    ['Dried to dry matter', 0.85, /no data are held on how fibre gives off water/],
    ['Dried to dry matter', 0.3, /below the pressed dry matter/],
    ['Grant', 200_000, /above the kit cost/],
    ['Borrowed', 200_000, /above the kit cost/],
    ['Altitude', 0.85, /is this a humidity\?/],
    ['Saving growth', 3, /is this a number of years\?; enter 3% or 0.03/],
    ['Saving growth', 0.25, /0.25 is above 0.2; enter a number from -0.2 to 0.2/],
    ['Slurry dry matter', 0.15, /Slurry dry matter \(fraction\): 0.15 is not below Pressed dry matter 0.15; enter/],
    ['Outdoor temperature', 25, /Hot water temperature \(°C\): 22 is not above the outdoor temperature 25; enter/],
  ])('%s at %s is refused with its reason', (item, value, said) => {
    const near = { 'Pressed dry matter': item === 'Slurry dry matter' ? 0.15 : 0.355, 'Hot water temperature': value === 25 ? 22 : 80 };
    const answers = herd({ ...inputs, ...near, [item]: value }).map((row) => sentence(row[1]));
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
      expect(rowOf(levers, lever).slice(2).map(sentence).join(), lever).toMatch(/^(#N\/A there is no dryer[^,]*,?){3}$/);
  });

  it('scores the fibre as fresh', () => {
    expect(resultOf(pressAlone, 'Hygiene score, fibre')).toBeGreaterThan(resultOf(inputs, 'Hygiene score, fibre') as number);
  });
});

describe('a shortfall', () => {
  const short = { ...inputs, 'Slurry litres per cow': 30, 'Water litres per cow': 0 };

  it('is topped up with bought bedding for just the share that is not made', () => {
    const answer = herd(short);
    const [needed, made, topped] = ['Fibre needed', 'Fibre made', 'Topped up with bought'].map(
      (key) => rowOf(answer, key)[1] as number,
    ) as [number, number, number];
    expect(made / needed).toBeCloseTo(rowOf(answer, 'Cover of demand')[1] as number, 9);
    expect(topped).toBeCloseTo((1 - made / needed) * (rowOf(answer, 'Bought needed')[1] as number), 6);
  });

  it('makes nothing, and says so, where the air carries nothing off', () => {
    const answer = herd({
      ...inputs,
      'Outdoor temperature': 20,
      'Outdoor humidity': 1,
      'Hot water temperature': 20.5,
      'Exhaust humidity': 0.2,
    });
    expect(rowOf(answer, 'Dryer could make')[1]).toBe(0);
    expect(rowOf(answer, 'Cover of demand')[1]).toBe(0);
    expect(rowOf(answer, 'Fibre made')[1]).toBe(0);
    expect(rowOf(answer, 'Heat')[1]).toBe(0);
    expect(sentence(rowOf(answer, 'Dried output')[1])).toMatch(/^#N\/A/);
    expect(sentence(rowOf(answer, 'Full cost per tonne')[1])).toContain('no fibre is made');
  });
});

describe('every result’s equation', () => {
  const standing: Record<string, unknown> = {
    'Litres now': 18,
    'Days now': 2,
    'Bought density': 178,
    'Bought dry matter': 0.9,
    'Fibre kind': 'dried fibre',
    'Material now': 'sawdust',
  };
  const known = (plan: Record<string, unknown>) => (name: string) =>
    inputs[name] ?? plan[name] ?? standing[name] ?? budgetItems.find((item) => item.name === name)?.parameter.fallback?.value;
  const functions =
    (name: string) =>
    (...args: unknown[]) =>
      (call(recordOf(name), args)[0] as unknown[])[0];

  it.each(budgetResults.filter(({ how }) => how !== '').map(({ key, how }) => [key, how]))('%s is what its equation gives', (key, how) => {
    const plan: Record<string, unknown> = Object.fromEntries(herd(inputs).map((row) => [row[0], row[1]]));
    const sum = how
      .replace(/\[([^\]]+)\]/g, (_, name) => `known(${JSON.stringify(name)})`)
      .replace(/\b([A-Z]+\.[A-Z]+)\(/g, (_, name) => `functions("${name}")(`);
    const found = new Function('known', 'functions', 'min', `return ${sum}`)(known(plan), functions, Math.min);
    if (plan[key] instanceof CellError) expect(found).toBeInstanceOf(CellError);
    else expect(found).toBeCloseTo(plan[key] as number, 6);
  });
});

describe('each warning', () => {
  const fires: [string, Inputs][] = [
    ['Cover', { 'Slurry litres per cow': 30 }],
    ['Coldest cover', { 'Slurry litres per cow': 30 }],
    ['Thin margin', { 'Slurry litres per cow': 45 }],
    ['Press hours', { 'Press hours a day': 5 }],
    ['Dryer hours', { 'Dryer hours a day': 10 }],
    ['Heat sets the limit', { 'Heat available kW': 30 }],
    ['Stated output', {}],
    ['Stated drum', { 'Stated retention hours': 8, 'Stated output m3 per hour': 3 }],
    ['Heat per kg', { 'Exhaust humidity': 0.3, 'Heat loss': 0.5 }],
    ['Frost', { 'Coldest month temperature': -3 }],
    ['Dust', { 'Dried to dry matter': 0.61 }],
    ['Very dry', { 'Dried to dry matter': 0.7 }],
    ['Wet press', { 'Pressed dry matter': 0.3 }],
    ['Cow dry matter', { 'Slurry dry matter': 0.03 }],
    ['Payback', { 'Kit cost': 400_000 }],
    ['Discounted payback', {}],
    ['NPV', {}],
    ['Loan cover', {}],
    ['Loan term', { 'Loan years': 12 }],
    ['Old price', { 'Price date': 45_000, 'Budget date': 45_400 }],
    ['After capital', {}],
    ['Mastitis margin', { 'Cases per 100 now': 70 }],
    ['Score', { 'Shed temperature': 20 }],
    ['Band edge', {}],
    ['Worse than now', {}],
    ['Interval', {}],
    ['No dryer', { 'Dried to dry matter': 0.355 }],
    ['Stocking', { Cows: 450 }],
    ['Permission', {}],
    ['Digested or composted', { 'Fibre kind': 'digested fibre' }],
  ];
  const calm: Inputs = {
    ...without('Stated output m3 per hour', 'Borrowed', 'Loan years', 'Loan rate'),
    'Kit cost': 50_000,
    'Bought price per t': 400,
    'Days between beddings': 1,
    'Bedding litres per cubicle each time': 9,
    'Shed temperature': 5,
    'Dirty udders': 0.1,
    'Bought dry matter': 0.5,
    'Dried to dry matter': 0.6,
    'Permission confirmed': 'yes',
    'Cases per 100 now': 20,
  };

  it.each(fires)('%s fires', (key, change) => {
    expect(warningsOf({ ...inputs, ...change })).toContain(key);
  });

  it('stays quiet where all is well', () => {
    expect(warningsOf(calm)).toEqual([]);
  });

  it('compares dates, and asks for one where text was typed', () => {
    const dated = { 'Price date': 45_000, 'Budget date': 45_365 };
    expect(warningsOf({ ...inputs, ...dated })).not.toContain('Old price');
    expect(warningsOf({ ...inputs, ...dated, 'Budget date': 45_366 })).toContain('Old price');
    const typed = call(recordOf('BUDGET.HERDS'), [[['Price date']], [['1 May 2024']], [['Slurry']]]);
    expect(sentence(typed[1]?.[1])).toMatch(/Price date \(date\): "1 May 2024" is text, not a number; enter a date that the sheet knows/);
  });

  it('says measure it just above what the air carries, and not with this air well above', () => {
    const meaning = (stated: number) =>
      String(rowOf(herd({ ...inputs, 'Stated output m3 per hour': stated }), 'Warning: Stated output')[3]);
    expect(meaning(0.5)).toMatch(/^Measure it/);
    expect(meaning(1)).toMatch(/^Not with this air/);
  });
});

describe('many herds, a sweep and the levers', () => {
  const names = Object.keys(inputs);
  const values = Object.values(inputs);

  it('gives a bad herd its error in each of its cells and leaves the others alone', () => {
    const bad = values.map((value, k) => (names[k] === 'Cows' ? -4 : value));
    const answer = call(recordOf('BUDGET.HERDS'), [
      [['Herd', ...names]],
      [
        ['Hill', ...values],
        ['Vale', ...bad],
        ['Moor', ...values],
      ],
    ]);
    expect(answer[0]).toEqual([
      'Herd',
      'Fibre needed',
      'What limits',
      'Cover of demand',
      'Saving',
      'Payback',
      'NPV',
      'Break-even mastitis cases',
      'Hygiene score, fibre',
      'Hygiene span, fibre',
      'Warnings',
    ]);
    expect(answer[2]?.[0]).toBe('Vale');
    expect(answer[2]?.slice(1).every((cell) => sentence(cell).startsWith('#VALUE! Cows (cows): -4 is below 1'))).toBe(true);
    expect(answer[3]?.slice(1)).toEqual(answer[1]?.slice(1));
  });

  it('keeps a herd beside its answer where a row is left blank, and drops blank rows at the end', () => {
    const blank = names.map(() => null);
    const answer = call(recordOf('BUDGET.HERDS'), [[names], [values, blank, values, blank, blank], [['Slurry']]]);
    expect(answer.slice(1).map((row) => row.slice(0, 2))).toEqual([
      [1, 28.8],
      ['', ''],
      [3, 28.8],
    ]);
  });

  it('gives just the results asked for', () => {
    const answer = call(recordOf('BUDGET.HERDS'), [[names], [values], [['npv', 'Payback']]]);
    expect(answer[0]).toEqual(['Herd', 'NPV', 'Payback', 'Warnings']);
    expect(sentence(call(recordOf('BUDGET.HERDS'), [[names], [values], [['Profit']]])[0]?.[0])).toContain(
      '"Profit" is not a result of the budget',
    );
  });

  it('counts defaults and gaps where asked, and refuses columns without a heading', () => {
    const counted = call(recordOf('BUDGET.HERDS'), [[['Cows', 'Cubicles']], [[400, 420]], [['Defaults used', 'still missing']]]);
    expect(counted[0]).toEqual(['Herd', 'Defaults used', 'Still missing', 'Warnings']);
    expect(counted[1]?.[2]).toBe(rowOf(herd({ Cows: 400, Cubicles: 420 }), 'Still missing')[1]);
    const wide = call(recordOf('BUDGET.HERDS'), [[['Cows', 'Cubicles']], [[400, 420, 0.07]]]);
    expect(sentence(wide[0]?.[0])).toBe('#VALUE! herds (table): has 3 columns below 2 headings; enter a column for each heading');
  });

  it('sweeps one item as a fresh plan would', () => {
    const answer = call(recordOf('BUDGET.SWEEP'), [
      column(names),
      column(values),
      'dried to dry matter',
      column([0.5, 'wet', 0.6]),
      [['Saving']],
    ]);
    expect(answer[0]).toEqual(['Dried to dry matter', 'Saving', 'Warnings']);
    expect(answer[1]?.[1]).toBe(resultOf({ ...inputs, 'Dried to dry matter': 0.5 }, 'Saving'));
    expect(sentence(answer[2]?.[1])).toContain('"wet" is text');
    expect(answer[3]?.[1]).toBe(resultOf({ ...inputs, 'Dried to dry matter': 0.6 }, 'Saving'));
  });

  it('names lever values that really give a cover of 1 and an NPV of 0', () => {
    const answer = call(recordOf('BUDGET.LEVERS'), [column(names), column(values)]);
    expect(answer.slice(1).map((row) => row[0])).toEqual([
      'Days between beddings',
      'Bedding litres per cubicle each time',
      'Share of dry matter caught',
      'Press hours a day',
      'Air m3 per hour',
      'Hot water litres per hour',
      'Dried to dry matter',
      'Kit cost',
      'Bought price per t',
      'Heat price per kWh',
    ]);
    // A lever moves the fibre's bedding; what is bought now stays as it is, though it was left to follow.
    const held = { ...inputs, 'Litres now': 18, 'Days now': 2 };
    for (const [lever, , , cover, npv] of answer.slice(1)) {
      if (typeof cover === 'number')
        expect(resultOf({ ...held, [String(lever)]: cover }, 'Cover of demand'), String(lever)).toBeCloseTo(1, 6);
      else expect(sentence(cover)).toMatch(/^#N\/A no value between/);
      // Haulage is paid by whole loads, so NPV steps where the bought tonnes fill one load more: it then crosses 0 without touching it.
      if (typeof npv === 'number')
        expect(Math.abs(resultOf({ ...held, [String(lever)]: npv }, 'NPV') as number), String(lever)).toBeLessThan(1000);
      else expect(sentence(npv)).toMatch(/^#N\/A/);
    }
  });

  it('lists every item with its unit, range, and the source of its default', () => {
    const rows = call(recordOf('BUDGET.INPUTS'), []);
    expect(rows.length).toBe(budgetItems.length + 1);
    expect(rowOf(rows, 'Exhaust humidity')).toEqual([
      'Exhaust humidity',
      'fraction',
      0.75,
      0.2,
      1,
      '',
      expect.stringMatching(/\w/),
      'memory',
    ]);
    expect(rowOf(rows, 'Cows')[2]).toBe('required');
  });
});
