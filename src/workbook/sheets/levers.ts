import { budgetItems } from '../../budget/items.ts';
import { letter, moved, orDash, quoted } from '../grid.ts';
import type { Format } from '../model.ts';
import { columnIn, SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { items, values } from './inputs.ts';

/** The levers in the order in which BUDGET.LEVERS lists them, as their figures are shown; what lays less or wetter bedding is not told as a change. */
const leverRows: readonly { readonly format: Format; readonly isBedding?: true }[] = [
  { format: 'two', isBedding: true },
  { format: 'one', isBedding: true },
  { format: 'percent1' },
  { format: 'one' },
  { format: 'whole' },
  { format: 'one' },
  { format: 'percent1', isBedding: true },
  { format: 'money' },
  { format: 'money2' },
  { format: 'three' },
];
/** Which items they are depends on the plan. */
const itemNames = budgetItems.map(({ name }) => name);
const longestName = itemNames.reduce((long, name) => (name.length > long.length ? name : long));

/** What is sought of a lever: the figure that is to reach `from`, where the value that does it stands, and where it is told. */
const goals = [
  { name: 'cover', label: 'Cover 1 is', figure: 'Cover of demand', from: 1, sought: 'D', words: 'A', wide: 4, change: 'E' },
  { name: 'pay', label: 'NPV 0 is', figure: 'NPV', from: 0, sought: 'E', words: 'F', wide: 5, change: 'K' },
] as const;
export type Goal = (typeof goals)[number]['name'];

/** Decimals that a figure of this size deserves; a share is told in per cent with one. */
const decimals = (cell: string, unit: string): string =>
  `IF(OR(${unit}="fraction",ABS(${cell})<1),3,IF(ABS(${cell})<10,2,IF(ABS(${cell})<1000,1,0)))`;

function leverTable(page: SheetBuilder): void {
  page
    .part(
      'What would make it so',
      'For each lever the value at which the herd is just covered and at which the kit just pays, all else as it is. –: no value in its range would do it. From BUDGET.LEVERS.',
    )
    .spill({
      name: 'levers',
      formula: orDash(`BEDDING.BUDGET.LEVERS(${items},${values})`),
      formats: [undefined, undefined, 'general', 'general', 'general', undefined, 'one', 'one'],
      says: leverRows.map(() => [itemNames]),
    });
  const first = page.row - leverRows.length;
  page.put(`I${first - 1}`, 'decimals', 'heading', { align: 'right' });
  leverRows.forEach(({ format }, k) => {
    const row = first + k;
    page
      .across(`C${row}`, ['', '', ''], 'output', { format, align: 'right' })
      .put(`I${row}`, `=IFERROR(${decimals(`C${row}`, `B${row}`)},"")`, 'note', { align: 'right' });
  });
  const told = leverRows.flatMap(({ isBedding }, k) => (isBedding ? [] : [first + k]));
  page
    .part('The same in words', 'What lays less or wetter bedding is never told as a change. Figures are rounded to the side that holds.')
    .facts(
      goals.map(({ name, label, figure: key, from }) => ({
        name: `${name} is`,
        label,
        value: `=IF(ISNUMBER(${figure(key)}),IF(${figure(key)}<${from},"missed","met"),"not known")`,
        unit: '',
        format: 'text',
        style: 'check',
        note: 'missed: what would reach it; met: how far a change may go and keep it',
      })),
    );
  const top = page.row;
  page.sideBySide(...goals.map((goal) => () => inWords(page, goal, told)));
  for (const { name, words, change } of goals) {
    page.called(`${name} words`, `${words}${top + 1}:${words}${page.row - 1}`);
    page.called(`${name} changes`, `${change}${top + 1}:${change}${page.row - 1}`);
  }
}

/** Each lever's change in a sentence, and how large a change it is. */
function inWords(page: SheetBuilder, { name, sought, words, wide, change }: (typeof goals)[number], told: readonly number[]): void {
  page
    .across(
      `${words}${page.row}`,
      [name === 'cover' ? 'for cover 1' : 'for NPV 0', ...Array.from({ length: wide - 1 }, () => '')],
      'heading',
    )
    .put(`${change}${page.row}`, 'change', 'heading', { align: 'right' });
  page.row++;
  for (const from of told) {
    const [to, digits, unit] = [`${sought}${from}`, `$I${from}`, `$B${from}`];
    const shown = (value: string): string =>
      `TEXT(${value},IF(${unit}="fraction","0.0%","#,##0"&IF(${digits}>0,"."&LEFT("000",${digits}),"")))`;
    const rounded = `IF((${to}>$C${from})=({$${name} is}="missed"),ROUNDUP(${to},${digits}),ROUNDDOWN(${to},${digits}))`;
    page
      // No two alike, so that each is found by its own.
      .put(`${change}${page.row}`, `=IFERROR(ABS(${to}/$C${from}-1)+ROW()/10^9,"")`, 'output', {
        format: 'percent1',
        align: 'right',
        wrap: true,
      })
      .block(
        `${words}${page.row}:${moved(`${words}${page.row}`, wide - 1)}`,
        `=IF(ISNUMBER(${change}${page.row}),$A${from}&": from "&${shown(`$C${from}`)}&" to "&${shown(rounded)}&IF(OR(${unit}="fraction",${unit}="money"),""," "&${unit}),"")`,
        'note',
        { says: [longestChange], wrap: true },
      );
    page.row++;
  }
}

/** The nth smallest change towards a goal in words, for whoever asks; the first one says so where there is none. */
export function lever(page: SheetBuilder, goal: Goal, nth: number): string {
  const changes = page.from(`${goal} changes`);
  const is = page.from(`${goal} is`);
  const none = `IF(${is}="missed",${quoted(noneReaches)},IF(${is}="met",${quoted(noneUndoes)},${quoted(notKnown)}))`;
  const told = `INDEX(${page.from(`${goal} words`)},MATCH(SMALL(${changes},${nth}),${changes},0))`;
  return `=IF(COUNT(${changes})<${nth},${nth === 1 ? none : '""'},${told})`;
}
/** About as long as a change in words gets. */
export const longestChange = `${longestName}: from 9,999,999 to 9,999,999 per kWh`;
const noneReaches = 'None: no kit or price, each changed alone, would reach it.';
const noneUndoes = 'None: no kit or price, each changed alone, would undo it.';
const notKnown = 'Not known yet: see the top of this page.';

/** Whether a goal is met, in one cell: missed, met or not known. */
export const goalIs = (page: SheetBuilder, goal: Goal): string => page.from(`${goal} is`);

interface Sweep {
  readonly name: string;
  readonly heading: string;
  readonly item: string;
  readonly tried: readonly number[];
  readonly format: 'percent' | 'money';
  readonly results: readonly string[];
}

const sweeps: readonly Sweep[] = [
  {
    name: 'dryness',
    heading: 'Drier or wetter fibre: score and cost',
    item: 'Dried to dry matter',
    tried: [0.4, 0.44, 0.48, 0.52, 0.56, 0.6, 0.64, 0.68],
    format: 'percent',
    results: ['Hygiene score, fibre', 'Hygiene span, fibre', 'Home fibre per cubicle', 'Cover of demand', 'NPV'],
  },
  {
    name: 'prices',
    heading: 'Price of bought bedding: does the kit pay?',
    item: 'Bought price per t',
    tried: [120, 140, 160, 180, 200, 220, 240, 260],
    format: 'money',
    results: ['NPV', 'Saving', 'Payback', 'Mastitis cases to NPV 0'],
  },
];
const resultFormats = { 'Cover of demand': 'two', Payback: 'one', 'Hygiene score, fibre': 'one' } as const;

function sweep(page: SheetBuilder, { name, heading, item, tried, format, results }: Sweep): void {
  page.newPage();
  page.part(
    heading,
    `Change the values tried or the results asked for, by their keys on Figures. From BUDGET.SWEEP. Now: see ${item} on Inputs.`,
  );
  page.line(['values tried', ...tried], 'input', { format }).put(`A${page.row - 1}`, 'values tried', 'label');
  page
    .line(['results asked for', ...results], 'input', { wrap: true })
    .put(`A${page.row - 1}`, 'results asked for', 'label', { wrap: true });
  const [over, keys] = [`B${page.row - 2}:I${page.row - 2}`, `B${page.row - 1}:${letter(results.length)}${page.row - 1}`];
  page.row++;
  page.spill({
    name,
    formula: orDash(`BEDDING.BUDGET.SWEEP(${items},${values},${quoted(item)},${over},${keys})`),
    rows: tried.length,
    formats: [format, ...results.map((key) => resultFormats[key as keyof typeof resultFormats] ?? ('money' as const)), 'general'],
    heads: [item, ...results, 'Warnings'],
  });
}

function drawDryness(page: SheetBuilder): void {
  const table = page.at('dryness');
  const common = { kind: 'line', across: 'dry matter of the fibre', labels: columnIn(table, 0), height: 260 } as const;
  page.charts([
    {
      ...common,
      over: ['A', 'E'],
      title: 'Drier fibre scores better …',
      up: 'hygiene score (0 is best)',
      series: [{ name: 'hygiene score', values: columnIn(table, 1) }],
    },
    {
      ...common,
      over: ['F', 'K'],
      title: '… and costs more',
      up: 'money per cubicle a year',
      series: [{ name: 'home fibre per cubicle', values: columnIn(table, 3) }],
    },
  ]);
}

export function leversSheet(): SheetBuilder {
  const page = new SheetBuilder('Levers', [220, 100, 100, 100, 100, 100, 100, 100, 100, 100, 100], { landscape: true });
  page.title(
    'Levers',
    'What would have to change for the herd to be covered and the kit to pay, and what that does to the score.',
    lackingLine,
  );
  leverTable(page);
  const [dryness, prices] = sweeps as [Sweep, Sweep];
  sweep(page, dryness);
  page.put(`A${page.row}`, 'The score is a planning aid, no diagnosis: talk to your vet. Its span is over what was not given.', 'note');
  page.row++;
  drawDryness(page);
  sweep(page, prices);
  const table = page.at('prices');
  page.charts([
    {
      kind: 'line',
      title: 'What the kit is worth, by the price of bought bedding',
      across: 'price per t',
      up: 'NPV, money',
      labels: columnIn(table, 0),
      series: [{ name: 'NPV', values: columnIn(table, 1) }],
      over: ['A', 'K'],
      height: 260,
    },
  ]);
  return page;
}
