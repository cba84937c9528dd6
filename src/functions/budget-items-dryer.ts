import type { Bounds } from '../core/parameters.ts';
import { DRIEST_FIBRE } from '../domain/drying.ts';
import { airPlaces } from '../domain/heater.ts';
import { type BudgetItem, inGroup, range } from './budget-item.ts';
import { humiditySlip } from './shared.ts';

const drying = inGroup('Dryer, air and heat');

const dryer = { needed: 'with a dryer' } as const;
const outdoorTemperature = range(-30, 45);
const humidity = range(0.05, 1);

/** No sorption data is held for fibre drier than this, so no plan is made there. */
const fibreTarget: Bounds = {
  ...range(0.15, DRIEST_FIBRE),
  slip: { when: (value) => value > DRIEST_FIBRE && value <= 1, hint: 'no data is held on how fibre gives off water above 0.80 dry matter' },
};

/** The dryer, its air and its heat. */
export const dryerItems: readonly BudgetItem[] = [
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
  drying.choice('Air measured at', 'air_at', airPlaces, 'whether that air was measured hot, at the drum, or cold, at the fan', {
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
  drying.number('Altitude', 'altitude_m', 'm', { ...range(-400, 4000), slip: humiditySlip }, 'metres above sea level', {
    default: 'altitude_m',
  }),
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
  drying.number('Drum m3', 'drum_m3', 'm³', range(0.1, 1000), 'the drum’s volume: ¼π × diameter² × length', {
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
];
