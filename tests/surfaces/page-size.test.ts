import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

it('the whole sheet in one file is small enough to send by e-mail: at most 870 kB packed, 20 kB of it the face that it carries, and 10 kB the sheets for after it runs and for how sure it is', () => {
  expect(gzipSync(readFileSync('dist/bedding-ledger.html'), { level: 9 }).length).toBeLessThanOrEqual(870_000);
});
