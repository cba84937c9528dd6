import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';
import { launch } from './launch.ts';
import { drawn, openSheet, read, startTyping, type, type Watched } from './sheet-page.ts';

let browser: Browser;
let sheet: Watched;

beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());

describe('the embedded sheet', () => {
  beforeEach(async () => {
    const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
    sheet = await openSheet(context, `${inject('site')}/sheet.html`);
  });
  afterEach(async () => {
    expect(sheet.complaints).toEqual([]);
    await sheet.page.context().close();
  });

  it('works an answer out anew when an input changes', async () => {
    const { page } = sheet;
    await type(page, 'J2', '100');
    await type(page, 'J3', '=BEDDING.DEMAND.HERD(J2,2)');
    expect(await read(page, 'J3')).toMatch(/ J3: 73$/);
    await type(page, 'J2', '200');
    expect(await read(page, 'J3')).toMatch(/ J3: 146$/);
  });

  it('says in the cell’s own words what is wrong with a value', async () => {
    const { page } = sheet;
    await type(page, 'J2', '=BEDDING.DEMAND.HERD(-5,2)');
    expect(await read(page, 'J2')).toContain('#ERROR, cubicles (cubicles): -5 is below');
  });

  it('offers a function by any part of its name, in any case', async () => {
    const { page } = sheet;
    await startTyping(page, '=herd');
    await expect.poll(() => page.locator('.o-autocomplete-dropdown').textContent()).toContain('BEDDING.DEMAND.HERD');
  });

  it('tells while a formula is typed what every function takes, with unit, range and default', async () => {
    const { page } = sheet;
    const help = page.locator('.o-formula-assistant');
    for (const { name, parameters } of functionsFile(registry).functions) {
      await startTyping(page, `=BEDDING.${name}(`);
      await expect.poll(() => help.textContent({ timeout: 5_000 }), { message: name }).toContain(`BEDDING.${name} (`);
      const said = ((await help.textContent({ timeout: 5_000 })) ?? '').replace(/\s+/g, ' ');
      for (const parameter of parameters) expect(said, name).toContain(parameter.name);
      if (parameters[0]) expect(said).toContain(parameters[0].description.replace(/\s+/g, ' '));
      await page.keyboard.press('Escape');
      await page.keyboard.press('Escape');
      await drawn(page);
    }
  }, 120_000);
});
