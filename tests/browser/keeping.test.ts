import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { browser } from './browser.ts';
import { startKillable } from './killable.ts';
import { drawn, goTo, openSheet, pages, read, ready, type } from './sheet-page.ts';

const notices = (page: Page): Promise<string> =>
  page
    .locator('#notices')
    .textContent()
    .then((text) => text ?? '');

/** Puts a copy into the browser's store behind the page's back, as a fault or a full disk might leave one. */
const store = (page: Page, name: string, json: string): Promise<unknown> =>
  page.evaluate(
    ([key, content]) =>
      new Promise((done) => {
        const opening = indexedDB.open('bedding-ledger');
        opening.onsuccess = () => {
          const change = opening.result.transaction('workbooks', 'readwrite');
          change.objectStore('workbooks').put({ json: content, at: Date.now() }, key);
          change.oncomplete = () => done(undefined);
        };
      }),
    [name, json],
  );

const stored = (page: Page, name: string): Promise<string | undefined> =>
  page.evaluate(
    (key) =>
      new Promise((found) => {
        const opening = indexedDB.open('bedding-ledger');
        opening.onsuccess = () => {
          const asked = opening.result.transaction('workbooks').objectStore('workbooks').get(key);
          asked.onsuccess = () => found(asked.result?.json);
        };
      }),
    name,
  );

/** Whether the copy kept now holds a word; the whole copy would drown a failed test's report. */
const keeps = (page: Page, word: string): Promise<unknown> =>
  expect.poll(async () => (await stored(page, 'current'))?.includes(word)).toBe(true);

describe.each(pages)('what is kept in the browser, %s', (_, sheet) => {
  /** Another page of the same origin, from which the store can be changed while no workbook is open. */
  const elsewhere = (): string => new URL('functions.json', sheet()).href;
  let context: BrowserContext;
  let page: Page;

  beforeEach(async () => {
    context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
    ({ page } = await openSheet(context, sheet()));
  });
  afterEach(() => context.close());

  it('is there again after the page is closed and opened', async () => {
    await type(page, 'L2', 'dry bales');
    await keeps(page, 'dry bales');
    await expect.poll(() => page.locator('#kept').textContent()).toContain('Kept on this computer');
    await page.reload();
    await ready(page);
    expect(await read(page, 'L2')).toContain('L2: dry bales');
  });

  it('is there again with a formula longer than the page opens, which it keeps as text and says so', async () => {
    await goTo(page, 'L2');
    await page.keyboard.type('=');
    await page.keyboard.insertText(`SUM(1${',1'.repeat(4100)})`);
    await page.keyboard.press('Enter');
    expect(await notices(page)).toContain('A formula of more than 8,192 characters is kept as text');
    await keeps(page, "'=SUM(1,1");
    await page.reload();
    await ready(page);
    expect(await notices(page)).toBe('');
    expect(await read(page, 'L2')).toContain('L2: =SUM(1,1,1');
  });

  it.each([
    ['an empty object', '{}'],
    ['an empty list', '[]'],
    ['a workbook without sheets', '{"version":"19.3.2","sheets":[]}'],
    ['half a file', '{"version":"19.3.2","sheets":[{"id":"a"'],
  ])('is put aside and said so when it is damaged: %s', async (_kind, damage) => {
    await type(page, 'L2', 'the first copy');
    await keeps(page, 'the first copy');
    await type(page, 'L2', 'the second copy');
    await keeps(page, 'the second copy');
    await page.goto(elsewhere());
    await store(page, 'current', damage);
    await page.goto(sheet());
    await ready(page);
    expect(await notices(page)).toMatch(/damaged and could not be opened; the copy kept before it, at \d\d:\d\d.*, is open instead/);
    expect(await read(page, 'L2')).toContain('L2: the first copy');
    expect(await stored(page, 'damaged')).toBe(damage);
  });

  it('is refused in a moment when it claims millions of rows, which the grid would hang on', async () => {
    await type(page, 'L2', 'the first copy');
    await keeps(page, 'the first copy');
    const huge = (await stored(page, 'current'))?.replace(/"rowNumber":\d+/, '"rowNumber":5000000') ?? '';
    expect(huge.includes('5000000')).toBe(true);
    await page.goto(elsewhere());
    await store(page, 'current', huge);
    await page.goto(sheet());
    await ready(page);
    expect(await notices(page)).toContain('damaged and could not be opened');
  });

  it('is not written over by a second tab, which says so', async () => {
    await type(page, 'L2', 'of the first tab');
    await keeps(page, 'of the first tab');
    const second = (await openSheet(context, sheet())).page;
    expect(await notices(second)).toContain('already open in another tab or window. What you change here is not kept');
    await type(second, 'L2', 'of the second tab');
    // Twice as long as a page waits before it keeps a change, by the page's own clock.
    await second.evaluate(() => new Promise((done) => setTimeout(done, 1500)));
    await keeps(page, 'of the first tab');
  });
});

describe('a browser killed while somebody types', () => {
  const [[, sheet]] = pages;
  it('loses nothing older than two seconds, twenty times over', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'bedding-ledger-'));
    let typed: { readonly count: number; readonly at: number }[] = [];
    let killed = 0;
    // A machine too busy to take a key is too busy to store: as long as the slowest entry took is allowed on top.
    let slowest = 0;
    for (let count = 0, round = 0; round <= 20; round++) {
      const { context, kill } = await startKillable(folder);
      const { page } = await openSheet(context, sheet());
      if (round > 0) {
        expect(await notices(page)).toBe('');
        const found = Number((await read(page, 'L2')).split(': ')[1]);
        const due = typed.findLast(({ at }) => at <= killed - 2000 - slowest)?.count ?? 0;
        expect(found, `round ${round}`).toBeGreaterThanOrEqual(due);
      }
      [typed, slowest] = [[], 0];
      await goTo(page, 'L2');
      const began = Date.now();
      // From 2.1 to 4 s of typing, so that the blow falls at another point of the writing each time.
      while (Date.now() - began < 2100 + round * 95) {
        count += 1;
        const from = Date.now();
        await page.keyboard.type(String(count));
        await page.keyboard.press('Enter');
        await drawn(page);
        typed.push({ count, at: Date.now() });
        await page.keyboard.press('ArrowUp');
        await drawn(page);
        slowest = Math.max(slowest, Date.now() - from);
      }
      killed = Date.now();
      await kill();
    }
    await rm(folder, { recursive: true, force: true });
  });
});
