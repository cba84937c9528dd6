import { expect, test } from 'vitest';
import { define } from '../../src/core/define.ts';
import { number, text } from '../../src/core/parameters.ts';

const half_kg = { says: 'Half of it', unit: 'kg', how: 'mass_kg / 2' } as const;
const share = { says: 'Share of it', unit: 'fraction', told: 'one half' } as const;
const halved = {
  name: 'TEST.HALF',
  summary: 'For these tests.',
  finds: '',
  parameters: [number('mass_kg', 'kg', 'a mass')],
  compute: (mass_kg: number) => ({ half_kg: mass_kg / 2, share: 0.5 }),
  result: 'half_kg',
  working: { half_kg, share },
  sources: [],
  examples: [],
} as const;

/** The judge is `tsc`: it fails on a line marked as one that must not compile where that line does. */
test('a record does not compile unless it describes the very steps of its equation, in units and sources that are known', () => {
  expect(define(halved)).toBe(halved);
  // @ts-expect-error: the step share is not described
  define({ ...halved, working: { half_kg } });
  // @ts-expect-error: the equation has no third step
  define({ ...halved, working: { half_kg, share, third: share } });
  // @ts-expect-error: the result is no step
  define({ ...halved, result: 'whole' });
  // @ts-expect-error: the unit is not in the list
  define({ ...halved, working: { half_kg: { ...half_kg, unit: 'stone' }, share } });
  // @ts-expect-error: the source is not in the bibliography
  define({ ...halved, sources: ['hearsay'] });
  // @ts-expect-error: the equation takes a number, not a name
  define({ ...halved, parameters: [text('mass_kg', 'a mass')] });
});
