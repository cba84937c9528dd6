import { defineSpill, type FunctionRecord, type WorkingStep } from '../core/define.ts';
import { type Parameter, table, text } from '../core/parameters.ts';
import { explain } from '../core/working.ts';
import { Refusal } from '../domain/refusal.ts';

const prefix = /^BEDDING\./;

const asked: Parameter<readonly unknown[], 'arguments'> = {
  ...table('arguments', 'the function’s own arguments, in its order; an empty one means its default'),
  read: (cell) => cell as readonly unknown[],
  repeating: true,
};

const equation = ({ says, equation }: WorkingStep): string => [says, equation].filter((part) => part !== '').join(': ');

/** WORKING over the functions given: it explains all of them, and so cannot be among them itself. */
export function workingOf(records: readonly FunctionRecord[]): FunctionRecord {
  const byName = new Map(records.map((record) => [record.name, record]));
  const rowsFor = (function_name: string, given: readonly unknown[]) => {
    const record = byName.get(function_name.toUpperCase().replace(prefix, ''));
    if (!record)
      throw new Refusal('function_name', `"${function_name}" is not a function that can be explained`, 'enter a name such as DRYING.WATER');
    if (given.length > record.parameters.length) {
      throw new Refusal(
        'arguments',
        `${given.length} are given`,
        `enter at most the ${record.parameters.length} that ${record.name} takes`,
      );
    }
    return { rows: explain(record, given).map((line) => [line.step, equation(line), line.value, line.unit, line.source]) };
  };
  return defineSpill({
    name: 'WORKING',
    summary: 'How a function comes to its answer: every step with its equation, value, unit and source.',
    finds: 'why this number, show the sum, explain, audit trail, steps',
    parameters: [text('function_name', 'the function to explain, with or without BEDDING.'), asked],
    compute: rowsFor,
    columns: ['step', 'equation', 'value', 'unit', 'source'],
    working: {},
    sources: ['project'],
    examples: [
      {
        call: ['DRYING.YIELD', [1000, 0.75, 0.86]],
        at: ['dried', 'value'],
        gives: 872,
        within: 0.5,
        source: 'IRRI Rice Knowledge Bank: 1,000 kg of paddy dried from 25 % to 14 % moisture leaves 872 kg',
      },
    ],
  });
}
