import { defaultOf } from '../core/bibliography.ts';
import { define, defineSpill, type Line } from '../core/define.ts';
import { maybe, number, optional } from '../core/parameters.ts';
import { airNeeded, claim, driedOutput, drumNeeded, evaporation, exhaustState, retention, shellLoss, stockDays } from '../domain/drying.ts';
import { ashrae, flowWorking, heatWorking, measuredWorking, outdoorWorking } from './air-working.ts';
import { air, airState, ambient, ambientHumidity, bulkDensity, dmIn, dmOut, supply } from './shared.ts';

/** How well the dryer uses its air. */
const dryerState = [
  optional(number('exhaust_rh', 'fraction', 'relative humidity of the air leaving the drum', { min: 0.05 }), defaultOf('exhaust_rh')),
  optional(
    number('heat_loss', 'fraction', 'share of the heat lost through drum and ducts, or taken out by the fibre itself (about 0.03 of it)', {
      below: 1,
    }),
    defaultOf('heat_loss'),
  ),
  maybe(number('feed_c', '°C', 'temperature of the fibre going in', { min: 0, max: 95 }), 'the larger of ambient_c and 0'),
] as const;

const exhaustWorking = {
  fibre_c: {
    says: 'Temperature of the fibre going in',
    unit: '°C',
    told: 'feed_c; where not given, the larger of ambient_c and 0',
    closed: 'feed_c == undefined ? max(ambient_c, 0) : feed_c',
  },
  warm_c: { says: 'Air temperature that is left after the losses', unit: '°C', how: 'supply_c - heat_loss * (supply_c - ambient_c)' },
  exhaust_c: {
    says: 'Exhaust temperature, where heat given up equals heat for the water taken up',
    unit: '°C',
    solves:
      'enthalpy(exhaust_c, exhaust_humidity_ratio) == enthalpy(warm_c, humidity_ratio) + (exhaust_humidity_ratio - humidity_ratio) * 4.186 * fibre_c',
    between: ['-100', 'warm_c'],
    only: 'supply_c >= ambient_c && relativeHumidity(warm_c, humidity_ratio, pressure_pa) <= exhaust_rh * (1 - 1e-9)',
    ...ashrae,
  },
  exhaust_humidity_ratio: {
    says: 'Water in the exhaust, per kg of dry air',
    unit: 'kg/kg',
    how: 'humidityRatio(exhaust_c, exhaust_rh, pressure_pa)',
    ...ashrae,
  },
} as const satisfies Record<string, Line>;

const evaporationWorking = {
  ...flowWorking,
  ...heatWorking,
  ...exhaustWorking,
  exhaust_dew_point_c: {
    says: 'Dew point of the exhaust: colder ducts and walls run wet',
    unit: '°C',
    how: 'dewPoint(exhaust_c, exhaust_rh)',
    ...ashrae,
  },
  exhaust_m3_h: {
    says: 'Exhaust flow',
    unit: 'm³/h',
    how: 'air_kg_h * specificVolume(exhaust_c, exhaust_humidity_ratio, pressure_pa)',
    ...ashrae,
  },
  heat_mj_kg: {
    says: 'Heat per kg of water; drums are said to take 4.6 to 9.2',
    unit: 'MJ/kg',
    how: 'heat_kw * 3.6 / evaporation_kg_h',
    source: 'mujumdar',
  },
  evaporation_kg_h: { says: 'Water carried off', unit: 'kg/h', how: 'air_kg_h * (exhaust_humidity_ratio - humidity_ratio)' },
} as const satisfies Record<string, Line>;

/** The stated-output check takes the best there could be, so these lines stand without the dryer's options. */
const saturatedWorking = {
  fibre_c: { says: 'Temperature of the fibre going in', unit: '°C', how: 'max(ambient_c, 0)' },
  warm_c: { says: 'Air temperature with no heat lost', unit: '°C', how: 'supply_c' },
  exhaust_c: {
    ...exhaustWorking.exhaust_c,
    only: 'supply_c >= ambient_c && relativeHumidity(warm_c, humidity_ratio, pressure_pa) <= 1 - 1e-9',
  },
  exhaust_humidity_ratio: {
    says: 'Water in the exhaust if it left saturated, per kg of dry air',
    unit: 'kg/kg',
    how: 'humidityRatio(exhaust_c, 1, pressure_pa)',
    ...ashrae,
  },
} as const satisfies Record<string, Line>;

const waterWorking = (dried: string) =>
  ({ water_kg_h: { says: 'Water to evaporate', unit: 'kg/h', how: `${dried} * (dm_out / dm_in - 1)`, source: 'mass-balance' } }) as const;

const evaporationSources = ['ashrae-2017', 'steam-tables', 'awiszus-2018', 'mujumdar', 'practical-action-drying', 'unchecked'] as const;

/** By hand from the printed table: see the example of DRYING.EVAPORATION. */
const saturatedAt25 =
  'ASHRAE tables: 1,000 kg/h of air saturated at 5 °C (W 0.005425), warmed to 61.64 °C, leaves saturated at 25 °C (W 0.020173, h 76.504 kJ/kg) over fibre at 5 °C: 14.748 kg/h of water by hand; perfect gas 0.5 % off';

const drum = number('drum_m3', 'm³', 'inner volume of the drum: 0.785 × diameter² × length, in metres', { above: 0, max: 10_000 });
const fill = number('fill', 'fraction', 'share of the drum that fibre fills, looked at with the drum stopped', { min: 0.01 });

/** What the air carries off, and what follows from it: part of the family DRYING. */
export const dryer = [
  define({
    name: 'DRYING.EVAPORATION',
    summary: 'Water that warm air carries off in a dryer: what its heat can evaporate and its dampness lets it hold.',
    finds: 'how much water, dryer capacity, drum, belt, warm air, drying power',
    parameters: [...air, ...airState, ...dryerState],
    compute: evaporation,
    result: 'evaporation_kg_h',
    working: evaporationWorking,
    sources: evaporationSources,
    examples: [{ call: [794.84, 5, 1, 61.64, 0, 'ambient', 1, 0], gives: 14.748, within: 0.075, source: saturatedAt25 }],
  }),

  defineSpill({
    name: 'DRYING.EXHAUST',
    summary: 'State of the air leaving the dryer, to hold against a thermometer and a hygrometer in the chimney.',
    finds: 'chimney, outlet, damp air, condensation, dew point, steam, exhaust temperature',
    parameters: [...air, ...airState, ...dryerState],
    compute: exhaustState,
    columns: ['key', 'value', 'unit'],
    working: evaporationWorking,
    inRows: {
      temperature: { says: 'Temperature of the exhaust', unit: '°C', how: 'exhaust_c' },
      'relative humidity': { says: 'Relative humidity of the exhaust', unit: 'fraction', how: 'exhaust_rh' },
      'humidity ratio': { says: 'Water in the exhaust, per kg of dry air', unit: 'kg/kg', how: 'exhaust_humidity_ratio' },
      'dew point': { says: 'Dew point of the exhaust', unit: '°C', how: 'exhaust_dew_point_c' },
      flow: { says: 'Exhaust flow', unit: 'm³/h', how: 'exhaust_m3_h' },
      evaporation: { says: 'Water carried off', unit: 'kg/h', how: 'evaporation_kg_h' },
      heat: { says: 'Heat into the air', unit: 'kW', how: 'heat_kw' },
      'heat per kg of water': { says: 'Heat per kg of water', unit: 'MJ/kg', how: 'heat_mj_kg' },
    },
    sources: evaporationSources,
    examples: [
      {
        call: [794.84, 5, 1, 61.64, 0, 'ambient', 1, 0],
        at: ['temperature', 'value'],
        gives: 25,
        within: 0.2,
        source: `${saturatedAt25}, which is 0.1 K of saturation`,
      },
    ],
  }),

  define({
    name: 'DRYING.OUTPUT',
    summary: 'Dried fibre an hour that the air has the means to make.',
    finds: 'how much bedding, throughput, capacity, dryer output, kg per hour',
    parameters: [dmIn, dmOut, ...air, ...airState, ...dryerState],
    compute: driedOutput,
    result: 'dried_kg_h',
    working: {
      ...evaporationWorking,
      dried_kg_h: { says: 'Dried fibre', unit: 'kg/h', how: 'evaporation_kg_h / (dm_out / dm_in - 1)', source: 'mass-balance' },
    },
    sources: [...evaporationSources, 'mass-balance'],
    examples: [
      {
        call: [0.4, 0.6, 794.84, 5, 1, 61.64, 0, 'ambient', 1, 0],
        gives: 29.496,
        within: 0.15,
        source: `${saturatedAt25}; from 0.4 to 0.6 takes half a kg of water per kg dried`,
      },
    ],
  }),

  define({
    name: 'DRYING.AIRNEEDED',
    summary: 'Air that a wanted output of dried fibre takes, and the heat to warm it.',
    finds: 'fan size, how much air, ventilation, airflow, size the dryer',
    parameters: [
      number('dried_kg_h', 'kg/h', 'dried fibre wanted', { above: 0 }),
      dmIn,
      dmOut,
      ambient,
      ambientHumidity,
      supply,
      ...airState,
      ...dryerState,
    ],
    compute: airNeeded,
    result: 'air_m3_h',
    working: {
      ...waterWorking('dried_kg_h'),
      ...outdoorWorking,
      ...exhaustWorking,
      air_kg_h: { says: 'Dry air needed', unit: 'kg/h', how: 'water_kg_h / (exhaust_humidity_ratio - humidity_ratio)' },
      ...heatWorking,
      ...measuredWorking,
      air_m3_h: { says: 'Air needed', unit: 'm³/h', how: 'air_kg_h * specificVolume(measured_c, humidity_ratio, pressure_pa)', ...ashrae },
    },
    sources: [...evaporationSources, 'mass-balance'],
    examples: [
      {
        call: [29.496, 0.4, 0.6, 5, 1, 61.64, 0, 'ambient', 1, 0],
        gives: 794.84,
        within: 4,
        source: `${saturatedAt25}, turned round`,
      },
    ],
  }),

  define({
    name: 'DRYING.CLAIM',
    summary: 'A stated output against the most this air can carry: up to 1 possible, to 1.25 measure it, above that not with this air.',
    finds: 'supplier, brochure, too good to be true, check, promise, quoted output',
    parameters: [number('claimed_kg_h', 'kg/h', 'stated output of dried fibre', { above: 0 }), dmIn, dmOut, ...air, ...airState],
    compute: claim,
    result: 'ratio',
    working: {
      ...waterWorking('claimed_kg_h'),
      ...flowWorking,
      ...exhaustWorking,
      ...saturatedWorking,
      most_kg_h: {
        says: 'The most water this air can carry off',
        unit: 'kg/h',
        how: 'air_kg_h * (exhaust_humidity_ratio - humidity_ratio)',
      },
      verdict: {
        says: 'What that means',
        unit: 'text',
        told: 'up to 1 possible; from 1 to 1.25 measure it, since self-heating of the fibre may explain it; above 1.25 not with this air',
      },
      ratio: { says: 'Stated output against the air', unit: 'times', how: 'water_kg_h / most_kg_h' },
    },
    sources: ['ashrae-2017', 'mass-balance', 'project'],
    examples: [
      {
        call: [29.496, 0.4, 0.6, 794.84, 5, 1, 61.64, 0, 'ambient'],
        gives: 1,
        within: 0.005,
        source: `${saturatedAt25}, which is just what 29.496 kg/h from 0.4 to 0.6 need`,
      },
    ],
  }),

  define({
    name: 'DRYING.RETENTION',
    summary: 'Hours that the fibre stays in the drum.',
    finds: 'time in drum, residence, hold-up, how long',
    parameters: [
      drum,
      fill,
      bulkDensity('density_kg_m3', 'bulk density of the dried fibre'),
      number('kg_h', 'kg/h', 'dried fibre leaving', { above: 0 }),
    ],
    compute: retention,
    result: 'hours',
    working: {
      held_kg: { says: 'Fibre in the drum', unit: 'kg', how: 'drum_m3 * fill * density_kg_m3' },
      hours: { says: 'Hours in the drum', unit: 'hours', how: 'held_kg / kg_h' },
    },
    sources: ['mass-balance'],
    examples: [{ call: [10, 0.25, 200, 100], gives: 5, within: 1e-9, source: 'by hand: 500 kg in the drum leave at 100 kg/h' }],
  }),

  define({
    name: 'DRYING.DRUMNEEDED',
    summary: 'Drum that a stated output and time in the drum need: a second check of a supplier.',
    finds: 'drum size, supplier, check, residence, volume',
    parameters: [
      number('m3_h', 'm³/h', 'stated output of dried fibre', { above: 0 }),
      number('hours', 'hours', 'stated time in the drum', { above: 0 }),
      fill,
    ],
    compute: drumNeeded,
    result: 'drum_m3',
    working: {
      held_m3: { says: 'Fibre in the drum', unit: 'm³', how: 'm3_h * hours' },
      drum_m3: { says: 'Drum needed', unit: 'm³', how: 'held_m3 / fill' },
    },
    sources: ['mass-balance'],
    examples: [{ call: [2, 6, 0.3], gives: 40, within: 1e-9, source: 'by hand: 12 m³ of fibre fill 0.3 of 40 m³' }],
  }),

  define({
    name: 'DRYING.SHELLLOSS',
    summary: 'Heat that a drum loses through its skin. A bare drum often loses more than the default heat loss allows for.',
    finds: 'insulation, lagging, bare drum, heat loss, radiation, cladding, U-value',
    parameters: [
      number('diameter_m', 'm', 'diameter of the drum', { above: 0, max: 10 }),
      number('length_m', 'm', 'length of the drum', { above: 0, max: 50 }),
      number('inside_c', '°C', 'air in the drum: the mean of supply and exhaust', { min: -40, max: 200 }),
      ambient,
      optional(
        number('u_w_m2k', 'W/m²·K', 'heat that passes a square metre of skin for each degree: bare steel about 6, lagged about 1', {
          above: 0,
          max: 50,
        }),
        defaultOf('shell_u'),
      ),
    ],
    compute: shellLoss,
    result: 'loss_kw',
    working: {
      area_m2: { says: 'Skin: mantle and both ends', unit: 'm²', how: 'PI * diameter_m * length_m + PI * diameter_m ** 2 / 2' },
      loss_kw: { says: 'Heat lost', unit: 'kW', how: 'u_w_m2k * area_m2 * (inside_c - ambient_c) / 1000', source: 'wall-heat-transfer' },
    },
    notes: ['Divide by DRYING.HEAT: that share is the shell’s part of heat_loss. Wind and rain on a drum outdoors take more.'],
    sources: ['wall-heat-transfer', 'unchecked'],
    examples: [
      {
        call: [2, 9, 50, 10, 5],
        gives: 4 * Math.PI,
        within: 1e-9,
        source: 'by hand: 18π m² of mantle and 2π m² of ends, 5 W/m²·K, 40 K: 4π kW',
      },
    ],
  }),

  define({
    name: 'DRYING.STOCKDAYS',
    summary: 'Days that a store of bought bedding lasts. Home-made fibre as damp as this is for use, not for keeping.',
    finds: 'store, bunker, heap, reserve, how long, breakdown',
    parameters: [
      number('m3', 'm³', 'what the store holds'),
      bulkDensity('density_kg_m3', 'bulk density of what is in it'),
      number('t_day', 't/day', 'bedding used a day', { above: 0 }),
    ],
    compute: stockDays,
    result: 'days',
    working: {
      stock_t: { says: 'Bedding in store', unit: 't', how: 'm3 * density_kg_m3 / 1000' },
      days: { says: 'Days it lasts', unit: 'days', how: 'stock_t / t_day' },
    },
    sources: ['mass-balance'],
    examples: [{ call: [20, 200, 0.8], gives: 5, within: 1e-9, source: 'by hand: 4 t at 0.8 t a day' }],
  }),
];
