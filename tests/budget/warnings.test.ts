import { describe, expect, it } from 'vitest';
import { warningsOf } from '../../src/budget/warnings.ts';
import { NoAnswer } from '../../src/domain/refusal.ts';
import { type Figures, planOf } from './plan-of.ts';

const vet = 'A planning aid, no diagnosis: talk to your vet. Its weights are judgement.';
const heatPerKg =
  'The heat for each kilogram of water is less than drying can do with (2.6 MJ) or more than dryers are said to take (9.2 MJ): check temperatures, humidity and air flow.';
const cowDryMatter = 'Dry matter per cow a day is usually 4 to 9 kg: check litres, wash water and the slurry sample.';
const bandEdge = `The fibre’s hygiene score lies within 3 points of the next band: read it as either. ${vet}`;
const never = new NoAnswer('not within the life');

/** What is just beyond the trigger, what the row then shows, and its sentence. A plan of `planOf` stands on the trigger’s quiet side. */
const beyond: readonly (readonly [key: string, change: Partial<Figures>, shows: number | string, unit: string, says: string])[] = [
  [
    'Cover',
    { cover: 0.999 },
    0.999,
    'times',
    'The slurry cannot make what the beds need; bought bedding makes up the rest. See Levers for what would close the gap.',
  ],
  [
    'Coldest cover',
    { coldest_cover: 0.999 },
    0.999,
    'times',
    'In the coldest month the dryer cannot make what the beds need: plan bought bedding for that month or turn the fan down; fibre this moist is not for storing.',
  ],
  [
    'Thin margin',
    { cover: 1.09, slurry_could: 2.19, press_could: 2.2, dryer_could: 2.18 },
    1.09,
    'times',
    'Less than a tenth to spare: slurry, dryer. One stop and the beds go short.',
  ],
  [
    'Thin margin',
    { cover: 0.8, slurry_could: 1.6, dryer_could: 2.1 },
    0.8,
    'times',
    'Short: slurry (0.8 of the need). Less than a tenth to spare: dryer. One stop and the beds go short.',
  ],
  [
    'Press hours',
    { press_hours_needed: 16.1 },
    16.1,
    'h/day',
    'The press needs more hours a day than it has: longer hours, shorter pauses or a larger press.',
  ],
  [
    'Dryer hours',
    { dryer_hours_needed: 20.1 },
    20.1,
    'h/day',
    'The dryer needs more hours a day than it has: more hours, more air or hotter air.',
  ],
  [
    'Heat sets the limit',
    { set_by: 'heat' },
    61,
    '°C',
    'The heat available does not bring the air to the temperature the hot water would: more heat, or less air, and ask the heating engineer.',
  ],
  [
    'Heat sets the limit',
    { coldest_set_by: 'heat' },
    55,
    '°C',
    'In the coldest month the heat available does not bring the air to the temperature the hot water would: more heat, or less air, and ask the heating engineer.',
  ],
  [
    'Stated output',
    { stated_ratio: 1.25 },
    1.25,
    'times',
    'Measure it: the stated output is just above what this air can carry; heat from the fibre itself may explain it.',
  ],
  [
    'Stated output',
    { stated_ratio: 1.26 },
    1.26,
    'times',
    'Not with this air, if density, air and water are right: weigh a bucket of the fibre first. Ask the supplier for air, temperature and dry matters in and out, and measure.',
  ],
  [
    'Stated output',
    { stated_ratio: 1.5, stated_at_best: 1.26 },
    1.5,
    'times',
    'Not with this air, even with fresh fibre at 300 kg/m³ and all the heat that the water could give. Ask the supplier for air, temperature and dry matters in and out, and measure.',
  ],
  [
    'Stated drum',
    { stated_drum_m3: 14.1 },
    14.1,
    'm³',
    'The drum is too small to hold the stated output for the stated time: one of the three figures is wrong. Ask the supplier, and measure.',
  ],
  ['Heat per kg', { heat_mj_kg: 9.3 }, 9.3, 'MJ/kg', heatPerKg],
  ['Heat per kg', { heat_mj_kg: 2.5 }, 2.5, 'MJ/kg', heatPerKg],
  [
    'Frost',
    { coldest_c: 4.9 },
    4.9,
    '°C',
    'A month whose mean is below 5 °C has frosty nights. Protect the water coil first: a burst coil stops the plant; then pipes, pump and press. Ask the heating engineer.',
  ],
  [
    'Dust',
    { target_dm: 0.67 },
    0.67,
    'fraction',
    'Fibre above about 60 % dry matter is dusty (common practice, no source): extract or damp it down, and mind lungs and fire.',
  ],
  [
    'Wet press',
    { cake_dm: 0.339 },
    0.339,
    'fraction',
    'Pressed fibre below 34 % dry matter is wetter than the usual least for bedding: check the press and a sample.',
  ],
  ['Cow dry matter', { cow_dm_kg_day: 9.1 }, 9.1, 'kg', cowDryMatter],
  ['Cow dry matter', { cow_dm_kg_day: 3.9 }, 3.9, 'kg', cowDryMatter],
  [
    'Payback',
    { payback_years: never },
    10,
    'years',
    'The savings do not return the cost of the kit within its life: see Levers for what would.',
  ],
  [
    'Discounted payback',
    { discounted_payback_years: never },
    10,
    'years',
    'At the discount rate the savings do not return the cost of the kit within its life: see Levers, and ask your accountant which rate is right.',
  ],
  [
    'NPV',
    { npv: -1 },
    -1,
    'money',
    'At the discount rate the kit is worth less than it costs: see Levers for the price, cost or output at which it just pays.',
  ],
  [
    'Loan cover',
    { loan_cover: 1.24 },
    1.24,
    'times',
    'Below 1.25 times most lenders ask for more: talk to your accountant and the lender.',
  ],
  [
    'Loan term',
    { loan_years: 10.5 },
    10.5,
    'years',
    'The loan outlives the kit: ask the lender for a shorter one, or you go on paying for what no longer serves.',
  ],
  [
    'Old price',
    { budget_date: 45_366 },
    366,
    'days',
    'The bedding price is more than a year old: ask for a new quotation, or bring it up to date with COST.UPDATE.',
  ],
  [
    'After capital',
    { saving_after_capital: 0 },
    0,
    'per year',
    'Once the kit’s own cost is counted nothing is left of the saving: see Levers for what would leave some.',
  ],
  [
    'Mastitis margin',
    { cases_to_npv_0: 5.9 },
    5.9,
    'per 100 cows/year',
    'A rise of 5.9 would eat it all: records of 46 months, and as many from before, would be needed to show it. Agree with your vet how it will be watched. Cases that do not show cost as much again.',
  ],
  [
    'Mastitis margin',
    { cases_to_npv_0: never },
    0,
    'per 100 cows/year',
    'There is nothing to spare for more mastitis: no records would show it. Agree with your vet how it will be watched. Cases that do not show cost as much again.',
  ],
  [
    'Mastitis margin',
    { cases_to_npv_0: 1 },
    1,
    'per 100 cows/year',
    'A rise of 1 would eat it all: no records would show it. Agree with your vet how it will be watched. Cases that do not show cost as much again.',
  ],
  [
    'Mastitis margin',
    { cases_to_npv_0: 2, cows: 60 },
    2,
    'per 100 cows/year',
    'A rise of 2 would eat it all: records of more than 20 years would be needed to show it. Agree with your vet how it will be watched. Cases that do not show cost as much again.',
  ],
  [
    'Score',
    { fibre_score: 54, present_score: 54 },
    54,
    '0–100',
    `The fibre’s hygiene score is raised: drier, fresher or cleaner beds lower it. ${vet}`,
  ],
  ['Band edge', { fibre_score: 47, present_score: 44 }, 47, '0–100', bandEdge],
  ['Band edge', { fibre_score: 28 }, 28, '0–100', bandEdge],
  [
    'Worse than now',
    { present_score: 41 },
    5.5,
    '0–100',
    `The fibre scores more than 5 points above the present bedding: bed drier or more often, and agree with your vet what to watch. ${vet}`,
  ],
  [
    'Interval',
    { interval_days: 1.5 },
    1.5,
    'days',
    'Bacteria in dried fibre grow to full numbers within one to two days, and some rules ask for use on the day it is made: bed daily, or agree the interval with your vet.',
  ],
  [
    'No dryer',
    { has_dryer: false },
    0.6,
    'fraction',
    'There is no dryer in this plan; BUDGET.SWEEP over Dried to dry matter shows what drying would change in score and cost.',
  ],
  [
    'Stocking',
    { stocking: 1.01 },
    1.01,
    'cows per cubicle',
    'There are more cows than cubicles: cows lie less and beds get dirtier. Count both again; fewer cows or more cubicles mend it.',
  ],
  [
    'Permission',
    { permission: 'no' },
    'no',
    '',
    'Whether this fibre may be used as bedding is not confirmed: ask the authority and your milk buyer before you spend; see Conditions and cautions.',
  ],
  [
    'Digested or composted',
    { fibre_kind: 'composted fibre' },
    'composted fibre',
    '',
    'Compost and digestate from approved plants are barred as bedding in some countries and doubtful in others, and their bacteria differ: ask the authority and your vet first.',
  ],
  [
    'Invoice',
    { invoice_against_plan: 1.31 },
    1.31,
    'times',
    'Last year’s invoices do not fit what the plan takes for the bedding now: check tonnes, litres, days between beddings and the density. How much is bedded now decides what is saved.',
  ],
  [
    'Invoice',
    { invoice_against_plan: never, haulage_per_load: 0, invoice_price: 96 },
    0.6,
    'times',
    'Last year’s bill for a tonne does not fit the price with haulage (the bill without VAT): check price, haulage and loads.',
  ],
  [
    'Amount now assumed',
    { amount_now_from: 'fibre' },
    1.6,
    'kg',
    'How much is bedded now is assumed: as many litres as of the fibre. It decides what is saved: count buckets, or take the tonnes of last year’s invoices.',
  ],
  [
    'Labour now assumed',
    { labour_h_week_now: undefined },
    6,
    'h/week',
    'The work of bedding now is taken as none, against these hours with the kit: time it, or the saving is told too low.',
  ],
  [
    'Sand in slurry',
    { material_now: 'sand' },
    'sand',
    '',
    'Sand or limestone in today’s slurry wears press and pump, and weighs in the sample’s dry matter: take a new sample once it has left the slurry, and ask the supplier of the press.',
  ],
  [
    'Bedding in slurry',
    { bedding_in_slurry: 0.101 },
    0.101,
    'times',
    'Much of the dry matter in today’s slurry may be the present bedding. A sample taken now will not hold once the fibre takes its place: the press makes less until fibre comes back with the slurry.',
  ],
  [
    'Load volume',
    { load_t: 18.2 },
    91,
    'm³',
    'No lorry holds such a load of this bedding: check Load t and the density, or haulage is told too low.',
  ],
  [
    'Borrowed',
    { capital: 99_999 },
    100_000,
    'money',
    'More is borrowed than the kit costs once the grant is off: ask the lender, and check the grant.',
  ],
];

const keysOf = (change: Partial<Figures>) => warningsOf(planOf(change)).map(({ key }) => key.slice('Warning: '.length));

describe('a warning', () => {
  it('stays quiet where every figure stands just at its trigger', () => {
    expect(keysOf({})).toEqual([]);
    expect(keysOf({ cow_dm_kg_day: 4 })).toEqual([]);
    expect(keysOf({ heat_mj_kg: 2.6 })).toEqual([]);
  });

  it.each(beyond)('%s fires just beyond it, with its figure and the whole of what to do', (key, change, value, unit, meaning) => {
    expect(warningsOf(planOf(change))).toContainEqual({ key: `Warning: ${key}`, value, unit, meaning });
  });

  it('fires alone, except where one follows from another', () => {
    const together = beyond.map(([, change]) => keysOf(change)).filter((keys) => keys.length > 1);
    expect(together).toEqual([
      ['Cover', 'Thin margin'],
      ['Cover', 'Thin margin'],
    ]);
  });

  it('says that very dry fibre may burn, beside the dust, from beyond 67 %', () => {
    expect(warningsOf(planOf({ target_dm: 0.671 })).map(({ meaning }) => meaning)).toEqual([
      'Fibre above about 60 % dry matter is dusty (common practice, no source): extract or damp it down, and mind lungs and fire.',
      'Drying this far costs heat for little gain, and dry fibre and its dust burn: ask about fire safety before you plan on it.',
    ]);
  });

  it('judges a score at the very edge of a band as both raised and near the edge', () => {
    expect(keysOf({ fibre_score: 50, present_score: 50 })).toEqual(['Score', 'Band edge']);
    expect(keysOf({ fibre_score: 71.9, present_score: 70 })).toEqual(['Score']);
    expect(keysOf({ fibre_score: 72, present_score: 70 })).toEqual(['Score', 'Band edge']);
  });

  it('says nothing of a loan’s term where nothing is borrowed', () => {
    expect(keysOf({ borrowed: 0, loan_years: 12 })).toEqual([]);
  });

  it('says nothing of the price’s age or the mastitis margin where their items were not given', () => {
    expect(keysOf({ price_date: new NoAnswer('Price date is missing'), budget_date: 90_000 })).toEqual([]);
    expect(keysOf({ cases_per_100_now: new NoAnswer('Cases per 100 now is missing'), cases_to_npv_0: never })).toEqual([]);
  });
});
