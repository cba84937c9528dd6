import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import MinimizerPlugin from 'minimizer-webpack-plugin';

const path = (relative) => fileURLToPath(new URL(relative, import.meta.url));

/** @returns {import('webpack').Configuration} what all bundles share; types are checked by `tsc`, once for all of them */
const shared = (name) => ({
  name,
  mode: 'production',
  devtool: false,
  cache: { type: 'filesystem', cacheDirectory: path('.cache/webpack'), name, buildDependencies: { config: [path('webpack.config.js')] } },
  module: {
    rules: [
      {
        test: /\.ts$/,
        loader: 'ts-loader',
        options: { transpileOnly: true, compilerOptions: { noEmit: false, allowImportingTsExtensions: false } },
      },
      { resourceQuery: /raw/, type: 'asset/source' },
    ],
  },
  performance: false,
  stats: 'errors-warnings',
});

/** Excel's functions-only runtime and the embedded sheet load the same script: one file, no chunks, no eval, no page. */
const functions = {
  ...shared('functions'),
  target: ['web', 'es2020'],
  entry: { functions: path('src/surfaces/excel/functions.ts') },
  output: { path: path('dist'), library: { name: 'BeddingLedger', type: 'var' } },
  // Plain ASCII: no host or server needs to know the file's encoding to show `°C` and `m³` in a sentence.
  optimization: { minimizer: [new MinimizerPlugin({ extractComments: false, terserOptions: { format: { ascii_only: true } } })] },
};

/** On the sheet's page functions.js has already brought the functions and what they stand on; the page does not carry them twice. */
const fromFunctions = ({ context, request }, found) => {
  const module = /\/src\/((core|functions|domain)\/.+\.ts)$/.exec(resolve(context, request).replaceAll('\\', '/'))?.[1];
  return module ? found(null, `BeddingLedger.modules('./${module}')`) : found();
};

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
