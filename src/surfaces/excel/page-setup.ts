import type { Chart, Sheet } from '../../workbook/model.ts';
import { blockOf } from '../pane/addresses.ts';
import { addressOf, wholeColumns } from './references.ts';

/** Excel measures in points; the workbook's data in pixels of 1/96 inch. */
export const points = (pixels: number): number => pixels * 0.75;

/** Excel does not fit a row to text in merged or spilled cells: each row is made as high as the sheet states. */
export function sizeRows(target: Excel.Worksheet, { heights = {} }: Sheet): void {
  for (const [row, pixels] of Object.entries(heights)) target.getRange(`${row}:${row}`).format.rowHeight = points(pixels);
}

/** The last column that a chart reaches into. */
function lastColumn({ at, width }: Chart, columns: readonly number[]): number {
  const USUAL_COLUMN_WIDTH = 64;
  let column = blockOf(at)?.left ?? 0;
  for (let left = width - (columns[column] ?? USUAL_COLUMN_WIDTH); left > 0; left -= columns[column] ?? USUAL_COLUMN_WIDTH) column++;
  return column;
}

function freezePanes({ freezePanes: panes }: Excel.Worksheet, { rows, columns }: NonNullable<Sheet['freeze']>): void {
  if (rows > 0 && columns > 0) panes.freezeAt(addressOf({ top: 0, left: 0, bottom: rows - 1, right: columns - 1 }));
  else if (rows > 0) panes.freezeRows(rows);
  else if (columns > 0) panes.freezeColumns(columns);
}

/** What stays in sight on screen, and what goes on which paper. */
export function setUpPage(target: Excel.Worksheet, { columns, charts = [], freeze, landscape, onePage, pagesFrom = [] }: Sheet): void {
  const { pageLayout } = target;
  pageLayout.paperSize = 'A4';
  pageLayout.orientation = landscape ? 'Landscape' : 'Portrait';
  pageLayout.zoom = { horizontalFitToPages: 1, ...(onePage && { verticalFitToPages: 1 }) };
  // Whole columns: Excel then prints as many rows as are filled, however far the spills reach.
  pageLayout.setPrintArea(wholeColumns(0, Math.max(columns.length - 1, ...charts.map((chart) => lastColumn(chart, columns)))));
  pageLayout.headersFooters.defaultForAllPages.centerFooter = '&A, page &P of &N';
  for (const row of pagesFrom) target.horizontalPageBreaks.add(`A${row}`);
  if (!freeze) return;
  freezePanes(target, freeze);
  if (freeze.rows > 0) pageLayout.setPrintTitleRows(`$1:$${freeze.rows}`);
}
