import { fibreKinds } from '../domain/budget-inputs.ts';
import { beds } from '../domain/hygiene-factors.ts';
import { materials } from '../domain/materials.ts';
import { type BudgetItem, inGroup, range } from './budget-item.ts';

const herd = inGroup('Herd and beds');
const bought = inGroup('Bedding bought now');
const slurry = inGroup('Slurry and press');

/** What the farm has and does now, up to the press. */
export const farmItems: readonly BudgetItem[] = [
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
    'how often fresh bedding is put in: 1 is daily, ½ twice a day',
    { needed: 'always', usual: [0.5, 3] },
  ),
  herd.number('Fibre lost', 'fibre_loss', 'fraction', range(0, 0.5), 'share of the fibre lost in store, loading and dosing', {
    default: 'fibre_lost',
  }),
  herd.choice('Bed', 'bed', beds, 'deep bed or mattress under the bedding', { default: 'bed' }),
  herd.choice('Fibre kind', 'fibre_kind', fibreKinds, 'what the fibre is when it is spread', {
    empty: 'dried fibre; fresh fibre without a dryer',
  }),

  bought.choice('Material now', 'material_now', materials, 'what lies in the cubicles today', {
    default: 'material_now',
  }),
  bought.number('Bought density', 'bought_density_kg_m3', 'kg/m³', range(20, 2000), 'weigh a full bucket of the bought bedding', {
    empty: 'by material',
  }),
  bought.number('Bought dry matter', 'bought_dm', 'fraction', range(0.05, 1), 'dry a weighed sample of the bought bedding', {
    empty: 'by material',
  }),
  bought.number('Bought price per t', 'bought_price_per_t', 'per t', range(0, 10_000), 'the last invoice, for a tonne'),
  bought.date('Price date', 'price_date', 'date of that invoice', { empty: 'the age of the price is then not checked' }),
  bought.date('Budget date', 'budget_date', 'date of this budget', { empty: 'the age of the price is then not checked' }),
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
];
