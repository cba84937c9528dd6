import { html, type TemplateResult } from 'lit-html';
import { cellAt } from './addresses.ts';
import type { Pane } from './context.ts';
import { field } from './field.ts';
import { type Entry, isBlankCell } from './inputs-sheet.ts';
import { readable } from './numbers.ts';

/** What a budget is known by, each right of its label on the Inputs sheet, and what it is for. */
const names = [
  { label: 'Herd', hint: 'The farm or herd: every printed page and every file carries it.' },
  { label: 'Prepared by', hint: 'Who stands for the figures: printed on Answer.' },
  { label: 'Currency sign', hint: 'Such as £, € or kr: stands before money on Answer. Nothing is converted.' },
] as const;

/** They stand above the items. */
const top = { rows: 12, columns: 12 };

export interface SurveyNames {
  readonly refresh: (sheet: string | undefined) => Promise<void>;
  readonly view: () => TemplateResult;
}

export function surveyNames(pane: Pane, written: () => Promise<void>): SurveyNames {
  let entries: ReadonlyMap<string, Entry> = new Map();
  /** What is typed and not yet taken or given up. */
  const drafts = new Map<string, string>();

  async function refresh(sheet: string | undefined): Promise<void> {
    const rows = sheet === undefined ? [] : await pane.host.read({ sheet, address: `A1:${cellAt(top.rows, top.columns)}` });
    const found = rows.flatMap((row, r) =>
      row.flatMap(({ value }, c): [string, Entry][] => {
        const cell = row[c + 1];
        return cell && sheet !== undefined && names.some(({ label }) => label === value)
          ? [[String(value), { sheet, address: cellAt(r, c + 1), cell }]]
          : [];
      }),
    );
    entries = new Map(found);
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

  const view = (): TemplateResult => html`<fieldset><legend>Whose budget</legend>
    ${names.map(({ label, hint }) => {
      const entry = entries.get(label);
      return (
        entry &&
        field({
          id: `name-${label.toLowerCase().replaceAll(' ', '-')}`,
          label,
          hint,
          kind: 'text',
          text: drafts.get(label) ?? shown(entry.cell),
          enter: (text) => pane.act(() => enter(label, entry, text)),
        })
      );
    })}
  </fieldset>`;

  return { refresh, view };
}
