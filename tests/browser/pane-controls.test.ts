import type { Page } from 'playwright-core';
import { afterEach, beforeAll, describe, expect, inject, it } from 'vitest';
import { onAnswer } from './answer-cells.ts';
import { browser } from './browser.ts';
import { faults, fillIn, newSheet, openPart, press, pressNamed, startBlank, tabTo, text } from './pane-page.ts';
import { goTo, openSheet, read, type Watched } from './sheet-page.ts';
import { settled, untilReplaced } from './waiting.ts';

let sheet: Watched;
let page: Page;

// One page for all of them: each goes on where the one before left it, or begins with a new workbook.
beforeAll(async () => {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  sheet = await openSheet(context, `${inject('site')}/sheet.html`);
  page = sheet.page;
});

afterEach(() => expect(sheet.complaints).toEqual([]));

/** Gives the sheet on show another name, over its tab. */
async function renameInputs(name: string): Promise<void> {
  await goTo(page, 'Inputs!A1');
  await page.locator('.o-sheet-name', { hasText: /^Inputs$/ }).dblclick();
  await page.locator('.o-sheet-name-editable:focus').waitFor();
  await page.keyboard.press('Control+A');
  await page.keyboard.type(name);
  await page.keyboard.press('Enter');
  await page.locator('.o-sheet-name', { hasText: name }).waitFor();
  await settled(page);
}

/** Whether the keyboard is somewhere: on a control, not on the page as a whole. */
const hasFocus = (): Promise<boolean> => page.evaluate(() => document.activeElement !== document.body);

const value = (selector: string): Promise<string> => page.inputValue(selector);

/** Opens the folded group that holds the box. */
const unfold = (box: string): Promise<void> => press(page, `#pane details:has(${box}) > summary`);

describe('each control of the pane that fewer need, by keyboard alone', () => {
  it('starts a blank budget where there is none, after asking', async () => {
    await renameInputs('Old figures');
    await openPart(page, 'survey');
    expect(await text(page)).toContain('This workbook has no Inputs sheet yet');
    expect(await faults(page)).toEqual([]);
    await press(page, '#start-blank');
    await page.keyboard.press('Escape');
    await settled(page);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('start-blank');
    await press(page, '#start-blank');
    await untilReplaced(page, () => press(page, '#asking-yes'));
    expect(await value('#item-cows')).toBe('');
    expect(await hasFocus()).toBe(true);
  });

  it('shows an invented herd where there is no budget, also from the checks', async () => {
    await renameInputs('Old figures');
    await openPart(page, 'checks');
    await press(page, '#start-example');
    await untilReplaced(page, () => press(page, '#asking-yes'));
    await page.locator('#pane .warning').first().waitFor();
    expect(await hasFocus()).toBe(true);
    await openPart(page, 'survey');
    expect(Number(await value('#item-cows'))).toBeGreaterThan(0);
  });

  it('takes a word offered for an argument', async () => {
    await newSheet(page);
    await openPart(page, 'functions');
    await fillIn(page, '#search', 'HYGIENE.COUNT');
    await page.keyboard.press('Shift+Tab');
    await press(page, '#pane .list li:first-child button');
    for (const argument of ['organism', 'state']) {
      await tabTo(page, `#argument-${argument}`);
      await press(page, '#pane .choice');
      expect(await value(`#argument-${argument}`)).toBe(await page.evaluate(() => document.activeElement?.textContent));
    }
    await fillIn(page, '#argument-cfu-per-cm3', '100');
    expect(await text(page)).toMatch(/BEDDING\.HYGIENE\.COUNT\("[^"]+","[^"]+",100\)/);
    await press(page, '#insert');
    expect(await read(page, 'A1')).toMatch(/ A1: [\d.]+/);
  });

  it('chooses from a list in a folded group of the survey', async () => {
    await startBlank(page);
    await openPart(page, 'survey');
    await unfold('#item-bed');
    await tabTo(page, '#item-bed');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    await settled(page);
    expect(await value('#item-bed')).not.toBe('');
  });

  it('takes a date, and another in its place, only when the whole of it is typed', async () => {
    await openPart(page, 'survey');
    await unfold('#item-price-date');
    const said = () => page.locator('#item-price-date-said').textContent();
    const typeDate = async (keys: readonly string[]): Promise<void> => {
      await page.evaluate(() => document.querySelector<HTMLElement>('#pane nav button')?.focus());
      await tabTo(page, '#item-price-date');
      const before = await said();
      for (const key of keys) {
        await page.keyboard.press(key);
        await settled(page);
        expect(await said()).toBe(before);
      }
    };
    await typeDate([...'04302026']);
    await press(page, '#item-price-date');
    expect(await text(page)).toContain('Price date: written to the Inputs sheet.');
    await typeDate([...'05']);
    await tabTo(page, '#item-budget-date');
    expect(await value('#item-price-date')).toBe('2026-05-30');
    await typeDate(['Delete']);
    await tabTo(page, '#item-budget-date');
    expect(await value('#item-price-date')).toBe('2026-05-30');
    await typeDate(['Delete', 'ArrowRight', 'Delete', 'ArrowRight', 'Delete']);
    await tabTo(page, '#item-budget-date');
    await settled(page);
    expect(await said()).toContain('Not given');
  });

  it('takes the reading that a unit needs beside the figure', async () => {
    await openPart(page, 'survey');
    await tabTo(page, '#item-litres-unit');
    await page.keyboard.press('ArrowDown');
    await settled(page);
    await page.keyboard.press('Shift+Tab');
    await fillIn(page, '#item-litres', '2');
    expect(await text(page)).toContain('Fill in the readings with it too');
    await fillIn(page, '#item-litres-aid-0', '12');
    expect(await text(page)).toContain('In the sheet: 24 litres.');
  });

  it('leads to the next figure still needed, and from the number of warnings to the checks', async () => {
    await openPart(page, 'survey');
    await press(page, '#next-missing');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('item-cows');
    await press(page, '#see-checks');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Checks');
    await pressNamed(page, 'Show Inputs!C9 for Cows');
    expect(await page.locator('#spoken').textContent()).toMatch(/^Inputs C\d+/);
  });

  it('puts all readings of one kind into the survey', async () => {
    await openPart(page, 'readings');
    await fillIn(page, '#reading-0-t-h-running', '4.5');
    await pressNamed(page, 'Put these readings into the survey');
    await openPart(page, 'survey');
    expect(await value('#item-press-t-h')).toBe('4.5');
  });

  it('fills several figures in one step, which one Ctrl+Z takes back and Ctrl+Y gives again', async () => {
    await startBlank(page);
    const figures = { 'press-t-h': '4.5', 'minutes-on': '20', 'minutes-off': '40' };
    await openPart(page, 'readings');
    await fillIn(page, '#reading-0-t-h-running', figures['press-t-h']);
    await fillIn(page, '#reading-0-minutes-on', figures['minutes-on']);
    await fillIn(page, '#reading-0-minutes-off', figures['minutes-off']);
    await pressNamed(page, 'Put these readings into the survey');
    await openPart(page, 'survey');
    const held = (): Promise<string[]> => Promise.all(Object.keys(figures).map((id) => value(`#item-${id}`)));
    expect(await held()).toEqual(Object.values(figures));
    await goTo(page, 'Inputs!A1');
    await page.keyboard.press('Control+Z');
    await expect.poll(held).toEqual(['', '', '']);
    await page.keyboard.press('Control+Y');
    await expect.poll(held).toEqual(Object.values(figures));
  });

  it('lays the explanation out, selected, where the browser lets no page copy', async () => {
    await page.evaluate(() => {
      navigator.clipboard.writeText = () => Promise.reject(new Error('not allowed'));
    });
    await goTo(page, onAnswer('Cover of demand'));
    await openPart(page, 'explain');
    await press(page, '#copy');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('explanation-text');
    expect(await page.evaluate(() => getSelection()?.toString())).toContain('BUDGET.HERD');
    expect(await faults(page)).toEqual([]);
  });
});
