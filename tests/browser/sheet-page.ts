import { pathToFileURL } from 'node:url';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { inject } from 'vitest';
import { patience } from '../patience.ts';

type SheetPage = readonly [where: string, address: () => string];

/** The page as it is served, and in the one file that is opened by a double click: what holds for one holds for the other. */
export const pages: readonly [SheetPage, SheetPage] = [
  ['served', () => `${inject('site')}/sheet.html`],
  ['in one file', () => pathToFileURL('dist/bedding-ledger.html').href],
];

/** For details that do not hang on how the page came: what each of the two must do is held in every-browser. */
export const servedOnly: readonly SheetPage[] = pages.slice(0, 1);

/** What went wrong on a page without anybody asking: a clean page has none. */
export interface Watched {
  readonly page: Page;
  readonly complaints: string[];
}

/** Notes everything that a page says on its console, blocks by its policy, or asks of any other address than its own. */
export function watch(page: Page): Watched {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => complaints.push(`error: ${error.message}`));
  page.on('request', (request) => {
    const own = new URL(page.url() === 'about:blank' ? request.url() : page.url());
    const asked = new URL(request.url());
    if (!['data:', 'blob:'].includes(asked.protocol) && asked.origin !== own.origin) complaints.push(`request: ${request.url()}`);
  });
  return { page, complaints };
}

export async function openSheet(browser: Browser | BrowserContext, address: string): Promise<Watched> {
  const watched = watch(await browser.newPage());
  await watched.page.goto(address);
  await ready(watched.page);
  return watched;
}

/** The page is ready when it speaks the active cell. */
export const ready = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => document.querySelector('#spoken')?.textContent !== '' && document.querySelector('.o-grid-overlay') !== null);

export const spoken = async (page: Page): Promise<string> => (await page.locator('#spoken').textContent()) ?? '';

/** Moves to a cell as a user does, by typing its address into the box left of the tools; `Sheet!B3` goes to another sheet. */
export async function goTo(page: Page, address: string): Promise<void> {
  const box = page.locator('.o-named-range-selector-container input');
  await box.click();
  await box.fill(address);
  await box.press('Enter');
  await page.waitForFunction(
    (cell) => document.querySelector('#spoken')?.textContent?.match(/ ([A-Z]+[0-9]+) ?[^:]*:/)?.[1] === cell,
    address.split('!').at(-1) as string,
  );
  await drawn(page);
}

/** The grid redraws on the next frame. */
export const drawn = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

export async function type(page: Page, address: string, content: string): Promise<void> {
  await goTo(page, address);
  await page.keyboard.type(content);
  await page.keyboard.press('Enter');
  await drawn(page);
}

/** What is spoken of a cell: its address, its value and, where there is one, its error's sentence. */
export async function read(page: Page, address: string): Promise<string> {
  await goTo(page, address);
  return spoken(page);
}

/** A place in the active cell on the canvas: left of and above the handle at its corner. To open its entry for that would cover it. */
async function insideOf(page: Page): Promise<[x: number, y: number]> {
  const corner = await page.locator('.o-autofill').boundingBox();
  if (!corner) throw new Error('the active cell is not in sight');
  return [corner.x - 20, corner.y - 8];
}

/**
 * What the grid shows of the active cell's error while the mouse rests on it. A mouse that meets the box of an entry just
 * ended, or that comes while the page is busy, is not seen by the grid at all until it moves again: so it leaves and comes back.
 */
export async function tooltip(page: Page): Promise<string> {
  const [x, y] = await insideOf(page);
  const shown = page.locator('.o-error-tooltip');
  // Each time it rests twice as long, so that no page is too busy to see it.
  for (let rest = 1_000; rest < patience.wait; rest *= 2) {
    await page.mouse.move(x, y + 200);
    await page.mouse.move(x, y, { steps: 3 });
    const text = await shown.textContent({ timeout: rest }).catch(() => null);
    if (text) return text;
  }
  throw new Error('the mouse rests on the cell, and no tooltip comes');
}
