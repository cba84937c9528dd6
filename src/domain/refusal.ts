/**
 * What a domain function throws when it cannot answer. Only the surfaces know of `#VALUE!` and `#N/A`.
 * Both carry a sentence for the user and are never a programming fault, so no stack is taken: a plan asks a hundred
 * questions, and taking a stack for each one without an answer would cost more than all of its arithmetic.
 */

/** The arguments contradict each other or lie outside what the equation holds for. Shown as `#VALUE!`. */
export class Refusal {
  readonly argument: string;
  readonly problem: string;
  readonly accepted: string;

  /**
   * @param argument the argument's name, exactly as the catalogue spells it
   * @param problem what is wrong, e.g. `0.6 is not below dm_out 0.58`
   * @param accepted what to enter instead, e.g. `enter a dry matter below that of the dried fibre`
   */
  constructor(argument: string, problem: string, accepted: string) {
    this.argument = argument;
    this.problem = problem;
    this.accepted = accepted;
  }

  get message(): string {
    return `${this.argument}: ${this.problem}; ${this.accepted}`;
  }
}

/** The question is sound but has no answer (never pays back, no root, nothing carried off). Shown as `#N/A`. */
export class NoAnswer {
  readonly message: string;

  constructor(message: string) {
    this.message = message;
  }
}

/** A number, text or yes/no that a cell can hold, or the reason why there is none. */
export type Answer = number | string | boolean | NoAnswer | Refusal;
