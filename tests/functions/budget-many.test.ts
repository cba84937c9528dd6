import { describe, expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { call } from '../../src/core/call.ts';
import { column, herd, inputs, recordOf, resultOf, rowOf, sentence } from './worked-herd.ts';

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
      'Mastitis cases to NPV 0',
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
      else expect(sentence(cover)).toMatch(/^#N\/A (no|every) value between|^#N\/A it moves the money alone/);
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
