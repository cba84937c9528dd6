import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { browser } from './browser.ts';
import { type HostileFile, hostileFiles } from './hostile-files.ts';
import { drawn, openSheet, read, type, type Watched } from './sheet-page.ts';

let sheet: Watched;
let page: Page;

beforeAll(async () => {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  sheet = await openSheet(context, `${inject('site')}/sheet.html`);
  page = sheet.page;
  await type(page, 'L2', 'my own words');
});

/** Hands the file to the Open button, and gives what the page says of it; nothing where it opened it. */
async function handOver({ name, content }: HostileFile): Promise<string> {
  const before = await page.locator('#grid > div').elementHandle();
  const choosing = page.waitForEvent('filechooser');
  await page.locator('#open').click();
  await (await choosing).setFiles({ name: name.replaceAll('/', ' '), mimeType: 'application/json', buffer: Buffer.from(content) });
  await page.waitForFunction((old) => document.querySelector('#asking[open]') ?? !old?.isConnected, before);
  const refused = (await page.locator('#asking[open]').count()) > 0;
  if (!refused) return '';
  const said = (await page.locator('#asked').textContent()) ?? '';
  await page.locator('#asking-yes').press('Enter');
  return said;
}

/** Goes through every sheet, so that all of the file is drawn. */
async function lookThrough(): Promise<void> {
  for (const tab of (await page.locator('.o-sheet').all()).reverse()) {
    await tab.click();
    await drawn(page);
  }
  await expect.poll(() => page.locator('.o-grid-overlay').count()).toBe(1);
}

const files = hostileFiles();
const refusal = /could not be opened: (the file|it) .{8,}\. The workbook you had is still here\.$/;
const ofKind = (kind: string): readonly HostileFile[] => files.filter(({ name }) => name.startsWith(kind));

describe('a hostile file given to the Open button', () => {
  it('is refused in words, and the workbook that was open stays', async () => {
    const refused = [
      ...ofKind('cut short').slice(0, 2),
      ...ofKind('too large').slice(0, 3),
      ...ofKind('10 MB').slice(0, 2),
      ...ofKind('other version').slice(0, 1),
      ...files.filter(({ name }) => /\.xlsx$|^page|^zeros/.test(name)),
    ];
    for (const file of refused) expect(await handOver(file), file.name).toMatch(refusal);
    expect(await read(page, 'L2')).toContain('L2: my own words');
    expect(sheet.complaints).toEqual([]);
  });

  it('shows what it holds as text where it opens: no script, link, picture or request of it runs', async () => {
    for (const file of [...ofKind('markup').slice(0, 8), ...ofKind('link'), ...ofKind('cycle').slice(0, 3)]) {
      expect(await handOver(file), file.name).toBe('');
      await lookThrough();
    }
    expect(await page.evaluate(() => 'ran' in window || 'polluted' in {})).toBe(false);
    expect(page.context().pages()).toHaveLength(1);
    expect(sheet.complaints).toEqual([]);
  });
});
