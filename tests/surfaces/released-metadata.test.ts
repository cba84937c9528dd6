import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { version } from '../../package.json';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';
import released from './released-metadata.json';

/**
 * Excel keeps the functions.json of a version, and users' workbooks hold names and arguments in their order.
 * released-metadata.json is written by `npx vitest run --config tests/vitest.config.ts released-metadata -u`; a version that
 * is in it already is not written over: raise the version in package.json, or take its line out while it is not released.
 */
const metadata = functionsFile(registry);
const hash = createHash('sha256').update(JSON.stringify(metadata)).digest('hex').slice(0, 16);
/** Arguments in order; `?` marks those that may be left out. */
const functions: Record<string, string> = Object.fromEntries(
  metadata.functions.map(({ id, parameters }) => [
    id,
    parameters.map(({ name, optional, repeating }) => (optional || repeating ? `${name}?` : name)).join(', '),
  ]),
);
const versions: Readonly<Record<string, string>> = released.versions;

describe('functions.json, which Excel keeps by version and users’ workbooks rely on', () => {
  it('does not change without a new version in package.json', () => {
    expect(versions[version] ?? hash).toBe(hash);
  });

  it('is recorded for this version', async () => {
    if (versions[version] !== undefined && versions[version] !== hash) return;
    const record = { versions: { ...versions, [version]: hash }, functions };
    await expect(`${JSON.stringify(record, null, 2)}\n`).toMatchFileSnapshot(join(import.meta.dirname, 'released-metadata.json'));
  });

  it.each(Object.entries(released.functions))(
    '%s is still there, its arguments in their places, new ones last and optional',
    (name, before) => {
      const [was, is] = [before, functions[name] ?? 'gone'].map((list) => (list === '' ? [] : list.split(', '))) as [string[], string[]];
      const bare = (argument: string) => argument.replace('?', '');
      expect(is.slice(0, was.length).map(bare)).toEqual(was.map(bare));
      expect(is.slice(was.length).filter((argument) => !argument.endsWith('?'))).toEqual([]);
      expect(was.filter((argument, k) => argument.endsWith('?') && !is[k]?.endsWith('?'))).toEqual([]);
    },
  );
});
