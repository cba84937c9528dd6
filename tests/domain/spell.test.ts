import { expect, test } from 'vitest';
import { spell } from '../../src/domain/spell.ts';

test.each([
  [1234567, '1,234,570'],
  [0.1 + 0.2, '0.3'],
  [-1234.5, '-1,234.5'],
  [0.000051, '0.000051'],
  [1e-7, '1e-7'],
  [2.5e15, '2.5e+15'],
  [0, '0'],
])('%d is written as %s', (value, written) => expect(spell(value)).toBe(written));
