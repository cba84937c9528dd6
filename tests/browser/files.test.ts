import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { convert } from './find-office.ts';
import { launch } from './launch.ts';
import { drawn, openSheet, read, type, type Watched } from './sheet-page.ts';

let browser: Browser;
let sheet: Watched;
let page: Page;
let folder: string;

beforeAll(async () => {
  browser = await launch();
  folder = await mkdtemp(join(tmpdir(), 'bedding-ledger-'));
});
afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});
beforeEach(async () => {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  sheet = await openSheet(context, `${inject('site')}/sheet.html`);
  page = sheet.page;
});
afterEach(async () => {
  expect(sheet.complaints).toEqual([]);
  await page.context().close();
});

/** Presses a button that saves a file; gives its name and where it now lies. */
async function saved(button: string): Promise<{ readonly name: string; readonly path: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), page.locator(button).click()]);
  const path = join(folder, download.suggestedFilename());
  await download.saveAs(path);
  return { name: download.suggestedFilename(), path };
}

const choose = async (path: string): Promise<void> => {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.locator('#open').click()]);
  await chooser.setFiles(path);
};

const today = (): string => new Date().toLocaleDateString('sv-SE');

describe('files of the embedded sheet', () => {
  it('a saved copy carries the herd and the day in its name, and opens as it was', async () => {
    await type(page, 'Inputs!C5', 'Long Lane');
    await type(page, 'Answer!L2', 'kept with the copy');
    const { name, path } = await saved('#save');
    expect(name).toBe(`Long Lane bedding ${today()}.json`);
    await type(page, 'L2', 'changed since');
    await choose(path);
    await expect.poll(() => read(page, 'L2'), { timeout: 20_000 }).toContain('L2: kept with the copy');
  });

  it('a file that is no copy of ours is refused in a sentence, and the workbook stays', async () => {
    await type(page, 'L2', 'still here');
    const other = join(folder, 'shopping list.json');
    await writeFile(other, '{"milk": 2}');
    await choose(other);
    await expect
      .poll(() => page.locator('#asked').textContent())
      .toBe(
        'shopping list.json could not be opened: the file is damaged or is not a copy saved from this page. The workbook you had is still here.',
      );
    await page.locator('#asking-yes').click();
    expect(await read(page, 'L2')).toContain('L2: still here');
  });

  it('New asks first, then gives the same workbook with nothing filled in', async () => {
    await page.locator('#new').click();
    await page.locator('#asking-no').click();
    expect(await read(page, 'Inputs!C9')).toMatch(/C9: \d/);
    await page.locator('#new').click();
    await page.locator('#asking-yes').click();
    await expect.poll(() => read(page, 'Inputs!C9'), { timeout: 20_000 }).toContain('C9: blank');
    expect(await read(page, 'Answer!A3')).toContain('Still missing on Inputs');
  });

  it('Print shows the sheet on A4 and leaves the buttons and the panel off the paper', async () => {
    await page.locator('#print').click();
    await expect.poll(() => page.locator('.o-spreadsheet-print').count()).toBe(1);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#top').isVisible()).toBe(false);
    expect(await page.locator('#pane').isVisible()).toBe(false);
    const sheets = page.locator('.o-print-page');
    await expect.poll(() => sheets.count()).toBeGreaterThan(0);
    const paddings = await sheets.evaluateAll((papers) => papers.map((paper) => getComputedStyle(paper).padding));
    expect(new Set(paddings)).toEqual(new Set(['0px']));
    // On paper all pages follow each other: no box of a fixed height cuts them off.
    const heights = await page.evaluate(() => [document.body.scrollHeight, document.querySelector('.o-print-preview')?.scrollHeight ?? 0]);
    expect(heights[0]).toBeGreaterThanOrEqual(heights[1] as number);
    await page.emulateMedia({ media: 'screen' });
    await drawn(page);
  });
});

describe('the spreadsheet file', () => {
  const part = (files: Record<string, Uint8Array>, path: string): string => strFromU8(files[path] as Uint8Array);

  it('prints on A4 as wide as the page, with each sheet’s head on each page, and keeps errors as errors', async () => {
    await type(page, 'Answer!L2', '=NA()');
    const { name, path } = await saved('#export');
    expect(name).toMatch(/ bedding \d{4}-\d\d-\d\d\.xlsx$/);
    const files = unzipSync(await readFile(path));
    const answer = part(files, 'xl/worksheets/sheet0.xml');
    expect(answer).toContain('<pageSetUpPr fitToPage="1"/>');
    expect(answer).toContain('<pageSetup paperSize="9" orientation="portrait" fitToWidth="1" fitToHeight="1"/>');
    expect(answer).toMatch(/<c r="L2"[^>]* t="e">[\s\S]*?<v>#N\/A<\/v>/);
    expect(part(files, 'xl/workbook.xml')).toMatch(/<definedName name="_xlnm.Print_Titles" localSheetId="1">'Inputs'!\$1:\$\d+</);
    expect(
      Object.keys(files)
        .map((file) => strFromU8(files[file] as Uint8Array))
        .join(''),
    ).not.toContain('errorStyle=""');
  });

  it('opens in LibreOffice with the figures that the page shows', { timeout: 180_000 }, async () => {
    const shown = (await read(page, 'Answer!G16')).split(': ')[1]?.replace(',', '');
    const { path } = await saved('#export');
    convert(path, 'csv', folder);
    const rows = (await readFile(path.replace(/xlsx$/, 'csv'), 'utf8')).split('\n');
    expect(rows[0]).toContain('Bedding from our own slurry');
    const saving = /Saving,([\d.]+)/.exec(rows[15] ?? '')?.[1];
    expect(Math.round(Number(saving))).toBe(Number(shown));
    convert(path, 'pdf', folder);
    const pdf = await readFile(path.replace(/xlsx$/, 'pdf'), 'latin1');
    const pages = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/g)].map(([, width, height]) => [Number(width), Number(height)]);
    expect(pages.length).toBeGreaterThan(0);
    // A4 is 595.3 × 841.9 points, upright or lying.
    for (const size of pages) expect(Math.max(...size)).toBeCloseTo(841.9, 0);
  });
});
