import { Parser } from 'saxen';

export type Attributes = Readonly<Record<string, string>>;

export interface Element {
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly (Element | string)[];
}

/** What hears of each element, by its name without prefix, in the order of the file. */
export interface Listener {
  open?(name: string, attributes: Attributes): void;
  close?(name: string): void;
  text?(text: string): void;
}

/** What programs add for themselves (ECMA-376 part 1, 18.2.7; part 3, 10.2): passed over with all that it holds. */
const passedOver = new Set(['extLst', 'AlternateContent']);

/** A part says in its first bytes how it is written (ECMA-376 part 2, 6.2.5: UTF-8 or UTF-16). */
export function decoded(bytes: Uint8Array): string {
  const [first, second] = bytes;
  const encoding = first === 0xff && second === 0xfe ? 'utf-16le' : first === 0xfe && second === 0xff ? 'utf-16be' : 'utf-8';
  return new TextDecoder(encoding).decode(bytes);
}

const entities: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" };

/** A letter that is written by its number or its name (XML 1.0, 4.1 and 4.6); a part of a spreadsheet can have no other. */
function unescaped(text: string): string {
  if (!text.includes('&')) return text;
  return text.replace(/&(?:#x([0-9a-fA-F]+)|#(\d+)|([^;&]*));/g, (_, hex, decimal, name) => {
    if (name === undefined) return String.fromCodePoint(hex === undefined ? Number(decimal) : Number.parseInt(hex, 16));
    const letter = entities[name];
    if (letter === undefined) throw new SyntaxError('a part with an entity of its own');
    return letter;
  });
}

const fail = (fault: Error): never => {
  throw fault;
};

/** Goes through a part once, from its first letter to its last; throws where it is not well-formed. */
export function walk(xml: string, listener: Listener): void {
  let passing = 0;
  const local = (name: string): string => name.slice(name.indexOf(':') + 1);
  const text = (content: string): void => {
    if (passing === 0) listener.text?.(content);
  };
  const attributesOf = (read: () => Record<string, string> | false): Attributes => {
    const all = read() || {};
    for (const name in all) all[name] = unescaped(all[name] as string);
    return all;
  };
  new Parser()
    .on('error', fail)
    .on('warn', fail)
    // A document type may define entities that grow without end; no part of a spreadsheet has one (ECMA-376 part 2, 6.2.5).
    .on('attention', () => fail(new SyntaxError('a part with a document type')))
    .on('openTag', (name, attributes) => {
      if (passing > 0 || passedOver.has(local(name))) passing++;
      else listener.open?.(local(name), attributesOf(attributes));
    })
    .on('closeTag', (name) => {
      if (passing > 0) passing--;
      else listener.close?.(local(name));
    })
    .on('text', (content) => text(unescaped(content)))
    .on('cdata', text)
    .parse(xml.replace(/^\ufeff/, ''));
}

/** Builds elements out of what is heard; `done` gets each that has ended and lies in no other. */
export class Builder {
  readonly #open: { name: string; attributes: Attributes; children: (Element | string)[] }[] = [];
  readonly #done: (element: Element) => void;

  constructor(done: (element: Element) => void) {
    this.#done = done;
  }

  get busy(): boolean {
    return this.#open.length > 0;
  }

  open(name: string, attributes: Attributes): void {
    this.#open.push({ name, attributes, children: [] });
  }

  text(content: string): void {
    this.#open.at(-1)?.children.push(content);
  }

  close(): void {
    const element = this.#open.pop();
    const around = this.#open.at(-1);
    if (element) around ? around.children.push(element) : this.#done(element);
  }
}

export function treeOf(xml: string): Element {
  const roots: Element[] = [];
  const builder = new Builder((element) => roots.push(element));
  walk(xml, {
    open: (name, attributes) => builder.open(name, attributes),
    text: (text) => builder.text(text),
    close: () => builder.close(),
  });
  return roots[0] as Element;
}

export const childrenOf = (element: Element | undefined, name: string): readonly Element[] =>
  (element?.children ?? []).filter((child): child is Element => typeof child !== 'string' && child.name === name);

export const childOf = (element: Element | undefined, name: string): Element | undefined => childrenOf(element, name)[0];

export const textOf = (element: Element): string =>
  element.children.map((child) => (typeof child === 'string' ? child : textOf(child))).join('');

const asEntity: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
export const escaped = (text: string): string => text.replace(/[&<>"]/g, (letter) => asEntity[letter] as string);

/** The element as text again, without prefixes and what belongs to another namespace. */
export function written({ name, attributes, children }: Element): string {
  const own = Object.entries(attributes).filter(([key]) => !key.includes(':') && key !== 'xmlns');
  const inside = children.map((child) => (typeof child === 'string' ? escaped(child) : written(child))).join('');
  return `<${name}${own.map(([key, value]) => ` ${key}="${escaped(value)}"`).join('')}>${inside}</${name}>`;
}
