import { figures } from '../../budget/figures.ts';
import { budgetItems } from '../../budget/items.ts';
import { warningMark, warnings } from '../../budget/warnings.ts';
import { SELF_HEATING_RATIO } from '../../domain/drying.ts';
import { resultFormat } from '../formats.ts';
import { on, orDash, quoted } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { currencySign, inUse, items, typedFor, values } from './inputs.ts';

export const figuresName = 'Figures';
const headingRow = 5;
/** The figures, and room for every warning that can fire. */
const rows = figures.length + warnings.length;
const lastRow = headingRow + rows;
const column = (letter: string): string => on(figuresName, `${letter}${headingRow}:${letter}${lastRow}`);

const keys = column('A');
const pick = (from: string, key: string): string => `INDEX(${column(from)},MATCH(${key},${keys},0))`;

/** The figure under a key: text in quotes, or the cell that holds the key. */
export const figureAt = (cell: string): string => pick('B', cell);
export const figure = (key: string): string => figureAt(quoted(key));
export const meaning = (key: string): string => pick('D', quoted(key));

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
/** Beside the table, one below the other with a free row between. */
const stageHead = headingRow + 1;
const moneyHead = stageHead + stages.length + 2;
const stateHead = moneyHead + money.length + 2;

const onFigures = (range: string): string => `${figuresName}!${range}`;
const stageColumn = (letter: string): string => onFigures(`${letter}${stageHead + 1}:${letter}${stageHead + stages.length}`);
export const stageChart = {
  labels: stageColumn('F'),
  series: ['needed', 'could make'].map((name, k) => ({ name, values: stageColumn('GH'[k] as string) })),
};
const moneyRow = (k: number): string => onFigures(`G${moneyHead + k}:H${moneyHead + k}`);
export const moneyChart = {
  labels: moneyRow(0),
  series: money.map(([name], k) => ({ name: String(name), values: moneyRow(1 + k) })),
};

/** How far the plan can be relied on: each a cell of its own, so that the sentences built on them stay short. */
const span = figure('Hygiene span, fibre');
const end = (from: string, count: string): string => `=IFERROR(VALUE(MID(${span},${from},${count})),"–")`;
const dashIn = `FIND("–",${span})`;
const isDried = `${inUse('Dried to dry matter')}>${inUse('Pressed dry matter')}`;
const notTyped = ['Outdoor temperature', 'Coldest month temperature'].map((item) => `(${typedFor(item)}="")`).join('+');
const isFirm = `IFERROR(AND(${['against the air', 'at best'].map((at) => `${figure(`Stated output ${at}`)}>${SELF_HEATING_RATIO}`).join(',')}),FALSE)`;
/** The day after 31 December 9999: beyond it no spreadsheet program knows a date. */
const afterLastDay = 2_958_466;
const date = inUse('Budget date');
const sign = `LEFT(TRIM(${currencySign}),4)`;
const stateRows = {
  currency: ['before money', `=IF(${currencySign}="","",${sign}&IF(LEN(${sign})>1," ",""))`],
  missing: ['items missing', `=${figure('Still missing')}`],
  defaults: ['defaults taken', `=${figure('Defaults used')}`],
  refused: ['items refused', `=${figure('Refused inputs')}`],
  clashing: ['figures refused', `=SUMPRODUCT(--ISERR(B${headingRow + 1}:B${headingRow + figures.length}))`],
  limit: ['what limits', `=${figure('What limits')}&IF(NOT(ISNUMBER(${figure('Dryer could make')})),"",${rival('", not the "')}&",")`],
  amounts: ['amounts assumed', `=COUNTIF(${keys},"Warning: *now assumed")`],
  weather: ['weather taken', `=IFERROR(IF(${isDried},${notTyped},0),0)`],
  firm: ['stated output not with this air', `=${isFirm}`],
  statedTimes: [
    'times the water that the air carries',
    orDash(`IF(${isFirm},${figure('Stated output at best')},${figure('Stated output against the air')})`),
  ],
  paidBack: [
    'paid back',
    `=IF(ISNUMBER(${figure('Payback')}),IF(${figure('Payback')}<0.05,"pays back at once.","pays back in "&TEXT(${figure('Payback')},"0.0")&" years."),IF(ISNUMBER(${figure('NPV')}),"never pays back in its life.","its payback is not known."))`,
  ],
  refusals: [
    'in words',
    `=IF(ISNUMBER(${figure('Refused inputs')}),IF(${figure('Refused inputs')}>0,"An input cannot be used: "&${meaning('Refused inputs')}&" ",""),"")`,
  ],
  saved: ['a year', `=IF(ISNUMBER(${figure('Saving')}),G${stateHead + 1}&TEXT(ABS(${figure('Saving')}),"#,##0"),"")`],
  dated: [
    'budget of',
    `=IF(AND(ISNUMBER(${date}),${date}>0,${date}<${afterLastDay}),"; budget of "&DAY(${date})&"/"&MONTH(${date})&"/"&YEAR(${date}),"")`,
  ],
  lowest: ['score from', end('1', `${dashIn}-1`)],
  highest: ['score to', end(`${dashIn}+1`, '9')],
} as const;
function rival(not: string): string {
  return `${not}&IF(${figure('What limits')}="dryer","slurry","dryer")`;
}
type StateKey = keyof typeof stateRows;
const stateKeys = Object.keys(stateRows) as StateKey[];
/** The cell that holds it. */
export const stateOf = (key: StateKey): string => on(figuresName, `G${stateHead + 1 + stateKeys.indexOf(key)}`);

/** The same in a sentence, for the top of Answer. What is refused is told first: it was meant to count. */
export const state = [
  `=IF(ISERROR(${stateOf('missing')}),"The list of inputs cannot be read: see ${figuresName} A${headingRow}.",`,
  `${stateOf('refusals')}&`,
  `IF(${stateOf('missing')}>0,"Still missing on Inputs: "&${meaning('Still missing')},`,
  `IF(${stateOf('refused')}>0,"",IF(${stateOf('clashing')}>0,"Some inputs do not go together: see ${figuresName}.",`,
  `"Every input needed is given; defaults taken for "&${stateOf('defaults')}&" more, listed on ${figuresName}."))))`,
].join('');

/** Still missing something; an error where the list itself cannot be read. */
export const lacksSome = `${stateOf('missing')}>0`;

/** For the other sheets, which say it only where something is lacking. */
export const lackingLine = `=IF(IFERROR(${stateOf('missing')}+${stateOf('refused')}+${stateOf('clashing')},1)=0,"","Some figures cannot be worked out yet: see the top of Answer.")`;

/** The longest that it can be: nothing given at all. */
export const longestState = `Still missing on Inputs: ${budgetItems.flatMap(({ name, needed }) => (needed ? [name] : [])).join('; ')},`;

/** About as long as a warning gets, for the room it needs. */
export const longestWarning = 'so many words '.repeat(15);

/** What the table may say, for the room that it needs. */
const longest: Readonly<Record<string, string>> = {
  'Defaults used': budgetItems.map(({ name }) => name).join('; '),
  'Still missing': longestState,
};
const meanings = [
  ...figures.map(({ key, unit, meaning }) => [
    key,
    undefined,
    unit,
    longest[key] ?? (typeof meaning === 'string' ? meaning : longestWarning),
  ]),
  ...warnings.map(({ key }) => [`${warningMark}${key}`, undefined, undefined, longestWarning]),
];

export function figuresSheet(): SheetBuilder {
  const page = new SheetBuilder(figuresName, [260, 106, 110, 480, 30, 120, 80, 80], {
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
  page.spill({
    formula: `=BEDDING.BUDGET.HERD(${items},${values})`,
    rows,
    formats: [undefined, 'general', undefined, 'text'],
    says: meanings,
  });
  figures.forEach(({ unit }, k) => {
    page.put(`B${headingRow + 1 + k}`, '', 'output', { format: resultFormat(unit), align: 'right' });
  });
  page.section(`F${headingRow}`, 'Drawn on Answer').across(`F${stageHead}`, ['t/day', 'needed', 'could make'], 'heading');
  stages.forEach((row, k) => {
    page.across(`F${stageHead + 1 + k}`, row, 'output', { format: 'two' });
  });
  page.across(`F${moneyHead}`, ['money a year', 'bought now', 'home fibre'], 'heading');
  money.forEach((row, k) => {
    page.across(`F${moneyHead + 1 + k}`, row, 'output', { format: 'money' });
  });
  page.section(`F${stateHead}`, 'Read by Answer');
  Object.values(stateRows).forEach((row, k) => {
    page.across(`F${stateHead + 1 + k}`, row, 'output');
  });
  return page;
}
