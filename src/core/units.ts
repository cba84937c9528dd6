/**
 * Every unit the functions use, spelled once. A closed list, so that a mistyped unit does not compile.
 * Each carries the widest range that still makes sense, so that a slip such as 1e308 is refused everywhere.
 */
const huge = 1e9;

const ranges = {
  '': [-huge, huge],
  fraction: [0, 1],
  text: [0, 0],
  'yes or no': [0, 0],
  table: [0, 0],
  date: [1, 2_958_465],
  '0–100': [0, 100],
  times: [0, huge],
  cows: [0, 1e6],
  cubicles: [0, 1e6],
  cases: [0, 1e6],
  loads: [0, huge],
  payments: [1, 366],
  'per 100 cows/year': [0, 1e4],
  'cows per cubicle': [0, 10],
  mm: [0, 1e4],
  m: [-huge, 1e4],
  'm²': [0, 1e6],
  'm³': [0, 1e6],
  litres: [0, huge],
  'litres/day': [0, 1000],
  'litres/h': [0, 1e7],
  'm³/h': [0, 1e7],
  'm/s': [0, 1000],
  g: [0, 1e6],
  kg: [0, huge],
  'kg/h': [0, 1e7],
  'kg/s': [0, 1e4],
  'kg/m³': [0, 25_000],
  't/m³': [0, 25],
  'kg/kg': [0, 100],
  t: [0, 1e7],
  't/h': [0, 1e4],
  't/day': [0, 1e5],
  't/year': [0, 1e7],
  '°C': [-60, 200],
  Pa: [0, 2e5],
  Pa·s: [0, 1],
  'm³/kg': [0, 100],
  'kJ/kg': [-1e4, 1e5],
  'kJ/h': [-huge, huge],
  'kJ/h·K': [0, huge],
  'MJ/kg': [0, 1e4],
  kW: [0, 1e5],
  kWh: [0, huge],
  'kWh/t': [0, 1e5],
  'kWh/year': [0, huge],
  Hz: [0, 400],
  minutes: [0, 1e5],
  hours: [0, 8784],
  'h/day': [0, 24],
  'h/week': [0, 168],
  'h/year': [0, huge],
  days: [0, 366],
  'days/year': [0, 366],
  weeks: [0, 53],
  years: [0, 100],
  'per day': [0, 1e3],
  money: [-1e12, 1e12],
  'per year': [-1e12, 1e12],
  'per payment': [-1e12, 1e12],
  'per t': [0, 1e6],
  'per m³': [0, 1e6],
  'per h': [0, 1e5],
  'per kWh': [0, 1e3],
  'per case': [0, 1e6],
  'per unit': [0, 1e6],
  'kWh/unit': [0, 1e6],
  'kg/day': [0, 1e4],
  'cfu/g': [0, 1e15],
  'cfu/cm³': [0, 1e15],
} as const satisfies Record<string, readonly [number, number]>;

export type Unit = keyof typeof ranges;

/** The lowest and highest number that makes sense in a unit; a parameter may narrow it. */
export const widestRange = (unit: Unit): readonly [number, number] => ranges[unit];

/** A number as our sentences write it: thousands with commas, no trailing digits of binary noise. */
export function spell(value: number): string {
  if (!Number.isFinite(value)) return 'not a number';
  const size = Math.abs(value);
  if (size !== 0 && (size > 1e12 || size < 1e-4)) return value.toPrecision(4).replace(/\.?0+e/, 'e');
  const [whole = '', decimals] = String(Number(value.toPrecision(6))).split('.');
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ',');
  return decimals === undefined ? grouped : `${grouped}.${decimals}`;
}
