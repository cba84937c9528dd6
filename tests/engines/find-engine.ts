import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { attempt } from '../browser/find-browser.ts';

/** Shells of SpiderMonkey (Firefox) and JavaScriptCore (Safari); the oldest first, as it shows most. */
const names = ['js102', 'js115', 'js128', 'js140', 'jsc'];
const elsewhere = ['/System/Library/Frameworks/JavaScriptCore.framework/Versions/Current/Helpers/jsc'];
const packages = ['libmozjs-102-dev', 'libmozjs-128-dev', 'libmozjs-140-dev', 'libjavascriptcoregtk-4.1-bin'];

function installed(): string | undefined {
  const onPath = names.flatMap((name) => (process.env['PATH'] ?? '').split(delimiter).map((folder) => join(folder, name)));
  return [...onPath, ...elsewhere].find((path) => existsSync(path));
}

/** The shell of an engine that is not V8, installed first where there is none. Its tests are never skipped: without one they fail. */
export function findEngine(): string {
  const found = installed();
  if (found) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    attempt('apt-get', 'update');
    for (const name of packages) {
      attempt('apt-get', '-o', 'DPkg::Lock::Timeout=600', 'install', '-y', '--no-install-recommends', name);
      const now = installed();
      if (now) return now;
    }
  }
  throw new Error(
    'No JavaScript shell of SpiderMonkey or JavaScriptCore was found and none could be installed. Install one (Debian: libmozjs-102-dev) and test again.',
  );
}

export const runIn = (engine: string, file: string): string => execFileSync(engine, [file], { encoding: 'utf8', maxBuffer: 1e9 });
