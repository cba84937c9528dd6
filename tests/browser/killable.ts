import { spawn } from 'node:child_process';
import { type BrowserContext, chromium } from 'playwright-core';
import { patience } from '../patience.ts';
import { findBrowser } from './find-browser.ts';
import { flags } from './launch.ts';

export interface Killable {
  readonly context: BrowserContext;
  /** Ends the browser as a power cut would: no page gets to say good-bye. */
  readonly kill: () => Promise<void>;
}

/** A browser of its own process, with its storage in a folder. */
export async function startKillable(folder: string): Promise<Killable> {
  const own = ['--headless', '--remote-debugging-port=0', `--user-data-dir=${folder}`, 'about:blank'];
  const process = spawn(findBrowser(), [...flags, ...own], { stdio: ['ignore', 'ignore', 'pipe'] });
  const address = await new Promise<string>((found, failed) => {
    let said = '';
    process.stderr.on('data', (text: Buffer) => {
      said += text;
      const listening = /DevTools listening on (ws:\S+)/.exec(said)?.[1];
      if (listening) found(listening);
    });
    process.once('exit', () => failed(new Error(`the browser did not start: ${said}`)));
  });
  const browser = await chromium.connectOverCDP(address, { timeout: patience.wait });
  const [context] = browser.contexts();
  if (!context) throw new Error('the browser has no window');
  context.setDefaultTimeout(patience.wait);
  const ended = new Promise<void>((end) => process.once('exit', () => end()));
  return {
    context,
    kill: () => {
      process.kill('SIGKILL');
      return ended;
    },
  };
}
