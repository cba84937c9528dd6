import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { herdRows, pairUp } from '../../src/budget/herd.ts';
import { budgetItems } from '../../src/budget/items.ts';
import { NoAnswer, Refusal } from '../../src/domain/refusal.ts';
import { demoHerd } from '../../src/workbook/demo-herd.ts';
import { addressOf } from '../../src/workbook/grid.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated } from './evaluated.ts';

/** What Answer says in verdicts and sentences, held against the figures of BUDGET.HERD for herds of every kind. */

type Typed = Readonly<Record<string, string | number>>;
interface Herd {
  readonly typed: Typed;
  /** As Investment would work it out; nothing where it cannot. */
  readonly chance: number | undefined;
}

const names = budgetItems.map(({ name }) => name);
const amounts = ['', 0, -1, 'many', 1e9] as const;

/** The invented herd with some of its figures at others, some left out, and now and then one that cannot be right. */
const herds = fc
  .record({
    factors: fc.array(
      fc.oneof({ weight: 4, arbitrary: fc.double({ min: 0.6, max: 1.6, noNaN: true }) }, { weight: 1, arbitrary: fc.constant(1) }),
      {
        minLength: names.length,
        maxLength: names.length,
      },
    ),
    out: fc.array(fc.nat(14), { minLength: names.length, maxLength: names.length }),
    wrong: fc.option(fc.record({ item: fc.constantFrom(...names), value: fc.constantFrom(...amounts) }), { freq: 2 }),
    permission: fc.constantFrom('yes', 'no', ' YES', 'not yet', ''),
    chance: fc.option(
      fc.nat(100).map((chances) => chances / 100),
      { nil: undefined, freq: 6 },
    ),
  })
  .map(({ factors, out, wrong, permission, chance }): Herd => {
    const typed: Record<string, string | number> = { 'Permission confirmed': permission };
    for (const [k, name] of names.entries()) {
      const value = demoHerd[name];
      const whole = budgetItems[k]?.parameter.bounds?.whole;
      if (value === undefined || (out[k] === 0 && k % 3 === 0)) continue;
      typed[name] = typeof value === 'string' ? value : whole ? Math.round(value * (factors[k] as number)) : value * (factors[k] as number);
    }
    if (wrong) typed[wrong.item] = wrong.value;
    return { typed, chance };
  });

/** The workbook with Inputs fed from a list of herds: one cell says which, so that each is worked out at once. */
function bookOf(all: readonly Herd[]): { answer: Evaluated; show: (k: number) => void } {
  const kept = new Set(['Answer', 'Inputs', 'Figures']);
  const listed = Object.fromEntries(
    all.flatMap(({ typed, chance }, k) =>
      [...names.map((name) => typed[name] ?? ''), chance ?? ''].flatMap((content, row) =>
        content === '' ? [] : [[addressOf(k + 1, row), { content }]],
      ),
    ),
  );
  const from = (row: number) => `INDEX(Herds!$B$${row + 1}:${`$${addressOf(all.length, row).replace(/(\d)/, '$$$1')}`},1,Herds!$A$200)`;
  const workbook = budgetWorkbook({ blank: true });
  const [asked] = Object.values(workbook.sheets[0]?.cells ?? {})
    .flatMap(({ content }) => /Investment!([$A-Z0-9]+)/.exec(String(content)) ?? [])
    .slice(1);
  const chanceCell = String(asked).replaceAll('$', '');
  const sheets = workbook.sheets.map((sheet) => {
    if (sheet.name === 'Herds') {
      return {
        name: 'Herds',
        columns: Array.from({ length: all.length + 1 }, () => 80),
        rows: 210,
        cells: { ...listed, A200: { content: 1 } },
      };
    }
    const bare = { ...sheet, merges: [], rules: [], charts: [] };
    if (sheet.name === 'Investment') {
      return { ...bare, cells: { [chanceCell]: { content: `=IF(${from(names.length)}="","–",${from(names.length)})` } } };
    }
    if (!kept.has(sheet.name)) return { ...bare, cells: {} };
    if (sheet.name !== 'Inputs') return bare;
    const cells = Object.entries(sheet.cells).map(([address, cell]) => {
      const item = names.indexOf(String(sheet.cells[address.replace('C', 'B')]?.content));
      if (!address.startsWith('C') || item < 0) return [address, cell];
      return [address, { content: `=IF(${from(item)}="","",${from(item)})` }];
    });
    return { ...bare, cells: Object.fromEntries(cells) };
  });
  const answer = new Evaluated({ sheets });
  return { answer, show: (k) => answer.type('Herds', 'A200', String(k + 1)) };
}

/** A herd's figures by key, straight from the budget; what is no number is undefined. */
function figuresOf({ typed }: Herd) {
  const given = pairUp([names], [names.map((name) => typed[name] ?? '')]);
  const { rows } = herdRows(given);
  const values = new Map(rows.map(([key, value]) => [String(key), value]));
  const number = (key: string): number | undefined => {
    const value = values.get(key);
    return typeof value === 'number' && Number.isFinite(value) ? value : undefined;
  };
  const text = (key: string): string | undefined => {
    const value = values.get(key);
    return value instanceof NoAnswer || value instanceof Refusal ? undefined : String(value);
  };
  return { given, number, text, fires: (key: string) => values.has(`Warning: ${key}`) };
}
type Figures = ReturnType<typeof figuresOf>;

const near = (shown: string | undefined, value: number | undefined, decimals: number): void => {
  expect(value).toBeDefined();
  expect(Math.abs(Number(shown?.replaceAll(',', '')) - Math.abs(value as number))).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
};
const cover = (shown: string | undefined, value: number | undefined): void => {
  if (shown === 'just under 1') {
    expect(value).toBeGreaterThanOrEqual(0.995);
    expect(value).toBeLessThan(1);
  } else {
    near(shown, value, 2);
    // Never "1.00" for what is short.
    if ((value as number) < 1) expect(Number(shown)).toBeLessThan(1);
  }
};
const worth = (words: string | undefined, value: number | undefined): void => {
  const [, amount, side] = /^(?:([\d,]+) (more|less) than|just what) it costs$/.exec(words ?? '') ?? [];
  expect(value).toBeDefined();
  if (amount === undefined) expect(Math.abs(value as number)).toBeLessThanOrEqual(0.5);
  else {
    near(amount, value, 0);
    expect(amount).not.toBe('0');
    expect(side).toBe((value as number) > 0 ? 'more' : 'less');
  }
};

type Held = readonly [sentence: RegExp, holds: (found: RegExpExecArray, figures: Figures) => void];

/** Every sentence that Answer can say, and what must be so for it to be said. */
const sentences: readonly Held[] = [
  [
    /^The (slurry|press|dryer)(?:, not the (?:slurry|dryer),)? sets the limit: it can make (just under 1|[\d.,]+) times what the beds need(; the rest must be bought)?\.$/,
    ([, limit, times, rest], { number, text }) => {
      expect(text('What limits')).toBe(limit);
      cover(times, number('Cover of demand'));
      expect(rest !== undefined).toBe((number('Cover of demand') as number) < 1);
    },
  ],
  [
    /^In the coldest month the (slurry|press|dryer) can make (just under 1|[\d.,]+) times what the beds need(: plan bought bedding for it\. Fibre this moist is for use, not for keeping)?\.$/,
    ([, limit, times, short], { number, text }) => {
      expect(text('Limit in the coldest month')).toBe(limit);
      cover(times, number('Cover in the coldest month'));
      expect(short !== undefined).toBe((number('Cover in the coldest month') as number) < 1);
    },
  ],
  [
    /^Fill in Inputs, or the survey in the panel: the answer appears here as far as it goes\.$/,
    (_, { number }) => {
      expect(number('Cover of demand')).toBeUndefined();
      expect(number('Still missing')).toBeGreaterThan(0);
    },
  ],
  [
    /^It saves ([\d,]+) a year before what it costs to own, and (?:pays back (at once|in ([\d.]+) years)|never pays back in its life|its payback is not (known))\.$/,
    ([, saving, pays, years, unknown], { number }) => {
      near(saving, number('Saving'), 0);
      expect(number('Saving')).toBeGreaterThan(0);
      if (years !== undefined) near(years, number('Payback'), 1);
      else expect(pays !== undefined).toBe(number('Payback') !== undefined);
      if (unknown !== undefined) expect(number('NPV')).toBeUndefined();
    },
  ],
  [
    /^A year with it costs as much as the bedding now, before what it costs to own\.$/,
    (_, { number }) => {
      expect(Math.abs(number('Saving') as number)).toBeLessThanOrEqual(0.5);
    },
  ],
  [
    /^It costs ([\d,]+) a year more than the bedding now, even before what it costs to own\.$/,
    ([, more], { number }) => {
      near(more, number('Saving'), 0);
      expect(number('Saving')).toBeLessThan(0);
    },
  ],
  [
    /^Over (\d+) years at ([\d.]+)% it is worth (.*), before tax\.$/,
    ([, life, rate, said], { number, given }) => {
      expect(Number(life)).toBe(given.inputs.life_years);
      near(rate, 100 * given.inputs.discount_rate, 2);
      worth(said, number('NPV'));
    },
  ],
  [
    /^After tax at ([\d.]+)% it is worth (.*): ask your accountant\.$/,
    ([, rate, said], { number, given }) => {
      near(rate, 100 * given.inputs.tax_rate, 2);
      worth(said, number('NPV after tax'));
    },
  ],
  [
    /^The stated output needs ([\d.]+) times the water this air can carry( at the best for the supplier: not with this air|: possible, but measure it|: measure it before you pay|, by the plan’s figures: weigh the fibre, ask for its air and heat)\.$/,
    ([, times, said], { number }) => {
      const [ratio, best] = [number('Stated output against the air') as number, number('Stated output at best')];
      const firm = said?.includes('not with this air') === true;
      expect(firm).toBe(ratio > 1.25 && best !== undefined && best > 1.25);
      near(times, firm ? best : ratio, 2);
      if (said?.includes('possible')) expect(ratio).toBeLessThanOrEqual(1);
      if (said?.includes('before you pay')) expect(ratio > 1 && ratio <= 1.25).toBe(true);
      if (said?.includes('weigh')) expect(ratio).toBeGreaterThan(1.25);
    },
  ],
  [
    /^Hygiene score (\d+), span (\d+–\d+): 0 is best; a planning aid, no diagnosis: talk to your vet\./,
    ([, score, span], { number, text }) => {
      near(score, number('Hygiene score, fibre'), 0);
      expect(text('Hygiene span, fibre')).toBe(span);
    },
  ],
  [
    /^(Less than 0\.1|[\d.,]+) more clinical cases of mastitis for each 100 cows a year would eat what it earns: clinical cases only; what does not show costs as much again\.$/,
    ([, cases], { number }) => {
      if (cases === 'Less than 0.1') expect(number('Mastitis cases to NPV 0')).toBeLessThan(0.1);
      else near(cases, number('Mastitis cases to NPV 0'), 1);
      expect(number('NPV')).toBeGreaterThan(0);
    },
  ],
  [
    /^It earns nothing that more mastitis could eat: clinical cases only; what does not show costs as much again\.$/,
    (_, { number }) => {
      expect(number('NPV')).toBeLessThanOrEqual(0);
    },
  ],
  [/^Permission is confirmed in writing\.$/, (_, { given }) => expect(given.inputs.permission).toBe('yes')],
  [
    /^Permission is not confirmed: ask the authority/,
    ({ 0: said }, { given }) => {
      expect(said).not.toBe('');
      if (given.get('permission') !== undefined && !(given.get('permission') instanceof Refusal))
        expect(given.inputs.permission).toBe('no');
    },
  ],
];

function holdVerdicts(words: ReadonlyMap<string, string>, { chance }: Herd, { given, number, text, fires }: Figures): void {
  const [covers, coldest, npv] = [number('Cover of demand'), number('Cover in the coldest month'), number('NPV')];
  const said = (question: string) => words.get(question);
  expect(said('Does it cover the beds?') === 'short').toBe(covers !== undefined && covers < 1);
  if (said('Does it cover the beds?') === 'short in winter') expect(coldest).toBeLessThan(1);
  if (['yes', 'likely'].includes(said('Does it cover the beds?') as string)) {
    expect(covers).toBeGreaterThanOrEqual(1);
    expect(coldest).toBeGreaterThanOrEqual(1);
  }
  const dried = covers !== undefined && given.inputs.target_dm > given.inputs.cake_dm;
  if (dried && said('Does it cover the beds?') === 'yes') expect(given.has('ambient_c') && given.has('coldest_c')).toBe(true);
  expect(said('Does it pay?') === 'not known').toBe(npv === undefined);
  if (said('Does it pay?') === 'no') expect(npv).toBeLessThan(0);
  if (['yes', 'likely'].includes(said('Does it pay?') as string)) {
    expect(npv).toBeGreaterThanOrEqual(0);
    expect(fires('Amount now assumed') || fires('Labour now assumed')).toBe(false);
    expect(chance ?? 1).toBeGreaterThanOrEqual(said('Does it pay?') === 'yes' ? 0.8 : 0.5);
  }
  const [lowest, highest] = (text('Hygiene span, fibre') ?? '').split('–').map(Number);
  const clean = said('Is it clean enough?');
  expect(clean === 'not known').toBe(number('Hygiene score, fibre') === undefined || highest === undefined);
  if (clean === 'likely') expect(highest).toBeLessThan(50);
  if (clean === 'unlikely') expect(lowest).toBeGreaterThanOrEqual(50);
  const permitted = given.get('permission');
  expect(said('Is it allowed?') === 'yes').toBe(permitted === 'yes');
}

const questions = /\?$/;
function holdAnswer(answer: Evaluated, herd: Herd): void {
  const figures = figuresOf(herd);
  const cells = answer.cells('Answer').filter(({ text }) => text !== '');
  const at = new Map(cells.map(({ address, text }) => [address, text]));
  const asked = cells.filter(({ address, text }) => address.startsWith('A') && questions.test(text) && Number(address.slice(1)) > 1);
  expect(asked).toHaveLength(4);
  for (const { text } of cells) expect(text).not.toMatch(/NaN|Infinity|#[A-Z/]|(^|\s)[-−]0(\.0+)?(\s|$)|undefined/);
  holdVerdicts(new Map(asked.map(({ address, text }) => [text, at.get(address.replace('A', 'C')) ?? ''])), herd, figures);

  const first = Math.max(...asked.map(({ address }) => Number(address.slice(1)))) + 1;
  const end = Number(cells.find(({ text }) => text === 'Beds and kit')?.address.slice(1));
  for (let row = first; row < end; row++) {
    const text = at.get(`A${row}`);
    if (text === undefined) continue;
    const matching = sentences.filter(([sentence]) => sentence.test(text));
    expect(matching, text).toHaveLength(1);
    for (const [sentence, holds] of matching) holds(sentence.exec(text) as RegExpExecArray, figures);
  }
  const top = at.get('A3') ?? '';
  expect(top.startsWith('An input cannot be used: ')).toBe((figures.number('Refused inputs') as number) > 0);
  expect(top.includes('Still missing on Inputs: ')).toBe((figures.number('Still missing') as number) > 0);
  if (top.startsWith('Every input')) expect(figures.number('Refused inputs')).toBe(0);
}

function holdAll(all: readonly Herd[]): void {
  const { answer, show } = bookOf(all);
  for (const [k, herd] of all.entries()) {
    show(k);
    try {
      holdAnswer(answer, herd);
    } catch (thrown) {
      (thrown as Error).message += `\nof herd ${k}: ${JSON.stringify(herd)}`;
      throw thrown;
    }
  }
}

describe('Answer, in verdicts and sentences', () => {
  it('says of 300 herds only what their figures say', () => {
    holdAll(fc.sample(herds, { numRuns: 300, seed: 18 }));
  });

  it('says nothing good of an input that is blank, zero, negative, a word or far too large, each in its turn', () => {
    holdAll(names.flatMap((name) => amounts.map((value) => ({ typed: { ...demoHerd, [name]: value }, chance: 0.9 }))));
  });
});
