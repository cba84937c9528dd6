import type { BrowserContext, Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { browser } from './browser.ts';
import { budgets, copyKept, elsewhere, keepSmall, keepsWhole, smallCopy, store, stored } from './kept-store.ts';
import { drawn, goTo, openSheet, pages, read, ready, type } from './sheet-page.ts';
import { untilReplaced } from './waiting.ts';

const notices = async (page: Page): Promise<string> => (await page.locator('#notices').textContent()) ?? '';
const says = (page: Page, words: string | RegExp): Promise<unknown> => expect.poll(() => notices(page), { timeout: 60_000 }).toMatch(words);
const served = (): string => `${inject('site')}/sheet.html`;

async function reopened(page: Page, sheet = served()): Promise<void> {
  await page.goto(sheet);
  await ready(page);
}

/** Leaves, changes the store, and comes back. */
async function meanwhile(page: Page, sheet: string, change: () => Promise<unknown>): Promise<void> {
  await page.goto(elsewhere(sheet));
  await change();
  await reopened(page, sheet);
}

async function startNew(page: Page): Promise<void> {
  await page.locator('#new').click();
  await untilReplaced(page, () => page.locator('#asking-yes').click());
}

async function shelf(page: Page): Promise<readonly string[]> {
  await page.locator('#budgets').click();
  await page.locator('#budgets-list li').first().waitFor();
  const titles = await page.locator('#budgets-list h3').allTextContents();
  return titles;
}

const press = (page: Page, label: string): Promise<void> => page.getByRole('button', { name: label, exact: true }).click();

let context: BrowserContext;
let page: Page;
beforeEach(async () => {
  context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
});
afterEach(() => context.close());

/** With a new budget, as on the first day. */
const open = async (sheet = served()): Promise<Page> => {
  page = (await openSheet(context, sheet)).page;
  return page;
};

/** With a small budget that was kept before. */
const openSmall = async (sheet = served(), copies: Readonly<Record<string, object>> = {}): Promise<Page> => {
  page = await context.newPage();
  await keepSmall(page, sheet, copies);
  await reopened(page, sheet);
  return page;
};

describe.each(pages)('what is kept in the browser, %s', (_, address) => {
  it('is there again after the page is closed and opened, and the copy before it where the last one is damaged', async () => {
    await openSmall(address());
    await type(page, 'L2', 'the first copy');
    await expect.poll(() => page.locator('#kept').textContent()).toContain('Kept at');
    await keepsWhole(page, 'the first copy');
    await type(page, 'L2', 'the second copy');
    await keepsWhole(page, 'the second copy');
    await page.reload();
    await ready(page);
    expect(await notices(page)).toBe('');
    expect(await read(page, 'L2')).toContain('L2: the second copy');
    const [{ id } = { id: '' }] = await budgets(page);
    await meanwhile(page, address(), () => store(page, `copy/${id}/now`, { json: '{"version":"19.3.2","she', at: 1, tool: '0.1.0' }));
    await says(page, /damaged and could not be opened; the copy kept before it, at \d+:\d\d.*, is open instead/);
    expect(await read(page, 'L2')).toContain('L2: the first copy');
    expect(await copyKept(page, id, 'aside-1')).toBe('{"version":"19.3.2","she');
  });

  it('was kept before there was a shelf: it opens, and stands on the shelf', async () => {
    const keptBy = (words: string): string => smallCopy.replace('Larch Bank (invented)', words);
    page = await context.newPage();
    await page.goto(elsewhere(address()));
    await store(page, 'current', { json: keptBy('an older page'), at: 1_790_000_000_000 });
    await store(page, 'previous', { json: keptBy('the copy before'), at: 1_780_000_000_000 });
    await store(page, 'damaged', { json: '{}', at: 1_770_000_000_000 });
    await reopened(page, address());
    expect(await read(page, 'B2')).toContain('B2: an older page');
    const keys = (await stored(page)).map(([key]) => key);
    expect(keys.filter((key) => ['current', 'previous', 'damaged'].includes(key))).toEqual([]);
    expect(keys.filter((key) => key.includes('/before') || key.includes('/aside-1770000000000'))).toHaveLength(2);
  });
});

describe('several budgets', () => {
  it('are kept apart, and what Open and New put away is on the shelf', async () => {
    await openSmall();
    for (const herd of [0, 1, 2]) {
      if (herd > 0) await startNew(page);
      await type(page, 'Inputs!C5', `Herd ${herd}`);
      await type(page, 'Inputs!C9', String(100 + herd));
    }
    expect([...(await shelf(page))].sort()).toEqual(['Herd 0', 'Herd 1', 'Herd 2']);
    for (const herd of [1, 0]) {
      await untilReplaced(page, () => press(page, `Open: Herd ${herd}`));
      expect(await read(page, 'Inputs!C9')).toContain(`C9: ${100 + herd}`);
      await type(page, 'Inputs!C10', String(50 + herd));
      await shelf(page);
    }
    await untilReplaced(page, () => press(page, 'Open: Herd 1'));
    expect(await read(page, 'Inputs!C10')).toContain('C10: 51');
    await page.reload();
    await ready(page);
    expect(await read(page, 'Inputs!C9')).toContain('C9: 101');
  });

  it('are renamed, copied, and deleted after asking; an older copy opens as a budget of its own', async () => {
    await openSmall();
    await type(page, 'Inputs!C5', 'Long Lane');
    await keepsWhole(page, 'Long Lane');
    await type(page, 'Answer!L2', 'later words');
    await shelf(page);
    await press(page, 'Rename: Long Lane');
    await page.locator('[name="name"]').fill('The spring plan');
    await page.keyboard.press('Enter');
    await press(page, 'Copy: The spring plan');
    await expect.poll(() => page.locator('#budgets-list h3').allTextContents()).toEqual(['The spring plan (copy)', 'The spring plan']);
    await page.locator('summary:has-text("Older copies")').last().click();
    await untilReplaced(page, () => page.locator('#budgets-list details button').first().click());
    expect(await read(page, 'L2')).toContain('L2: blank');
    await type(page, 'L2', 'went on from there');
    expect((await shelf(page))[0]).toMatch(/^The spring plan, as of /);
    await untilReplaced(page, () => press(page, 'Open: The spring plan (copy)'));
    expect(await read(page, 'L2')).toContain('L2: later words');
    await shelf(page);
    await press(page, 'Delete: The spring plan');
    await page.locator('#asking-no').click();
    expect(await page.locator('#budgets-list h3').count()).toBe(3);
    await press(page, 'Delete: The spring plan');
    await page.locator('#asking-yes').click();
    await expect.poll(() => page.locator('#budgets-list h3').allTextContents()).not.toContain('The spring plan');
    expect((await budgets(page)).length).toBe(2);
  });

  it('of the one file in another folder are not written over: there the list is shown first', async () => {
    await openSmall();
    await type(page, 'L2', 'of the first folder');
    await page.close();
    await open(`${inject('site')}/bedding-ledger.html`);
    await page.locator('#budgets-page[open]').waitFor();
    expect(await page.locator('#budgets-list h3').count()).toBe(1);
    await page.keyboard.press('Escape');
    await type(page, 'L2', 'of the second folder');
    await reopened(page, served());
    expect(await read(page, 'L2')).toContain('L2: of the first folder');
    await reopened(page, `${inject('site')}/bedding-ledger.html`);
    expect(await read(page, 'L2')).toContain('L2: of the second folder');
  });
});

describe('a second tab', () => {
  it('says that it does not keep, cannot be silenced, and goes on where the first left off once that is closed', async () => {
    const first = await openSmall();
    await type(first, 'L2', 'of the first tab');
    const second = (await openSheet(context, served())).page;
    await says(second, 'open in another tab or window, which keeps it. What you change here is not kept until that one is closed');
    expect(await second.locator('#notices button').allTextContents()).toEqual(['Keep this as a budget of its own']);
    await type(first, 'L2', 'typed since');
    await first.close();
    await expect.poll(() => notices(second), { timeout: 60_000 }).toBe('');
    await expect.poll(() => read(second, 'L2'), { timeout: 60_000 }).toContain('L2: typed since');
    await type(second, 'L2', 'of the second tab');
    await second.reload();
    await ready(second);
    expect(await read(second, 'L2')).toContain('L2: of the second tab');
  });

  it('keeps what was changed in it as a budget of its own when the first is closed', async () => {
    const first = await openSmall();
    await type(first, 'L2', 'of the first tab');
    const second = (await openSheet(context, served())).page;
    await says(second, 'open in another tab');
    await type(second, 'L2', 'of the second tab');
    await first.close();
    await says(second, 'What you changed here is kept as “Larch Bank (invented) (second tab)”');
    expect(await read(second, 'L2')).toContain('L2: of the second tab');
    expect([...(await shelf(second))].sort()).toEqual(['Larch Bank (invented)', 'Larch Bank (invented) (second tab)']);
    await untilReplaced(second, () => press(second, 'Open: Larch Bank (invented)'));
    expect(await read(second, 'L2')).toContain('L2: of the first tab');
  });
});

describe('unreadable is not damaged', () => {
  it.each([
    ['a later version of this page', { tool: '9.0.0' }, 'kept by a later version of this page, 9.0.0; open it there'],
    ['a later layout', { json: '{"version":"99.1","sheets":"as they are then"}' }, 'saved by a later version of this page'],
  ])('what %s kept is left as it is, said so, and can be saved', async (_, difference, words) => {
    await openSmall(served(), { now: difference, before: {}, began: {} });
    await says(page, words);
    expect(await notices(page)).not.toContain('damaged');
    expect(await read(page, 'Inputs!C9')).not.toContain('C9: 240');
    await type(page, 'Answer!L2', 'typed meanwhile');
    await keepsWhole(page, 'typed meanwhile');
    expect(await copyKept(page, 'small')).toBe('json' in difference ? difference.json : smallCopy);
    expect(await page.locator('#notices button').first().textContent()).toBe('Save its last copy as a file');
  });

  it('a read that fails twice is tried a third time', async () => {
    await openSmall();
    await type(page, 'L2', 'still there');
    await context.addInitScript(() => {
      let failures = 2;
      const get = IDBObjectStore.prototype.getAllKeys;
      IDBObjectStore.prototype.getAllKeys = function (...given) {
        if (failures-- > 0) throw new DOMException('Failed to read large IndexedDB value', 'UnknownError');
        return get.apply(this, given);
      };
    });
    await page.reload();
    await ready(page);
    expect(await notices(page)).toBe('');
    expect(await read(page, 'L2')).toContain('L2: still there');
  });

  it('a store that does not answer leaves a sheet that says so, and is opened when it answers', async () => {
    await openSmall();
    await type(page, 'L2', 'still there');
    await context.addInitScript(() => {
      const open = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (...given) {
        const real = open.apply(this, given);
        const late = { real } as unknown as IDBOpenDBRequest & { real: IDBOpenDBRequest };
        Object.assign(window, {
          answer: () => {
            Object.defineProperty(late, 'result', { get: () => real.result });
            late.onsuccess?.(new Event('success'));
          },
        });
        return late;
      };
    });
    await page.reload();
    await ready(page);
    await says(page, 'storage of this browser does not answer. What you change here is not kept');
    expect(await read(page, 'L2')).toContain('L2: blank');
    await untilReplaced(page, () => page.evaluate(() => (window as unknown as { answer: () => void }).answer()));
    expect(await notices(page)).toBe('');
    expect(await read(page, 'L2')).toContain('L2: still there');
  });
});

describe('where nothing can be kept, the sheet opens and says so', () => {
  it.each([
    [
      'site data is blocked',
      () => {
        const refuse = {
          get: () => {
            throw new DOMException('Access is denied', 'SecurityError');
          },
        };
        Object.defineProperty(window, 'indexedDB', refuse);
        Object.defineProperty(window, 'localStorage', refuse);
        LockManager.prototype.request = () => Promise.reject(new DOMException('Access is denied', 'SecurityError'));
        LockManager.prototype.query = () => Promise.reject(new DOMException('Access is denied', 'SecurityError'));
      },
      'its site data is blocked, full or could not be read',
    ],
    [
      'the page came by plain http',
      () => Reflect.deleteProperty(Navigator.prototype, 'locks'),
      'came over a connection without encryption',
    ],
  ])('%s', async (_, deprive, words) => {
    await context.addInitScript(deprive);
    await open();
    await says(page, words);
    expect(await notices(page)).toContain('What you change here is not kept: save a copy before you close this page.');
    await type(page, 'L2', 'works all the same');
    expect(await read(page, 'L2')).toContain('L2: works all the same');
    expect(await page.locator('#notices button:has-text("Close")').count()).toBe(0);
  });
});

describe('leaving', () => {
  it('asks while a cell is half typed, and not once it is entered', async () => {
    await openSmall();
    const asked: string[] = [];
    page.on('dialog', (dialog) => {
      asked.push(dialog.type());
      void dialog.dismiss();
    });
    await goTo(page, 'L2');
    await page.keyboard.type('half typ');
    await page.evaluate(() => location.reload()).catch(() => undefined);
    await expect.poll(() => asked).toEqual(['beforeunload']);
    await page.keyboard.type('ed');
    await page.keyboard.press('Enter');
    await drawn(page);
    await page.reload();
    await ready(page);
    expect(asked).toHaveLength(1);
    expect(await read(page, 'L2')).toContain('L2: half typed');
  });

  it('is there again with a formula longer than the page opens, which it keeps as text and says so', async () => {
    await openSmall();
    await goTo(page, 'L2');
    await page.keyboard.type('=');
    await page.keyboard.insertText(`SUM(1${',1'.repeat(4100)})`);
    await page.keyboard.press('Enter');
    expect(await notices(page)).toContain('A formula of more than 8,192 characters is kept as text');
    await drawn(page);
    await page.reload();
    await ready(page);
    expect(await notices(page)).toBe('');
    expect(await read(page, 'L2')).toContain('L2: =SUM(1,1,1');
  });
});
