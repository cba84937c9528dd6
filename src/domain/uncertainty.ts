import { uniformFloat32 } from 'pure-rand/distribution/uniformFloat32';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { mean as meanOf, quantile } from 'simple-statistics';
import { annuityFactor } from './annuity.ts';
import { Refusal } from './refusal.ts';
import { said } from './spell.ts';

/** What the plan's net present value hangs on, as it is named in the table that is given. */
export const driverNames = ['kit cost', 'bought price per t', 'bought t per year', 'running cost per year', 'discount rate'] as const;
export type DriverName = (typeof driverNames)[number];

/** The lowest, likeliest and highest value that is thought possible. */
export interface Spread {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}
export type Drivers = Readonly<Record<DriverName, Spread>>;

function checkOrder(drivers: Drivers): void {
  for (const name of driverNames) {
    const { low, likely, high } = drivers[name];
    if (low > likely || likely > high)
      throw new Refusal(
        'drivers',
        said`${name}: ${low}; ${likely}; ${high} do not rise`,
        'enter low at most likely, and likely at most high',
      );
  }
}

/** npv = -kit cost + (bought price per t * bought t per year - running cost per year) * annuity factor; no end value. */
const planValue = (kit_cost: number, price_per_t: number, t_year: number, running_year: number, annuity_factor: number): number =>
  (price_per_t * t_year - running_year) * annuity_factor - kit_cost;

/**
 * How far each driver alone moves the net present value between its low and its high, the others at their likeliest.
 * Largest swing first: driver, NPV at low, NPV at high, swing.
 *
 * @param life_years years that the kit lasts
 * @param growth growth of the saving from year 2, fraction a year
 */
export function sensitivity(drivers: Drivers, life_years: number, growth: number) {
  checkOrder(drivers);
  const valueAt = (changed?: DriverName, value = 0): number => {
    const [kit_cost, price_per_t, t_year, running_year, rate] = driverNames.map((name) =>
      name === changed ? value : drivers[name].likely,
    ) as [number, number, number, number, number];
    return planValue(kit_cost, price_per_t, t_year, running_year, annuityFactor(life_years, rate, growth));
  };
  const swings = driverNames.map((name) => {
    const atLow = valueAt(name, drivers[name].low);
    const atHigh = valueAt(name, drivers[name].high);
    return { name, atLow, atHigh, swing: Math.abs(atHigh - atLow) };
  });
  swings.sort((one, other) => other.swing - one.swing);
  return { npv_likely: valueAt(), rows: swings.map(({ name, atLow, atHigh, swing }) => [name, atLow, atHigh, swing]) };
}

/**
 * Draws from a triangular distribution, one from each of as many equally likely slices, in random order: Latin hypercube
 * sampling, McKay, Beckman and Conover 1979. A slice at probability p lies at
 * low + sqrt(p·(high - low)·(likely - low)) up to the likeliest, and at high - sqrt((1 - p)·(high - low)·(high - likely)) beyond.
 */
export function triangularDraws({ low, likely, high }: Spread, draws: number, random: RandomGenerator): Float64Array {
  const width = high - low;
  const turning = (likely - low) / width;
  const rising = width * (likely - low);
  const falling = width * (high - likely);
  const values = new Float64Array(draws);
  for (let k = 0; k < draws; k++) {
    const p = (k + uniformFloat32(random)) / draws;
    const value = p < turning ? low + Math.sqrt(p * rising) : high - Math.sqrt((1 - p) * falling);
    const place = uniformInt(random, 0, k);
    values[k] = values[place] as number;
    values[place] = value;
  }
  return values;
}

/** The values that one figure takes, draw by draw. */
export type Draws = readonly number[];

/** Draws for each spread, independent of each other; one whose low is its high is a constant. The same seed gives the same draws. */
export function drawSpreads(spreads: readonly Spread[], draws: number, seed: number): readonly Draws[] {
  const random = xoroshiro128plus(seed);
  return spreads.map((spread) =>
    spread.low === spread.high ? new Array<number>(draws).fill(spread.low) : Array.from(triangularDraws(spread, draws, random)),
  );
}

/**
 * How likely the plan is to pay, from many plans drawn at random from the drivers' triangular spreads.
 *
 * The discount rate stays at its likeliest value: it is a preference, not a risk. Drivers are taken as independent of each
 * other, so where two rise and fall together the true spread is wider or narrower. The same seed gives the same answer.
 *
 * Percentiles by linear interpolation between ranks, Hyndman and Fan 1996, type 7.
 *
 * @param life_years years that the kit lasts
 * @param growth growth of the saving from year 2, fraction a year
 * @param draws how many plans are drawn
 * @param seed where the random numbers start
 */
export function probability(drivers: Drivers, life_years: number, growth: number, draws: number, seed: number) {
  checkOrder(drivers);
  const random = xoroshiro128plus(seed);
  const annuity_factor = annuityFactor(life_years, drivers['discount rate'].likely, growth);
  const kit_costs = triangularDraws(drivers['kit cost'], draws, random);
  const prices = triangularDraws(drivers['bought price per t'], draws, random);
  const tonnes = triangularDraws(drivers['bought t per year'], draws, random);
  const running = triangularDraws(drivers['running cost per year'], draws, random);
  const npvs = new Array<number>(draws);
  let paying = 0;
  for (let k = 0; k < draws; k++) {
    const npv = planValue(kit_costs[k] as number, prices[k] as number, tonnes[k] as number, running[k] as number, annuity_factor);
    npvs[k] = npv;
    if (npv > 0) paying++;
  }
  const chance = paying / draws;
  const mean = meanOf(npvs);
  const [p10, median, p90] = quantile(npvs, [0.1, 0.5, 0.9]) as [number, number, number];
  const rows = [
    ['chance NPV above 0', chance, 'fraction'],
    ['mean', mean, 'money'],
    ['10th percentile', p10, 'money'],
    ['median', median, 'money'],
    ['90th percentile', p90, 'money'],
  ];
  return { annuity_factor, chance, mean, p10, median, p90, rows };
}
