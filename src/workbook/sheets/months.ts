import { itemCalled } from '../../budget/items.ts';
import { asGiven, moved, orDash, placeOf } from '../grid.ts';
import { type Content, columnIn, SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse, items, values } from './inputs.ts';

/** An invented climate: outdoor temperature and humidity, month by month; and the days of the month. */
const climate: readonly (readonly [month: string, days: number, temperature: number, humidity: number])[] = [
  ['January', 31, 3, 0.88],
  ['February', 28, 3.5, 0.86],
  ['March', 31, 5.5, 0.82],
  ['April', 30, 8, 0.77],
  ['May', 31, 11, 0.75],
  ['June', 30, 14, 0.76],
  ['July', 31, 16, 0.77],
  ['August', 31, 15.8, 0.78],
  ['September', 30, 13.3, 0.81],
  ['October', 31, 10, 0.85],
  ['November', 30, 6, 0.88],
  ['December', 31, 3.8, 0.89],
];
const monthCount = climate.length;
const mostDays = 366;

/** The items that a month has of its own, in the order of its columns. */
const monthly = ['Outdoor temperature', 'Outdoor humidity', 'Heat available kW', 'Hot water litres per hour'] as const;
const boundsOf = (end: 0 | 1): readonly number[] => [
  [0, 31][end] as number,
  ...monthly.map((item) => itemCalled(item)?.parameter.range?.[end] as number),
];

/** A wave between the year's mean and the coldest month, which is taken to be the first: for a farm without a weather station. */
const guessed = (mean: string, coldest: string, k: number): string =>
  orDash(
    `ROUND(${inUse(mean)}-(${inUse(mean)}-${inUse(coldest)})*${Math.cos((2 * Math.PI * k) / monthCount).toFixed(3)},${mean.endsWith('humidity') ? 2 : 1})`,
  );

function weather(page: SheetBuilder): void {
  page
    .part(
      'Weather, days, heat and water by month',
      'Type the mean temperature and humidity of each month, from a weather station, and the days the cows are housed: 0 in a month at grass. Heat and water only where they differ from Inputs. A month with a gap is not counted, and the year with it.',
    )
    .headings(
      'month',
      'days housed',
      'outdoor, °C',
      'humidity',
      'heat, kW',
      'hot water, litres/h',
      'days in the month',
      'guess, °C',
      'guess, humidity',
      'result',
    );
  page
    .across(`A${page.row}`, ['if left empty', 'needed', 'needed', 'needed'], 'note')
    .put(`E${page.row}`, `=${inUse('Heat available kW')}`, 'note', { format: 'one', align: 'right' })
    .put(`F${page.row}`, `=${inUse('Hot water litres per hour')}`, 'note', { format: 'whole', align: 'right' })
    .put(`G${page.row}`, 'guess: a wave between mean and coldest of Inputs', 'note');
  page.row++;
  for (const [end, label] of ['at least', 'at most'].entries()) {
    page.line([label, ...boundsOf(end as 0 | 1)], 'note', { align: 'right' }).put(`A${page.row - 1}`, label, 'note');
    page.put(`D${page.row - 1}`, boundsOf(end as 0 | 1)[2] as number, 'note', { format: 'percent', align: 'right' });
  }
  const first = page.row;
  const last = first + monthCount - 1;
  climate.forEach(([month, days, temperature, humidity], k) => {
    const row = first + k;
    page
      .put(`A${row}`, month, 'label')
      .put(`B${row}`, page.given(days), 'input', { format: 'general' })
      .put(`C${row}`, page.given(temperature), 'input', { format: 'one' })
      .put(`D${row}`, page.given(humidity), 'input', { format: 'percent' })
      .put(`E${row}`, '', 'input', { format: 'one' })
      .put(`F${row}`, '', 'input', { format: 'whole' })
      .put(`G${row}`, days, 'note', { align: 'right' })
      .put(`H${row}`, guessed('Outdoor temperature', 'Coldest month temperature', k), 'note', { format: 'one', align: 'right' })
      .put(`I${row}`, guessed('Outdoor humidity', 'Coldest month humidity', k), 'note', { format: 'percent', align: 'right' });
  });
  page.row = last + 1;
  page
    .called('months', `A${first}:F${last}`)
    .called('housed', `B${first}:B${last}`)
    .called('results', `J${first}:J${last}`)
    .facts([
      {
        name: 'turn',
        label: 'Turn the fan down',
        value: 'no',
        unit: '',
        format: 'text',
        style: 'input',
        choices: ['yes', 'no'],
        note: 'yes: each month at the air, from a fifth of it up, at which the dryer makes most; less air gets hotter on the same heat',
      },
    ]);
}

/** Each month's own word: what is missing or cannot be used, else whether it is short. Never enough where something is not known. */
function words(page: SheetBuilder): void {
  const [first = ''] = page.at('months').split(':');
  const [firstCover = ''] = page.at('cover').split(':');
  const firstRow = placeOf(first).row + 1;
  for (let k = 0; k < monthCount; k++) {
    const row = firstRow + k;
    const cells = `B${row}:F${row}`;
    const cover = moved(firstCover, 0, k);
    const said = `IF(B${row}=0,"at grass",IF(ISNUMBER(${cover}),IF(${cover}<1,"short","enough"),"not worked out"))`;
    const between = `ISNUMBER(${cells})*(${cells}>=B$${firstRow - 2}:F$${firstRow - 2})*(${cells}<=B$${firstRow - 1}:F$${firstRow - 1})`;
    const usable = `IF(SUMPRODUCT((${cells}<>"")*(1-${between}))>0,"cannot be used",${said})`;
    const gaps = [
      ['B', 'days'],
      ['C', 'temperature'],
      ['D', 'humidity'],
    ] as const;
    const formula = gaps.reduceRight((rest, [column, short]) => `IF(${column}${row}="","${short} missing",${rest})`, usable);
    page.put(`J${row}`, `=${formula}`, 'output', { says: ['temperature missing'] });
  }
  const results = page.at('results');
  const [top = ''] = results.split(':');
  page.rule(results, `${top}="short"`, 'watch').rule(results, `OR(RIGHT(${top},7)="missing",LEFT(${top},6)="cannot")`, 'bad');
}

const kept = ['saving', 'NPV', 'payback'] as const;

function theYear(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'Month by month',
      'What the kit makes in each month’s weather, what is topped up with bought bedding, and what power and heat cost. From BUDGET.MONTHS.',
    )
    .spill({
      name: 'table',
      formula: `=IF(COUNT({housed})=0,"–",IFERROR(BEDDING.BUDGET.MONTHS(${items},${values},${asGiven(page.at('months'))},{turn}),"–"))`,
      formats: [undefined, 'whole', 'one', 'whole', undefined, 'two', 'one', 'one', 'one', 'money', 'money'],
      says: [...climate.map(([month]) => [month]), ['year'], ...kept.map((what) => [`year: ${what}`])].map(([name]) => [
        name,
        ...Array.from({ length: 3 }, () => undefined),
        ['slurry', 'press', 'dryer'],
      ]),
    });
  const table = page.at('table');
  const [first = ''] = table.split(':');
  const ofMonths = (column: number): string => columnIn(`${first}:${moved(first, 10, monthCount - 1)}`, column);
  page.called('names', columnIn(table, 0)).called('cover', ofMonths(5)).called('needed', ofMonths(6)).called('made', ofMonths(7));
  page.put(`B${page.row - 1}`, '', 'output', { format: 'one', align: 'right' });
  page.charts([
    {
      kind: 'column',
      title: 'Needed, made and topped up, month by month',
      across: '',
      up: 't',
      labels: ofMonths(0),
      series: ['needed', 'made', 'topped up'].map((name, k) => ({ name, values: ofMonths(6 + k) })),
      over: ['A', 'K'],
      height: 300,
    },
  ]);
}

/** The year's figures by months and by the mean, side by side, and the difference in a sentence. */
function against(page: SheetBuilder): void {
  const pick = (key: string, column: number): string => `INDEX({table},MATCH("${key}",{names},0),${column})`;
  const three = (months: string, mean: string): readonly Content[] => [orDash(months), orDash(mean), orDash(`B${page.row}-C${page.row}`)];
  page.part('Counted by months, and by the mean').headings('', 'by months', 'by the mean', 'difference', 'unit', 'where from');
  const line = (
    name: string,
    label: string,
    months: string,
    key: string,
    unit: 'per year' | 'money' | 'years' | 't/year' | 'times',
    note: string,
  ) => page.facts([{ name, label, value: three(months, figure(key)), unit, note }]);
  line('saving', 'Saving', pick('year: saving', 2), 'Saving', 'per year', 'before the cost of owning the kit');
  line('npv', 'NPV', pick('year: NPV', 2), 'NPV', 'money', 'before tax');
  line('payback', 'Payback', pick('year: payback', 2), 'Payback', 'years', 'a dash: beyond the life');
  line('topUp', 'Topped up with bought', pick('year', 9), 'Topped up with bought', 't/year', 'the mean hides what a cold month lacks');
  line('least', 'Cover', pick('year', 6), 'Cover of demand', 'times', 'by months: the scarcest month');
}

/** As long as the sentence below can be. */
export const longestCounted = 'Counted by months it costs 9,999,999 a year more than now: saving 9,999,999 less than by the mean.';

/** Says by what the year is counted, and stands above everything. */
function sentence(page: SheetBuilder): void {
  const results = page.at('results');
  page.facts([
    { name: 'days', label: 'Days housed, all months', value: '=SUM({housed})', unit: 'days', format: 'whole', note: 'as typed above' },
    {
      name: 'gaps',
      label: 'Months not counted',
      value: `=COUNTIF(${results},"*missing")+COUNTIF(${results},"cannot*")`,
      unit: '',
      format: 'whole',
      note: 'something is missing or cannot be used',
    },
  ]);
  const [days, gaps, saving] = ['days', 'gaps', 'saving'].map((name) => page.at(name)) as [string, string, string];
  const less = moved(saving, 2);
  const than = `IF(ABS(${less})<1,"as by the mean.",TEXT(ABS(${less}),"#,##0")&IF(${less}<0," less"," more")&" than by the mean.")`;
  const saved = `IF(${saving}<0,"costs "&TEXT(-${saving},"#,##0")&" a year more than now: saving ","saves "&TEXT(${saving},"#,##0")&" a year, ")`;
  page.facts([{ name: 'saved', label: 'a year, in words', value: orDash(saved), unit: '', format: 'text', note: '' }]);
  page.facts([{ name: 'than', label: 'in words', value: orDash(than), unit: '', format: 'text', note: '' }]);
  const tests = [
    [`${gaps}=${monthCount}`, '"By the mean: no month is filled in yet."'],
    [`${gaps}>0`, `"By the mean: "&${gaps}&" of ${monthCount} months cannot be counted: see each."`],
    [`ISNUMBER(${less})`, `"Counted by months it "&${page.at('saved')}&${page.at('than')}`],
  ];
  const counted = tests.reduceRight(
    (rest, [test, said]) => `IF(${test},${said},${rest})`,
    `"By the mean: months not worked out yet"&IF(${days}>${mostDays},": over ${mostDays} days.",".")`,
  );
  page
    .put('A4', `=${counted}`, 'lead', {
      says: [longestCounted],
    })
    .called('counted', 'A4')
    .put(
      'A5',
      `=IF(AND(${gaps}=0,ABS(${days}-${inUse('Housed days')})>=1),"The days housed add up to "&${days}&"; Inputs has "&${inUse('Housed days')}&". By months the sum counts, by the mean Inputs.","")`,
      'note',
      { says: ['The days housed add up to 366; Inputs has 366. By months the sum counts, by the mean Inputs.'] },
    );
}

/** The year month by month: what the mean hides. */
export function monthsSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder('Months', [150, 70, 70, 70, 70, 70, 70, 70, 70, 96, 70], { blank, landscape: true });
  page.title('Months', 'The whole year, month by month: what the kit makes in each month’s own weather.', lackingLine);
  page.row = 6;
  weather(page);
  theYear(page);
  words(page);
  against(page);
  sentence(page);
  return page;
}
