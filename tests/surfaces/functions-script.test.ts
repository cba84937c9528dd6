import { readFileSync } from 'node:fs';
import { createContext, runInContext } from 'node:vm';
import { beforeAll, describe, expect, it } from 'vitest';
import { registry } from '../../src/functions/index.ts';

type Associated = (...given: unknown[]) => unknown;

/** Excel's functions-only runtime as it may be at worst: no page, no timers, no encoder, no eval, and errors only once it is called. */
function runBare() {
  const associated = new Map<string, Associated>();
  const host: Record<string, unknown> = { associate: (id: string, call: Associated) => associated.set(id, call) };
  const context = createContext({ CustomFunctions: host }, { codeGeneration: { strings: false, wasm: false } });
  runInContext('for (const name of ["console", "WebAssembly", "SharedArrayBuffer", "Atomics"]) delete globalThis[name]', context);
  runInContext(readFileSync('dist/functions.js', 'utf8'), context, { filename: 'functions.js' });
  return { associated, host, context, globals: runInContext('Object.keys(globalThis)', context) as string[] };
}

class HostError extends Error {
  readonly code: string;

  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

describe('dist/functions.js in a bare script context', () => {
  let bare: ReturnType<typeof runBare>;
  beforeAll(() => {
    bare = runBare();
    Object.assign(bare.host, { Error: HostError, ErrorCode: { invalidValue: '#VALUE!', notAvailable: '#N/A' } });
  });

  const herd = (...given: unknown[]) => bare.associated.get('DEMAND.HERD')?.(...given, {});

  it('associates every function and leaves one name behind', () => {
    expect([...bare.associated.keys()]).toEqual(registry.map(({ name }) => name));
    // It hands core and domain on to the sheet’s page.
    expect(bare.globals).toEqual(['CustomFunctions', 'BeddingLedger']);
  });

  it('hands on to the sheet’s page all that core, domain and budget export, under names of their own', () => {
    const exported = Object.values(import.meta.glob<object>('../../src/{core,domain,budget}/*.ts', { eager: true })).flatMap(Object.keys);
    expect(Object.keys(runInContext('BeddingLedger', bare.context) as object).sort()).toEqual(exported.sort());
  });

  it('answers a cell, and a range row by row', () => {
    expect(herd([[100]], [[2]], null, null)).toEqual([[73]]);
    expect(herd([[100], [200]], [[2]], null, null)).toEqual([[73], [146]]);
  });

  it('throws the host’s own error where the answer is one cell', () => {
    expect(() => herd([[-5]], [[2]], null, null)).toThrow(HostError);
    expect(() => herd([[-5]], [[2]], null, null)).toThrow('cubicles (cubicles): -5 is below 1');
  });

  it('puts an error into its own cell of a range and answers the others', () => {
    const [[first], [second]] = herd([[100], ['many']], [[2]], null, null) as [[unknown], [unknown]];
    expect(first).toBe(73);
    expect(second).toBeInstanceOf(HostError);
    expect((second as HostError).message).toMatch(/^cubicles \(cubicles\): "many" is text, not a number/);
  });

  it('names the argument when the cell it reads holds an error', () => {
    const { code, message } = thrownBy(() => herd([[new HostError('#DIV/0!', '')]], [[2]], null, null)) as HostError;
    expect(code).toBe('#VALUE!');
    expect(message).toContain('cubicles (cubicles): the cell it reads holds an error');
  });

  function thrownBy(call: () => unknown): unknown {
    try {
      return call();
    } catch (thrown) {
      return thrown;
    }
  }
});
