import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import { CellError, type Matrix } from '../../src/core/result.ts';
import { column, herd, type Inputs, inputs, pressAlone, recordOf, resultOf, rowOf, sentence, without } from './worked-herd.ts';

const callFor = (name: string, given: Inputs, ...rest: unknown[]): Matrix =>
  call(recordOf(name), [column(Object.keys(given)), column(Object.values(given)), ...rest]);
const cell = (table: Matrix, key: string, heading: string): unknown => {
  const at = (table[0] ?? []).indexOf(heading);
  return rowOf(table, key)[at];
};

describe('BUDGET.PLANS', () => {
  const changes = [
    ['', 'press alone', 'dearer', 'broken', 'without a loan'],
    ['Dried to dry matter', 0.355, null, null, null],
    ['Kit cost', 90_000, 130_000, null, null],
    ['Grant', null, null, 200_000, null],
    ['Borrowed', null, null, null, 'none'],
  ];

  it('has the herd as given in its base, and in each plan what BUDGET.HERD says of it', () => {
    const table = callFor('BUDGET.PLANS', inputs, changes, [['NPV', 'Cover of demand', 'Loan payments']]);
    for (const key of ['NPV', 'Cover of demand', 'Loan payments']) {
      expect(cell(table, key, 'base')).toEqual(resultOf(inputs, key));
      expect(cell(table, key, 'dearer')).toEqual(resultOf({ ...inputs, 'Kit cost': 130_000 }, key));
    }
    const alone = { ...inputs, 'Dried to dry matter': 0.355, 'Kit cost': 90_000 };
    expect(cell(table, 'Cover of demand', 'press alone')).toEqual(resultOf(alone, 'Cover of demand'));
    expect(cell(table, 'Loan payments', 'without a loan')).toBe(0);
  });

  it('says what the dearer plan costs more and what that earns', () => {
    const table = callFor('BUDGET.PLANS', inputs, changes);
    expect(cell(table, 'Extra capital over base', 'base')).toBe(0);
    expect(cell(table, 'Extra capital over base', 'dearer')).toBe(12_000);
    const npv = (given: Inputs) => resultOf(given, 'NPV') as number;
    expect(cell(table, 'Extra NPV over base', 'dearer')).toBeCloseTo(npv({ ...inputs, 'Kit cost': 130_000 }) - npv(inputs), 6);
  });

  it('shows a refused plan’s error in each of its cells and leaves the others alone', () => {
    const table = callFor('BUDGET.PLANS', inputs, changes);
    const at = (table[0] ?? []).indexOf('broken');
    for (const row of table.slice(1)) expect(sentence(row[at])).toContain('Grant (money): 200,000 is above');
    expect(cell(table, 'NPV', 'dearer')).toBeTypeOf('number');
    expect(cell(table, 'Warnings', 'base')).toBeTypeOf('number');
  });

  it('does not set the NPV of plans with different lives against each other', () => {
    const table = callFor('BUDGET.PLANS', inputs, [
      ['', 'longer'],
      ['Life years', 15],
    ]);
    expect(sentence(cell(table, 'Extra NPV over base', 'longer'))).toContain('compare Saving after capital');
  });

  it('refuses an unknown item, one given twice, and a table without a plan, in words', () => {
    const refusal = (table: unknown[][]) => sentence(callFor('BUDGET.PLANS', inputs, table)[0]?.[0]);
    expect(
      refusal([
        ['', 'a'],
        ['Kit price', 5],
      ]),
    ).toContain('changes row 2: "Kit price" is not an item of the budget');
    expect(
      refusal([
        ['', 'a'],
        ['Kit cost', 5],
        ['kit cost', 6],
      ]),
    ).toContain('changes row 3: Kit cost is given twice');
    expect(refusal([['Kit cost'], ['Grant']])).toContain('holds no plan');
  });

  it('names a plan that has no name, and passes over blank rows', () => {
    const table = callFor('BUDGET.PLANS', inputs, [
      ['', null],
      [null, null],
      ['Kit cost', 90_000],
    ]);
    expect(table[0]).toContain('plan 1');
    expect(cell(table, 'Extra capital over base', 'plan 1')).toBe(-28_000);
  });
});

const sure = [
  ['Kit cost', 118_000, null, 118_000],
  ['Bought price per t', 165, 165, 165],
];
const doubtful = [
  ['Fresh fibre density', 250, null, 400],
  ['Bought price per t', 120, null, 220],
  ['Kit cost', 110_000, null, 140_000],
];

describe('BUDGET.RANGE', () => {
  it('gives what BUDGET.HERD gives where nothing is in doubt', () => {
    const table = callFor('BUDGET.RANGE', inputs, sure, [['NPV', 'Cover of demand']], 200);
    for (const key of ['NPV', 'Cover of demand'])
      for (const heading of ['mean', '10th percentile', 'median', '90th percentile'])
        expect(cell(table, key, heading)).toBeCloseTo(resultOf(inputs, key) as number, 6);
    expect(cell(table, 'NPV', 'chance')).toBe(0);
    expect(cell(table, 'Cover of demand', 'chance')).toBe(1);
    expect(cell(table, 'NPV', 'no answer')).toBe(0);
  });

  it('finds the exact percentiles where one price alone is in doubt: the NPV is straight in it', () => {
    const table = callFor('BUDGET.RANGE', inputs, [['Bought price per t', 100, 150, 250]], [['NPV']], 4000);
    const npvAt = (price: number) => resultOf({ ...inputs, 'Bought price per t': price }, 'NPV') as number;
    // Quantiles of the triangular distribution: low + √(p·(high − low)·(likely − low)), high − √((1 − p)·(high − low)·(high − likely)).
    expect(cell(table, 'NPV', '10th percentile')).toBeCloseTo(npvAt(100 + Math.sqrt(0.1 * 150 * 50)), -3);
    expect(cell(table, 'NPV', 'median')).toBeCloseTo(npvAt(250 - Math.sqrt(0.5 * 150 * 100)), -3);
    expect(cell(table, 'NPV', '90th percentile')).toBeCloseTo(npvAt(250 - Math.sqrt(0.1 * 150 * 100)), -3);
  });

  it('gives the same answer for the same seed, and another for another', () => {
    const drawn = (seed: number) => callFor('BUDGET.RANGE', inputs, doubtful, [['NPV']], 300, seed);
    expect(drawn(4)).toEqual(drawn(4));
    expect(cell(drawn(4), 'NPV', 'mean')).not.toBe(cell(drawn(5), 'NPV', 'mean'));
  });

  it('ranks a plan that is never paid back as the longest, and counts the draws without an answer', () => {
    const table = callFor('BUDGET.RANGE', inputs, [['Bought price per t', 60, null, 220]], [['Payback']], 400);
    expect(cell(table, 'Payback', 'mean')).toBe('');
    expect(cell(table, 'Payback', 'no answer')).toBeGreaterThan(40);
    expect(sentence(cell(table, 'Payback', '90th percentile'))).toContain('#N/A not paid back');
    const chance = cell(table, 'Payback', 'chance') as number;
    expect(chance).toBeCloseTo(1 - (cell(table, 'Payback', 'no answer') as number) / 400, 9);
  });

  it('leaves a draw in which two items rule each other out without an answer', () => {
    const table = callFor('BUDGET.RANGE', { ...inputs, Grant: 115_000 }, [['Kit cost', 110_000, null, 140_000]], [['NPV']], 400);
    expect(cell(table, 'NPV', 'no answer')).toBeGreaterThan(0);
  });

  it('has no chance for a loan that there is not, and shows a score’s span as it is in the plan', () => {
    const table = callFor(
      'BUDGET.RANGE',
      without('Borrowed'),
      doubtful,
      [['Loan cover', 'Hygiene score, fibre', 'Hygiene span, fibre']],
      100,
    );
    expect(cell(table, 'Loan cover', 'chance')).toBe('');
    expect(cell(table, 'Hygiene span, fibre', 'unit')).toMatch(/^\d+–\d+$/);
  });

  it.each([
    [[['Discount rate', 0.05, null, 0.1]], 'Discount rate is a preference, not a risk'],
    [[['Bed', 1, 1, 1]], 'Bed is a word, not a number'],
    [[['Kit cost', 130_000, null, 140_000]], '130,000; 118,000; 140,000 do not rise'],
    [[['Kit cost', -5, null, 140_000]], 'ranges row 1, low (money): -5'],
    [[['Drum fil', 0.1, null, 0.2]], '"Drum fil" is not an item of the budget'],
    [[['Stated retention hours', 4, null, 8]], 'ranges row 1, likely: is blank'],
    [
      [
        ['Kit cost', 118_000, null, 119_000],
        ['kit cost', 118_000, null, 119_000],
      ],
      'Kit cost is given twice',
    ],
  ])('refuses %j in words', (ranges, words) => {
    expect(sentence(callFor('BUDGET.RANGE', inputs, ranges)[0]?.[0])).toContain(words);
  });

  it('is never silent about a refused input of the plan', () => {
    expect(sentence(callFor('BUDGET.RANGE', { ...inputs, Cows: -3 }, sure)[0]?.[0])).toContain('Cows');
  });
});

describe('BUDGET.MEASURE', () => {
  it('ranks what brings most doubt first, and its shares and the rest come to about 1', () => {
    const table = callFor('BUDGET.MEASURE', inputs, doubtful);
    const shares = table.slice(1, -1).map((row) => row[4] as number);
    expect(shares).toEqual(shares.toSorted((one, other) => other - one));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeGreaterThan(0.9);
    expect(table.at(-1)?.[0]).toBe('together and unexplained');
    expect(table.at(-1)?.[4]).toBeCloseTo(Math.max(0, 1 - shares.reduce((sum, share) => sum + share, 0)), 9);
  });

  it('ranks a figure lower once it is known better', () => {
    const shareOf = (low: number, high: number) => {
      const table = callFor('BUDGET.MEASURE', inputs, [['Fresh fibre density', low, null, high], ...doubtful.slice(1)]);
      return cell(table, 'Fresh fibre density', 'share of doubt') as number;
    };
    expect(shareOf(295, 305)).toBeLessThan(shareOf(250, 400) / 2);
  });

  it('says how to measure, and what knowing is worth only where the result is money', () => {
    const table = callFor('BUDGET.MEASURE', inputs, doubtful, 'Cover of demand');
    expect(cell(table, 'Fresh fibre density', 'how to measure')).toBe('Weigh a full bucket of the pressed fibre.');
    expect(sentence(cell(table, 'Fresh fibre density', 'worth knowing'))).toContain('#N/A');
  });

  it('leaves out what is known, and says so where nothing is in doubt', () => {
    expect(callFor('BUDGET.MEASURE', inputs, [...sure, ...doubtful.slice(0, 1)]).map(([name]) => name)).not.toContain('Kit cost');
    expect(sentence(callFor('BUDGET.MEASURE', inputs, sure)[0]?.[0])).toContain('nothing is in doubt');
  });
});

const alike = (days: number) => Array.from({ length: 12 }, (_, k) => [`month ${k + 1}`, days, 7, 0.85, null, null]);

describe('BUDGET.MONTHS', () => {
  it('gives HERD’s figures where twelve months are alike', () => {
    const table = callFor('BUDGET.MONTHS', inputs, alike(25));
    for (const [key, result] of [
      ['year: saving', 'Saving'],
      ['year: NPV', 'NPV'],
      ['year: payback', 'Payback'],
    ] as const) {
      expect(cell(table, key, 'days')).toBeCloseTo(resultOf(inputs, result) as number, 6);
    }
    expect(cell(table, 'year', 'cover')).toBeCloseTo(resultOf(inputs, 'Cover of demand') as number, 9);
    expect(cell(table, 'year', 'needed t')).toBeCloseTo(resultOf(inputs, 'Fibre needed') as number, 6);
    expect(cell(table, 'year', 'power cost')).toBeCloseTo(resultOf(inputs, 'Power') as number, 6);
  });

  it('splits the tonnes of last year’s invoices by the months’ days, so that twelve alike months still give HERD’s figures', () => {
    const byTonnes = { ...inputs, 'Litres now': '', 'Bought t last year': 120, 'Dryer hours a day': 6 };
    expect(resultOf(byTonnes, 'Cover of demand')).toBeLessThan(1);
    const table = callFor('BUDGET.MONTHS', byTonnes, alike(25));
    expect(cell(table, 'year', 'topped up t')).toBeCloseTo(resultOf(byTonnes, 'Topped up with bought') as number, 6);
    expect(cell(table, 'year: saving', 'days')).toBeCloseTo(resultOf(byTonnes, 'Saving') as number, 6);
  });

  it('counts the months’ needs as what is made and what is short, whatever the weather', () => {
    const months = fc.array(
      fc.tuple(fc.integer({ min: 0, max: 30 }), fc.integer({ min: -15, max: 25 }), fc.integer({ min: 40, max: 100 })),
      {
        minLength: 1,
        maxLength: 12,
      },
    );
    fc.assert(
      fc.property(months, fc.boolean(), (given, down) => {
        const rows = given.map(([days, c, percent], k) => [`m${k}`, days, c, percent / 100]);
        const table = callFor('BUDGET.MONTHS', { ...inputs, 'Dryer hours a day': 9 }, rows, down ? 'yes' : 'no');
        for (const row of table.slice(1, given.length + 1)) {
          const [needed, made, short] = [row[6], row[7], row[8]] as [number, number, number];
          expect(made).toBeLessThanOrEqual(needed * (1 + 1e-12));
          expect(short).toBeGreaterThanOrEqual(0);
          if (made < needed * (1 - 1e-9)) expect(short).toBeGreaterThan(0);
        }
      }),
      { numRuns: 25 },
    );
  });

  it('makes no less with the fan turned down where that helps', () => {
    const cold = [['January', 31, -8, 0.9, 15, null]];
    const [full, down] = ['no', 'yes'].map((turn) => callFor('BUDGET.MONTHS', { ...inputs, 'Dryer hours a day': 12 }, cold, turn));
    expect(cell(down as Matrix, 'January', 'made t')).toBeGreaterThanOrEqual(cell(full as Matrix, 'January', 'made t') as number);
    expect(cell(down as Matrix, 'January', 'air')).toBeLessThan(3200);
  });

  it('has a row of noughts for a month at grass', () => {
    const table = callFor('BUDGET.MONTHS', inputs, [
      ['June', 0, 15, 0.8],
      ['July', 30, 16, 0.8],
    ]);
    expect(cell(table, 'June', 'limit')).toBe('–');
    expect(cell(table, 'June', 'needed t')).toBe(0);
    expect(cell(table, 'year', 'days')).toBe(30);
  });

  it('shows a month’s fault in its own row and in the year, and leaves the other months alone', () => {
    const table = callFor('BUDGET.MONTHS', inputs, [
      ['May', 31, null, 0.8],
      ['June', 30, 15, 0.8],
    ]);
    expect(sentence(cell(table, 'May', 'cover'))).toContain('Outdoor temperature');
    expect(cell(table, 'June', 'cover')).toBeTypeOf('number');
    expect(sentence(cell(table, 'year: saving', 'days'))).toContain('Outdoor temperature');
    expect(sentence(cell(table, 'year', 'cover'))).toContain('Outdoor temperature');
  });

  it('refuses more days than a year has, and a table without a month', () => {
    expect(sentence(callFor('BUDGET.MONTHS', inputs, alike(31))[0]?.[0])).toContain('372 days are more than a year has');
    expect(sentence(callFor('BUDGET.MONTHS', inputs, [[null, null, null, null]])[0]?.[0])).toContain('months');
  });

  it('leaves air and supply temperature blank where there is no dryer', () => {
    const table = callFor('BUDGET.MONTHS', pressAlone, alike(25));
    expect(cell(table, 'month 1', 'air')).toBe('');
    expect(cell(table, 'year: saving', 'days')).toBeCloseTo(resultOf({ ...pressAlone }, 'Saving') as number, 6);
  });
});

describe('BUDGET.SIZE', () => {
  it('is kit that covers the coldest month by just the margin when put into the plan', () => {
    const table = callFor('BUDGET.SIZE', inputs);
    const needed = (what: string) => cell(table, what, 'needed') as number;
    const sized: Inputs = {
      ...inputs,
      'Slurry litres per cow': needed('Slurry per cow'),
      'Press t per hour running': needed('Press t per hour running'),
      'Air m3 per hour': needed('Air m3 per hour'),
      'Hot water litres per hour': 1e6,
    };
    const planned = (name: string) => resultOf(sized, name) as number;
    expect(planned('Cover in the coldest month')).toBeCloseTo(1.1, 6);
    const demand = planned('Fibre needed') / 300;
    for (const stage of ['Slurry could make', 'Press could make']) expect(planned(stage) / demand).toBeCloseTo(1.1, 6);
  });

  it('asks for as much hot water as gives the heat at that fall of its temperature', () => {
    const table = callFor('BUDGET.SIZE', inputs);
    const litres = cell(table, 'Hot water litres per hour', 'needed');
    const kw = call(recordOf('DRYING.HOTWATER'), [litres, 80, 65])[0]?.[0] as number;
    expect(kw).toBeCloseTo(cell(table, 'Heat available kW', 'needed') as number, 6);
  });

  it('takes each row’s own worst month, and no more than a milder year asks', () => {
    const year = (c: number) => [
      ['mild', 100, 12, 0.8],
      ['cold', 100, c, 0.9],
    ];
    const of = (c: number, what: string) => cell(callFor('BUDGET.SIZE', inputs, year(c)), what, 'needed') as number;
    expect(of(-10, 'Heat available kW')).toBeGreaterThan(of(0, 'Heat available kW'));
    expect(of(-10, 'Slurry per cow')).toBeCloseTo(of(0, 'Slurry per cow'), 9);
  });

  it('says how many cows it would take where no cow makes so much slurry', () => {
    const table = callFor('BUDGET.SIZE', { ...inputs, Cows: 60 });
    expect(sentence(cell(table, 'Slurry per cow', 'needed'))).toMatch(/it would take the slurry of \d+ cows/);
  });

  it('leaves blank what is not given now, and says that there is no dryer', () => {
    const table = callFor('BUDGET.SIZE', inputs);
    expect(cell(table, 'Heat available kW', 'now')).toBe('');
    expect(cell(table, 'Heat available kW', 'times')).toBe('');
    expect(sentence(cell(callFor('BUDGET.SIZE', pressAlone), 'Air m3 per hour', 'needed'))).toContain('there is no dryer');
  });

  it('is not silent about a blank or refused input', () => {
    expect(sentence(callFor('BUDGET.SIZE', { ...inputs, Cows: 'many' })[0]?.[0])).toContain('Cows');
    expect(cell(callFor('BUDGET.SIZE', without('Cows')), 'Slurry per cow', 'needed')).toBeInstanceOf(CellError);
  });
});

it('the herd of these tests is the worked one', () => expect(herd(inputs).length).toBeGreaterThan(60));
