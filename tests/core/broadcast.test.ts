import { expect, test } from 'vitest';
import { align } from '../../src/core/broadcast.ts';

const size = (text: string) => {
  const [rows = 0, columns = 0] = text.split('×').map(Number);
  return { rows, columns };
};

test.each([
  ['1×1', '1×1', 'even'],
  ['3×1 1×1', '3×1', 'even'],
  ['3×1 1×2', '3×2', 'even'],
  ['3×2 3×1 1×2', '3×2', 'even'],
  ['3×1 2×1', '3×1', 'uneven'],
  ['1×3 1×2', '1×3', 'uneven'],
  ['3×2 3×3', '3×3', 'uneven'],
])('ranges of %s answer as %s, %s', (ranges, answer, evenness) => {
  expect(align(ranges.split(' ').map(size))).toEqual({ ...size(answer), uneven: evenness === 'uneven' });
});

test('no range at all is one cell', () => expect(align([])).toEqual({ rows: 1, columns: 1, uneven: false }));
