import { orDash } from '../grid.ts';
import { type Content, columnIn, type Fact, type SheetBuilder } from '../sheet-builder.ts';
import { figure } from './figures.ts';
import { inUse } from './inputs.ts';
import { longestCheck, organismColumns } from './records-table.ts';

const sides = ['before', 'after'] as const;
type Pair = readonly [before: Content, after: Content];
const both = (write: (side: (typeof sides)[number]) => string): Pair => [write('before'), write('after')];

/** A line with a value before and one after; `{name before}` and `{name after}` are their cells. */
function pair(
  page: SheetBuilder,
  name: string,
  label: string,
  value: Pair,
  unit: Fact['unit'],
  format: Fact['format'],
  note: string,
): void {
  page.called(`${name} before`, `B${page.row}`).called(`${name} after`, `C${page.row}`);
  page.facts([{ label, value, unit, note, ...(format && { format }) }]);
}

/** Counts, and the time at risk, of the months before and after by one of the two ways of telling them. */
function counted(page: SheetBuilder, by: string, name: string): void {
  const sum = (side: string, of: string) => `SUMIF({$${by}},"${side}",{$${of}})`;
  const months = both((side) => `=COUNTIF({$${by}},"${side}")`);
  const added = (of: string) => both((side) => `=${sum(side, of)}`);
  const cows = both((side) => orDash(`${sum(side, 'cowDays')}/${sum(side, 'days')}`));
  pair(page, `${name}Months`, 'Months', months, 'months', 'whole', 'rows of the record with month, cows and cases');
  pair(page, `${name}Cases`, 'Clinical cases', added('cases'), 'cases', 'whole', 'added up');
  pair(page, `${name}Days`, 'Days', added('days'), 'days', 'whole', 'of those months');
  pair(page, `${name}Cows`, 'Cows', cows, 'cows', 'one', 'on average, by days');
}

function compare(page: SheetBuilder, words: string, name: string, cases: (side: string) => string, by: string): void {
  const side = (one: string) => `${cases(one)},{${by}Cows ${one}},{${by}Days ${one}}`;
  page.row++;
  page.line([words], 'label').spill({
    name,
    formula: orDash(`IF(MIN({${by}Months before},{${by}Months after})=0,"–",BEDDING.UDDER.COMPARE(${side('before')},${side('after')}))`),
    formats: [undefined, 'two', undefined],
    says: [...Array.from({ length: 6 }, () => []), [undefined, 'no difference shown']],
  });
  const table = page.at(name);
  const at = (column: number, row: number) =>
    columnIn(table, column)
      .split(':')[0]
      ?.replace(/\d+/, (first) => String(Number(first) + row)) as string;
  page.called(`${name} ratio`, at(1, 2)).called(`${name} verdict`, at(1, 6)).called(`${name} sentence`, at(2, 6));
}

/** Rates with what the counts leave open, and whether they changed. */
export function beforeAndAfter(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'Before and after',
      'Limits are exact for the counts. The verdict goes by the months of the year that are on record both before and after: mastitis has its seasons.',
    )
    .headings('all months', 'before', 'after', 'unit', 'where from');
  counted(page, 'phase', 'all');
  const top = page.row + 1;
  sides.forEach((side, k) => {
    page.row = top;
    const column = 'AE'[k] as string;
    page.put(`${column}${page.row}`, `Rate ${side}`, 'label');
    page.row++;
    page.spill({
      formula: orDash(`IF({allMonths ${side}}=0,"–",BEDDING.UDDER.INTERVAL({allCases ${side}},{allCows ${side}},{allDays ${side}}))`),
      rows: 3,
      column,
      formats: [undefined, 'one', undefined],
    });
    ['rate', 'lowest', 'highest'].forEach((key, down) => {
      page.called(`${key} ${side}`, `${'BF'[k]}${page.row - 3 + down}`);
    });
  });
  page.row++;
  page.headings('same months of the year', 'before', 'after', 'unit', 'where from');
  counted(page, 'same', 'same');
  compare(page, 'Did it change? The same months of the year', 'same compared', (side) => `{sameCases ${side}}`, 'same');
  compare(page, 'All months, whatever the season', 'all compared', (side) => `{allCases ${side}}`, 'all');
}

/** What the cultures say; the one germ that is said to be more frequent on fibre is compared by itself. */
export function organisms(page: SheetBuilder): void {
  page.part(
    'Germs, where cases were cultured',
    'A case that was not cultured is in no line here. Ask your vet which to culture, and keep to it.',
  );
  page.headings('germ', 'before', 'after', 'unit', 'where from');
  for (const organism of organismColumns) {
    pair(
      page,
      organism,
      organism,
      both((side) => `=SUMIF({$phase},"${side}",{$${organism}})`),
      'cases',
      'whole',
      'added up, all months',
    );
  }
  const germs = page.row - organismColumns.length;
  pair(
    page,
    'cultured',
    'cultured, together',
    [`=SUM(B${germs}:B${page.row - 1})`, `=SUM(C${germs}:C${page.row - 1})`],
    'cases',
    'whole',
    'added up',
  );
  page.called('germs', `A${germs}:C${page.row - 2}`);
  const klebsiella = (side: string) => `IF({cultured ${side}}=0,"",{Klebsiella ${side}})`;
  compare(
    page,
    'Klebsiella: did it change? One study found it seven times as frequent on fibre as on straw',
    'klebsiella compared',
    klebsiella,
    'all',
  );
}

/** What was laid, bought and measured, beside what the plan and the benchmarks say. */
export function againstPlan(page: SheetBuilder): void {
  page.newPage().part('Bedding against the plan').headings('', 'before', 'after', 'plan, before', 'plan, after', 'unit', 'where from');
  const mean = (of: string) => both((side) => orDash(`AVERAGEIF({$phase},"${side}",{$${of}})`));
  const planned = (...formulas: readonly string[]) => formulas.map((formula) => `=IFERROR(IF(${formula}="","–",${formula}),"–")`);
  const line = (label: string, values: Pair, plan: readonly Content[], unit: Fact['unit'], format: Fact['format'], note: string) =>
    page.facts([{ label, value: [...values, ...plan], unit, note, ...(format && { format }) }]);
  line(
    'Dry matter as spread',
    mean('dm'),
    planned(inUse('Bought dry matter'), inUse('Dried to dry matter')),
    'fraction',
    'percent1',
    'mean of the months',
  );
  line(
    'Litres each cubicle and time',
    mean('litres'),
    planned(inUse('Litres now'), inUse('Bedding litres per cubicle each time')),
    'litres',
    'one',
    'mean of the months',
  );
  const bought = both((side) => orDash(`365*SUMIF({$phase},"${side}",{$bought})/SUMIFS({$days},{$phase},"${side}",{$bought},">=0")`));
  line(
    'Bedding bought',
    bought,
    planned(figure('Bought needed'), figure('Topped up with bought')),
    't/year',
    'one',
    'months with tonnes typed, as a year: compare whole years',
  );
  line('Bulk cell count, 1,000/ml', mean('cells'), ['', ''], '', 'whole', 'mean of the months; your milk contract has its own');
  line('Count against the benchmark', mean('against'), [1, 1], 'times', 'two', 'HYGIENE.COUNT: 1 is the published benchmark');
  const scores = planned(figure('Hygiene score, present bedding'), figure('Hygiene score, fibre'));
  line('Hygiene score', mean('score'), scores, '0–100', 'whole', 'a planning aid, no diagnosis; 0 is best');
  line(
    'its span: lowest',
    mean('lowest'),
    planned(figure('Hygiene span, present bedding'), figure('Hygiene span, fibre')),
    '0–100',
    'whole',
    'over what was not given on Inputs',
  );
  line('its span: highest', mean('highest'), ['', ''], '0–100', 'whole', 'the same');
  page.line(['Counts in bedding predict mastitis poorly: see the studies on Udder health.'], 'note');
}

/** How long records must run, and what of it is there. */
export function monthsNeeded(page: SheetBuilder): void {
  page.part('How long until a rise would show').facts([
    {
      name: 'needed',
      label: 'Months before, and as many after',
      value: orDash('BEDDING.UDDER.RECORDMONTHS({rate before},{allCows before},{rise})'),
      unit: 'months',
      format: 'whole',
      note: 'UDDER.RECORDMONTHS: until such a rise shows four times in five; –: no case before, or over 20 years',
    },
  ]);
  pair(
    page,
    'lacking',
    'Months still lacking',
    both((side) => orDash(`MAX(0,{$needed}-{$allMonths ${side}})`)),
    'months',
    'whole',
    'before, and after',
  );
}

export const longestVerdict =
  'No difference shown, which is not “no worse”: a rise could still hide in these records: no limit can be given to it; compare the same months of the year, and take no change for its cause. What follows is for your vet to say.';
export const longestRates =
  'Cases per 100 cows a year: 999.9 before (999.9 to 999.9), 999.9 after (999.9 to 999.9): in brackets what so few cases leave open.';
export const longestNeeded =
  'To see a rise of 1,000% four times in five takes 240 months before and as many after; on record are 60 and 60. No wait mends the 240 lacking before.';

/** `33.5 before (26.8 to 41.3)` */
const interval = (side: string) =>
  `TEXT({rate ${side}},"0.0")&" ${side} ("&TEXT({lowest ${side}},"0.0")&" to "&TEXT({highest ${side}},"0.0")&")"`;

/** Each sentence of the sheet's top in a cell of its own, so that the formulas stay short enough to read. */
export function sentences(page: SheetBuilder): void {
  page.part('In words', 'The sentences that the top of the sheet shows, part by part.');
  const put = (name: string, formula: string, longest: string) =>
    page.called(name, `A${page.row}`).line([formula], 'note', { says: [longest] });
  put(
    'fewWords',
    '=IF(SUM({$days})=0,"No month is on record yet: type the first row of the table below.",IF({$changeKey}="","Type the first month on the new bedding above: until then nothing can be compared.",""))',
    'Type the first month on the new bedding above: until then nothing can be compared.',
  );
  put(
    'noneWords',
    '=IF(OR({fewWords}<>"",MIN({sameMonths before},{sameMonths after})>0),"",IF({allMonths before}=0,"No month before the change is on record: nothing to compare with. Type in the old book’s, if there is one.",IF({allMonths after}=0,"No month after the change is on record yet.","No month of the year is on record both before and after yet.")))',
    'No month before the change is on record: nothing to compare with. Type in the old book’s, if there is one.',
  );
  put(
    'comparedWords',
    '=IF({fewWords}&{noneWords}<>"","",IF({sameCases before}+{sameCases after}=0,"No case on record in those months, before or after: that shows nothing either way.",IFERROR({verdictWords}&{same compared sentence}&". What follows is for your vet to say.","")))',
    longestVerdict,
  );
  put(
    'verdictWords',
    '=IF({same compared verdict}="more","MORE cases since the change: ring your vet. ",IF({same compared verdict}="fewer","Fewer cases since the change: ",IF({same compared verdict}="no difference shown","No difference shown, which is not “no worse”: ","")))',
    'No difference shown, which is not “no worse”: ',
  );
  put(
    'rateWords',
    `=IF(COUNT({rate before},{rate after})<2,"","Cases per 100 cows a year: "&${interval('before')}&", "&${interval('after')}&": in brackets what so few cases leave open.")`,
    longestRates,
  );
  put(
    'neededYet',
    '=IF({lacking after}>0,"Still to come after: "&{lacking after},IF({lacking before}>0,"No wait mends the "&{lacking before}&" lacking before","A smaller rise could still hide"))&"."',
    'No wait mends the 240 lacking before.',
  );
  put(
    'neededWords',
    '=IF({fewWords}&{noneWords}<>"","",IF(ISNUMBER({needed}),"To see a rise of "&TEXT({rise},"0%")&" four times in five takes "&{needed}&" months before and as many after; on record are "&{allMonths before}&" and "&{allMonths after}&". "&{neededYet},"No rise would show: too few cases before, or more than 20 years of records."))',
    longestNeeded,
  );
  const first = Number(/\d+/.exec(page.at('check'))?.[0]);
  put('flawed', '=SUMPRODUCT(MAX((1000-ROW({$check}))*({$check}<>"")*({$check}<>"ok")))', '999');
  put(
    'flawWords',
    `=IF({flawed}=0,"","Row "&1000-{flawed}&" of the record: "&INDEX({$check},1000-{flawed}-${first - 1})&".")`,
    `Row 999 of the record: ${longestCheck}.`,
  );
}
