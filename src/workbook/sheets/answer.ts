import { figures } from '../../budget/figures.ts';
import type { Unit } from '../../core/units.ts';
import { resultFormat, shownUnit } from '../formats.ts';
import { moved, orDash, quoted } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { longestOverall, looksBad } from './checks.ts';
import {
  figureAt,
  figuresName,
  longestState,
  longestWarning,
  moneyChart,
  stageChart,
  state,
  stateOf,
  warning,
  warningCount,
} from './figures.ts';
import { herdName, inUse, preparedBy } from './inputs.ts';
import { goalIs, lever, longestChange } from './levers.ts';
import { longestCounted } from './months.ts';
import { inShort, type Sentence, sentences } from './sentences.ts';
import { verdicts, wordLooks } from './verdicts.ts';

const sheetName = 'Answer';

interface Block {
  readonly heading: string;
  /** The sheet that works it out at length. */
  readonly more: string;
  readonly keys: readonly string[];
}

const left: readonly Block[] = [
  {
    heading: 'Beds and kit',
    more: 'Fibre and drying',
    keys: [
      'Fibre needed',
      'What limits',
      'Cover of demand',
      'Cover in the coldest month',
      'Dried output volume',
      'Stated output against the air',
      'Home fibre per cubicle',
      'Bought-in per cubicle',
    ],
  },
  {
    heading: 'Cows and udders',
    more: 'Udder health',
    keys: [
      'Hygiene score, fibre',
      'Hygiene span, fibre',
      'Hygiene score, present bedding',
      'Hygiene span, present bedding',
      'Mastitis cases to NPV 0',
    ],
  },
];
const right: readonly Block[] = [
  {
    heading: 'Money a year',
    more: 'Options',
    keys: ['Bought-in cost with labour', 'Running cost', 'Top-up cost', 'Saving', 'Ownership cost', 'Saving after capital'],
  },
  {
    heading: 'Does it pay?',
    more: 'Investment',
    keys: ['Payback', 'NPV', 'NPV after tax', 'Loan cover', 'Break-even bedding price', 'Break-even heat price', 'Break-even kit cost'],
  },
];
const strong = new Set(['What limits', 'Cover of demand', 'Saving', 'Payback', 'NPV', 'Hygiene score, fibre', 'Mastitis cases to NPV 0']);

/** Money has its sign, where one was given. */
const isMoney = (unit: string): boolean => /^money/.test(resultFormat(unit)) || unit === 'per kWh';
const unitOf = (unit: Unit | ''): string =>
  unit === '' || !isMoney(unit)
    ? shownUnit(unit)
    : `=IF(${stateOf('currency')}="",${quoted(shownUnit(unit))},TRIM(${stateOf('currency')}&${quoted(unit === 'money' ? '' : ` ${shownUnit(unit)}`)}))`;

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
        .put(moved(label, 2), unitOf(unit), 'note', { says: [shownUnit(unit)] });
      page.row++;
    }
  }
}

/** The first of the rows in which the answer stands in words, each over column A. */
const firstSentence = 12;

/** Where the sentences stand, in column A, that say in short whether it will work and pay. */
export const answerInShort = { sheet: sheetName, rows: inShort.map((k) => firstSentence + k) } as const;

const shownWarnings = 10;

/** Beside every plan that somebody may act on. */
export const whoToAsk =
  'Your vet: udders and how they will be watched. The authority and your milk buyer: whether this fibre may be used, in writing. Licensed heating and electrical engineers: heat, hot water, power, guards. Your accountant and lender: tax, grant, loan. Your fire adviser and insurer: dust, and fibre that heats in a heap. Slurry gas kills: see Conditions and cautions before anyone mixes or presses.';

/** The herd in a line, so that a printed page says whose it is. */
function herdLine(): Sentence {
  const [cows, cubicles, litres] = ['Cows', 'Cubicles', 'Bedding litres per cubicle each time'].map((name) => inUse(name));
  return {
    formula: `=IF(COUNT(${cows},${cubicles},${litres})<3,"",TEXT(${cows},"#,##0")&" cows, "&TEXT(${cubicles},"#,##0")&" cubicles; "&ROUND(${litres},1)&" litres of fibre a cubicle each time; "&${inUse('Material now')}&IF(ISNUMBER(${inUse('Bought price per t')})," at "&TEXT(${inUse('Bought price per t')},"#,##0.00")&" a tonne","")&" now"&IF(${preparedBy}="","","; prepared by "&LEFT(${preparedBy},40))&${stateOf('dated')}&".")`,
    says: [
      '20,000 cows, 20,000 cubicles; 500 litres of fibre a cubicle each time; chopped straw at 10,000.00 a tonne now; prepared by a name of as many as forty letters here; budget of 31/12/2026.',
    ],
  };
}

function head(page: SheetBuilder, checks: SheetBuilder): void {
  const herd = herdLine();
  page
    .put('A1', 'Bedding from our own slurry: will it work and will it pay?', 'title')
    .put('A2', 'Herd', 'label')
    .put('B2', `=IF(${herdName}="","–",${herdName})`, 'strong')
    .block('A3:G3', state, 'note', { wrap: true, says: [longestState] })
    .rule('A3:G3', 'LEFT($A$3,5)="Still"', 'watch')
    .rule('A3:G3', 'AND(LEFT($A$3,5)<>"Still",LEFT($A$3,5)<>"Every")', 'bad')
    .put('E2', 'Sums checked two ways', 'label')
    .put('F2', `=${checks.from('overall')}`, 'check', { says: [longestOverall] })
    .rule('F2:F2', looksBad('F2'), 'bad')
    .put('A4', herd.formula, 'note', { says: herd.says });
}

/** The four questions with which one decides, each with its figure, its answer in a word and what that rests on. */
function inOneLook(page: SheetBuilder): void {
  page.row = 6;
  page.across(`A${page.row}`, ['in one look', 'figure', 'in a word', '', 'what it rests on', '', ''], 'heading');
  page.row++;
  const first = page.row;
  for (const { question, figure: shown, format, word, because, says } of verdicts) {
    const row = page.row++;
    page
      // What wraps stands at the top of its row, so all of it does.
      .put(`A${row}`, question, 'strong', { wrap: true })
      .put(`B${row}`, `=${shown}`, 'strong', { format, align: 'right', wrap: true })
      .put(`C${row}`, `=${word}`, 'strong', { says: ['short in winter'], wrap: true })
      .block(`E${row}:G${row}`, `=${because}`, 'note', { wrap: true, says });
  }
  const words = `C${first}:C${page.row - 1}`;
  for (const [look, which] of wordLooks) page.rule(words, `OR(${which.map((word) => `C${first}=${quoted(word)}`).join(',')})`, look);
  page.row = firstSentence;
}

/** What each kit or price alone would have to come to; two lists, since what covers the beds need not pay. */
function changes(page: SheetBuilder, levers: SheetBuilder): void {
  page.part('');
  const lists = [
    ['A', 'cover', 'What would cover the beds', 'How far it may go and still cover the beds'],
    ['E', 'pay', 'What would make it pay', 'How far it may go and still pay'],
  ] as const;
  for (const [column, goal, missed, met] of lists) {
    page.put(`${column}${page.row - 1}`, `=IF(${goalIs(levers, goal)}="met",${quoted(met)},${quoted(missed)})`, 'section');
    for (const nth of [1, 2, 3]) {
      const row = page.row + nth - 1;
      const range = `${column}${row}:${moved(`${column}${row}`, 2)}`;
      page.block(range, lever(levers, goal, nth), 'output', { wrap: true, says: [longestChange] });
    }
  }
  page.row += 3;
  page.line(
    [
      'Each alone, all else as it is; see Levers. Less bedding is never counted as a way. More air or heat takes a larger fan, motors and heater than typed: their price is not counted.',
    ],
    'note',
  );
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
  page
    .part('Warnings, and what to do')
    .put(
      `C${page.row - 1}`,
      `=IFERROR(${warningCount}&" in all"&IF(${warningCount}>${shownWarnings},": "&(${warningCount}-${shownWarnings})&" more on ${figuresName}",""),"")`,
      'heading',
    );
  for (let k = 1; k <= shownWarnings; k++) {
    page
      .block(`B${page.row}:G${page.row}`, `=IFERROR(${warning('D', String(k))}&"","")`, 'note', { wrap: true, says: [longestWarning] })
      .line([`=IFERROR(MID(${warning('A', String(k))},10,60),"")`], 'label', { wrap: true });
  }
}

interface Pages {
  readonly investment: SheetBuilder;
  readonly levers: SheetBuilder;
  readonly months: SheetBuilder;
  readonly checks: SheetBuilder;
}

export function answerSheet({ investment, levers, months, checks }: Pages): SheetBuilder {
  const page = new SheetBuilder(sheetName, [205, 100, 150, 12, 205, 116, 150], { onePage: true });
  head(page, checks);
  inOneLook(page);
  for (const { formula, says } of sentences) page.line([formula], 'lead', { says });
  page.sideBySide(
    () => fill(page, left, 'A'),
    () => {
      fill(page, right, 'E');
      page
        .called('chance', `F${page.row}`)
        .across(`E${page.row}`, ['Chance that NPV is above 0'], 'label')
        .put(`F${page.row}`, orDash(investment.from('chance')), 'output', { format: 'percent', align: 'right' })
        .put(`G${page.row}`, '%', 'note');
      page.row++;
    },
  );
  page
    .line([`=${months.from('counted')}`], 'note', { says: [longestCounted] })
    .line(['How likely that is, and which figure to measure next: see How sure.'], 'note');
  changes(page, levers);
  draw(page);
  warnings(page);
  return page.part('Who to ask before you act', whoToAsk);
}
