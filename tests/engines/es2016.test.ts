import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createContext, runInContext } from 'node:vm';
import { parse } from 'acorn';
import ts from 'typescript';
import { beforeAll, describe, expect, it } from 'vitest';
import { calls, script } from './calls.ts';

/** What ECMAScript 2016 has, by interface, as TypeScript's own declarations of it list it; '' holds the globals. */
function declared(lib: string, known = new Map<string, Set<string>>()): Map<string, Set<string>> {
  const source = ts.createSourceFile(
    lib,
    readFileSync(join('node_modules/typescript/lib', `lib.${lib}.d.ts`), 'utf8'),
    ts.ScriptTarget.Latest,
  );
  const add = (owner: string, name: string) => known.set(owner, (known.get(owner) ?? new Set()).add(name));
  for (const { fileName } of source.libReferenceDirectives) declared(fileName, known);
  for (const statement of source.statements) {
    const names = ts.isVariableStatement(statement) ? statement.declarationList.declarations.map(({ name }) => name) : [];
    if (ts.isFunctionDeclaration(statement) || ts.isModuleDeclaration(statement)) names.push(statement.name as ts.Identifier);
    for (const name of names) add('', name.getText(source));
    const body = ts.isModuleDeclaration(statement) && statement.body && ts.isModuleBlock(statement.body) ? statement.body.statements : [];
    for (const inner of body)
      if (ts.isFunctionDeclaration(inner)) add((statement as ts.ModuleDeclaration).name.text, inner.name?.text ?? '');
    if (ts.isInterfaceDeclaration(statement))
      for (const { name } of statement.members) if (name) add(statement.name.text, name.getText(source).replace(/^\[|\]$/g, ''));
  }
  return known;
}

/** In the engine: takes away every global, static and method that is not on the list. */
function forget(list: Readonly<Record<string, readonly string[]>>): void {
  const keep = (from: object, names: readonly string[]): void => {
    for (const key of Reflect.ownKeys(from)) {
      const name = String(key).replace(/^Symbol\((.*)\)$/, '$1');
      const always = ['prototype', 'name', 'length', 'constructor', 'arguments', 'caller'].includes(name) || name.startsWith('__');
      if (!always && !names.includes(name)) Reflect.deleteProperty(from, key);
    }
  };
  // Before the engine forgets this name too.
  const all = globalThis as unknown as Record<string, { readonly prototype?: object }>;
  for (const name of Object.getOwnPropertyNames(all)) {
    const { [name]: value = {} } = all;
    const { [name]: own, [`${name}Constructor`]: statics } = list;
    if (!list['']?.includes(name)) Reflect.deleteProperty(all, name);
    else if (statics) {
      keep(value, statics);
      if (value.prototype && own) keep(value.prototype, own);
    } else if (own) keep(value, own);
  }
}

function engineOf2016() {
  const names = [...declared('es2016')].map(([owner, list]) => [owner, [...list]] as const);
  const context = createContext({});
  runInContext(`(${forget})(${JSON.stringify(Object.fromEntries(names))})`, context);
  return context;
}

describe('dist/functions.js in an engine that knows ECMAScript 2016 and no more', () => {
  let source: string;
  beforeAll(() => {
    source = readFileSync('dist/functions.js', 'utf8');
  });

  it('is syntax of 2016, its regular expressions too', () => {
    expect(() => parse(source, { ecmaVersion: 2016 })).not.toThrow();
  });

  it('is plain ASCII, and no name or key in it is spelled by escapes', () => {
    expect(source.match(/[^\n -~]/g) ?? []).toEqual([]);
    const names: string[] = [];
    parse(source, { ecmaVersion: 2016, onToken: ({ start, end, type }) => type.label === 'name' && names.push(source.slice(start, end)) });
    expect(names.length).toBeGreaterThan(10_000);
    expect(names.filter((name) => !/^[\w$]+$/.test(name))).toEqual([]);
  });

  it('calls no method that is newer but those it fills in, and fills in no other', () => {
    const [then, now] = ['es2016', 'esnext'].map((lib) => {
      const all = declared(lib);
      const owners = ['Array', 'String', 'Object', 'Number', 'Map', 'Set', 'RegExp', 'Symbol', 'Date', 'Promise'];
      return new Set([...owners, ...owners.map((owner) => `${owner}Constructor`)].flatMap((owner) => [...(all.get(owner) ?? [])]));
    }) as [Set<string>, Set<string>];
    const called = new Set<string>();
    let dot = false;
    parse(source, {
      ecmaVersion: 2016,
      onToken({ start, end, type: { label } }) {
        if (dot && label === 'name') called.add(source.slice(start, end));
        dot = label === '.';
      },
    });
    const newer = [...called].filter((name) => now.has(name) && !then.has(name)).sort();
    expect(newer).toEqual(['at', 'findLast', 'findLastIndex', 'flat', 'flatMap', 'fromEntries', 'toReversed']);
  });

  it('answers every call as in an engine of today', () => {
    const old = engineOf2016();
    expect(
      runInContext('[typeof globalThis, typeof Object.entries, typeof [].at, typeof "".padStart, typeof [].includes].join()', old),
    ).toBe('undefined,undefined,undefined,undefined,function');
    const answers: unknown[] = JSON.parse(runInContext(script(), old));
    const right: unknown[] = JSON.parse(runInContext(script(), createContext({})));
    for (const [k, answer] of right.entries()) expect(answers[k], JSON.stringify(calls[k])).toEqual(answer);
  });

  it('fills in only what an engine lacks: one of today keeps all of its own', () => {
    const today = createContext({});
    runInContext(
      `var CustomFunctions = { associate() {} };
      const now = () => new Map(Object.getOwnPropertyNames(globalThis).flatMap((name) => [globalThis[name], globalThis[name]?.prototype]
        .filter((owner) => owner && /object|function/.test(typeof owner) && owner !== globalThis)
        .flatMap((owner, k) => Reflect.ownKeys(owner).map((key) => [name + k + String(key), Object.getOwnPropertyDescriptor(owner, key)]))));
      const same = (one, other) => one && other && ['value', 'get', 'set'].every((part) => Object.is(one[part], other[part]));
      const before = now();`,
      today,
    );
    runInContext(source, today);
    const changed: string[] = runInContext(
      `const after = now();
      [...after.keys(), ...before.keys()].filter((key) => !/^BeddingLedger/.test(key) && !same(before.get(key), after.get(key)))`,
      today,
    );
    expect(runInContext('before.size', today)).toBeGreaterThan(600);
    expect(changed).toEqual([]);
  });
});
