import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { headersFor } from '../../src/generate/hosting.ts';
import { browser } from './browser.ts';

const root = join(import.meta.dirname, '../..');
const VENDOR = 'https://appsforoffice.microsoft.com/lib/1/hosted/';

/** The vendor's network as each test needs it: away, the real library outside Excel, or a stand-in that says it is Excel. */
type Vendor = 'away' | 'real' | { readonly script: string };

async function openPane(
  vendor: Vendor,
  search = '',
): Promise<{ page: Page; requests: string[]; faults: string[]; says: (words: RegExp) => Promise<void> }> {
  const context = await browser.newContext({ viewport: { width: 320, height: 700 } });
  const page = await context.newPage();
  const requests: string[] = [];
  const faults: string[] = [];
  page.on('pageerror', ({ message }) => faults.push(message));
  page.on('console', (said) => said.text().includes('Content Security Policy') && faults.push(said.text()));
  await page.route('**/*', async (route) => {
    const url = route.request().url();
    requests.push(url);
    if (url.startsWith(VENDOR)) {
      const file = join(root, 'node_modules/@microsoft/office-js/dist', url.slice(VENDOR.length));
      if (typeof vendor === 'object') return route.fulfill({ contentType: 'text/javascript', body: vendor.script });
      return vendor === 'real' && existsSync(file)
        ? route.fulfill({ contentType: 'text/javascript', body: await readFile(file) })
        : route.abort();
    }
    const path = new URL(url).pathname.slice(1);
    const file = join(root, 'dist', path);
    return existsSync(file) ? route.fulfill({ headers: headersFor(path), body: await readFile(file) }) : route.fulfill({ status: 404 });
  });
  await page.goto(`https://farm.example/taskpane.html${search}`);
  const says = (words: RegExp) => page.locator('#pane').getByText(words).first().waitFor();
  return { page, requests, faults, says };
}

/** A stand-in for office.js inside Excel, in which every call to the workbook fails as it does while a cell is being typed in. */
const inExcel = (supported: boolean) => ({
  script: `window.Office = {
    HostType: { Excel: 'Excel' },
    onReady: () => Promise.resolve({ host: 'Excel', platform: 'PC' }),
    context: { displayLanguage: 'en-GB', requirements: { isSetSupported: () => ${supported} } },
  };
  window.Excel = { run: () => Promise.reject(Object.assign(new Error('raw text'), { code: 'InvalidOperationInCellEditMode' })) };`,
});

describe('the pane’s page', () => {
  it('says in words that it is offline, and where the same works without a network', async () => {
    const { page, says, faults } = await openPane('away');
    await says(/office\.js could not be fetched/);
    await says(/without a network in sheet\.html/);
    expect(await page.locator('script[src*="office.js"]').count()).toBe(0);
    expect(faults).toEqual([]);
  });

  it('says in words that it was opened outside Excel', async () => {
    const { says } = await openPane('real');
    await says(/opened outside Excel/);
    await says(/sheet\.html/);
  });

  it('fetches nothing but its own files and the vendor’s library', async () => {
    const { says, requests } = await openPane('real');
    await says(/opened outside Excel/);
    const strange = requests.filter((url) => !url.startsWith('https://farm.example/') && !url.startsWith(VENDOR));
    expect(strange).toEqual([]);
    expect(requests.filter((url) => url.startsWith('https://farm.example/')).toSorted()).toEqual([
      'https://farm.example/taskpane.html',
      'https://farm.example/taskpane.js',
    ]);
  });

  it('says which Excel it needs where this one is too old', async () => {
    const { says } = await openPane(inExcel(false));
    await says(/newer Excel: one with ExcelApi 1\.12, such as Excel 2021.*web/);
  });

  it('opens in Excel, and tells in words what Excel refuses', async () => {
    const { page, says, faults } = await openPane(inExcel(true));
    await page.locator('#pane nav').waitFor();
    await says(/A cell is being typed in\. Press Enter or Esc, then try again\./);
    expect(await page.getByText('raw text').count()).toBe(0);
    expect(faults).toEqual([]);
  });

  it('asks before the ribbon’s workbook button writes anything, and Escape means no', async () => {
    const { page } = await openPane(inExcel(true), '?open=workbook');
    const question = page.getByRole('dialog').filter({ hasText: 'Add the budget’s sheets' });
    await question.waitFor();
    await page.keyboard.press('Escape');
    await question.waitFor({ state: 'detached' });
  });

  it('tells in a dialog why the workbook could not be written', async () => {
    const { page } = await openPane(inExcel(true), '?open=workbook');
    await page.getByRole('button', { name: 'With nothing filled in' }).click();
    await page.getByRole('dialog').filter({ hasText: 'Press Enter or Esc' }).waitFor();
    await page.getByRole('button', { name: 'OK', exact: true }).press('Enter');
    await page.getByRole('dialog').filter({ hasText: 'Press Enter or Esc' }).waitFor({ state: 'detached' });
  });

  it.each(['away', 'question'] as const)('is accessible: %s', async (state) => {
    const { page } = await openPane(state === 'away' ? 'away' : inExcel(true), state === 'question' ? '?open=workbook' : '');
    await (state === 'away' ? page.getByText('could not be fetched') : page.getByRole('dialog').first()).waitFor();
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target).join()}`)).toEqual([]);
  });
});
