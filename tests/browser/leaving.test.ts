import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { browser } from './browser.ts';
import { keepSmall } from './kept-store.ts';
import { startKillable } from './killable.ts';
import { openSheet, read, ready, type } from './sheet-page.ts';

/** `npm run soak` asks for forty of each. */
const rounds = process.env['SOAK_STEPS'] ? 40 : 3;

/** From at once to two seconds after the entry, so that the end falls at another point of the writing each time. */
const after = (round: number): number => (2000 * round) / Math.max(1, rounds - 1);
const pause = (milliseconds: number): Promise<unknown> => new Promise((end) => setTimeout(end, milliseconds));

const notices = async (page: Page): Promise<string> => (await page.locator('#notices').textContent()) ?? '';
const sheet = (): string => `${inject('site')}/sheet.html`;
const found = async (page: Page): Promise<string> => (await read(page, 'L2')).split(': ')[1] ?? '';

async function opened(context: BrowserContext): Promise<Page> {
  const { page } = await openSheet(context, sheet());
  expect(await notices(page)).toBe('');
  return page;
}

/** Several entries one upon the other, the last of them just done. */
async function enter(page: Page, round: number): Promise<string> {
  const last = `entry ${round}`;
  for (const [place, word] of [
    ['L1', 'before'],
    ['Inputs!C9', String(100 + round)],
    ['Answer!L2', last],
  ] as const)
    await type(page, place, word);
  return last;
}

it(`a browser killed as by a power cut, ${rounds} times, loses nothing that was entered`, { timeout: 7_200_000, retry: 0 }, async () => {
  const folder = await mkdtemp(join(tmpdir(), 'bedding-ledger-'));
  let [last, lost] = ['', 0];
  for (let round = 0; round <= rounds; round++) {
    const { context, kill } = await startKillable(folder);
    const page = await opened(context);
    if (round > 0 && (await found(page)) !== last) lost++;
    if (round > 0) expect(await read(page, 'Inputs!C9')).toContain(`C9: ${99 + round}`);
    if (round < rounds) {
      last = await enter(page, round);
      await pause(after(round));
    }
    await kill();
  }
  console.log(`lost ${lost} of ${rounds} entries to kills`);
  expect(lost).toBe(0);
  await rm(folder, { recursive: true, force: true });
});

it(`a page closed or loaded anew, ${rounds} times, loses nothing that was entered and asks nothing`, {
  timeout: 7_200_000,
  retry: 0,
}, async () => {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  const before = await context.newPage();
  await keepSmall(before, sheet());
  await before.close();
  let page = await opened(context);
  let lost = 0;
  for (let round = 0; round < rounds; round++) {
    const last = await enter(page, round);
    await pause(after(round));
    if (round % 2 === 0) {
      await page.reload();
      await ready(page);
    } else {
      await page.close({ runBeforeUnload: true });
      page = await opened(context);
    }
    if ((await found(page)) !== last) lost++;
  }
  console.log(`lost ${lost} of ${rounds} entries to leaving`);
  expect(lost).toBe(0);
  await context.close();
});
