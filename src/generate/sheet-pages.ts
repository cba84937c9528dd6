import { createHash } from 'node:crypto';
import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { carriedFace } from './face.ts';
import { type GridStyles, gridStyles } from './grid-styles.ts';

const modules = 'node_modules';
const grid = `${modules}/@odoo/o-spreadsheet`;

/** Each grid library is loaded whole and unmodified, as a script of its own: its licence asks for it. */
const libraries = {
  'owl.js': `${modules}/@odoo/owl/dist/owl.iife.min.js`,
  'chart.js': `${modules}/chart.js/dist/chart.umd.min.js`,
  'o_spreadsheet.js': `${grid}/dist/o_spreadsheet.min.iife.js`,
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
    // What reads spreadsheet files beside the page, out of the page's own text.
    'worker-src blob:',
    "form-action 'none'",
    "base-uri 'none'",
  ].join('; ');

/** What the page takes from itself, so that it works without a server. */
const block = (type: string, id: string, content: string): string => `<script type="${type}" id="${id}">${inlined(content)}</script>`;

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
  readonly face: string;
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

async function separateFiles({ body, data, styles, face }: Parts): Promise<string> {
  await mkdir('dist/grid', { recursive: true });
  await mkdir('dist/licences', { recursive: true });
  for (const [name, path] of Object.entries(libraries)) await copyFile(path, `dist/grid/${name}`);
  for (const name of Object.keys(standsOn)) await writeFile(`dist/licences/${basename(name)}.txt`, await licenceOf(name));
  const gridSheets = Object.keys(styles);
  for (const [name, css] of Object.entries(styles)) await writeFile(`dist/grid/${name}`, css);
  await writeFile('dist/face.css', face);
  await copyFile(ownStyle, 'dist/sheet.css');
  const scripts = [...Object.keys(libraries).map((name) => `grid/${name}`), ...ownScripts];
  return page({
    policy: policy("'self'"),
    head: [
      `<style>${layerOrder} ${gridSheets.map((name) => `@import url("grid/${name}") layer(${layer});`).join(' ')}</style>`,
      '<link rel="stylesheet" href="face.css">',
      '<link rel="stylesheet" href="sheet.css">',
    ],
    body: [body, data],
    scripts: scripts.map((src) => `<script src="${src}" defer></script>`),
  });
}

/** The grid's templates and styles read the same without comments and indentation; dist/sheet.html has them as they are. */
const tight = (source: string): string => source.replace(/<!--[\s\S]*?-->|\/\*[\s\S]*?\*\//g, '').replace(/\s+/g, ' ');

async function oneFile({ body, data, styles, face }: Parts): Promise<string> {
  const paths = [...Object.values(libraries), ...ownScripts.map((name) => `dist/${name}`)];
  const sources = await Promise.all(paths.map(async (path) => inlined(await text(path))));
  const sheets = [layerOrder, ...Object.values(styles).map((css) => `@layer ${layer} {${tight(css)}}`), face, tight(await text(ownStyle))];
  return page({
    policy: policy(sources.map(hashOf).join(' ')),
    head: sheets.map((css) => `<style>${css}</style>`),
    body: [body, tight(data)],
    scripts: sources.map((source) => `<script>${source}</script>`),
  });
}

/** What the pages stand on, with the file of its licence in its package; it goes wherever the code goes. */
const standsOn: Readonly<Record<string, string>> = {
  '@odoo/o-spreadsheet': 'LICENSE',
  '@odoo/owl': 'LICENSE',
  'chart.js': 'LICENSE.md',
  bootstrap: 'LICENSE',
  'font-awesome': 'css/font-awesome.min.css',
  '@expo-google-fonts/arimo': 'LICENSE_FONT',
  zod: 'LICENSE',
  'lit-html': 'LICENSE',
  minisearch: 'LICENSE.txt',
  'pure-rand': 'LICENSE',
  'simple-statistics': 'LICENSE',
  'idb-keyval': 'LICENCE',
  fflate: 'LICENSE',
  saxen: 'LICENSE',
  jsep: 'LICENSE',
};

/** The words of a licence. Font Awesome's package has no file of it: its style sheet states it at its head. */
async function licenceOf(name: string): Promise<string> {
  const words = await text(`${modules}/${name}/${standsOn[name]}`);
  return /^\/\*!([\s\S]*?)\*\//.exec(words)?.[1] ?? words;
}

const asText = (words: string): string => words.trim().replaceAll('&', '&amp;').replaceAll('<', '&lt;');

async function licenceRow(name: string): Promise<string> {
  const { version, license } = JSON.parse(await text(`${modules}/${name}/package.json`)) as Record<string, string>;
  return `<tr><td>${name}</td><td>${version}</td><td>${license}</td></tr>`;
}

async function bodyWithLicences(): Promise<string> {
  const [lgpl = '', , ...others] = Object.keys(standsOn);
  const rows = await Promise.all(Object.keys(standsOn).map(licenceRow));
  const words = await Promise.all(others.map(async (name) => `${name}\n\n${asText(await licenceOf(name))}`));
  const lesser = asText(await licenceOf(lgpl));
  const body = await text('src/surfaces/sheet/sheet.html');
  return body
    .replace('<!-- licences -->', rows.join(''))
    .replace('<!-- lgpl -->', () => lesser)
    .replace('<!-- others -->', () => words.join('\n\n\n'));
}

/** dist/sheet.html with its files beside it, and dist/bedding-ledger.html, all in one, that opens by a double click. */
export async function writeSheetPages(): Promise<void> {
  const parts: Parts = {
    body: await bodyWithLicences(),
    data: [
      block('text/xml', 'grid-templates', await text(`${grid}/dist/o_spreadsheet.xml`)),
      block('text/plain', 'reader', await text('.build/reader.js')),
    ].join('\n'),
    styles: await gridStyles(),
    face: await carriedFace(),
  };
  await writeFile('dist/sheet.html', await separateFiles(parts));
  await writeFile('dist/bedding-ledger.html', await oneFile(parts));
}
