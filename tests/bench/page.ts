import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Browser } from 'playwright-core';
import sirv from 'sirv';
import { launch } from '../browser/launch.ts';
import { median, type Row } from './measure.ts';

const LOADS = 9;

/** The grid's own scripts, styles and templates as dist/sheet.html has them, and an empty workbook. */
function bare(): string {
  const built = readFileSync('dist/sheet.html', 'utf8');
  const part = (pattern: RegExp): string => {
    const found = pattern.exec(built)?.[0];
    if (!found) throw new Error('dist/sheet.html is not as it was: run npm run build');
    return found;
  };
  const libraries = [...built.matchAll(/<script src="grid\/.+<\/script>/g)].map(([script]) => script);
  return `<!doctype html>
<meta charset="utf-8">
${part(/<style>@layer.+<\/style>/)}
<section id="grid" style="height: 100vh"></section>
${part(/<script type="text\/xml" id="grid-templates">[\s\S]+?<\/script>/)}
${libraries.join('\n')}
<script defer src="bare.js"></script>`;
}

const bareScript = `
const templates = document.getElementById('grid-templates').textContent;
const props = { model: new o_spreadsheet.Model(), notifyUser() {}, raiseError() {}, askConfirmation() {} };
new owl.App(o_spreadsheet.Spreadsheet, { props, templates }).mount(document.getElementById('grid'));`;

function serve() {
  const dist = sirv('dist');
  const made: Record<string, readonly [type: string, text: string]> = {
    '/bare.html': ['text/html', bare()],
    '/bare.js': ['text/javascript', bareScript],
  };
  return createServer((request, response) => {
    const [type, text] = made[request.url ?? ''] ?? [];
    if (type) response.setHeader('Content-Type', type).end(text);
    else dist(request, response);
  });
}

interface Noted {
  /** When the grid was drawn and, where the page speaks its active cell, an answer stood in it. */
  drawnAt?: number;
  readonly blocks: { readonly startTime: number; readonly duration: number }[];
}

/** In the page: the time of the frame after the one that has the grid, and whatever holds the page up for 50 ms or more. */
function note(): void {
  const noted: Noted = { blocks: [] };
  Object.assign(window, { noted });
  new PerformanceObserver((list) => noted.blocks.push(...list.getEntries())).observe({ type: 'longtask', buffered: true });
  const look = (): void => {
    const drawn = document.querySelector('.o-grid-overlay') && document.querySelector('#spoken')?.textContent !== '';
    if (drawn) requestAnimationFrame(() => (noted.drawnAt = performance.now()));
    else requestAnimationFrame(look);
  };
  look();
}

/** In milliseconds. */
interface Load {
  readonly ready: number;
  readonly firstSign: number;
  /** The longest that the page was held up in the three seconds after it was ready, when the other sheets are worked out. */
  readonly longestBlock: number;
}

/** Asks for the page with nothing of it kept from before. */
async function load(browser: Browser, address: string): Promise<Load> {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  const page = await context.newPage();
  await page.addInitScript(note);
  await page.goto(address);
  await page.waitForFunction(() => (window as unknown as { noted: Noted }).noted.drawnAt);
  await page.waitForTimeout(3000);
  const found = await page.evaluate(() => {
    const { drawnAt: ready = 0, blocks } = (window as unknown as { noted: Noted }).noted;
    const firstSign = performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? ready;
    const after = blocks.filter(({ startTime }) => startTime > ready).map(({ duration }) => duration);
    return { ready, firstSign, longestBlock: Math.max(0, ...after) };
  });
  await context.close();
  return found;
}

/** Both pages by turns, from one server in one browser. */
export async function pageReady(): Promise<Row[]> {
  const server = serve();
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  const site = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
  const browser = await launch();
  const loads: [Load[], Load[]] = [[], []];
  for (let turn = -1; turn < LOADS; turn++) {
    for (const [k, name] of ['sheet.html', 'bare.html'].entries()) {
      const one = await load(browser, `${site}/${name}`);
      if (turn >= 0) loads[k]?.push(one);
    }
  }
  await browser.close();
  server.close();
  const [ours, theirs] = loads.map((all) => median(all.map(({ ready }) => ready))) as [number, number];
  const of = (what: keyof Load) => median(loads[0].map((one) => one[what]));
  const compared = 'dist/sheet.html, its first sheet worked out and drawn / the same grid, styles and scripts with an empty workbook';
  const why =
    'the sheets not on show are left to later, but the grid still reads every cell of every sheet, and what the first sheet rests on, LEVERS above all, is worked out with cold code';
  return [
    { name: 'Page ready', ours, theirs, unit: 'ms', target: 1.5, note: `${compared}; where missed: ${why}` },
    { name: 'First sign of life', ours: of('firstSign'), theirs: 500, unit: 'ms', target: 1, note: 'first words drawn / limit' },
    {
      name: 'Longest hold-up once ready',
      ours: of('longestBlock'),
      theirs: 100,
      unit: 'ms',
      target: 1,
      note: 'longest task in the 3 s after, when the other sheets are worked out / limit',
    },
  ];
}
