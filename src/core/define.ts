import type { Answer } from '../domain/refusal.ts';
import type { SourceId } from './bibliography.ts';
import type { Parameter, ValuesOf } from './parameters.ts';
import type { Unit } from './units.ts';

/** Arithmetic in the names of arguments, earlier steps and exported domain functions; a test works it out and compares. */
interface Worked {
  readonly how: string;
}
/** An equation solved by iteration: the two sides that must agree, written like `how`; a test checks the residual. */
interface Solved {
  readonly solves: string;
  /** The two ends, as arithmetic, between which the answer lies and there alone. */
  readonly between: readonly [low: string, high: string];
}
/** Looked up or counted rather than calculated, said in words. */
interface Told {
  readonly told: string;
}

/** One line of working: what the value is, its unit, how it comes about, and on whose word. */
export type Line = {
  readonly says: string;
  readonly unit: Unit;
  readonly source?: SourceId;
  /** Arithmetic that is true where the step has an answer; left out where it always has one. */
  readonly only?: string;
  /** Arithmetic that plain cells can hold, where the equation is told in words or they would stumble over it. */
  readonly closed?: string;
} & (Worked | Solved | Told);

export const equationOf = (line: Line): string => ('how' in line ? line.how : 'solves' in line ? line.solves : line.told);

/** One line of a working with its value: what WORKING lists and the pane shows. */
export interface WorkingStep {
  readonly step: string;
  readonly says: string;
  readonly equation: string;
  readonly value: Answer | undefined;
  readonly unit: string;
  readonly source: string;
}

/** A call with an answer found outside this project. */
export interface Example {
  readonly call: readonly unknown[];
  /** In a spill: the row's key and the column's heading. */
  readonly at?: readonly [key: string, column: string];
  readonly gives: number | string;
  /** Widest difference allowed, in the answer's own unit, and why where it is not just rounding. */
  readonly within?: number;
  readonly source: string;
}

export type Row = readonly (Answer | undefined)[];

/** What `compute` of a spill returns beside its steps. */
export interface SpillSteps {
  readonly rows: readonly Row[];
  /** The header, where it depends on what was asked for. */
  readonly columns?: readonly string[];
}

/** Everything the surfaces know of one function. */
export interface FunctionRecord {
  readonly name: string;
  readonly summary: string;
  /** Words a farmer might search for, beside those of name and summary. */
  readonly finds: string;
  readonly parameters: readonly Parameter[];
  readonly compute: (...given: never[]) => object;
  readonly result: string;
  /** Header row of a spill; absent where the result is one cell, which then takes ranges and broadcasts. */
  readonly columns?: readonly string[];
  readonly working: Readonly<Record<string, Line>>;
  /** Of a table: what stands in some of its rows, by key, as arithmetic in arguments and steps. */
  readonly inRows?: Readonly<Record<string, Line>>;
  /** Of a table with a row for each year: its columns, as arithmetic in arguments, steps, `year` and columns; `before` gives that of the year before. */
  readonly byYear?: Readonly<Record<string, Line & Worked>>;
  /** A working of its own, where the answer's rows say more than a list of steps could. */
  readonly explain?: (given: readonly never[]) => readonly WorkingStep[];
  readonly sources: readonly SourceId[];
  readonly examples: readonly Example[];
  /** What to keep in mind on reading the answer: under its working, in the panel and in the documents. */
  readonly notes?: readonly string[];
}

interface Common<Parameters extends readonly Parameter[], Steps> {
  readonly name: string;
  readonly summary: string;
  readonly finds: string;
  readonly parameters: Parameters;
  readonly compute: (...given: ValuesOf<Parameters>) => Steps;
  readonly sources: readonly SourceId[];
  readonly examples: readonly Example[];
  readonly notes?: readonly string[];
}

interface OneCell<Parameters extends readonly Parameter[], Steps, Result extends keyof Steps> extends Common<Parameters, Steps> {
  readonly result: Result;
  readonly working: NoInfer<{ readonly [Step in keyof Steps]: Line }>;
}

interface Spill<Parameters extends readonly Parameter[], Steps extends SpillSteps> extends Common<Parameters, Steps> {
  readonly columns: readonly string[];
  readonly inRows?: Readonly<Record<string, Line>>;
  readonly byYear?: Readonly<Record<string, Line & Worked>>;
  readonly explain?: (given: NoInfer<ValuesOf<Parameters>>) => readonly WorkingStep[];
  readonly working: NoInfer<{ readonly [Step in Exclude<keyof Steps, keyof SpillSteps>]: Line }>;
}

/** A function with one answer, named among the steps that `compute` returns. Every step must be described. */
export function define<
  const Parameters extends readonly Parameter[],
  Steps extends { readonly [Step in keyof Steps]: Answer | undefined },
  const Result extends keyof Steps & string,
>(record: OneCell<Parameters, Steps, Result>): FunctionRecord {
  return record as unknown as FunctionRecord;
}

/** A function whose answer is a table: `compute` returns its `rows` (without header) and any steps on the way. */
export function defineSpill<const Parameters extends readonly Parameter[], Steps extends SpillSteps>(
  record: Spill<Parameters, Steps>,
): FunctionRecord {
  return { ...record, result: 'rows' } as unknown as FunctionRecord;
}
