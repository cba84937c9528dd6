import { mkdir, mkdtemp, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { aboutPage, functionsPage, taskpanePage } from '../../src/generate/excel-pages.ts';
import { headersFor, hostingTable } from '../../src/generate/hosting.ts';

describe('what a static host is told', () => {
  it('names every file of the folder with its type, whatever folder it lies in', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'dist-'));
    await mkdir(join(folder, 'icons'));
    for (const name of ['functions.js', 'icons/icon-32.png', 'taskpane.html']) await writeFile(join(folder, name), 'x');
    const rows = (await hostingTable(folder, 'https://farm.example/')).split('\n').filter((line) => line.startsWith('| '));
    expect(rows.slice(1)).toEqual([
      expect.stringMatching(/functions\.js \| 1 \| text\/javascript; charset=utf-8 .*\| Access-Control-Allow-Origin: \* \|$/),
      expect.stringMatching(/icons\/icon-32\.png \| 1 \| image\/png /),
      expect.stringMatching(/taskpane\.html \| 1 \| text\/html; charset=utf-8 /),
    ]);
  });

  it('never forbids Excel to keep an icon, which Microsoft’s manifest reference asks for', () => {
    expect(headersFor('icons/icon-80.png')['Cache-Control']).not.toMatch(/no-store|no-cache|private/);
  });

  it('keeps every page but those that Excel frames out of frames, and apart from a page that opens it', () => {
    for (const path of ['sheet.html', 'bedding-ledger.html', 'about.html', 'docs/index.html']) {
      expect(headersFor(path)).toMatchObject({
        'Content-Security-Policy': "frame-ancestors 'none'",
        'Cross-Origin-Opener-Policy': 'same-origin',
      });
    }
    for (const path of ['taskpane.html', 'functions.html', 'sheet.js'])
      expect(headersFor(path)).not.toHaveProperty('Content-Security-Policy');
  });

  it('opens to other addresses only what Excel itself reads', () => {
    const open = ['functions.js', 'functions.json', 'functions.html', 'taskpane.html', 'taskpane.js', 'sheet.html', 'manifest.xml'].filter(
      (path) => headersFor(path)['Access-Control-Allow-Origin'],
    );
    expect(open).toEqual(['functions.js', 'functions.json', 'functions.html']);
  });
});

describe('the pages for Excel', () => {
  it.each([
    ['functions.html', functionsPage()],
    ['taskpane.html', taskpanePage()],
    ['about.html', aboutPage('1.0.0', 'A <licence> & more')],
  ])('%s loads nothing but its own files and, where it must, one script of the vendor', (_, page) => {
    const sources = [...page.matchAll(/(?:src|href)="([^"]+)"/g)].map(([, source]) => source as string);
    const vendor = sources.filter((source) => source.includes('://'));
    expect(vendor.length).toBeLessThanOrEqual(1);
    for (const source of vendor) expect(source).toMatch(/^https:\/\/appsforoffice\.microsoft\.com\/lib\/1(\.1)?\/hosted\//);
  });

  it('about.html has what the manifests point to, and shows the licence as text', () => {
    const page = aboutPage('1.0.0', 'A <licence> & more');
    expect(page).toMatch(/id="privacy"[\s\S]*id="terms"/);
    expect(page).toContain('A &lt;licence> &amp; more');
  });
});
