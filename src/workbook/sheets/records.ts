import { inventedChange } from '../invented-records.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { figure } from './figures.ts';
import {
  againstPlan,
  beforeAndAfter,
  longestNeeded,
  longestRates,
  longestVerdict,
  monthsNeeded,
  organisms,
  sentences,
} from './records-summary.ts';
import { organismColumns, recordsName, recordsTable } from './records-table.ts';
import { passedSays, passedSentence, stopRules } from './stop-rules.ts';

function marks(page: SheetBuilder): void {
  page.facts([
    {
      name: 'change',
      label: 'First month on the new bedding',
      value: page.given(inventedChange),
      unit: '',
      format: 'date',
      style: 'input',
      note: 'any day of it; that month counts as after',
    },
    {
      name: 'rise',
      label: 'Rise that must not be missed',
      value: 0.5,
      unit: 'fraction',
      format: 'percent',
      style: 'input',
      note: 'agree it with your vet: 50% is half as many cases again',
    },
    {
      name: 'weight',
      label: 'A litre of the sample weighs',
      value: page.given(0.24),
      unit: 'kg',
      format: 'two',
      style: 'input',
      note: 'as it lay, for counts per gram; empty: as the plan’s dried fibre',
    },
  ]);
}

/** What the marks come to, for the table’s own formulas. */
function marked(page: SheetBuilder): void {
  const first = Number(/\d+/.exec(page.at('phase'))?.[0]);
  page.part('Workings').facts([
    {
      name: 'changeKey',
      label: 'Month of the change',
      value: '=IF(ISNUMBER({change}),12*YEAR({change})+MONTH({change})-1,"")',
      unit: '',
      note: 'its number: 12 × year + month − 1',
    },
    {
      name: 'density',
      label: 'Density for counts per gram',
      value: `=IF(ISNUMBER({weight}),1000*{weight},IFERROR(${figure('Dried fibre density')},""))`,
      unit: 'kg/m³',
      note: 'the litre weighed, else the plan’s',
    },
    {
      name: 'baseline',
      label: 'Rows that set the chart’s centre',
      value: `=IF({changeKey}="","",SUMPRODUCT(MAX(({phase}="before")*(ROW({phase})-${first - 1}))))`,
      unit: '',
      note: 'those before the change; without one, all',
    },
  ]);
}

const height = 270;

function charts(page: SheetBuilder, at: number, later: number): void {
  const common = { across: '', labels: page.at('label'), height } as const;
  const series = (...named: readonly (readonly [name: string, column: string])[]) =>
    named.map(([name, column]) => ({ name, values: page.at(column) }));
  page.charts(
    [
      {
        ...common,
        kind: 'line',
        title: 'Clinical cases, month by month',
        up: 'per 100 cows a year',
        series: series(['rate', 'rate'], ['centre', 'drawnCentre'], ['lower limit', 'lower'], ['upper limit', 'upper']),
        over: ['A', 'D'],
      },
      {
        ...common,
        kind: 'line',
        title: 'Dry matter of the bedding as spread',
        up: 'dry matter',
        series: series(['as spread', 'dm'], ['in the plan', 'planDm']),
        over: ['E', 'I'],
      },
    ],
    at,
  );
  page.charts(
    [
      { ...common, kind: 'line', title: 'Bulk cell count', up: '1,000/ml', series: series(['bulk cell count', 'cells']), over: ['A', 'D'] },
      {
        ...common,
        kind: 'line',
        title: 'Hygiene score and its span: 0 is best, no diagnosis',
        up: '0–100',
        series: series(['score', 'score'], ['lowest', 'lowest'], ['highest', 'highest']),
        over: ['E', 'I'],
      },
    ],
    later,
  );
  page.charts(
    [
      {
        ...common,
        kind: 'stacked column',
        title: 'Cases by germ, where cultured',
        up: 'cases',
        series: series(...organismColumns.map((organism) => [organism, organism] as const)),
        over: ['A', 'D'],
      },
      {
        ...common,
        kind: 'column',
        title: 'Tonnes bought',
        up: 't a month',
        series: series(['bought', 'bought'], ['in the plan', 'planBought']),
        over: ['E', 'I'],
      },
    ],
    later + Math.ceil(height / 23) + 2,
  );
}

/** The farm’s own book after the change: what it shows, and what it cannot show yet. */
export function recordsSheets(blank: boolean): { readonly records: SheetBuilder; readonly sums: SheetBuilder } {
  const page = new SheetBuilder(recordsName, [200, ...Array.from({ length: 15 }, () => 84), 200], {
    blank,
    landscape: true,
    dashes: true,
  });
  page.title(
    'Records',
    'After it runs: one row a month in the tinted table below, from a year before the change on if the book goes back so far. Months may be left out.',
    '={flawWords}',
  );
  marks(page);
  page.part(
    'What the records say',
    'Cases are drawn with the limits that the months before the change set, at least three of them; outside these a month is unlike the others by more than chance. Charts stay empty until months are on record.',
  );
  for (const [formula, says] of [
    ['={fewWords}&{noneWords}&{comparedWords}', [longestVerdict]],
    ['={rateWords}', [longestRates]],
    ['={neededWords}', [longestNeeded]],
    [passedSentence, passedSays],
  ] as const)
    page.line([formula], 'lead', { says });
  page.caution(
    'From the farm’s own book, no diagnosis. Repeat cases in a cow and outbreaks widen every doubt. Talk to your vet before you conclude anything.',
  );
  const at = page.room(height);
  page.part(
    'The record: a row a month, when the month is over',
    'An empty cell is “not on record”; type 0 for none. What is worked out from each row stands on Record sums.',
  );
  const sums = recordsTable(page);
  stopRules(page);
  beforeAndAfter(page);
  monthsNeeded(page);
  organisms(page);
  againstPlan(page);
  const later = page.room(2 * height + 46);
  sentences(page);
  marked(page);
  charts(page, at, later);
  for (const name of ['changeKey', 'density', 'baseline']) sums.called(name, page.from(name));
  return { records: page, sums };
}
