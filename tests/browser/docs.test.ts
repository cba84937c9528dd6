import { resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { browser } from './browser.ts';

const address = (file: string): string => pathToFileURL(resolve('dist/docs', file)).href;

let page: Page;
const complaints: string[] = [];

beforeAll(async () => {
  page = await (await browser.newContext()).newPage();
  page.on('console', (message) => complaints.push(message.text()));
  page.on('requestfailed', (request) => complaints.push(request.url()));
});

describe('the reference, opened by a double click', () => {
  it('shows its style under its own strict policy, and fetches nothing', async () => {
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(address('drying.html'));
    expect(await page.evaluate(() => getComputedStyle(document.body).margin)).toBe('0px');
    expect(asked).toEqual([address('drying.html')]);
    expect(complaints).toEqual([]);
  });

  it('leads from a step of working to its source and back', async () => {
    await page.goto(address('drying.html'));
    await page.locator('#drying-hotwater').getByRole('link', { name: 'Kell 1975', exact: true }).first().click();
    await expect.poll(() => page.url()).toBe(address('sources.html#kell-1975').replace('%23', '#'));
    await page.locator('#kell-1975').getByRole('link', { name: 'DRYING.HOTWATER', exact: true }).click();
    await expect.poll(() => page.url()).toContain('drying.html#drying-hotwater');
  });

  it.each(['demand.html', 'method.html', 'sources.html'])('%s can be read by everyone', async (file) => {
    await page.goto(address(file));
    const { violations } = await new AxeBuilder({ page }).withTags(['wcag2a', 'wcag2aa', 'wcag21aa', 'best-practice']).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  });

  it.each(['budget.html', 'invest.html', 'method.html'])('%s prints on A4 without cutting a column off', async (file) => {
    await page.goto(address(file));
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 688, height: 1000 }); // 182 mm between the margins of A4, at 96 dots an inch.
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(688);
    await page.emulateMedia({ media: null });
  });
});
