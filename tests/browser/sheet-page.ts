import type { Browser, BrowserContext, Page } from 'playwright-core';

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

/** The grid redraws on the next frame; keys sent before that still meet the cell of before. */
export const drawn = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));

/** Types into the active cell. The grid takes the first key as the beginning of an entry, and needs a frame for it. */
export async function startTyping(page: Page, content: string): Promise<void> {
  await page.keyboard.type(content.slice(0, 1));
  await drawn(page);
  await page.keyboard.type(content.slice(1));
}

export async function type(page: Page, address: string, content: string): Promise<void> {
  await goTo(page, address);
  await startTyping(page, content);
  await page.keyboard.press('Enter');
  await drawn(page);
}

/** What is spoken of a cell: its address, its value and, where there is one, its error's sentence. */
export async function read(page: Page, address: string): Promise<string> {
  await goTo(page, address);
  return spoken(page);
}
