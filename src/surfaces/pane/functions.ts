import { html, nothing, type TemplateResult } from 'lit-html';
import { call } from '../../core/call.ts';
import type { FunctionRecord } from '../../core/define.ts';
import type { Parameter } from '../../core/parameters.ts';
import { CellError, type Matrix } from '../../core/result.ts';
import { describe, nameWithUnit } from '../../core/words.ts';
import { inLocale } from '../in-locale.ts';
import { addressFrom, type Block, blockOf, cellAt, covers, referenceTo } from './addresses.ts';
import type { Pane, Part } from './context.ts';
import { field } from './field.ts';
import { argumentsFrom, formulaFor, type Given, givenBy, problemOf } from './function-form.ts';
import { resultOf } from './function-result.ts';
import { findFunctions } from './function-search.ts';
import { isBlankCell } from './inputs-sheet.ts';
import { sayCount } from './numbers.ts';
import type { Selection } from './spreadsheet-host.ts';

/** Every function: found by farm word, filled in as a form, tried before it goes into a cell. */
export function catalogue(pane: Pane): Part {
  const { host } = pane;
  let query = '';
  let chosen: FunctionRecord | undefined;
  let texts = new Map<string, string>();
  let target: Selection | undefined;
  let tried: { readonly args: readonly unknown[]; readonly answer: Matrix } | undefined;

  const ours = (sentence: string): string => inLocale(sentence, host.locale());

  const given = (record: FunctionRecord): readonly Given[] => givenBy(record, texts, target?.sheet ?? '', host.locale());

  async function work(): Promise<void> {
    const args = chosen && (await argumentsFrom(host, given(chosen)));
    tried = chosen && args && { args, answer: call(chosen, args) };
    pane.redraw();
  }

  async function refresh(): Promise<void> {
    target = await host.selection();
    await work();
  }

  function choose(record: FunctionRecord | undefined): void {
    [chosen, texts, tried] = [record, new Map(), undefined];
    void pane.act(async () => {
      await work();
      document.getElementById(record ? 'function-name' : 'search')?.focus();
    });
  }

  const enter = (name: string) => (text: string) => {
    texts.set(name, text);
    void pane.act(work);
  };

  async function useSelection({ name }: Parameter): Promise<void> {
    const selected = await host.selection();
    texts.set(name, referenceTo(selected));
    target = selected;
    await work();
  }

  /** The filled cells, by address, that a result of that size would cover. A host may read a large block only as far as it is filled. */
  async function inTheWay({ sheet, active }: Selection, rows: number, columns: number): Promise<readonly string[]> {
    const { top, left } = blockOf(active) as Block;
    const [[last] = []] = await host.read({ sheet, address: cellAt(top + rows - 1, left + columns - 1) });
    if (!last) {
      throw new Error(
        `The result is ${sayCount(rows, 'row')} by ${sayCount(columns, 'column')} and does not fit below ${active}: choose a cell further up or left, or add rows to the sheet.`,
      );
    }
    const cells = await host.read({ sheet, address: addressFrom(active, rows, columns) });
    return cells.flatMap((row, r) => row.flatMap((cell, c) => (isBlankCell(cell) ? [] : [cellAt(top + r, left + c)])));
  }

  async function insert(record: FunctionRecord): Promise<void> {
    const refused = tried?.answer[0]?.[0];
    if (refused instanceof CellError && refused.code === '#VALUE!') throw new Error(`Not inserted. ${ours(refused.message)}`);
    const selected = await host.selection();
    const [rows, columns] = [tried?.answer.length ?? 1, tried?.answer[0]?.length ?? 1];
    if (
      given(record).some((one) => one.kind === 'cells' && one.place.sheet === selected.sheet && covers(one.place.address, selected.active))
    ) {
      throw new Error(`${selected.active} is one of the cells that the function reads: select the cell that is to show the result.`);
    }
    const filled = await inTheWay(selected, rows, columns);
    const named = filled.length > 6 ? `${filled.slice(0, 6).join(', ')} and ${filled.length - 6} more` : filled.join(', ');
    const question = `${named} ${filled.length === 1 ? 'is' : 'are'} filled in on ${selected.sheet}. Empty ${filled.length === 1 ? 'it' : 'them'} and put the function there?`;
    if (filled.length > 0 && !(await pane.ask(question, 'Empty and insert', 'Leave as it is'))) return;
    const place = { sheet: selected.sheet, address: selected.active };
    const emptied = filled.map((address) => ({ sheet: selected.sheet, address, contents: [[null]] }));
    await host.write([...emptied, { ...place, contents: [[formulaFor(record, given(record), selected.sheet)]] }]);
    await host.select(place);
    pane.say(
      `${record.name} stands in ${selected.sheet} ${selected.active}${rows * columns > 1 ? ` and fills ${sayCount(rows, 'row')} by ${sayCount(columns, 'column')}` : ''}.`,
    );
  }

  function argument(parameter: Parameter, one: Given | undefined): TemplateResult {
    const problem = problemOf(parameter, one, host.locale());
    return field({
      id: `argument-${parameter.name.replaceAll('_', '-')}`,
      label: nameWithUnit(parameter),
      text: texts.get(parameter.name) ?? '',
      kind: 'text',
      required: parameter.fallback === undefined,
      hint: `${ours(describe(parameter))}.${parameter.repeating ? ' Several with semicolons between.' : ''}`,
      enter: enter(parameter.name),
      ...(problem !== undefined && { problem }),
      beside: html`<button type="button" class="quiet" @click=${() => pane.act(() => useSelection(parameter))}>
        Use selected cells<span class="unseen"> for ${parameter.name}</span>
      </button>`,
      ...(parameter.choices && {
        below: html`<p class="hint">${parameter.choices.map((word) => html`<button type="button" class="choice" @click=${() => enter(parameter.name)(word)}>${word}</button> `)}</p>`,
      }),
    });
  }

  function form(record: FunctionRecord): TemplateResult {
    const all = given(record);
    const reference = target ? referenceTo({ sheet: target.sheet, address: target.active }) : '';
    return html`
      <div class="buttons"><button type="button" id="all-functions" class="quiet" @click=${() => choose(undefined)}>All functions</button></div>
      <h3 id="function-name" tabindex="-1">${record.name}</h3>
      <p>${ours(record.summary)}</p>
      ${record.parameters.map((parameter, k) => argument(parameter, all[k]))}
      <div aria-live="polite">${tried && !record.parameters.some((parameter, k) => problemOf(parameter, all[k], host.locale())) ? resultOf(record, tried.args, tried.answer, host.locale()) : nothing}</div>
      <p class="hint"><code id="formula">${host.typed(formulaFor(record, all, target?.sheet ?? ''))}</code></p>
      <div class="buttons"><button type="button" id="insert" @click=${() => pane.act(() => insert(record))}>Insert at ${reference}</button></div>`;
  }

  const search = (event: Event): void => {
    query = (event.target as HTMLInputElement).value;
    pane.redraw();
  };

  function list(): TemplateResult {
    const found = findFunctions(query);
    return html`
      <div class="field">
        <label for="search">What do you want to know?</label>
        <input id="search" type="search" autocomplete="off" .value=${query} @input=${search} aria-describedby="search-said">
        <p id="search-said" class="hint">In your own words: how long between beddings, loan, chimney.</p>
      </div>
      <p role="status" class="hint">${found.length === 0 ? 'Nothing found: try another word.' : sayCount(found.length, 'function')}</p>
      <ul class="list">
        ${found.map((record) => html`<li><button type="button" @click=${() => choose(record)}><strong>${record.name}</strong> <span>${ours(record.summary)}</span></button></li>`)}
      </ul>`;
  }

  return { title: 'Functions', view: () => (chosen ? form(chosen) : list()), refresh };
}
