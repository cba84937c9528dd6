import { html, nothing, type TemplateResult } from 'lit-html';
import type { BudgetItem } from '../../budget/items.ts';
import { warningMark, warningTriggers } from '../../budget/warnings.ts';
import { cite } from '../../core/working.ts';
import { inLocale } from '../in-locale.ts';
import { referenceTo } from './addresses.ts';
import type { Pane, Part, Why } from './context.ts';
import { type Inputs, readInputsSheet } from './inputs-sheet.ts';
import { sayValue } from './numbers.ts';
import { offerBudget } from './offer-budget.ts';
import { type Plan, planOf, type Result } from './plan.ts';
import { scoreCaution } from './score.ts';
import type { Place } from './spreadsheet-host.ts';
import { type Found, scanWorkbook } from './workbook-scan.ts';

/** All that the workbook warns of, what was taken for granted, what is missing and what does not add up. */
export function checks(pane: Pane): Part {
  const { host } = pane;
  let inputs: Inputs | undefined;
  let plan: Plan | undefined;
  let found: Found = { warnings: [], failing: [], hasChecks: false };

  async function refresh(why: Why): Promise<void> {
    if (why === 'selection') return;
    inputs = await readInputsSheet(host);
    plan = inputs && planOf(inputs, host.locale());
    found = await scanWorkbook(host);
    pane.redraw();
  }

  const ours = (sentence: string): string => inLocale(sentence, host.locale());

  const show = (place: Place | undefined, of: string): TemplateResult | typeof nothing =>
    place === undefined
      ? nothing
      : html`<button type="button" class="link" @click=${() => pane.act(() => host.select(place))}>Show ${referenceTo(place)}<span class="unseen"> for ${of}</span></button>`;

  function warning({ key, value, unit, meaning }: Result, place: Place | undefined): TemplateResult {
    const name = key.replace(warningMark, '');
    return html`<li class="warning">
      <h4>${name}${value === '' ? '' : `: ${sayValue(value, unit, host.locale())}`}</h4>
      <p>${meaning}</p>
      ${warningTriggers.has(key) ? html`<p class="hint">Warns when: ${ours(warningTriggers.get(key) ?? '')}.</p>` : nothing}
      ${show(place, name)}
    </li>`;
  }

  function warnings(entries: Inputs, { warnings: own }: Plan): TemplateResult {
    const [first] = entries.values();
    const fallback = first && { sheet: first.sheet, address: 'A1' };
    const known = new Set(own.map(({ key }) => key));
    const elsewhere = found.warnings.filter(({ key }) => !known.has(key));
    return html`<h3>Warnings</h3>
      ${own.length + elsewhere.length === 0 ? html`<p>Nothing to report.</p>` : nothing}
      <ul class="cards">
        ${own.map((one) => warning(one, found.warnings.find(({ key }) => key === one.key)?.place ?? fallback))}
        ${elsewhere.map((one) => warning({ unit: '', ...one }, one.place))}
      </ul>
      ${[...own, ...elsewhere].some(({ key }) => /Score|Band edge|Worse/.test(key)) ? scoreCaution() : nothing}`;
  }

  function item(one: BudgetItem, words: string, entries: Inputs): TemplateResult {
    return html`<li><strong>${one.name}</strong> <span class="hint">${words}</span> ${show(entries.get(one), one.name)}</li>`;
  }

  function defaultWords({ parameter: { fallback, unit } }: BudgetItem): string {
    if (!fallback) return '';
    return fallback.value === undefined
      ? ours(fallback.shown ?? '')
      : `${sayValue(fallback.value, unit, host.locale())}. ${cite(fallback.source, fallback.status)}`;
  }

  function list(title: string, items: readonly TemplateResult[], none: string): TemplateResult {
    return html`<h3>${title}</h3>${items.length === 0 ? html`<p>${none}</p>` : html`<ul class="cards">${items}</ul>`}`;
  }

  function failing(): TemplateResult {
    const none = found.hasChecks ? 'Nothing to report: all of them hold.' : 'This workbook has no Checks sheet.';
    return list(
      'Checks that fail',
      found.failing.map(({ words, place }) => html`<li class="warning"><p>${words}</p>${show(place, words)}</li>`),
      none,
    );
  }

  function view(): TemplateResult {
    if (!inputs || !plan) return offerBudget(pane, () => refresh('content'));
    const entries = inputs;
    const unusable = plan.unusable.map(([one, why]) => item(one, why, entries));
    if (plan.refused) return html`<p class="problem">${plan.refused}</p>${failing()}`;
    return html`
      ${unusable.length > 0 ? list('Cannot be used', unusable, '') : nothing}
      ${warnings(entries, plan)}
      ${failing()}
      ${list(
        'Still missing',
        plan.missing.map((one) => item(one, ours(one.look), entries)),
        'Nothing to report: the plan has all it needs.',
      )}
      ${list(
        'Defaults used',
        plan.defaulted.map((one) => item(one, defaultWords(one), entries)),
        'Nothing to report: every item was given.',
      )}`;
  }

  return { title: 'Checks', view, refresh };
}
