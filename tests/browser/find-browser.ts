import { execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { chromium } from 'playwright-core';

const names = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'microsoft-edge', 'microsoft-edge-stable'];
const elsewhere = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];

function runnable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function installed(): string | undefined {
  const onPath = (process.env['PATH'] ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));
  const asked = process.env['CHROME_PATH'];
  return [...(asked ? [asked] : []), ...onPath, ...elsewhere, chromium.executablePath()].find(runnable);
}

export function attempt(command: string, ...args: string[]): void {
  try {
    execFileSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
  } catch {
    // What matters is whether the program is there afterwards; the caller looks.
  }
}

/** A Chrome, Chromium or Edge, installed first where there is none. The browser tests are never skipped: without one they fail. */
export function findBrowser(): string {
  const found = installed();
  if (found) return found;
  const debianRoot = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (debianRoot) {
    attempt('apt-get', 'update');
    attempt('apt-get', 'install', '-y', '--no-install-recommends', 'chromium');
  } else attempt('npx', 'playwright-core', 'install', 'chromium');
  const now = installed();
  if (now) return now;
  throw new Error(
    'No browser was found and none could be installed. Install Chrome, Chromium or Edge, or set CHROME_PATH to one, and test again.',
  );
}
