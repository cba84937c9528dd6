import { html, nothing, type TemplateResult } from 'lit-html';
import { waysOfKnowing } from '../../budget/item.ts';
import type { BudgetItem } from '../../budget/items.ts';
import { cite } from '../../core/working.ts';
import { inLocale } from '../in-locale.ts';
import { type Field, field } from './field.ts';
import { isBlankCell } from './inputs-sheet.ts';
import { editable, readable, sayValue } from './numbers.ts';
import type { Offer } from './offers.ts';
import type { HostCell } from './spreadsheet-host.ts';
import type { Draft } from './survey-draft.ts';
import { tidy, waysOf } from './survey-units.ts';

export interface SurveyField {
  readonly item: BudgetItem;
  readonly id: string;
  readonly cell: HostCell;
  readonly draft: Draft;
  /** The plan cannot do without it, or the other that will do in its place, and neither is there. */
  readonly missing: boolean;
  /** It plays no part in the plan. */
  readonly idle: boolean;
  /** Why what its cell holds cannot be used. */
  readonly unusable: string | undefined;
  readonly locale: string;
  /** A formula as the spreadsheet takes it typed. */
  readonly typed: (formula: string) => string;
  readonly enter: (draft: Draft) => void;
  /** What another sheet has for it, and what puts that into the plan. */
  readonly offer?: Offer;
  readonly take?: () => void;
  /** How the value is marked as known, where the sheet has room for it, and what marks it. */
  readonly mark?: { readonly value: string; readonly set: (value: string) => void };
  /** Changes what the box shows and nothing else. */
  readonly show: (draft: Draft) => void;
}

const span = ([low, high]: readonly [number, number], unit: string, locale: string): string =>
  unit === 'fraction'
    ? `${readable(low * 100, locale)} to ${readable(high * 100, locale)} %`
    : `${readable(low, locale)} to ${readable(high, locale)} ${unit}`;

function defaultTaken({ parameter: { fallback, unit } }: BudgetItem, locale: string): string {
  if (!fallback) return '';
  if (fallback.value === undefined) return `Not given: ${inLocale(fallback.shown ?? '', locale)}.`;
  return `Not given: ${sayValue(fallback.value, unit, locale)} is taken. ${cite(fallback.source, fallback.status)}`;
}

interface Note {
  readonly note: string;
  readonly tone?: 'needed' | 'watch';
}

/** The one thing most worth saying about the item as it stands. */
function noteFor({ item, cell, draft, missing, idle, locale, typed }: SurveyField): Note | undefined {
  const { usual, needed, only, instead, parameter } = item;
  const waiting = waysOf(item)[draft.way]?.aids.some((_, k) => !draft.aids[k]?.trim()) && draft.text !== '';
  if (waiting) return { note: 'Fill in the readings with it too, then it goes into the sheet.', tone: 'watch' };
  if (idle) return { note: `Not ${isBlankCell(cell) ? 'needed' : 'used'} without a ${only === 'with a loan' ? 'loan' : 'dryer'}.` };
  if (isBlankCell(cell)) {
    if (missing) return { note: instead ? 'Needed: this or the other of the two.' : 'Needed.', tone: 'needed' };
    return { note: needed && instead ? 'Not needed: the other of the two is given.' : defaultTaken(item, locale) };
  }
  if (cell.formula !== undefined) return { note: `Worked out in the sheet: ${typed(cell.formula)}` };
  const { value } = cell;
  if (usual && typeof value === 'number' && (value < usual[0] || value > usual[1])) {
    return {
      note: `${sayValue(value, parameter.unit, locale)} is outside the usual ${span(usual, parameter.unit, locale)}: look again.`,
      tone: 'watch',
    };
  }
  return draft.way > 0 && typeof value === 'number' ? { note: `In the sheet: ${sayValue(value, parameter.unit, locale)}.` } : undefined;
}

/** The same amount in another way, where it can be told without a further reading; else an empty box for it. */
function inWay({ item, cell: { value }, locale }: SurveyField, way: number): Draft {
  const from = waysOf(item)[way]?.fromSheet;
  const saved = value ?? undefined;
  return { way, aids: [], saved, text: from && typeof value === 'number' ? editable(tidy(from(value)), locale) : '' };
}

function unitChoice(of: SurveyField): Pick<Field, 'unit' | 'beside'> {
  const { item, id, draft, show } = of;
  const ways = waysOf(item);
  if (item.parameter.choices || item.parameter.unit === 'date') return {};
  if (ways.length === 1) return { unit: item.parameter.unit };
  const change = (event: Event) => show(inWay(of, (event.target as HTMLSelectElement).selectedIndex));
  return {
    beside: html`<select id="${id}-unit" aria-label="Unit of ${item.name}" @change=${change}>
      ${ways.map(({ unit }, k) => html`<option ?selected=${k === draft.way}>${unit}</option>`)}
    </select>`,
  };
}

function aidsFor({ item, id, draft, enter }: SurveyField): TemplateResult | typeof nothing {
  const aids = waysOf(item)[draft.way]?.aids ?? [];
  if (aids.length === 0) return nothing;
  const typed = (k: number) => (text: string) => enter({ ...draft, aids: aids.map((_, at) => (at === k ? text : (draft.aids[at] ?? ''))) });
  return html`<div class="aids">
    ${aids.map(({ label, unit }, k) => field({ id: `${id}-aid-${k}`, label: `${label}`, unit, text: draft.aids[k] ?? '', enter: typed(k) }))}
  </div>`;
}

function offerFor({ item, cell, offer, take, locale }: SurveyField): TemplateResult | typeof nothing {
  if (!offer || cell.value === offer.value) return nothing;
  return html`<p class="note">${offer.says(sayValue(offer.value, item.parameter.unit, locale))}
    <button type="button" class="quiet" @click=${take}>${offer.press}</button></p>`;
}

/** How sure goes by it: so it is asked where there is a value to be sure of. */
function markFor({ item, id, cell, mark }: SurveyField): TemplateResult | typeof nothing {
  const { range, unit } = item.parameter;
  // Whoever has just emptied the box has come to it by Tab: it does not vanish from under them.
  const isLeft = document.activeElement?.id !== `${id}-known`;
  if (!mark || !range || unit === 'date' || (isBlankCell(cell) && isLeft)) return nothing;
  const set = (event: Event) => mark.set((event.target as HTMLSelectElement).value);
  return html`<p class="mark"><label for="${id}-known">How known</label>
    <select id="${id}-known" @change=${set}>
      <option value="" ?selected=${mark.value === ''}>not marked</option>
      ${waysOfKnowing.map((way) => html`<option ?selected=${way === mark.value}>${way}</option>`)}
    </select></p>`;
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

/** One item of the survey, with what to look at on the walk and what is usual. */
export function surveyField(of: SurveyField): TemplateResult {
  const { item, id, draft, locale, enter } = of;
  const { unit, choices } = item.parameter;
  const usual = item.usual ? ` Usual: ${span(item.usual, unit, locale)}.` : '';
  const parts = [aidsFor(of), markFor(of), offerFor(of)];
  const below = parts.every((part) => part === nothing) ? nothing : html`${parts}`;
  const problem = draft.problem ?? of.unusable;
  return field({
    id,
    label: item.name,
    text: draft.text,
    enter: (text) => enter({ ...draft, text }),
    kind: unit === 'date' ? 'date' : 'number',
    hint: sentence(inLocale(item.look, locale)) + usual,
    required: item.needed === true && !item.only && !of.idle,
    ...unitChoice(of),
    ...(choices && { choices, empty: 'not given' }),
    ...(problem !== undefined && { problem }),
    ...noteFor(of),
    ...(below !== nothing && { below }),
  });
}
