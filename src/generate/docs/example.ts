import { call } from '../../core/call.ts';
import type { Example, FunctionRecord } from '../../core/define.ts';
import { type Cell, CellError, type Matrix } from '../../core/result.ts';
import { cellAt, columnLetters } from '../../surfaces/pane/addresses.ts';
import { type Html, html, joined, table } from './html.ts';
import { formulaName, literal, shown, unitWord } from './words.ts';

type Range = readonly (readonly unknown[])[];

const isRange = (argument: unknown): argument is Range => Array.isArray(argument);

/** A sheet's cells from A2 on, with the ranges that a formula reads: upright ones side by side, wide ones one below the other. */
class Cells {
  readonly rows: unknown[][] = [];
  #across = 0;
  #down = 0;

  put(range: Range): string {
    const [height, width] = [range.length, (range[0] as readonly unknown[]).length];
    const wide = width > height;
    const [top, left] = wide ? [this.#down, 0] : [0, this.#across];
    if (wide) this.#down += height;
    else this.#across += width;
    for (const [r, line] of range.entries()) {
      this.rows[top + r] ??= [];
      for (const [c, cell] of line.entries()) (this.rows[top + r] as unknown[])[left + c] = cell;
    }
    return `${cellAt(top + 1, left)}:${cellAt(top + height, left + width - 1)}`;
  }
}

/** A call as it is typed, and the cells that it reads. */
export function typed(record: FunctionRecord, given: readonly unknown[]): { readonly formula: string; readonly cells: Cells } {
  const cells = new Cells();
  const flat = record.parameters.at(-1)?.repeating ? [...given.slice(0, -1), ...(given.at(-1) as readonly unknown[])] : given;
  const parts = flat.map((argument) => (isRange(argument) ? cells.put(argument) : literal(argument)));
  return { formula: `${formulaName(record)}(${parts.join(', ')})`, cells };
}

const longest = 12;

/** The cells as a sheet shows them, folded away where there are many. */
function cellsShown({ rows }: Cells): Html | '' {
  if (rows.length === 0) return '';
  const width = Math.max(...rows.map((line) => line.length));
  const letters = Array.from({ length: width }, (_, column) => columnLetters(column));
  const lines = rows.map((line, r) => [r + 2, ...letters.map((_, column) => shown(line[column]))]);
  const grid = html`<div class="wide cells">${table('Cells that it reads', ['', ...letters], lines)}</div>`;
  if (rows.length <= longest && width <= longest) return grid;
  return html`<details><summary>The ${rows.length * width} cells that it reads</summary>${grid}</details>`;
}

/** How many rows of a table are enough to show what it looks like. */
const firstRows = 6;

/** A table's first rows, with the row that has an outside answer if it is further down. */
function rowsShown([header, ...rows]: Matrix, key: string | undefined): Html {
  const wanted = rows.findIndex(([first]) => String(first) === key);
  const lines = rows.slice(0, firstRows).map((cells) => cells.map(shown));
  if (wanted >= firstRows) lines.push(...(wanted > firstRows ? [['…']] : []), (rows[wanted] as readonly Cell[]).map(shown));
  const more = rows.length - 1 > Math.max(wanted, firstRows - 1) ? [['…']] : [];
  const full = [...lines, ...more].map((line) => [...line, ...new Array((header as readonly Cell[]).length - line.length).fill('')]);
  return html`<div class="wide">${table(rows.length > firstRows ? `First of ${rows.length} rows` : 'What it gives', (header as readonly Cell[]).map(shown), full)}</div>`;
}

/** The cell of an answer that the outside answer speaks of. */
function answerAt(answer: Matrix, at: Example['at']): Cell | undefined {
  if (!at) return answer[0]?.[0];
  const column = (answer[0] as readonly Cell[]).indexOf(at[1]);
  return answer.find(([key]) => String(key) === at[0])?.[column];
}

/** A reference that shows a wrong answer is worse than none, so the build stops. */
function mustAgree({ name }: FunctionRecord, { gives, within = 1e-9 * Math.abs(Number(gives)) }: Example, found: Cell | undefined): void {
  const agrees =
    typeof gives === 'number' ? Math.abs(Number(found) - gives) <= within : (found instanceof CellError ? found.code : found) === gives;
  if (!agrees) throw new Error(`${name}: its example gives ${shown(found)}, not ${gives}`);
}

/** One worked example: the formula as typed, its answer worked out now, and the answer found outside this project. */
export function workedExample(record: FunctionRecord, example: Example): Html {
  const { formula, cells } = typed(record, example.call);
  const answer = call(record, example.call);
  const found = answerAt(answer, example.at);
  mustAgree(record, example, found);
  const unit = unitWord(record.working[record.result]?.unit ?? '');
  const tolerance =
    typeof example.gives === 'number' && example.within !== undefined && example.within > 1e-6 ? `, within ${shown(example.within)}` : '';
  const place = example.at
    ? html` at ${joined(
        example.at.map((part) => html`<i>${part}</i>`),
        ', ',
      )}`
    : '';
  return html`<div class="example">
<p><code>${formula}</code>${record.columns ? '' : html` gives <b>${shown(found)}</b> ${unit}`}</p>
${cellsShown(cells)}${record.columns ? rowsShown(answer, example.at?.[0]) : ''}
<p class="outside">Outside answer${place}: ${shown(example.gives)}${tolerance}; ${example.source}.</p>
</div>
`;
}
