/**
 * Sums of a plan that are worked out when first asked for, from the inputs and the sums they rest on, and kept: each is
 * written as a plain getter of a class, and `keepAnswers` makes every getter of it remember what it gave. A refusal or the
 * want of an answer is remembered as well, and thrown again: so a missing item silences only what rests on it.
 *
 * Nothing is made for a sum before it is asked for, neither closure nor entry of a map: a range of 2,000 plans is quick.
 */
export abstract class OnDemand {
  /** By the getter's number: its answer, or what it threw. */
  readonly kept: unknown[];

  constructor(sums: number) {
    this.kept = new Array(sums).fill(undefined);
  }
}

class Thrown {
  readonly reason: unknown;

  constructor(reason: unknown) {
    this.reason = reason;
  }
}

/** Makes every getter of the class keep its answer; gives how many there are. */
export function keepAnswers(type: { readonly prototype: OnDemand }): number {
  const sums = Object.getOwnPropertyNames(type.prototype).flatMap((name) => {
    const { get } = Object.getOwnPropertyDescriptor(type.prototype, name) ?? {};
    return get ? [[name, get] as const] : [];
  });
  for (const [place, [name, work]] of sums.entries()) {
    const get = function (this: OnDemand): unknown {
      const kept = this.kept[place];
      if (kept === undefined) return workOut(this, place, work);
      if (kept instanceof Thrown) throw kept.reason;
      return kept;
    };
    Object.defineProperty(type.prototype, name, { get });
  }
  return sums.length;
}

function workOut(plan: OnDemand, place: number, work: () => unknown): unknown {
  try {
    const answer = work.call(plan);
    plan.kept[place] = answer;
    return answer;
  } catch (thrown) {
    plan.kept[place] = new Thrown(thrown);
    throw thrown;
  }
}
