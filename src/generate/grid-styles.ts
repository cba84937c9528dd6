import { readFile } from 'node:fs/promises';
import { PurgeCSS } from 'purgecss';
import subsetFont from 'subset-font';

const modules = 'node_modules';
const grid = `${modules}/@odoo/o-spreadsheet/dist`;

/** What the grid library names in its templates and its code, in which every class that it uses is spelled out. */
const users = [`${grid}/o_spreadsheet.xml`, `${grid}/o_spreadsheet.iife.js`];

async function usedOf(path: string): Promise<string> {
  const [{ css } = { css: '' }] = await new PurgeCSS().purge({ content: users, css: [path] });
  return css.replace(/\/\*# sourceMappingURL.*?\*\//g, '');
}

/** By file name, in the order in which they build on each other. */
export type GridStyles = Readonly<Record<'bootstrap.css' | 'o_spreadsheet.css' | 'icons.css', string>>;

/** The icons' font with the few icons that the grid shows, as a data address. */
async function iconFont(icons: string): Promise<string> {
  const characters = [...icons.matchAll(/content:"\\(f[0-9a-f]{3})"/g)].map(([, code = '']) =>
    String.fromCodePoint(Number.parseInt(code, 16)),
  );
  const whole = await readFile(`${modules}/font-awesome/fonts/fontawesome-webfont.woff2`);
  const font = await subsetFont(whole, characters.join(''), { targetFormat: 'woff2' });
  return `data:font/woff2;base64,${font.toString('base64')}`;
}

/**
 * The grid's own style sheet as it is, and of Bootstrap and Font Awesome only what the grid uses: less than a third of
 * the page would otherwise be styles and icons that nobody sees.
 */
export async function gridStyles(): Promise<GridStyles> {
  const bootstrap = await usedOf(`${modules}/bootstrap/dist/css/bootstrap.min.css`);
  const icons = await usedOf(`${modules}/font-awesome/css/font-awesome.min.css`);
  const face = `@font-face{font-family:FontAwesome;src:url(${await iconFont(icons)}) format('woff2')}`;
  return {
    'bootstrap.css': bootstrap,
    'o_spreadsheet.css': await readFile(`${grid}/o_spreadsheet.css`, 'utf8'),
    'icons.css': icons.replace(/@font-face\s*\{[^}]*\}/, face),
  };
}
