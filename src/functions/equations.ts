import { besideWord, straightLines } from '../core/arithmetic.ts';
import type { Line } from '../core/define.ts';
import factors from '../data/hygiene-factors.json';
import { longestStudied } from '../domain/hygiene-inverse.ts';

/** An equation that others use by name. */
export type Equation = Line & {
  readonly of: readonly string[];
  /** The function of ours whose steps it gives. */
  readonly as?: string;
};

const ashrae = 'ashrae-2017';

const ifGiven = (name: string, level: string): string => `${name} == undefined ? undefined : (${level})`;

const level = {
  unit: '',
  told: 'straight lines through the factor’s points, flat outside them',
  source: 'project',
} as const;

const vapour = 'rh * saturationPressure(t_c)';

/** What stands behind the names in the equations of the working; a test holds each against the code it speaks of. */
export const equations: Readonly<Record<string, Equation>> = {
  saturationPressure: {
    of: ['t_c'],
    says: 'Pressure of saturated vapour: over ice below 0 °C, over water from there up; log is the natural logarithm',
    unit: 'Pa',
    how: 't_c < 0 ? exp(-5674.5359 / (t_c + 273.15) + 6.3925247 - 9.677843e-3 * (t_c + 273.15) + 6.2215701e-7 * (t_c + 273.15) ** 2 + 2.0747825e-9 * (t_c + 273.15) ** 3 - 9.484024e-13 * (t_c + 273.15) ** 4 + 4.1635019 * log(t_c + 273.15)) : exp(-5800.2206 / (t_c + 273.15) + 1.3914993 - 4.8640239e-2 * (t_c + 273.15) + 4.1764768e-5 * (t_c + 273.15) ** 2 - 1.4452093e-8 * (t_c + 273.15) ** 3 + 6.5459673 * log(t_c + 273.15))',
    source: ashrae,
  },
  humidityRatio: {
    of: ['t_c', 'rh', 'pressure_pa'],
    says: 'Water in the air, per kg of dry air',
    unit: 'kg/kg',
    how: '0.621945 * rh * saturationPressure(t_c) / (pressure_pa - rh * saturationPressure(t_c))',
    // While an answer is looked for, a guess may be so hot that water would boil: then the air has room without end.
    closed: `${vapour} < pressure_pa ? 0.621945 * ${vapour} / (pressure_pa - ${vapour}) : 1e9`,
    source: ashrae,
  },
  relativeHumidity: {
    of: ['t_c', 'humidity_ratio', 'pressure_pa'],
    says: 'Relative humidity of the air; above 1 where it cannot hold that much',
    unit: 'fraction',
    how: 'pressure_pa * humidity_ratio / (0.621945 + humidity_ratio) / saturationPressure(t_c)',
    source: ashrae,
  },
  enthalpy: {
    of: ['t_c', 'humidity_ratio'],
    says: 'Heat in the air and its water, per kg of dry air, above 0 °C',
    unit: 'kJ/kg',
    how: '1.006 * t_c + humidity_ratio * (2501 + 1.86 * t_c)',
    source: ashrae,
  },
  specificVolume: {
    of: ['t_c', 'humidity_ratio', 'pressure_pa'],
    says: 'Volume that a kg of dry air takes up with its water',
    unit: 'm³/kg',
    how: '287.042 * (t_c + 273.15) * (1 + 1.607858 * humidity_ratio) / pressure_pa',
    source: ashrae,
  },
  dewPoint: {
    of: ['t_c', 'rh'],
    says: 'Temperature at which the air’s water begins to settle out',
    unit: '°C',
    solves: 'saturationPressure(dewPoint) == rh * saturationPressure(t_c)',
    between: ['-100', 't_c'],
    source: ashrae,
  },
  waterDensity: {
    of: ['t_c'],
    says: 'Density of water, 0 to 150 °C',
    unit: 'kg/m³',
    how: '(999.83952 + 16.945176 * t_c - 7.9870401e-3 * t_c ** 2 - 46.170461e-6 * t_c ** 3 + 105.56302e-9 * t_c ** 4 - 280.54253e-12 * t_c ** 5) / (1 + 16.87985e-3 * t_c)',
    source: 'kell-1975',
  },
  sphereDrag: {
    of: ['reynolds'],
    says: 'Drag coefficient of a sphere',
    unit: '',
    how: 'max(24 / reynolds * (1 + 0.15 * reynolds ** 0.687), 0.44)',
    source: 'schiller-naumann-1933',
  },
  annuityFactor: {
    of: ['life_years', 'rate', 'growth'],
    says: 'What a saving of 1 at the end of the first year, growing from the second, is worth today',
    unit: 'times',
    how: 'rate == growth ? life_years / (1 + rate) : (1 - ((1 + growth) / (1 + rate)) ** life_years) / (rate - growth)',
    // Nearer to each other the two would be lost in the last digits of their difference.
    closed: 'abs(rate - growth) < 1e-7 ? life_years / (1 + rate) : (1 - ((1 + growth) / (1 + rate)) ** life_years) / (rate - growth)',
    source: 'engineering-economy',
  },
  annuityYears: {
    of: ['factor', 'rate', 'growth'],
    says: 'Years after which such savings of 1 are worth that many times 1 today',
    unit: 'years',
    how: 'rate == growth ? factor * (1 + rate) : log(1 - factor * (rate - growth)) / log((1 + growth) / (1 + rate))',
    closed: 'abs(rate - growth) < 1e-7 ? factor * (1 + rate) : log(1 - factor * (rate - growth)) / log((1 + growth) / (1 + rate))',
    source: 'engineering-economy',
  },
  capitalRecovery: {
    of: ['life_years', 'rate'],
    says: 'Level payment at the end of each year or period that repays 1 with interest',
    unit: '',
    how: '1 / annuityFactor(life_years, rate, 0)',
    source: 'engineering-economy',
  },
  wholeLoads: {
    of: ['quantity', 'load'],
    says: 'How many loads',
    unit: '',
    told: 'quantity / load, rounded up',
    closed:
      'abs(quantity / load - round(quantity / load)) <= 1e-9 * round(quantity / load) ? round(quantity / load) : ceil(quantity / load)',
    source: 'arithmetic',
  },
  dryMatterLevel: { of: ['dm'], says: 'Level of dry matter, 0 best to 1 worst', ...level, closed: straightLines(factors.dm.points, 'dm') },
  shedLevel: {
    of: ['shed_c'],
    says: 'Level of the shed’s air',
    ...level,
    closed: ifGiven('shed_c', straightLines(factors.shed_c.points, 'shed_c')),
  },
  udderLevel: {
    of: ['dirty_udders'],
    says: 'Level of dirty udders',
    ...level,
    closed: ifGiven('dirty_udders', straightLines(factors.dirty_udders.points, 'dirty_udders')),
  },
  stockingLevel: {
    of: ['stocking'],
    says: 'Level of stocking',
    ...level,
    closed: ifGiven('stocking', straightLines(factors.stocking.points, 'stocking')),
  },
  growthRate: {
    of: ['dm'],
    says: 'How fast germs fill the bedding',
    ...level,
    unit: 'per day',
    closed: straightLines(factors.interval_days.growth_per_day, 'dm'),
  },
  materialLevel: {
    of: ['material'],
    says: 'Level of the material',
    unit: '',
    told: 'its level in the table of factors',
    closed: ifGiven('material', besideWord(Object.entries(factors.material.levels), 'material')),
    source: 'project',
  },
  bedLevel: {
    of: ['bed'],
    says: 'Level of the bed',
    unit: '',
    told: 'its level in the table of factors',
    closed: ifGiven('bed', besideWord(Object.entries(factors.bed.levels), 'bed')),
    source: 'project',
  },
  weightIfGiven: {
    of: ['weight', 'f'],
    says: 'A factor’s weight',
    unit: '',
    told: 'weight, or 0 where the factor was not given',
    closed: 'f == undefined ? 0 : weight',
    source: 'project',
  },
  weightedIfGiven: {
    of: ['weight', 'f'],
    says: 'A factor’s weight times its level',
    unit: '',
    told: 'weight × f, or 0 where the factor was not given',
    closed: 'f == undefined ? 0 : weight * f',
    source: 'project',
  },
  hygieneScore: {
    of: ['dm', 'interval_days', 'material', 'shed_c', 'dirty_udders', 'bed', 'stocking'],
    says: 'The score and its sums',
    unit: '0–100',
    told: 'as HYGIENE.RISK has it',
    as: 'HYGIENE.RISK',
    source: 'project',
  },
  longestStudied: {
    of: ['material'],
    says: 'The longest interval that growth studies reach',
    unit: 'days',
    told: `${longestStudied('sand')} for sand and limestone, ${longestStudied()} for all else`,
    source: 'project',
  },
  fibreReach: {
    of: ['dm', 'material'],
    says: 'Whether fibre can be made so dry',
    unit: 'text',
    told: 'in words, by what presses and dryers reach',
    source: 'fibre-trade-press',
  },
  poissonLimits: {
    of: ['count', 'level'],
    says: 'Lowest and highest number of events to expect that a count still allows',
    unit: 'cases',
    told: 'lowest: χ²((1 − level)/2; 2·count)/2, 0 at a count of 0; highest: χ²((1 + level)/2; 2·count + 2)/2',
    source: 'garwood-1936',
  },
  binomialLimits: {
    of: ['count', 'of', 'level'],
    says: 'Lowest and highest share that a count of so many still allows',
    unit: 'fraction',
    told: 'lowest: so many or more come with the chance (1 − level)/2, 0 at a count of 0; highest: so many or fewer do, 1 where all have it',
    source: 'clopper-pearson-1934',
  },
  binomialAtLeast: {
    of: ['count', 'of', 'each'],
    says: 'Chance of so many or more',
    unit: 'fraction',
    told: 'the sum of choose(of, k) · each^k · (1 − each)^(of − k) for k from count to of',
    source: 'loader-2000',
  },
  binomialAtMost: {
    of: ['count', 'of', 'each'],
    says: 'Chance of so many or fewer',
    unit: 'fraction',
    told: 'the sum of choose(of, k) · each^k · (1 − each)^(of − k) for k from 0 to count',
    source: 'loader-2000',
  },
  recordPower: {
    of: ['expected_before', 'rise', 'level'],
    says: 'Chance that two records are told apart',
    unit: 'fraction',
    told: 'over all numbers n of cases in both: the chance of n where (2 + rise) · expected_before are expected, times the chance that, each falling after with (1 + rise)/(2 + rise), so many do that even chances would reach it with at most (1 − level)/2',
    source: 'clopper-pearson-1934',
  },
  studentQuantile: {
    of: ['level', 'freedom'],
    says: 'Student’s t of a two-sided interval',
    unit: '',
    told: 'the t between whose two signs the distribution with so many degrees of freedom holds level',
    source: 'student-t',
  },
};
