import { html, nothing, render, type TemplateResult } from 'lit-html';
import { cautions } from './cautions.ts';
import { checks } from './checks.ts';
import type { Pane, Part, PartName, Why } from './context.ts';
import { explanation } from './explain.ts';
import { catalogue } from './functions.ts';
import { inputsWriter } from './inputs-writer.ts';
import look from './pane.css?raw';
import partsLook from './parts.css?raw';
import { readings } from './read-through.ts';
import type { SpreadsheetHost } from './spreadsheet-host.ts';
import { survey } from './survey.ts';

/** A sheet made by script needs no file of its own on either host, and no leave from a page's security policy. */
function applyLook(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(look + partsLook);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
}

/** Shows a question in the pane's dialog; closing it by Escape means no. The focus moves on first, so that it can come back. */
async function answerFrom(dialog: HTMLDialogElement): Promise<boolean> {
  await new Promise((moved) => setTimeout(moved));
  dialog.returnValue = 'no';
  dialog.showModal();
  await new Promise((closed) => dialog.addEventListener('close', closed, { once: true }));
  return dialog.returnValue === 'yes';
}

/** Collects calls that come in one burst into one, and never runs two at a time. */
function inTurn(work: (why: Why) => Promise<void>): (why: Why) => void {
  let waiting: Why | undefined;
  let running: Promise<void> = Promise.resolve();
  return (why) => {
    if (waiting === undefined) {
      setTimeout(() => {
        const reason = waiting as Why;
        waiting = undefined;
        running = running.then(() => work(reason));
      }, 30);
    }
    waiting = waiting === 'content' ? waiting : why;
  };
}

/** Fills the pane and keeps it in step with the spreadsheet. */
export function mountPane(root: HTMLElement, host: SpreadsheetHost): void {
  applyLook();
  root.replaceChildren();
  root.classList.add('bedding-pane');
  let current: PartName = 'survey';
  let said = '';
  let failed = '';
  let question = { text: '', yes: '', no: '' };

  /** Draws the page anew. Where that takes away the control that had the focus, the heading gets it, so that no keyboard is left nowhere. */
  const redraw = (): void => {
    const focused = root.contains(document.activeElement);
    render(page(), root);
    if (focused && !root.contains(document.activeElement)) root.querySelector('h2')?.focus();
  };
  const say = (sentence: string): void => {
    [said, failed] = [sentence, ''];
    redraw();
  };
  const act = async (work: () => unknown): Promise<void> => {
    try {
      await work();
    } catch (fault) {
      failed = fault instanceof Error ? fault.message : String(fault);
      redraw();
    }
  };
  const ask = (text: string, yes: string, no: string): Promise<boolean> => {
    question = { text, yes, no };
    redraw();
    return answerFrom(root.querySelector('dialog') as HTMLDialogElement);
  };
  const open = (part: PartName): void => {
    current = part;
    [said, failed] = ['', ''];
    redraw();
    root.querySelector('.part')?.scrollTo(0, 0);
    void act(() => parts[part].refresh('shown'));
  };
  const go = (part: PartName): void => {
    open(part);
    root.querySelector('h2')?.focus();
  };

  const pane: Pane = { host, redraw, say, ask, act, go };
  const writer = inputsWriter(pane);
  const parts: Readonly<Record<PartName, Part>> = {
    survey: survey(pane, writer),
    readings: readings(pane, writer),
    functions: catalogue(pane),
    explain: explanation(pane),
    checks: checks(pane),
    cautions: cautions(pane),
  };

  const tab = ([name, { title }]: [string, Part]): TemplateResult =>
    html`<button type="button" id="part-${name}" aria-current=${name === current ? 'page' : nothing} @click=${() => open(name as PartName)}>${title}</button>`;

  const page = (): TemplateResult => html`
    <nav aria-label="Parts of the panel">${Object.entries(parts).map(tab)}</nav>
    <div class="part">
      <h2 tabindex="-1">${parts[current].title}</h2>
      ${parts[current].view()}
    </div>
    <p class="status" role="status">${said}</p>
    <p class="failed" role="alert">${failed}</p>
    <dialog aria-labelledby="pane-question">
      <form method="dialog">
        <p id="pane-question">${question.text}</p>
        <div class="buttons">
          <button value="yes" id="pane-yes">${question.yes}</button>
          <button value="no" id="pane-no" autofocus>${question.no}</button>
        </div>
      </form>
    </dialog>`;

  const refresh = inTurn((why) => act(() => parts[current].refresh(why)));
  host.onSelection(() => refresh('selection'));
  host.onChange(() => refresh('content'));
  open('survey');
}
