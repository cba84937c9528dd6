import type { Unit } from '../core/units.ts';
import type { Format } from './model.ts';

const byUnit: Partial<Record<Unit, Format>> = {
  fraction: 'percent1',
  money: 'money',
  'per year': 'money',
  'per t': 'money2',
  'per payment': 'money2',
  'per case': 'money',
  'per kWh': 'three',
  't/year': 'one',
  't/day': 'two',
  't/h': 'two',
  kg: 'two',
  'kg/h': 'one',
  'kg/m³': 'whole',
  'm³/h': 'two',
  'litres/h': 'whole',
  '°C': 'one',
  kW: 'one',
  'MJ/kg': 'one',
  times: 'two',
  years: 'one',
  hours: 'one',
  'h/day': 'one',
  'per 100 cows/year': 'one',
  '0–100': 'whole',
  'm/s': 'two',
  mm: 'two',
};

/** How many decimals a result in this unit deserves. */
export const resultFormat = (unit: string): Format => byUnit[unit as Unit] ?? 'general';

/** A fraction is shown as a percentage. */
export const shownUnit = (unit: string): string => (unit === 'fraction' ? '%' : unit);
