import type { BeddingNeeds } from './budget-bedding.ts';
import { type FibreKind, type Get, once } from './budget-inputs.ts';
import type { MoneyPlan } from './budget-money.ts';
import { hygieneScore, scoreSpan } from './hygiene.ts';
import { breakEvenCases } from './udder-health.ts';
import { lyingRange } from './welfare.ts';

/** What the bedding may do to the udders, as a planning score, and how many cases would eat the saving. Equations: hygiene.ts, udder-health.ts. */
export function udderPlan(get: Get, needs: BeddingNeeds, money: MoneyPlan) {
  const fibre_kind = once((): FibreKind => get.maybe('fibre_kind') ?? (needs.has_dryer() ? 'dried fibre' : 'fresh fibre'));
  const stocking = once(() => get('cows') / get('cubicles'));
  const fibreFactors = () =>
    [get('target_dm'), get('interval_days'), fibre_kind(), get.maybe('shed_c'), get.maybe('dirty_udders'), get('bed'), stocking()] as const;
  const presentFactors = () =>
    [
      needs.bought_dm(),
      needs.interval_days_now(),
      get('material_now'),
      get.maybe('shed_c'),
      get.maybe('dirty_udders'),
      get('bed'),
      stocking(),
    ] as const;
  return {
    fibre_kind,
    stocking,
    fibre_score: once(() => hygieneScore(...fibreFactors()).score),
    present_score: once(() => hygieneScore(...presentFactors()).score),
    fibre_span: once(() => scoreSpan(...fibreFactors())),
    present_span: once(() => scoreSpan(...presentFactors())),
    fibre_lying: once(() => lyingRange(get('target_dm'))),
    present_lying: once(() => lyingRange(needs.bought_dm())),
    break_even_cases: once(() => breakEvenCases(money.saving(), get('cows'), get('cost_per_case')).cases_per_100),
    break_even_cases_after_capital: once(
      () => breakEvenCases(money.saving_after_capital(), get('cows'), get('cost_per_case')).cases_per_100,
    ),
  };
}
