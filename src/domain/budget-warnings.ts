import type { Budget } from './budget.ts';
import { ifNone } from './budget-inputs.ts';
import { SELF_HEATING_RATIO } from './drying.ts';
import { bandEdges, bandOf, SCORE_CAUTION } from './hygiene.ts';
import { NoAnswer, Refusal } from './refusal.ts';

/** Something the user should know before relying on the plan. */
export interface Warning {
  readonly key: string;
  /** The figure that fires it, and its unit. */
  readonly value: number | string;
  readonly unit: string;
  /** What it means and what to do. */
  readonly meaning: string;
}

interface Rule {
  readonly key: string;
  readonly unit: string;
  /** When it fires, in words, for who asks. */
  readonly trigger: string;
  /** The figure that fires the warning, or false where all is well. */
  readonly fires: (budget: Budget) => number | string | false;
  readonly meaning: string | ((budget: Budget) => string);
}

/** Fires with the value where the test holds for it. */
const when = (value: number, test: boolean): number | false => test && value;
const below = (value: number, limit: number) => when(value, value < limit);
const above = (value: number, limit: number) => when(value, value > limit);
const outside = (value: number, lowest: number, highest: number) => when(value, value < lowest || value > highest);

/** Fires with the life where there is no answer within it, though nothing is missing. */
const beyondLife = (b: Budget, years: () => number): number | false =>
  ifNone<number | false>(() => {
    years();
    return false;
  }, b.get('life_years'));

const thinStages = (b: Budget) =>
  b.kit
    .limit()
    .stages.filter(({ t_day }) => t_day < 1.1 * b.needs.demand_t_day())
    .map(({ stage }) => stage);

const fibreOf = (b: Budget) => b.udder.fibre_kind();

const rules: readonly Rule[] = [
  {
    key: 'Cover',
    unit: 'times',
    trigger: 'cover of demand below 1',
    fires: (b) => below(b.kit.limit().cover, 1),
    meaning: (b) =>
      `The ${b.kit.limit().stage} cannot make what the beds need; bought bedding makes up the rest. See Levers for what would close the gap.`,
  },
  {
    key: 'Coldest cover',
    unit: 'times',
    trigger: 'cover in the coldest month below 1',
    fires: (b) => below(b.kit.coldest_limit().cover, 1),
    meaning: (b) =>
      `In the coldest month the ${b.kit.coldest_limit().stage} cannot make what the beds need: keep a dry store or some bought bedding for it.`,
  },
  {
    key: 'Thin margin',
    unit: 'times',
    trigger: 'a stage below 1.1 times the demand',
    fires: (b) => below(b.kit.limit().cover, 1.1),
    meaning: (b) => `Less than a tenth to spare: ${thinStages(b).join(', ')}. One stop and the beds go short.`,
  },
  {
    key: 'Press hours',
    unit: 'h/day',
    trigger: 'hours needed above Press hours a day',
    fires: (b) => above(b.kit.press_hours_needed(), b.get('press_hours_day')),
    meaning: 'The press needs more hours a day than it has: longer hours, shorter pauses or a larger press.',
  },
  {
    key: 'Dryer hours',
    unit: 'h/day',
    trigger: 'hours needed above Dryer hours a day',
    fires: (b) => above(b.kit.dryer_hours_needed(), b.get('dryer_hours_day')),
    meaning: 'The dryer needs more hours a day than it has: more hours, more air, hotter air or a lower dry matter.',
  },
  {
    key: 'Heat sets the limit',
    unit: '°C',
    trigger: 'air off the heat available cooler than off the hot water',
    fires: (b) => b.kit.usual.supply().set_by === 'heat' && b.kit.usual.supply_c(),
    meaning:
      'The heat available does not bring the air to the temperature the hot water would: more heat, or less air, and ask the heating engineer.',
  },
  {
    key: 'Stated output',
    unit: 'times',
    trigger: 'more than 1 times what the air can carry; above 1.25 it is not to be had',
    fires: (b) => above(b.kit.stated_ratio(), 1),
    meaning: (b) =>
      b.kit.stated_ratio() > SELF_HEATING_RATIO
        ? 'Not with this air: the stated output needs more water carried off than this air can carry even when saturated. Ask the supplier for air, temperature and dry matters in and out, and measure.'
        : 'Measure it: the stated output is just above what this air can carry; heat from the fibre itself may explain it.',
  },
  {
    key: 'Stated drum',
    unit: 'm³',
    trigger: 'drum needed above Drum m3',
    fires: (b) => above(b.kit.stated_drum_m3(), b.get('drum_m3')),
    meaning:
      'The drum is too small to hold the stated output for the stated time: one of the three figures is wrong. Ask the supplier, and measure.',
  },
  {
    key: 'Heat per kg',
    unit: 'MJ/kg',
    trigger: 'below 2.6 or above 9.2',
    fires: (b) => outside(b.kit.usual.exhaust().heat_mj_kg, 2.6, 9.2),
    meaning:
      'The heat for each kilogram of water is less than drying can do with (2.6 MJ) or more than dryers are said to take (9.2 MJ): check temperatures, humidity and air flow.',
  },
  {
    key: 'Frost',
    unit: '°C',
    trigger: 'outdoor or coldest month below 0',
    fires: (b) => below(Math.min(b.get('ambient_c'), b.get('coldest_c')), 0),
    meaning: 'The air goes below freezing: protect pipes, pump, press and heater, and ask the heating engineer about frost protection.',
  },
  {
    key: 'Dust',
    unit: 'fraction',
    trigger: 'dried above 0.60',
    fires: (b) => above(b.get('target_dm'), 0.6),
    meaning: 'Fibre above about 60 % dry matter is dusty (common practice, no source): extract or damp it down, and mind lungs and fire.',
  },
  {
    key: 'Very dry',
    unit: 'fraction',
    trigger: 'dried above 0.67',
    fires: (b) => above(b.get('target_dm'), 0.67),
    meaning:
      'Drying this far costs heat for little gain, and dry fibre in store can heat itself and burn: ask about fire safety before you plan on it.',
  },
  {
    key: 'Wet press',
    unit: 'fraction',
    trigger: 'pressed below 0.34',
    fires: (b) => below(b.get('cake_dm'), 0.34),
    meaning: 'Pressed fibre below 34 % dry matter is wetter than the usual least for bedding: check the press and a sample.',
  },
  {
    key: 'Cow dry matter',
    unit: 'kg',
    trigger: 'below 4 or above 9 a day',
    fires: (b) => outside(b.kit.cow_dm_kg_day(), 4, 9),
    meaning: 'Dry matter per cow a day is usually 4 to 9 kg: check litres, wash water and the slurry sample.',
  },
  {
    key: 'Payback',
    unit: 'years',
    trigger: 'not within the life, which is shown',
    fires: (b) => beyondLife(b, b.money.payback_years),
    meaning: 'The savings do not return the cost of the kit within its life: see Levers for what would.',
  },
  {
    key: 'Discounted payback',
    unit: 'years',
    trigger: 'not within the life, which is shown',
    fires: (b) => beyondLife(b, b.money.discounted_payback_years),
    meaning:
      'At the discount rate the savings do not return the cost of the kit within its life: see Levers, and ask your accountant which rate is right.',
  },
  {
    key: 'NPV',
    unit: 'money',
    trigger: 'below 0',
    fires: (b) => below(b.money.npv(), 0),
    meaning: 'At the discount rate the kit is worth less than it costs: see Levers for the price, cost or output at which it just pays.',
  },
  {
    key: 'Loan cover',
    unit: 'times',
    trigger: 'below 1.25',
    fires: (b) => below(b.money.loan_cover(), 1.25),
    meaning: 'Below 1.25 times most lenders ask for more: talk to your accountant and the lender.',
  },
  {
    key: 'Loan term',
    unit: 'years',
    trigger: 'longer than the life',
    fires: (b) => when(b.get('loan_years'), b.get('borrowed') > 0 && b.get('loan_years') > b.get('life_years')),
    meaning: 'The loan outlives the kit: ask the lender for a shorter one, or you go on paying for what no longer serves.',
  },
  {
    key: 'Old price',
    unit: 'days',
    trigger: 'more than 365 days before the budget',
    fires: (b) => above(b.get('budget_date') - b.get('price_date'), 365),
    meaning: 'The bedding price is more than a year old: ask for a new quotation, or bring it up to date with COST.UPDATE.',
  },
  {
    key: 'After capital',
    unit: 'per year',
    trigger: '0 or less',
    fires: (b) => when(b.money.saving_after_capital(), b.money.saving_after_capital() <= 0),
    meaning: 'Once the kit’s own cost is counted nothing is left of the saving: see Levers for what would leave some.',
  },
  {
    key: 'Mastitis margin',
    unit: 'per 100 cows/year',
    trigger: 'below a fifth of the cases now',
    fires: (b) => below(b.udder.break_even_cases(), 0.2 * b.get('cases_per_100_now')),
    meaning: 'A rise of less than a fifth in mastitis cases would eat the saving: agree with your vet how it will be watched.',
  },
  {
    key: 'Score',
    unit: '0–100',
    trigger: '50 or more',
    fires: (b) => when(b.udder.fibre_score(), b.udder.fibre_score() >= 50),
    meaning: (b) =>
      `The fibre’s hygiene score is ${bandOf(b.udder.fibre_score())}: drier, fresher or cleaner beds lower it. A ${SCORE_CAUTION}.`,
  },
  {
    key: 'Band edge',
    unit: '0–100',
    trigger: 'within 3 of 25, 50 or 75',
    fires: (b) =>
      when(
        b.udder.fibre_score(),
        bandEdges.some((edge) => Math.abs(b.udder.fibre_score() - edge) <= 3),
      ),
    meaning: `The fibre’s hygiene score lies within 3 points of the next band: read it as either. A ${SCORE_CAUTION}.`,
  },
  {
    key: 'Worse than now',
    unit: '0–100',
    trigger: 'more than 5 above the present bedding',
    fires: (b) => above(b.udder.fibre_score() - b.udder.present_score(), 5),
    meaning: `The fibre scores more than 5 points above the present bedding: bed drier or more often, and agree with your vet what to watch. A ${SCORE_CAUTION}.`,
  },
  {
    key: 'Interval',
    unit: 'days',
    trigger: 'more than 1',
    fires: (b) => above(b.get('interval_days'), 1),
    meaning: (b) =>
      `Bacteria in ${fibreOf(b)} grow to full numbers within one to two days, and some rules ask for use on the day it is made: bed daily, or agree the interval with your vet.`,
  },
  {
    key: 'No dryer',
    unit: 'fraction',
    trigger: 'dried to the pressed dry matter',
    fires: (b) => !b.needs.has_dryer() && b.get('target_dm'),
    meaning: 'There is no dryer in this plan; BUDGET.SWEEP over Dried to dry matter shows what drying would change in score and cost.',
  },
  {
    key: 'Stocking',
    unit: 'cows per cubicle',
    trigger: 'above 1',
    fires: (b) => above(b.udder.stocking(), 1),
    meaning:
      'There are more cows than cubicles: cows lie less and beds get dirtier. Count both again; fewer cows or more cubicles mend it.',
  },
  {
    key: 'Permission',
    unit: '',
    trigger: 'not confirmed',
    fires: (b) => b.get('permission') === 'no' && 'no',
    meaning:
      'Whether this fibre may be used as bedding is not confirmed: ask the authority and your milk buyer before you spend; see Conditions and cautions.',
  },
  {
    key: 'Digested or composted',
    unit: '',
    trigger: 'either kind',
    fires: (b) => ['digested fibre', 'composted fibre'].includes(fibreOf(b)) && fibreOf(b),
    meaning:
      'Compost and digestate from approved plants are barred as bedding in some countries and doubtful in others, and their bacteria differ: ask the authority and your vet first.',
  },
];

const keyOf = ({ key }: Rule): string => `Warning: ${key}`;

/** When the warning of that key fires: `cover of demand below 1`. */
export const triggers: ReadonlyMap<string, string> = new Map(rules.map((rule) => [keyOf(rule), rule.trigger]));

/** The rule's warning, or nothing: what rests on a missing or refused input stays quiet, as its own row says so already. */
function check(rule: Rule, budget: Budget): readonly Warning[] {
  try {
    const value = rule.fires(budget);
    if (value === false) return [];
    return [{ key: keyOf(rule), value, unit: rule.unit, meaning: typeof rule.meaning === 'string' ? rule.meaning : rule.meaning(budget) }];
  } catch (thrown) {
    if (thrown instanceof NoAnswer || thrown instanceof Refusal) return [];
    throw thrown;
  }
}

/** All that fires for this plan, in a fixed order. */
export const warningsOf = (budget: Budget): readonly Warning[] => rules.flatMap((rule) => check(rule, budget));
