import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';

it('the whole sheet in one file is small enough to send by e-mail: at most 800 kB packed', () => {
  expect(gzipSync(readFileSync('dist/bedding-ledger.html'), { level: 9 }).length).toBeLessThanOrEqual(800_000);
});
