import { bandOf, SCORE_CAUTION } from '../domain/hygiene.ts';
import { figure } from './figure.ts';
import { coldestDryerHow, exhaustHow, leastHow } from './figures-kit.ts';

const bedHow = '[Shed temperature], [Dirty udders], [Bed], [Cows] / [Cubicles]';
const fibreHow = `[Dried to dry matter], [Days between beddings], [Fibre kind], ${bedHow}`;
const presentHow = `[Bought dry matter], [Days now], [Material now], ${bedHow}`;

const bands = ({ lowest, highest }: { lowest: number; highest: number }): string => {
  const [low, high] = [bandOf(lowest), bandOf(highest)];
  return `${low === high ? low : `${low} to ${high}`} over what was not given; a ${SCORE_CAUTION}.`;
};
const dash = ({ lowest, highest }: { lowest: number; highest: number }, decimals: number): string =>
  `${lowest.toFixed(decimals)}–${highest.toFixed(decimals)}`;

/** What the bedding may do to the udders. */
export const udderFigures = [
  figure('Break-even mastitis cases', 'per 100 cows/year', {
    value: (plan) => plan.udder.break_even_cases,
    how: 'UDDER.BREAKEVEN([Saving], [Cows], [Cost per mastitis case])',
    meaning: 'Extra cases that would eat the saving.',
  }),
  figure('Break-even mastitis cases after capital', 'per 100 cows/year', {
    value: (plan) => plan.udder.break_even_cases_after_capital,
    how: 'UDDER.BREAKEVEN([Saving after capital], [Cows], [Cost per mastitis case])',
    meaning: 'Extra cases that would eat what is left after capital.',
  }),
  figure('Hygiene score, fibre', '0–100', {
    value: (plan) => plan.udder.fibre_score,
    how: `HYGIENE.RISK(${fibreHow})`,
    meaning: (plan) => `${bandOf(plan.udder.fibre_score)}: 0 is best; a ${SCORE_CAUTION}.`,
  }),
  figure('Hygiene score, present bedding', '0–100', {
    value: (plan) => plan.udder.present_score,
    how: `HYGIENE.RISK(${presentHow})`,
    meaning: (plan) => `${bandOf(plan.udder.present_score)}: 0 is best; a ${SCORE_CAUTION}.`,
  }),
] as const;

/** What is claimed of the kit. */
export const claimsFigures = [
  figure('Stated output against the air', 'times', {
    only: 'with a dryer',
    value: (plan) => plan.kit.stated_ratio,
    how: 'DRYING.CLAIM([Stated output m3 per hour] * [Dried fibre density], [Pressed dry matter], [Dried to dry matter], [Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at])',
    meaning: 'Water the stated output needs beside the most this air can carry: above 1.25 it is not to be had with this air.',
  }),
  figure('Retention', 'hours', {
    only: 'with a dryer',
    value: (plan) => plan.kit.retention_hours,
    how: 'DRYING.RETENTION([Drum m3], [Drum fill], [Dried fibre density], [Dried output])',
    meaning: 'Time the fibre spends in the drum at the calculated output.',
  }),
] as const;

/** What else is worth knowing. */
export const alsoFigures = [
  figure('Limit in the coldest month', '', {
    value: (plan) => plan.kit.coldest_limit.stage,
    how: leastHow(coldestDryerHow),
    meaning: 'The stage that can make least in the coldest month.',
  }),
  figure('Exhaust dew point', '°C', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.exhaust.exhaust_dew_point_c,
    how: exhaustHow('dew point'),
    meaning: 'Anything colder than this in the exhaust’s way drips.',
  }),
  figure('Cow dry matter', 'kg', {
    value: (plan) => plan.kit.cow_dm_kg_day,
    how: '1000 * [Slurry] * [Slurry dry matter] / [Cows]',
    meaning: 'Dry matter in a cow’s slurry in a day: 4 to 9 is usual, so a figure outside says check the samples.',
  }),
  figure('Hygiene span, fibre', '0–100', {
    value: (plan) => dash(plan.udder.fibre_span, 0),
    how: `span(HYGIENE.SPAN(${fibreHow}))`,
    meaning: (plan) => bands(plan.udder.fibre_span),
  }),
  figure('Hygiene span, present bedding', '0–100', {
    value: (plan) => dash(plan.udder.present_span, 0),
    how: `span(HYGIENE.SPAN(${presentHow}))`,
    meaning: (plan) => bands(plan.udder.present_span),
  }),
  figure('Lying time, fibre', 'h/day', {
    value: (plan) => dash(plan.udder.fibre_lying, 1),
    how: 'trials(WELFARE.LYING([Dried to dry matter]))',
    meaning: 'What the published trials imply at this dry matter; they disagree fourfold, and no milk is claimed for it.',
  }),
  figure('Lying time, present bedding', 'h/day', {
    value: (plan) => dash(plan.udder.present_lying, 1),
    how: 'trials(WELFARE.LYING([Bought dry matter]))',
    meaning: 'The same for the present bedding.',
  }),
] as const;
