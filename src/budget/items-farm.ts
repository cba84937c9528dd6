import { beds } from '../domain/hygiene-factors.ts';
import { densityOf, dryMatterOf, type FibreKind, fibreKinds, type Material, materials } from '../domain/materials.ts';
import { inGroup, range } from './item.ts';

const herd = inGroup('Herd and beds');
const bought = inGroup('Bedding bought now');
const slurry = inGroup('Slurry and press');

/** What the farm has and does now, up to the press. */
export const farmItems = {
  cows: herd.number('Cows', 'cows', range(1, 20_000), 'cows whose slurry reaches the press'),
  cubicles: herd.number('Cubicles', 'cubicles', range(1, 20_000), 'cubicles that are bedded'),
  housed_days: herd.number('Housed days', 'days/year', range(1, 366), 'days a year the cows are housed', {
    default: 'housed_days',
    asked: true,
    usual: [150, 365],
  }),
  litres: herd.number(
    'Bedding litres per cubicle each time',
    'litres',
    range(0.5, 500),
    'buckets or dispenser shots a cubicle gets each time it is bedded',
    { needed: true, usual: [2, 60] },
  ),
  interval_days: herd.number(
    'Days between beddings',
    'days',
    range(0.25, 14),
    'how often fresh bedding is put in: 1 is daily, ½ twice a day',
    { needed: true, usual: [0.5, 3] },
  ),
  fibre_loss: herd.number('Fibre lost', 'fraction', range(0, 0.5), 'share of the fibre lost in store, loading and dosing', {
    default: 'fibre_lost',
  }),
  bed: herd.choice('Bed', beds, 'deep bed or mattress under the bedding', { default: 'bed' }),
  fibre_kind: herd.choice('Fibre kind', fibreKinds, 'what the fibre is when it is spread', {
    empty: 'dried fibre; fresh fibre without a dryer',
    standIn: {
      of: ['target_dm', 'cake_dm'],
      by: (target: number, pressed: number): FibreKind => (target > pressed ? 'dried fibre' : 'fresh fibre'),
      formula: (target, pressed) => `IF(${target}=${pressed},"fresh fibre","dried fibre")`,
    },
  }),

  material_now: bought.choice('Material now', materials, 'what lies in the cubicles today', {
    default: 'material_now',
  }),
  bought_density_kg_m3: bought.number('Bought density', 'kg/m³', range(20, 2000), 'weigh a full bucket of the bought bedding', {
    empty: 'by material',
    standIn: {
      of: ['material_now'],
      by: (material: Material): number => densityOf(material),
      formula: (material) => `BEDDING.MATERIAL.DENSITY(${material})`,
    },
  }),
  bought_dm: bought.number('Bought dry matter', 'fraction', range(0.05, 1), 'dry a weighed sample of the bought bedding', {
    empty: 'by material',
    standIn: {
      of: ['material_now'],
      by: (material: Material): number => dryMatterOf(material),
      formula: (material) => `BEDDING.MATERIAL.DRYMATTER(${material})`,
    },
  }),
  bought_price_per_t: bought.number('Bought price per t', 'per t', range(0, 10_000), 'the last invoice, for a tonne'),
  price_date: bought.date('Price date', 'date of that invoice', { empty: 'the age of the price is then not checked' }),
  budget_date: bought.date('Budget date', 'date of this budget', { empty: 'the age of the price is then not checked' }),
  load_t: bought.number('Load t', 't', range(0.1, 50), 'tonnes that come in one load', { default: 'load_t' }),
  haulage_per_load: bought.number(
    'Haulage per load',
    'money',
    range(0, 1e6),
    'haulage charged for each load, where it is not in the price',
    { default: 'haulage_per_load' },
  ),
  bought_loss: bought.number('Bought lost', 'fraction', range(0, 0.5), 'share of the bought bedding lost before it lies in a cubicle', {
    default: 'bought_lost',
  }),
  litres_now: bought.number('Litres now', 'litres', range(0.5, 500), 'litres of the bought bedding a cubicle gets each time', {
    empty: 'as for the fibre',
    asked: true,
    follows: 'litres',
    instead: 'bought_t_last_year',
  }),
  interval_days_now: bought.number('Days now', 'days', range(0.25, 14), 'days between beddings now', {
    empty: 'as for the fibre',
    follows: 'interval_days',
  }),
  bought_t_last_year: bought.number('Bought t last year', 't', { above: 0, max: 1e6 }, 'tonnes on last year’s invoices, all of them', {
    empty: 'how much is bedded now then comes from the litres',
  }),
  bought_bill_last_year: bought.number(
    'Bought bill last year',
    'money',
    { above: 0, max: 1e9 },
    'what those invoices came to, haulage with it, without VAT',
    { empty: 'the price is then not checked against the invoices' },
  ),
  labour_h_week_now: bought.number('Labour hours a week now', 'h/week', range(0, 168), 'hours a week spent on bedding now', {
    default: 'labour_hours_now',
    asked: true,
  }),

  litres_cow_day: slurry.number('Slurry litres per cow', 'litres/day', range(10, 150), 'slurry a cow makes in a day, undiluted', {
    default: 'slurry_litres',
    usual: [42, 75],
  }),
  water_litres_cow_day: slurry.number('Water litres per cow', 'litres/day', range(0, 200), 'wash water that joins the slurry, per cow', {
    default: 'water_litres_cow_day',
    usual: [0, 40],
  }),
  slurry_dm: slurry.number(
    'Slurry dry matter',
    'fraction',
    range(0.005, 0.15),
    'dry matter of the slurry as it reaches the press: send a sample',
    { needed: true, usual: [0.05, 0.1] },
  ),
  cake_dm: slurry.number(
    'Pressed dry matter',
    'fraction',
    range(0.15, 0.45),
    'dry matter of the fibre off the press: dry a weighed sample',
    { default: 'pressed_dm', usual: [0.3, 0.38] },
  ),
  capture: slurry.number(
    'Share of dry matter caught',
    'fraction',
    range(0.05, 0.7),
    'from samples of slurry, fibre and liquid: FIBRE.CAPTURE',
    { default: 'capture', usual: [0.2, 0.4] },
  ),
  press_t_h: slurry.number('Press t per hour running', 't/h', range(0.1, 200), 'slurry through the press in an hour of running'),
  minutes_on: slurry.number('Minutes on', 'minutes', { above: 0, max: 1440 }, 'minutes the press runs before it pauses', {
    default: 'minutes_on',
  }),
  minutes_off: slurry.number('Minutes off', 'minutes', range(0, 1440), 'minutes it then pauses', { default: 'minutes_off' }),
  press_hours_day: slurry.number(
    'Press hours a day',
    'h/day',
    range(0, 24),
    'hours on the clock that the press is switched on in a day, pauses with it',
    { default: 'press_day_hours' },
  ),
  press_kw: slurry.number('Press motor kW', 'kW', range(0, 200), 'the press motor’s plate', { default: 'press_motor' }),
};
