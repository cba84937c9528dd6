import { defaultOf } from '../core/bibliography.ts';
import { define, defineSpill } from '../core/define.ts';
import { maybe, number, optional, table, text } from '../core/parameters.ts';
import { readRows } from '../core/read-table.ts';
import { CellError } from '../core/result.ts';
import {
  type BeddingOption,
  boughtCost,
  costPerTonne,
  distinctKeys,
  heatCost,
  homeCost,
  optionsCost,
  ownershipCost,
  spreadingHours,
  updatedPrice,
} from '../domain/cost.ts';
import {
  bulkDensity,
  capital,
  cubicles,
  dispenser,
  housedDays,
  intervalDays,
  lifeYears,
  litres,
  rate,
  residual,
  yearlyRise,
} from './shared.ts';

const tonnes = (says: string) => number('t_year', 't/year', says);
const pricePerTonne = number('price_per_t', 'per t', 'price of the bedding');
const labourRate = number('labour_rate', 'per h', 'cost of labour');

const option = [
  text('material', 'bedding material'),
  number('kg per cubicle day', 'kg/day', 'bedding laid per cubicle per day, fresh mass', { max: 200 }),
  number('price per t', 'per t', 'price of it'),
  number('labour h per week', 'h/week', 'labour it takes'),
  number('extra per year', 'per year', 'anything else it costs; negative where it earns'),
] as const;

/** The options that can be costed, cheapest first; then those that cannot, each with what is wrong with it in each of its cells. */
function costOptions(table: readonly (readonly unknown[])[], cubicles: number, housed_days: number, labour_rate: number) {
  const read = readRows('options', table, () => option);
  const names = read.map(({ row, cells, values }) => (values instanceof CellError ? nameOf(cells[0], row) : values[0]));
  const keys = distinctKeys(names);
  const options: BeddingOption[] = [];
  const refused: (string | CellError)[][] = [];
  for (const [k, { values }] of read.entries()) {
    const key = keys[k] as string;
    if (values instanceof CellError) refused.push([key, ...optionColumns.slice(1).map(() => values)]);
    else {
      const [, kg_cubicle_day, price_per_t, labour_h_week, extra_year] = values;
      options.push({ material: key, kg_cubicle_day, price_per_t, labour_h_week, extra_year });
    }
  }
  const costed = optionsCost(options, cubicles, housed_days, labour_rate);
  return { ...costed, rows: [...costed.rows, ...(refused as never[])] };
}

const nameOf = (cell: unknown, row: number): string => (typeof cell === 'string' && cell.trim() !== '' ? cell.trim() : `row ${row}`);

const optionColumns = ['option', 't per year', 'bedding', 'labour', 'extra', 'per year', 'per cubicle per year'] as const;

export const cost = [
  define({
    name: 'COST.TONNE',
    summary: 'Price per tonne of bedding that is sold by the cubic metre.',
    finds: 'convert price, by volume, by weight, cubic metre, load',
    parameters: [number('price_per_m3', 'per m³', 'price as sold'), bulkDensity('density_kg_m3', 'bulk density as sold')],
    compute: costPerTonne,
    result: 'price_per_t',
    working: {
      t_per_m3: { says: 'A cubic metre weighs', unit: 't/m³', how: 'density_kg_m3 / 1000' },
      price_per_t: { says: 'Price', unit: 'per t', how: 'price_per_m3 / t_per_m3' },
    },
    sources: ['arithmetic'],
    examples: [{ call: [20, 160], gives: 125, within: 1e-9, source: 'by hand: 20 for 0.16 t' }],
  }),

  define({
    name: 'COST.UPDATE',
    summary: 'An old price brought to a later date.',
    finds: 'inflation, index, out of date price, today, quote',
    parameters: [
      number('price', 'money', 'price at its own date', { min: 0 }),
      number('years', 'years', 'years since that date'),
      yearlyRise('inflation', 'rise of prices a year'),
    ],
    compute: updatedPrice,
    result: 'updated_price',
    working: {
      rise: { says: 'Prices then and now', unit: 'times', how: '(1 + inflation) ** years' },
      updated_price: { says: 'Price now', unit: 'money', how: 'price * rise' },
    },
    sources: ['engineering-economy'],
    examples: [{ call: [100, 2, 0.03], gives: 106.09, within: 1e-9, source: 'by hand: 100 × 1.03 × 1.03' }],
  }),

  define({
    name: 'COST.BOUGHT',
    summary: 'Bought-in bedding delivered, per year; part loads are hauled as whole ones.',
    finds: 'sawdust bill, delivery, haulage, lorry, purchase',
    parameters: [
      tonnes('bedding bought'),
      pricePerTonne,
      maybe(number('load_t', 't', 'what a lorry brings', { above: 0, max: 100 }), 'only needed where haulage is charged'),
      optional(number('haulage_per_load', 'money', 'haulage of each load, whole or part', { min: 0 }), defaultOf('haulage_per_load')),
    ],
    compute: boughtCost,
    result: 'cost_year',
    working: {
      bedding_year: { says: 'Bedding', unit: 'per year', how: 't_year * price_per_t' },
      loads: { says: 'Whole loads, where a load is given', unit: 'loads', how: 'load_t ? wholeLoads(t_year, load_t) : 0' },
      haulage_year: { says: 'Haulage', unit: 'per year', how: 'loads * haulage_per_load' },
      cost_year: { says: 'Bought-in bedding', unit: 'per year', how: 'bedding_year + haulage_year' },
    },
    sources: ['iowa-c1-50'],
    examples: [{ call: [212, 165, 25, 120], gives: 36_060, within: 1e-6, source: 'by hand: 212 × 165 and 9 loads at 120' }],
  }),

  define({
    name: 'COST.OWNERSHIP',
    summary: 'What owning the kit costs a year, depreciation and interest in one; never add it to a cash flow that holds the outlay.',
    finds: 'depreciation, capital charge, annual cost of machinery, interest',
    parameters: [capital, lifeYears, rate, residual],
    compute: ownershipCost,
    result: 'ownership_year',
    working: {
      residual_today: { says: 'End value as worth today', unit: 'money', how: 'residual / (1 + rate) ** life_years' },
      recovery_factor: {
        says: 'Capital recovery factor',
        unit: 'fraction',
        how: 'capitalRecovery(life_years, rate)',
        source: 'engineering-economy',
      },
      ownership_year: { says: 'Cost of owning it', unit: 'per year', how: '(capital - residual_today) * recovery_factor' },
    },
    sources: ['iowa-a3-29', 'engineering-economy', 'recovery-factors'],
    examples: [
      { call: [1, 10, 0.08], gives: 0.14903, within: 5e-6, source: 'published table of capital recovery factors, 10 years at 8 %' },
      {
        call: [100_000, 15, 0.1, 20_000],
        gives: 12_517.6,
        within: 0.5,
        source: 'worked by a table of factors to five places: 100,000 with 20 % left after 15 years at 10 %',
      },
    ],
  }),

  define({
    name: 'COST.HEAT',
    summary: 'Cost of heat from a bought fuel.',
    finds: 'oil, gas, woodchip, boiler, fuel, kWh',
    parameters: [
      number('kwh', 'kWh', 'heat needed'),
      number('price_per_unit', 'per unit', 'price of a litre, kilogram, cubic metre or kWh of fuel'),
      number('kwh_per_unit', 'kWh/unit', 'heat in as much fuel', { above: 0 }),
      optional(
        number('efficiency', 'fraction', 'share of the fuel’s heat that reaches the water', { min: 0.05 }),
        defaultOf('boiler_efficiency'),
      ),
    ],
    compute: heatCost,
    result: 'cost',
    working: {
      units: { says: 'Fuel burnt, litres, kilograms, m³ or kWh', unit: '', how: 'kwh / (kwh_per_unit * efficiency)' },
      cost: { says: 'Cost of the heat', unit: 'money', how: 'units * price_per_unit' },
    },
    sources: ['arithmetic'],
    examples: [
      { call: [9000, 0.8, 10], gives: 800, within: 1e-9, source: 'by hand: 9,000 kWh take 1,000 litres at 10 kWh and 0.9, at 0.80' },
    ],
  }),

  define({
    name: 'COST.SPREADING',
    summary: 'Hours a year spent spreading bedding with a dispenser.',
    finds: 'labour, time, bedding machine, bucket, work',
    parameters: [
      cubicles,
      litres,
      intervalDays,
      dispenser,
      number('minutes_per_load', 'minutes', 'minutes to fill, carry and spread one load', { max: 600 }),
      housedDays,
    ],
    compute: spreadingHours,
    result: 'hours_year',
    working: {
      times_year: { says: 'Times a year the beds are done', unit: '', how: 'housed_days / interval_days' },
      loads: { says: 'Whole loads each time', unit: 'loads', how: 'wholeLoads(cubicles * litres / 1000, dispenser_m3)' },
      hours_year: { says: 'Spreading', unit: 'h/year', how: 'times_year * loads * minutes_per_load / 60' },
    },
    sources: ['arithmetic'],
    examples: [
      {
        call: [420, 18, 2, 2, 15, 300],
        gives: 150,
        within: 1e-9,
        source: 'by hand: 150 times, 4 loads for 7.56 m³, a quarter of an hour each',
      },
    ],
  }),

  define({
    name: 'COST.HOME',
    summary: 'Yearly cost of bedding made on the farm.',
    finds: 'running cost, make your own, separator, dryer, electricity, labour, repairs',
    parameters: [
      tonnes('fibre made'),
      number('kwh_per_t', 'kWh/t', 'electricity for each tonne'),
      number('power_price', 'per kWh', 'price of electricity'),
      number('labour_h_week', 'h/week', 'labour it takes'),
      labourRate,
      number('maintenance_year', 'per year', 'repairs and servicing', { min: 0 }),
      optional(number('heat_kwh_per_t', 'kWh/t', 'heat for each tonne'), defaultOf('not_counted')),
      optional(number('heat_price', 'per kWh', 'price of heat'), defaultOf('not_counted')),
      optional(number('other_per_t', 'per t', 'anything else for each tonne'), defaultOf('not_counted')),
      optional(number('ownership_year', 'per year', 'cost of owning the kit, see COST.OWNERSHIP', { min: 0 }), defaultOf('not_counted')),
      optional(number('weeks', 'weeks', 'weeks a year that the labour is needed'), defaultOf('labour_weeks')),
    ],
    compute: homeCost,
    result: 'cost_year',
    working: {
      power_year: { says: 'Electricity', unit: 'per year', how: 't_year * kwh_per_t * power_price' },
      heat_year: { says: 'Heat', unit: 'per year', how: 't_year * heat_kwh_per_t * heat_price' },
      other_year: { says: 'Anything else by the tonne', unit: 'per year', how: 't_year * other_per_t' },
      labour_year: { says: 'Labour', unit: 'per year', how: 'labour_h_week * labour_rate * weeks' },
      cost_year: {
        says: 'Bedding made at home',
        unit: 'per year',
        how: 'power_year + heat_year + other_year + labour_year + maintenance_year + ownership_year',
      },
    },
    sources: ['iowa-c1-50', 'iowa-a3-29'],
    examples: [
      {
        call: [240, 100, 0.25, 6, 16.5, 3540, 800, 0.045, 1, 17_000, 43],
        gives: 39_677,
        within: 1e-6,
        source: 'by hand: 6,000 power, 8,640 heat, 240 other, 4,257 labour, 3,540 repairs, 17,000 ownership',
      },
    ],
  }),

  defineSpill({
    name: 'COST.OPTIONS',
    summary: 'Beddings side by side, cheapest first: what each costs the herd a year and a cubicle a year.',
    finds: 'compare sand, sawdust, straw, lime, fibre, cheapest bedding, partial budget',
    parameters: [
      table('options', `one row each: ${option.map(({ name }) => name).join(', ')}`),
      cubicles,
      number('housed_days', 'days/year', 'days a year the cubicles are bedded', { min: 1 }),
      labourRate,
    ],
    compute: costOptions,
    columns: optionColumns,
    working: { weeks: { says: 'Weeks the beds are in use', unit: 'weeks', how: 'housed_days / 7' } },
    sources: ['iowa-c1-50'],
    examples: [
      {
        call: [
          [
            ['sawdust', 1.6, 165, 2, 0],
            ['sand', 9.6, 16, 6, 2000],
          ],
          400,
          280,
          16.5,
        ],
        at: ['sand', 'per cubicle per year'],
        gives: 57.908,
        within: 1e-9,
        source: 'by hand: 1,075.2 t at 16, 6 hours in each of 40 weeks at 16.50, and 2,000, over 400 cubicles',
      },
    ],
  }),
];
