import { createHash } from 'node:crypto';
import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { type GridStyles, gridStyles } from './grid-styles.ts';

const modules = 'node_modules';
const grid = `${modules}/@odoo/o-spreadsheet`;

/** Each grid library is loaded whole and unmodified, as a script of its own: its licence asks for it. */
const libraries = {
  'owl.js': `${modules}/@odoo/owl/dist/owl.iife.min.js`,
  'chart.js': `${modules}/chart.js/dist/chart.umd.min.js`,
  'o_spreadsheet.js': `${grid}/dist/o_spreadsheet.min.iife.js`,
};
const licences = {
  'licences/o-spreadsheet.txt': `${grid}/LICENSE`,
  'licences/owl.txt': `${modules}/@odoo/owl/LICENSE`,
  'licences/chart.js.txt': `${modules}/chart.js/LICENSE.md`,
  'licences/bootstrap.txt': `${modules}/bootstrap/LICENSE`,
};
const ownStyle = 'src/surfaces/sheet/sheet.css';

/** In this order: host.js makes the `CustomFunctions` that functions.js looks for, and sheet.js takes the functions from there. */
const ownScripts = ['host.js', 'functions.js', 'sheet.js'];

const text = (path: string): Promise<string> => readFile(path, 'utf8');

/**
 * Nothing is fetched, sent or framed, and only the page's own scripts run. 'unsafe-eval': the grid library turns its
 * templates and every formula into functions with `new Function`. 'unsafe-inline' for styles: it places cells and
 * menus by style attributes.
 */
const policy = (scripts: string): string =>
  [
    "default-src 'none'",
    `script-src ${scripts} 'unsafe-eval'`,
    "style-src 'self' 'unsafe-inline'",
    'img-src data: blob:',
    "font-src 'self' data:",
    "connect-src 'none'",
    "form-action 'none'",
    "base-uri 'none'",
  ].join('; ');

/** What the scripts read from the page itself, so that it works without a server. `<` is spelled out, so nothing ends the block early. */
const dataBlocks = (functions: string, templates: string): string =>
  [
    `<script type="application/json" id="functions-file">${functions.replaceAll('<', '\\u003c')}</script>`,
    `<script type="text/xml" id="grid-templates">${templates}</script>`,
  ].join('\n');

interface Page {
  readonly policy: string;
  readonly head: readonly string[];
  readonly body: readonly string[];
  readonly scripts: readonly string[];
}

const page = ({ policy, head, body, scripts }: Page): string => `<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>Bedding Ledger</title>
<link rel="icon" href="data:,">
${head.join('\n')}
</head>
<body>
${body.join('\n')}
${scripts.join('\n')}
</body>
</html>
`;

interface Parts {
  readonly body: string;
  readonly data: string;
  readonly styles: GridStyles;
}

/** A script that can stand inside a page as it is; a library that could not would have to be changed, so the build stops. */
function inlined(source: string): string {
  if (/<\/script|<!--[\s\S]*<script/i.test(source)) throw new Error('a script holds text that would end its block in the page');
  return source;
}

const hashOf = (source: string): string => `'sha256-${createHash('sha256').update(source).digest('base64')}'`;

/** The grid's styles and those it stands on share a weaker layer, so that they style the grid but never our own controls. */
const layer = 'grid';
const layerOrder = `@layer argument-help, ${layer};`;

async function separateFiles({ body, data, styles }: Parts): Promise<string> {
  for (const [name, path] of Object.entries({ ...libraries, ...licences })) {
    await mkdir(dirname(`dist/grid/${name}`), { recursive: true });
    await copyFile(path, `dist/grid/${name}`);
  }
  const gridSheets = Object.keys(styles);
  for (const [name, css] of Object.entries(styles)) await writeFile(`dist/grid/${name}`, css);
  await copyFile(ownStyle, 'dist/sheet.css');
  const scripts = [...Object.keys(libraries).map((name) => `grid/${name}`), ...ownScripts];
  return page({
    policy: policy("'self'"),
    head: [
      `<style>${layerOrder} ${gridSheets.map((name) => `@import url("grid/${name}") layer(${layer});`).join(' ')}</style>`,
      '<link rel="stylesheet" href="sheet.css">',
    ],
    body: [body, data],
    scripts: scripts.map((src) => `<script src="${src}" defer></script>`),
  });
}

async function oneFile({ body, data, styles }: Parts): Promise<string> {
  const paths = [...Object.values(libraries), ...ownScripts.map((name) => `dist/${name}`)];
  const sources = await Promise.all(paths.map(async (path) => inlined(await text(path))));
  const sheets = [layerOrder, ...Object.values(styles).map((css) => `@layer ${layer} {${css}}`), await text(ownStyle)];
  return page({
    policy: policy(sources.map(hashOf).join(' ')),
    head: sheets.map((css) => `<style>${css}</style>`),
    body: [body, data],
    scripts: sources.map((source) => `<script>${source}</script>`),
  });
}

/** What the page stands on, with the versions that are installed. */
const standsOn = [
  '@odoo/o-spreadsheet',
  '@odoo/owl',
  'chart.js',
  'bootstrap',
  'font-awesome',
  'zod',
  'lit-html',
  'minisearch',
  'pure-rand',
  'simple-statistics',
  'idb-keyval',
  'fflate',
];

async function licenceRow(name: string): Promise<string> {
  const { version, license } = JSON.parse(await text(`${modules}/${name}/package.json`)) as Record<string, string>;
  return `<tr><td>${name}</td><td>${version}</td><td>${license}</td></tr>`;
}

async function bodyWithLicences(): Promise<string> {
  const rows = await Promise.all(standsOn.map(licenceRow));
  const lgpl = (await text(`${grid}/LICENSE`)).replaceAll('&', '&amp;').replaceAll('<', '&lt;');
  const body = await text('src/surfaces/sheet/sheet.html');
  return body.replace('<!-- licences -->', rows.join('')).replace('<!-- lgpl -->', () => lgpl);
}

/** dist/sheet.html with its files beside it, and dist/bedding-ledger.html, all in one, that opens by a double click. */
export async function writeSheetPages(functions: string): Promise<void> {
  const parts: Parts = {
    body: await bodyWithLicences(),
    data: dataBlocks(functions, inlined(await text(`${grid}/dist/o_spreadsheet.xml`))),
    styles: await gridStyles(),
  };
  await writeFile('dist/sheet.html', await separateFiles(parts));
  await writeFile('dist/bedding-ledger.html', await oneFile(parts));
}
