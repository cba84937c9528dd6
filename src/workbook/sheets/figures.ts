import { figures } from '../../budget/figures.ts';
import { resultFormat } from '../formats.ts';
import { on, quoted } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { inUse, items, values } from './inputs.ts';

export const figuresName = 'Figures';
const headingRow = 5;
/** The figures, and room for every warning that can fire. */
const rows = figures.length + 45;
const lastRow = headingRow + rows;
const column = (letter: string): string => on(figuresName, `${letter}${headingRow}:${letter}${lastRow}`);

const keys = column('A');
const pick = (from: string, key: string): string => `INDEX(${column(from)},MATCH(${key},${keys},0))`;

/** The figure under a key: text in quotes, or the cell that holds the key. */
export const figureAt = (cell: string): string => pick('B', cell);
export const figure = (key: string): string => figureAt(quoted(key));
export const meaning = (key: string): string => pick('D', quoted(key));

/** How far the inputs carry: each a cell of its own, so that the sentences built on them stay short. */
const stateRow = headingRow + 20;
const stateCell = (k: number): string => on(figuresName, `G${stateRow + k}`);
const refusedResults = `B${headingRow + 1}:B${headingRow + figures.length}`;
const stateRows = [
  ['items missing', `=${figure('Still missing')}`],
  ['their names', `=${meaning('Still missing')}`],
  ['defaults taken', `=${figure('Defaults used')}`],
  ['figures refused', `=SUMPRODUCT(--ISERR(${refusedResults}))`],
] as const;
const [missing, names, defaults, refused] = stateRows.map((_, k) => stateCell(k)) as [string, string, string, string];

/** The same in a sentence, for the top of Answer. */
export const state = [
  `=IF(ISERROR(${missing}),"The list of inputs cannot be read: see ${figuresName} A${headingRow}.",`,
  `IF(${missing}>0,"Still missing on Inputs: "&${names},`,
  `IF(${refused}>0,"An input cannot be used: see the check column of Inputs.",`,
  `"Every input needed is given; defaults taken for "&${defaults}&" more, listed on ${figuresName}.")))`,
].join('');

/** Still missing something; an error where the list itself cannot be read. */
export const lacksSome = `${missing}>0`;

/** For the other sheets, which say it only where something is lacking. */
export const lackingLine = `=IF(IFERROR(${missing}+${refused},1)=0,"","Some figures cannot be worked out yet: see the top of Answer.")`;

/** The nth warning: they follow the figures. */
export const warning = (from: 'A' | 'B' | 'D', nth: string): string => `INDEX(${column(from)},MATCH("Refused inputs",${keys},0)+${nth})`;
export const warningCount = `COUNTIF(${keys},"Warning: *")`;

/** What the Answer's charts draw, beside the table: the beds' need against each stage, and a year's money before and after. */
const stages = [
  ['beds need', `=${figure('Fibre needed')}/${inUse('Housed days')}`],
  ...['Slurry', 'Press', 'Dryer'].map((stage) => [stage.toLowerCase(), '', `=${figure(`${stage} could make`)}`]),
];
const money = [
  ['bedding bought', `=${figure('Bought-in cost')}`, `=${figure('Top-up cost')}`],
  ['labour', `=${figure('Bought-in cost with labour')}-${figure('Bought-in cost')}`, `=${figure('Labour with kit')}`],
  ...['Power', 'Heat', 'Repairs'].map((cost) => [cost.toLowerCase(), 0, `=${figure(cost)}`]),
  ['owning the kit', 0, `=${figure('Ownership cost')}`],
];
const [stageRow, moneyRow] = [headingRow + 2, headingRow + 9];
const onFigures = (range: string): string => `${figuresName}!${range}`;
export const stageChart = {
  labels: onFigures(`F${stageRow}:F${stageRow + 3}`),
  series: ['needed', 'could make'].map((name, k) => ({ name, values: onFigures(`${'GH'[k]}${stageRow}:${'GH'[k]}${stageRow + 3}`) })),
};
export const moneyChart = {
  labels: onFigures(`G${moneyRow - 1}:H${moneyRow - 1}`),
  series: money.map(([name], k) => ({ name: String(name), values: onFigures(`G${moneyRow + k}:H${moneyRow + k}`) })),
};

export function figuresSheet(): SheetBuilder {
  const page = new SheetBuilder(figuresName, [270, 110, 130, 760, 30, 160, 100, 100], {
    freeze: { rows: headingRow, columns: 0 },
    landscape: true,
  });
  page
    .title(
      'Figures',
      'Every figure of the plan, from one function. The other sheets pick theirs from here by key, so nothing may be typed below.',
    )
    .put(
      'A3',
      'Where #N/A stands there is no such figure: point at the cell and it says why. How a figure comes about: open Explain.',
      'note',
    );
  page.row = headingRow;
  page.spill({ formula: `=BEDDING.BUDGET.HERD(${items},${values})`, rows, formats: [undefined, 'general', undefined, undefined] });
  figures.forEach(({ unit }, k) => {
    page.put(`B${headingRow + 1 + k}`, '', 'output', { format: resultFormat(unit), align: 'right' });
  });
  page.section(`F${headingRow}`, 'Drawn on Answer').across(`F${stageRow - 1}`, ['t/day', 'needed', 'could make'], 'heading');
  stages.forEach((row, k) => {
    page.across(`F${stageRow + k}`, row, 'output', { format: 'two' });
  });
  page.across(`F${moneyRow - 1}`, ['money a year', 'bought now', 'home fibre'], 'heading');
  money.forEach((row, k) => {
    page.across(`F${moneyRow + k}`, row, 'output', { format: 'money' });
  });
  page.section(`F${stateRow - 1}`, 'State of the inputs');
  stateRows.forEach((row, k) => {
    page.across(`F${stateRow + k}`, row, 'output');
  });
  return page;
}
