import { expect, inject, it } from 'vitest';
import { browser } from './browser.ts';
import { goTo, openSheet } from './sheet-page.ts';

/** Pictures for people to look at, in .build/screenshots; what can be measured of them is measured here. */
it.each([
  ['a desk', 1400, 900],
  ['a telephone', 390, 844],
])('fits %s: nothing runs over its edge, and the grid has room', async (_, width, height) => {
  const context = await browser.newContext({ viewport: { width, height } });
  const { page, complaints } = await openSheet(context, `${inject('site')}/sheet.html`);
  for (const sheet of ['Answer', 'Inputs']) {
    await goTo(page, `${sheet}!A1`);
    await page.screenshot({ path: `.build/screenshots/${sheet.toLowerCase()}-${width}.png` });
  }
  await goTo(page, 'Inputs!C9');
  expect(await page.evaluate(() => document.querySelector('.o-scrollbar.horizontal')?.scrollLeft)).toBe(0);
  const seen = await page.evaluate(() => ({
    over: document.documentElement.scrollWidth - window.innerWidth,
    grid: document.querySelector('.o-grid-overlay')?.getBoundingClientRect().toJSON() as DOMRect,
    panel: !document.querySelector<HTMLElement>('#pane')?.hidden,
  }));
  expect(seen.over).toBe(0);
  expect(seen.grid.width).toBeGreaterThan(300);
  expect(seen.grid.height).toBeGreaterThan(400);
  expect(seen.panel).toBe(width > 900);
  await page.locator('#pane-toggle').click();
  expect(await page.locator('#pane').isVisible()).toBe(width < 900);
  await page.screenshot({ path: `.build/screenshots/panel-turned-${width}.png` });
  await page.locator('#about').click();
  await page.screenshot({ path: `.build/screenshots/about-${width}.png` });
  expect(complaints).toEqual([]);
  await context.close();
});
