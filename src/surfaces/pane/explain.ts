import { html, nothing, type TemplateResult } from 'lit-html';
import type { SourceId } from '../../core/bibliography.ts';
import type { FunctionRecord, WorkingStep } from '../../core/define.ts';
import { CellError } from '../../core/result.ts';
import { cite } from '../../core/working.ts';
import { NoAnswer, Refusal } from '../../domain/refusal.ts';
import { inLocale } from '../in-locale.ts';
import { referenceTo } from './addresses.ts';
import { canBeLaidOut, layOutBeside } from './as-formulas.ts';
import { type CallExplained, type Explained, explainCell } from './cell-explanation.ts';
import type { Pane, Part } from './context.ts';
import { partsOf, setEquation, writeEquation } from './equation.ts';
import { sayValue } from './numbers.ts';
import { findRecord } from './records.ts';
import { scoreCaution, scoreNote, spanKeyOf } from './score.ts';
import type { Place } from './spreadsheet-host.ts';

const keyOf = ({ row }: CallExplained): string | undefined =>
  row === undefined || row[0] instanceof CellError ? undefined : String(row[0]);

const isArgument = ({ equation }: WorkingStep): boolean => ['given', 'default', 'missing'].includes(equation);

/** What a figure rests on: the sources of the functions that its equation calls, else those of the whole function. */
function sourcesOf(record: FunctionRecord, figure: WorkingStep | undefined): readonly SourceId[] {
  const called = [...(figure?.equation ?? '').matchAll(/[A-Z]+\.[A-Z]+(?=\()/g)].flatMap(([name]) => findRecord(name)?.sources ?? []);
  return called.length > 0 ? [...new Set(called)] : record.sources;
}

/** Why the selected cell shows what it shows: each step with its value, equation and source. */
export function explanation(pane: Pane): Part {
  const { host } = pane;
  let explained: Explained | undefined;
  /** Of a budget: the figures followed, from the cell's own to the one on show. */
  let trail: readonly string[] = [];
  let copied = '';

  async function refresh(): Promise<void> {
    const { sheet, active } = await host.selection();
    const moved = explained?.place.sheet !== sheet || explained.place.address !== active;
    explained = await explainCell(host, { sheet, address: active });
    if (moved) [trail, copied] = [[], ''];
    pane.redraw();
  }

  const ours = (sentence: string): string => inLocale(sentence, host.locale());

  const say = (value: WorkingStep['value'], unit: string): string =>
    value instanceof NoAnswer || value instanceof Refusal ? ours(value.message) : sayValue(value, unit, host.locale());

  const show = (place: Place): TemplateResult =>
    html`<button type="button" class="link" @click=${() => pane.act(() => host.select(place))}>${referenceTo(place)}</button>`;

  const figures =
    (steps: readonly WorkingStep[]) =>
    (name: string): string | undefined => {
      const one = steps.find(({ step }) => step === name);
      if (typeof one?.value === 'number') return sayValue(one.value, '', host.locale());
      return one?.equation === 'given' && typeof one.value === 'string' ? `“${one.value}”` : undefined;
    };

  /** Words stay words; an equation is set, and set again in figures. */
  function equationOf({ record, steps }: CallExplained, { step, equation }: WorkingStep): TemplateResult | typeof nothing {
    if (equation === '') return nothing;
    const line = record.working[step];
    if (line && 'told' in line) return html`<p>${ours(equation)}</p>`;
    const inFigures = writeEquation(ours(equation), figures(steps));
    return html`<p>${setEquation(ours(equation))}</p>${inFigures === writeEquation(ours(equation)) ? nothing : html`<p class="in-figures">= ${inFigures}</p>`}`;
  }

  function step(of: CallExplained, one: WorkingStep): TemplateResult {
    return html`<li>
      <p><strong>${one.step}${one.value === undefined ? '' : `: ${say(one.value, one.unit)}`}</strong></p>
      ${one.says ? html`<p>${ours(one.says)}</p>` : nothing}
      ${equationOf(of, one)}
      ${one.source ? html`<p class="hint">${one.source}</p>` : nothing}
    </li>`;
  }

  function argument({ cells }: CallExplained, { step: name, value, unit, equation, source }: WorkingStep): TemplateResult {
    const from = cells.get(name);
    const origin =
      equation === 'given'
        ? from
          ? show(from)
          : 'typed into the formula'
        : equation === 'default'
          ? html`left out, so the default: ${source || 'see its meaning'}`
          : 'not given';
    return html`<li><strong>${name}: ${equation === 'missing' ? 'missing' : say(value, unit)}</strong> <span class="hint">${origin}</span></li>`;
  }

  /** Shows another figure of the budget, and takes the keyboard along. */
  function turnTo(figures: readonly string[]): void {
    trail = figures;
    pane.redraw();
    document.getElementById('figure')?.focus();
  }

  /** A row that counts or warns, and so has its meaning for an explanation. */
  const toldOnly = ({ row = [] }: CallExplained): TemplateResult => {
    const [key, value, unit, meaning] = row.map((cell) => (cell instanceof CellError ? cell.message : cell));
    return html`<h4>${key}: ${sayValue(value, String(unit ?? ''), host.locale())}</h4>
      <p>${ours(String(meaning))}</p>`;
  };

  const figureList = (steps: readonly WorkingStep[]): TemplateResult => html`<ul class="list">
    ${steps.map(
      (one) => html`<li><button type="button" @click=${() => turnTo([...trail, one.step])}>
        <strong>${one.step}</strong> <span>${say(one.value, one.unit)}</span>
      </button></li>`,
    )}
  </ul>`;

  /** One figure of the budget, with the figures it is made of: each leads on to its own. */
  function figure(of: CallExplained, key: string, back: TemplateResult | typeof nothing): TemplateResult {
    const one = of.steps.find(({ step: name }) => name === key);
    if (!one) return toldOnly(of);
    const span = of.steps.find(({ step: name }) => name === spanKeyOf(key));
    const parts = partsOf(one.equation).flatMap((name) => of.steps.filter((candidate) => candidate.step === name));
    const value = one.equation === 'missing' ? 'missing' : say(one.value, one.unit);
    return html`
      <h4 id="figure" tabindex="-1">${key}: ${value}${span ? `, span ${say(span.value, span.unit)}` : ''}</h4>
      ${back}
      <p>${ours(one.says)}</p>
      ${key.startsWith('Hygiene') ? scoreCaution() : nothing}
      ${isArgument(one) ? html`<ul class="cards">${argument(of, one)}</ul>` : equationOf(of, one)}
      ${parts.length > 0 ? html`<h5>Made of</h5>${figureList(parts)}` : nothing}`;
  }

  function budget(of: CallExplained): TemplateResult {
    const key = trail.at(-1) ?? keyOf(of);
    if (key === undefined) {
      return html`<p>The whole budget. Follow any figure down to what it is made of:</p>
        ${figureList(of.steps.filter((one) => !isArgument(one)))}`;
    }
    const before = trail.at(-2) ?? keyOf(of) ?? 'the whole budget';
    const back = html`<div class="buttons"><button type="button" id="back" class="quiet" @click=${() => turnTo(trail.slice(0, -1))}>Back to ${before}</button></div>`;
    return figure(of, key, trail.length > 0 ? back : nothing);
  }

  async function layOut(place: Place, of: CallExplained): Promise<void> {
    const answer = await layOutBeside(host, place, of);
    await host.select(answer);
    pane.say(`Laid out on ${place.sheet}, the answer in ${answer.address}.`);
  }

  function oneCall(of: CallExplained, place: Place): TemplateResult {
    const { record, steps } = of;
    const key = keyOf(of);
    const inRow = steps.filter(
      ({ step: name }) =>
        key === undefined ||
        !record.columns ||
        record.working[name] !== undefined ||
        name === 'note' ||
        name === key ||
        name.startsWith(`${key}: `),
    );
    const scored = record.name.startsWith('HYGIENE.');
    return html`<section>
      <h3>${record.name}${key === undefined ? '' : html`, row ${key}`}</h3>
      <p>${ours(record.summary)}</p>
      ${
        record.name === 'BUDGET.HERD'
          ? budget(of)
          : html`
            ${steps.some(isArgument) ? html`<h4>Arguments</h4><ul class="cards">${steps.filter(isArgument).map((one) => argument(of, one))}</ul>` : nothing}
            <h4>Steps, the answer last</h4><ol class="cards">${inRow.filter((one) => !isArgument(one)).map((one) => step(of, one))}</ol>`
      }
      ${scored ? scoreCaution() : nothing}
      ${
        canBeLaidOut(of)
          ? html`<div class="buttons"><button type="button" class="quiet" @click=${() => pane.act(() => layOut(place, of))}>Lay out as formulas</button></div>
            <p class="hint">Every step as a formula of the spreadsheet’s own, in free cells to the right.</p>`
          : nothing
      }
      <h4>Sources</h4>
      <ul class="cards">${sourcesOf(
        record,
        steps.find(({ step: name }) => name === (trail.at(-1) ?? key)),
      ).map((id) => html`<li class="hint">${cite(id)}</li>`)}</ul>
    </section>`;
  }

  const asText = ({ place, formula, calls, words }: Explained): string => {
    const lines = calls.flatMap(({ record, steps, row }) => [
      `${record.name}: ${ours(record.summary)}`,
      ...(row === undefined ? [] : [`Row: ${row.map((cell) => (cell instanceof CellError ? cell.message : cell)).join(', ')}`]),
      ...steps.flatMap((one) => [
        `${one.step}${one.value === undefined ? '' : `: ${say(one.value, one.unit)}`}${one.says ? ` (${ours(one.says)})` : ''}`,
        ...(isArgument(one) || one.equation === '' ? [] : [`  = ${writeEquation(ours(one.equation))}`]),
        ...(one.source ? [`  ${one.source}`] : []),
      ]),
      ...record.sources.map((id) => `Source: ${cite(id)}`),
      ...(/^(HYGIENE|BUDGET)\./.test(record.name) ? [scoreNote] : []),
    ]);
    return [referenceTo(place), formula ? host.typed(formula) : '', words ?? '', ...lines].filter((line) => line !== '').join('\n');
  };

  async function copy(of: Explained): Promise<void> {
    const text = asText(of);
    try {
      await navigator.clipboard.writeText(text);
      pane.say('Copied as text.');
    } catch {
      // Some hosts keep the clipboard from a page: then the text is laid out, selected, for the user's own copy.
      copied = text;
      pane.redraw();
      document.querySelector<HTMLTextAreaElement>('#explanation-text')?.select();
      pane.say('This host does not let the panel copy: press Ctrl+C.');
    }
  }

  function view(): TemplateResult {
    if (!explained) return html`<p>Select a cell to see where its figure comes from.</p>`;
    const { place, formula, calls, words, reads } = explained;
    const shown = explained;
    return html`
      <p class="lead">${referenceTo(place)}${formula ? html`<br><code>${host.typed(formula)}</code>` : nothing}</p>
      ${words ? html`<p>${words}</p>` : nothing}
      ${reads.length > 0 ? html`<p>It reads ${reads.map((one, k) => html`${k > 0 ? ', ' : ''}${show(one)}`)}.</p>` : nothing}
      ${calls.map((of) => oneCall(of, place))}
      <div class="buttons"><button type="button" id="copy" @click=${() => pane.act(() => copy(shown))}>Copy as text</button></div>
      ${copied ? html`<label for="explanation-text">The explanation as text</label><textarea id="explanation-text" readonly rows="8" .value=${copied}></textarea>` : nothing}`;
  }

  return { title: 'Explain', view, refresh };
}
