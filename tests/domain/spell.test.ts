import { expect, test } from 'vitest';
import { spell } from '../../src/domain/spell.ts';

test.each([
  [1234567, '1,234,570'],
  [0.1 + 0.2, '0.3'],
  [-1234.5, '-1,234.5'],
  [0.000051, '0.000051'],
  [1e-7, '1e-7'],
  [0.0000512345, '0.00005123'],
  [1.234567e-7, '1.235e-7'],
  [0.000123456, '0.000123456'],
  [123456789.5, '123,457,000'],
  [1e12, '1,000,000,000,000'],
  [-3e12, '-3e+12'],
  [1.0203e20, '1.02e+20'],
  [12.345678, '12.3457'],
  [Number.NaN, 'not a number'],
  [Number.POSITIVE_INFINITY, 'not a number'],
  [2.5e15, '2.5e+15'],
  [0, '0'],
])('%d is written as %s', (value, written) => expect(spell(value)).toBe(written));
