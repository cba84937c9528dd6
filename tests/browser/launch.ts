import { type Browser, chromium } from 'playwright-core';
import { patience } from '../patience.ts';
import { findBrowser } from './find-browser.ts';

/** Nothing but what the page itself asks for may go out, so that a request it makes stands out. */
export const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export async function launch(): Promise<Browser> {
  const browser = await chromium.launch({ executablePath: findBrowser(), args: flags, headless: true, timeout: patience.wait });
  browser.on('context', (context) => context.setDefaultTimeout(patience.wait));
  return browser;
}
