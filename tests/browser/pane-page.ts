import AxeBuilder from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { settled, untilReplaced } from './waiting.ts';

const inPane = '#pane:focus-within';

/** Goes to the pane as a keyboard does: F6 until it has the focus. */
export async function enterPane(page: Page): Promise<void> {
  for (let presses = 0; presses < 3 && (await page.locator(inPane).count()) === 0; presses++) await page.keyboard.press('F6');
  expect(await page.locator(inPane).count()).toBe(1);
}

/** Tabs on to the control that the selector names, within the pane. */
export async function tabTo(page: Page, selector: string): Promise<void> {
  for (let presses = 0; presses < 400; presses++) {
    if (await page.evaluate((wanted) => document.activeElement?.matches(wanted) ?? false, selector)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab never came to ${selector}`);
}

/** A new workbook with nothing filled in. */
export const startBlank = (page: Page): Promise<void> =>
  untilReplaced(page, async () => {
    await page.click('#new');
    await page.keyboard.press('Enter');
  });

/** Adds a sheet with nothing on it and goes there. */
export async function newSheet(page: Page): Promise<void> {
  await page.click('.o-add-sheet');
  await expect.poll(() => page.locator('#spoken').textContent()).toMatch(/^Sheet\d+ A1/);
  await settled(page);
}

export async function openPart(page: Page, part: string): Promise<void> {
  await enterPane(page);
  await page.evaluate(() => document.querySelector<HTMLElement>('#pane nav button')?.focus());
  await tabTo(page, `#part-${part}`);
  await page.keyboard.press('Enter');
  await settled(page);
}

/** Types over what the box holds and leaves it, as Tab does. */
export async function fillIn(page: Page, selector: string, text: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
  await page.keyboard.press('Tab');
  await settled(page);
}

export async function press(page: Page, selector: string): Promise<void> {
  await tabTo(page, selector);
  await page.keyboard.press('Enter');
  await settled(page);
}

/** Presses the control of the pane whose words begin so. */
export async function pressNamed(page: Page, words: string): Promise<void> {
  const id = 'named-by-the-test';
  await page.evaluate(
    ([begin, mark]) => {
      const all = [...document.querySelectorAll<HTMLElement>('#pane button')];
      all.find((one) => one.textContent?.replace(/\s+/g, ' ').trim().startsWith(begin))?.setAttribute('data-test', mark);
    },
    [words, id] as const,
  );
  await press(page, `[data-test="${id}"]`);
  await page.evaluate((mark) => document.querySelector(`[data-test="${mark}"]`)?.removeAttribute('data-test'), id);
}

/** What the pane's dialog asks. */
export const asked = async (page: Page): Promise<string> => (await page.locator('#pane dialog[open] p').textContent()) ?? '';

export const text = async (page: Page): Promise<string> => ((await page.locator('#pane').textContent()) ?? '').replace(/\s+/g, ' ');

/** What axe finds wrong in the pane, in a line each. It may not fetch the page's style sheets: the page's policy forbids it. */
export async function faults(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).include('#pane').options({ preload: false }).analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join(' | ')}`);
}

/** Every control on show that Tab must be able to reach. */
export const controls = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const all = [...document.querySelectorAll<HTMLElement>('#pane :is(button, input, select, textarea, summary, [tabindex="0"])')];
    return all.filter((control) => control.checkVisibility() && !control.closest('dialog')).length;
  });

/** Tabs from the first control of the pane until the focus leaves it; how many different ones had a visible focus. */
export async function walk(page: Page): Promise<number> {
  await page.evaluate(() => document.querySelector<HTMLElement>('#pane nav button')?.focus());
  let reached = 0;
  for (; reached < 500; reached++) {
    const outlined = await page.evaluate(() => {
      const active = document.activeElement;
      return active?.closest('#pane') ? getComputedStyle(active).outlineStyle !== 'none' : undefined;
    });
    if (outlined === undefined) break;
    // Focus set by script shows no outline on the first one until a key is pressed.
    if (reached > 0) expect(outlined).toBe(true);
    await page.keyboard.press('Tab');
  }
  return reached;
}
