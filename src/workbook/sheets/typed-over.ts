import { addressOf, letter, on, placeOf } from '../grid.ts';
import type { SheetBuilder } from '../sheet-builder.ts';

/** Cells of a column that hold a formula; whatever rests on the checks themselves is left out, as it would rest on itself. */
function formulasByColumn(page: SheetBuilder, checks: SheetBuilder): ReadonlyMap<number, readonly number[]> {
  const columns = new Map<number, number[]>();
  for (const [address, { content, style }] of page.cells()) {
    const isOurs = String(content).startsWith('=') && style !== 'input' && style !== 'required';
    if (!isOurs || String(content).includes(`${checks.name}!`) || (page === checks && address === checks.at('overall'))) continue;
    const { column, row } = placeOf(address);
    columns.set(column, [...(columns.get(column) ?? []), row]);
  }
  return columns;
}

/** Rows that follow each other, as ranges. */
function runs(column: number, rows: readonly number[]): readonly string[] {
  const sorted = rows.toSorted((a, b) => a - b);
  const starts = sorted.filter((row) => !rows.includes(row - 1));
  const ends = sorted.filter((row) => !rows.includes(row + 1));
  return starts.map((from, k) => `${addressOf(column, from)}:${addressOf(column, ends[k] as number)}`);
}

/**
 * Counts the formulas that are one no longer, by sheet and column, and lets each such cell show it where it stands: a figure
 * typed over one does not follow the inputs any more. Called once every sheet is written.
 */
export function watchFormulas(checks: SheetBuilder, pages: readonly SheetBuilder[]): void {
  const watched = pages.flatMap((page) =>
    [...formulasByColumn(page, checks)].sort(([a], [b]) => a - b).map(([column, rows]) => ({ page, column, rows })),
  );
  checks
    .part(
      'Formulas typed over',
      'A figure typed over a formula follows the inputs no longer: its cell turns red, and it is counted here. Undo, or copy the formula of its neighbour back.',
    )
    .headings('sheet and column', 'formulas', 'lost');
  const first = checks.row;
  for (const { page, column, rows } of watched) {
    const range = on(page.name, `${addressOf(column, Math.min(...rows))}:${addressOf(column, Math.max(...rows))}`);
    checks.line([`${page.name}, column ${letter(column)}`, rows.length, `=B${checks.row}-SUMPRODUCT(--ISFORMULA(${range}))`], 'output', {
      format: 'whole',
    });
    for (const run of runs(column, rows)) page.rule(run, `NOT(ISFORMULA(${run.split(':')[0]}))`, 'bad');
  }
  const lost = `C${first}:C${checks.row - 1}`;
  checks.called('lost', lost).rule(lost, `C${first}>0`, 'bad');
}
