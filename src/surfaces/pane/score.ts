import { html, type TemplateResult } from 'lit-html';

/** Goes wherever a hygiene score is shown. */
export const scoreNote = 'Planning aid, no diagnosis: talk to your vet.';

/** The score of BUDGET.HERD never stands without its span. */
export const spanKeyOf = (key: string): string | undefined =>
  key.startsWith('Hygiene score, ') ? key.replace('score', 'span') : undefined;

export const scoreCaution = (): TemplateResult => html`<p class="score-note">${scoreNote}</p>`;
