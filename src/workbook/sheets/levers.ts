import { budgetItems } from '../../budget/items.ts';
import { letter, orDash, quoted } from '../grid.ts';
import type { Format } from '../model.ts';
import { columnIn, SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { items, values } from './inputs.ts';

/** The levers in the order in which BUDGET.LEVERS lists them, as their figures are shown. */
const leverFormats: readonly Format[] = ['two', 'one', 'percent1', 'one', 'whole', 'one', 'percent1', 'money', 'money2', 'three'];
const leverCount = leverFormats.length;
/** Which items they are depends on the plan. */
const itemNames = budgetItems.map(({ name }) => name);
const longestName = itemNames.reduce((long, name) => (name.length > long.length ? name : long));

/** How a figure of this size reads in words: per cent where it is a share, and no more digits than it deserves. */
const shownAs = (cell: string, unit: string): string =>
  `IF(${unit}="fraction","0.0%",IF(ABS(${cell})<1,"0.000",IF(ABS(${cell})<10,"0.00",IF(ABS(${cell})<1000,"0.0","#,##0"))))`;

function leverTable(page: SheetBuilder): void {
  page
    .part(
      'What would make it so',
      'For each lever the value at which the herd is just covered and at which the kit just pays, all else as it is. –: no value in its range would do it. What lays less or wetter bedding is never ranked as a change. From BUDGET.LEVERS.',
    )
    .facts([
      {
        name: 'goal',
        label: 'Sought first',
        value: `=IF(IFERROR(${figure('Cover of demand')},1)<1,"for cover 1","for NPV 0")`,
        unit: '',
        style: 'check',
        note: 'cover first where the herd is not covered, else the money',
      },
    ]);
  page.spill({
    name: 'levers',
    formula: orDash(`BEDDING.BUDGET.LEVERS(${items},${values})`),
    formats: [undefined, undefined, 'general', 'general', 'general', undefined, 'one', 'one'],
    says: leverFormats.map(() => [itemNames]),
  });
  const first = page.row - leverCount;
  page
    .put(`I${first - 1}`, 'change', 'heading', { align: 'right', wrap: true })
    .across(`J${first - 1}`, ['in words', '', '', '', 'shown as'], 'heading', { wrap: true });
  for (let row = first; row < page.row; row++) {
    const sought = `IF({goal}=$D$${first - 1},D${row},E${row})`;
    const nudge = 'ROW()/10^9';
    page
      .across(`C${row}`, ['', '', ''], 'output', { format: leverFormats[row - first] as Format, align: 'right' })
      .put(`I${row}`, `=IF(F${row}="bedding","",IFERROR(ABS(${sought}/C${row}-1)+${nudge},""))`, 'output', { format: 'percent1' })
      .put(
        `J${row}`,
        `=IF(I${row}="","",A${row}&": from "&TEXT(C${row},N${row})&" to "&TEXT(${sought},N${row})&IF(OR(B${row}="fraction",B${row}="money"),""," "&B${row}))`,
        'note',
        { says: [`${longestName}: from 9,999,999 to 9,999,999 MJ/kg`] },
      )
      .put(`N${row}`, `=IFERROR(${shownAs(`C${row}`, `B${row}`)},"")`, 'note');
  }
  page.called('changes', `I${first}:I${page.row - 1}`).called('words', `J${first}:J${page.row - 1}`);
}

/** The nth smallest change in words, for whoever asks. */
export const lever = (page: SheetBuilder, nth: number): string => {
  const changes = page.from('changes');
  return `=IFERROR(INDEX(${page.from('words')},MATCH(SMALL(${changes},${nth}),${changes},0)),"")`;
};

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
    results: ['NPV', 'Saving', 'Payback', 'Break-even mastitis cases'],
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
  const page = new SheetBuilder('Levers', [160, 74, 74, 74, 74, 74, 74, 74, 74, 74, 70, 70, 70, 70], { landscape: true });
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
