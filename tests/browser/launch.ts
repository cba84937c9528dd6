import { type Browser, type BrowserContext, chromium, type LaunchOptions } from 'playwright-core';
import { findBrowser } from './find-browser.ts';

/** Nothing but what the page itself asks for may go out, so that a request it makes stands out. */
const flags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const options = (): LaunchOptions => ({ executablePath: findBrowser(), args: flags, headless: true });

export const launch = (): Promise<Browser> => chromium.launch(options());

/** A browser whose storage stays in a folder, for what has to outlive it. */
export const launchWithProfile = (folder: string): Promise<BrowserContext> => chromium.launchPersistentContext(folder, options());
