import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import MinimizerPlugin from 'minimizer-webpack-plugin';
import ts from 'typescript';

const path = (relative) => fileURLToPath(new URL(relative, import.meta.url));

/**
 * What a record holds for the panel, the documents and the tests, and no cell ever shows, stays out of the script that
 * Excel loads into every workbook: it would be a sixth of it. Taken away from the object given to `define` or
 * `defineSpill` and from nothing else.
 */
const unseenInCells = new Set(['summary', 'finds', 'sources', 'examples', 'inRows', 'byYear']);
const isRecord = (node) => ts.isCallExpression(node) && ['define', 'defineSpill'].includes(node.expression.text);
const withoutUnseen = ({ factory }, { expression, typeArguments, arguments: [record] }) => {
  const seen = record.properties.filter(({ name }) => !unseenInCells.has(name?.text));
  return factory.createCallExpression(expression, typeArguments, [factory.createObjectLiteralExpression(seen)]);
};

/** The minimizer leaves the text of tagged templates as it is, since a tag may ask for it: it is made plain ASCII here. */
const isTemplatePart = (node) => node.kind >= ts.SyntaxKind.FirstTemplateToken && node.kind <= ts.SyntaxKind.LastTemplateToken;
const escaped = (text) => text.replace(/[^\n -~]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, '0')}`);
const withEscapes = ({ factory }, { kind, text, rawText }) =>
  factory.createTemplateLiteralLikeNode(kind, text, escaped(rawText ?? text), ts.TokenFlags.None);

const forCells = (context) => (source) => {
  const visit = (node) => {
    if (isTemplatePart(node)) return withEscapes(context, node);
    return ts.visitEachChild(isRecord(node) ? withoutUnseen(context, node) : node, visit, context);
  };
  return ts.visitNode(source, visit);
};

/** @returns {import('webpack').Configuration} what all bundles share; types are checked by `tsc`, once for all of them */
const shared = (name, test = /\.ts$/, compilerOptions = {}, typescript = {}) => ({
  name,
  mode: 'production',
  devtool: false,
  cache: { type: 'filesystem', cacheDirectory: path('.cache/webpack'), name, buildDependencies: { config: [path('webpack.config.js')] } },
  module: {
    rules: [
      {
        test,
        loader: 'ts-loader',
        options: {
          transpileOnly: true,
          compilerOptions: { noEmit: false, allowImportingTsExtensions: false, ...compilerOptions },
          ...typescript,
        },
      },
      { resourceQuery: /raw/, type: 'asset/source' },
    ],
  },
  performance: false,
  stats: 'errors-warnings',
});

/** All that core, domain and budget export, as lines of a module. */
const foundations = ['core', 'domain', 'budget'].flatMap((folder) =>
  readdirSync(path(`src/${folder}`)).map((file) => `export * from ${JSON.stringify(path(`src/${folder}/${file}`))};`),
);
const functionsEntry = ['older-engines', 'functions']
  .map((file) => `import ${JSON.stringify(path(`src/surfaces/excel/${file}.ts`))};`)
  .concat(foundations)
  .join('');

/**
 * Excel's functions-only runtime and the embedded sheet load the same script: one file, no chunks, no eval, no page.
 * It hands on what it stands on, so that the sheet's page does not carry that twice. Libraries are compiled with it: before
 * version 2403, and in every version bought once up to 2021, that runtime knows the language as of 2016 alone.
 */
const functions = {
  ...shared(
    'functions',
    /\.(ts|js|mjs)$/,
    { target: 'es2016', allowJs: true },
    { instance: 'functions', getCustomTransformers: () => ({ before: [forCells] }) },
  ),
  target: ['web', 'es2016'],
  entry: { functions: `data:text/javascript,${encodeURIComponent(functionsEntry)}` },
  output: { path: path('dist'), library: { name: 'BeddingLedger', type: 'var' } },
  // Plain ASCII: no host or server needs to know the file's encoding to show `°C` and `m³` in a sentence, and as in
  // ECMAScript 5 no key stands unquoted that an engine's Unicode may not know.
  optimization: { minimizer: [new MinimizerPlugin({ extractComments: false, terserOptions: { format: { ascii_only: true, ecma: 5 } } })] },
};

/** What the sheet's page takes from functions.js; the records it carries itself, with all their words. */
const fromFunctions = ({ request }, found) =>
  /\/(core|domain|budget)\/[a-z-]+\.ts$/.test(request) ? found(null, 'BeddingLedger') : found();

/** The grid's libraries stay whole, each as its own unmodified script that leaves a global. */
const sheet = {
  ...shared('sheet'),
  target: ['web', 'es2022'],
  entry: { host: path('src/surfaces/sheet/install.ts'), sheet: path('src/surfaces/sheet/index.ts') },
  externals: [{ '@odoo/o-spreadsheet': 'o_spreadsheet', '@odoo/owl': 'owl' }, fromFunctions],
  output: { path: path('dist') },
};

/** What reads spreadsheet files beside the page; both pages carry it as text, as neither may fetch it. */
const reader = {
  ...shared('reader'),
  target: ['webworker', 'es2022'],
  entry: { reader: path('src/surfaces/sheet/opening/worker.ts') },
  output: { path: path('.build') },
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

export default [functions, sheet, reader, taskpane, tools];
