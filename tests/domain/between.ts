import fc from 'fast-check';

/** Any number from `min` to `max`. */
export const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });
