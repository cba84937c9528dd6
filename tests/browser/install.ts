import { execFileSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

export function runnable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** Where programs of these names may lie, in the order of the folders on the path. */
export const onPath = (...names: readonly string[]): readonly string[] =>
  (process.env['PATH'] ?? '').split(delimiter).flatMap((folder) => names.map((name) => join(folder, name)));

export function attempt(command: string, ...args: string[]): void {
  try {
    execFileSync(command, args, { stdio: ['ignore', 'inherit', 'inherit'], env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
  } catch {
    // What matters is whether the program is there afterwards; the caller looks.
  }
}

/** Whether packages of Debian and its kin can be installed here. */
export const isDebianRoot = (): boolean => process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');

/** Another test may be installing at the same moment: the lock is waited for. */
export function installPackages(...packages: readonly string[]): void {
  if (!isDebianRoot()) return;
  attempt('apt-get', 'update');
  attempt('apt-get', '-o', 'DPkg::Lock::Timeout=600', 'install', '-y', '--no-install-recommends', ...packages);
}

/** The program, installed first where there is none. Its tests are never skipped: without it they fail, and say what to install. */
export function findOrInstall(find: () => string | undefined, packages: readonly string[], otherwise: string): string {
  const found = find();
  if (found) return found;
  installPackages(...packages);
  const now = find();
  if (now) return now;
  throw new Error(otherwise);
}
