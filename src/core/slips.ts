import type { Bounds } from './parameters.ts';

/** Values that are likely slips, and what to ask about them: the same wherever such a figure is taken. */
type Slip = NonNullable<Bounds['slip']>;

/** Where a rise a year is asked for, a number of years slips in easily, as 10. */
export const yearsSlip: Slip = { when: (value) => value >= 1, hint: 'is this a number of years?' };

/** The altitude stands next to humidities, and takes one for a height. */
export const humiditySlip: Slip = { when: (value) => value > 0 && value < 1, hint: 'is this a humidity?' };
