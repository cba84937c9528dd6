import { html, type TemplateResult } from 'lit-html';

/** Names (in brackets where they hold spaces), numbers, signs of several marks, and everything else one by one. */
const tokens = /\[[^\]]+\]|[A-Za-z_][A-Za-z0-9_.]*|\d+(?:[.,]\d+)*(?:e-?\d+)?|'[^']*'|"[^"]*"|\*\*|[=!<>]=+|\s+|./g;

const signs: Readonly<Record<string, string>> = {
  '*': '×',
  '/': '÷',
  '-': '−',
  '==': '=',
  '===': '=',
  '>=': '≥',
  '<=': '≤',
  '!=': '≠',
  '!==': '≠',
};

const isName = (token: string): boolean => /^[A-Za-z_[]/.test(token);
const bare = (token: string): string => token.replace(/^\[|\]$/g, '');

/** `a if test, otherwise b` for `test ? a : b`. */
function inWords(equation: string): string {
  const match = /^(.+?) \? (.+?) : (.+)$/.exec(equation);
  return match ? `${match[2]} if ${match[1]}, otherwise ${inWords(match[3] as string)}` : equation;
}

/** Takes the exponent that begins at `at`: one token, or a bracket to its end. */
function exponent(parts: readonly string[], at: number): { readonly text: readonly string[]; readonly next: number } {
  let depth = 0;
  for (let k = at; k < parts.length; k++) {
    if (parts[k] === '(') depth++;
    if (parts[k] === ')') depth--;
    if (depth === 0) return { text: parts.slice(at, k + 1), next: k + 1 };
  }
  return { text: parts.slice(at), next: parts.length };
}

const joiners: ReadonlySet<string> = new Set(['if', 'otherwise']);

function setOne(token: string): TemplateResult | string {
  if (joiners.has(token) || !isName(token)) return signs[token] ?? token;
  return html`<var>${bare(token)}</var>`;
}

/** An equation as a book would set it. */
export function setEquation(equation: string): TemplateResult {
  const parts = inWords(equation).match(tokens) ?? [];
  const set: (TemplateResult | string)[] = [];
  for (let at = 0; at < parts.length; at++) {
    if (parts[at] !== '**') {
      set.push(setOne(parts[at] as string));
      continue;
    }
    while (typeof set.at(-1) === 'string' && (set.at(-1) as string).trim() === '') set.pop();
    const first = parts[at + 1]?.trim() === '' ? at + 2 : at + 1;
    const { text, next } = exponent(parts, first);
    set.push(html`<sup>${text.map(setOne)}</sup>`);
    at = next - 1;
  }
  return html`<span class="equation">${set}</span>`;
}

/** The same in plain text, names replaced where `figureOf` has a figure for them. */
export function writeEquation(equation: string, figureOf: (name: string) => string | undefined = () => undefined): string {
  const parts = inWords(equation).match(tokens) ?? [];
  return parts
    .map((token) =>
      token === '**' ? '^' : isName(token) && !joiners.has(token) ? (figureOf(bare(token)) ?? bare(token)) : (signs[token] ?? token),
    )
    .join('');
}

/** The results and items named in brackets in a budget's equation. */
export const partsOf = (equation: string): readonly string[] => [
  ...new Set([...equation.matchAll(/\[([^\]]+)\]/g)].map((match) => match[1] as string)),
];
