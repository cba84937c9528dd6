import { type BudgetResult, row } from './budget-result.ts';
import { bandOf, SCORE_CAUTION } from './hygiene.ts';

const bands = ({ lowest, highest }: { lowest: number; highest: number }): string => {
  const [low, high] = [bandOf(lowest), bandOf(highest)];
  return `${low === high ? low : `${low} to ${high}`} over what was not given; a ${SCORE_CAUTION}.`;
};
const range = ({ lowest, highest }: { lowest: number; highest: number }, decimals: number): string =>
  `${lowest.toFixed(decimals)}–${highest.toFixed(decimals)}`;

/** What the bedding may do to the udders. */
export const udderResults: readonly BudgetResult[] = [
  row(
    'Break-even mastitis cases',
    'per 100 cows/year',
    (b) => b.udder.break_even_cases(),
    'Extra cases that would eat the saving.',
    'UDDER.BREAKEVEN([Saving], [Cows], [Cost per mastitis case])',
  ),
  row(
    'Break-even mastitis cases after capital',
    'per 100 cows/year',
    (b) => b.udder.break_even_cases_after_capital(),
    'Extra cases that would eat what is left after capital.',
    'UDDER.BREAKEVEN([Saving after capital], [Cows], [Cost per mastitis case])',
  ),
  row(
    'Hygiene score, fibre',
    '0–100',
    (b) => b.udder.fibre_score(),
    (b) => `${bandOf(b.udder.fibre_score())}: 0 is best; a ${SCORE_CAUTION}.`,
    'HYGIENE.RISK([Dried to dry matter], [Days between beddings], [Fibre kind], [Shed temperature], [Dirty udders], [Bed], [Cows] / [Cubicles])',
  ),
  row(
    'Hygiene score, present bedding',
    '0–100',
    (b) => b.udder.present_score(),
    (b) => `${bandOf(b.udder.present_score())}: 0 is best; a ${SCORE_CAUTION}.`,
    'HYGIENE.RISK([Bought dry matter], [Days now], [Material now], [Shed temperature], [Dirty udders], [Bed], [Cows] / [Cubicles])',
  ),
];

/** The stated output, and what else is worth knowing. */
export const claimsResults: readonly BudgetResult[] = [
  row(
    'Stated output against the air',
    'times',
    (b) => b.kit.stated_ratio(),
    'Water the stated output needs beside the most this air can carry: above 1.25 it is not to be had with this air.',
    'DRYING.CLAIM([Stated output m3 per hour] * [Dried fibre density], [Pressed dry matter], [Dried to dry matter], [Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at])',
  ),
  row(
    'Retention',
    'hours',
    (b) => b.kit.retention_hours(),
    'Time the fibre spends in the drum at the calculated output.',
    'DRYING.RETENTION([Drum m3], [Drum fill], [Dried fibre density], [Dried output])',
  ),
  row('Limit in the coldest month', '', (b) => b.kit.coldest_limit().stage, 'The stage that can make least in the coldest month.'),
  row('Exhaust dew point', '°C', (b) => b.kit.usual.exhaust().exhaust_dew_point_c, 'Anything colder than this in the exhaust’s way drips.'),
  row(
    'Cow dry matter',
    'kg',
    (b) => b.kit.cow_dm_kg_day(),
    'Dry matter in a cow’s slurry in a day: 4 to 9 is usual, so a figure outside says check the samples.',
    '1000 * [Slurry] * [Slurry dry matter] / [Cows]',
  ),
  row(
    'Hygiene span, fibre',
    '0–100',
    (b) => range(b.udder.fibre_span(), 0),
    (b) => bands(b.udder.fibre_span()),
  ),
  row(
    'Hygiene span, present bedding',
    '0–100',
    (b) => range(b.udder.present_span(), 0),
    (b) => bands(b.udder.present_span()),
  ),
  row(
    'Lying time, fibre',
    'h/day',
    (b) => range(b.udder.fibre_lying(), 1),
    'What the published trials imply at this dry matter; they disagree fourfold, and no milk is claimed for it.',
  ),
  row('Lying time, present bedding', 'h/day', (b) => range(b.udder.present_lying(), 1), 'The same for the present bedding.'),
];
