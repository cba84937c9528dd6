import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { onAnswer } from './answer-cells.ts';
import { browser } from './browser.ts';
import { convert } from './find-office.ts';
import { drawn, openSheet, pages, read, servedOnly, type, type Watched } from './sheet-page.ts';
import { untilReplaced } from './waiting.ts';

let sheet: Watched;
let page: Page;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'bedding-ledger-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true, force: true });
});
/** A page with the budget as it comes; the tests that follow go on where the one before left it. */
const open = async (address: string): Promise<void> => {
  await page?.context().close();
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  sheet = await openSheet(context, address);
  page = sheet.page;
};
afterEach(() => expect(sheet.complaints).toEqual([]));

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

const part = (files: Record<string, Uint8Array>, path: string): string => strFromU8(files[path] as Uint8Array);

const today = (): string => new Date().toLocaleDateString('sv-SE');

// LibreOffice takes its time, and the files it gets are the same from both pages.
const [[, served]] = pages;

/** How many pages of A4 each sheet is planned to take: printed from the page, and by LibreOffice, whose rows are a little lower. */
const plannedPages = { Answer: 1, Options: 2, 'Fibre and drying': 3, Investment: 4, Levers: 3 } as const;
const pagesInOffice = { ...plannedPages, Investment: 3, Settings: 1, 'Udder health': 10 } as const;

describe.each(servedOnly)('files of the embedded sheet, %s', (_, address) => {
  beforeAll(() => open(address()));

  it('a saved copy carries the herd and the day in its name, and opens as it was', async () => {
    await type(page, 'Inputs!C5', 'Long Lane');
    await type(page, 'Answer!L2', 'kept with the copy');
    const { name, path } = await saved('#save');
    expect(name).toBe(`Long Lane bedding ${today()}.json`);
    await type(page, 'L2', 'changed since');
    await untilReplaced(page, () => choose(path));
    expect(await read(page, 'L2')).toContain('L2: kept with the copy');
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

  it('Print shows the sheet on A4 and leaves the buttons and the panel off the paper', async () => {
    await page.locator('#print').click();
    await expect.poll(() => page.locator('.o-spreadsheet-print').count()).toBe(1);
    expect(await page.locator('.o-print-header').textContent()).toMatch(/Cancel\s*Print…/);
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
    await page.locator('.o-print-header button').first().click();
    await drawn(page);
  });

  it('Print takes the planned pages, each table whole with its chart and none blank', async () => {
    for (const [name, pages] of Object.entries(plannedPages)) {
      await page.locator('.o-sheet', { hasText: name }).click();
      await page.locator('#print').click();
      await expect.poll(() => page.locator('.o-print-page').count(), { message: name }).toBe(pages);
      const [width, height] = await page
        .locator('.o-print-page')
        .first()
        .evaluate((paper) => [paper.clientWidth, paper.clientHeight] as const);
      expect(width > height, name).toBe(name !== 'Answer');
      await page.locator('.o-print-header button').first().click();
      await drawn(page);
    }
  });

  it('a spreadsheet file is refused in words where it is damaged, and the workbook stays', async () => {
    await type(page, 'L2', 'still here');
    const { path } = await saved('#export');
    const whole = await readFile(path);
    const parts = unzipSync(whole);
    const without = (part: string) => zipSync(Object.fromEntries(Object.entries(parts).filter(([name]) => name !== part)));
    const withSheet = (xml: string) => zipSync({ ...parts, 'xl/worksheets/sheet0.xml': strToU8(xml) });
    const sheetOf = (data: string) => `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">${data}</worksheet>`;
    const files: Readonly<Record<string, Uint8Array>> = {
      'cut short': whole.subarray(0, whole.length / 2),
      'no archive': strToU8('words'),
      'no workbook': without('xl/workbook.xml'),
      'no end': withSheet('<worksheet><sheetData>'),
      'last row': withSheet(sheetOf('<sheetData><row r="1048576"><c r="A1048576"><v>1</v></c></row></sheetData>')),
      entities: withSheet(`<!DOCTYPE worksheet [<!ENTITY a "a">]>${sheetOf('<sheetData/>')}`),
    };
    for (const [name, content] of Object.entries(files)) {
      const file = join(folder, `${name}.xlsx`);
      await writeFile(file, content);
      await choose(file);
      await page.locator('#asking[open]').waitFor();
      expect(await page.locator('#asked').textContent(), name).toMatch(
        /could not be opened: (the file is (damaged or no spreadsheet|plain text)|it is plain text|the sheet ‘\w+’ reaches down to row 1,048,576).*\. The workbook you had is still here\.$/,
      );
      await page.locator('#asking-yes').click();
    }
    expect(await read(page, 'L2')).toContain('L2: still here');
  });

  it('the exported spreadsheet file prints on A4 as wide as the page, with each sheet’s head on each page, and keeps errors as errors', async () => {
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
    expect((await saved('#export-formulas')).name).toMatch(/ bedding with formulas \d{4}-\d\d-\d\d\.xlsx$/);
  });
});

describe('a spreadsheet file given to the Open button', () => {
  const opened = async (path: string): Promise<void> => {
    await type(page, 'Answer!L2', 'not yet');
    await untilReplaced(page, () => choose(path));
    expect(await read(page, 'Answer!L2')).toContain('L2: from the file');
    expect(await page.locator('#notices').textContent()).toMatch(/is open\. Left out: \d+ charts/);
  };

  it('opens with values, formats and formulas, whether this page or LibreOffice wrote it', async () => {
    await type(page, 'Answer!L2', 'from the file');
    await type(page, 'L3', '2');
    await type(page, 'L4', '=SUM(L3,5)*3');
    const saving = await read(page, onAnswer('Saving'));
    const { path } = await saved('#export');
    const resaved = join(folder, 'resaved');
    convert(path, 'xlsx', resaved);
    for (const file of [path, join(resaved, basename(path))]) {
      await opened(file);
      expect(await read(page, onAnswer('Saving'))).toBe(saving);
      expect(await read(page, 'L4')).toContain('L4: 21');
      await type(page, 'L3', '5');
      expect(await read(page, 'L4')).toContain('L4: 30');
      for (const tab of await page.locator('.o-sheet').all()) await tab.click();
    }
  });
});

/** LibreOffice begins a bookmark of the PDF at each sheet's first page (ISO 32000-1, 7.7.3.2 page tree and 12.3.3 outline). */
function pagesBySheet(pdf: string): Record<string, number> {
  const pages = [...(/\/Kids\s*\[([^\]]*)\]/.exec(pdf)?.[1] ?? '').matchAll(/(\d+) 0 R/g)].map(([, number]) => number);
  const starts = [...pdf.matchAll(/\/Title<FEFF([\dA-F]+)>\s*\/Dest\[(\d+) 0 R/g)].map(([, title = '', number]) => ({
    name: title.replace(/..../g, (code) => String.fromCharCode(Number.parseInt(code, 16))),
    page: pages.indexOf(number),
  }));
  return Object.fromEntries(starts.map(({ name, page }, k) => [name, (starts[k + 1]?.page ?? pages.length) - page]));
}

describe('the spreadsheet file', () => {
  beforeAll(() => open(served()));

  it('opens in LibreOffice with the figures that the page shows', async () => {
    const shown = (await read(page, onAnswer('Saving'))).split(': ')[1]?.replace(',', '');
    const { path } = await saved('#export');
    convert(path, 'csv', folder);
    const rows = (await readFile(path.replace(/xlsx$/, 'csv'), 'utf8')).split('\n');
    expect(rows[0]).toContain('Bedding from our own slurry');
    const saving = /Saving,([\d.]+)/.exec(rows.find((row) => row.includes(',Saving,')) ?? '')?.[1];
    expect(Math.round(Number(saving))).toBe(Number(shown));
    convert(path, 'pdf', folder);
    const pdf = await readFile(path.replace(/xlsx$/, 'pdf'), 'latin1');
    const pages = [...pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/g)].map(([, width, height]) => [Number(width), Number(height)]);
    expect(pages.length).toBeGreaterThan(0);
    // A4 is 595.3 × 841.9 points, upright or lying.
    for (const size of pages) expect(Math.max(...size)).toBeCloseTo(841.9, 0);
    expect(pagesBySheet(pdf)).toMatchObject(pagesInOffice);
  });
});

describe('a new workbook', () => {
  it('New asks first, then gives the same workbook with nothing filled in', async () => {
    await page.locator('#new').click();
    await page.locator('#asking-no').click();
    expect(await read(page, 'Inputs!C9')).toMatch(/C9: \d/);
    await page.locator('#new').click();
    await untilReplaced(page, () => page.locator('#asking-yes').click());
    expect(await read(page, 'Inputs!C9')).toContain('C9: blank');
    expect(await read(page, 'Answer!A3')).toContain('Still missing on Inputs');
    // The grid still knows how wide it is: on a desk it keeps its menus.
    expect(await page.locator('.o-topbar-menu').first().isVisible()).toBe(true);
  });
});
