import { type Answer, NoAnswer, Refusal } from './refusal.ts';
import { said } from './spell.ts';

/** The cases of one period of a record. */
export interface Period {
  readonly cases: number;
  readonly cows: number;
  readonly days: number;
}

/** From this many in a row on one side of the centre the run is called out: by chance one of 128 such rows is. */
const RUN = 8;

/** Nearer to the centre than this is on it. */
const ON_CENTRE = 1e-9;

type Side = 'above' | 'below';

/**
 * Control chart of clinical cases per 100 cows per year, a u-chart: is this month unlike those before?
 *
 * centre = 36500 * Σcases / Σ(cows * days) over the baseline; limits centre ± width·sqrt(centre·36500 / (cows * days)), the lower
 * not below 0
 *
 * A rate strictly outside its limits is `above` or `below`; else, from the eighth period in a row on one side of the centre,
 * `run above` or `run below`. A period that is blank or on the centre ends a run.
 *
 * NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.3.1. Limits are those of the normal distribution: with under 20 expected
 * cases a false `above` comes about once in 200 periods.
 *
 * @param periods in order of time; undefined where nothing is on record
 * @param baseline how many of the first periods set the centre; undefined: all
 * @param width standard deviations from the centre to each limit
 */
export function caseChart(periods: readonly (Period | undefined)[], baseline: number | undefined, width: number) {
  if (baseline !== undefined && baseline > periods.length)
    throw new Refusal('baseline', said`${baseline} is above the ${periods.length} periods given`, 'enter at most as many, or leave it out');
  const based = periods.slice(0, baseline).filter((period) => period !== undefined);
  if (based.length < 3)
    throw new Refusal('baseline', said`it holds ${based.length} periods on record`, 'enter at least 3 for limits to be set by');
  const total = (part: (period: Period) => number) => based.reduce((sum, period) => sum + part(period), 0);
  const baseline_cases = total(({ cases }) => cases);
  const baseline_cow_days = total(({ cows, days }) => cows * days);
  if (baseline_cases === 0) throw new NoAnswer('no case in the periods that set the centre: the chart has no limits yet');
  const centre = (36_500 * baseline_cases) / baseline_cow_days;
  let side: Side | undefined;
  let run = 0;
  const rows = periods.map((period, k): (Answer | undefined)[] => {
    if (!period) {
      run = 0;
      return [k + 1, undefined, centre, undefined, undefined, undefined];
    }
    const per_case = 36_500 / (period.cows * period.days);
    const rate = period.cases * per_case;
    const spread = width * Math.sqrt(centre * per_case);
    const [lower, upper] = [Math.max(0, centre - spread), centre + spread];
    const now = Math.abs(rate - centre) <= ON_CENTRE ? undefined : rate > centre ? 'above' : 'below';
    run = now === undefined ? 0 : now === side ? run + 1 : 1;
    side = now;
    const outside = rate > upper ? 'above' : rate < lower ? 'below' : undefined;
    return [k + 1, rate, centre, lower, upper, outside ?? (run >= RUN ? `run ${side}` : undefined)];
  });
  return { baseline_cases, baseline_cow_days, centre, rows };
}
