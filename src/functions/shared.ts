import { defaultOf } from '../core/bibliography.ts';
import { choice, number, optional } from '../core/parameters.ts';
import { humiditySlip, yearsSlip } from '../core/slips.ts';
import { airPlaces } from '../domain/heater.ts';
import { materials } from '../domain/materials.ts';

/** Parameters that several functions take, declared once so that all refuse the same slips in the same words. */

/** A fraction no lower than `floor`; where 0.35 typed into a per-cent cell would arrive as 0.0035, the refusal asks about it. */
const flooredFraction = <const Name extends string>(name: Name, says: string, floor: number) =>
  number(name, 'fraction', says, {
    min: floor,
    slip: { when: (value) => value > 0 && value < Math.min(floor, 0.01), hint: 'is this a fraction typed into a per-cent cell?' },
  });

/** Dry matter of anything but slurry. */
export const dryMatter = <const Name extends string>(name: Name, says: string) => flooredFraction(name, says, 0.05);

export const dmIn = dryMatter('dm_in', 'dry matter before drying');
export const dmOut = dryMatter('dm_out', 'dry matter after drying');

/** Dry matter of slurry and of the liquid from a press. */
export const slurryDryMatter = <const Name extends string>(name: Name, says: string) => flooredFraction(name, says, 0.005);

export const bulkDensity = <const Name extends string>(name: Name, says: string) => number(name, 'kg/m³', says, { min: 10, max: 3000 });

export const material = <const Name extends string>(name: Name, says: string) => choice(name, says, materials);

export const cubicles = number('cubicles', 'cubicles', 'cubicles bedded', { min: 1 });
export const litres = number('litres', 'litres', 'bedding laid in a cubicle each time', { above: 0, max: 5000 });
export const intervalDays = number('interval_days', 'days', 'days from one bedding to the next', { above: 0, max: 60 });
export const dispenser = number('dispenser_m3', 'm³', 'what the bedding dispenser holds', { above: 0, max: 100 });
export const housedDays = optional(
  number('housed_days', 'days/year', 'days a year the cubicles are bedded', { min: 1 }),
  defaultOf('housed_days'),
);

/** Rise of prices or of the saving; may be negative. */
export const yearlyRise = <const Name extends string>(name: Name, says: string) =>
  number(name, 'fraction', says, { above: -1, below: 1, slip: yearsSlip });

export const capital = number('capital', 'money', 'outlay at the start, net of any grant', { min: 0 });
export const savingYear = number('saving_year', 'per year', 'saving in the first year, before the cost of owning the kit');
export const lifeYears = number('life_years', 'years', 'years that the kit lasts', { min: 1, max: 100, whole: true });
export const rate = number('rate', 'fraction', 'discount rate or interest a year');
export const growth = optional(yearlyRise('growth', 'growth of the saving a year, from year 2'), defaultOf('saving_growth'));
export const residual = optional(
  number('residual', 'money', 'what the kit still fetches at the end of its life', { min: 0 }),
  defaultOf('end_value'),
);

export const airFlowRate = number('air_m3_h', 'm³/h', 'air through the dryer, measured where air_at says', { above: 0 });
export const ambient = number('ambient_c', '°C', 'outdoor temperature', { min: -40, max: 60 });
export const ambientHumidity = number('ambient_rh', 'fraction', 'relative humidity of the outdoor air', { min: 0.01 });
export const supply = number('supply_c', '°C', 'temperature of the air after the heater', { min: -40, max: 200 });
/** The drying air: always these four, in this order. */
export const air = [airFlowRate, ambient, ambientHumidity, supply] as const;

const altitude = number('altitude_m', 'm', 'height above sea level, which thins the air', { min: -400, max: 5000, slip: humiditySlip });
const airAt = choice('air_at', 'whether the flow was measured hot, after the heater (supply), or cold, before it (ambient)', airPlaces);
/** What else must be known of the air: always after it, before other options. */
export const airState = [optional(altitude, defaultOf('altitude_m')), optional(airAt, defaultOf('air_at'))] as const;
