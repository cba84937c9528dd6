import factors from '../../data/hygiene-factors.json';
import { orDash, quoted } from '../grid.ts';
import { inventedRecords } from '../invented-records.ts';
import type { Format } from '../model.ts';
import type { SheetBuilder } from '../sheet-builder.ts';
import { figure } from './figures.ts';
import { inUse } from './inputs.ts';

/** Five years. */
export const roomFor = 60;

export const organismColumns = ['E. coli, coliforms', 'Klebsiella', 'streptococci', 'staphylococci', 'other'] as const;

/** How laboratories write a count. */
const countUnits = ['per cm³', 'per ml', 'per g', 'log10 per cm³', 'log10 per ml', 'log10 per g'] as const;

interface Typed {
  readonly name: string;
  readonly heading: string;
  readonly format?: Format;
  readonly choices?: readonly string[];
}

const typed: readonly Typed[] = [
  { name: 'month', heading: 'month: any day of it', format: 'date' },
  { name: 'cows', heading: 'cows' },
  { name: 'cases', heading: 'clinical cases' },
  ...organismColumns.map((organism) => ({ name: organism, heading: `of them ${organism}` })),
  { name: 'cells', heading: 'bulk cell count, 1,000/ml' },
  { name: 'dm', heading: 'dry matter as spread', format: 'percent1' },
  { name: 'litres', heading: 'litres laid, each cubicle and time' },
  { name: 'bought', heading: 't bought' },
  { name: 'count', heading: 'laboratory’s count' },
  { name: 'unit', heading: 'its unit', choices: countUnits },
  { name: 'organism', heading: 'of what', choices: ['coliforms', 'klebsiella', 'streptococci', 'staphylococci'] },
  { name: 'sample', heading: 'bedding', choices: ['unused', 'used'] },
];

/** Where the record's own columns and those worked out from them stand, by name. */
const columns: Readonly<Record<string, string>> = {
  ...Object.fromEntries(typed.map(({ name }, k) => [name, 'ABCDEFGHIJKLMNOP'[k] as string])),
  check: 'Q',
  key: 'S',
  days: 'T',
  phase: 'U',
  cowDays: 'V',
  same: 'W',
  perVolume: 'X',
  against: 'Y',
  label: 'Z',
  planDm: 'AA',
  planBought: 'AB',
  scored: 'AC',
  interval: 'AD',
  material: 'AE',
  stocking: 'AF',
  score: 'AG',
  lowest: 'AH',
  highest: 'AI',
  drawnCentre: 'AJ',
  period: 'AK',
  rate: 'AL',
  centre: 'AM',
  lower: 'AN',
  upper: 'AO',
  signal: 'AP',
  season: 'AQ',
  slip: 'AR',
  doubt: 'AS',
};

/** `A31` of a column in a row, and the whole column. */
const cell = (name: string, row: number): string => `${columns[name]}${row}`;

const firstThat = (tests: readonly (readonly [test: string, words: string])[]): string =>
  tests.reduceRight((rest, [test, words]) => `IF(${test},${quoted(words)},${rest})`, quoted(''));

/** What keeps a row out of the sums. */
function slip(row: number, first: number): string {
  const at = (name: string) => cell(name, row);
  const above = (name: string) => `${columns[name]}$${first - 1}:${columns[name]}${row - 1}`;
  return firstThat([
    [`${at('key')}=""`, 'month is missing: type a date of it'],
    [`${at('key')}<=MAX(${above('key')})`, 'not later than a month above'],
    [`IF(ISNUMBER(${at('cows')}),${at('cows')}<1,TRUE)`, 'cows are missing'],
    [`NOT(ISNUMBER(${at('cases')}))`, 'cases are missing: 0 for none'],
    [`OR(${at('cases')}<0,${at('cases')}<>INT(${at('cases')}))`, 'cases cannot be a part'],
  ]);
}

/** What deserves a second look, though the row counts. */
function doubt(row: number): string {
  const at = (name: string) => cell(name, row);
  const looksLog = `AND(ISNUMBER(${at('count')}),${at('count')}<12,LEFT(${at('unit')},3)="per",${at('count')}>0)`;
  return firstThat([
    [`SUM(D${row}:H${row})>${at('cases')}`, 'look: more cultured than cases'],
    [`AND(ISNUMBER(${at('dm')}),${at('dm')}>1)`, 'look: type dry matter as 55%'],
    [`AND(${at('count')}<>"",${at('perVolume')}="")`, 'look: unit, germ or bedding missing'],
    [looksLog, 'look: a logarithm? choose its unit'],
  ]);
}

export const longestCheck = 'look: unit, germ or bedding missing';

/** What is worked out beside a row with the spreadsheet's own functions. */
function worked(row: number, first: number): Readonly<Record<string, string>> {
  const at = (name: string) => cell(name, row);
  const all = (name: string) => `${columns[name]}$${first}:${columns[name]}$${first + roomFor - 1}`;
  const by = (before: string, after: string) => `IF(${at('phase')}="before",${before},${after})`;
  const known = (formula: string) => `=IF(${at('phase')}="","",IFERROR(${formula}&"",""))`;
  const number = (formula: string) => `=IF(${at('phase')}="","",IFERROR(IF(${formula}="","",${formula}),""))`;
  const other = `IF(${at('phase')}="before","after","before")`;
  const plain = `IF(LEFT(${at('unit')},3)="log",10^${at('count')},${at('count')})`;
  return {
    key: `=IF(ISNUMBER(${at('month')}),12*YEAR(${at('month')})+MONTH(${at('month')})-1,"")`,
    days: `=IF(OR(${at('check')}="ok",LEFT(${at('check')},4)="look"),DATE(YEAR(${at('month')}),MONTH(${at('month')})+1,1)-DATE(YEAR(${at('month')}),MONTH(${at('month')}),1),"")`,
    phase: `=IF(OR(${at('days')}="",{$changeKey}=""),"",IF(${at('key')}<{$changeKey},"before","after"))`,
    cowDays: `=IF(${at('days')}="","",${at('cows')}*${at('days')})`,
    season: `=IF(${at('key')}="","",MOD(${at('key')},12))`,
    same: `=IF(${at('phase')}="","",IF(COUNTIFS(${all('phase')},${other},${all('season')},${at('season')})>0,${at('phase')},""))`,
    perVolume: `=IF(OR(NOT(ISNUMBER(${at('count')})),${at('unit')}="",${at('organism')}="",${at('sample')}=""),"",${plain}*IF(RIGHT(${at('unit')},2)=" g",{$density}/1000,1))`,
    label: `=IF(${at('key')}="","",MONTH(${at('month')})&"/"&YEAR(${at('month')}))`,
    planDm: number(by(inUse('Bought dry matter'), inUse('Dried to dry matter'))),
    planBought: number(`${by(figure('Bought needed'), figure('Topped up with bought'))}/365*${at('days')}`),
    scored: `=IF(OR(${at('phase')}="",${at('dm')}="",${at('interval')}=""),"",${at('dm')})`,
    interval: number(by(inUse('Days now'), inUse('Days between beddings'))),
    material: known(by(inUse('Material now'), inUse('Fibre kind'))),
    stocking: `=IFERROR(IF(${at('scored')}="","",${at('cows')}/${inUse('Cubicles')}),"")`,
    slip: `=${slip(row, first)}`,
    doubt: `=${doubt(row)}`,
    drawnCentre: `=IF(${at('rate')}="","",${at('centre')})`,
  };
}

const headings: Readonly<Record<string, string>> = {
  key: 'month’s number',
  days: 'days counted',
  phase: 'before or after',
  cowDays: 'cow-days',
  same: 'same months of the year',
  perVolume: 'count per cm³',
  against: 'against the benchmark',
  label: 'month',
  planDm: 'dry matter in the plan',
  planBought: 't bought in the plan',
  scored: 'dry matter scored',
  interval: 'days between beddings',
  material: 'material',
  stocking: 'cows per cubicle',
  score: 'hygiene score',
  lowest: 'its span: lowest',
  highest: 'highest',
  drawnCentre: 'centre, drawn',
  season: 'month of the year',
  slip: 'what keeps it out',
  doubt: 'what to look at',
};

const formats: Readonly<Record<string, Format>> = {
  key: 'whole',
  days: 'whole',
  cowDays: 'whole',
  season: 'whole',
  interval: 'two',
  planDm: 'percent1',
  scored: 'percent1',
  planBought: 'one',
  perVolume: 'whole',
  against: 'two',
  stocking: 'two',
  score: 'whole',
  lowest: 'whole',
  highest: 'whole',
  drawnCentre: 'one',
};

/** A table to type in, and beside it what is worked out from each row; its columns are named for the rest of the sheet. */
export function recordsTable(page: SheetBuilder): void {
  const head = page.row;
  const [first, last] = [head + 1, head + roomFor];
  for (const [name, column] of Object.entries(columns)) page.called(name, `${column}${first}:${column}${last}`);
  page.across(
    `A${head}`,
    typed.map(({ heading }) => heading),
    'heading',
    { wrap: true },
  );
  page.put(`${columns['check']}${head}`, 'check', 'heading', { wrap: true });
  for (const [name, words] of Object.entries(headings)) page.put(cell(name, head), words, 'heading', { wrap: true, align: 'right' });
  for (let row = first; row <= last; row++) {
    typed.forEach(({ name, format, choices }, k) => {
      const value = inventedRecords[row - first]?.[k] ?? '';
      page.put(cell(name, row), page.given(value), 'input', {
        align: 'right',
        ...(format && { format }),
        ...(choices && { choices, format: 'text' as const }),
      });
    });
    page.put(
      cell('check', row),
      `=IF(COUNTA(A${row}:P${row})=0,"",IF(${cell('slip', row)}<>"",${cell('slip', row)},IF(${cell('doubt', row)}<>"",${cell('doubt', row)},"ok")))`,
      'output',
      { says: [longestCheck] },
    );
    for (const [name, formula] of Object.entries(worked(row, first))) {
      page.put(cell(name, row), formula, 'note', { align: 'right', ...(formats[name] && { format: formats[name] }) });
    }
    for (const name of ['against', 'score', 'lowest', 'highest']) {
      page.put(cell(name, row), '', 'note', { align: 'right', format: formats[name] as Format });
    }
  }
  spills(page, head, first);
  const checks = page.at('check');
  page
    .rule(checks, `$Q${first}="ok"`, 'quiet')
    .rule(checks, `LEFT($Q${first},4)="look"`, 'watch')
    .rule(checks, `AND($Q${first}<>"",$Q${first}<>"ok",LEFT($Q${first},4)<>"look")`, 'bad')
    .rule(page.at('month'), `AND($Q${first}<>"",$Q${first}<>"ok")`, 'watch');
  page.row = last + 1;
}

/** One formula for all rows of a column. */
function spills(page: SheetBuilder, head: number, first: number): void {
  const counted = (name: string) => `IF({days}="","",{${name}})`;
  const bare = (name: string) => `IF({perVolume}="","",{${name}})`;
  const score = (shed: string, dirty: string, stocking: string) =>
    orDash(`BEDDING.HYGIENE.RISK({scored},IF({scored}="","",{interval}),{material},${shed},${dirty},${inUse('Bed')},${stocking})`);
  const [shed, dirty] = [inUse('Shed temperature'), inUse('Dirty udders')];
  const span = (shedAt: number, dirtyAt: number, stockedAt: number) =>
    score(`IF(${shed}="",${shedAt},${shed})`, `IF(${dirty}="",${dirtyAt},${dirty})`, `IF({stocking}="",${stockedAt},{stocking})`);
  const put = (name: string, formula: string) =>
    page.put(cell(name, first), formula, 'note', { align: 'right', format: formats[name] as Format });
  put('against', orDash(`BEDDING.HYGIENE.COUNT(${bare('organism')},${bare('sample')},{perVolume})`));
  put('score', score(`IF(${shed}="","",${shed})`, `IF(${dirty}="","",${dirty})`, '{stocking}'));
  const ends = [factors.shed_c.points, factors.dirty_udders.points, factors.stocking.points].map((points) =>
    points.map(([x]) => x as number),
  );
  put('lowest', span(...(ends.map((xs) => xs[0]) as [number, number, number])));
  put('highest', span(...(ends.map((xs) => xs.at(-1)) as [number, number, number])));
  page.row = head;
  page.spill({
    formula: orDash(`BEDDING.UDDER.CHART(${counted('cases')},${counted('cows')},{days},{$baseline})`),
    rows: roomFor,
    formats: ['whole', 'one', 'one', 'one', 'one', undefined],
    column: columns['period'] as string,
  });
}
