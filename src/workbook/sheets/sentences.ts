import { SELF_HEATING_RATIO } from '../../domain/drying.ts';
import { SCORE_CAUTION } from '../../domain/hygiene.ts';
import { quoted } from '../grid.ts';
import { figure, lacksSome, stateOf } from './figures.ts';
import { inUse } from './inputs.ts';
import { isPermitted, notConfirmed, timesOf } from './verdicts.ts';

export interface Sentence {
  readonly formula: string;
  /** As long as it can be. */
  readonly says: readonly string[];
}

/** A sentence where the figure is a number; `{}` are cells of Answer. Without it the line stays empty. */
const said = (key: string, sentence: string, longest: string, otherwise = ''): Sentence => ({
  formula: `=IF(ISNUMBER({${key}}),${sentence},${otherwise === '' ? quoted('') : `IF(${lacksSome},${quoted(otherwise)},"")`})`,
  says: [longest, otherwise],
});

const money = (cell: string): string => `${stateOf('currency')}&TEXT(ABS(${cell}),"#,##0")`;
/** By the sign of what is shown: what rounds to nothing is told as nothing. */
const bySign = (cell: string, above: string, nothing: string, below: string): string =>
  `IF(ROUND(${cell},0)=0,${nothing},IF(${cell}>0,${above},${below}))`;
const moreOrLess = (cell: string): string =>
  bySign(cell, `${money(cell)}&" more than it costs"`, '"just what it costs"', `${money(cell)}&" less than it costs"`);

const cover = '{Cover of demand}';
const coldest = '{Cover in the coldest month}';
const stated = '{Stated output against the air}';
const cases = '{Mastitis cases to NPV 0}';

const saves = `"It saves "&${stateOf('saved')}&" a year before what it costs to own, and "&${stateOf('paidBack')}`;
const noSaving = `"A year with it costs as much as the bedding now, before what it costs to own."`;
const costs = `"It costs "&${stateOf('saved')}&" a year more than the bedding now, even before what it costs to own."`;

/** One figure on one basis: the firm word only where it holds at the best for the supplier, whose figure is then told. */
const statedWords = `"The stated output needs "&TEXT(${stateOf('statedTimes')},"0.00")&" times the water this air can carry"&IF(${stateOf('firm')}," at the best for the supplier: not with this air.",IF(${stated}<=1,": possible, but measure it.",IF(${stated}<=${SELF_HEATING_RATIO},": measure it before you pay.",", by the plan’s figures: weigh the fibre, ask for its air and heat.")))`;

/** The answer in words, each line one short formula over the figures below. */
export const sentences: readonly Sentence[] = [
  said(
    'Cover of demand',
    `"The "&${stateOf('limit')}&" sets the limit: it can make "&${timesOf(cover)}&" times what the beds need"&IF(${cover}<1,"; the rest must be bought.",".")`,
    'The slurry, not the dryer, sets the limit: it can make just under 1 times what the beds need; the rest must be bought.',
    'Fill in Inputs, or the survey in the panel: the answer appears here as far as it goes.',
  ),
  said(
    'Cover in the coldest month',
    `"In the coldest month the "&${figure('Limit in the coldest month')}&" can make "&${timesOf(coldest)}&" times what the beds need"&IF(${coldest}<1,": plan bought bedding for it. Fibre this moist is for use, not for keeping.",".")`,
    'In the coldest month the slurry can make just under 1 times what the beds need: plan bought bedding for it. Fibre this moist is for use, not for keeping.',
  ),
  said(
    'Saving',
    bySign('{Saving}', saves, noSaving, costs),
    'It saves 9,999,999 a year before what it costs to own, and never pays back in its life.',
  ),
  said(
    'NPV',
    `"Over "&${inUse('Life years')}&" years at "&TEXT(${inUse('Discount rate')},"0.00%")&" it is worth "&${moreOrLess('{NPV}')}&", before tax."`,
    'Over 40 years at 99.99% it is worth 9,999,999 more than it costs, before tax.',
  ),
  said(
    'NPV after tax',
    `IF(${inUse('Tax rate')}=0,"","After tax at "&TEXT(${inUse('Tax rate')},"0.00%")&" it is worth "&${moreOrLess('{NPV after tax}')}&": ask your accountant.")`,
    'After tax at 99.99% it is worth 9,999,999 more than it costs: ask your accountant.',
  ),
  said(
    'Stated output against the air',
    statedWords,
    'The stated output needs 999.99 times the water this air can carry, by the plan’s figures: weigh the fibre, ask for its air and heat.',
  ),
  said(
    'Hygiene score, fibre',
    `"Hygiene score "&TEXT({Hygiene score, fibre},"0")&", span "&{Hygiene span, fibre}&": 0 is best; a ${SCORE_CAUTION}."`,
    `Hygiene score 100, span 100–100: 0 is best; a ${SCORE_CAUTION}.`,
  ),
  said(
    'NPV',
    `IF(AND(NOT(ISNUMBER(${cases})),{NPV}>0),"",IF(ISNUMBER(${cases}),IF(${cases}<0.05,"Less than 0.1",TEXT(${cases},"0.0"))&" more clinical cases of mastitis for each 100 cows a year would eat what it earns","It earns nothing that more mastitis could eat")&": clinical cases only; what does not show costs as much again.")`,
    'Less than 0.1 more clinical cases of mastitis for each 100 cows a year would eat what it earns: clinical cases only; what does not show costs as much again.',
  ),
  {
    formula: `=IF(${isPermitted},"Permission is confirmed in writing.",${quoted(notConfirmed)})`,
    says: [notConfirmed],
  },
];

/** Which of them say in short whether it will work and pay: the limit, and what it saves. */
export const inShort = [0, 2] as const;
