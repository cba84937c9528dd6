import { SCORE_CAUTION } from '../../domain/hygiene.ts';
import { quoted } from '../grid.ts';
import { stateOf } from './figures.ts';
import { inUse } from './inputs.ts';

/** A question that the plan is to answer: its figure, the answer in a word, and what that rests on. `{}` are cells of Answer. */
export interface Verdict {
  readonly question: string;
  readonly figure: string;
  readonly format: 'two' | 'money' | 'whole' | 'text';
  readonly word: string;
  readonly because: string;
  /** As long as it can be. */
  readonly says: readonly string[];
}

/** From these chances on it is said to pay, or to do so likely: judgement. */
const SURE = 0.8;
const EVEN = 0.5;
/** From here on the score is raised: the third of its four bands. */
const RAISED = 50;

const unknown = '"not known"';
const seeTop = '"not worked out yet: see the top of this page"';
const ifKnown = (cell: string, then: string, otherwise = unknown): string => `IF(ISNUMBER(${cell}),${then},${otherwise})`;

const cover = '{Cover of demand}';
const coldest = '{Cover in the coldest month}';
const score = '{Hygiene score, fibre}';
const present = '{Hygiene score, present bedding}';
const permission = inUse('Permission confirmed');
export const isPermitted = `IF(ISLOGICAL(${permission}),${permission},TRIM(${permission})="yes")`;
export const notConfirmed =
  'Permission is not confirmed: ask the authority and your milk buyer before you spend; see Conditions and cautions.';

/** A cover in words: what is short is never rounded up to enough. */
export const timesOf = (cell: string): string => `IF(AND(${cell}<1,${cell}>=0.995),"just under 1",TEXT(${cell},"0.00"))`;

/** Nothing blank, refused or taken for granted reads as good. */
export const verdicts: readonly Verdict[] = [
  {
    question: 'Does it cover the beds?',
    figure: cover,
    format: 'two',
    word: ifKnown(
      cover,
      `IF(${cover}<1,"short",${ifKnown(coldest, `IF(${coldest}<1,"short in winter",IF(${stateOf('weather')}>0,"likely","yes"))`)})`,
    ),
    because: ifKnown(
      cover,
      `"times the need, counted by the year’s mean; in the coldest month "&${ifKnown(coldest, timesOf(coldest))}&IF(${stateOf('weather')}>0,"; the weather is taken, not typed","")`,
      seeTop,
    ),
    says: ['times the need, counted by the year’s mean; in the coldest month just under 1; the weather is taken, not typed'],
  },
  {
    question: 'Does it pay?',
    figure: '{NPV}',
    format: 'money',
    word: ifKnown(
      '{NPV}',
      `IF(${stateOf('amounts')}>0,"doubtful",IF({NPV}<0,"no",${ifKnown('{chance}', `IF({chance}>=${SURE},"yes",IF({chance}>=${EVEN},"likely","doubtful"))`, '"likely"')}))`,
    ),
    because: ifKnown(
      '{NPV}',
      `"NPV before tax; "&${ifKnown('{chance}', 'TEXT({chance},"0%")&" chance that it is above 0"', '"its chance is not worked out"')}&IF(${stateOf('amounts')}>0,"; the bedding now, or its labour, is assumed: type it","")`,
      seeTop,
    ),
    says: ['NPV before tax; its chance is not worked out; the bedding now, or its labour, is assumed: type it'],
  },
  {
    question: 'Is it clean enough?',
    figure: score,
    format: 'whole',
    word: ifKnown(
      score,
      ifKnown(stateOf('highest'), `IF(${stateOf('highest')}<${RAISED},"likely",IF(${stateOf('lowest')}<${RAISED},"doubtful","unlikely"))`),
    ),
    because: ifKnown(
      score,
      `"hygiene score, 0 is best, span "&{Hygiene span, fibre}&"; bedding now "&${ifKnown(present, `TEXT(${present},"0")&", span "&{Hygiene span, present bedding}`)}&"; a ${SCORE_CAUTION}"`,
      seeTop,
    ),
    says: [`hygiene score, 0 is best, span 100–100; bedding now 100, span 100–100; a ${SCORE_CAUTION}`],
  },
  {
    question: 'Is it allowed?',
    figure: `IF(${inUse('Country')}="","–",${inUse('Country')})`,
    format: 'text',
    word: `IF(${isPermitted},"yes","not confirmed")`,
    because: `IF(${isPermitted},"agreed in writing by authority and milk buyer, as typed on Inputs",${quoted(notConfirmed)})`,
    says: [notConfirmed],
  },
];

/** How a word looks; the word itself says it without colour. */
export const wordLooks = [
  ['good', ['yes', 'likely']],
  ['bad', ['no', 'short', 'unlikely']],
  ['watch', ['short in winter', 'doubtful', 'not known', 'not confirmed']],
] as const;
