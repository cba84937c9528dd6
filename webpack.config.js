import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import MinimizerPlugin from 'minimizer-webpack-plugin';
import ts from 'typescript';

const path = (relative) => fileURLToPath(new URL(relative, import.meta.url));
const records = path('src/functions/').replaceAll('\\', '/');

/**
 * What a record holds for the panel, the documents and the tests, and no cell ever shows, stays out of the script that
 * Excel loads into every workbook: it would be a sixth of it.
 */
const unseenInCells = new Set(['summary', 'finds', 'sources', 'examples']);
const withoutUnseen = (context) => (source) => {
  const visit = (node) =>
    ts.isPropertyAssignment(node) && unseenInCells.has(node.name.text) ? undefined : ts.visitEachChild(node, visit, context);
  return source.fileName.startsWith(records) ? ts.visitNode(source, visit) : source;
};

/** @returns {import('webpack').Configuration} what all bundles share; types are checked by `tsc`, once for all of them */
const shared = (name, typescript = {}) => ({
  name,
  mode: 'production',
  devtool: false,
  cache: { type: 'filesystem', cacheDirectory: path('.cache/webpack'), name, buildDependencies: { config: [path('webpack.config.js')] } },
  module: {
    rules: [
      {
        test: /\.ts$/,
        loader: 'ts-loader',
        options: { transpileOnly: true, compilerOptions: { noEmit: false, allowImportingTsExtensions: false }, ...typescript },
      },
      { resourceQuery: /raw/, type: 'asset/source' },
    ],
  },
  performance: false,
  stats: 'errors-warnings',
});

/** All that core and domain export, as lines of a module. */
const coreAndDomain = ['core', 'domain'].flatMap((folder) =>
  readdirSync(path(`src/${folder}`)).map((file) => `export * from ${JSON.stringify(path(`src/${folder}/${file}`))};`),
);
const functionsEntry = [`import ${JSON.stringify(path('src/surfaces/excel/functions.ts'))};`, ...coreAndDomain].join('');

/**
 * Excel's functions-only runtime and the embedded sheet load the same script: one file, no chunks, no eval, no page.
 * It hands on what it stands on, so that the sheet's page does not carry that twice.
 */
const functions = {
  ...shared('functions', { instance: 'functions', getCustomTransformers: () => ({ before: [withoutUnseen] }) }),
  target: ['web', 'es2020'],
  entry: { functions: `data:text/javascript,${encodeURIComponent(functionsEntry)}` },
  output: { path: path('dist'), library: { name: 'BeddingLedger', type: 'var' } },
  // Plain ASCII: no host or server needs to know the file's encoding to show `°C` and `m³` in a sentence.
  optimization: { minimizer: [new MinimizerPlugin({ extractComments: false, terserOptions: { format: { ascii_only: true } } })] },
};

/** What the sheet's page takes from functions.js; the records it carries itself, with all their words. */
const fromFunctions = ({ request }, found) => (/\/(core|domain)\/[a-z-]+\.ts$/.test(request) ? found(null, 'BeddingLedger') : found());

/** The grid's libraries stay whole, each as its own unmodified script that leaves a global. */
const sheet = {
  ...shared('sheet'),
  target: ['web', 'es2022'],
  entry: { host: path('src/surfaces/sheet/install.ts'), sheet: path('src/surfaces/sheet/index.ts') },
  externals: [{ '@odoo/o-spreadsheet': 'o_spreadsheet', '@odoo/owl': 'owl' }, fromFunctions],
  output: { path: path('dist') },
};

/** The panel in Excel is a page of its own, without functions.js. */
const taskpane = {
  ...shared('taskpane'),
  target: ['web', 'es2022'],
  entry: { taskpane: path('src/surfaces/excel/taskpane.ts') },
  output: { path: path('dist') },
};

/** What runs in Node: the rest of the build, and the little server behind `npm start`. */
const tools = {
  ...shared('tools'),
  target: 'node20',
  entry: {
    generate: path('src/generate/index.ts'),
    serve: path('src/generate/serve.ts'),
    excel: path('src/generate/excel.ts'),
    package: path('src/generate/package.ts'),
  },
  // These read files of their own that they find beside themselves.
  externals: Object.fromEntries(['office-addin-dev-certs', 'purgecss', 'subset-font'].map((name) => [name, `commonjs ${name}`])),
  output: { path: path('.build'), filename: '[name].cjs' },
  optimization: { minimize: false },
};

export default [functions, sheet, taskpane, tools];
