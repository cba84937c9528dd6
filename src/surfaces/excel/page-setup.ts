import { styles } from '../../workbook/look.ts';
import type { Chart, Sheet } from '../../workbook/model.ts';
import { type Block, blockOf } from '../pane/addresses.ts';
import { addressOf, wholeColumns } from './references.ts';

/** Excel measures in points; the workbook's data in pixels of 1/96 inch. */
export const points = (pixels: number): number => pixels * 0.75;

const USUAL_FONT_SIZE = 11;
const USUAL_ROW_HEIGHT = 15;
const TALLEST_ROW = 400;

/** About how high wrapped text stands in a width: a letter is half as wide as high, a line a third higher than its letters. */
function textHeight(text: string, size: number, width: number): number {
  const lines = Math.ceil((text.length * size * 0.5) / Math.max(points(width - 8), 1));
  return lines * size * 1.35;
}

/** Excel does not fit a row to wrapped text in merged or spilled cells, so every row is made as high as its own text needs, or as the sheet states. */
export function fitRows(target: Excel.Worksheet, { cells, columns, merges = [], heights: stated = {} }: Sheet): void {
  const merged = new Map(merges.map((merge) => [merge.split(':')[0], blockOf(merge) as Block]));
  const heights = new Map(Object.entries(stated).map(([row, pixels]) => [Number(row) - 1, points(pixels)]));
  for (const [address, { content, wrap, style }] of Object.entries(cells)) {
    if (!wrap || typeof content !== 'string' || content.startsWith('=')) continue;
    const { top, left, bottom, right } = merged.get(address) ?? (blockOf(address) as Block);
    const width = columns.slice(left, right + 1).reduce((sum, column) => sum + column, 0);
    const height = textHeight(content, (style && styles[style].fontSize) ?? USUAL_FONT_SIZE, width) / (bottom - top + 1);
    for (let row = top; row <= bottom; row++) heights.set(row, Math.max(heights.get(row) ?? USUAL_ROW_HEIGHT, height));
  }
  for (const [row, height] of heights) {
    if (height > USUAL_ROW_HEIGHT) target.getRange(`${row + 1}:${row + 1}`).format.rowHeight = Math.min(height, TALLEST_ROW);
  }
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
