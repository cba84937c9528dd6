import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, inject, it } from 'vitest';
import { onAnswer } from '../browser/answer-cells.ts';
import { launch } from '../browser/launch.ts';
import { enterPane, openPart } from '../browser/pane-page.ts';
import { goTo, openSheet } from '../browser/sheet-page.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser.close());

async function pageOf(width: number, height: number): Promise<Page> {
  const context = await browser.newContext({ viewport: { width, height } });
  return (await openSheet(context, `${inject('site')}/sheet.html`)).page;
}

it('takes Answer, with the panel away', async () => {
  const page = await pageOf(1100, 940);
  if (await page.locator('#pane').isVisible()) await page.getByRole('button', { name: 'Panel' }).click();
  await goTo(page, 'Answer!A1');
  await page.screenshot({ path: 'tests/pictures/answer.png' });
});

it('takes the panel, explaining a figure', async () => {
  const page = await pageOf(1300, 760);
  await goTo(page, onAnswer('Saving'));
  await enterPane(page);
  await openPart(page, 'explain');
  await page.locator('#pane').screenshot({ path: 'tests/pictures/panel.png' });
});
