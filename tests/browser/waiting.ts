import type { Page } from 'playwright-core';
import { drawn } from './sheet-page.ts';

/**
 * The pane looks at the sheet a moment after it changed, by a timer. A timer of the page's own that is set later and for longer
 * ends after that one, however busy the machine is; a wait counted outside the page need not.
 */
export async function settled(page: Page): Promise<void> {
  await page.evaluate(() => new Promise((done) => setTimeout(done, 150)));
  await drawn(page);
}

/** Does what puts another workbook into the grid, and waits until that is the one on show. */
export async function untilReplaced(page: Page, act: () => Promise<unknown>): Promise<void> {
  const before = await page.locator('#grid > div').elementHandle();
  await act();
  await page.waitForFunction((old) => !old?.isConnected, before);
  await settled(page);
}
