import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

interface Package {
  readonly version: string;
  readonly license?: string;
  readonly dev?: true;
}

const json = (path: string): unknown => JSON.parse(readFileSync(path, 'utf8'));
const { scripts, dependencies, devDependencies } = json('package.json') as Record<string, Record<string, string>>;
const { packages } = json('package-lock.json') as { packages: Record<string, Package> };
const direct = Object.entries({ ...dependencies, ...devDependencies });

/** Everything of ours that may name a package. */
const sources = ['src', 'tests']
  .flatMap((folder) => readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`))
  .filter((path) => /\.(ts|js|html|css)$/.test(path))
  .concat('webpack.config.js', 'tsconfig.json', '.biome.json', '.stryker.config.json')
  .map((path) => readFileSync(path, 'utf8'))
  .concat(Object.values(scripts ?? {}).join('\n'))
  .join('\n');

/** Never named by us: `webpack` on the command line is run by it. */
const behindOthers: Readonly<Record<string, string>> = { 'webpack-cli': 'webpack', '@stryker-mutator/core': 'stryker' };

/** Types stand for the package they describe; tsconfig.json names those that describe a host. */
const namedAs = (name: string): string => behindOthers[name] ?? name.replace('@types/', '');

/**
 * Licences that let an MIT project hand their code on. LGPL holds for the grid and owl, which are handed on whole and
 * unmodified, each as a file of its own that may be exchanged, with its licence beside it.
 */
const permissive = [
  '0BSD',
  'Apache-2.0',
  'Apache-2.0 AND MIT',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'ISC',
  'MIT',
  'MIT-0',
  '(OFL-1.1 AND MIT)',
  'MIT AND OFL-1.1',
];
const unmodified = ['@odoo/o-spreadsheet', '@odoo/owl'];

describe('packages', () => {
  it.each(direct)('%s %s is one exact version', (_, version) => {
    expect(version).toMatch(/^\d+\.\d+\.\d+$/);
  });

  it.each(direct)('%s is used', (name) => {
    const quoted = namedAs(name).replace(/[/.\\-]/g, '\\$&');
    expect(sources).toMatch(new RegExp(`(['"\`/ ]|^|node_modules/|modules}/|:)${quoted}(['"\`/ ]|$)`, 'm'));
  });

  const brought = Object.entries(packages).filter(([path, { dev }]) => path !== '' && !dev);

  it.each(brought)('%s, which is not for development alone, has a licence that goes with MIT', (path, { license }) => {
    const name = path.replace(/.*node_modules\//, '');
    if (unmodified.includes(name)) expect(license).toMatch(/^LGPL-3\.0/);
    else expect(permissive).toContain(license);
  });
});
