import { html, nothing, type TemplateResult } from 'lit-html';
import { CellError } from '../../core/result.ts';
import type { Pane } from './context.ts';
import { sayCount, sayValue } from './numbers.ts';
import type { Plan, Result } from './plan.ts';
import { scoreCaution, spanKeyOf } from './score.ts';

const shown = [
  'Fibre needed',
  'What limits',
  'Cover of demand',
  'Cover in the coldest month',
  'Stated output against the air',
  'Saving',
  'Saving after capital',
  'Payback',
  'NPV',
  'Break-even bedding price',
  'Mastitis cases to NPV 0',
  'Hygiene score, fibre',
] as const;

const headline = ['Cover of demand', 'Saving', 'Payback'] as const;

const answered = (result: Result | undefined): result is Result => result !== undefined && !(result.value instanceof CellError);

const sayResult = ({ value, unit }: Result, locale: string): string =>
  value instanceof CellError ? value.message : sayValue(value, unit, locale);

function line(plan: Plan, key: string, locale: string): TemplateResult {
  const result = plan.results.get(key);
  if (!result) return html``;
  const span = plan.results.get(spanKeyOf(key) ?? '');
  return html`<div class=${answered(result) ? '' : 'unanswered'}>
    <dt>${key}</dt>
    <dd>
      ${sayResult(result, locale)}
      ${span ? html`, span ${sayResult(span, locale)}` : nothing}
      ${answered(result) ? html`<span class="meaning">${result.meaning}</span>` : nothing}
      ${span && answered(result) ? scoreCaution() : nothing}
    </dd>
  </div>`;
}

function inShort({ results, missing, refused, unusable }: Plan, locale: string): string {
  if (refused) return refused;
  if (unusable.length > 0) return `${unusable.map(([{ name }]) => name).join(', ')} cannot be used as it stands`;
  if (missing.length > 0) return `${missing.length} ${missing.length === 1 ? 'figure is' : 'figures are'} still needed`;
  return headline
    .map((key) => results.get(key))
    .filter(answered)
    .map(({ key, value, unit }) => `${key} ${sayValue(value, unit, locale, 3)}`)
    .join(' · ');
}

/** The answer so far, at the foot of the survey. */
export function runningAnswer(pane: Pane, plan: Plan, howSure: readonly string[], nextMissing: () => void): TemplateResult {
  const locale = pane.host.locale();
  const { warnings, missing } = plan;
  return html`<section class="foot" aria-label="The answer so far">
    <p class="in-short">${inShort(plan, locale)}</p>
    <div class="buttons">
      ${missing.length > 0 ? html`<button type="button" id="next-missing" @click=${nextMissing}>Next: ${missing[0]?.name}</button>` : nothing}
      <button type="button" id="see-checks" class="quiet" @click=${() => pane.go('checks')}>
        ${sayCount(warnings.length, 'warning')}
      </button>
    </div>
    <details id="whole-answer">
      <summary>The answer so far</summary>
      ${howSure.map((sentence) => html`<p>${sentence}</p>`)}
      ${howSure.length > 0 ? html`<p class="hint">From How sure: a chance of plans drawn, not of the world.</p>` : nothing}
      <dl class="figures">${shown.map((key) => line(plan, key, locale))}</dl>
    </details>
  </section>`;
}
