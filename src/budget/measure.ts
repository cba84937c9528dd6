import { doubtFrom } from '../domain/doubt.ts';
import { type Answer, NoAnswer, Refusal } from '../domain/refusal.ts';
import type { Draws } from '../domain/uncertainty.ts';
import { answerOf } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import { figuresAsked } from './many.ts';
import { planOf } from './plan.ts';
import { drawPlans, type Range, readRanges } from './ranges.ts';

const money: ReadonlySet<string> = new Set(['NPV', 'NPV after tax']);
const noMoney = new NoAnswer('what knowing a figure is worth is told in money: ask for NPV or NPV after tax');
const nothing = new NoAnswer('nothing is in doubt: every item has the same low and high');

/** `Weigh a full bucket of the pressed fibre.` */
const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

const shareIn = ([, , , , share]: readonly (Answer | undefined)[]): number => (typeof share === 'number' ? share : -1);

/** Which figure to measure next: how much of the doubt about a result each item brings, largest first. */
export function measure(items: Table, values: Table | undefined, ranges: Table, result: string, draws: number, seed: number) {
  const given = pairUp(items, values);
  const [refused] = given.refused;
  if (refused) throw refused;
  const plan = planOf(given);
  const [figure] = figuresAsked([[result]], []);
  if (!figure || typeof answerOf(() => figure.value(plan)) === 'string')
    throw new Refusal('result', `${result} is a word, not a number`, 'enter a result that is a number');
  const uncertain = readRanges(ranges, plan).filter(({ low, high }) => low < high);
  if (uncertain.length === 0) throw nothing;
  const drawn = drawPlans(given, uncertain, [figure], draws, seed);
  const answers = drawn.figures[0] as readonly (number | undefined)[];
  const kept = answers.flatMap((answer, draw) => (answer === undefined ? [] : [draw]));
  const results = kept.map((draw) => answers[draw] as number);
  const rowOf = ({ item, low, likely, high }: Range, k: number): readonly (Answer | undefined)[] => {
    const values = drawn.items[k] as Draws;
    const doubt = answerOf(() =>
      doubtFrom(
        kept.map((draw) => values[draw] as number),
        results,
      ),
    );
    const [share, worth] = 'share' in doubt ? [doubt.share, doubt.worth_knowing] : [doubt, doubt];
    return [item.name, low, likely, high, share, money.has(figure.key) ? worth : noMoney, sentence(item.look)];
  };
  const rows = uncertain.map(rowOf).sort((one, other) => shareIn(other) - shareIn(one));
  const told = rows.map(shareIn).filter((share) => share >= 0);
  const rest: Answer = told.length === 0 ? nothing : Math.max(0, 1 - told.reduce((sum, share) => sum + share, 0));
  return { rows: [...rows, ['together and unexplained', undefined, undefined, undefined, rest, undefined, '']] };
}
