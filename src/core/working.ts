import { NoAnswer } from '../domain/refusal.ts';
import { type Fallback, referenceOf, type SourceId } from './bibliography.ts';
import { type Argument, readArguments } from './call.ts';
import { equationOf, type FunctionRecord, type SpillSteps, type WorkingStep } from './define.ts';
import type { Parameter } from './parameters.ts';
import { CellError, isBlank, toCell, toCellError } from './result.ts';

/** `Reich and others 2010, … (seen)`: a reference with how far it can be trusted. */
export const cite = (id: SourceId, status: string = referenceOf(id).status): string => `${referenceOf(id).reference} (${status})`;

export const citeDefault = (fallback: Fallback): string => (fallback.value === undefined ? '' : cite(fallback.source, fallback.status));

function argumentStep(parameter: Parameter, given: unknown, argument: Argument): WorkingStep {
  const { name, says, unit, fallback } = parameter;
  const cell = Array.isArray(argument) ? argument[0]?.[0] : argument;
  const common = { step: name, says, unit };
  if (parameter.table && given) return { ...common, equation: 'given', value: `${(given as unknown[]).length} rows`, source: '' };
  if (!isBlank(cell) || !fallback) return { ...common, equation: 'given', value: given as never, source: '' };
  return { ...common, equation: 'default', value: fallback.value ?? fallback.shown, source: citeDefault(fallback) };
}

function refused(record: FunctionRecord, error: CellError): WorkingStep {
  return {
    step: 'refused',
    says: 'Why there is no answer',
    equation: error.message,
    value: toAnswer(error),
    unit: '',
    source: record.name,
  };
}

const toAnswer = ({ code, message }: CellError) => (code === '#N/A' ? new NoAnswer(message) : message);

/** A spill's cells as steps, so that each can be traced: named by its row's key, and by its column where there are several. */
function spillSteps(usual: readonly string[], { rows, columns = usual }: SpillSteps): WorkingStep[] {
  const only = columns.length === 3 && columns[1] === 'value';
  return rows.flatMap(([key, ...cells]) =>
    only
      ? [{ step: String(key), says: '', equation: '', value: cells[0], unit: String(cells[1]), source: '' }]
      : cells.map((value, k) => ({ step: `${key}: ${columns[k + 1]}`, says: '', equation: '', value, unit: '', source: '' })),
  );
}

function computedSteps(record: FunctionRecord, given: readonly unknown[]): WorkingStep[] {
  const steps = record.compute(...(given as never[])) as Record<string, never>;
  const names = Object.keys(record.working).filter((name) => name !== record.result);
  if (!record.columns) names.push(record.result);
  const own = names.map((step) => {
    const line = record.working[step] as (typeof record.working)[string];
    return {
      step,
      says: line.says,
      equation: equationOf(line),
      value: steps[step],
      unit: line.unit,
      source: line.source ? cite(line.source) : '',
    };
  });
  if (record.columns) return [...own, ...spillSteps(record.columns, steps as unknown as SpillSteps)];
  const answer = toCell(steps[record.result]);
  return answer instanceof CellError ? [...own, refused(record, answer)] : own;
}

const noteSteps = ({ notes = [] }: FunctionRecord): WorkingStep[] =>
  notes.map((says) => ({ step: 'note', says, equation: '', value: undefined, unit: '', source: '' }));

/**
 * Everything that one call worked out on its way, arguments first, then what to keep in mind, and the answer last: the very
 * numbers that the function itself computed. A refused call shows its refusal.
 */
export function explain(record: FunctionRecord, args: readonly Argument[]): readonly WorkingStep[] {
  const given = readArguments(record, args);
  if (given instanceof CellError) return [refused(record, given)];
  const asked = record.parameters.map((parameter, k) => argumentStep(parameter, given[k], args[k]));
  try {
    return [...asked, ...noteSteps(record), ...(record.explain?.(given as never) ?? computedSteps(record, given))];
  } catch (thrown) {
    return [...asked, refused(record, toCellError(thrown, record.parameters))];
  }
}
