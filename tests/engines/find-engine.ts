import { execFileSync } from 'node:child_process';
import { installPackages, onPath, runnable } from '../browser/install.ts';

/** Shells of SpiderMonkey (Firefox) and JavaScriptCore (Safari); the oldest first, as it shows most. */
const names = ['js102', 'js115', 'js128', 'js140', 'jsc'];
const elsewhere = ['/System/Library/Frameworks/JavaScriptCore.framework/Versions/Current/Helpers/jsc'];
const packages = ['libmozjs-102-dev', 'libmozjs-128-dev', 'libmozjs-140-dev', 'libjavascriptcoregtk-4.1-bin'];

const installed = (): string | undefined => [...names.flatMap((name) => onPath(name)), ...elsewhere].find(runnable);

/** The shell of an engine that is not V8, installed first where there is none. Its tests are never skipped: without one they fail. */
export function findEngine(): string {
  const found = installed();
  if (found) return found;
  for (const name of packages) {
    installPackages(name);
    const now = installed();
    if (now) return now;
  }
  throw new Error(
    'No JavaScript shell of SpiderMonkey or JavaScriptCore was found and none could be installed. Install one (Debian: libmozjs-102-dev) and test again.',
  );
}

export const runIn = (engine: string, file: string): string => execFileSync(engine, [file], { encoding: 'utf8', maxBuffer: 1e9 });
