import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { getQuickJS } from 'quickjs-emscripten';
import { beforeAll, describe, expect, it } from 'vitest';
import { calls, script } from './calls.ts';
import { findEngine, runIn } from './find-engine.ts';

/** As far as two engines may differ in the last digits of a power, an exponential or a root found by iteration. */
const NEAR = 1e-12;

const near = (a: unknown, b: unknown): boolean | undefined =>
  typeof a === 'number' && typeof b === 'number' ? Math.abs(a - b) <= NEAR * Math.max(Math.abs(a), Math.abs(b)) : undefined;

function inShell(source: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'engine-'));
  try {
    writeFileSync(join(folder, 'all.js'), source);
    return runIn(findEngine(), join(folder, 'all.js'));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

const engines: readonly (readonly [string, (source: string) => Promise<string> | string])[] = [
  ['QuickJS', async (source) => String((await getQuickJS()).evalCode(source))],
  ['SpiderMonkey or JavaScriptCore', inShell],
];

describe.each(engines)('dist/functions.js in %s', (_, run) => {
  let source: string;
  let answers: readonly unknown[];
  beforeAll(async () => {
    expect.addEqualityTesters([near]);
    source = script();
    answers = JSON.parse(await run(source));
  }, 900_000);

  it('answers every example, every step on its way and every refusal as in V8', () => {
    const right: unknown[] = JSON.parse(runInContext(source, createContext({})));
    expect(right).toHaveLength(calls.length);
    for (const [k, answer] of right.entries()) expect(answers[k], JSON.stringify(calls[k])).toEqual(answer);
  });
});
