import { materials } from '../../domain/materials.ts';
import { quoted } from '../grid.ts';
import { type Content, columnIn, SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse, typedFor } from './inputs.ts';

/** Other beddings: what they take, what was paid and when, the labour, anything else, and where the figures come from. */
const others: readonly (readonly [...Content[]])[] = [
  ['sand', 9.6, 16, 13, 9, 3500, 'kg and price: event demonstration 2013 (seen); labour and sand in the slurry: a guess for this herd'],
  [
    'chopped straw',
    2.1,
    75,
    2,
    9,
    800,
    'kg: event demonstration 2013 (seen); price: trade press 2024 (seen); labour and chopping: a guess',
  ],
  ['shavings', 1.8, 200, 13, 7, 0, 'kg and price in bags: event demonstration 2013 (seen); labour: a guess'],
  ['', '', '', '', '', '', 'room for one of your own'],
];

const perDay = (tonnes: string): string => `${tonnes}*1000/${inUse('Cubicles')}/${inUse('Housed days')}`;
const priceNow = inUse('Bought price per t');

/** The plan's own two: what is bought now and the home fibre, as COST.OPTIONS takes them. */
const own: readonly { readonly name: string; readonly stands: string; readonly cells: readonly string[]; readonly note: string }[] = [
  {
    name: `"now: "&${inUse('Material now')}`,
    stands: figure('Bought-in cost with labour'),
    cells: [
      perDay(figure('Bought needed')),
      priceNow,
      inUse('Labour hours a week now'),
      `${figure('Bought-in cost')}-${figure('Bought needed')}*${priceNow}`,
    ],
    note: `=IF(${typedFor('Labour hours a week now')}="","labour now is not on Inputs: none is counted, so this row looks too cheap","as on Inputs; extra: haulage")`,
  },
  {
    name: '"home fibre"',
    stands: figure('Home fibre per cubicle'),
    cells: [
      perDay(figure('Fibre made')),
      `IFERROR((${figure('Power')}+${figure('Heat')})/${figure('Fibre made')},0)`,
      inUse('Labour hours a week with kit'),
      `${figure('Repairs')}+${figure('Ownership cost')}+${figure('Top-up cost')}`,
    ],
    note: 'price: power and heat; extra: repairs, owning the kit and any bought top-up',
  },
];

const typedColumns = ['A', 'B', 'C', 'D', 'E', 'F'] as const;
/** The first that holds what cannot be used: more is there than counts. */
function unusable(row: number): string {
  const notBelow0 = (column: string) => `COUNTA(${column}${row})>COUNTIF(${column}${row},">=0")`;
  return firstOf('""', [
    [`COUNTA(B${row})>COUNTIFS(B${row},">=0",B${row},"<=200")`, 'kg: 0 to 200'],
    [notBelow0('C'), 'price'],
    [notBelow0('D'), 'years'],
    [notBelow0('E'), 'labour'],
    [`COUNTA(F${row})>COUNT(F${row})`, 'extra'],
  ]);
}

/** Why a row is not compared, or that it is: each for itself, so that the others stand. */
const standing = (row: number): string =>
  `=IF(COUNTA(A${row}:F${row})=0,"",IF(L${row}<>"","cannot use "&L${row},${firstOf('"compared"', [
    [`A${row}=""`, 'name missing'],
    [`NOT(ISNUMBER(H${row}))`, 'kg missing'],
    [`C${row}=""`, 'price missing'],
    [`E${row}=""`, 'labour missing: 0 if none'],
    [`B${row}=""`, 'compared; kg from litres'],
  ])}))`;

const firstOf = (otherwise: string, tests: readonly (readonly [test: string, says: string])[]): string =>
  tests.reduceRight((rest, [test, says]) => `IF(${test},${quoted(says)},${rest})`, otherwise);

/** A bedding's own kilograms, else as many litres as of the fibre, by the density held for it; with what is lost. */
function kilograms(row: number): string {
  const litres = `${inUse('Bedding litres per cubicle each time')}/${inUse('Days between beddings')}`;
  return `=IFERROR(IF(B${row}<>"",B${row}*1,${litres}*BEDDING.MATERIAL.DENSITY(A${row})/1000)/(1-${inUse('Bought lost')}),"")`;
}

export function optionsSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder('Options', [140, 80, 80, 80, 80, 80, 80, 110, 150, 110, 260, 80], { blank, landscape: true, dashes: true });
  page
    .title(
      'Options',
      'Every bedding side by side: what it costs a year, cheapest first, with its labour and what comes with it.',
      lackingLine,
    )
    .part('Other beddings: type what you are quoted')
    .headings(
      'bedding',
      'kg laid per cubicle a day',
      'price quoted, per t',
      'years since, 0 if today',
      'labour, h/week',
      'extra, money a year',
      'price now, per t',
      'kg a day, with loss',
      'in words',
      'where from',
    )
    .across(`K${page.row - 1}`, ['', 'cannot use'], 'heading', { wrap: true });
  const firstOther = page.row;
  page.called('others', `A${firstOther}:A${firstOther + others.length - 1}`);
  const riseRow = firstOther + others.length;
  for (const [k, line] of others.entries()) {
    const row = firstOther + k;
    page
      .line(
        line.slice(0, typedColumns.length).map((cell) => page.given(cell)),
        'input',
      )
      .put(`A${row}`, page.given(line[0] as Content), 'input', { format: 'text', choices: materials })
      .put(`G${row}`, `=IF(ISNUMBER(C${row}),BEDDING.COST.UPDATE(C${row},SUM(D${row}),SUM($B$${riseRow})),"")`, 'output', {
        format: 'money2',
      })
      .put(`H${row}`, kilograms(row), 'output', { format: 'two' })
      .put(`I${row}`, standing(row), 'check', { says: ['labour missing: 0 if none'] })
      .put(`L${row}`, `=${unusable(row)}`, 'note', { says: ['kg: 0 to 200'] })
      .block(`J${row}:K${row}`, page.given(line[6] as Content), 'note', { format: 'text', wrap: true });
  }
  const standings = `I${firstOther}:I${riseRow - 1}`;
  page.rule(standings, `LEFT(I${firstOther},6)="cannot"`, 'bad').rule(standings, `ISNUMBER(SEARCH("missing",I${firstOther}))`, 'watch');
  page.facts([
    {
      label: 'Yearly rise of prices',
      value: 0.03,
      unit: 'fraction',
      style: 'input',
      note: 'your own view; COST.UPDATE brings each price up to date with it',
    },
  ]);

  page.line(
    [
      'Leave kg empty and as many litres are taken as of the fibre, by the density held for that material. What is lost on the way is added to every bedding alike.',
    ],
    'note',
  );
  page.part('What is compared').headings('bedding', 'kg a day, with loss', 'price per t', 'labour, h/week', 'extra, money a year');
  const first = page.row;
  const line = (name: string, cells: readonly string[]) =>
    page.line([`=${name}`, ...cells.map((cell) => `=IF($A${page.row}="","",${cell})`)], 'output', { format: 'two' });
  for (const { name, stands, cells, note } of own) {
    line(`IF(ISNUMBER(${stands}),${name},"")`, cells).put(`F${page.row - 1}`, note, 'note');
  }
  for (const [k] of others.entries()) {
    const from = firstOther + k;
    line(`IF(LEFT(I${from},8)="compared",A${from},"")`, [`H${from}`, `G${from}`, `SUM(E${from})`, `SUM(F${from})`]);
  }
  const last = page.row - 1;
  const count = own.length + others.length;

  page.newPage();
  page
    .part(
      'What each costs the herd a year',
      'money a year, then per cubicle a year; cheapest first; from COST.OPTIONS. Money alone: for the cows see Udder health.',
    )
    .spill({
      name: 'costs',
      formula: `=BEDDING.COST.OPTIONS(A${first}:E${last},${inUse('Cubicles')},${inUse('Housed days')},${inUse('Labour rate')})`,
      rows: count,
      formats: [undefined, 'one', 'money', 'money', 'money', 'money', 'money2'],
    });
  const costs = page.at('costs');
  page.called('names', columnIn(costs, 0));
  const shares = ['bedding', 'labour', 'extra'];
  const top = page.row - count;
  page.across(
    `H${top - 1}`,
    shares.map((share) => `${share} per cubicle`),
    'heading',
    { wrap: true, align: 'right' },
  );
  for (let row = top; row < page.row; row++) {
    page.across(
      `H${row}`,
      ['C', 'D', 'E'].map((column) => `=IF($A${row}="","",${column}${row}/${inUse('Cubicles')})`),
      'output',
      { format: 'money2' },
    );
  }
  return page.charts([
    {
      kind: 'stacked column',
      title: 'A cubicle’s bedding for a year',
      across: '',
      up: 'money per cubicle',
      labels: columnIn(costs, 0),
      series: shares.map((name, k) => ({ name, values: columnIn(costs, 7 + k) })),
      over: ['A', 'J'],
      height: 320,
    },
  ]);
}
