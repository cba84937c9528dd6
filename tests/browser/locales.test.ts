import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { inputRow } from '../../src/workbook/sheets/inputs.ts';
import { browser } from './browser.ts';
import { fillIn, openPart, press, startBlank, text } from './pane-page.ts';
import { goTo, openSheet, pages, read, tooltip, type, type Watched } from './sheet-page.ts';

let sheet: Watched;
let page: Page;

afterEach(() => expect(sheet.complaints).toEqual([]));

/** Narrow and ordinary spaces are one to a reader. */
const plain = (words: string): string => words.replace(/[\u00a0\u202f]/g, ' ');

const help = async (call: string): Promise<string> => {
  await goTo(page, 'L3');
  await page.keyboard.type('=');
  await page.keyboard.insertText(call);
  const shown = page.locator('.o-formula-assistant');
  await expect.poll(() => shown.textContent()).toContain(call.replace('(', ' ('));
  const words = (await shown.textContent()) ?? '';
  await page.keyboard.press('Escape');
  await page.keyboard.press('Escape');
  return plain(words);
};

const million = { de_DE: '1.000.000', fr_FR: '1 000 000' } as const;

beforeAll(async () => {
  const [[, served]] = pages;
  sheet = await openSheet(await browser.newContext({ viewport: { width: 1400, height: 900 } }), served());
  page = sheet.page;
});
afterAll(() => page.context().close());

describe.each(['de_DE', 'fr_FR'] as const)('the sheet in %s', (code) => {
  // One page for all, in both locales: each test goes on where the one before left it.
  beforeEach(async () => {
    await goTo(page, 'Answer!L2');
    await page.locator('#locale').selectOption(code);
  });

  it('says its refusals, argument help and table words in the numbers of the locale, and in English again after', async () => {
    await type(page, 'L2', '=BEDDING.DEMAND.HERD(0,5;2)');
    const refusal = `cubicles (cubicles): 0,5 is below 1; enter a number from 1 to ${million[code]}`;
    expect(plain(await read(page, 'L2'))).toContain(refusal);
    expect(plain(await tooltip(page))).toContain(refusal);
    expect(await help('BEDDING.MATERIAL.DRIEDDENSITY(')).toMatch(/a number from 0,05 to 1.*a number from 0 to 0,5\. Left out: 0,1/);
    await type(page, 'L4', '=INDEX(BEDDING.WORKING("DRYING.HOTWATER";100;80;60);7;2)');
    expect(await read(page, 'L4')).toContain('* 4,186 * (flow_c - return_c)');
    // What a user named is quoted as it was named.
    await type(page, 'L5', '="Shed 2.5"');
    await type(page, 'L6', '=BEDDING.DEMAND.HERD(L5;2)');
    expect(await read(page, 'L6')).toContain('cubicles (cubicles): "Shed 2.5" is text, not a number');
    await page.locator('#locale').selectOption('en_GB');
    expect(await read(page, 'L2')).toMatch(/ 0\.5 is below 1; enter a number from 1 to 1,000,000$/);
    expect(await help('BEDDING.MATERIAL.DRIEDDENSITY(')).toMatch(/a number from 0\.05 to 1.*a number from 0 to 0\.5\. Left out: 0\.1/);
  });

  it('shows the panel’s formula as it is typed here, takes a decimal comma in its boxes, and says why in the same numbers', async () => {
    await openPart(page, 'functions');
    // The one looked at in the locale before is still on show.
    if (await page.locator('#all-functions').isVisible()) await press(page, '#all-functions');
    await fillIn(page, '#search', 'PLANT.CHIMNEYSPEED');
    await page.keyboard.press('Shift+Tab');
    await press(page, '#pane .list li:first-child button');
    await fillIn(page, '#argument-m3-h', '3000,5');
    await fillIn(page, '#argument-diameter-m', '0,4');
    const formula = (await page.locator('#formula').textContent()) ?? '';
    expect(formula).toBe('=BEDDING.PLANT.CHIMNEYSPEED(3000,5;0,4)');
    expect(await page.locator('#result').textContent()).toMatch(/6,63\d? m\/s/);
    await type(page, 'L2', formula);
    expect(await read(page, 'L2')).toMatch(/ L2: 6,63/);
    expect(plain(await text(page))).toContain(`from 0 to ${million[code]}`);
    await openPart(page, 'functions');
    await fillIn(page, '#argument-diameter-m', '0,001');
    expect(await text(page)).toContain('diameter_m (m): 0,001 is below 0,01; enter a number from 0,01 to 20');
  });

  it('takes a decimal comma in the survey as the number it is', async () => {
    await startBlank(page);
    await openPart(page, 'survey');
    await fillIn(page, '#item-press-t-h', '4,5');
    await openPart(page, 'survey');
    expect(await page.inputValue('#item-press-t-h')).toBe('4,5');
    await fillIn(page, '#item-press-t-h', '0,05');
    expect(await text(page)).toContain('0,05 is below 0,1; enter a number from 0,1 to 200');
    expect(await read(page, `Inputs!C${inputRow('Press t per hour running')}`)).toMatch(/: 4,50?$/);
  });
});
