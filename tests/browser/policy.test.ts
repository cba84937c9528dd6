import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { browser } from './browser.ts';
import { startBlank } from './pane-page.ts';
import { drawn, goTo, openSheet, pages, read, type } from './sheet-page.ts';
import { settled, untilReplaced } from './waiting.ts';

const files = readdirSync('dist', { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.html'));
const sheets = ['sheet.html', 'bedding-ledger.html'];
const page = (file: string): string => readFileSync(join('dist', file), 'utf8');
const markupOf = (file: string): string => page(file).replace(/<script\b[^>]*>[\s\S]*?<\/script>/g, '');
const policyOf = (file: string): string => /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page(file))?.[1] ?? '';

describe('the policy that each page carries', () => {
  it.each(files)('%s has no handler and no script address in its markup, but the one that drops a script not fetched', (file) => {
    const handlers = [...markupOf(file).matchAll(/\son[a-z]+\s*=\s*"([^"]*)"/gi)].map(([, code]) => code);
    expect(handlers.filter((code) => code !== 'this.remove()')).toEqual([]);
    expect(markupOf(file)).not.toMatch(/javascript:/i);
  });

  it('lets only the embedded sheet make code from text, and the reason stands beside it', () => {
    expect(files.filter((file) => policyOf(file).includes("'unsafe-eval'")).sort()).toEqual([...sheets].sort());
    expect(readFileSync('src/generate/sheet-pages.ts', 'utf8')).toMatch(/'unsafe-eval': the grid library/);
  });

  it.each(files)('of %s has a rule for whatever has none of its own', (file) => {
    expect(policyOf(file)).toMatch(/^default-src /);
  });

  it.each(sheets)('of %s lets nothing be fetched, sent, framed or run but its own', (file) => {
    expect(policyOf(file)).toContain("default-src 'none'");
    expect(policyOf(file)).toContain("connect-src 'none'");
    expect(policyOf(file)).not.toMatch(/script-src[^;]*'unsafe-inline'|https?:|\*/);
  });
});

/** Everything that a user can set off, one after the other. */
async function useAll(on: Page): Promise<void> {
  await type(on, 'L2', '=BEDDING.DEMAND.HERD(100,2)');
  for (const tab of await on.locator('.o-sheet').all()) {
    await tab.click();
    await drawn(on);
  }
  for (const part of ['survey', 'readings', 'functions', 'explain', 'checks', 'cautions']) {
    await on.locator(`#part-${part}`).click();
    await settled(on);
  }
  for (const button of ['#save', '#export']) {
    const saving = on.waitForEvent('download');
    await on.locator(button).click();
    await saving;
  }
  const saving = on.waitForEvent('download');
  await on.locator('#save').click();
  const copy = await (await saving).path();
  const choosing = on.waitForEvent('filechooser');
  await on.locator('#open').click();
  const chosen = { name: 'copy.json', mimeType: 'application/json', buffer: readFileSync(copy) };
  await untilReplaced(on, async () => (await choosing).setFiles(chosen));
  await on.locator('#about').click();
  await on.keyboard.press('Escape');
  await on.locator('#print').click();
  await drawn(on);
}

describe('in use', () => {
  it.each(pages)('the sheet %s breaks its policy nowhere and asks nobody for anything', async (_, address) => {
    const context = await browser.newContext({ viewport: { width: 1400, height: 900 }, acceptDownloads: true });
    const { page: on, complaints } = await openSheet(context, address());
    await useAll(on);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it('a link in a cell opens a page that cannot reach back, and what is put on the clipboard or typed into the panel stays text', async () => {
    const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
    const { page: on, complaints } = await openSheet(context, `${inject('site')}/sheet.html`);
    await type(on, 'L2', `[about](${inject('site')}/about.html)`);
    await goTo(on, 'L2');
    const opening = context.waitForEvent('page');
    await on.keyboard.press('Alt+Enter');
    const opened = await opening;
    await opened.waitForLoadState();
    expect([opened.url(), await opened.evaluate(() => window.opener)]).toEqual([`${inject('site')}/about.html`, null]);
    await opened.close();
    await goTo(on, 'L4');
    await on.evaluate(() => {
      const clipboardData = new DataTransfer();
      const cells = { version: '19.3.2', cells: [[{ content: '=1+1', style: { fontSize: 9e9 } }]], zones: [], sheetId: '__proto__' };
      clipboardData.setData('text/plain', 'plain words');
      clipboardData.setData('text/html', `<div data-osheet-clipboard='${JSON.stringify(cells)}'>2</div>`);
      document.activeElement?.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
    });
    await expect.poll(() => read(on, 'L4')).toMatch(/ L4: plain words$/);
    const markup = `<img src=x onerror="window.ran=1"><b id="typed">`;
    await startBlank(on);
    let typed = 0;
    for (const part of ['survey', 'readings', 'functions', 'cautions']) {
      await on.locator(`#part-${part}`).click();
      await settled(on);
      await on.locator('#pane details:not([open]) > summary').evaluateAll((all) => all.forEach((one) => void (one as HTMLElement).click()));
      const fields = '#pane :is(input:not([type=radio], [type=checkbox], [type=date]), textarea)';
      for (let k = 0; k < (await on.locator(fields).count()); k++) {
        const field = on.locator(fields).nth(k);
        if (!(await field.isVisible())) continue;
        await field.fill(markup);
        await field.press('Tab');
        typed++;
      }
      await settled(on);
    }
    expect(typed).toBeGreaterThan(40);
    expect(await on.locator('#pane :is(#typed, img)').count()).toBe(0);
    expect(await on.evaluate(() => 'ran' in window)).toBe(false);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
