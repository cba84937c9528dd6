import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { nativeWorkbook } from '../../src/native/index.ts';
import { differences } from './agreement.ts';
import { heldHerds, randomHerds } from './herds.ts';
import { plainXlsx } from './plain-xlsx.ts';
import { recalculated } from './recalculated.ts';

const folder = mkdtempSync(join(tmpdir(), 'bedding-native-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const herds = [...Object.entries(heldHerds), ...randomHerds(50).map((given, k) => [`herd ${k + 1} at random`, given] as const)];

// LibreOffice shares no line of code with us: what it works out from the formulas proves them, and our functions by them.
describe('LibreOffice, given nothing but formulas and inputs', () => {
  it('works out of every herd what our functions say, to a millionth', () => {
    const files = herds.map(([, given], k) => {
      const path = join(folder, `herd-${k}.xlsx`);
      writeFileSync(path, plainXlsx(nativeWorkbook({ herd: 'Long Lane', values: given })));
      return path;
    });
    const answers = recalculated(files, folder, 2);
    const wrong = herds.flatMap(([name, given], k) => {
      const figures = answers(k);
      return differences(given, (key) => figures.get(key)).map((said) => `${name}: ${said}`);
    });
    expect(wrong).toEqual([]);
  });
});
