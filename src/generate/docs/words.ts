import { bibliography, type Fallback, referenceOf, type SourceId, type Status } from '../../core/bibliography.ts';
import type { FunctionRecord, Line } from '../../core/define.ts';
import { CellError } from '../../core/result.ts';
import { spell } from '../../domain/spell.ts';
import { equations } from '../../functions/equations.ts';
import { prefix } from '../../surfaces/namespace.ts';
import { type Family, familyOf } from './families.ts';
import { type Html, html, type Part } from './html.ts';

/** A status in the sheets' own word, carried to the end of a phrase, and what it means. */
export const statuses: Readonly<Record<Status, { readonly words: string; readonly means: string }>> = {
  seen: { words: 'seen in the source', means: 'read in the source itself, or in its abstract' },
  quoted: { words: 'quoted by another document', means: 'read in another document that cites the source' },
  memory: { words: 'memory, not checked', means: 'recalled, and not checked in any source: measure your own' },
  computed: { words: 'computed from our equations', means: 'worked out from the equations given here' },
  practice: { words: 'practice of the trade, no source', means: 'common practice in the trade, for which no source is held' },
  judgement: { words: 'judgement of this project', means: 'this project’s own choice, to be changed where you know better' },
};

export const status = (of: Status): Html => html`<span class="status ${of}">${statuses[of].words}</span>`;

const sourceLink = (id: SourceId): Html => html`<a href="sources.html#${id}">${referenceOf(id).name}</a>`;

const isSource = (word: string): word is SourceId => bibliography.some(({ id }) => id === word);

/** A text of the data, each id of a source in it as a link in words. */
export const withSourceLinks = (text: string): Part =>
  text.split(/\b([a-z0-9]+(?:-[a-z0-9]+)+)\b/).map((word) => (word.includes('-') && isSource(word) ? sourceLink(word) : word));

/** Sources that only say that there is none: their name is what the status says already. */
const noSource: readonly SourceId[] = ['project', 'unchecked', 'practice'];

/** A source in words, with how far it is to be trusted for this figure. */
export const cited = (id: SourceId, trust: Status = referenceOf(id).status): Html =>
  noSource.includes(id) ? html`<a href="sources.html#${id}">[${status(trust)}]</a>` : html`${sourceLink(id)} [${status(trust)}]`;

/** A figure with its source: `0.75 [memory, not checked]`, `64, RB209 [quoted by another document]`. */
export const sourced = (figure: Part, id: SourceId, trust: Status): Html =>
  html`${figure}${noSource.includes(id) ? '' : ','} ${cited(id, trust)}`;

/** The default of an argument: its value, how far to trust it and on whose word; or what happens where there is none. */
export function leftOut(fallback: Fallback | undefined): Part {
  if (!fallback) return 'required';
  return fallback.value === undefined ? fallback.shown : sourced(shown(fallback.value), fallback.source, fallback.status);
}

export const anchorOf = (name: string): string => name.toLowerCase().replaceAll('.', '-');

export const pageOf = (family: Family): string => `${family.toLowerCase()}.html`;

export const functionLink = (name: string): Html => html`<a href="${pageOf(familyOf(name))}#${anchorOf(name)}"><code>${name}</code></a>`;

export const stepAnchor = (name: string, step: string): string => `${anchorOf(name)}.${step}`;

/** A cell's content, as a reader sees it. */
export function shown(cell: unknown): string {
  if (cell instanceof CellError) return `${cell.code}: ${cell.message}`;
  if (typeof cell === 'number') return spell(cell).replace(/^-/, '−');
  return typeof cell === 'boolean' ? (cell ? 'TRUE' : 'FALSE') : String(cell ?? '');
}

/** The unit as a word behind a number; nothing where it is none. */
export const unitWord = (unit: string): string => (unit === 'text' || unit === 'table' || unit === 'yes or no' ? '' : unit);

/** `a ? b : c` as `b if a, otherwise c`. */
function spokenChoice(sum: string): string {
  const [, when, yes, no] = /^(.+?) \? (.+?) : (.+)$/.exec(sum) ?? [];
  return when === undefined ? sum : `${yes} if ${when}, otherwise ${spokenChoice(no as string)}`;
}

const signs: readonly (readonly [RegExp, string])[] = [
  [/ \*\* /g, '^'],
  [/ \* /g, ' × '],
  [/ - /g, ' − '],
  [/ == /g, ' = '],
  [/'/g, '"'],
  [/(?<=^|[(\s])-(?=\w)/g, '−'],
];

/** The arithmetic of a line as it is read. */
export const readableSum = (sum: string): string => signs.reduce((made, [sign, read]) => made.replaceAll(sign, read), spokenChoice(sum));

/** The same, behind what it gives, with the equations behind its names a click away. */
export function readable(sum: string, gives = ''): Html {
  const linked = readableSum(sum)
    .split(/\b(\w+)(?=\()/)
    .map((part) => (part in equations ? html`<a href="method.html#${part}">${part}</a>` : part));
  return html`<code>${gives}${linked}</code>`;
}

/** A step's equation: worked out, solved for, or told in words. */
export function equation(step: string, line: Line): Html {
  if ('told' in line) return html`${line.told}`;
  if ('how' in line) return readable(line.how, `${step} = `);
  const balance = line.solves.includes('==') ? line.solves : `${line.solves} == 0`;
  return balance.startsWith(`${step} == `) ? readable(balance) : html`<code>${step}</code> is found so that ${readable(balance)}`;
}

export const formulaName = (record: Pick<FunctionRecord, 'name'>): string => `=${prefix}${record.name}`;

/** As many digits as a cell holds. */
const asHeld = (value: number): string => String(Number(value.toPrecision(15)));

export const literal = (value: unknown): string =>
  typeof value === 'number' ? asHeld(value) : typeof value === 'string' ? `"${value}"` : value === null ? '' : shown(value);
