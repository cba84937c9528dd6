import { call } from '../../src/core/call.ts';
import { CellError, type Matrix } from '../../src/core/result.ts';
import { registry } from '../../src/functions/index.ts';
import worked from './worked-herd.json';

export const recordOf = (name: string) => {
  const record = registry.find((candidate) => candidate.name === name);
  if (!record) throw new Error(`no ${name}`);
  return record;
};
export const column = (values: readonly unknown[]) => values.map((value) => [value]);

export type Inputs = Record<string, number | string | boolean>;
export const inputs: Inputs = worked.inputs;

export const herd = (given: Inputs): Matrix => call(recordOf('BUDGET.HERD'), [column(Object.keys(given)), column(Object.values(given))]);
export const rowOf = (answer: Matrix, key: string) => answer.find((row) => row[0] === key) ?? [];
export const sentence = (cell: unknown) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : String(cell));
export const resultOf = (given: Inputs, key: string) => rowOf(herd(given), key)[1];
export const warningsOf = (given: Inputs) =>
  herd(given)
    .map((row) => String(row[0]))
    .filter((key) => key.startsWith('Warning: '))
    .map((key) => key.slice(9));
export const without = (...names: string[]): Inputs => Object.fromEntries(Object.entries(inputs).filter(([name]) => !names.includes(name)));

export const pressAlone: Inputs = {
  ...without(
    'Air m3 per hour',
    'Hot water temperature',
    'Hot water litres per hour',
    'Heat price per kWh',
    'Drum m3',
    'Drum fill',
    'Stated output m3 per hour',
  ),
  'Dried to dry matter': 0.355,
};
/** Too little slurry for the beds, and a grant: bought bedding makes up the rest. */
export const tooLittle: Inputs = {
  ...inputs,
  'Slurry litres per cow': 30,
  'Water litres per cow': 0,
  'Bought price per t': 250,
  Grant: 18_000,
};
/** Air at the dew point of the exhaust carries nothing off. */
export const nothingMade: Inputs = {
  ...inputs,
  'Outdoor temperature': 20,
  'Outdoor humidity': 1,
  'Hot water temperature': 20.5,
  'Exhaust humidity': 0.2,
};
