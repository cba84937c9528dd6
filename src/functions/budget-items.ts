import { type DefaultName, defaultOf } from '../core/bibliography.ts';
import { type Bounds, choice, maybe, number, optional, type Parameter, yesNo } from '../core/parameters.ts';
import type { Unit } from '../core/units.ts';
import type { BudgetInputs } from '../domain/budget-inputs.ts';
import { beds } from '../domain/hygiene-factors.ts';
import { type Material, materials } from '../domain/materials.ts';
import { countries } from '../domain/reference.ts';

export const groups = [
  'Herd and beds',
  'Bedding bought now',
  'Slurry and press',
  'Dryer, air and heat',
  'Kit and money',
  'Udder health',
  'Permission',
] as const;
export type Group = (typeof groups)[number];

/** When a plan cannot do without an item. */
export type Needed = 'always' | 'with a dryer' | 'one of two with a dryer' | 'with a loan';

/** One line of the budget's inputs: the same for BUDGET.INPUTS, the Inputs sheet and the survey. */
export interface BudgetItem {
  readonly name: string;
  readonly key: keyof BudgetInputs;
  readonly parameter: Parameter;
  readonly group: Group;
  readonly needed?: Needed;
  /** What is common on farms, where we hold a figure; a value outside it deserves a second look. */
  readonly usual?: readonly [lowest: number, highest: number];
  /** What to look at on the walk. */
  readonly look: string;
}

interface Extra {
  readonly usual?: readonly [number, number];
  readonly needed?: Needed;
  readonly default?: DefaultName;
  /** What happens where it is left empty and nothing is assumed. */
  readonly empty?: string;
}

function withDefault(parameter: Parameter, extra: Extra): Parameter {
  if (extra.default) return optional(parameter, defaultOf(extra.default));
  return extra.empty === undefined ? parameter : maybe(parameter, extra.empty);
}

function item(group: Group, key: keyof BudgetInputs, parameter: Parameter, look: string, extra: Extra): BudgetItem {
  const { needed, usual } = extra;
  return {
    name: parameter.name,
    key,
    group,
    look,
    parameter: withDefault(parameter, extra),
    ...(needed && { needed }),
    ...(usual && { usual }),
  };
}

/** A group's own builder, so that each line below reads: name, key, unit, bounds, what to look at. */
const inGroup = (group: Group) => ({
  number: (name: string, key: keyof BudgetInputs, unit: Unit, bounds: Bounds, look: string, extra: Extra = { needed: 'always' }) =>
    item(group, key, number(name, unit, look, bounds), look, extra),
  choice: (name: string, key: keyof BudgetInputs, choices: readonly [string, ...string[]], look: string, extra: Extra) =>
    item(group, key, choice(name, look, choices), look, extra),
  yesNo: (name: string, key: keyof BudgetInputs, look: string, extra: Extra) => item(group, key, yesNo(name, look), look, extra),
});

const range = (min: number, max: number): Bounds => ({ min, max });
const dryer = { needed: 'with a dryer' } as const;
const loan = { needed: 'with a loan', empty: 'not needed without a loan' } as const;
const outdoorTemperature = range(-30, 45);
const humidity = range(0.05, 1);

/** No sorption data are held for fibre drier than this, so no plan is made there. */
const fibreTarget: Bounds = {
  ...range(0.15, 0.8),
  slip: { when: (value) => value > 0.8 && value <= 1, hint: 'no data are held on how fibre gives off water above 0.80 dry matter' },
};

const herd = inGroup('Herd and beds');
const bought = inGroup('Bedding bought now');
const slurry = inGroup('Slurry and press');
const drying = inGroup('Dryer, air and heat');
const kit = inGroup('Kit and money');
const udder = inGroup('Udder health');
const rules = inGroup('Permission');

export const fibreKinds = ['fresh fibre', 'dried fibre', 'digested fibre', 'composted fibre'] as const;

/** Every item. Names are permanent: users' sheets hold them. */
export const budgetItems: readonly BudgetItem[] = [
  herd.number('Cows', 'cows', 'cows', range(1, 20_000), 'cows whose slurry reaches the press'),
  herd.number('Cubicles', 'cubicles', 'cubicles', range(1, 20_000), 'cubicles that are bedded'),
  herd.number('Housed days', 'housed_days', 'days/year', range(1, 366), 'days a year the cows are housed', {
    default: 'housed_days',
    usual: [150, 365],
  }),
  herd.number(
    'Bedding litres per cubicle each time',
    'litres',
    'litres',
    range(0.5, 500),
    'buckets or dispenser shots a cubicle gets each time it is bedded',
    { needed: 'always', usual: [2, 60] },
  ),
  herd.number(
    'Days between beddings',
    'interval_days',
    'days',
    range(0.25, 14),
    'how often fresh bedding is put in: 1 is daily, 0.5 twice a day',
    { needed: 'always', usual: [0.5, 3] },
  ),
  herd.number('Fibre lost', 'fibre_loss', 'fraction', range(0, 0.5), 'share of the fibre lost in store, loading and dosing', {
    default: 'fibre_lost',
  }),
  herd.choice('Bed', 'bed', beds, 'deep bed or mattress under the bedding', { default: 'bed' }),
  herd.choice('Fibre kind', 'fibre_kind', fibreKinds, 'what the fibre is when it is spread', {
    empty: 'dried fibre; fresh fibre without a dryer',
  }),

  bought.choice('Material now', 'material_now', materials as readonly [Material, ...Material[]], 'what lies in the cubicles today', {
    default: 'material_now',
  }),
  bought.number('Bought density', 'bought_density_kg_m3', 'kg/m³', range(20, 2000), 'weigh a full bucket of the bought bedding', {
    empty: 'by material',
  }),
  bought.number('Bought dry matter', 'bought_dm', 'fraction', range(0.05, 1), 'dry a weighed sample of the bought bedding', {
    empty: 'by material',
  }),
  bought.number('Bought price per t', 'bought_price_per_t', 'per t', range(0, 10_000), 'the last invoice, for a tonne'),
  bought.number('Price date', 'price_date', 'date', {}, 'date of that invoice', { empty: 'the age of the price is then not checked' }),
  bought.number('Budget date', 'budget_date', 'date', {}, 'date of this budget', { empty: 'the age of the price is then not checked' }),
  bought.number('Load t', 'load_t', 't', range(0.1, 50), 'tonnes that come in one load', { default: 'load_t' }),
  bought.number(
    'Haulage per load',
    'haulage_per_load',
    'money',
    range(0, 1e6),
    'haulage charged for each load, where it is not in the price',
    { default: 'haulage_per_load' },
  ),
  bought.number('Bought lost', 'bought_loss', 'fraction', range(0, 0.5), 'share of the bought bedding lost before it lies in a cubicle', {
    default: 'bought_lost',
  }),
  bought.number('Litres now', 'litres_now', 'litres', range(0.5, 500), 'litres of the bought bedding a cubicle gets each time', {
    empty: 'as for the fibre',
  }),
  bought.number('Days now', 'interval_days_now', 'days', range(0.25, 14), 'days between beddings now', { empty: 'as for the fibre' }),
  bought.number('Labour hours a week now', 'labour_h_week_now', 'h/week', range(0, 168), 'hours a week spent on bedding now', {
    default: 'labour_hours_now',
  }),

  slurry.number('Slurry litres per cow', 'litres_cow_day', 'litres/day', range(10, 150), 'slurry a cow makes in a day, undiluted', {
    default: 'slurry_litres',
    usual: [42, 75],
  }),
  slurry.number('Water litres per cow', 'water_litres_cow_day', 'litres/day', range(0, 200), 'wash water that joins the slurry, per cow', {
    default: 'water_litres_cow_day',
    usual: [0, 40],
  }),
  slurry.number(
    'Slurry dry matter',
    'slurry_dm',
    'fraction',
    range(0.005, 0.15),
    'dry matter of the slurry as it reaches the press: send a sample',
    { needed: 'always', usual: [0.05, 0.1] },
  ),
  slurry.number(
    'Pressed dry matter',
    'cake_dm',
    'fraction',
    range(0.15, 0.45),
    'dry matter of the fibre off the press: dry a weighed sample',
    { default: 'pressed_dm', usual: [0.3, 0.38] },
  ),
  slurry.number(
    'Share of dry matter caught',
    'capture',
    'fraction',
    range(0.05, 0.7),
    'from samples of slurry, fibre and liquid: FIBRE.CAPTURE',
    { default: 'capture', usual: [0.2, 0.4] },
  ),
  slurry.number('Press t per hour running', 'press_t_h', 't/h', range(0.1, 200), 'slurry through the press in an hour of running'),
  slurry.number('Minutes on', 'minutes_on', 'minutes', { above: 0, max: 1440 }, 'minutes the press runs before it pauses', {
    default: 'minutes_on',
  }),
  slurry.number('Minutes off', 'minutes_off', 'minutes', range(0, 1440), 'minutes it then pauses', { default: 'minutes_off' }),
  slurry.number(
    'Press hours a day',
    'press_hours_day',
    'h/day',
    range(0, 24),
    'hours on the clock that the press is switched on in a day, pauses with it',
    { default: 'press_day_hours' },
  ),
  slurry.number('Press motor kW', 'press_kw', 'kW', range(0, 200), 'the press motor’s plate', { default: 'press_motor' }),

  drying.number(
    'Dried to dry matter',
    'target_dm',
    'fraction',
    fibreTarget,
    'dry matter wanted in the cubicle; the pressed dry matter means no dryer',
    { needed: 'always', usual: [0.45, 0.62] },
  ),
  drying.number('Fresh fibre density', 'fresh_density_kg_m3', 'kg/m³', range(100, 700), 'weigh a full bucket of the pressed fibre', {
    default: 'fresh_density',
    usual: [250, 450],
  }),
  drying.number('Shrinkage', 'shrinkage', 'fraction', range(0, 0.3), 'share of its volume the fibre loses in drying', {
    default: 'shrinkage',
    usual: [0, 0.2],
  }),
  drying.number(
    'Air m3 per hour',
    'air_m3_h',
    'm³/h',
    range(50, 500_000),
    'warm air into the drum: measure, or the fan’s plate and its Hz',
    dryer,
  ),
  drying.choice('Air measured at', 'air_at', ['supply', 'ambient'], 'whether that air was measured hot, at the drum, or cold, at the fan', {
    default: 'air_at',
  }),
  drying.number('Outdoor temperature', 'ambient_c', '°C', outdoorTemperature, 'the year’s mean at the farm', {
    default: 'outdoor_temperature',
  }),
  drying.number('Outdoor humidity', 'ambient_rh', 'fraction', humidity, 'the year’s mean relative humidity', {
    default: 'outdoor_humidity',
  }),
  drying.number('Coldest month temperature', 'coldest_c', '°C', outdoorTemperature, 'the coldest month’s mean', {
    default: 'coldest_temperature',
  }),
  drying.number('Coldest month humidity', 'coldest_rh', 'fraction', humidity, 'the coldest month’s relative humidity', {
    default: 'coldest_humidity',
  }),
  drying.number(
    'Altitude',
    'altitude_m',
    'm',
    { ...range(-400, 4000), slip: { when: (value) => value > 0 && value < 1, hint: 'is this a humidity?' } },
    'metres above sea level',
    { default: 'altitude_m' },
  ),
  drying.number('Hot water temperature', 'water_c', '°C', range(20, 130), 'hot water into the air heater', dryer),
  drying.number('Hot water litres per hour', 'water_l_h', 'litres/h', { above: 0, max: 1e6 }, 'the flow meter, or the pump’s plate', {
    needed: 'one of two with a dryer',
    empty: 'then Heat available kW is needed',
  }),
  drying.number('Heat available kW', 'heat_kw', 'kW', { above: 0, max: 1e5 }, 'heat that is really left over: ask the heating engineer', {
    needed: 'one of two with a dryer',
    empty: 'then Hot water litres per hour is needed',
  }),
  drying.number('Heater effectiveness', 'effectiveness', 'fraction', range(0.05, 1), 'from temperatures in and out: DRYING.EFFECTIVENESS', {
    default: 'effectiveness',
  }),
  drying.number('Exhaust humidity', 'exhaust_rh', 'fraction', range(0.2, 1), 'relative humidity of the air leaving the drum', {
    default: 'exhaust_rh',
    usual: [0.6, 0.85],
  }),
  drying.number(
    'Heat loss',
    'heat_loss',
    'fraction',
    range(0, 0.6),
    'share of the heat lost through drum and ducts, and to warm the fibre itself',
    { default: 'heat_loss' },
  ),
  drying.number('Dryer hours a day', 'dryer_hours_day', 'h/day', range(0, 24), 'hours a day the dryer can run', { default: 'dryer_hours' }),
  drying.number('Fan and drum motors kW', 'dryer_kw', 'kW', range(0, 500), 'the plates of fan and drum motors, together', {
    default: 'dryer_motors',
  }),
  drying.number('Drum m3', 'drum_m3', 'm³', range(0.1, 1000), 'the drum’s volume: 0.785 × diameter² × length', {
    empty: 'the retention is then not worked out',
  }),
  drying.number('Drum fill', 'drum_fill', 'fraction', range(0.01, 0.9), 'share of the drum that fibre fills when it is stopped', {
    empty: 'the retention is then not worked out',
  }),
  drying.number('Stated output m3 per hour', 'stated_m3_h', 'm³/h', { above: 0, max: 1000 }, 'the supplier’s figure for dried fibre', {
    empty: 'the stated output is then not checked',
  }),
  drying.number(
    'Stated retention hours',
    'stated_hours',
    'hours',
    { above: 0, max: 1000 },
    'the supplier’s figure for the time in the drum',
    { empty: 'the stated drum is then not checked' },
  ),

  kit.number('Kit cost', 'kit_cost', 'money', { above: 0, max: 1e9 }, 'press, dryer, heater, tank, electrics and fitting, all of it'),
  kit.number('Grant', 'grant', 'money', range(0, 1e9), 'grant towards it', { default: 'grant' }),
  kit.number('Life years', 'life_years', 'years', { ...range(1, 40), whole: true }, 'years it will serve', {
    default: 'life_years',
    usual: [5, 15],
  }),
  kit.number('Discount rate', 'discount_rate', 'fraction', range(0, 0.5), 'what the money could earn or costs elsewhere', {
    default: 'discount_rate',
  }),
  kit.number('Saving growth', 'saving_growth', 'fraction', range(-0.2, 0.2), 'yearly rise of the saving', { default: 'saving_growth' }),
  kit.number('End value', 'end_value', 'money', range(0, 1e9), 'what it will fetch at the end of its life', { default: 'end_value' }),
  kit.number('Power price per kWh', 'power_price', 'per kWh', range(0, 5), 'the last power bill, for a unit'),
  kit.number(
    'Heat price per kWh',
    'heat_price',
    'per kWh',
    range(0, 5),
    'what a unit of heat costs or could earn elsewhere; type 0 if it is free',
    dryer,
  ),
  kit.number('Labour hours a week with kit', 'labour_h_week_kit', 'h/week', range(0, 168), 'hours a week for press, dryer and bedding'),
  kit.number('Labour rate', 'labour_rate', 'per h', range(0, 500), 'what an hour’s work costs'),
  kit.number('Repairs share', 'repairs_share', 'fraction', range(0, 0.3), 'repairs a year as a share of the kit cost', {
    default: 'repairs_share',
    usual: [0.02, 0.05],
  }),
  kit.number('Borrowed', 'borrowed', 'money', range(0, 1e9), 'amount borrowed', { default: 'borrowed' }),
  kit.number('Loan years', 'loan_years', 'years', { ...range(1, 40), whole: true }, 'years of the loan', loan),
  kit.number('Loan rate', 'loan_rate', 'fraction', range(0, 0.5), 'yearly rate of the loan', loan),
  kit.number('Tax rate', 'tax_rate', 'fraction', range(0, 1), 'rate on profits: ask your accountant', { default: 'tax_rate' }),
  kit.number(
    'First-year allowance',
    'first_year_allowance',
    'fraction',
    range(0, 1),
    'share of the cost allowed against tax in year 1: ask your accountant',
    { default: 'first_year_allowance' },
  ),
  kit.number(
    'Yearly allowance',
    'yearly_allowance',
    'fraction',
    range(0, 1),
    'share of what remains allowed each year: ask your accountant',
    { default: 'yearly_allowance' },
  ),

  udder.number(
    'Cost per mastitis case',
    'cost_per_case',
    'per case',
    { above: 0, max: 1e5 },
    'milk thrown away, medicine, work and lost yield: ask your vet',
    { needed: 'always', usual: [149, 444] },
  ),
  udder.number(
    'Cases per 100 now',
    'cases_per_100_now',
    'per 100 cows/year',
    range(0, 300),
    'clinical cases for each 100 cows in a year, from the records',
    { empty: 'the mastitis margin is then not checked', usual: [21, 71] },
  ),
  udder.number('Shed temperature', 'shed_c', '°C', range(-20, 45), 'air in the shed where the cows lie', {
    empty: 'the score’s span then covers every temperature',
  }),
  udder.number('Dirty udders', 'dirty_udders', 'fraction', range(0, 1), 'share of cows scoring 3 or 4 for dirt on the udder: UDDER.DIRTY', {
    empty: 'the score’s span then covers clean and dirty',
  }),

  rules.choice('Country', 'country', countries, 'whose rules apply', { empty: 'every country’s conditions are then listed' }),
  rules.yesNo('Permission confirmed', 'permission', 'whether authority and milk buyer have agreed to the use in writing', {
    default: 'permission',
  }),
];
