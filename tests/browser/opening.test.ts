import { strToU8 } from 'fflate';
import type { Page } from 'playwright-core';
import { afterEach, describe, expect, it } from 'vitest';
import { rows, xlsxMade } from '../surfaces/xlsx-made.ts';
import { browser } from './browser.ts';
import { openSheet, pages, read, type, type Watched } from './sheet-page.ts';
import { untilReplaced } from './waiting.ts';

let sheet: Watched;
let page: Page;

const open = async (address: string): Promise<void> => {
  sheet = await openSheet(await browser.newContext({ viewport: { width: 1400, height: 900 } }), address);
  page = sheet.page;
};
afterEach(async () => {
  expect(sheet.complaints).toEqual([]);
  await page.context().close();
});

async function choose(name: string, content: Uint8Array): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.locator('#open').click()]);
  await chooser.setFiles({ name, mimeType: 'application/octet-stream', buffer: Buffer.from(content) });
}

const text = (address: string, words: string): string => `<c r="${address}" t="inlineStr"><is><t>${words}</t></is></c>`;
const file = xlsxMade({
  others: { 'xl/charts/chart1.xml': '<c/>' },
  sheets: { Data: rows(text('A1', '=1+1'), text('A2', '00123'), '<c r="A3"><f>LET(x,2,x*3)</f><v>6</v></c>') },
});

describe.each(pages)('a spreadsheet file, %s', (_, address) => {
  it('is read beside the page: text stays text, and what does not come along is said', async () => {
    await open(address());
    await untilReplaced(page, () => choose('cows.xlsx', file));
    expect(await read(page, 'A1')).toContain('A1: =1+1');
    expect(await read(page, 'A2')).toContain('A2: 00123');
    expect(await read(page, 'A3')).toContain('A3: 6');
    expect(await page.locator('#notices').textContent()).toContain(
      'cows.xlsx is open. Left out: 1 chart. Formulas that are now the value they had: 1 with functions that this page does not know (LET).',
    );
    expect(await page.locator('#waiting').isVisible()).toBe(false);
  });
});

const [[, served]] = pages;

describe('while a file is being read', () => {
  it('the page says so, and Cancel or Escape leave everything as it was', async () => {
    await open(served());
    await type(page, 'L2', 'still here');
    // A file that never ends: its reader hears nothing of it.
    await page.evaluate(() => Object.assign(Worker.prototype, { postMessage: () => undefined }));
    for (const stop of [() => page.locator('#waiting-stop').click(), () => page.keyboard.press('Escape')]) {
      await choose('endless.xlsx', file);
      await page.locator('#waiting[open]').waitFor();
      expect(await page.locator('#waited-for').textContent()).toBe('Opening endless.xlsx…');
      await stop();
      await page.locator('#waiting[open]').waitFor({ state: 'detached' });
    }
    expect(await read(page, 'L2')).toContain('L2: still here');
  });

  it('a file of another kind is called what it is, with what to do', async () => {
    await open(served());
    await choose('milk.csv', strToU8('day;litres\r\n1;9000\r\n'));
    await page.locator('#asking[open]').waitFor();
    expect(await page.locator('#asked').textContent()).toMatch(
      /^milk\.csv could not be opened: it is a table as plain text .* save it there as \.xlsx/,
    );
    await page.locator('#asking-yes').click();
  });
});
