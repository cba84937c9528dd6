import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { launch } from './launch.ts';

/** The browser of the test file that imports this: started before its first test, closed behind its last. */
export let browser: Browser;

beforeAll(async () => {
  browser = await launch();
});
afterAll(() => browser?.close());
