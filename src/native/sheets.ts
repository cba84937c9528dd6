import { functionsIn } from '../budget/figure.ts';
import { figures } from '../budget/figures.ts';
import { fit } from '../workbook/fit.ts';
import { resultFormat, shownUnit } from '../workbook/formats.ts';
import { addressOf } from '../workbook/grid.ts';
import type { Sheet, SheetCell } from '../workbook/model.ts';
import { inputs } from './inputs.ts';
import { aboutFigure, aboveFigures, counts, itemsUnder, type PlanCells } from './plan.ts';
import type { Solving } from './solving.ts';
import { figuresName, type Line, type Steps, solvingName, workingName, yearsName } from './steps.ts';
import type { Years } from './years.ts';

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

export function yearsSheet({ tables }: Years): Sheet {
  const cells: Cells = {};
  put(cells, 0, texts(['Years'], 'title'));
  put(cells, 1, texts(['Year by year; years beyond the life of the kit are 0.'], 'lead'));
  let row = 3;
  let widest = 0;
  for (const { heading, columns, equations, rows } of tables) {
    put(cells, row, texts([heading], 'section'));
    put(cells, row + 1, texts(columns, 'heading'));
    put(cells, row + 2, texts(equations, 'note'));
    rows.forEach((formulas, k) => {
      const line = formulas.map(
        (formula): SheetCell => ({ content: within(yearsName, formula), style: 'output', format: formula.length > 2 ? 'two' : 'whole' }),
      );
      put(cells, row + 3 + k, line);
    });
    row += rows.length + 4;
    widest = Math.max(widest, columns.length);
  }
  const widths = Array.from({ length: widest }, (_, k) => (k === 0 ? 60 : 110));
  return { name: yearsName, columns: widths, rows: row + 2, cells, landscape: true, freeze: { rows: 5, columns: 1 } };
}

const figureHeadings = ['figure', 'value', 'unit', 'why there is none', 'what it is', 'equation', 'worked out with'];

/** Every figure of the plan, each a formula over the inputs and the figures before it. */
export function figuresSheet(plan: PlanCells): Sheet {
  const cells: Cells = {};
  put(cells, 0, texts(['Figures'], 'title'));
  put(
    cells,
    1,
    texts(
      [
        'Every figure of the plan, in formulas: trace any of them back to what was typed on Inputs. Warnings do not recalculate: see Read me.',
      ],
      'lead',
    ),
  );
  put(cells, aboveFigures - 1, texts(figureHeadings, 'heading'));
  figures.forEach((figure, k) => {
    const row = aboveFigures + k;
    const { key, unit, how } = figure;
    const value = addressOf(1, row);
    const wrong = itemsUnder(key).map(inputs.wrong).join('&');
    const why =
      how === undefined
        ? `=${counts[key]?.listed ?? '""'}`
        : `=IF(ISERROR(${value}),"there is none for these inputs. "&${wrong || '""'},"")`;
    const line: readonly SheetCell[] = [
      { content: key, style: 'label' },
      { content: within(figuresName, plan.formula(key)), style: 'output', format: resultFormat(unit), align: 'right' },
      { content: shownUnit(unit), style: 'note' },
      { content: why, style: 'note' },
      ...texts([aboutFigure(figure), how ?? 'counted', functionsIn(how).join(', ')], 'note'),
    ];
    put(
      cells,
      row,
      line.map((cell) => ({ ...cell, wrap: true })),
    );
  });
  const fitted = fit({ columns: [230, 106, 100, 190, 260, 400, 170], cells, merges: [], says: new Map(), spilled: new Set() });
  return {
    name: figuresName,
    rows: aboveFigures + figures.length + 2,
    ...fitted,
    landscape: true,
    freeze: { rows: aboveFigures, columns: 1 },
  };
}
