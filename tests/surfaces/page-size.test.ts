import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

it('the whole sheet in one file is small enough to send by e-mail: at most 910 kB packed, 20 kB of it the face that it carries, 20 kB the sheets of plans, months, sizes, hand-over, records and how sure, 20 kB what writes the plan, and any one figure, as native formulas', () => {
  expect(gzipSync(readFileSync('dist/bedding-ledger.html'), { level: 9 }).length).toBeLessThanOrEqual(910_000);
});
