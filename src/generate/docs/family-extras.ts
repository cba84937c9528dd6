import { figures } from '../../budget/figures.ts';
import { type BudgetItem, budgetItems, whenNeeded } from '../../budget/items.ts';
import type { SourceId, Status } from '../../core/bibliography.ts';
import { call } from '../../core/call.ts';
import type { Cell } from '../../core/result.ts';
import benchmarks from '../../data/hygiene-benchmarks.json';
import materials from '../../data/materials.json';
import { registry } from '../../functions/index.ts';
import type { Family } from './families.ts';
import { type Html, html, type Part, table } from './html.ts';
import { recordNamed } from './method/figures.ts';
import { functionLink, leftOut, readableSum, shown, sourced, unitWord, withSourceLinks } from './words.ts';

/** What a family's page holds beside its functions: the figures and lists that they draw on. */
export interface Extra {
  readonly id: string;
  readonly title: string;
  readonly body: Html;
}

interface Held {
  readonly source: string;
  readonly status: string;
  readonly also?: string;
}

/** A figure held as data, with where it comes from, or why none is held. */
function heldFigure(value: number | undefined, figure: Held | { readonly missing: string }): Part {
  if ('missing' in figure) return `none: ${figure.missing}`;
  return html`${sourced(html`<b>${shown(value)}</b>`, figure.source as SourceId, figure.status as Status)}${figure.also ? html`; also ${withSourceLinks(figure.also)}` : ''}`;
}

const materialFigures = (): Html =>
  table(
    'Figures for bedding materials: what is used, and other figures that disagree with it',
    ['Material', 'Density, kg/m³', 'Dry matter, fraction', 'Used, kg per cow per day'],
    Object.entries(materials).map(([name, { density_kg_m3, dm, kg_cow_day }]) => [
      name,
      ...[density_kg_m3, dm, kg_cow_day].map((figure) => heldFigure('value' in figure ? figure.value : undefined, figure)),
    ]),
  );

const benchmarkFigures = (): Html =>
  table(
    'Benchmarks of counts in bedding, cfu/cm³. They sort beds and diagnose nothing',
    ['Organism', 'Unused bedding', 'Used bedding'],
    Object.keys(benchmarks.used).map((organism) => [
      organism,
      ...[benchmarks.unused, benchmarks.used].map((state) => {
        const figure = state[organism as keyof typeof state];
        return heldFigure('cfu_per_cm3' in figure ? figure.cfu_per_cm3 : undefined, figure);
      }),
    ]),
  );

const standing = (item: BudgetItem): Part => (item.needed ? `required ${whenNeeded(item)}`.trim() : leftOut(item.parameter.fallback));

const itemsTable =
  (): Html => html`<p>They may stand in any order; case and outer spaces do not matter. An empty value means that the item is not given.</p>
${table(
  'Every item that BUDGET.HERD can be told',
  ['Item', 'What to look at', 'Unit', 'Enter', 'Left out'],
  budgetItems.map((item) => [item.name, item.look, unitWord(item.parameter.unit), item.parameter.accepts, standing(item)]),
)}`;

/** A result's sum, its functions a click away. */
const linkedSum = (how: string): Html =>
  html`<code>${readableSum(how)
    .split(/([A-Z]+\.[A-Z]+)/)
    .map((part) => (registry.some(({ name }) => name === part) ? functionLink(part) : part))}</code>`;

/** Every result with its sum, and what it is and means for the herd of the example. */
function resultsTable(): Html {
  const herd = recordNamed('BUDGET.HERD');
  const answers = new Map(call(herd, herd.examples[0]?.call ?? []).map(([key, value, , meaning]) => [key, { value, meaning }]));
  const rows = figures.map(({ key, unit, how }) => {
    const { value, meaning } = answers.get(key) ?? {};
    return [key, how ? linkedSum(how) : 'told in its meaning', shown(value), unit, shown(meaning)];
  });
  return html`<p>A name in brackets is an item of the budget or an earlier result. Values and meanings are those of the example’s herd.</p>
${table('Every result of BUDGET.HERD, before its warnings', ['Result', 'How it comes about', 'Value', 'Unit', 'Meaning'], rows)}`;
}

/** A list in full: what it says of law and danger must not be cut short. */
function inFull(name: string, caption: string): Html {
  const [header, ...rows] = call(recordNamed(name), []);
  return table(
    caption,
    (header as readonly Cell[]).map(shown),
    rows.map((cells) => cells.map(shown)),
  );
}

export const familyExtras: Readonly<Partial<Record<Family, () => readonly Extra[]>>> = {
  MATERIAL: () => [{ id: 'figures', title: 'The figures held', body: materialFigures() }],
  HYGIENE: () => [
    { id: 'benchmarks', title: 'The benchmarks held', body: benchmarkFigures() },
    {
      id: 'weights',
      title: 'Weights, points and studies',
      body: html`<p>They stand in the <a href="method.html#score">method note</a>, with the studies for and against each.</p>
`,
    },
  ],
  BUDGET: () => [
    { id: 'items', title: 'Items of the budget', body: itemsTable() },
    { id: 'results', title: 'Results of the budget', body: resultsTable() },
  ],
  REFERENCE: () => [
    {
      id: 'all-conditions',
      title: 'The conditions in full',
      body: inFull('CONDITIONS', 'As far as known: recheck every one before you rely on it'),
    },
    { id: 'all-cautions', title: 'The cautions in full', body: inFull('CAUTIONS', 'Local codes come first') },
  ],
};
