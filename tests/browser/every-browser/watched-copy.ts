import { readFile, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { basename, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import sirv from 'sirv';
import { noteComplaints } from './driver.ts';

/** The page with a script in front of all else, where its policy does not reach yet. */
const watched = async (file: string): Promise<string> =>
  (await readFile(file, 'utf8')).replace('<head>', (head) => `${head}<script>(${noteComplaints})();</script>`);

export interface WatchedCopies {
  /** The address of a copy of the page that notes what goes wrong on it from its first moment, for a driver that runs nothing so early. */
  addressOf(page: string): Promise<string>;
  close(): void;
}

export async function watchedCopies(folder: string): Promise<WatchedCopies> {
  const others = sirv('dist', { dev: true });
  const server = createServer(async (request, answer) => {
    if (request.url !== '/sheet.html') return others(request, answer);
    answer.setHeader('Content-Type', 'text/html; charset=utf-8');
    answer.end(await watched('dist/sheet.html'));
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const site = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  return {
    addressOf: async (page) => {
      if (page.startsWith('http')) return site + new URL(page).pathname;
      const copy = join(folder, basename(fileURLToPath(page)));
      await writeFile(copy, await watched(fileURLToPath(page)));
      return pathToFileURL(copy).href;
    },
    close: () => server.close(),
  };
}
