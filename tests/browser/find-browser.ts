import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { attempt, findOrInstall, isDebianRoot, onPath, runnable } from './install.ts';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'microsoft-edge-stable'];
const elsewhere = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

/** A Chrome, Chromium or Edge. */
export function findBrowser(): string {
  const asked = process.env['CHROME_PATH'];
  const find = () => [...(asked ? [asked] : []), ...onPath(...names), ...elsewhere, chromium.executablePath()].find(runnable);
  if (!find() && !isDebianRoot()) attempt('npx', 'playwright-core', 'install', 'chromium');
  return findOrInstall(
    find,
    ['chromium'],
    'No Chrome, Chromium or Edge was found and none could be installed. Install one, or set CHROME_PATH to it, and test again.',
  );
}

/** Mozilla's own build, as Firefox is driven by its own protocol. */
export const findFirefox = (): string =>
  findOrInstall(
    () => [...onPath('firefox-esr', 'firefox'), '/Applications/Firefox.app/Contents/MacOS/firefox'].find(runnable),
    ['firefox-esr'],
    'Firefox was found nowhere and could not be installed. Install Firefox (Debian: firefox-esr) and test again.',
  );

export interface WebKit {
  readonly driver: string;
  /** The smallest browser around the engine, which comes with it. */
  readonly browser: string;
  /** A screen that nobody sees. */
  readonly screen: string;
}

const libraries = '/usr/lib';

function miniBrowser(): string | undefined {
  const folders = readdirSync(libraries).flatMap((folder) => ['4.1', '6.0', '4.0'].map((version) => `${folder}/webkit2gtk-${version}`));
  return folders.map((folder) => join(libraries, folder, 'MiniBrowser')).find(runnable);
}

/** WebKit for GTK, the engine of Safari on a machine that is no Mac. */
export function findWebKit(): WebKit {
  const packages = ['webkit2gtk-driver', 'xvfb'];
  const otherwise =
    'WebKit for GTK was found nowhere and could not be installed. Install its driver and Xvfb (Debian: webkit2gtk-driver xvfb) and test again.';
  return {
    driver: findOrInstall(() => onPath('WebKitWebDriver').find(runnable), packages, otherwise),
    browser: findOrInstall(miniBrowser, packages, otherwise),
    screen: findOrInstall(() => onPath('Xvfb').find(runnable), packages, otherwise),
  };
}
