import { readFileSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import { unzipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { browser } from './browser.ts';
import { drawn, openSheet } from './sheet-page.ts';

const desk = { width: 1400, height: 900 };
const atEase = { forcedColors: 'none', reducedMotion: 'no-preference', colorScheme: 'light' } as const;

let page: Page;

// One page for all, as its user changes the settings.
beforeAll(async () => {
  page = (await openSheet(await browser.newContext(), `${inject('site')}/sheet.html`)).page;
});
beforeEach(async () => {
  await page.emulateMedia(atEase);
  await page.setViewportSize(desk);
  await drawn(page);
});
afterAll(() => page.context().close());

/** All of the page but the grid, which is a library's: its own remedy is the sentence spoken beside it. */
async function faults(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).exclude('#grid').options({ preload: false }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' ')}`);
}

/** Buttons and panel that a user could not bring into view. */
const outOfReach = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('#top :is(button, select)')]
      .filter((one) => one.checkVisibility())
      .filter((one) => {
        one.scrollIntoView();
        const { left, right, top, bottom } = one.getBoundingClientRect();
        return left < 0 || right > window.innerWidth + 1 || top < 0 || bottom > window.innerHeight + 1;
      })
      .map(({ id }) => id),
  );

describe('the sheet for everybody', () => {
  it('has no fault that axe finds, outside the grid, in any of these settings', async () => {
    for (const [media, size] of [
      [{}, desk],
      [{}, { width: 700, height: 450 }],
      [{ forcedColors: 'active' }, desk],
      [{ reducedMotion: 'reduce' }, desk],
      [{ colorScheme: 'dark' }, desk],
    ] as const) {
      await page.emulateMedia({ ...atEase, ...media });
      await page.setViewportSize(size);
      await drawn(page);
      expect(await faults(page), JSON.stringify([media, size])).toEqual([]);
    }
  });

  it('at 200 % zoom keeps every button, the panel and room for the grid within reach', async () => {
    // 1400 by 900 at 200 %: half as many CSS pixels, each twice as large.
    await page.setViewportSize({ width: 700, height: 450 });
    await drawn(page);
    expect(await outOfReach(page)).toEqual([]);
    expect((await page.locator('#grid').boundingBox())?.height).toBeGreaterThan(120);
    await page.locator('#pane-toggle').click();
    expect(await page.locator('#pane').isVisible()).toBe(true);
  });

  it('moves nothing of its own where less motion is asked for', async () => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    const moving = await page.evaluate(
      () =>
        [...document.querySelectorAll('#top *, #notices *, #pane, #pane *, dialog, dialog *')].filter((one) => {
          const { transitionDuration, animationName } = getComputedStyle(one);
          return animationName !== 'none' || transitionDuration.split(',').some((time) => Number.parseFloat(time) > 0);
        }).length,
    );
    expect(moving).toBe(0);
  });

  it('shows in forced colours where the focus is, by an outline that the system colours', async () => {
    await page.emulateMedia({ forcedColors: 'active' });
    await page.locator('#new').focus();
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => getComputedStyle(document.activeElement as Element).outlineStyle)).not.toBe('none');
  });

  it('gives its figures as a spreadsheet file to somebody with a keyboard only', async () => {
    for (let k = 0; k < 3 && !(await page.evaluate(() => document.activeElement?.closest('#actions'))); k++)
      await page.keyboard.press('F6');
    for (let k = 0; k < 10 && (await page.evaluate(() => document.activeElement?.id)) !== 'export'; k++) await page.keyboard.press('Tab');
    const saving = page.waitForEvent('download');
    await page.keyboard.press('Enter');
    const parts = unzipSync(readFileSync(await (await saving).path()));
    expect(Object.keys(parts)).toContain('xl/workbook.xml');
  });
});
