import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';

const whole = (folder: string): readonly string[] => readdirSync(folder).filter((name) => statSync(join(folder, name)).isFile());

/** Does what saves a file into the folder, and gives its path once all of it is there; a browser may write it under another name first. */
export async function newFile(folder: string, act: () => Promise<void>): Promise<string> {
  const before = new Set(whole(folder));
  await act();
  const added = (): readonly string[] => whole(folder).filter((name) => !before.has(name));
  await expect.poll(() => added().some((name) => /\.(json|xlsx)$/.test(name) && statSync(join(folder, name)).size > 0)).toBe(true);
  await expect.poll(() => added().filter((name) => !/\.(json|xlsx)$/.test(name))).toEqual([]);
  return join(folder, added()[0] as string);
}
