import type { BudgetItem } from '../../budget/items.ts';
import { type Bounds, number } from '../../core/parameters.ts';
import type { Unit } from '../../core/units.ts';
import { refusal } from '../../core/words.ts';
import { figure } from './records.ts';

/** A further reading that a conversion needs, such as what a bucket holds. */
export interface Aid {
  readonly label: string;
  readonly unit: string;
}

/** One way in which people think of an item, and how it becomes the unit that the sheet holds. */
export interface Way {
  readonly unit: string;
  readonly aids: readonly Aid[];
  readonly toSheet: (value: number, aids: readonly number[]) => number;
  /** Only where no aid is needed: the sheet's value can then be shown in this way. */
  readonly fromSheet?: (value: number) => number;
}

/** A unit that is a fixed number of the sheet's. */
const times = (unit: string, factor: number): Way => ({
  unit,
  aids: [],
  toSheet: (value) => value * factor,
  fromSheet: (value) => value / factor,
});

const withAids = (unit: string, aids: readonly Aid[], toSheet: Way['toSheet']): Way => ({ unit, aids, toSheet });

const per = (unit: string, days: number): Way => ({ unit, aids: [], toSheet: (value) => days / value, fromSheet: (value) => days / value });

const bucket: Aid = { label: 'The bucket holds', unit: 'litres' };
const density = (of: string): Aid => ({ label: `Density of ${of}`, unit: 'kg/m³' });

const beddingAmount = (material: string): readonly Way[] => [
  withAids('buckets', [bucket], (value, [litres = 0]) => value * litres),
  withAids(
    'cm deep',
    [
      { label: 'Length bedded', unit: 'm' },
      { label: 'Width bedded', unit: 'm' },
    ],
    (value, [length, width]) => figure('DEMAND.DEPTH', [length, width, value / 100]),
  ),
  withAids('kg', [density(material)], (value, [kg_m3 = 0]) => (value / kg_m3) * 1000),
  withAids('m³ for all', [{ label: 'Cubicles bedded with it', unit: 'cubicles' }], (value, [cubicles = 0]) => (value * 1000) / cubicles),
];
const howOften = [per('times a week', 7), per('times a day', 1)];
const weighed = [withAids('kg in a bucket', [bucket], (value, [litres = 0]) => (value / litres) * 1000)];
const work = [times('hours a day', 7), times('minutes a day', 7 / 60)];

/** The other ways, beside the sheet's own unit, by the item's key. */
const others: Partial<Record<BudgetItem['key'], readonly Way[]>> = {
  housed_days: [times('weeks a year', 7), times('months a year', 365 / 12)],
  litres: beddingAmount('the fibre as spread'),
  litres_now: beddingAmount('the bought bedding'),
  interval_days: howOften,
  interval_days_now: howOften,
  bought_density_kg_m3: weighed,
  fresh_density_kg_m3: weighed,
  bought_price_per_t: [withAids('per m³', [density('the bought bedding')], (value, [kg_m3]) => figure('COST.TONNE', [value, kg_m3]))],
  load_t: [withAids('m³', [density('the bought bedding')], (value, [kg_m3 = 0]) => (value * kg_m3) / 1000)],
  labour_h_week_now: work,
  labour_h_week_kit: work,
  litres_cow_day: [times('m³ a week', 1000 / 7), times('m³ a month', 12_000 / 365)],
  press_t_h: [times('m³/h', 1)],
  air_m3_h: [
    withAids(
      'Hz',
      [
        { label: 'Flow on the fan’s plate', unit: 'm³/h' },
        { label: 'Hz on the fan’s plate', unit: 'Hz' },
      ],
      (value, [rated, ratedHz]) => figure('PLANT.FANFLOW', [rated, ratedHz, value]),
    ),
    withAids(
      'm/s in the duct',
      [{ label: 'Duct, inside diameter', unit: 'm' }],
      (value, [diameter = 0]) => (value * 3600 * Math.PI * diameter ** 2) / 4,
    ),
  ],
  water_l_h: [times('litres a minute', 60), times('m³/h', 1000)],
  drum_m3: [
    withAids('m long', [{ label: 'Drum, inside diameter', unit: 'm' }], (value, [diameter = 0]) => (value * Math.PI * diameter ** 2) / 4),
  ],
  stated_m3_h: [withAids('kg/h', [density('the dried fibre')], (value, [kg_m3 = 0]) => value / kg_m3)],
  dirty_udders: [withAids('cows dirty', [{ label: 'Cows looked at', unit: 'cows' }], (value, [cows = 0]) => value / cows)],
};

/** How an item may be typed, the usual way first. A fraction is typed as a per cent, and may be typed as itself. */
export function waysOf({ key, parameter: { unit } }: BudgetItem): readonly Way[] {
  const own = unit === 'fraction' ? [times('%', 0.01), times('fraction', 1)] : [times(unit, 1)];
  return [...own, ...(others[key] ?? [])];
}

/** Binary noise off, so that 35 % is written as 0.35. */
export const tidy = (value: number): number => Number(value.toPrecision(12));

/** Bounds in the unit of a way; what is more in the one unit may be less in the other. */
function boundsIn(
  fromSheet: (value: number) => number,
  range: readonly [number, number],
  { above, below, slip }: Bounds,
  way: Way,
): Bounds {
  const [one, other] = range.map((end) => tidy(fromSheet(end))) as [number, number];
  const [first, last] = [
    { at: one, open: above !== undefined },
    { at: other, open: below !== undefined },
  ];
  const [low, high] = one < other ? [first, last] : [last, first];
  return {
    ...(low.open ? { above: low.at } : { min: low.at }),
    ...(high.open ? { below: high.at } : { max: high.at }),
    ...(slip && { slip: { hint: slip.hint, when: (value) => slip.when(tidy(way.toSheet(value, []))) } }),
  };
}

/** Why a value of the sheet is refused, in the unit that the item's box shows it in. A unit that needs further readings cannot tell it. */
export function refusalIn(item: BudgetItem, value: unknown, k = 0): string {
  const { name, unit, says, range, bounds = {} } = item.parameter;
  const way = waysOf(item)[k];
  if (!way?.fromSheet || way.unit === unit || typeof value !== 'number' || !range || bounds.whole) return refusal(item.parameter, value);
  const inWay = number(name, unit, says, boundsIn(way.fromSheet, range, bounds, way));
  return refusal({ ...inWay, unit: way.unit as Unit }, tidy(way.fromSheet(value)));
}
