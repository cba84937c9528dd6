import { html, nothing, type TemplateResult } from 'lit-html';

export interface Field {
  readonly id: string;
  readonly label: string;
  readonly text: string;
  readonly enter: (text: string) => void;
  /** Shown behind the box; left out where there is none to tell or where `units` says it. */
  readonly unit?: string;
  /** What it is, or what to look at. */
  readonly hint?: string;
  readonly kind?: 'number' | 'date' | 'text';
  readonly choices?: readonly string[];
  /** What an empty choice says. */
  readonly empty?: string;
  readonly required?: boolean;
  readonly problem?: string;
  /** Further words under the box, e.g. where a default comes from. */
  readonly note?: string | TemplateResult;
  /** How the note is set: in colour where something is still to be given, on a ground of its own where it deserves a second look. */
  readonly tone?: 'needed' | 'watch';
  /** Stands beside the box: a choice of unit, a button. */
  readonly beside?: TemplateResult;
  /** Stands under the box. */
  readonly below?: TemplateResult;
}

const entered = (enter: Field['enter']) => (event: Event) => enter((event.target as HTMLInputElement | HTMLSelectElement).value);

/**
 * A date box says that it changed at every key, with no date at all until the last part of it is typed: so it is read on
 * leaving it or at Enter, and one left half typed goes back to what it was.
 */
const dateEntered = (before: string, enter: Field['enter']) => (event: Event) => {
  const input = event.target as HTMLInputElement;
  if (input.validity.badInput) input.value = before;
  else if (input.value !== before) enter(input.value);
};

function box({ id, text, enter, kind = 'number', choices, empty = '', required, problem }: Field, describedBy: string): TemplateResult {
  if (choices) {
    return html`<select id=${id} .value=${text} aria-describedby=${describedBy} aria-invalid=${problem ? 'true' : nothing} @change=${entered(enter)}>
      <option value="" ?selected=${text === ''}>${empty}</option>
      ${choices.map((choice) => html`<option value=${choice} ?selected=${choice === text}>${choice}</option>`)}
    </select>`;
  }
  if (kind === 'date') {
    return html`<input id=${id} type="date" .value=${text} aria-describedby=${describedBy} aria-required=${required ? 'true' : nothing} aria-invalid=${problem ? 'true' : nothing}
      @blur=${dateEntered(text, enter)} @keydown=${(event: KeyboardEvent) => event.key === 'Enter' && dateEntered(text, enter)(event)}>`;
  }
  return html`<input id=${id} type="text" inputmode=${kind === 'number' ? 'decimal' : nothing} autocomplete="off" spellcheck="false"
    .value=${text} aria-describedby=${describedBy} aria-required=${required ? 'true' : nothing} aria-invalid=${problem ? 'true' : nothing} @change=${entered(enter)}>`;
}

/** A label, its box, and all that is said about it, tied together for a screen reader. */
export function field(of: Field): TemplateResult {
  const { id, label, unit, hint, problem, note, tone = 'note', beside, below } = of;
  return html`<div class="field">
    <label for=${id}>${label}</label>
    <div class="entry">${box(of, `${id}-said`)}${unit ? html`<span class="unit">${unit}</span>` : nothing}${beside ?? nothing}</div>
    ${below ?? nothing}
    <div id="${id}-said">
      ${problem ? html`<p class="problem">${problem}</p>` : nothing}
      ${note ? html`<p class=${tone}>${note}</p>` : nothing}
      ${hint ? html`<p class="hint">${hint}</p>` : nothing}
    </div>
  </div>`;
}
