import type { Bounds } from '../core/parameters.ts';
import { humiditySlip } from '../core/slips.ts';
import { DRIEST_FIBRE } from '../domain/drying.ts';
import { airPlaces } from '../domain/heater.ts';
import { inGroup, range } from './item.ts';

const group = 'Dryer, air and heat';
const fibre = inGroup(group);
const drying = inGroup(group, 'with a dryer');

const outdoorTemperature = range(-30, 45);
const humidity = range(0.05, 1);

/** No sorption data is held for fibre drier than this, so no plan is made there. */
const fibreTarget: Bounds = {
  ...range(0.15, DRIEST_FIBRE),
  slip: { when: (value) => value > DRIEST_FIBRE && value <= 1, hint: 'no data is held on how fibre gives off water above 0.80 dry matter' },
};

/** The dryer, its air and its heat. */
export const dryerItems = {
  dryer: fibre.yesNo('Dryer', 'whether the pressed fibre is dried; without, it is spread as it leaves the press', {
    asked: true,
    empty: 'yes, if dried further than pressed',
  }),
  target_dm: fibre.number(
    'Dried to dry matter',
    'fraction',
    fibreTarget,
    'dry matter wanted in the cubicle; leave it empty where there is no dryer',
    {
      needed: true,
      unless: { item: 'dryer', is: 'no', as: 'cake_dm' },
      usual: [0.45, 0.62],
      against: {
        is: 'at least',
        item: 'cake_dm',
        aboveIf: { item: 'dryer', is: 'yes' },
        called: 'the pressed dry matter',
        short: 'pressed',
        enter: 'the dry matter the dryer reaches, or Dryer no where there is none',
      },
    },
  ),
  fresh_density_kg_m3: fibre.number('Fresh fibre density', 'kg/m³', range(100, 700), 'weigh a full bucket of the pressed fibre', {
    default: 'fresh_density',
    usual: [250, 450],
  }),
  shrinkage: drying.number('Shrinkage', 'fraction', range(0, 0.3), 'share of its volume the fibre loses in drying', {
    default: 'shrinkage',
    usual: [0, 0.2],
  }),
  air_m3_h: drying.number('Air m3 per hour', 'm³/h', range(50, 500_000), 'warm air into the drum: measure, or the fan’s plate and its Hz'),
  air_at: drying.choice('Air measured at', airPlaces, 'whether that air was measured hot, at the drum, or cold, at the fan', {
    default: 'air_at',
  }),
  ambient_c: drying.number('Outdoor temperature', '°C', outdoorTemperature, 'the year’s mean at the farm', {
    default: 'outdoor_temperature',
  }),
  ambient_rh: drying.number('Outdoor humidity', 'fraction', humidity, 'the year’s mean relative humidity', {
    default: 'outdoor_humidity',
  }),
  coldest_c: drying.number('Coldest month temperature', '°C', outdoorTemperature, 'the coldest month’s mean', {
    default: 'coldest_temperature',
  }),
  coldest_rh: drying.number('Coldest month humidity', 'fraction', humidity, 'the coldest month’s relative humidity', {
    default: 'coldest_humidity',
  }),
  altitude_m: drying.number('Altitude', 'm', { ...range(-400, 4000), slip: humiditySlip }, 'metres above sea level', {
    default: 'altitude_m',
  }),
  water_c: drying.number('Hot water temperature', '°C', range(20, 130), 'hot water into the air heater', {
    needed: true,
    against: {
      is: 'above',
      item: 'ambient_c',
      called: 'the outdoor temperature',
      short: 'outdoor',
      enter: 'the temperature of the hot water to the heater',
    },
  }),
  water_l_h: drying.number('Hot water litres per hour', 'litres/h', { above: 0, max: 1e6 }, 'the flow meter, or the pump’s plate', {
    needed: true,
    instead: 'heat_kw',
    empty: 'then Heat available kW is needed',
  }),
  heat_kw: drying.number('Heat available kW', 'kW', { above: 0, max: 1e5 }, 'heat that is really left over: ask the heating engineer', {
    needed: true,
    instead: 'water_l_h',
    empty: 'then Hot water litres per hour is needed',
  }),
  effectiveness: drying.number('Heater effectiveness', 'fraction', range(0.05, 1), 'from temperatures in and out: DRYING.EFFECTIVENESS', {
    default: 'effectiveness',
  }),
  exhaust_rh: drying.number('Exhaust humidity', 'fraction', range(0.2, 1), 'relative humidity of the air leaving the drum', {
    default: 'exhaust_rh',
    usual: [0.6, 0.85],
  }),
  heat_loss: drying.number(
    'Heat loss',
    'fraction',
    range(0, 0.6),
    'share of the heat lost through drum and ducts, and to warm the fibre itself',
    { default: 'heat_loss' },
  ),
  dryer_hours_day: drying.number('Dryer hours a day', 'h/day', range(0, 24), 'hours a day the dryer can run', { default: 'dryer_hours' }),
  dryer_kw: drying.number('Fan and drum motors kW', 'kW', range(0, 500), 'the plates of fan and drum motors, together', {
    default: 'dryer_motors',
  }),
  drum_m3: drying.number('Drum m3', 'm³', range(0.1, 1000), 'the drum’s volume: ¼π × diameter² × length', {
    empty: 'the retention is then not worked out',
  }),
  drum_fill: drying.number('Drum fill', 'fraction', range(0.01, 0.9), 'share of the drum that fibre fills when it is stopped', {
    empty: 'the retention is then not worked out',
  }),
  stated_m3_h: drying.number('Stated output m3 per hour', 'm³/h', { above: 0, max: 1000 }, 'the supplier’s figure for dried fibre', {
    empty: 'the stated output is then not checked',
  }),
  stated_hours: drying.number(
    'Stated retention hours',
    'hours',
    { above: 0, max: 1000 },
    'the supplier’s figure for the time in the drum',
    { empty: 'the stated drum is then not checked' },
  ),
};
