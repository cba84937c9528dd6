import factors from '../../data/hygiene-factors.json';
import { letter, on, orDash, quoted } from '../grid.ts';
import { inventedRecords } from '../invented-records.ts';
import type { Format } from '../model.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { figure } from './figures.ts';
import { inUse } from './inputs.ts';
import { countedGerms, countUnits, looksLikeLog, perVolume } from './laboratory-count.ts';

/** Five years. */
export const roomFor = 60;

export const organismColumns = ['E. coli, coliforms', 'Klebsiella', 'streptococci', 'staphylococci', 'other'] as const;

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
  { name: 'organism', heading: 'of what', choices: countedGerms },
  { name: 'sample', heading: 'bedding', choices: ['unused', 'used'] },
];

export const recordsName = 'Records';
/** What is worked out from each row stands on a sheet of its own, row by row, so that the record prints in a size that is read. */
const sumsName = 'Record sums';
const sumsHead = 5;

const recordColumns = [...typed.map(({ name }) => name), 'check'];
const sumsColumns = [
  ...['label', 'key', 'days', 'phase', 'cowDays', 'season', 'same', 'perVolume', 'against', 'planDm', 'planBought', 'scored', 'interval'],
  ...[
    'material',
    'stocking',
    'score',
    'lowest',
    'highest',
    'drawnCentre',
    'period',
    'rate',
    'centre',
    'lower',
    'upper',
    'signal',
    'slip',
    'doubt',
  ],
];
const isTyped = (name: string): boolean => recordColumns.includes(name);
const columnOf = (name: string): string => letter(isTyped(name) ? recordColumns.indexOf(name) : sumsColumns.indexOf(name));

/** The nth cell of a column, as its own sheet writes it. */
const own = (name: string, nth: number, head: number): string => `${columnOf(name)}${(isTyped(name) ? head : sumsHead) + nth}`;
/** The same as the sums write it. */
const inSums = (name: string, nth: number, head: number): string =>
  isTyped(name) ? `${recordsName}!${own(name, nth, head)}` : own(name, nth, head);

const firstThat = (tests: readonly (readonly [test: string, words: string])[]): string =>
  tests.reduceRight((rest, [test, words]) => `IF(${test},${quoted(words)},${rest})`, quoted(''));

/** What keeps a row out of the sums. */
function slip(at: (name: string) => string, nth: number): string {
  const above = `${columnOf('key')}$${sumsHead}:${columnOf('key')}${sumsHead + nth - 1}`;
  return firstThat([
    [`${at('key')}=""`, 'month is missing: type a date of it'],
    [`${at('key')}<=MAX(${above})`, 'not later than a month above'],
    [`IF(ISNUMBER(${at('cows')}),${at('cows')}<1,TRUE)`, 'cows are missing'],
    [`NOT(ISNUMBER(${at('cases')}))`, 'cases are missing: 0 for none'],
    [`OR(${at('cases')}<0,${at('cases')}<>INT(${at('cases')}))`, 'cases cannot be a part'],
  ]);
}

/** What deserves a second look, though the row counts. */
function doubt(at: (name: string) => string): string {
  return firstThat([
    [`SUM(${organismColumns.map(at).join(',')})>${at('cases')}`, 'look: more cultured than cases'],
    [`AND(ISNUMBER(${at('dm')}),${at('dm')}>1)`, 'look: type dry matter as 55%'],
    [`AND(${at('count')}<>"",${at('perVolume')}="")`, 'look: unit, germ or bedding missing'],
    [looksLikeLog(at('count'), at('unit')), 'look: a logarithm? choose its unit'],
  ]);
}

export const longestCheck = 'look: unit, germ or bedding missing';

/** What is worked out beside a row with the spreadsheet's own functions. */
function worked(nth: number, head: number): Readonly<Record<string, string>> {
  const at = (name: string) => inSums(name, nth, head);
  const all = (name: string) => `${columnOf(name)}$${sumsHead + 1}:${columnOf(name)}$${sumsHead + roomFor}`;
  const by = (before: string, after: string) => `IF(${at('phase')}="before",${before},${after})`;
  const known = (formula: string) => `=IF(${at('phase')}="","",IFERROR(${formula}&"",""))`;
  const number = (formula: string) => `=IF(${at('phase')}="","",IFERROR(IF(${formula}="","",${formula}),""))`;
  const other = `IF(${at('phase')}="before","after","before")`;
  return {
    key: `=IF(ISNUMBER(${at('month')}),12*YEAR(${at('month')})+MONTH(${at('month')})-1,"")`,
    days: `=IF(OR(${at('check')}="ok",LEFT(${at('check')},4)="look"),DATE(YEAR(${at('month')}),MONTH(${at('month')})+1,1)-DATE(YEAR(${at('month')}),MONTH(${at('month')}),1),"")`,
    phase: `=IF(OR(${at('days')}="",{$changeKey}=""),"",IF(${at('key')}<{$changeKey},"before","after"))`,
    cowDays: `=IF(${at('days')}="","",${at('cows')}*${at('days')})`,
    season: `=IF(${at('key')}="","",MOD(${at('key')},12))`,
    same: `=IF(${at('phase')}="","",IF(COUNTIFS(${all('phase')},${other},${all('season')},${at('season')})>0,${at('phase')},""))`,
    perVolume: `=IF(OR(NOT(ISNUMBER(${at('count')})),${at('unit')}="",${at('organism')}="",${at('sample')}=""),"",${perVolume(at('count'), at('unit'), '{$density}')})`,
    label: `=IF(${at('key')}="","",MONTH(${at('month')})&"/"&YEAR(${at('month')}))`,
    planDm: number(by(inUse('Bought dry matter'), inUse('Dried to dry matter'))),
    planBought: number(`${by(figure('Bought needed'), figure('Topped up with bought'))}/365*${at('days')}`),
    scored: `=IF(OR(${at('phase')}="",${at('dm')}="",${at('interval')}=""),"",${at('dm')})`,
    interval: number(by(inUse('Days now'), inUse('Days between beddings'))),
    material: known(by(inUse('Material now'), inUse('Fibre kind'))),
    stocking: `=IFERROR(IF(${at('scored')}="","",${at('cows')}/${inUse('Cubicles')}),"")`,
    slip: `=${slip(at, nth)}`,
    doubt: `=${doubt(at)}`,
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

/** A table to type in, and the sheet of what is worked out from each of its rows; the columns of both are named for both. */
export function recordsTable(page: SheetBuilder): SheetBuilder {
  const sums = new SheetBuilder(
    sumsName,
    sumsColumns.map((name) => (['slip', 'doubt'].includes(name) ? 200 : 90)),
    { landscape: true },
  );
  sums.title(sumsName, 'What is worked out from each row of Records, for its sentences and charts: nothing is typed here.');
  const head = page.row;
  for (const name of [...recordColumns, ...sumsColumns]) {
    const range = `${own(name, 1, head)}:${own(name, roomFor, head)}`;
    page.called(name, isTyped(name) ? range : on(sumsName, range));
    sums.called(name, isTyped(name) ? on(recordsName, range) : range);
  }
  page.across(`A${head}`, [...typed.map(({ heading }) => heading), 'check'], 'heading', { wrap: true });
  for (const [name, words] of Object.entries(headings)) sums.put(own(name, 0, head), words, 'heading', { wrap: true, align: 'right' });
  for (let nth = 1; nth <= roomFor; nth++) {
    const row = head + nth;
    typed.forEach(({ name, format, choices }, k) => {
      page.put(own(name, nth, head), page.given(inventedRecords[nth - 1]?.[k] ?? ''), 'input', {
        align: 'right',
        ...(format && { format }),
        ...(choices && { choices, format: 'text' as const }),
      });
    });
    const [slips, doubts] = ['slip', 'doubt'].map((name) => on(sumsName, own(name, nth, head))) as [string, string];
    page.put(
      own('check', nth, head),
      `=IF(COUNTA(A${row}:P${row})=0,"",IF(${slips}<>"",${slips},IF(${doubts}<>"",${doubts},"ok")))`,
      'output',
      { says: [longestCheck] },
    );
    const put = (name: string, content: string) =>
      sums.put(own(name, nth, head), content, 'note', { align: 'right', ...(formats[name] && { format: formats[name] }) });
    for (const [name, formula] of Object.entries(worked(nth, head))) put(name, formula);
    for (const name of ['against', 'score', 'lowest', 'highest']) put(name, '');
  }
  spills(sums, head);
  const checks = page.at('check');
  const first = `$Q${head + 1}`;
  page
    .rule(checks, `${first}="ok"`, 'quiet')
    .rule(checks, `LEFT(${first},4)="look"`, 'watch')
    .rule(checks, `AND(${first}<>"",${first}<>"ok",LEFT(${first},4)<>"look")`, 'bad')
    .rule(page.at('month'), `AND(${first}<>"",${first}<>"ok")`, 'watch');
  page.row = head + roomFor + 1;
  return sums;
}

/** One formula for all rows of a column. */
function spills(sums: SheetBuilder, head: number): void {
  const counted = (name: string) => `IF({days}="","",{${name}})`;
  const bare = (name: string) => `IF({perVolume}="","",{${name}})`;
  const score = (shed: string, dirty: string, stocking: string) =>
    orDash(`BEDDING.HYGIENE.RISK({scored},IF({scored}="","",{interval}),{material},${shed},${dirty},${inUse('Bed')},${stocking})`);
  const [shed, dirty] = [inUse('Shed temperature'), inUse('Dirty udders')];
  const span = (shedAt: number, dirtyAt: number, stockedAt: number) =>
    score(`IF(${shed}="",${shedAt},${shed})`, `IF(${dirty}="",${dirtyAt},${dirty})`, `IF({stocking}="",${stockedAt},{stocking})`);
  const put = (name: string, formula: string) =>
    sums.put(own(name, 1, head), formula, 'note', { align: 'right', format: formats[name] as Format });
  put('against', orDash(`BEDDING.HYGIENE.COUNT(${bare('organism')},${bare('sample')},{perVolume})`));
  put('score', score(`IF(${shed}="","",${shed})`, `IF(${dirty}="","",${dirty})`, '{stocking}'));
  const ends = [factors.shed_c.points, factors.dirty_udders.points, factors.stocking.points].map((points) =>
    points.map(([x]) => x as number),
  );
  put('lowest', span(...(ends.map((xs) => xs[0]) as [number, number, number])));
  put('highest', span(...(ends.map((xs) => xs.at(-1)) as [number, number, number])));
  sums.row = sumsHead;
  sums.spill({
    formula: orDash(`BEDDING.UDDER.CHART(${counted('cases')},${counted('cows')},{days},{$baseline})`),
    rows: roomFor,
    formats: ['whole', 'one', 'one', 'one', 'one', undefined],
    column: columnOf('period'),
  });
}
