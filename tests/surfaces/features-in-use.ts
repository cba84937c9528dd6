import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { CompatData, Identifier } from '@mdn/browser-compat-data';
import { type AnyNode, parse } from 'acorn';
import { full } from 'acorn-walk';
import postcss from 'postcss';

/** Which version of each browser has which feature: Mozilla's table, from which MDN's pages are made. */
const table = JSON.parse(readFileSync('node_modules/@mdn/browser-compat-data/data.json', 'utf8')) as CompatData;

export const engines = ['chrome', 'firefox', 'safari'] as const;
export type Engine = (typeof engines)[number];
/** The first version with the feature; an engine that has it in none is left out: the browser tests hold that the page does without there. */
export type Since = Readonly<Partial<Record<Engine, number>>>;

type Found = Map<string, readonly Identifier[]>;

const version = (said: unknown): number => (typeof said === 'string' ? Number.parseFloat(said.replace('≤', '')) : Number.NaN);

function first({ __compat }: Identifier, engine: Engine): number {
  const stated = [__compat?.support[engine] ?? []].flat();
  const whole = stated.filter(
    ({ flags, prefix, alternative_name, version_removed }) => !flags && !prefix && !alternative_name && !version_removed,
  );
  return Math.min(Number.POSITIVE_INFINITY, ...whole.map(({ version_added }) => version(version_added)).filter(Number.isFinite));
}

/** Where several features have the name, the oldest of them. */
const since = (features: readonly Identifier[]): Since =>
  Object.fromEntries(
    engines
      .map((engine) => [engine, Math.min(...features.map((feature) => first(feature, engine)))] as const)
      .filter(([, from]) => Number.isFinite(from)),
  );

const at = (from: object | undefined, ...names: readonly string[]): Identifier | undefined =>
  names.reduce<object | undefined>((within, name) => (within as Record<string, object> | undefined)?.[name], from) as
    | Identifier
    | undefined;

/** All members of all interfaces by their name: of `x.name` no parser knows what x is. */
function membersByName(): Map<string, Identifier[]> {
  const all = new Map<string, Identifier[]>();
  const interfaces = [table.javascript['builtins'] as Identifier, table.api as Identifier].flatMap((group) => Object.entries(group));
  for (const [holder, members] of interfaces) {
    if (/^CSS.*Descriptors$/.test(holder)) continue;
    for (const [name, member] of Object.entries(members as Identifier)) {
      if ((member as Identifier).__compat) all.set(name, [...(all.get(name) ?? []), member as Identifier]);
    }
  }
  return all;
}
const members = membersByName();

function note(found: Found, name: string, ...features: readonly (Identifier | undefined)[]): boolean {
  const known = features.filter((feature): feature is Identifier => feature?.__compat !== undefined);
  if (known.length > 0) found.set(name, known);
  return known.length > 0;
}

const isName = (node: AnyNode): node is AnyNode & { type: 'Identifier'; name: string } => node.type === 'Identifier';

/** Names that the script gives to members of its own: these are not the browser's. */
function ownNames(script: AnyNode): ReadonlySet<string> {
  const own = new Set<string>();
  full(script, (node) => {
    const one = node as AnyNode;
    const named = one.type === 'Property' || one.type === 'MethodDefinition' || one.type === 'PropertyDefinition';
    if (named && !one.computed && isName(one.key)) own.add(one.key.name);
    if (one.type !== 'AssignmentExpression' || one.left.type !== 'MemberExpression' || one.left.computed) return;
    if (isName(one.left.property)) own.add(one.left.property.name);
  });
  return own;
}

function inScript(found: Found, text: string): void {
  // All of ECMAScript 2022's syntax is in Chrome 94, Firefox 93 and Safari 16.4; what is newer does not parse.
  const script = parse(text, { ecmaVersion: 2022 });
  const own = ownNames(script);
  full(script, (node) => {
    const one = node as AnyNode;
    if (one.type === 'MemberExpression' && !one.computed && isName(one.property)) {
      const { name } = one.property;
      const holder = isName(one.object) ? one.object.name : '';
      const builtins = at(table.javascript, 'builtins', holder);
      const api = at(table.api, holder);
      const onHolder = [at(builtins, name), at(builtins, `${name}_static`), at(api, name), at(api, `${name}_static`)];
      if (!note(found, `${holder}.${name}`, ...onHolder) && !own.has(name)) note(found, `.${name}`, ...(members.get(name) ?? []));
    }
    if ((one.type === 'NewExpression' || one.type === 'CallExpression') && isName(one.callee) && one.callee.name.length > 2) {
      const { name } = one.callee;
      note(found, name, at(table.javascript, 'builtins', name), at(table.api, name), at(table.api, 'Window', name));
    }
    if (one.type === 'Literal' && 'regex' in one && /\(\?<[=!]/.test(one.regex?.pattern ?? '')) {
      note(found, 'lookbehind', at(table.javascript, 'regular_expressions', 'lookbehind_assertion'));
    }
  });
}

function inStyles(found: Found, text: string): void {
  const { properties, selectors, types } = table.css;
  const functions = Object.values(types ?? {});
  postcss.parse(text).walk((node) => {
    if (node.type === 'atrule') note(found, `@${node.name}`, at(table.css['at-rules'], node.name));
    if (node.type === 'rule') {
      if (node.parent?.type === 'rule') note(found, 'nested rules', at(selectors, 'nesting'));
      for (const [all, name = ''] of node.selector.matchAll(/::?([a-z-]+)/g)) note(found, all, at(selectors, name));
    }
    if (node.type !== 'decl') return;
    note(found, node.prop, at(properties, node.prop));
    for (const word of node.value.split(/[\s,()]+/)) note(found, `${node.prop}: ${word}`, at(properties, node.prop, word));
    for (const [, name = ''] of node.value.matchAll(/([a-z-]+)\(/g)) {
      note(found, `${name}()`, at(types, name), ...functions.map((of) => at(of, name)));
    }
  });
}

function inMarkup(found: Found, text: string): void {
  for (const [, tag = '', attributes = ''] of text.matchAll(/<([a-z]+)((?:\s+[\w:-]+(?:="[^"]*")?)*)/g)) {
    note(found, `<${tag}>`, at(table.html, 'elements', tag));
    for (const [, name = '', value = ''] of attributes.matchAll(/([\w-]+)(?:="([^"]*)")?/g)) {
      // The grid's templates work a value out: the words that it may come to stand in quotes.
      const plain = name.replace('t-att-', '');
      const words = [value, ...[...value.matchAll(/'([\w-]+)'/g)].map(([, word = '']) => word)];
      const attribute = at(table.html, 'global_attributes', plain) ?? at(table.html, 'elements', tag, plain);
      note(found, `${plain}=""`, attribute);
      for (const word of words) note(found, `${plain}="${word}"`, at(attribute, word), at(attribute, word.replaceAll('-', '_')));
    }
  }
}

/** Every feature of JavaScript, the browser, CSS and HTML that the built pages of the sheet use and the table knows. */
export function featuresInUse(dist: string): ReadonlyMap<string, Since> {
  const found: Found = new Map();
  const files = [
    'host.js',
    'functions.js',
    'sheet.js',
    'sheet.css',
    'sheet.html',
    ...readdirSync(join(dist, 'grid')).map((name) => join('grid', name)),
  ];
  for (const file of files) {
    const text = readFileSync(join(dist, file), 'utf8');
    if (file.endsWith('.js')) inScript(found, text);
    if (file.endsWith('.css')) inStyles(found, text);
    if (!file.endsWith('.html')) continue;
    inMarkup(found, text);
    for (const [, styles = ''] of text.matchAll(/<style>([\s\S]*?)<\/style>/g)) inStyles(found, styles);
  }
  return new Map([...found].map(([name, features]) => [name, since(features)]));
}
