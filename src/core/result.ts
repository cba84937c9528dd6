import { type Answer, NoAnswer, Refusal } from '../domain/refusal.ts';
import type { Parameter } from './parameters.ts';
import { nameWithUnit } from './words.ts';

/** What a surface shows in place of a value: its code and the sentence that goes with it. */
export class CellError {
  readonly code: '#VALUE!' | '#N/A';
  readonly message: string;

  constructor(code: '#VALUE!' | '#N/A', message: string) {
    this.code = code;
    this.message = message;
  }
}

export type Cell = number | string | boolean | CellError;
export type Matrix = readonly (readonly Cell[])[];

/** Blank on every host: what an empty cell, an omitted argument and an empty text arrive as. See DEVELOPERS.md, 'Blank and zero'. */
export const isBlank = (cell: unknown): boolean => cell === null || cell === undefined || cell === '';

/** An answer as a cell: never NaN, Infinity or undefined. */
export function toCell(answer: Answer | undefined): Cell {
  if (typeof answer === 'number') {
    return Number.isFinite(answer)
      ? answer
      : new CellError('#VALUE!', 'the answer is too large or too small to work out; check the sizes of the numbers given');
  }
  if (answer === undefined) return '';
  return typeof answer === 'object' ? toCellError(answer, []) : answer;
}

/** The cell error for what a domain function or the reader of a table threw. Anything else is a fault of ours and must not be hidden. */
export function toCellError(thrown: unknown, parameters: readonly Parameter[]): CellError {
  if (thrown instanceof CellError) return thrown;
  if (thrown instanceof NoAnswer) return new CellError('#N/A', thrown.message);
  if (!(thrown instanceof Refusal)) throw thrown;
  const parameter = parameters.find(({ name }) => name === thrown.argument);
  const named = parameter ? nameWithUnit(parameter) : thrown.argument;
  return new CellError('#VALUE!', `${named}: ${thrown.problem}; ${thrown.accepted}`);
}
