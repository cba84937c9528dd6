import { html, nothing, type TemplateResult } from 'lit-html';
import { call } from '../../core/call.ts';
import type { FunctionRecord } from '../../core/define.ts';
import { type Cell, CellError, type Matrix } from '../../core/result.ts';
import { inLocale } from '../in-locale.ts';
import { sayCount, sayValue } from './numbers.ts';
import { recordOf } from './records.ts';
import { scoreCaution } from './score.ts';

const most = { rows: 12, columns: 6 } as const;

function sayCell(cell: Cell, unit: string, locale: string): string {
  if (cell instanceof CellError) return `${cell.code} ${inLocale(cell.message, locale)}`;
  if (cell === '') return '';
  return typeof cell === 'string' ? inLocale(cell, locale) : sayValue(cell, unit, locale);
}

function table(answer: Matrix, hasHeader: boolean, locale: string): TemplateResult {
  const rows = answer.slice(0, most.rows).map((row) => row.slice(0, most.columns));
  const [head = [], ...body] = hasHeader ? rows : [[], ...rows];
  return html`<div class="scroll" tabindex="0" role="region" aria-label="Result">
    <table>
      ${hasHeader ? html`<thead><tr>${head.map((cell) => html`<th scope="col">${cell}</th>`)}</tr></thead>` : nothing}
      <tbody>${body.map((row) => html`<tr>${row.map((cell) => html`<td>${sayCell(cell, '', locale)}</td>`)}</tr>`)}</tbody>
    </table>
  </div>`;
}

/** The span that belongs to a score, over whatever was not given. */
function spanOf(args: readonly unknown[], locale: string): string {
  const [, lowest, , highest] = call(recordOf('HYGIENE.SPAN'), args);
  return lowest && highest
    ? `Span over what was not given: ${sayCell(lowest[1] as Cell, '0–100', locale)} to ${sayCell(highest[1] as Cell, '0–100', locale)}.`
    : '';
}

/** What a call would put into the sheet, before it goes there. */
export function resultOf(record: FunctionRecord, args: readonly unknown[], answer: Matrix, locale: string): TemplateResult {
  const first = answer[0]?.[0] as Cell;
  const [rows, columns] = [answer.length, answer[0]?.length ?? 1];
  const one = rows * columns === 1;
  if (one && first instanceof CellError) {
    const untouched = args.every((argument) => argument === null);
    return untouched
      ? html`<p class="hint">Fill in the arguments to see the result.</p>`
      : html`<p class="problem" id="result">${sayCell(first, '', locale).replaceAll(' | ', '\n')}</p>`;
  }
  const scored = record.name.startsWith('HYGIENE.') || (record.name.startsWith('BUDGET.') && record.name !== 'BUDGET.INPUTS');
  return html`
    ${one ? html`<p id="result"><strong>${sayCell(first, record.working[record.result]?.unit ?? '', locale)}</strong></p>` : html`<p id="result">${sayCount(rows, 'row')} by ${sayCount(columns, 'column')}${rows > most.rows || columns > most.columns ? ', the first of them' : ''}:</p>${table(answer, record.columns !== undefined, locale)}`}
    ${record.name === 'HYGIENE.RISK' && one ? html`<p class="hint">${spanOf(args, locale)}</p>` : nothing}
    ${scored ? scoreCaution() : nothing}`;
}
