import type { Changes, Given } from './given.ts';
import type { Inputs } from './items.ts';
import { Kit } from './kit.ts';
import { Money } from './money.ts';
import { Needs } from './needs.ts';
import { Udder } from './udder.ts';

/**
 * The whole job for one herd: what the beds need, what the kit can make, what it costs, what it does to the udders.
 * Every sum is worked out when it is first asked for, from the inputs and the sums it rests on, and throws a Refusal or a
 * NoAnswer where it has no answer: take one through `answerOf`, or a figure of the answer's table through `figureOf`.
 */
export class Plan {
  readonly given: Given;
  readonly inputs: Inputs;
  readonly needs: Needs;
  readonly kit: Kit;
  readonly money: Money;
  readonly udder: Udder;

  constructor(given: Given) {
    this.given = given;
    this.inputs = given.inputs;
    this.needs = new Needs(given);
    this.kit = new Kit(given, this.needs);
    this.money = new Money(given, this.needs, this.kit);
    this.udder = new Udder(given, this.money);
  }
}

/**
 * The plan of what was given, or of the same herd with some items at other values: cheap enough to ask for thousands.
 * A function that varies items reads the herd once and then asks for one plan after the other:
 *
 *     const given = readInputs(pairs, place);
 *     const npv = figureByKey('NPV');
 *     for (const price of prices) answerOf(() => npv.value(planOf(given, new Map([['bought_price_per_t', price]]))));
 *
 * Each value must lie within its item's own range; what two items rule out together is refused by the
 * plan: `refusalsOf` lists it. What follows a varied item is held at what it was taken to be: see `Given.changed`.
 */
export const planOf = (given: Given, changes?: Changes): Plan => new Plan(changes ? given.changed(changes) : given);
