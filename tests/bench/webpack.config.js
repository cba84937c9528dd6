import { fileURLToPath } from 'node:url';
import configs from '../../webpack.config.js';

const path = (relative) => fileURLToPath(new URL(relative, import.meta.url));
const named = (name) => configs.find((config) => config.name === name);
const output = { path: path('../../.build') };

/** The comparisons, bundled as the build's own tools are, so that both sides of each run as a bundle does. */
const bench = {
  ...named('tools'),
  name: 'bench',
  cache: false,
  entry: { bench: path('./index.ts') },
  externals: Object.fromEntries(['@odoo/o-spreadsheet', 'playwright-core'].map((name) => [name, `commonjs ${name}`])),
  output: { ...output, filename: '[name].cjs' },
};

/** zod alone, whole, built as dist/functions.js is. */
const zod = {
  ...named('functions'),
  name: 'zod',
  cache: false,
  entry: { zod: 'zod' },
  output: { ...output, library: { name: 'zod', type: 'var' } },
};

export default [bench, zod];
