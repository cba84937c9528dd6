import { type BudgetItem, type ItemKey, itemOf } from '../../budget/items.ts';
import { referenceOf, type SourceId } from '../../core/bibliography.ts';
import doubts from '../../data/doubts.json';
import { resultFormat, shownUnit } from '../formats.ts';
import { asGiven, orDash } from '../grid.ts';
import type { Format } from '../model.ts';
import { columnIn, type Fact, SheetBuilder } from '../sheet-builder.ts';
import { lackingLine } from './figures.ts';
import { inUse, items, knownBy, typedFor, values } from './inputs.ts';

interface Doubt {
  readonly item: BudgetItem;
  readonly usual: readonly [number, number] | undefined;
  /** How far off, as a share, a careful measurement may still be. */
  readonly measured: number;
  readonly effort: string;
  readonly source: SourceId;
  readonly status: string;
}

const known: readonly Doubt[] = Object.entries(doubts.items).map(([key, { measured, effort, source, status, ...own }]) => {
  const item = itemOf(key as ItemKey);
  return {
    item,
    usual: item.usual ?? ('usual' in own ? (own.usual as [number, number]) : undefined),
    measured,
    effort,
    source: source as SourceId,
    status,
  };
});

/** What results are asked for: six that a decision turns on. */
const asked = ['Cover of demand', 'Cover in the coldest month', 'Saving', 'NPV', 'Payback', 'Loan cover'] as const;

/** How far off a figure may be that was read off or told, and one that was guessed where no usual range is held. Judgement. */
const offBy = { 'read off': 0.1, told: 0.2, guessed: 0.3 } as const;

const formatOf = ({ parameter: { unit } }: BudgetItem): Format => {
  const format = resultFormat(unit);
  return unit === 'm³/h' ? 'whole' : format === 'general' ? 'two' : format;
};

function ranges(page: SheetBuilder): void {
  page
    .part(
      'How far each figure may be off',
      'How known: the mark beside the item on Inputs; without one, what was typed counts as told, what was left empty as guessed. From it low and high are taken; type your own where you know better. They are the extremes, not nine times in ten.',
    )
    .facts([
      ...(
        [
          ['readOff', 'Read off', 'read off', 'a plate, a meter, a bill: judgement'],
          ['told', 'Told', 'told', 'a supplier, a neighbour: judgement'],
          ['guessed', 'Guessed', 'guessed', 'where no usual range is held: judgement'],
        ] as const
      ).map(
        ([name, said, mark, note]): Fact => ({
          name,
          label: `${said} may be off by`,
          value: offBy[mark],
          unit: 'fraction',
          format: 'percent',
          style: 'input',
          note,
        }),
      ),
      {
        name: 'draws',
        label: 'Plans drawn',
        value: 1000,
        unit: '',
        format: 'whole',
        style: 'input',
        note: 'more are slower and surer: four times as many halve the error',
      },
    ]);
  page.row++;
  page.headings('item', 'in use', 'unit', 'how known', 'low', 'high', 'your low', 'your likely', 'your high', 'check');
  page.across(
    `L${page.row - 1}`,
    [
      'drawn: item',
      'low',
      'likely',
      'high',
      'measured may be off by',
      'usually from',
      'to',
      'where the range is from',
      'status',
      'how much work',
    ],
    'heading',
    { wrap: true },
  );
  const first = page.row;
  for (const { item, usual, measured, effort, source, status } of known) {
    const row = page.row;
    const [lowest, highest] = item.parameter.range as [number, number];
    const format = formatOf(item);
    const share = `IF(D${row}="measured",P${row},IF(D${row}="read off",{$readOff},IF(D${row}="told",{$told},{$guessed})))`;
    const end = (usually: string, by: '-' | '+', of: 'MIN' | 'MAX') =>
      `IF(AND(D${row}="guessed",Q${row}<>""),${of}(${usually}${row},B${row}),B${row}*(1${by}${share}))`;
    const number = { format, align: 'right' } as const;
    page
      .put(`B${row}`, `=IFERROR(IF(${inUse(item.name)}="","",${inUse(item.name)}),"")`, 'output', number)
      .put(`C${row}`, shownUnit(item.parameter.unit), 'note')
      .put(
        `D${row}`,
        `=IF(B${row}="","",IF(${knownBy(item.name)}<>"",${knownBy(item.name)},IF(${typedFor(item.name)}="","guessed","told")))`,
        'output',
        { says: ['measured'] },
      )
      .put(`E${row}`, `=IF(B${row}="","",MAX(${lowest},${end('Q', '-', 'MIN')}))`, 'output', number)
      .put(`F${row}`, `=IF(B${row}="","",MIN(${highest},${end('R', '+', 'MAX')}))`, 'output', number)
      .across(`G${row}`, ['', '', ''], 'input', number)
      .put(
        `J${row}`,
        `=IF(L${row}="","",IF(M${row}>N${row},"low is above likely",IF(N${row}>O${row},"high is below likely",IF(OR(M${row}<${lowest},O${row}>${highest}),"more than Inputs takes","ok"))))`,
        'output',
        { says: ['more than Inputs takes'] },
      )
      .put(`L${row}`, `=IF(B${row}="","",A${row})`, 'note')
      .put(`M${row}`, `=IF(L${row}="","",IF(G${row}="",MIN(E${row},N${row}),G${row}))`, 'note', number)
      .put(`N${row}`, `=IF(L${row}="","",IF(H${row}="",B${row},H${row}))`, 'note', number)
      .put(`O${row}`, `=IF(L${row}="","",IF(I${row}="",MAX(F${row},N${row}),I${row}))`, 'note', number)
      .put(`P${row}`, measured, 'note', { format: 'percent', align: 'right' })
      .across(`Q${row}`, [...(usual ?? ['', ''])], 'note', number)
      .put(`S${row}`, usual ? referenceOf(source).name : '', 'note')
      .put(`T${row}`, usual ? status : '', 'note')
      .put(`U${row}`, effort, 'note')
      .line([item.name], 'label');
  }
  const column = (at: string) => `${at}${first}:${at}${page.row - 1}`;
  page
    .called('ranges', `L${first}:O${page.row - 1}`)
    .called('names', column('A'))
    .called('efforts', column('U'))
    .called('checks', column('J'))
    .rule(column('J'), `$J${first}="ok"`, 'quiet')
    .rule(column('J'), `AND($J${first}<>"",$J${first}<>"ok")`, 'bad');
}

const drawn = (page: SheetBuilder): string => asGiven(page.at('ranges'));

function results(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'How sure is the plan?',
      'Each plan drawn takes every figure somewhere between its low and its high, likeliest at the likely one, each by itself. From BUDGET.RANGE.',
    );
  const top = page.row;
  page.called('asked', `A${top + 1}:A${top + asked.length}`);
  page.spill({
    name: 'sure',
    formula: orDash(`BEDDING.BUDGET.RANGE(${items},${values},${drawn(page)},{asked},{draws})`),
    rows: asked.length,
    formats: [undefined, undefined, 'two', 'two', 'two', 'two', 'percent', undefined, 'whole'],
    column: 'L',
  });
  page.row = top;
  page.headings('', 'in words', 'chance', 'off by', 'one in ten below', 'half below', 'one in ten above', 'good when');
  page.called('npvLacks', `T${top + 1 + asked.indexOf('NPV')}`);
  for (const key of asked) {
    const row = page.row;
    const format = key === 'Saving' || key === 'NPV' ? 'money' : 'two';
    const chance = (formula: string) => `=IF(OR(NOT(ISNUMBER(R${row})),{$npvLacks}={$draws}),"–",${formula})`;
    page
      .called(`words ${key}`, `B${row}`)
      .put(`B${row}`, chance(`IF(R${row}<0.05,"hardly any",IF(R${row}>0.95,"nearly all",MIN(9,ROUND(10*R${row},0))&" of 10"))`), 'strong', {
        says: ['hardly any'],
      })
      .put(`C${row}`, chance(`R${row}`), 'output', { format: 'percent', align: 'right' })
      .put(`D${row}`, chance(`IF(OR(R${row}=0,R${row}=1),3/{$draws},SQRT(R${row}*(1-R${row})/{$draws}))`), 'note', {
        format: 'percent1',
        align: 'right',
      })
      .across(
        `E${row}`,
        ['O', 'P', 'Q'].map((column) => `=IF(${column}${row}="","–",${column}${row})`),
        'output',
        { format, align: 'right' },
      )
      .put(`H${row}`, `=S${row}&""`, 'note')
      .line([key], 'label');
  }
  page.line(
    [
      'Off by: √(p(1−p)/n) for a chance p of n plans drawn, one in three times more (at none or all, 3/n); what the ranges themselves are worth no draw can tell.',
    ],
    'note',
  );
}

function spread(page: SheetBuilder): void {
  const table = `A${Number(/\d+/.exec(page.at('sure'))?.[0])}:G${page.row - 2}`;
  const npv = Number(/\d+/.exec(table)?.[0]) + asked.indexOf('NPV');
  const [labels, values] = [`E${npv - asked.indexOf('NPV') - 1}:G${npv - asked.indexOf('NPV') - 1}`, `E${npv}:G${npv}`];
  page.charts([
    {
      kind: 'bar',
      title: 'How often it is so, of all plans drawn',
      across: 'share of the plans',
      up: '',
      labels: columnIn(table, 0),
      series: [{ name: 'chance', values: columnIn(table, 2) }],
      over: ['A', 'D'],
      height: 260,
    },
    {
      kind: 'column',
      title: 'How far the money spreads',
      across: '',
      up: 'NPV, money',
      labels,
      series: [{ name: 'NPV', values }],
      over: ['E', 'I'],
      height: 260,
    },
  ]);
}

function measureNext(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'What to measure next',
      'Share of doubt: how much of what is unsure about the result hangs on this figure alone, off by about 0.02. Worth knowing: the most that knowing it exactly before you decide could be worth. From BUDGET.MEASURE.',
    );
  for (const [result, name] of [
    ['NPV', 'money'],
    ['Cover of demand', 'cover'],
  ] as const) {
    page.row++;
    page.put(`A${page.row}`, `For ${result}`, 'label');
    page.row++;
    const top = page.row;
    page.spill({
      name,
      formula: orDash(`BEDDING.BUDGET.MEASURE(${items},${values},${drawn(page)},"${result}",{draws})`),
      rows: known.length + 1,
      formats: [undefined, 'general', 'general', 'general', 'percent', 'money', undefined],
    });
    page.put(`L${top}`, 'how much work', 'heading', { wrap: true });
    for (let row = top + 1; row < page.row; row++) page.put(`L${row}`, `=IFERROR(INDEX({$efforts},MATCH(A${row},{$names},0)),"")`, 'note');
    page
      .called(`${name} first`, `A${top + 1}`)
      .called(`${name} how`, `G${top + 1}`)
      .called(`${name} share`, `E${top + 1}`)
      .called(`${name} worth`, `F${top + 1}`)
      .called(`${name} worths`, `F${top + 1}:F${page.row - 1}`);
  }
  const shown = (name: string, column: number) =>
    columnIn(page.at(name), column).replace(/\d+$/, (last) => String(Number(last) - known.length - 1 + 8));
  const bars = (name: string, title: string, over: readonly [string, string]) => ({
    kind: 'bar' as const,
    title,
    across: 'share of the doubt',
    up: '',
    labels: shown(name, 0),
    series: [{ name: 'share of doubt', values: shown(name, 4) }],
    over,
    height: 280,
  });
  page.charts([
    bars('money', 'What the doubt about the money hangs on', ['A', 'D']),
    bars('cover', 'What the doubt about the cover hangs on', ['E', 'I']),
  ]);
}

const which: readonly string[] = [
  'This sheet: how sure the whole plan is, herd, press, dryer and money together, and which figure to measure next.',
  'INVEST.PROBABILITY (Investment): only the five money figures, where the plan’s tonnes are settled; ten thousand draws.',
  'INVEST.SENSITIVITY (Investment): one money figure at a time at its low and high: for talking it through, no chance in it.',
  'BUDGET.SWEEP (Levers): one figure over values that you choose, where it is yours to choose: dryness, interval, price.',
];

export function howSureSheet(): SheetBuilder {
  const page = new SheetBuilder('How sure', [190, 84, 70, 90, 84, 84, 84, 84, 84, 140, 60, 190, 84, 84, 84, 100, 100, 90, 260, 90, 250], {
    landscape: true,
  });
  page.title('How sure', 'No plan is surer than its figures. Here many plans are drawn from what each may turn out to be.', lackingLine);
  page.part('In short');
  page
    .called('sentence', `A${page.row}`)
    .line(
      [
        '=IF({rangeFault}<>"","",IF({words NPV}<>"–","Of many plans drawn "&{words Cover of demand}&" cover the beds, "&{words NPV}&" pay"&IF({words Loan cover}<>"–",", and "&{words Loan cover}&" carry their loan 1.25 times","")&".","Fill in Inputs first: then it is said here how likely the plan covers and pays."))',
      ],
      'lead',
      {
        says: ['Of many plans drawn hardly any cover the beds, hardly any pay, and hardly any carry their loan 1.25 times.'],
      },
    );
  page
    .called('measureSentence', `A${page.row}`)
    .line(
      [
        '=IF(ISNUMBER({money share}),"Most would be told by: "&{money first}&". "&{money how}&IF(MAX({money worths})<1," No figure measured alone is likely to turn whether it pays."," Knowing it exactly is worth up to "&TEXT({money worth},"#,##0")&" before you decide."),"")',
      ],
      'lead',
      {
        says: [
          'Most would be told by: Labour hours a week with kit. Relative humidity of the air leaving the drum, and some more words to measure it by. Knowing it exactly is worth up to 9,999,999 before you decide.',
        ],
      },
    );
  page
    .called('rangeFault', `A${page.row}`)
    .line(
      ['=IF(COUNTIF({checks},"*likely")+COUNTIF({checks},"more*")>0,"A range below cannot be used: see its check column.","")'],
      'note',
      { says: ['A range below cannot be used: see its check column.'] },
    );
  page.rule(page.at('rangeFault'), `$${page.at('rangeFault')}<>""`, 'bad');
  page.caution(
    'A chance of plans drawn, not of the world: what nobody ranged (breakdowns, cows, rules, a price linked to another) is not in it. It understates the doubt.',
  );
  ranges(page);
  results(page);
  spread(page);
  measureNext(page);
  page.part('When to use what');
  for (const words of which) page.line([words], 'note');
  return page;
}
