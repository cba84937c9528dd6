import { type Browser, chromium } from 'playwright-core';
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

export const launch = (): Promise<Browser> => chromium.launch({ executablePath: findBrowser(), args: flags, headless: true });
