import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import packageJson from '../../package.json';
import { registry } from '../../src/functions/index.ts';
import catalogue from '../functions/catalogue.json';

const guide = readFileSync('DEVELOPERS.md', 'utf8');
const found = (pattern: RegExp): string[] => [...new Set([...guide.matchAll(pattern)].map(([, what = '']) => what))];

/** Files in backticks, such as `.ci/run`. What is said of a folder may leave out the way to it; what the build makes is not there yet. */
const paths = found(/`([\w./-]*\/[\w.-]+|[\w.-]+\.(?:ts|js|json|md))`/g).filter((path) => !/^[@/]|\*|^dist\//.test(path));
const commands = found(/`npm (?:run )?([a-z]+)\b/g);
const everywhere = ['src', 'tests'].flatMap((folder) => readdirSync(folder, { recursive: true, encoding: 'utf8' }));

const example = guide.slice(guide.indexOf('## Adding a function'), guide.indexOf('## Running things'));
const inExample = (pattern: RegExp): string => pattern.exec(example)?.[1] ?? expect.fail(`the example has no ${pattern}`);

describe('the contributors’ guide', () => {
  it('names enough files and commands for these tests to hold it', () => {
    expect(paths.length).toBeGreaterThan(15);
    expect(commands.length).toBeGreaterThan(6);
  });

  it.each(paths)('names a file that is there: %s', (path) => {
    const isThere = existsSync(path) || existsSync(`src/${path}`) || everywhere.some((file) => file.endsWith(`/${path}`));
    expect(isThere).toBe(true);
  });

  it.each(commands)('names a command that package.json has: npm %s', (command) => {
    expect([...Object.keys(packageJson.scripts), 'audit']).toContain(command);
  });

  it('names every licence of what is installed for development, and what states none', () => {
    const { packages } = JSON.parse(readFileSync('package-lock.json', 'utf8')) as {
      packages: Record<string, { dev?: true; license?: string }>;
    };
    const said = guide.slice(guide.indexOf('Licences installed for development'));
    for (const [path, { dev, license = path.replace(/.*node_modules\//, '') }] of Object.entries(packages)) {
      if (dev && license !== 'LICENSE') expect(said, path).toContain(license.replace(/[()]/g, ''));
    }
  });

  it('draws every folder of src and tests on its map, and no other', () => {
    const map = /```\nsrc\/\n([\s\S]*?)```/.exec(guide)?.[1] ?? '';
    const [sources = '', tests = ''] = map.split('tests/ ');
    const folders = (within: string) => readdirSync(within).filter((name) => !name.includes('.'));
    expect([...sources.matchAll(/^ {2}(\w+)\/(?= |$)/gm)].map(([, name]) => name).toSorted()).toEqual(folders('src').toSorted());
    expect([...tests.matchAll(/(\w+)\//g)].map(([, name]) => name).toSorted()).toEqual(folders('tests').toSorted());
  });

  it('shows with its example where a function’s equation, record, published value and name stand', async () => {
    const name = inExample(/as `([A-Z.]+)` shows/);
    const [compute, domain] = [inExample(/\*\*Domain\*\*: `(\w+)`/), inExample(/`src\/domain\/([\w-]+)\.ts`/)];
    const record = registry.find((one) => one.name === name) ?? expect.fail(`${name} is not in the registry`);
    const equations: Record<string, unknown> = await import(`../../src/domain/${domain}.ts`);
    expect(equations[compute]).toBeTypeOf('function');
    expect(record.compute).toBe(equations[compute]);
    const written = readFileSync(inExample(/`(src\/functions\/[\w-]+\.ts)`/), 'utf8');
    expect(written).toContain(`name: '${name}'`);
    expect(written).toContain(inExample(/`(compute: \w+)`/));
    expect(readFileSync(inExample(/`(tests\/published\/[\w.-]+)`/), 'utf8')).toContain(`${compute}(`);
    expect(Object.keys(catalogue)).toContain(name);
  });
});
