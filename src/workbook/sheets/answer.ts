import { functionsIn } from '../../budget/figure.ts';
import { figures } from '../../budget/figures.ts';
import { SELF_HEATING_RATIO } from '../../domain/drying.ts';
import { resultFormat, shownUnit } from '../formats.ts';
import { addressOf, orDash, placeOf } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { figure, figureAt, figuresName, lacksSome, meaning, moneyChart, stageChart, state, warning, warningCount } from './figures.ts';
import { herdName, inUse } from './inputs.ts';
import { lever } from './levers.ts';

const sheetName = 'Answer';

interface Block {
  readonly heading: string;
  /** The sheet that works it out at length. */
  readonly more: string;
  readonly keys: readonly string[];
}

const left: readonly Block[] = [
  { heading: 'What the beds need', more: 'Options', keys: ['Fibre needed', 'Fibre per cubicle per day', 'Bought needed'] },
  {
    heading: 'What the kit can make',
    more: 'Fibre and drying',
    keys: [
      'What limits',
      'Cover of demand',
      'Cover in the coldest month',
      'Slurry could make',
      'Press could make',
      'Dryer could make',
      'Dryer hours needed',
      'Dried output volume',
      'Stated output against the air',
    ],
  },
  {
    heading: 'Cows and udders',
    more: 'Udder health',
    keys: ['Hygiene score, fibre', 'Hygiene span, fibre', 'Hygiene score, present bedding', 'Break-even mastitis cases'],
  },
];
const right: readonly Block[] = [
  {
    heading: 'Money a year',
    more: 'Options',
    keys: ['Bought-in cost with labour', 'Running cost', 'Top-up cost', 'Saving', 'Ownership cost', 'Saving after capital'],
  },
  { heading: 'Does it pay?', more: 'Investment', keys: ['Payback', 'Discounted payback', 'NPV', 'IRR', 'NPV after tax', 'Loan cover'] },
  {
    heading: 'Where it just pays',
    more: 'Levers',
    keys: ['Break-even bedding price', 'Break-even heat price', 'Break-even kit cost'],
  },
];
const blocksRow = 12;
const strong = new Set([
  'What limits',
  'Cover of demand',
  'Saving',
  'Payback',
  'NPV',
  'Stated output against the air',
  'Hygiene score, fibre',
]);

/** The functions that a figure comes from, as the budget's own working tells them. */
function functionsBehind(how: string | undefined): string {
  const named = functionsIn(how);
  return named.length === 0 ? 'BUDGET.HERD' : named.slice(0, 2).join(', ');
}

/** Where each figure stands on this sheet. */
const cells = new Map<string, string>();
function placeBlocks(blocks: readonly Block[], column: number): void {
  let row = blocksRow - 1;
  for (const { keys } of blocks) {
    row++;
    for (const key of keys) cells.set(key, addressOf(column + 1, row++));
  }
}
placeBlocks(left, 0);
placeBlocks(right, 5);
const at = (key: string): string => cells.get(key) as string;

function fill(page: SheetBuilder, blocks: readonly Block[]): void {
  for (const { heading, more, keys } of blocks) {
    const first = placeOf(at(keys[0] as string));
    const band = addressOf(first.column - 1, first.row - 1);
    page.across(band, [heading, '', '', `see ${more}`], 'heading');
    for (const key of keys) {
      const { column, row } = placeOf(at(key));
      const { unit, how } = figures.find((result) => result.key === key) ?? { unit: '', how: undefined };
      const label = addressOf(column - 1, row);
      page
        .put(label, key, 'label')
        .put(at(key), orDash(figureAt(label)), strong.has(key) ? 'strong' : 'output', {
          format: resultFormat(unit),
          align: 'right',
        })
        .put(addressOf(column + 1, row), shownUnit(unit), 'note')
        .put(addressOf(column + 2, row), functionsBehind(how), 'note');
    }
  }
}

/** The answer in words, each line one short formula over the figures below; a line whose figure is not there yet stays empty. */
function sentences(drying: SheetBuilder): readonly string[] {
  const [limit, cover, saving, payback, npv] = ['What limits', 'Cover of demand', 'Saving', 'Payback', 'NPV'].map(at);
  const [ratio, score] = [at('Stated output against the air'), at('Hygiene score, fibre')];
  const said = (figure: string | undefined, sentence: string, otherwise = '""') => `=IF(ISNUMBER(${figure}),${sentence},${otherwise})`;
  const begin = `IF(${lacksSome},"Fill in Inputs, or the survey in the panel: the answer appears here as far as it goes.","")`;
  const coldest = at('Cover in the coldest month');
  const rival = `IF(${limit}="dryer",", not the slurry,",IF(ISNUMBER(${at('Dryer could make')}),", not the dryer,",""))`;
  const paid = `IF(ISNUMBER(${payback}),"pays back in "&TEXT(${payback},"0.0")&" years.","does not pay back within its life.")`;
  const worth = `TEXT(ABS(${npv}),"#,##0")&IF(${npv}<0," less"," more")&" than it costs, before tax."`;
  const takes = `TEXT(${drying.from('air')},"#,##0")&" m³/h and "&TEXT(${drying.from('airHeat')},"#,##0")&" kW of heat."`;
  const verdict = `IF(${ratio}>${SELF_HEATING_RATIO},"not with this air. As warm, it would take "&${takes},IF(${ratio}>1,"measure it.","possible."))`;
  return [
    said(cover, `"The "&${limit}&${rival}&" sets the limit: it can make "&TEXT(${cover},"0.00")&" times what the beds need."`, begin),
    said(coldest, `"In the coldest month the "&${figure('Limit in the coldest month')}&" does, at "&TEXT(${coldest},"0.00")&" times."`),
    said(saving, `"It saves "&TEXT(${saving},"#,##0")&" a year before what it costs to own, and "&${paid}`),
    said(npv, `"Over "&${inUse('Life years')}&" years at "&TEXT(${inUse('Discount rate')},"0.0%")&" it is worth "&${worth}`),
    said(ratio, `"The stated output needs "&TEXT(${ratio},"0.0")&" times the water this air can carry: "&${verdict}`),
    said(score, `"Hygiene score "&TEXT(${score},"0")&", span "&${at('Hygiene span, fibre')}&", "&${meaning('Hygiene score, fibre')}`),
    `=IF(${inUse('Permission confirmed')}="yes","Permission is confirmed in writing.","Permission is not confirmed: ask the authority and your milk buyer before you spend; see Conditions and cautions.")`,
  ];
}

/** Where the sentences stand, in column A, that say in short whether it will work and pay: the limit, and what it saves. */
export const answerInShort = { sheet: sheetName, rows: [5, 7] } as const;

const shownWarnings = 10;

const whoToAsk =
  'Your vet: udders and how they will be watched. The authority and your milk buyer: whether this fibre may be used, in writing. Licensed heating and electrical engineers: heat, hot water, power, guards. Your accountant and lender: tax, grant, loan. Your fire adviser and insurer: dust and stored dry fibre. Slurry gas kills: see Conditions and cautions before anyone mixes or presses.';

interface Pages {
  readonly drying: SheetBuilder;
  readonly levers: SheetBuilder;
  readonly checks: SheetBuilder;
}

export function answerSheet({ drying, levers, checks }: Pages): SheetBuilder {
  const page = new SheetBuilder(sheetName, [190, 66, 104, 140, 8, 166, 66, 66, 188], { onePage: true });
  page
    .put('A1', 'Bedding from our own slurry: will it work and will it pay?', 'title')
    .put('A2', 'Herd', 'label')
    .put('B2', `=IF(${herdName}="","–",${herdName})`, 'strong')
    .block('A3:I4', state, 'note', { wrap: true })
    .tall(4, 2)
    .rule('A3:I4', 'LEFT($A$3,5)="Still"', 'watch')
    .rule('A3:I4', 'AND(LEFT($A$3,5)<>"Still",LEFT($A$3,5)<>"Every")', 'bad')
    .put('F2', 'Sums checked two ways', 'label')
    .put('G2', `=${checks.from('overall')}`, 'check')
    .rule('G2:G2', 'ISNUMBER(SEARCH("broken",G2))', 'bad');
  sentences(drying).forEach((sentence, k) => {
    page.put(`A${5 + k}`, sentence, 'lead');
  });
  fill(page, left);
  fill(page, right);
  const leversRow = Math.max(...[...cells.values()].map((cell) => placeOf(cell).row)) + 3;
  const paying = `IFERROR(AND(${figure('NPV')}>=0,${figure('Cover of demand')}>=1),FALSE)`;
  page
    .section(`A${leversRow}`, '')
    .put(
      `A${leversRow}`,
      `=IF(${paying},"How little would have to change before it no longer pays","The three smallest changes that would make it so")`,
      'section',
    )
    .put(`I${leversRow}`, 'see Levers', 'heading');
  for (const nth of [1, 2, 3]) page.put(`A${leversRow + nth}`, lever(levers, nth), 'output');
  const chartsRow = leversRow + 5;
  page
    .chartAt(`A${chartsRow}`, {
      kind: 'stacked column',
      title: 'What the beds need and each stage could make',
      across: '',
      up: 't/day',
      labels: stageChart.labels,
      series: stageChart.series,
      width: 504,
      height: 207,
    })
    .chartAt(`F${chartsRow}`, {
      kind: 'stacked column',
      title: 'A year’s bedding, owning the kit included',
      across: '',
      up: 'money a year',
      labels: moneyChart.labels,
      series: moneyChart.series,
      width: 484,
      height: 207,
    });
  const warningsRow = chartsRow + 10;
  page.section(`A${warningsRow}`, 'Warnings, and what to do');
  page.put(`D${warningsRow}`, `=${warningCount}&" in all, every one on ${figuresName}"`, 'heading');
  for (let k = 1; k <= shownWarnings; k++) {
    const row = warningsRow + k;
    page
      .put(`A${row}`, `=IFERROR(MID(${warning('A', String(k))},10,60),"")`, 'label', { wrap: true })
      .block(`B${row}:I${row}`, `=IFERROR(${warning('D', String(k))}&"","")`, 'note', { wrap: true })
      .tall(row, 2);
  }
  const askRow = warningsRow + shownWarnings + 2;
  return page
    .section(`A${askRow}`, 'Who to ask before you act')
    .block(`A${askRow + 1}:I${askRow + 1}`, whoToAsk, 'note', { wrap: true })
    .tall(askRow + 1, 3);
}
