import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, firefox, type Page } from 'playwright-core';
import { patience } from '../../patience.ts';
import { findFirefox } from '../find-browser.ts';
import { launch } from '../launch.ts';
import { type Engine, noteComplaints, type Tab } from './driver.ts';
import { newFile } from './new-file.ts';

const drive = (page: Page, saved: Tab['saved']): Tab => ({
  open: async (address) => void (await page.goto(address)),
  resize: (size) => page.setViewportSize(size),
  evaluate: (work, ...args) => page.evaluate(`(${work})(...${JSON.stringify(args)})`),
  click: (css) => page.locator(css).first().click(),
  type: (text) => page.keyboard.type(text),
  press: (key) => page.keyboard.press(key),
  pick: (css, path) => page.locator(css).setInputFiles(path),
  saved,
  screenshot: async (path) => void (await page.screenshot({ path })),
});

async function openPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  context.setDefaultTimeout(patience.wait);
  const page = await context.newPage();
  await page.addInitScript(noteComplaints);
  return page;
}

export async function startChromium(): Promise<Engine> {
  const folder = await mkdtemp(join(tmpdir(), 'bedding-ledger-'));
  const browser = await launch();
  const page = await openPage(browser);
  const saved = async (act: () => Promise<void>): Promise<string> => {
    const [download] = await Promise.all([page.waitForEvent('download'), act()]);
    const path = join(folder, download.suggestedFilename());
    await download.saveAs(path);
    return path;
  };
  return {
    tab: drive(page, saved),
    close: async () => {
      await browser.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** Firefox tells of no download over this protocol: what it saves lies in the folder. */
export async function startFirefox(): Promise<Engine> {
  const folder = await mkdtemp(join(tmpdir(), 'bedding-ledger-'));
  const browser = await firefox.launch({
    channel: 'moz-firefox',
    executablePath: findFirefox(),
    headless: true,
    timeout: patience.wait,
    downloadsPath: folder,
    // The list of downloads that springs open takes the keyboard away from the page.
    firefoxUserPrefs: { 'browser.download.alwaysOpenPanel': false },
  });
  const page = await openPage(browser);
  return {
    tab: drive(page, (act) => newFile(folder, act)),
    close: async () => {
      await browser.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}
