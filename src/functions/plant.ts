import { defaultOf } from '../core/bibliography.ts';
import { define, defineSpill, type Line } from '../core/define.ts';
import { number, optional } from '../core/parameters.ts';
import { stageCapacity } from '../domain/capacity.ts';
import { chimneySpeed, drumTurn, electricityUsed, fanFlow, fanFrequency, fanPower, heatSurplus } from '../domain/plant.ts';
import { carryover, LARGEST_PARTICLE_MM, SMALLEST_PARTICLE_MM, settlingSpeed } from '../domain/settling.ts';
import { dryMatter } from './shared.ts';

const hertz = <const Name extends string>(name: Name, says: string) => number(name, 'Hz', says, { min: 1, max: 200 });
const ratedHz = hertz('rated_hz', 'frequency at which that was measured');
const newHz = hertz('hz', 'frequency set on the drive');
const ratedFlow = number('rated_m3_h', 'm³/h', 'air at the rated frequency', { above: 0, max: 1e6 });
const particle = number('particle_kg_m3', 'kg/m³', 'density of the particle itself, not of a heap', { above: 0 });
const gas = number('gas_c', '°C', 'temperature of the air', { min: -50 });

/** The air that a particle falls or rises in. */
const gasWorking = {
  gas_kg_m3: { says: 'Density of dry air at 101,325 Pa', unit: 'kg/m³', how: '101325 / (287.042 * (gas_c + 273.15))' },
  viscosity_pa_s: {
    says: 'Viscosity of air',
    unit: 'Pa·s',
    how: '1.716e-5 * ((gas_c + 273.15) / 273.15) ** 1.5 * 383.55 / (gas_c + 273.15 + 110.4)',
    source: 'sutherland-1893',
  },
} as const satisfies Record<string, Line>;

export const plant = [
  define({
    name: 'PLANT.FANFLOW',
    summary: 'Air that a fan moves at another frequency.',
    finds: 'fan speed, inverter, variable speed drive, Hz, airflow',
    parameters: [ratedFlow, ratedHz, newHz],
    compute: fanFlow,
    result: 'm3_h',
    working: {
      speed_ratio: { says: 'Speed against the rated one', unit: 'times', how: 'hz / rated_hz' },
      m3_h: { says: 'Air moved', unit: 'm³/h', how: 'rated_m3_h * speed_ratio' },
    },
    sources: ['fan-laws'],
    examples: [
      {
        call: [10_000, 120, 150],
        gives: 12_500,
        within: 1e-6,
        source: 'fan-law worked example: 10,000 at 1,200 turns a minute gives 12,500 at 1,500; the ratio alone counts',
      },
    ],
  }),

  define({
    name: 'PLANT.FANHZ',
    summary: 'Frequency that gives a wanted flow of air; ask the maker whether fan and motor may run so fast.',
    finds: 'fan setting, inverter, variable speed drive, turn the fan up',
    parameters: [ratedFlow, ratedHz, number('m3_h', 'm³/h', 'air wanted', { above: 0, max: 1e6 })],
    compute: fanFrequency,
    result: 'hz',
    working: { hz: { says: 'Setting', unit: 'Hz', how: 'rated_hz * m3_h / rated_m3_h' } },
    sources: ['fan-laws'],
    examples: [{ call: [4000, 50, 4400], gives: 55, within: 1e-9, source: 'by hand: 50 → 55 Hz gives 1.10 of the flow' }],
  }),

  define({
    name: 'PLANT.FANPOWER',
    summary: 'Shaft power of a fan at another frequency: with the cube of its speed.',
    finds: 'fan kW, save power, slow the fan, inverter',
    parameters: [number('rated_kw', 'kW', 'shaft power at the rated frequency', { above: 0, max: 10_000 }), ratedHz, newHz],
    compute: fanPower,
    result: 'kw',
    working: {
      speed_ratio: { says: 'Speed against the rated one', unit: 'times', how: 'hz / rated_hz' },
      kw: { says: 'Shaft power', unit: 'kW', how: 'rated_kw * speed_ratio ** 3' },
    },
    sources: ['fan-laws'],
    examples: [
      {
        call: [5, 120, 150],
        gives: 9.77,
        within: 0.005,
        source: 'fan-law worked example: 5 hp at 1,200 turns a minute takes 9.77 at 1,500',
      },
      { call: [1, 50, 55], gives: 1.331, within: 1e-9, source: 'by hand: 1.1 × 1.1 × 1.1' },
    ],
  }),

  define({
    name: 'PLANT.TURN',
    summary: 'Minutes a drum takes to turn once at another frequency.',
    finds: 'rotation, drum speed, rpm, revolve',
    parameters: [
      number('minutes', 'minutes', 'minutes for one turn, as timed', { above: 0, max: 1440 }),
      hertz('known_hz', 'frequency at which that was timed'),
      newHz,
    ],
    compute: drumTurn,
    result: 'minutes_turn',
    working: { minutes_turn: { says: 'One turn', unit: 'minutes', how: 'minutes * known_hz / hz' } },
    sources: ['practice'],
    examples: [{ call: [4, 25, 50], gives: 2, within: 1e-9, source: 'by hand: twice as fast' }],
  }),

  define({
    name: 'PLANT.ELECTRICITY',
    summary: 'Electricity that a motor takes from the meter.',
    finds: 'power use, kWh, running cost, motor, units',
    parameters: [
      number('motor_kw', 'kW', 'the motor’s rated output, or a shaft power with load_factor 1', { max: 10_000 }),
      number('hours', 'hours', 'hours run'),
      optional(number('load_factor', 'fraction', 'share of its rating that it delivers', { min: 0.05 }), defaultOf('motor_load_factor')),
      optional(number('efficiency', 'fraction', 'shaft power over electric power', { min: 0.1 }), defaultOf('motor_efficiency')),
    ],
    compute: electricityUsed,
    result: 'kwh',
    working: {
      electric_kw: { says: 'Drawn from the meter', unit: 'kW', how: 'motor_kw * load_factor / efficiency' },
      kwh: { says: 'Electricity', unit: 'kWh', how: 'electric_kw * hours' },
    },
    sources: ['motor-guide'],
    examples: [{ call: [8.5, 10], gives: 70, within: 1e-9, source: 'by hand: 8.5 × 0.70 ÷ 0.85 = 7 kW for 10 hours' }],
  }),

  define({
    name: 'PLANT.HEATSURPLUS',
    summary: 'Heat that an engine leaves over once its own users are served.',
    finds: 'CHP, biogas, digester, waste heat, spare heat',
    parameters: [
      number('electric_kw', 'kW', 'electricity it makes', { above: 0 }),
      number('electric_efficiency', 'fraction', 'electricity over fuel', { min: 0.05 }),
      number('heat_efficiency', 'fraction', 'usable heat over fuel', { min: 0.05 }),
      optional(number('own_use_kw', 'kW', 'heat that digester, house or dairy take'), defaultOf('own_use_kw')),
    ],
    compute: heatSurplus,
    result: 'surplus_kw',
    working: {
      fuel_kw: { says: 'Fuel', unit: 'kW', how: 'electric_kw / electric_efficiency' },
      heat_kw: { says: 'Heat it gives', unit: 'kW', how: 'fuel_kw * heat_efficiency' },
      surplus_kw: { says: 'Left over', unit: 'kW', how: 'heat_kw - own_use_kw' },
    },
    sources: ['engine-page'],
    examples: [{ call: [100, 0.4, 0.45, 30], gives: 82.5, within: 1e-9, source: 'by hand: 250 kW of fuel, 112.5 of heat, less 30' }],
  }),

  define({
    name: 'PLANT.SETTLING',
    summary: 'Speed at which a round particle falls through still air; fibres fall slower.',
    finds: 'dust, fall, terminal velocity, blown out, float',
    parameters: [
      number('diameter_mm', 'mm', 'diameter', { min: SMALLEST_PARTICLE_MM, max: LARGEST_PARTICLE_MM }),
      particle,
      optional(gas, defaultOf('settling_gas_c')),
    ],
    compute: settlingSpeed,
    result: 'settling_m_s',
    working: {
      ...gasWorking,
      settling_m_s: {
        says: 'Speed at which drag carries the weight',
        unit: 'm/s',
        solves:
          '3 * sphereDrag(gas_kg_m3 * settling_m_s * diameter_mm / 1000 / viscosity_pa_s) * gas_kg_m3 * settling_m_s ** 2 == 4 * 9.80665 * (particle_kg_m3 - gas_kg_m3) * diameter_mm / 1000',
        between: ['1e-9', 'sqrt(4 * 9.80665 * (particle_kg_m3 - gas_kg_m3) * diameter_mm / 1000 / (3 * 0.44 * gas_kg_m3))'],
        source: 'schiller-naumann-1933',
      },
      reynolds: { says: 'Reynolds number', unit: '', how: 'gas_kg_m3 * settling_m_s * diameter_mm / 1000 / viscosity_pa_s' },
    },
    sources: ['schiller-naumann-1933', 'sutherland-1893', 'gunn-kinzer-1949', 'cengel-10-2'],
    examples: [
      {
        call: [0.5, 998.2, 20],
        gives: 2.06,
        within: 0.1,
        source: 'Gunn and Kinzer 1949, table 2, quoted: a drop of 0.5 mm at 20 °C; drag by formula agrees within 5 %',
      },
      { call: [1, 998.2, 20], gives: 4.03, within: 0.2, source: 'same: a drop of 1 mm' },
    ],
  }),

  define({
    name: 'PLANT.CHIMNEYSPEED',
    summary: 'Speed of the air up a round chimney or duct.',
    finds: 'stack, exhaust, duct, outlet, velocity',
    parameters: [
      number('m3_h', 'm³/h', 'air as hot as it is there', { max: 1e6 }),
      number('diameter_m', 'm', 'inner diameter', { min: 0.01, max: 20 }),
    ],
    compute: chimneySpeed,
    result: 'speed_m_s',
    working: {
      area_m2: { says: 'Opening', unit: 'm²', how: 'PI * diameter_m ** 2 / 4' },
      speed_m_s: { says: 'Speed', unit: 'm/s', how: 'm3_h / 3600 / area_m2' },
    },
    sources: ['arithmetic'],
    examples: [{ call: [2827.43, 0.5], gives: 4, within: 1e-4, source: 'by hand: 0.7854 m³/s through 0.19635 m²' }],
  }),

  define({
    name: 'PLANT.CARRYOVER',
    summary: 'Largest round particle that rising air blows out; coarser ones fall into the bin.',
    finds: 'dust, chimney, blown out, loss of fines, cyclone, fire',
    parameters: [
      number('speed_m_s', 'm/s', 'speed of the air upwards', { above: 0, max: 60 }),
      particle,
      optional(gas, defaultOf('chimney_gas_c')),
    ],
    compute: carryover,
    result: 'diameter_mm',
    working: {
      ...gasWorking,
      diameter_mm: {
        says: 'Size whose weight the drag just carries',
        unit: 'mm',
        solves:
          '3 * sphereDrag(gas_kg_m3 * speed_m_s * diameter_mm / 1000 / viscosity_pa_s) * gas_kg_m3 * speed_m_s ** 2 == 4 * 9.80665 * (particle_kg_m3 - gas_kg_m3) * diameter_mm / 1000',
        between: ['0.001', '100'],
        source: 'schiller-naumann-1933',
      },
    },
    sources: ['schiller-naumann-1933', 'sutherland-1893', 'gunn-kinzer-1949'],
    examples: [
      {
        call: [4.03, 998.2, 20],
        gives: 1,
        within: 0.06,
        source: 'Gunn and Kinzer 1949, table 2, quoted: a drop of 1 mm falls at 4.03 m/s; 5 % in speed is 6 % in size',
      },
    ],
  }),

  defineSpill({
    name: 'PLANT.CAPACITY',
    summary: 'What slurry, press and dryer could each make of the bedding the herd uses, and which holds the others back.',
    finds: 'bottleneck, what limits, enough, cover, stages, capacity',
    parameters: [
      number('demand_t_day', 't/day', 'dried fibre the beds use', { above: 0 }),
      number('cake_t_day', 't/day', 'pressed fibre that the slurry holds'),
      number('press_cake_t_h', 't/h', 'pressed fibre while the press runs'),
      number('press_running_hours', 'h/day', 'hours the press runs, rests left out'),
      dryMatter('dm_in', 'dry matter of the pressed fibre'),
      dryMatter('dm_out', 'dry matter of the dried fibre'),
      number('evaporation_kg_h', 'kg/h', 'water the dryer carries off'),
      number('dryer_hours', 'h/day', 'hours the dryer runs'),
    ],
    compute: stageCapacity,
    columns: ['stage', 'dried t per day', 'cover', 'binds'],
    working: {
      dried_share: { says: 'Dried fibre from a tonne of pressed', unit: 'fraction', how: 'dm_in / dm_out' },
      slurry_t_day: { says: 'Slurry could make', unit: 't/day', how: 'cake_t_day * dried_share' },
      press_t_day: { says: 'Press could make', unit: 't/day', how: 'press_cake_t_h * press_running_hours * dried_share' },
      dryer_t_day: { says: 'Dryer could make', unit: 't/day', how: 'evaporation_kg_h / (dm_out / dm_in - 1) * dryer_hours / 1000' },
      binds: {
        says: 'Stage that holds the others back',
        unit: 'text',
        told: 'the stage that makes least; of equal ones the first of slurry, press, dryer',
      },
      cover: { says: 'Cover of demand', unit: 'times', how: 'min(slurry_t_day, press_t_day, dryer_t_day) / demand_t_day' },
    },
    sources: ['mass-balance'],
    examples: [
      {
        call: [0.8, 1.8, 0.45, 8, 0.36, 0.6, 44, 20],
        at: ['dryer', 'dried t per day'],
        gives: 1.32,
        within: 1e-9,
        source: 'by hand: 44 ÷ (0.6 ÷ 0.36 − 1) = 66 kg/h for 20 hours',
      },
      {
        call: [0.8, 1.8, 0.45, 8, 0.36, 0.6, 44, 20],
        at: ['slurry', 'cover'],
        gives: 1.35,
        within: 1e-9,
        source: 'by hand: 1.8 × 0.36 ÷ 0.6 = 1.08 t, ÷ 0.8',
      },
    ],
  }),
];
