import { html, type TemplateResult } from 'lit-html';
import { itemOf } from '../../budget/items.ts';
import { call } from '../../core/call.ts';
import type { Cell } from '../../core/result.ts';
import { inLocale } from '../in-locale.ts';
import type { Pane, Part, Why } from './context.ts';
import { field } from './field.ts';
import { readInputsSheet } from './inputs-sheet.ts';
import { recordOf } from './records.ts';
import { scoreNote } from './score.ts';

type Row = readonly Cell[];

/** The rules on using manure fibre as bedding, and the usual cautions: who to ask before relying on anything here. */
export function cautions(pane: Pane): Part {
  let country = '';
  let chosen = false;

  async function refresh(why: Why): Promise<void> {
    if (why === 'selection' || chosen) return;
    const held = (await readInputsSheet(pane.host))?.get(itemOf('country'))?.cell.value;
    const read = itemOf('country').parameter.read(held);
    country = typeof read === 'string' ? read : '';
    pane.redraw();
  }

  const choose = (text: string): void => {
    [country, chosen] = [text, true];
    pane.redraw();
  };

  const ours = (words: Cell | undefined): string => inLocale(String(words), pane.host.locale());

  const rule = ([where, words, source, date, ask]: Row): TemplateResult => html`<li>
    <h4>${String(where).replace(/ \d+$/, '')}</h4>
    <p>${ours(words)}.</p>
    <p class="hint">${source}, ${date}. Recheck with ${ask}.</p>
  </li>`;

  const hazard = ([name, words, ask]: Row): TemplateResult => html`<li>
    <h4>${name}</h4>
    <p>${ours(words)}</p>
    <p class="hint">Ask ${ask}.</p>
  </li>`;

  const rowsOf = (name: string, args: readonly unknown[]): readonly Row[] => call(recordOf(name), args).slice(1);

  const view = (): TemplateResult => html`
    <p class="lead">The figures here plan; they permit nothing and diagnose nothing. Local rules and the people named below come first.</p>
    <h3>On what conditions the fibre may be used</h3>
    ${field({ id: 'country', label: 'Country', text: country, choices: itemOf('country').parameter.choices ?? [], empty: 'every country', enter: choose })}
    <ul class="cards" aria-live="polite">${rowsOf('CONDITIONS', [country]).map(rule)}</ul>
    <h3>The hygiene score</h3>
    <p>${scoreNote} Its weights are this project’s judgement and were not fitted to data.</p>
    <h3>Cautions</h3>
    <ul class="cards">${rowsOf('CAUTIONS', []).map(hazard)}</ul>`;

  return { title: 'Cautions', view, refresh };
}
