import type { Unit } from '../core/units.ts';
import type { Answer } from '../domain/refusal.ts';
import { noDryer } from './dryer.ts';
import type { Plan } from './plan.ts';

/** What there is to a row of the budget's answer, beside its key and unit. */
interface Entry {
  /** Plans in which it says anything; in others it answers that there is no dryer. */
  readonly only?: 'with a dryer';
  /** Throws a Refusal or a NoAnswer where there is none: see `answerOf`. */
  readonly value: (plan: Plan) => Answer;
  /** How it comes about, in the names of items and figures in brackets; a test works it out and compares. Absent where it is told in words. */
  readonly how?: string;
  readonly meaning: string | ((plan: Plan) => string);
}

/** One row of the budget's answer. */
export interface Figure<Key extends string = string> extends Entry {
  readonly key: Key;
  readonly unit: Unit;
}

const withDryer =
  (value: Entry['value']): Entry['value'] =>
  (plan) => {
    if (!plan.needs.has_dryer) throw noDryer;
    return value(plan);
  };

export const figure = <const Key extends string>(key: Key, unit: Unit, entry: Entry): Figure<Key> => ({
  key,
  unit,
  ...entry,
  ...(entry.only && { value: withDryer(entry.value) }),
});

/** The functions of ours that an equation calls, each once: `PLANT.ELECTRICITY`. */
export const functionsIn = (how = ''): readonly string[] => [...new Set(how.match(/[A-Z]+\.[A-Z]+(?=\()/g) ?? [])];
