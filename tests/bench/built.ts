import { readFileSync } from 'node:fs';
import { Script } from 'node:vm';
import { registry } from '../../src/functions/index.ts';

type Associated = (...given: unknown[]) => unknown[][];

class HostError extends Error {
  readonly code: string;

  constructor(code: string, message: string) {
    super(message);
    this.code = code;
  }
}

export const script = new Script(readFileSync('dist/functions.js', 'utf8'), { filename: 'functions.js' });

/**
 * Loads dist/functions.js as a host does, and gives what it registered. Into this context and not one of its own: there
 * node:vm asks a hook for every `Math` and `Number`, which no host does and which costs more than most of our equations.
 */
export function load(): ReadonlyMap<string, Associated> {
  const associated = new Map<string, Associated>();
  const associate = (id: string, call: Associated) => associated.set(id, call);
  const ErrorCode = { invalidValue: '#VALUE!', notAvailable: '#N/A' };
  Object.assign(globalThis, { CustomFunctions: { associate, Error: HostError, ErrorCode } });
  script.runInThisContext();
  return associated;
}

const functions = load();

/** The function as a host calls it: null for every argument left out, and the invocation behind them all. */
export function built(name: string): Associated {
  const associated = functions.get(name);
  const record = registry.find((record) => record.name === name);
  if (!associated || !record) throw new Error(`dist/functions.js has no ${name}: run npm run build`);
  return (...given) => associated(...record.parameters.map((_, k) => given[k] ?? null), {});
}
