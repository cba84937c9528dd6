import { budgetItems } from '../../budget/items.ts';
import { bibliography, type Reference, type SourceId, type Status } from '../../core/bibliography.ts';
import type { FunctionRecord } from '../../core/define.ts';
import type { Parameter } from '../../core/parameters.ts';
import { familyOf } from './families.ts';
import { type Html, html, joined, type Part, table } from './html.ts';
import type { Page } from './page.ts';
import { functionLink, pageOf, status, statuses, stepAnchor } from './words.ts';

const takesFrom =
  (id: SourceId) =>
  ({ fallback }: Parameter): boolean =>
    fallback?.value !== undefined && fallback.source === id;

/** What of a function rests on a source: the function as a whole, single steps, arguments' defaults. */
function useIn({ name, sources, working, parameters }: FunctionRecord, id: SourceId): readonly Html[] {
  const steps = Object.entries(working).filter(([, { source }]) => source === id);
  const parts: readonly Part[] = [
    ...steps.map(([step]) => html`<a href="${pageOf(familyOf(name))}#${stepAnchor(name, step)}">${step}</a>`),
    ...parameters.filter(takesFrom(id)).map((parameter) => `default of ${parameter.name}`),
  ];
  if (parts.length > 0) return [html`${functionLink(name)} (${joined(parts, ', ')})`];
  return sources.includes(id) ? [functionLink(name)] : [];
}

/** Every place that rests on a source: functions, and items of the budget. */
function usesOf(id: SourceId, records: readonly FunctionRecord[]): readonly Part[] {
  const items = budgetItems.filter(({ parameter }) => takesFrom(id)(parameter)).map(({ name }) => name);
  const ofBudget = items.length === 0 ? [] : [html`<a href="budget.html#items">the budget’s items</a> (default of ${items.join(', ')})`];
  return [...records.flatMap((record) => useIn(record, id)), ...ofBudget];
}

function entry({ id, name, reference, status: trust }: Reference, uses: readonly Part[]): Html {
  const use =
    uses.length === 0
      ? ''
      : html`<p class="outside">Rests on it: ${joined(uses, '; ')}.</p>
`;
  return html`<section id="${id}" class="entry">
<h2>${name}</h2>
<p>${reference} (${status(trust)}).</p>
${use}</section>
`;
}

export const statusTable = (): Html =>
  table(
    'How far a figure can be trusted',
    ['Said of it', 'Means'],
    (Object.keys(statuses) as Status[]).map((key) => [status(key), statuses[key].means]),
  );

const withoutArticle = (name: string): string => name.replace(/^an? /, '');
const byName = [...bibliography].sort((a, b) =>
  withoutArticle(a.name).localeCompare(withoutArticle(b.name), 'en-GB', { sensitivity: 'base' }),
);

export const sourcesPage = (records: readonly FunctionRecord[]): Page => ({
  file: 'sources.html',
  title: 'Sources',
  body: html`<p class="lead">Where every equation and figure comes from, how far it was checked, and what rests on it.</p>
${statusTable()}
${byName.map((reference) => entry(reference, usesOf(reference.id, records)))}`,
});
