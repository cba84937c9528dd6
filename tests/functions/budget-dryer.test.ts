import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import { CellError, type Matrix } from '../../src/core/result.ts';
import { column, herd, type Inputs, inputs, pressAlone, recordOf, resultOf, rowOf, sentence, warningsOf } from './worked-herd.ts';

const callFor = (name: string, given: Inputs, ...rest: unknown[]): Matrix =>
  call(recordOf(name), [column(Object.keys(given)), column(Object.values(given)), ...rest]);
const at = (table: Matrix, key: string, heading: string): unknown => rowOf(table, key)[(table[0] ?? []).indexOf(heading)];
/** What no dryer was told by before there was a word for it: drying to the very dry matter of the pressed fibre. */
const byDryMatter = pressAlone;
const { 'Dried to dry matter': _, ...untold } = pressAlone;
const saidNo: Inputs = { ...untold, Dryer: 'no' };
/** Keys and values; the words may differ. */
const figuresOf = (given: Inputs) => herd(given).map(([key, value]) => [key, value instanceof CellError ? value.code : value]);

describe('Dryer no', () => {
  it.each([
    ['no target', saidNo],
    ['a target that is left standing', { ...saidNo, 'Dried to dry matter': 0.58 }],
    ['all of the dryer’s own items left standing', { ...inputs, Dryer: 'no' }],
  ])('with %s is the plan that dries to the pressed dry matter', (_, given) => {
    const plain = { ...given, 'Dried to dry matter': 0.355 } as Inputs;
    delete plain.Dryer;
    expect(figuresOf(given)).toEqual(figuresOf(plain));
  });

  it('asks for nothing of the dryer’s, not even before the pressed dry matter is known', () => {
    expect(resultOf(saidNo, 'Still missing')).toBe(0);
    expect(rowOf(herd({ Dryer: 'no' }), 'Still missing')[3]).not.toMatch(/Dried to|Air m3|Hot water|Heat/);
    expect(rowOf(herd({ Cows: 200 }), 'Still missing')[3]).toMatch(/Dried to dry matter.*Air m3 per hour/);
  });

  it('says that a dry matter typed all the same is not used, and that drying can be swept', () => {
    const said = (given: Inputs) => rowOf(herd(given), 'Warning: No dryer')[3];
    expect(said({ ...saidNo, 'Dried to dry matter': 0.58 })).toContain('so Dried to dry matter is not used as typed');
    expect(said(saidNo)).not.toContain('not used');
    expect(said(byDryMatter)).not.toContain('not used');
  });

  it('still refuses what cannot be a dry matter at all', () => {
    const plans = callFor('BUDGET.PLANS', { ...saidNo, 'Dried to dry matter': 58 }, [
      ['', 'same'],
      ['Kit cost', 90_000],
    ]);
    expect(sentence(at(plans, 'NPV', 'base'))).toContain('Dried to dry matter (fraction): 58 is above');
  });
});

describe('Dryer yes', () => {
  it('changes nothing where the fibre is dried further than pressed', () => {
    expect(figuresOf({ ...inputs, Dryer: 'yes' })).toEqual(figuresOf(inputs));
  });

  it('is refused beside the pressed dry matter, and a drier one than that mends it', () => {
    const said = (target: number) => sentence(resultOf({ ...inputs, Dryer: 'yes', 'Dried to dry matter': target }, 'NPV'));
    expect(said(0.355)).toBe(
      '#VALUE! Dried to dry matter (fraction): 0.355 is not above the pressed dry matter 0.355; enter the dry matter the dryer reaches, or Dryer no where there is none',
    );
    expect(said(0.3)).toContain('0.3 is not above the pressed dry matter 0.355');
    expect(said(0.5)).not.toContain('#');
  });

  it('asks for the dry matter and the dryer’s own items', () => {
    expect(rowOf(herd({ ...saidNo, Dryer: 'yes' }), 'Still missing')[3]).toMatch(/Dried to dry matter.*Air m3 per hour/);
  });
});

it('a word that is neither is refused in every figure that rests on it, and nothing stands in', () => {
  const answer = herd({ ...inputs, Dryer: 'perhaps' });
  expect(sentence(rowOf(answer, 'NPV')[1])).toContain('Dryer');
  expect(sentence(rowOf(answer, 'Fibre needed')[1])).toContain('Dryer');
  expect(rowOf(answer, 'Slurry')[1]).toBe(resultOf(inputs, 'Slurry'));
});

describe('the tables over plans with Dryer no', () => {
  it('PLANS sets press alone beside press and dryer by that one word, either way round', () => {
    const alone = callFor('BUDGET.PLANS', inputs, [
      ['', 'press alone'],
      ['Dryer', 'no'],
    ]);
    expect(at(alone, 'NPV', 'press alone')).toBe(resultOf({ ...inputs, Dryer: 'no' }, 'NPV'));
    const dried = callFor('BUDGET.PLANS', { ...inputs, Dryer: 'no' }, [
      ['', 'said', 'drier', 'taken out'],
      ['Dryer', 'yes', null, null],
      ['Dried to dry matter', null, 0.5, 'none'],
    ]);
    expect(at(dried, 'NPV', 'said')).toBe(resultOf(inputs, 'NPV'));
    expect(at(dried, 'NPV', 'drier')).toBe(resultOf({ ...inputs, 'Dried to dry matter': 0.5 }, 'NPV'));
    expect(at(dried, 'NPV', 'taken out')).toBe(at(dried, 'NPV', 'base'));
  });

  it('SWEEP shows what drying would change', () => {
    const table = callFor('BUDGET.SWEEP', { ...inputs, Dryer: 'no' }, 'Dried to dry matter', [[0.45, 0.58]], [['NPV']]);
    expect(table.slice(1).map((row) => row[1])).toEqual(
      [0.45, 0.58].map((target) => resultOf({ ...inputs, 'Dried to dry matter': target }, 'NPV')),
    );
    const said = callFor('BUDGET.SWEEP', inputs, 'Dryer', [['yes', 'no']], [['NPV']]);
    expect(said.slice(1).map((row) => row[1])).toEqual([resultOf(inputs, 'NPV'), resultOf({ ...inputs, Dryer: 'no' }, 'NPV')]);
  });

  it('LEVERS say of the dryer’s levers that there is none, and move the others as before', () => {
    const [said, before] = [callFor('BUDGET.LEVERS', saidNo), callFor('BUDGET.LEVERS', byDryMatter)];
    expect(rowOf(said, 'Dried to dry matter').slice(2, 4).map(sentence)).toEqual(['0.355', expect.stringContaining('there is no dryer')]);
    for (const lever of ['Share of dry matter caught', 'Kit cost', 'Bought price per t'])
      expect(rowOf(said, lever)).toEqual(rowOf(before, lever));
  });

  it('MONTHS and SIZE are those of press alone', () => {
    const months = [
      ['winter', 150, 3, 0.9],
      ['summer', 150, 15, 0.75],
    ];
    for (const name of ['BUDGET.MONTHS', 'BUDGET.SIZE']) expect(callFor(name, saidNo, months)).toEqual(callFor(name, byDryMatter, months));
  });

  it('RANGE draws the pressed dry matter without ever drying, and refuses a range of what plays no part', () => {
    const cover = (ranges: unknown[][]) =>
      callFor('BUDGET.RANGE', { ...inputs, Dryer: 'no' }, ranges, [['Cover of demand', 'Heat']], 100, 1);
    const drawn = cover([['Pressed dry matter', 0.3, 0.355, 0.4]]);
    expect(at(drawn, 'Cover of demand', 'no answer')).toBe(0);
    expect(at(drawn, 'Heat', 'mean')).toBe(0);
    expect(sentence(cover([['Dried to dry matter', 0.5, 0.55, 0.6]])[0]?.[0])).toContain('plays no part in this plan');
  });

  it('warn as press alone does', () => expect(warningsOf(saidNo)).toEqual(warningsOf(byDryMatter)));
});
