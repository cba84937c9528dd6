import { bandEdges, bandOf, SCORE_CAUTION } from '../domain/hygiene.ts';
import { recordMonths } from '../domain/record-months.ts';
import { spell } from '../domain/spell.ts';
import { answerOf, ifNone } from './given.ts';
import type { Plan } from './plan.ts';
import { above, below, orMore, outside, warning } from './warning.ts';

/** A rise in cases by less than this share of those now is hard to tell from chance. */
const MARGIN = 0.2;
/** The smallest rise that records are asked to show. */
const LEAST_RISE = 0.05;
/** How far last year's invoices may be off the plan. */
const INVOICE = outside(0.77, 1.3);
/** What the largest lorries with walking floors hold, m³. */
const LARGEST_LOAD_M3 = 90;

/** Cases that would bring NPV to 0; none where it is there already. */
const casesToSpare = (plan: Plan): number => {
  const { cases_per_100_now } = plan.inputs;
  return cases_per_100_now >= 0 ? ifNone(() => plan.udder.cases_to_npv_0, 0) : 0;
};

/** How long records would have to be kept to show the rise that leaves nothing. */
function recordsFor(plan: Plan): string {
  const { cases_per_100_now, cows } = plan.inputs;
  const rise = casesToSpare(plan) / cases_per_100_now;
  if (!(rise >= LEAST_RISE)) return 'no records would show it.';
  const months = ifNone(() => recordMonths(cases_per_100_now, cows, rise, 0.8, 0.95).months, Number.POSITIVE_INFINITY);
  if (months === Number.POSITIVE_INFINITY) return 'records of more than 20 years would be needed to show it.';
  return `records of ${months} months, and as many from before, would be needed to show it.`;
}

/** How far an invoice is off, where it is far enough to say; nothing where it is not known. */
function offPlan(ratio: () => number, plan: Plan): number | false {
  const found = answerOf(ratio);
  return typeof found === 'number' && INVOICE.isPassed(found, plan) && found;
}

const invoicePrice = ({ money, inputs }: Plan): number =>
  money.invoice_price / (inputs.bought_price_per_t + inputs.haulage_per_load / inputs.load_t);

/** Of the beds, the udders and the permission. */
export const bedsWarnings = [
  warning('Mastitis margin', 'per 100 cows/year', {
    of: 'cases to NPV 0',
    value: casesToSpare,
    when: below(['a fifth of the cases now, or none', (plan) => MARGIN * plan.inputs.cases_per_100_now || Number.MIN_VALUE]),
    meaning: (plan) => {
      const spare = casesToSpare(plan);
      const rise =
        spare === 0 ? 'There is nothing to spare for more mastitis' : `A rise of ${spell(Number(spare.toFixed(1)))} would eat it all`;
      return `${rise}: ${recordsFor(plan)} Agree with your vet how it will be watched. Cases that do not show cost as much again.`;
    },
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
    trigger: 'Dryer no, or dried to the pressed dry matter',
    fires: (plan) => !plan.needs.has_dryer && plan.inputs.target_dm,
    meaning: ({ given }) => {
      const unused = given.get('dryer') === 'no' && given.has('target_dm') ? ', so Dried to dry matter is not used as typed' : '';
      return `There is no dryer in this plan${unused}; BUDGET.SWEEP over Dried to dry matter shows what drying would change in score and cost.`;
    },
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
  warning('Invoice', 'times', {
    trigger: `last year’s tonnes or price ${INVOICE.words} times the plan’s`,
    fires: (plan) => offPlan(() => plan.money.invoice_against_plan, plan) || offPlan(() => invoicePrice(plan), plan),
    meaning: (plan) =>
      offPlan(() => plan.money.invoice_against_plan, plan)
        ? 'Last year’s invoices do not fit what the plan takes for the bedding now: check tonnes, litres, days between beddings and the density. How much is bedded now decides what is saved.'
        : 'Last year’s bill for a tonne does not fit the price with haulage (the bill without VAT): check price, haulage and loads.',
  }),
  warning('Amount now assumed', 'kg', {
    trigger: 'neither Litres now nor Bought t last year given',
    fires: (plan) => plan.needs.amount_now_from === 'fibre' && plan.needs.bought_kg_cubicle_day,
    meaning:
      'How much is bedded now is assumed: as many litres as of the fibre. It decides what is saved: count buckets, or take the tonnes of last year’s invoices.',
  }),
  warning('Labour now assumed', 'h/week', {
    trigger: 'Labour hours a week now not given, while there are some with the kit',
    fires: ({ given, inputs }) => !given.has('labour_h_week_now') && inputs.labour_h_week_kit > 0 && inputs.labour_h_week_kit,
    meaning: 'The work of bedding now is taken as none, against these hours with the kit: time it, or the saving is told too low.',
  }),
  warning('Sand in slurry', '', {
    trigger: 'sand or limestone now',
    fires: ({ inputs }) => ['sand', 'limestone'].includes(inputs.material_now) && inputs.material_now,
    meaning:
      'Sand or limestone in today’s slurry wears press and pump, and weighs in the sample’s dry matter: take a new sample once it has left the slurry, and ask the supplier of the press.',
  }),
  warning('Bedding in slurry', 'times', {
    of: 'present bedding in the slurry',
    value: (plan) => plan.kit.bedding_in_slurry,
    when: above(0.1),
    meaning:
      'Much of the dry matter in today’s slurry may be the present bedding. A sample taken now will not hold once the fibre takes its place: the press makes less until fibre comes back with the slurry.',
  }),
  warning('Load volume', 'm³', {
    trigger: 'above 90, where haulage is paid',
    fires: ({ inputs }) => {
      if (inputs.haulage_per_load === 0) return false;
      const load_m3 = (inputs.load_t * 1000) / inputs.bought_density_kg_m3;
      return load_m3 > LARGEST_LOAD_M3 && load_m3;
    },
    meaning: 'No lorry holds such a load of this bedding: check Load t and the density, or haulage is told too low.',
  }),
  warning('Borrowed', 'money', {
    trigger: 'above the cost of the kit net of the grant',
    fires: (plan) => plan.inputs.borrowed > plan.money.capital && plan.inputs.borrowed,
    meaning: 'More is borrowed than the kit costs once the grant is off: ask the lender, and check the grant.',
  }),
] as const;
