import { quantile } from 'simple-statistics';
import { type Answer, NoAnswer, Refusal } from '../domain/refusal.ts';
import type { Figure } from './figure.ts';
import type { FigureKey } from './figures.ts';
import { answerOf } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import { figuresAsked } from './many.ts';
import { type Plan, planOf } from './plan.ts';
import { drawPlans, readRanges } from './ranges.ts';

export const usualDoubts: readonly FigureKey[] = [
  'Cover of demand',
  'Cover in the coldest month',
  'Saving',
  'NPV',
  'Payback',
  'Hygiene score, fibre',
  'Hygiene span, fibre',
];

/** When a result is as one wishes it, in words and as a test; `undefined` is a draw without an answer. */
interface Good {
  readonly when: string;
  readonly is: (value: number | undefined) => boolean;
}

const atLeast = (least: number): Good => ({ when: `${least} or more`, is: (value) => value !== undefined && value >= least });
const above0: Good = { when: 'above 0', is: (value) => value !== undefined && value > 0 };
const below50: Good = { when: 'below 50', is: (value) => value !== undefined && value < 50 };
const answered: Good = { when: 'paid back within the life', is: (value) => value !== undefined };

const goods: Readonly<Partial<Record<string, Good>>> = {
  'Cover of demand': atLeast(1),
  'Cover in the coldest month': atLeast(1),
  NPV: above0,
  'NPV after tax': above0,
  Saving: above0,
  'Saving after capital': above0,
  'Loan cover': atLeast(1.25),
  'Hygiene score, fibre': below50,
  'Hygiene score, present bedding': below50,
  Payback: answered,
  'Discounted payback': answered,
};

/** Without an answer in the draw these lie beyond every answer: not paid back is later than any year. */
const longest: ReadonlySet<string> = new Set(['Payback', 'Discounted payback']);

const percentiles = [0.1, 0.5, 0.9] as const;

const beyond = new NoAnswer('not paid back within the life in as many of the draws');
const never = new NoAnswer('no draw has an answer: see BEDDING.BUDGET.HERD for what it lacks');

function spreadOf({ key }: Figure, values: readonly (number | undefined)[]): readonly (Answer | undefined)[] {
  const known = values.filter((value) => value !== undefined);
  if (known.length === 0) return [never, never, never, never];
  const isLongest = longest.has(key);
  const ranked = isLongest ? values.map((value) => value ?? Number.POSITIVE_INFINITY) : known;
  const mean = isLongest && known.length < values.length ? undefined : known.reduce((sum, value) => sum + value, 0) / known.length;
  return [mean, ...percentiles.map((p) => quantile([...ranked], p)).map((value) => (Number.isFinite(value) ? value : beyond))];
}

function rowOf(figure: Figure, plan: Plan, values: readonly (number | undefined)[]): readonly (Answer | undefined)[] {
  const { key, unit } = figure;
  const now = answerOf(() => figure.value(plan));
  // A span stands beside its score as it is in the plan as given.
  if (typeof now === 'string') return [key, now, ...Array.from({ length: 7 }, () => undefined)];
  const good = goods[key];
  const without = values.filter((value) => value === undefined).length;
  const isOfNoLoan = key === 'Loan cover' && without === values.length;
  const chance = good && !isOfNoLoan ? values.filter(good.is).length / values.length : undefined;
  return [key, unit, ...spreadOf(figure, values), chance, chance === undefined ? undefined : good?.when, without];
}

const isSpan = ({ key }: Figure): boolean => key.startsWith('Hygiene span');

function refuseWords(figures: readonly Figure[], plan: Plan): void {
  const word = figures.find((figure) => !isSpan(figure) && typeof answerOf(() => figure.value(plan)) === 'string');
  if (word) throw new Refusal('results (table)', `${word.key} is a word, not a number`, 'compare words with BEDDING.BUDGET.PLANS');
}

/** How sure the whole plan is: each result over many plans drawn from the ranges of its items. */
export function howSure(items: Table, values: Table | undefined, ranges: Table, asked: Table | undefined, draws: number, seed: number) {
  const given = pairUp(items, values);
  const [refused] = given.refused;
  if (refused) throw refused;
  const plan = planOf(given);
  const figures = figuresAsked(asked, usualDoubts);
  refuseWords(figures, plan);
  const drawn = drawPlans(given, readRanges(ranges, plan), figures, draws, seed);
  return { rows: figures.map((figure, k) => rowOf(figure, plan, drawn.figures[k] as readonly (number | undefined)[])) };
}
