import { defaultOf } from '../core/bibliography.ts';
import { define, type Line } from '../core/define.ts';
import { number, optional } from '../core/parameters.ts';
import { dryingHeat } from '../domain/drying.ts';
import { heatedTemperature, heaterEffectiveness, hotWaterHeat, supplyTemperature } from '../domain/heater.ts';
import { airCapacityWorking, ashrae, flowWorking, heatWorking } from './air-working.ts';
import { air, airFlowRate, airState, ambient, ambientHumidity } from './shared.ts';

const waterFlow = number('water_l_h', 'litres/h', 'hot water through the heater', { above: 0 });
const waterTemperature = number('water_c', '°C', 'temperature of the hot water to the heater', { min: 0, max: 150 });

const exchangerWorking = {
  ...flowWorking,
  ...airCapacityWorking,
  water_kj_h_k: {
    says: 'Heat to warm the water by one degree',
    unit: 'kJ/h·K',
    how: 'water_l_h / 1000 * waterDensity(water_c) * 4.186',
    source: 'kell-1975',
  },
} as const satisfies Record<string, Line>;

/** Heat for the dryer's air: part of the family DRYING. */
export const heater = [
  define({
    name: 'DRYING.HOTWATER',
    summary: 'Heat that hot water gives off between flow and return.',
    finds: 'boiler, engine heat, biogas, kilowatts, heat meter, surplus heat, radiator',
    parameters: [
      number('water_l_h', 'litres/h', 'water, metered at the flow temperature'),
      number('flow_c', '°C', 'temperature of the water going out', { min: 0, max: 150 }),
      number('return_c', '°C', 'temperature of the water coming back', { min: 0, max: 150 }),
    ],
    compute: hotWaterHeat,
    result: 'heat_kw',
    working: {
      density_kg_m3: { says: 'Density of the water', unit: 'kg/m³', how: 'waterDensity(flow_c)', source: 'kell-1975' },
      water_kg_h: { says: 'Water', unit: 'kg/h', how: 'water_l_h / 1000 * density_kg_m3' },
      heat_kw: { says: 'Heat given off', unit: 'kW', how: 'water_kg_h / 3600 * 4.186 * (flow_c - return_c)', ...ashrae },
    },
    sources: ['kell-1975', 'ashrae-2017', 'exchanger-textbook'],
    examples: [
      {
        call: [3_834.06, 125, 35],
        gives: 377.7,
        within: 1.2,
        source:
          'heat-exchanger textbook: 1 kg/s between 35 and 125 °C with 4.197 kJ/kg·K, 0.3 % above our 4.186; the litres are 3,600 kg over the steam-table density at 125 °C, 939.0 kg/m³ (memory)',
      },
    ],
  }),

  define({
    name: 'DRYING.SUPPLYTEMP',
    summary: 'Temperature of the air off a hot-water heater; with too little water it does not get hot.',
    finds: 'heater, coil, radiator, how hot, hot water, heat exchanger, inlet air',
    parameters: [
      airFlowRate,
      ambient,
      ambientHumidity,
      waterFlow,
      waterTemperature,
      optional(
        number('effectiveness', 'fraction', 'share of the heat that could pass which the heater passes', { min: 0.05 }),
        defaultOf('effectiveness'),
      ),
      ...airState,
    ],
    compute: supplyTemperature,
    result: 'supply_c',
    working: {
      ...exchangerWorking,
      supply_c: {
        says: 'Air temperature after the heater',
        unit: '°C',
        solves: 'supply_c == ambient_c + effectiveness * min(air_kj_h_k, water_kj_h_k) * (water_c - ambient_c) / air_kj_h_k',
        between: ['ambient_c', 'water_c'],
        only: 'water_c > ambient_c',
        source: 'kays-london',
      },
    },
    sources: ['kays-london', 'ashrae-2017', 'kell-1975', 'holman-10-11', 'som-10-7'],
    examples: [
      {
        call: [8496, 15.55, 0.01, 586.2, 82.22, 0.912, 0, 'ambient'],
        gives: 29.44,
        within: 0.1,
        source:
          'Holman, Heat Transfer, example 10.11: 2.36 m³/s of air at 15.55 °C, water 0.158 kg/s at 82.22 °C; our heat capacities are 0.2 % lower for water and 0.1 % higher for air with a trace of damp',
      },
    ],
  }),

  define({
    name: 'DRYING.EFFECTIVENESS',
    summary: 'How well a hot-water heater passes its heat on, from temperatures read on it.',
    finds: 'heater, coil, dirty fins, radiator, check, heat exchanger',
    parameters: [...air, waterFlow, waterTemperature, ...airState],
    compute: heaterEffectiveness,
    result: 'effectiveness',
    working: {
      ...exchangerWorking,
      passed_kj_h: { says: 'Heat that passed', unit: 'kJ/h', how: 'air_kj_h_k * (supply_c - ambient_c)' },
      most_kj_h: {
        says: 'The most that could pass',
        unit: 'kJ/h',
        how: 'min(air_kj_h_k, water_kj_h_k) * (water_c - ambient_c)',
        source: 'kays-london',
      },
      effectiveness: { says: 'Effectiveness', unit: 'fraction', how: 'min(1, passed_kj_h / most_kj_h)', source: 'kays-london' },
    },
    sources: ['kays-london', 'ashrae-2017', 'kell-1975', 'holman-10-11'],
    examples: [
      {
        call: [8496, 15.55, 0.01, 29.44, 586.2, 82.22, 0, 'ambient'],
        gives: 0.912,
        within: 0.005,
        source: 'Holman, Heat Transfer, example 10.11, effectiveness computed from its data; tolerance 0.5 % for the heat capacities',
      },
    ],
  }),

  define({
    name: 'DRYING.HEATEDTEMP',
    summary: 'Temperature that a heat source of known output gives a flow of air.',
    finds: 'burner, boiler, engine heat, surplus heat, kilowatts, how hot',
    parameters: [airFlowRate, ambient, ambientHumidity, number('heat_kw', 'kW', 'heat that reaches the air'), ...airState],
    compute: heatedTemperature,
    result: 'supply_c',
    working: {
      ...flowWorking,
      ...airCapacityWorking,
      supply_c: {
        says: 'Air temperature after the heater',
        unit: '°C',
        solves: 'supply_c == ambient_c + heat_kw * 3600 / air_kj_h_k',
        between: ['ambient_c', '200'],
        ...ashrae,
      },
    },
    sources: ['ashrae-2017', 'holman-10-11'],
    examples: [
      {
        call: [8496, 15.55, 0.01, 40.33, 0, 'ambient'],
        gives: 29.44,
        within: 0.05,
        source: 'Holman, Heat Transfer, example 10.11: 40.33 kW (computed from its data) into 2.36 m³/s; trace of damp in our air',
      },
    ],
  }),

  define({
    name: 'DRYING.HEAT',
    summary: 'Heat that warms outdoor air to the supply temperature.',
    finds: 'kilowatts, boiler size, heat needed, warm the air',
    parameters: [...air, ...airState],
    compute: dryingHeat,
    result: 'heat_kw',
    working: { ...flowWorking, ...heatWorking },
    sources: ['ashrae-2017', 'holman-10-11'],
    examples: [
      {
        call: [8496, 15.55, 0.01, 29.44, 0, 'ambient'],
        gives: 40.33,
        within: 0.1,
        source: 'Holman, Heat Transfer, example 10.11, from its data with 1.006 kJ/kg·K; trace of damp in our air adds 0.02 %',
      },
    ],
  }),
];
