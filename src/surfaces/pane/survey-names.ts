import { html, nothing, type TemplateResult } from 'lit-html';
import type { Pane } from './context.ts';
import { field } from './field.ts';
import { type Entry, isBlankCell, namesOfBudget, readNames } from './inputs-sheet.ts';
import { readable } from './numbers.ts';

const hints: Readonly<Record<(typeof namesOfBudget)[number], string>> = {
  Herd: 'The farm or herd: every printed page and every file carries it.',
  'Prepared by': 'Who stands for the figures: printed on Answer.',
  'Currency sign': 'Such as £, € or kr: stands before money on Answer. Nothing is converted.',
};

export interface SurveyNames {
  readonly refresh: (sheet: string | undefined) => Promise<void>;
  readonly view: () => TemplateResult | typeof nothing;
}

export function surveyNames(pane: Pane, written: () => Promise<void>): SurveyNames {
  let entries: ReadonlyMap<string, Entry> = new Map();
  /** What is typed and not yet taken or given up. */
  const drafts = new Map<string, string>();

  async function refresh(sheet: string | undefined): Promise<void> {
    entries = sheet === undefined ? new Map() : await readNames(pane.host, sheet);
  }

  async function enter(label: string, { sheet, address, cell }: Entry, text: string): Promise<void> {
    const typed = text.trim();
    drafts.set(label, text);
    pane.redraw();
    if (/^[=+@]/.test(typed)) {
      pane.say(`${label} is a name: it cannot begin with ${typed.charAt(0)}.`);
    } else if (!(await keeps(label, { sheet, address, cell }, typed))) {
      await pane.host.write([{ sheet, address, contents: [[typed === '' ? null : typed]] }]);
    }
    drafts.delete(label);
    await written();
  }

  /** Whether what stands there is to stay: asked where it would be lost. */
  async function keeps(label: string, { address, cell }: Entry, typed: string): Promise<boolean> {
    const question = `${label} (${address}) holds ${shown(cell)}: put ${typed === '' ? 'nothing' : typed} in its place?`;
    return !isBlankCell(cell) && shown(cell) !== typed && !(await pane.ask(question, 'Replace', 'Keep what is there'));
  }

  const shown = ({ value }: Entry['cell']): string =>
    typeof value === 'number' ? readable(value, pane.host.locale()) : String(value ?? '');

  // A workbook of the user's own may hold the items alone.
  const view = (): TemplateResult | typeof nothing =>
    entries.size === 0
      ? nothing
      : html`<fieldset><legend>Whose budget</legend>
    ${namesOfBudget.map((label) => {
      const entry = entries.get(label);
      return (
        entry &&
        field({
          id: `name-${label.toLowerCase().replaceAll(' ', '-')}`,
          label,
          hint: hints[label],
          kind: 'text',
          text: drafts.get(label) ?? shown(entry.cell),
          enter: (text) => pane.act(() => enter(label, entry, text)),
        })
      );
    })}
  </fieldset>`;

  return { refresh, view };
}
