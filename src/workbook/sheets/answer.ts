import { figures } from '../../budget/figures.ts';
import { SELF_HEATING_RATIO } from '../../domain/drying.ts';
import { SCORE_CAUTION } from '../../domain/hygiene.ts';
import { resultFormat, shownUnit } from '../formats.ts';
import { moved, orDash, quoted } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import {
  figure,
  figureAt,
  figuresName,
  lacksSome,
  longestState,
  longestWarning,
  meaning,
  moneyChart,
  stageChart,
  state,
  warning,
  warningCount,
} from './figures.ts';
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
const strong = new Set([
  'What limits',
  'Cover of demand',
  'Saving',
  'Payback',
  'NPV',
  'Stated output against the air',
  'Hygiene score, fibre',
]);

/** One block of figures below the other, from the row and the column on; each figure has its key for a name. */
function fill(page: SheetBuilder, blocks: readonly Block[], column: string): void {
  for (const { heading, more, keys } of blocks) {
    page.across(`${column}${page.row}`, [heading, '', `see ${more}`], 'heading');
    page.row++;
    for (const key of keys) {
      const { unit } = figures.find((result) => result.key === key) ?? { unit: '' };
      const label = `${column}${page.row}`;
      const format = resultFormat(unit);
      page
        .called(key, moved(label, 1))
        .put(label, key, 'label')
        .put(moved(label, 1), orDash(figureAt(label)), strong.has(key) ? 'strong' : 'output', { format, align: 'right' })
        .put(moved(label, 2), shownUnit(unit), 'note');
      page.row++;
    }
  }
}

interface Sentence {
  readonly formula: string;
  /** As long as it can be. */
  readonly says: readonly string[];
}

/** The answer in words, each line one short formula over the figures below; a line whose figure is not there yet stays empty. */
function sentences(drying: SheetBuilder): readonly Sentence[] {
  const said = (key: string, sentence: string, longest: string, otherwise = ''): Sentence => ({
    formula: `=IF(ISNUMBER({${key}}),${sentence},${otherwise === '' ? quoted('') : `IF(${lacksSome},${quoted(otherwise)},"")`})`,
    says: [longest, otherwise],
  });
  const rival = `IF({What limits}="dryer",", not the slurry,",IF(ISNUMBER({Dryer could make}),", not the dryer,",""))`;
  const paid = `IF(ISNUMBER({Payback}),"pays back in "&TEXT({Payback},"0.0")&" years.","does not pay back within its life.")`;
  const worth = `TEXT(ABS({NPV}),"#,##0")&IF({NPV}<0," less"," more")&" than it costs, before tax."`;
  const takes = `TEXT(${drying.from('air')},"#,##0")&" m³/h and "&TEXT(${drying.from('airHeat')},"#,##0")&" kW of heat."`;
  const ratio = '{Stated output against the air}';
  const verdict = `IF(${ratio}>${SELF_HEATING_RATIO},"not with this air. As warm, it would take "&${takes},IF(${ratio}>1,"measure it.","possible."))`;
  return [
    said(
      'Cover of demand',
      `"The "&{What limits}&${rival}&" sets the limit: it can make "&TEXT({Cover of demand},"0.00")&" times what the beds need."`,
      'The slurry, not the dryer, sets the limit: it can make 999.99 times what the beds need.',
      'Fill in Inputs, or the survey in the panel: the answer appears here as far as it goes.',
    ),
    said(
      'Cover in the coldest month',
      `"In the coldest month the "&${figure('Limit in the coldest month')}&" does, at "&TEXT({Cover in the coldest month},"0.00")&" times."`,
      'In the coldest month the slurry does, at 999.99 times.',
    ),
    said(
      'Saving',
      `"It saves "&TEXT({Saving},"#,##0")&" a year before what it costs to own, and "&${paid}`,
      'It saves -9,999,999 a year before what it costs to own, and does not pay back within its life.',
    ),
    said(
      'NPV',
      `"Over "&${inUse('Life years')}&" years at "&TEXT(${inUse('Discount rate')},"0.0%")&" it is worth "&${worth}`,
      'Over 40 years at 99.9% it is worth 9,999,999 more than it costs, before tax.',
    ),
    said(
      'Stated output against the air',
      `"The stated output needs "&TEXT(${ratio},"0.0")&" times the water this air can carry: "&${verdict}`,
      'The stated output needs 999.9 times the water this air can carry: not with this air. As warm, it would take 9,999,999 m³/h and 99,999 kW of heat.',
    ),
    said(
      'Hygiene score, fibre',
      `"Hygiene score "&TEXT({Hygiene score, fibre},"0")&", span "&{Hygiene span, fibre}&", "&${meaning('Hygiene score, fibre')}`,
      `Hygiene score 100, span 100–100, moderate: 0 is best; a ${SCORE_CAUTION}.`,
    ),
    {
      formula: `=IF(${inUse('Permission confirmed')}="yes","Permission is confirmed in writing.",${quoted(notConfirmed)})`,
      says: [notConfirmed],
    },
  ];
}

/** Where the sentences stand, in column A, that say in short whether it will work and pay: the limit, and what it saves. */
export const answerInShort = { sheet: sheetName, rows: [5, 7] } as const;

const notConfirmed = 'Permission is not confirmed: ask the authority and your milk buyer before you spend; see Conditions and cautions.';

const shownWarnings = 10;

const whoToAsk =
  'Your vet: udders and how they will be watched. The authority and your milk buyer: whether this fibre may be used, in writing. Licensed heating and electrical engineers: heat, hot water, power, guards. Your accountant and lender: tax, grant, loan. Your fire adviser and insurer: dust and stored dry fibre. Slurry gas kills: see Conditions and cautions before anyone mixes or presses.';

interface Pages {
  readonly drying: SheetBuilder;
  readonly levers: SheetBuilder;
  readonly checks: SheetBuilder;
}

function head(page: SheetBuilder, checks: SheetBuilder): void {
  page
    .put('A1', 'Bedding from our own slurry: will it work and will it pay?', 'title')
    .put('A2', 'Herd', 'label')
    .put('B2', `=IF(${herdName}="","–",${herdName})`, 'strong')
    .block('A3:G3', state, 'note', { wrap: true, says: [longestState] })
    .rule('A3:G3', 'LEFT($A$3,5)="Still"', 'watch')
    .rule('A3:G3', 'AND(LEFT($A$3,5)<>"Still",LEFT($A$3,5)<>"Every")', 'bad')
    .put('E2', 'Sums checked two ways', 'label')
    .put('F2', `=${checks.from('overall')}`, 'check', { says: ['all OK: 99 checks, 99 not worked out'] })
    .rule('F2:F2', 'ISNUMBER(SEARCH("broken",F2))', 'bad');
  page.row = 5;
}

function changes(page: SheetBuilder, levers: SheetBuilder): void {
  const paying = `IFERROR(AND(${figure('NPV')}>=0,${figure('Cover of demand')}>=1),FALSE)`;
  page
    .part('')
    .put(
      `A${page.row - 1}`,
      `=IF(${paying},"How little would have to change before it no longer pays","The three smallest changes that would make it so")`,
      'section',
    )
    .put(`G${page.row - 1}`, 'see Levers', 'heading');
  for (const nth of [1, 2, 3]) page.line([lever(levers, nth)]);
}

function draw(page: SheetBuilder): void {
  const common = { kind: 'stacked column', across: '', height: 207 } as const;
  page.charts([
    {
      ...common,
      title: 'What the beds need and each stage could make',
      up: 't/day',
      labels: stageChart.labels,
      series: stageChart.series,
      over: ['A', 'C'],
    },
    {
      ...common,
      title: 'A year’s bedding, owning the kit included',
      up: 'money a year',
      labels: moneyChart.labels,
      series: moneyChart.series,
      over: ['E', 'G'],
    },
  ]);
}

function warnings(page: SheetBuilder): void {
  page.row--;
  page.part('Warnings, and what to do').put(`C${page.row - 1}`, `=${warningCount}&" in all, every one on ${figuresName}"`, 'heading');
  for (let k = 1; k <= shownWarnings; k++) {
    page
      .block(`B${page.row}:G${page.row}`, `=IFERROR(${warning('D', String(k))}&"","")`, 'note', { wrap: true, says: [longestWarning] })
      .line([`=IFERROR(MID(${warning('A', String(k))},10,60),"")`], 'label', { wrap: true });
  }
}

export function answerSheet({ drying, levers, checks }: Pages): SheetBuilder {
  const page = new SheetBuilder(sheetName, [205, 100, 150, 12, 205, 116, 150], { onePage: true });
  head(page, checks);
  for (const { formula, says } of sentences(drying)) page.line([formula], 'lead', { says });
  page.sideBySide(
    () => fill(page, left, 'A'),
    () => fill(page, right, 'E'),
  );
  page.line(
    ['How likely that is, of many plans drawn from what each figure may turn out to be, and what to measure next: see How sure.'],
    'note',
  );
  changes(page, levers);
  draw(page);
  warnings(page);
  return page.part('Who to ask before you act', whoToAsk);
}
