import { bandEdges, bandOf, SCORE_CAUTION } from '../domain/hygiene.ts';
import { above, below, orMore, warning } from './warning.ts';

/** Of the beds, the udders and the permission. */
export const bedsWarnings = [
  warning('Mastitis margin', 'per 100 cows/year', {
    value: (plan) => plan.udder.break_even_cases,
    when: below(['a fifth of the cases now', (plan) => 0.2 * plan.inputs.cases_per_100_now]),
    meaning: 'A rise of less than a fifth in mastitis cases would eat the saving: agree with your vet how it will be watched.',
  }),
  warning('Score', '0–100', {
    value: (plan) => plan.udder.fibre_score,
    when: orMore(50),
    meaning: (plan) =>
      `The fibre’s hygiene score is ${bandOf(plan.udder.fibre_score)}: drier, fresher or cleaner beds lower it. A ${SCORE_CAUTION}.`,
  }),
  warning('Band edge', '0–100', {
    trigger: 'within 3 of 25, 50 or 75',
    fires: (plan) => bandEdges.some((edge) => Math.abs(plan.udder.fibre_score - edge) <= 3) && plan.udder.fibre_score,
    meaning: `The fibre’s hygiene score lies within 3 points of the next band: read it as either. A ${SCORE_CAUTION}.`,
  }),
  warning('Worse than now', '0–100', {
    value: (plan) => plan.udder.fibre_score - plan.udder.present_score,
    when: above(5),
    of: 'points above the present bedding',
    meaning: `The fibre scores more than 5 points above the present bedding: bed drier or more often, and agree with your vet what to watch. A ${SCORE_CAUTION}.`,
  }),
  warning('Interval', 'days', {
    value: (plan) => plan.inputs.interval_days,
    when: above(1),
    meaning: (plan) =>
      `Bacteria in ${plan.inputs.fibre_kind} grow to full numbers within one to two days, and some rules ask for use on the day it is made: bed daily, or agree the interval with your vet.`,
  }),
  warning('No dryer', 'fraction', {
    trigger: 'dried to the pressed dry matter',
    fires: (plan) => !plan.needs.has_dryer && plan.inputs.target_dm,
    meaning: 'There is no dryer in this plan; BUDGET.SWEEP over Dried to dry matter shows what drying would change in score and cost.',
  }),
  warning('Stocking', 'cows per cubicle', {
    value: (plan) => plan.udder.stocking,
    when: above(1),
    meaning:
      'There are more cows than cubicles: cows lie less and beds get dirtier. Count both again; fewer cows or more cubicles mend it.',
  }),
  warning('Permission', '', {
    trigger: 'not confirmed',
    fires: (plan) => plan.inputs.permission === 'no' && 'no',
    meaning:
      'Whether this fibre may be used as bedding is not confirmed: ask the authority and your milk buyer before you spend; see Conditions and cautions.',
  }),
  warning('Digested or composted', '', {
    trigger: 'either kind',
    fires: (plan) => ['digested fibre', 'composted fibre'].includes(plan.inputs.fibre_kind) && plan.inputs.fibre_kind,
    meaning:
      'Compost and digestate from approved plants are barred as bedding in some countries and doubtful in others, and their bacteria differ: ask the authority and your vet first.',
  }),
] as const;
