import { mkdirSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach, describe, expect, inject, it } from 'vitest';
import { enough } from '../surfaces/fake-spreadsheet.ts';
import { onAnswer } from './answer-cells.ts';
import { browser } from './browser.ts';
import { asked, controls, faults, fillIn, newSheet, openPart, press, pressNamed, startBlank, tabTo, text, walk } from './pane-page.ts';
import { goTo, openSheet, read, type, type Watched } from './sheet-page.ts';
import { settled } from './waiting.ts';

const parts = ['survey', 'readings', 'functions', 'explain', 'checks', 'cautions'] as const;
const shots = '.build/screenshots';

const desk = { width: 1400, height: 900 };

let page: Page;

/** Two pages for all, as it takes longer to open one than to do any of this in it: each test goes on where the one before left it. */
const opened = new Map<'example' | 'blank', Watched>();
async function on(kind: 'example' | 'blank'): Promise<Page> {
  const known = opened.get(kind);
  if (known) return known.page;
  const context = await browser.newContext({ viewport: desk });
  const sheet = await openSheet(context, `${inject('site')}/sheet.html`);
  opened.set(kind, sheet);
  return sheet.page;
}

/** The page on which nothing is filled in yet. */
async function onBlank(): Promise<void> {
  page = await on('blank');
  await startBlank(page);
}

beforeEach(async () => {
  page = await on('example');
  await page.setViewportSize(desk);
});
afterEach(() => {
  for (const { complaints } of opened.values()) expect(complaints).toEqual([]);
});
afterAll(async () => {
  for (const sheet of opened.values()) await sheet.page.context().close();
});

/** The boxes of a blank budget's required items, by item. */
const boxes: Readonly<Record<string, string>> = {
  Cows: 'cows',
  Cubicles: 'cubicles',
  'Bedding litres per cubicle each time': 'litres',
  'Days between beddings': 'interval-days',
  'Bought price per t': 'bought-price-per-t',
  'Slurry dry matter': 'slurry-dm',
  'Press t per hour running': 'press-t-h',
  'Dried to dry matter': 'target-dm',
  'Air m3 per hour': 'air-m3-h',
  'Hot water temperature': 'water-c',
  'Hot water litres per hour': 'water-l-h',
  'Kit cost': 'kit-cost',
  'Power price per kWh': 'power-price',
  'Heat price per kWh': 'heat-price',
  'Labour hours a week with kit': 'labour-h-week-kit',
  'Labour rate': 'labour-rate',
  'Cost per mastitis case': 'cost-per-case',
};
const perCent = new Set(['Slurry dry matter', 'Dried to dry matter']);

describe('the pane beside the embedded sheet, by keyboard alone', () => {
  it('leads from a blank workbook to an answer in fewer than thirty typed values', async () => {
    await onBlank();
    await openPart(page, 'survey');
    expect(await text(page)).toContain('figures are still needed');
    await fillIn(page, '#item-cows', 'many');
    expect(await faults(page)).toEqual([]);
    await page.keyboard.press('Shift+Tab');
    let typed = 0;
    for (const [item, box] of Object.entries(boxes)) {
      const value = Number(enough[item]);
      await fillIn(page, `#item-${box}`, String(perCent.has(item) ? value * 100 : value));
      typed++;
    }
    expect(typed).toBeLessThan(30);
    expect(await text(page)).toMatch(/Cover of demand [\d.]+ times · Saving [\d,−-]+ per year/);
    await press(page, '#whole-answer summary');
    expect(await text(page)).toMatch(/Hygiene score, fibre \d+ , span \d+–\d+.*Planning aid, no diagnosis: talk to your vet\./);
    expect(await read(page, 'Answer!A3')).toContain('Every input needed is given');
  });

  it('writes in the unit of the sheet what is typed in another', async () => {
    await onBlank();
    await openPart(page, 'survey');
    await tabTo(page, '#item-interval-days-unit');
    await page.keyboard.press('ArrowDown');
    await settled(page);
    await page.keyboard.press('Shift+Tab');
    await fillIn(page, '#item-interval-days', '3.5');
    expect(await text(page)).toContain('In the sheet: 2 days.');
  });

  it('asks before it covers what was typed into the sheet, and Escape keeps it', async () => {
    await openPart(page, 'survey');
    const before = await page.inputValue('#item-cows');
    await fillIn(page, '#item-cows', '999');
    expect(await asked(page)).toContain('put 999 cows in its place?');
    expect(await faults(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await settled(page);
    expect(await page.inputValue('#item-cows')).toBe(before);
    await page.keyboard.press('Shift+Tab');
    await fillIn(page, '#item-cows', '999');
    await press(page, '#pane-yes');
    expect(await page.inputValue('#item-cows')).toBe('999');
  });

  it('follows what is typed into the sheet', async () => {
    await openPart(page, 'survey');
    const cows = await page.evaluate(() => document.querySelector<HTMLInputElement>('#item-cows')?.value);
    await type(page, 'Inputs!C9', '321');
    await settled(page);
    expect(await page.inputValue('#item-cows')).not.toBe(cows);
    // As it was, for what comes after.
    await type(page, 'Inputs!C9', '260');
  });

  it('turns the walk’s readings into what they mean and puts them into the survey', async () => {
    await onBlank();
    await openPart(page, 'readings');
    await press(page, '#pane details:nth-of-type(3) summary');
    await fillIn(page, '#reading-2-rated-m3-h', '4000');
    await fillIn(page, '#reading-2-rated-hz', '50');
    await fillIn(page, '#reading-2-hz', '40');
    expect(await text(page)).toContain('Air flow: 3,200 m³/h');
    await page.keyboard.press('Shift+Tab');
    await press(page, '#pane .finding button');
    await openPart(page, 'survey');
    expect(await page.inputValue('#item-air-m3-h')).toBe('3200');
  });

  it('finds a function by farm word, shows its result, and puts it into the active cell', async () => {
    await newSheet(page);
    await openPart(page, 'functions');
    await tabTo(page, '#search');
    await page.keyboard.type('chimney');
    await settled(page);
    await press(page, '#pane .list li:first-child button');
    expect(await text(page)).toContain('PLANT.CHIMNEYSPEED');
    await fillIn(page, '#argument-m3-h', '3000');
    await fillIn(page, '#argument-diameter-m', '0.4');
    expect(await page.locator('#result').textContent()).toMatch(/6\.63\d? m\/s/);
    await press(page, '#insert');
    expect(await read(page, 'A1')).toMatch(/ A1: 6\.63/);
    await openPart(page, 'functions');
    await press(page, '#all-functions');
    expect(await page.inputValue('#search')).toBe('chimney');
  });

  it('uses the selected cells as an argument, and knows how much room a table needs', async () => {
    await newSheet(page);
    await openPart(page, 'functions');
    await fillIn(page, '#search', 'BEDDING.INVEST.LOAN');
    await page.keyboard.press('Shift+Tab');
    await press(page, '#pane .list li:first-child button');
    await type(page, 'B20', '30000');
    await goTo(page, 'B20');
    await page.evaluate(() => document.querySelector<HTMLElement>('#argument-borrowed')?.focus());
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await page.inputValue('#argument-borrowed')).toMatch(/^Sheet\d+!B20$/);
    await fillIn(page, '#argument-years', '3');
    await fillIn(page, '#argument-rate', '6%');
    expect(await text(page)).toContain('4 rows by 5 columns');
    expect(await faults(page)).toEqual([]);
    await goTo(page, 'A18');
    await settled(page);
    await page.evaluate(() => document.querySelector<HTMLElement>('#argument-rate')?.focus());
    await press(page, '#insert');
    expect(await asked(page)).toContain('B20 is filled in on Sheet');
    await press(page, '#pane-no');
    expect(await read(page, 'A18')).toContain('A18: blank');
  });

  it('explains a figure of the answer down to the input that was typed', async () => {
    await openPart(page, 'explain');
    await goTo(page, onAnswer('Cover of demand'));
    await settled(page);
    expect(await text(page)).toContain('BUDGET.HERD, row Cover of demand');
    expect(await faults(page)).toEqual([]);
    await openPart(page, 'explain');
    await pressNamed(page, 'Fibre needed');
    expect(await text(page)).toContain('DEMAND.HERD(Cubicles, Fibre per cubicle per day, Housed days, Fibre lost)');
    await press(page, '#back');
    await pressNamed(page, 'Fibre needed');
    await pressNamed(page, 'Cubicles');
    await press(page, '#pane .link');
    expect(await page.locator('#spoken').textContent()).toMatch(/^Inputs C\d+: 268/);
  });

  it('copies the explanation as text', async () => {
    await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await goTo(page, onAnswer('Cover of demand'));
    await openPart(page, 'explain');
    await press(page, '#copy');
    await expect.poll(() => text(page)).toContain('Copied as text.');
    expect(await page.evaluate(() => navigator.clipboard.readText())).toContain('Cover of demand: 1.');
  });

  it('leads from a warning to its cell', async () => {
    await openPart(page, 'checks');
    expect(await text(page)).toContain('Permission: no');
    await press(page, '#pane .warning .link');
    expect(await page.locator('#spoken').textContent()).toMatch(/^Figures A\d+: Warning: /);
  });

  it('shows the rules of a country and the cautions', async () => {
    await openPart(page, 'cautions');
    await tabTo(page, '#country');
    await page.keyboard.type('Germany');
    await page.keyboard.press('Tab');
    await settled(page);
    expect(await text(page)).toContain('A farm page says it is not permitted: ask.');
    expect(await text(page)).toContain('slurry gas');
  });
});

describe('the pane, for everybody', () => {
  it.each([1400, 390, 320])('passes axe, lets Tab reach every control and fits a screen of %i pixels, part by part', async (width) => {
    mkdirSync(shots, { recursive: true });
    await page.setViewportSize({ width, height: 900 });
    await settled(page);
    if (!(await page.locator('#pane').isVisible())) await page.click('#pane-toggle');
    for (const part of parts) {
      await page.click(`#part-${part}`);
      await settled(page);
      await page.screenshot({ path: `${shots}/pane-${part}-${width}.png` });
      expect(await faults(page), part).toEqual([]);
      expect(await walk(page), part).toBe(await controls(page));
      const over = await page.evaluate(() => {
        const shown = document.querySelector('#pane .part');
        return (shown?.scrollWidth ?? 0) - (shown?.clientWidth ?? 0);
      });
      expect(over, `${part} is wider than the pane`).toBeLessThanOrEqual(0);
    }
  });

  it('is not restyled by the grid’s own styles', async () => {
    // The grid is ready a moment before the pane is drawn.
    await page.locator('#pane h2').waitFor();
    const look = await page.evaluate(() => {
      const { fontSize, margin } = getComputedStyle(document.querySelector('#pane h2') as Element);
      return { fontSize, margin };
    });
    expect(look).toEqual({ fontSize: '19px', margin: '8px 0px 4px' });
  });
});
