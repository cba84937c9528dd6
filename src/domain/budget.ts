import { beddingNeeds } from './budget-bedding.ts';
import type { Get } from './budget-inputs.ts';
import { kitPlan } from './budget-kit.ts';
import { type MotorHabit, moneyPlan } from './budget-money.ts';
import { udderPlan } from './budget-udder.ts';

/**
 * The whole job for one herd: what the beds need, what the kit can make, what it costs, what it does to the udders.
 * Every figure is worked out when it is first asked for, from the inputs and the figures it rests on.
 */
export function budget(get: Get, motor: MotorHabit) {
  const needs = beddingNeeds(get);
  const kit = kitPlan(get, needs);
  const money = moneyPlan(get, needs, kit, motor);
  const udder = udderPlan(get, needs, money);
  return { get, needs, kit, money, udder };
}

export type Budget = ReturnType<typeof budget>;
