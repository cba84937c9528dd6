import { addressOf } from '../workbook/grid.ts';
import type { Sheet, SheetCell } from '../workbook/model.ts';
import type { Solving } from './solving.ts';
import { type Line, type Steps, solvingName, workingName } from './steps.ts';

type Cells = Record<string, SheetCell>;

/** Within their own sheet cells are named without it, as everyone writes them. */
const within = (sheet: string, formula: string): string => `=${formula.replaceAll(`${sheet}!`, '')}`;

const put = (cells: Cells, row: number, contents: readonly SheetCell[]): void => {
  contents.forEach((cell, column) => {
    if (cell.content !== '') cells[addressOf(column, row)] = cell;
  });
};

const texts = (words: readonly string[], style: SheetCell['style']): readonly SheetCell[] =>
  words.map((content) => ({ content, ...(style && { style }) }));

function lineCells(line: Line): readonly SheetCell[] {
  if ('heading' in line) return texts([line.heading, '', '', '', '', ''], 'section');
  const { label, formula, unit, says, equation, source } = line;
  return [
    { content: label, style: 'label' },
    { content: within(workingName, formula), style: 'output', format: 'general', align: 'right' },
    ...texts([unit, says, equation, source], 'note'),
  ];
}

export function workingSheet({ lines }: Steps): Sheet {
  const cells: Cells = {};
  put(cells, 0, texts(['Working'], 'title'));
  put(cells, 1, texts(['Every figure of the plan, step by step, in formulas that any spreadsheet program recalculates.'], 'lead'));
  put(cells, 3, texts(['step', 'value', 'unit', 'what it is', 'equation', 'source'], 'heading'));
  lines.forEach((line, k) => void put(cells, 4 + k, lineCells(line)));
  return { name: workingName, columns: [230, 120, 80, 330, 420, 420], rows: lines.length + 6, cells, freeze: { rows: 4, columns: 1 } };
}

export function solvingSheet({ tables }: Solving): Sheet {
  const cells: Cells = {};
  put(cells, 0, texts(['Solving'], 'title'));
  put(
    cells,
    1,
    texts(
      ['A figure that stands on both sides of its equation is found here by halving: every row halves the stretch in which it lies.'],
      'lead',
    ),
  );
  let row = 3;
  for (const { heading, equation, columns, rows } of tables) {
    put(cells, row, texts([heading, '', '', equation], 'section'));
    put(cells, row + 1, texts(columns, 'heading'));
    rows.forEach((formulas, k) => {
      const line = formulas.map((formula): SheetCell => ({ content: within(solvingName, formula), style: 'output', format: 'general' }));
      put(cells, row + 2 + k, line);
    });
    row += rows.length + 3;
  }
  return {
    name: solvingName,
    columns: [110, 110, 110, 130, ...Array.from({ length: 12 }, () => 110)],
    rows: row + 2,
    cells,
    freeze: { rows: 2, columns: 0 },
  };
}
