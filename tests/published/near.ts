import { expect } from 'vitest';

/** Holds a figure to a printed one, within what the print leaves open. */
export const near = (found: number, printed: number, within: number): void => expect(Math.abs(found - printed)).toBeLessThanOrEqual(within);
