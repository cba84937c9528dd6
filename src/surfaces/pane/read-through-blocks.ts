import type { ItemKey } from '../../budget/items.ts';
import { SELF_HEATING_RATIO } from '../../domain/drying.ts';

/** One figure read on the walk. Its words, unit and bounds are those of the function's argument. */
export interface Reading {
  readonly id: string;
  readonly of: string;
  /** The argument's name, where the reading is not called the same. */
  readonly argument?: string;
  /** The survey's item that it is, shown here and filled from here. */
  readonly item?: ItemKey;
  /** The figure of the budget that stands in until one is weighed. */
  readonly result?: string;
  readonly label?: string;
}

/** What readings mean, by one function each. */
export interface Finding {
  readonly says: string;
  readonly of: string;
  /** Readings by id, in the function's order; two stand for their product. */
  readonly args: readonly (string | readonly [string, string])[];
  /** The item of the survey that this answers. */
  readonly item?: ItemKey;
  readonly verdict?: (value: number) => string;
}

export interface Block {
  readonly title: string;
  readonly readings: readonly string[];
  readonly findings: readonly Finding[];
}

const reading = (id: string, of: string, more: Omit<Reading, 'id' | 'of'> = {}): Reading => ({ id, of, ...more });

export const allReadings: readonly Reading[] = [
  reading('t_h_running', 'FIBRE.THROUGHPUT', { item: 'press_t_h' }),
  reading('minutes_on', 'FIBRE.THROUGHPUT', { item: 'minutes_on' }),
  reading('minutes_off', 'FIBRE.THROUGHPUT', { item: 'minutes_off' }),
  reading('hours_day', 'FIBRE.THROUGHPUT', { item: 'press_hours_day' }),
  reading('slurry_dm', 'FIBRE.CAPTURE', { item: 'slurry_dm' }),
  reading('cake_dm', 'FIBRE.CAPTURE', { item: 'cake_dm' }),
  reading('liquid_dm', 'FIBRE.CAPTURE'),
  reading('rated_m3_h', 'PLANT.FANFLOW'),
  reading('rated_hz', 'PLANT.FANFLOW'),
  reading('hz', 'PLANT.FANFLOW', { label: 'Hz the fan is set to now' }),
  reading('air_m3_h', 'DRYING.EFFECTIVENESS', { item: 'air_m3_h', label: 'Air flow, measured hot, after the heater' }),
  reading('ambient_c', 'DRYING.EFFECTIVENESS', { label: 'Air before the heater' }),
  reading('ambient_rh', 'DRYING.EFFECTIVENESS', { label: 'Its relative humidity' }),
  reading('supply_c', 'DRYING.EFFECTIVENESS', { label: 'Air after the heater' }),
  reading('water_l_h', 'DRYING.EFFECTIVENESS', { item: 'water_l_h' }),
  reading('water_c', 'DRYING.EFFECTIVENESS', { label: 'Hot water into the heater', item: 'water_c' }),
  reading('return_c', 'DRYING.HOTWATER', { label: 'Water coming back out of it' }),
  reading('minutes', 'PLANT.TURN', { label: 'Minutes a turn took when timed' }),
  reading('known_hz', 'PLANT.TURN', { label: 'Hz the drum was at then' }),
  reading('drum_hz', 'PLANT.TURN', { argument: 'hz', label: 'Hz the drum is set to now' }),
  reading('drum_m3', 'DRYING.RETENTION', { item: 'drum_m3' }),
  reading('fill', 'DRYING.RETENTION', { item: 'drum_fill' }),
  reading('density_kg_m3', 'DRYING.RETENTION', { label: 'Weight of a cubic metre of dried fibre', result: 'Dried fibre density' }),
  reading('stated_m3_h', 'DRYING.DRUMNEEDED', { argument: 'm3_h', label: 'Stated output of dried fibre', item: 'stated_m3_h' }),
  reading('stated_hours', 'DRYING.DRUMNEEDED', { argument: 'hours', label: 'Stated time in the drum', item: 'stated_hours' }),
  reading('dm_out', 'DRYING.CLAIM', { item: 'target_dm' }),
];

const airAndHeater = ['air_m3_h', 'ambient_c', 'ambient_rh', 'supply_c', 'water_l_h', 'water_c'] as const;
const stated = ['stated_m3_h', 'density_kg_m3'] as const;
const air = ['air_m3_h', 'ambient_c', 'ambient_rh', 'supply_c'] as const;

const claimVerdict = (ratio: number): string => {
  if (ratio <= 1) return 'This air can carry it.';
  return ratio <= SELF_HEATING_RATIO
    ? 'Measure it: just above what this air can carry; heat from the fibre itself may explain it.'
    : 'Not with this air, even leaving the drum saturated: ask the supplier how it was measured.';
};

export const blocks: readonly Block[] = [
  {
    title: 'Press: minutes on and off',
    readings: ['t_h_running', 'minutes_on', 'minutes_off', 'hours_day'],
    findings: [
      { says: 'Slurry through the press', of: 'FIBRE.THROUGHPUT', args: ['t_h_running', 'minutes_on', 'minutes_off', 'hours_day'] },
    ],
  },
  {
    title: 'Press: three samples',
    readings: ['slurry_dm', 'cake_dm', 'liquid_dm'],
    findings: [{ says: 'Share of dry matter caught', of: 'FIBRE.CAPTURE', args: ['slurry_dm', 'cake_dm', 'liquid_dm'], item: 'capture' }],
  },
  {
    title: 'Fan: Hz to air flow',
    readings: ['rated_m3_h', 'rated_hz', 'hz'],
    findings: [{ says: 'Air flow', of: 'PLANT.FANFLOW', args: ['rated_m3_h', 'rated_hz', 'hz'], item: 'air_m3_h' }],
  },
  {
    title: 'Air heater: temperatures in and out',
    readings: [...airAndHeater, 'return_c'],
    findings: [
      { says: 'Heater effectiveness', of: 'DRYING.EFFECTIVENESS', args: airAndHeater, item: 'effectiveness' },
      { says: 'Heat the air takes up', of: 'DRYING.HEAT', args: air },
      { says: 'Heat the water gives', of: 'DRYING.HOTWATER', args: ['water_l_h', 'water_c', 'return_c'], item: 'heat_kw' },
    ],
  },
  {
    title: 'Stated output: can this air do it?',
    readings: [...stated, 'cake_dm', 'dm_out', ...air],
    findings: [
      {
        says: 'Water it needs beside the most this air can carry',
        of: 'DRYING.CLAIM',
        args: [stated, 'cake_dm', 'dm_out', ...air],
        verdict: claimVerdict,
      },
      { says: 'What this air would dry', of: 'DRYING.OUTPUT', args: ['cake_dm', 'dm_out', ...air] },
      {
        says: 'Air it would take, as warm',
        of: 'DRYING.AIRNEEDED',
        args: [stated, 'cake_dm', 'dm_out', 'ambient_c', 'ambient_rh', 'supply_c'],
      },
    ],
  },
  {
    title: 'Drum: turns and time in it',
    readings: ['minutes', 'known_hz', 'drum_hz', 'drum_m3', 'fill', 'density_kg_m3', 'stated_m3_h', 'stated_hours'],
    findings: [
      { says: 'One turn takes', of: 'PLANT.TURN', args: ['minutes', 'known_hz', 'drum_hz'] },
      { says: 'Time in the drum at the stated output', of: 'DRYING.RETENTION', args: ['drum_m3', 'fill', 'density_kg_m3', stated] },
      { says: 'Drum that the stated output and time need', of: 'DRYING.DRUMNEEDED', args: ['stated_m3_h', 'stated_hours', 'fill'] },
    ],
  },
];
