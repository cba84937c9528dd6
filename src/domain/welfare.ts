import findings from '../data/welfare-findings.json';
import { type Answer, NoAnswer } from './refusal.ts';
import { sourceName } from './source-name.ts';
import { said } from './spell.ts';

/** A published trial of lying time against the dry matter of bedding: a line that holds between its own ends only. */
interface Trial {
  readonly trial: string;
  readonly from: number;
  readonly to: number;
  readonly hours: (dm: number) => number;
  readonly beds: string;
  readonly source: string;
  readonly status: string;
}

const reich = { from: 0.35, to: 0.9, hours: (dm: number) => 10.4 + 2 * (dm - 0.35) };
const fregonesi = { from: 0.265, to: 0.864, hours: (dm: number) => 8.8 + ((13.8 - 8.8) * (dm - 0.265)) / (0.864 - 0.265) };

const trials: readonly Trial[] = [
  { trial: 'Reich 2010', ...reich, beds: 'sawdust, non-lactating cows, ± 0.4 h', source: 'reich-2010', status: 'seen' },
  {
    trial: 'Fregonesi 2007',
    ...fregonesi,
    beds: 'sawdust on mattresses, non-lactating cows, a line through its two beds',
    source: 'fregonesi-2007-bedding',
    status: 'memory',
  },
];

const covers = (dm: number) => (trial: Trial) => dm >= trial.from && dm <= trial.to;
const rangeOf = ({ from, to }: Trial) => `${from} to ${to} DM`;

/**
 * Hours a day that a cow lies at a dry matter, lowest and highest of the published trials that cover it.
 *
 * reich = 10.4 + 2 * (dm - 0.35), 0.35 to 0.90; fregonesi = 8.8 + 5.0 * (dm - 0.265) / 0.599, 0.265 to 0.864
 *
 * Reich and others 2010; Fregonesi and others 2007, its two beds joined by a line. Both used non-lactating cows on sawdust.
 * Never carried beyond a trial's own ends.
 */
export function lyingRange(dm: number): { lowest: number; highest: number } {
  const hours = trials.filter(covers(dm)).map((trial) => trial.hours(dm));
  if (hours.length === 0)
    throw new NoAnswer(said`no lying trial covers a dry matter of ${dm}: they run from ${fregonesi.from} to ${reich.to}`);
  return { lowest: Math.min(...hours), highest: Math.max(...hours) };
}

/** What each published trial implies for lying time at a dry matter, the goal, and how far the trials disagree. See lyingRange. */
export function lyingTimes(dm: number) {
  const implied = trials.map((trial): (Answer | undefined)[] => {
    const hours = covers(dm)(trial) ? trial.hours(dm) : new NoAnswer(said`${trial.trial} says nothing outside ${rangeOf(trial)}`);
    return [trial.trial, hours, `${rangeOf(trial)}; ${trial.beds}`, sourceName(trial.source), trial.status];
  });
  const apart = trials.every(covers(dm))
    ? Math.abs(reich.hours(dm) - fregonesi.hours(dm))
    : new NoAnswer('the trials do not both cover this dry matter');
  const disagreement =
    'how far they are apart at this DM; a tenth more DM adds 0.2 h in Reich and 0.8 h in Fregonesi, four times as much: read both, not the mean';
  const rows = [
    ...implied,
    ['goal', 12, 'any bedding', sourceName('lying-goal-2019'), 'seen'],
    ['disagreement', apart, disagreement, sourceName('project'), 'computed'],
  ];
  return { rows };
}

/**
 * Lying time on a mattress by how much sawdust is on it.
 *
 * hours_day = 12.3 + 0.2 * kg_sawdust
 *
 * Tucker and Weary 2004: 12.3 ± 0.53 h with none and 13.8 ± 0.53 h with 7.5 kg, non-lactating cows. A line between those
 * two ends, and nothing beyond them.
 *
 * @param kg_sawdust sawdust lying on the mattress, 0 to 7.5 kg
 */
export const lyingByAmount = (kg_sawdust: number) => ({ hours_day: 12.3 + 0.2 * kg_sawdust });

/** Published findings on lying, hocks and stocking, those that contradict each other too. */
export const welfareTable = () => ({
  rows: findings.map(({ finding, figure, unit, source, status }) => [finding, figure, unit, sourceName(source), status]),
});
