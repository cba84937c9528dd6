import { borders, looks, numberFormatOf, styles } from '../../workbook/look.ts';
import type { Sheet, SheetCell, Style } from '../../workbook/model.ts';
import { USUAL_POINTS } from '../../workbook/text-size.ts';
import { type Block, blockOf } from '../pane/addresses.ts';
import { points, setUpPage, sizeRows } from './page-setup.ts';
import { addressOf, blocksOf, renameSheets, wholeColumns } from './references.ts';

/** The longest list of addresses that Excel surely takes in one go. */
const LONGEST_LIST = 250;

/** As few lists of blocks as Excel takes, so that one call formats many cells. */
function lists(addresses: readonly string[]): string[] {
  const made: string[] = [];
  for (const address of addresses) {
    const last = made.at(-1);
    if (last && last.length + address.length < LONGEST_LIST) made[made.length - 1] = `${last},${address}`;
    else made.push(address);
  }
  return made;
}

/** The addresses of all cells that share something, by what they share. */
function grouped<Shared>(cells: Sheet['cells'], shared: (cell: SheetCell) => Shared | undefined): Map<Shared, string[]> {
  const groups = new Map<Shared, string[]>();
  for (const [address, cell] of Object.entries(cells)) {
    const key = shared(cell);
    if (key !== undefined) groups.set(key, [...(groups.get(key) ?? []), address]);
  }
  return groups;
}

/** Excel keeps a formula in a cell of text as text, and shows a long text there as `####`. */
function excelFormat(cell: SheetCell): string {
  const format = numberFormatOf(cell) ?? 'General';
  const plainText = typeof cell.content === 'string' && !cell.content.startsWith('=') && cell.content.length <= 255;
  return format === '@' && !plainText ? 'General' : format;
}

/** Contents and number formats in two calls for the whole sheet; null leaves a cell alone, also one that a formula spills into. */
function writeContents(target: Excel.Worksheet, cells: Sheet['cells'], newName: (name: string) => string): void {
  const placed = Object.entries(cells).map(([address, cell]) => ({ cell, at: blockOf(address) as Block }));
  if (placed.length === 0) return;
  const block = {
    top: 0,
    left: 0,
    bottom: Math.max(...placed.map(({ at }) => at.top)),
    right: Math.max(...placed.map(({ at }) => at.left)),
  };
  const empty = () => Array.from({ length: block.bottom + 1 }, () => new Array<SheetCell['content'] | null>(block.right + 1).fill(null));
  const formulas = empty();
  const formats = empty();
  for (const { cell, at } of placed) {
    const { content } = cell;
    const formula = typeof content === 'string' && content.startsWith('=');
    (formulas[at.top] as unknown[])[at.left] = formula ? renameSheets(content, newName) : content;
    (formats[at.top] as unknown[])[at.left] = excelFormat(cell);
  }
  const range = target.getRange(addressOf(block));
  range.numberFormat = formats;
  range.formulas = formulas;
}

function writeBorders(target: Excel.Worksheet, style: Style, addresses: readonly string[]): void {
  const edges = Object.entries(borders[style] ?? {});
  if (edges.length === 0) return;
  // Each cell by itself: a block would get its edges only around the outside.
  for (const list of lists(addresses)) {
    for (const [side, { color }] of edges) {
      const edge = target.getRanges(list).format.borders.getItem(`Edge${side[0]?.toUpperCase()}${side.slice(1)}` as 'EdgeTop');
      edge.style = 'Continuous';
      edge.color = color;
    }
  }
}

function writeLooks(target: Excel.Worksheet, cells: Sheet['cells']): void {
  const formatEach = (addresses: readonly string[], apply: (format: Excel.RangeFormat) => void) => {
    for (const list of lists(blocksOf(addresses).map(addressOf))) apply(target.getRanges(list).format);
  };
  for (const [style, addresses] of grouped(cells, (cell) => cell.style)) {
    const { bold, fontSize, textColor, fillColor } = styles[style];
    formatEach(addresses, ({ font, fill }) => {
      if (bold) font.bold = true;
      if (fontSize) font.size = fontSize;
      if (textColor) font.color = textColor;
      if (fillColor) fill.color = fillColor;
    });
    writeBorders(target, style, addresses);
  }
  for (const [align, addresses] of grouped(cells, (cell) => cell.align)) {
    formatEach(addresses, (format) => {
      format.horizontalAlignment = align === 'centre' ? 'Center' : align === 'left' ? 'Left' : 'Right';
    });
  }
  for (const [, addresses] of grouped(cells, (cell) => cell.wrap)) {
    formatEach(addresses, (format) => {
      format.wrapText = true;
      format.verticalAlignment = 'Top';
    });
  }
}

function writeChoices(target: Excel.Worksheet, cells: Sheet['cells'], newName: (name: string) => string): void {
  const sourceOf = ({ choices, choicesIn }: SheetCell): string | undefined =>
    choicesIn === undefined ? choices?.join(',') : `=${renameSheets(choicesIn, newName)}`;
  for (const [source, addresses] of grouped(cells, sourceOf)) {
    for (const list of lists(addresses)) {
      const validation = target.getRanges(list).dataValidation;
      validation.rule = { list: { inCellDropDown: true, source } };
      validation.errorAlert = {
        showAlert: true,
        style: 'Warning',
        title: 'Not on the list',
        message: 'Choose from the list, or leave the cell empty for its default.',
      };
    }
  }
}

function writeRules(target: Excel.Worksheet, rules: Sheet['rules'], newName: (name: string) => string): void {
  for (const { range, when, look } of rules ?? []) {
    const { custom } = target.getRange(range).conditionalFormats.add('Custom');
    const { bold, textColor, fillColor } = looks[look];
    custom.rule.formula = renameSheets(when.startsWith('=') ? when : `=${when}`, newName);
    if (textColor) custom.format.font.color = textColor;
    if (fillColor) custom.format.fill.color = fillColor;
    if (bold) custom.format.font.bold = true;
  }
}

/** Fills a new, empty sheet; nothing reaches Excel before the caller syncs. */
export function writeSheet(target: Excel.Worksheet, sheet: Sheet, newName: (name: string) => string): void {
  target.showGridlines = false;
  // The face that the sheet's sizes are measured in; every Excel has it.
  Object.assign(target.getRange(wholeColumns(0, sheet.columns.length - 1)).format.font, { name: 'Arial', size: USUAL_POINTS });
  sheet.columns.forEach((width, k) => {
    target.getRange(wholeColumns(k, k)).format.columnWidth = points(width);
  });
  writeContents(target, sheet.cells, newName);
  writeLooks(target, sheet.cells);
  for (const merge of sheet.merges ?? []) target.getRange(merge).merge();
  sizeRows(target, sheet);
  writeChoices(target, sheet.cells, newName);
  writeRules(target, sheet.rules, newName);
  setUpPage(target, sheet);
}
