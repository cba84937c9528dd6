import { existsSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import sirv from 'sirv';
import type { TestProject } from 'vitest/node';
import { findBrowser, findFirefox, findWebKit } from './find-browser.ts';
import { findOffice } from './find-office.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where dist is served. */
    site: string;
  }
}

/** Serves what `npm run build` made and makes sure of the browsers and an office program, once for all browser tests. */
export default async function setUp({ provide }: TestProject): Promise<() => void> {
  if (!existsSync('dist/sheet.html')) throw new Error('dist/sheet.html is missing: run `npm run build` first, or `npm test`, which does.');
  findBrowser();
  findFirefox();
  findWebKit();
  findOffice();
  const server = createServer(sirv('dist', { dev: true }));
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  provide('site', `http://127.0.0.1:${(server.address() as AddressInfo).port}`);
  return () => server.close();
}
