import { html, type TemplateResult } from 'lit-html';
import { groups, waysOfKnowing } from '../../budget/item.ts';
import { askedFirst, type BudgetItem, budgetItems } from '../../budget/items.ts';
import { REFUSED } from '../../core/parameters.ts';
import type { Pane, Part, Why } from './context.ts';
import { readHowSure } from './how-sure.ts';
import { type Entry, type Inputs, isBlankCell, readInputsSheet } from './inputs-sheet.ts';
import type { InputsWriter } from './inputs-writer.ts';
import { offerBudget } from './offer-budget.ts';
import { type Offers, readOffers } from './offers.ts';
import { type Plan, planOf } from './plan.ts';
import type { CellContent, HostCell } from './spreadsheet-host.ts';
import { runningAnswer } from './survey-answer.ts';
import { type Draft, draftOf, refusalOf, valueFrom } from './survey-draft.ts';
import { surveyField } from './survey-field.ts';
import { surveyNames } from './survey-names.ts';

const blank: HostCell = { value: null };

const fieldId = ({ key }: BudgetItem): string => `item-${key.replaceAll('_', '-')}`;

/**
 * Milliseconds without a change after which what other sheets offer is read: the embedded sheet works a sheet out that is not on show in
 * turns of its own, and at once, with nobody able to type, where it is read before.
 */
const untilWorkedOut = 1500;

/** The walk's notes as a form over the Inputs sheet: what the sheet holds is shown, what is entered goes there. */
export function survey(pane: Pane, writer: InputsWriter): Part {
  const drafts = new Map<BudgetItem, Draft>();
  let inputs: Inputs | undefined;
  let plan: Plan | undefined;
  let offers: Offers = new Map();
  let howSure: readonly string[] = [];
  let looking: ReturnType<typeof setTimeout> | undefined;
  const names = surveyNames(pane, refresh);

  /** A draft stands for what the sheet holds; where the sheet has moved on, the sheet is right. */
  function dropStaleDrafts(now: Inputs): void {
    for (const [item, draft] of drafts) {
      if (draft.saved !== undefined && draft.saved !== now.get(item)?.cell.value) drafts.delete(item);
    }
  }

  async function refresh(why: Why = 'content'): Promise<void> {
    if (why === 'selection') return;
    inputs = await readInputsSheet(pane.host);
    plan = inputs && planOf(inputs, pane.host.locale());
    if (inputs) dropStaleDrafts(inputs);
    const [anyEntry] = inputs?.values() ?? [];
    await names.refresh(anyEntry?.sheet);
    howSure = [];
    pane.redraw();
    clearTimeout(looking);
    looking = setTimeout(() => void pane.act(lookAtSheets), untilWorkedOut);
  }

  async function lookAtSheets(): Promise<void> {
    offers = await readOffers(pane.host);
    howSure = plan?.missing.length === 0 ? await readHowSure(pane.host) : [];
    pane.redraw();
  }

  function show(item: BudgetItem, draft: Draft): void {
    drafts.set(item, draft);
    pane.redraw();
  }

  async function save(item: BudgetItem, draft: Draft, value: CellContent, always?: 'always'): Promise<void> {
    if (await writer.put([[item, value]], always)) drafts.set(item, { ...draft, saved: value ?? undefined });
    else drafts.delete(item);
    if (value === null) drafts.delete(item);
    await refresh();
  }

  /** Takes what was typed, in whichever way, as far as the sheet; what cannot be used stays in its box with the reason. */
  async function enter(item: BudgetItem, draft: Draft): Promise<void> {
    show(item, { ...draft, saved: undefined, problem: undefined });
    if (draft.text.trim() === '') return isBlankCell(inputs?.get(item)?.cell ?? blank) ? undefined : save(item, draft, null);
    const value = valueFrom(item, draft, pane.host.locale());
    if (value === undefined) return;
    if (typeof value === 'object') return show(item, { ...draft, saved: undefined, problem: value.problem });
    if (item.parameter.read(value) === REFUSED)
      return show(item, { ...draft, saved: undefined, problem: refusalOf(item, draft, value, pane.host.locale()) });
    return save(item, { ...draft, problem: undefined }, value);
  }

  /** Puts what another sheet offers now into the plan, as if it had been typed. */
  async function take(item: BudgetItem): Promise<void> {
    await lookAtSheets();
    const offer = offers.get(item);
    if (!offer) return;
    await save(item, draftOf(item, offer.value, pane.host.locale()), offer.value, 'always');
    const entry = inputs?.get(item);
    if (offer.isMeasured && entry?.mark && entry.cell.value === offer.value) await mark(entry, entry.mark.address, waysOfKnowing[0]);
  }

  const offerOf = (item: BudgetItem) => {
    const offer = offers.get(item);
    return offer && { offer, take: () => pane.act(() => take(item)) };
  };

  /** Marks beside the item how the user came by its value. */
  async function mark({ sheet }: Entry, address: string, value: string): Promise<void> {
    await pane.host.write([{ sheet, address, contents: [[value === '' ? null : value]] }]);
    await refresh();
  }

  const markOf = (entry: Entry | undefined) =>
    entry?.mark && {
      mark: { value: entry.mark.value, set: (value: string) => pane.act(() => mark(entry, entry.mark?.address as string, value)) },
    };

  const fieldFor = (item: BudgetItem, entries: Inputs, soFar: Plan): TemplateResult =>
    surveyField({
      item,
      ...offerOf(item),
      ...markOf(entries.get(item)),
      id: fieldId(item),
      cell: entries.get(item)?.cell ?? blank,
      draft: drafts.get(item) ?? draftOf(item, entries.get(item)?.cell.value ?? null, pane.host.locale()),
      missing: soFar.missing.some((lacking) => lacking === item || lacking.key === item.instead),
      idle: soFar.idle.includes(item),
      unusable: soFar.unusable.find(([one]) => one === item)?.[1],
      locale: pane.host.locale(),
      typed: pane.host.typed,
      enter: (draft) => pane.act(() => enter(item, draft)),
      show: (draft) => show(item, draft),
    });

  function nextMissing(): void {
    const [first] = plan?.missing ?? [];
    const box = first && document.getElementById(fieldId(first));
    const folded = box?.closest('details');
    if (folded) folded.open = true;
    box?.focus();
  }

  function group(title: string, items: readonly BudgetItem[], entries: Inputs, soFar: Plan): TemplateResult {
    return html`<fieldset><legend>${title}</legend>${items.map((item) => fieldFor(item, entries, soFar))}</fieldset>`;
  }

  function optionalGroup(title: string, items: readonly BudgetItem[], entries: Inputs, soFar: Plan): TemplateResult {
    const given = items.filter((item) => !isBlankCell(entries.get(item)?.cell ?? blank)).length;
    return html`<details><summary>${title} <span class="count">${given} of ${items.length} given</span></summary>
      ${items.map((item) => fieldFor(item, entries, soFar))}
    </details>`;
  }

  const byGroup = (items: readonly BudgetItem[]) =>
    groups.map((title) => ({ title, items: items.filter(({ group }) => group === title) })).filter(({ items }) => items.length > 0);

  function view(): TemplateResult {
    if (!inputs || !plan) return offerBudget(pane, refresh);
    const [entries, soFar] = [inputs, plan];
    return html`
      <p class="lead">What you see on the walk goes into the Inputs sheet; what is there shows here. Fill in what is needed first: the rest has defaults.</p>
      ${names.view()}
      <h3>Needed</h3>
      ${byGroup(budgetItems.filter(askedFirst)).map(({ title, items }) => group(title, items, entries, soFar))}
      <h3>Makes it your own</h3>
      ${byGroup(budgetItems.filter((item) => !askedFirst(item))).map(({ title, items }) => optionalGroup(title, items, entries, soFar))}
      ${runningAnswer(pane, soFar, howSure, nextMissing)}`;
  }

  return { title: 'Survey', view, refresh };
}
