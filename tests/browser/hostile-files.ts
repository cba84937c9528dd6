import { strToU8, zipSync } from 'fflate';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { locales } from '../../src/surfaces/sheet/locales.ts';
import { toGrid } from '../../src/surfaces/sheet/to-grid.ts';
import type { Chart, Sheet } from '../../src/workbook/model.ts';

/** A file as somebody might hand it to the Open button, by mistake or by malice. */
export interface HostileFile {
  readonly name: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
}

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
type Place = readonly (string | number)[];

const chart = (kind: Chart['kind'], at: string): Chart => ({
  kind,
  title: `A ${kind} chart`,
  across: 'days',
  up: 't/day',
  labels: 'A5:A8',
  series: [
    { name: 'needed', values: 'B5:B8' },
    { name: 'made', values: 'C5:C8' },
  ],
  at,
  width: 400,
  height: 200,
});

const table: Sheet['cells'] = Object.fromEntries(
  [5, 6, 7, 8].flatMap((row) => [
    [`A${row}`, { content: `day ${row}`, style: 'label' }],
    [`B${row}`, { content: `=BEDDING.DEMAND.HERD(B1,${row})`, style: 'output', format: 'two' }],
    [`C${row}`, { content: `=B${row}*1.1`, format: 'percent' }],
  ]),
);

const plan: Sheet = {
  name: 'Plan',
  columns: [120, 80, 80],
  rows: 60,
  cells: {
    A1: { content: 'Cubicles', style: 'title' },
    B1: { content: 200, style: 'input', format: 'whole' },
    A2: { content: 'Beds', style: 'label', wrap: true },
    B2: { content: 'deep', style: 'required', choices: ['deep', 'mattress'] },
    A3: { content: '=BEDDING.DEMAND.HERD({100;"many"},2)', style: 'strong' },
    ...table,
  },
  heights: { 2: 36 },
  merges: ['D1:E2'],
  rules: [{ range: 'A5:C8', when: '$B5>1', look: 'bad' }],
  charts: (['column', 'stacked column', 'bar', 'line', 'scatter'] as const).map((kind, k) => chart(kind, `F${1 + 11 * k}`)),
  freeze: { rows: 3, columns: 1 },
};

const other: Sheet = {
  name: 'Other sheet',
  columns: [100],
  rows: 30,
  cells: { A1: { content: '=Plan!B1*2' }, A2: { content: 'nothing else' } },
};

/** A copy as the Save button makes it, of a small workbook that has one of everything. */
export const savedCopy = (): Json => JSON.parse(JSON.stringify(toGrid({ sheets: [plan, other] }, locales[0]))) as Json;

const text = JSON.stringify(savedCopy());

/** The copy with what lies at one place replaced; a number steps into a list. */
function edited(place: Place, by: unknown): string {
  const copy = savedCopy();
  const last = place.at(-1) as string;
  const holder = place.slice(0, -1).reduce((at, step) => (at as Record<string, Json>)[step] as Json, copy) as Record<string, unknown>;
  holder[last] = by;
  return JSON.stringify(copy);
}

/** Every place in the copy, but of places alike (cells, styles) the first few. */
function places(within: Json = savedCopy(), at: Place = [], seen = new Map<string, number>()): Place[] {
  if (typeof within !== 'object' || within === null) return [];
  return Object.entries(within).flatMap(([key, value]) => {
    const place = [...at, key];
    const kind = place
      .map((step) =>
        String(step)
          .replace(/\d+/g, '#')
          .replace(/^[A-Z]+#(:[A-Z]+#)?$/, 'cell'),
      )
      .join('/');
    const count = seen.get(kind) ?? 0;
    seen.set(kind, count + 1);
    return count >= 2 ? [] : [place, ...places(value, place, seen)];
  });
}

const wrong: readonly unknown[] = [null, true, -1, 0.5, 1e9, '', 'nonsense', [], {}, [[]], { x: { y: 1 } }, '__proto__'];

const markup = [
  '<img src=x onerror="window.ran=1">',
  '<script>window.ran=1</script>',
  '"><svg onload=window.ran=1>',
  '<iframe srcdoc="<script>parent.ran=1</script>">',
  '{{window.ran=1}}',
  '`+(window.ran=1)+`',
  '");window.ran=1;//',
];

const links = [
  '[click](javascript:window.ran=1)',
  '[click](JaVaScRiPt:window.ran=1)',
  '[click](data:text/html,<script>opener.ran=1</script>)',
  '[click](https://example.org/?out)',
  'https://example.org/?out',
  '[click](o-spreadsheet://nowhere)',
  '[click](file:///etc/passwd)',
  '=HYPERLINK("javascript:window.ran=1","click")',
  '=IMAGE("https://example.org/?out")',
  '=WEBSERVICE("https://example.org/?out")',
];

const sheet = (k: number, ...rest: Place): Place => ['sheets', k, ...rest];
const figure = (...rest: Place): Place => sheet(0, 'figures', 0, ...rest);

const ring = (length: number): Json => Object.fromEntries(Array.from({ length }, (_, k) => [`A${k + 1}`, `=A${((k + 1) % length) + 1}+1`]));

const many = (count: number, make: (k: number) => [string, Json]): Json =>
  Object.fromEntries(Array.from({ length: count }, (_, k) => make(k)));

const column = (index: number): string =>
  (index < 26 ? '' : String.fromCharCode(64 + Math.floor(index / 26))) + String.fromCharCode(65 + (index % 26));

const tooLarge: readonly (readonly [Place, unknown])[] = [
  [sheet(0, 'rowNumber'), 5_000_000],
  [sheet(0, 'rowNumber'), 1e308],
  [sheet(0, 'colNumber'), 16_384],
  [sheet(0, 'merges'), ['A1:ZZ20000']],
  [sheet(0, 'merges'), ['A1:XFD1048576']],
  [sheet(0, 'merges'), Array.from({ length: 50_000 }, () => 'A1:B2')],
  [sheet(0, 'cells', 'XFD1048576'), 'far away'],
  [sheet(0, 'cells', 'A99999'), 'below the last row'],
  [sheet(0, 'cells'), many(250_000, (k) => [`${column(k % 700)}${1 + Math.floor(k / 700)}`, '1'])],
  [sheet(0, 'panes'), { xSplit: 1e9, ySplit: 1e9 }],
  [sheet(0, 'rows'), { 999999999: { size: 1e9 } }],
  [sheet(0, 'cols'), { 0: { size: 1e308 } }],
  [sheet(0, 'rows'), { 0: { size: -5 } }],
  [sheet(0, 'styles'), { 'A1:XFD1048576': 1 }],
  [sheet(0, 'borders'), { 'A1:ZZ99999': 1 }],
  [sheet(0, 'formats'), { 'A1:XFD1048576': 1 }],
  [sheet(0, 'conditionalFormats', 0, 'ranges'), ['A1:XFD1048576']],
  [sheet(0, 'dataValidationRules', 0, 'ranges'), ['A1:XFD1048576']],
  [sheet(0, 'headerGroups'), { ROW: [{ start: 0, end: 1e9, isFolded: true }], COL: [] }],
  [sheet(0, 'tables'), [{ range: 'A1:XFD1048576', type: 'static', config: { numberOfHeaders: 1, styleId: 'None' } }]],
  [figure('width'), 1e9],
  [figure('row'), 1e9],
  [figure('data', 'dataSource', 'labelRange'), 'A1:XFD1048576'],
  [
    ['sheets'],
    Array.from({ length: 500 }, (_, k) => ({
      ...(savedCopy() as { sheets: { [key: string]: Json }[] }).sheets[1],
      id: `s${k}`,
      name: `s${k}`,
    })),
  ],
];

const cycles: readonly (readonly [Place, unknown])[] = [
  [sheet(0, 'cells', 'B1'), '=B1'],
  [sheet(0, 'cells', 'B1'), '=C5'],
  [sheet(0, 'cells', 'B1'), "='Other sheet'!A1"],
  [sheet(0, 'cells', 'B1'), '=SUM(A1:E60)'],
  [sheet(0, 'cells', 'B1'), '=BEDDING.DEMAND.HERD(B1,B1)'],
  [sheet(0, 'cells', 'A20'), '=TRANSPOSE(A20:B21)'],
  [sheet(0, 'cells', 'B1'), '=INDIRECT("B1")'],
  [sheet(0, 'cells', 'B1'), '=OFFSET(B1,0,0)'],
  [sheet(0, 'cells', 'B1'), '=IF(TRUE,B1,B1)'],
  [sheet(0, 'conditionalFormats', 0, 'rule', 'values'), ['=B1=B1+A5']],
  [sheet(0, 'cells'), ring(60)],
  [sheet(1, 'cells'), ring(30)],
  [sheet(1, 'cells'), { A1: '=Plan!B1', B1: "='Other sheet'!A1", C1: '=B1&C1' }],
  [sheet(0, 'id'), 'sheet-2'],
  [sheet(0, 'name'), 'Other sheet'],
];

const long = 'x'.repeat(10_000_000);
const longStrings: readonly (readonly [Place, unknown])[] = [
  [sheet(0, 'cells', 'A1'), long],
  [sheet(0, 'cells', 'A1'), `="${long}"`],
  [sheet(0, 'cells', 'A1'), `=1${'+1'.repeat(5_000_000)}`],
  [sheet(0, 'cells', 'A1'), '('.repeat(10_000_000)],
  [sheet(0, 'cells', 'A1'), `=${'('.repeat(100_000)}1${')'.repeat(100_000)}`],
  [sheet(0, 'cells', 'A1'), '9'.repeat(10_000_000)],
  [sheet(0, 'cells', 'A1'), `=REPT("${'y'.repeat(1000)}",100000000)`],
  [sheet(0, 'name'), long],
  [sheet(0, 'id'), long],
  [sheet(0, 'cells', long), '1'],
  [['styles', '1', 'textColor'], long],
  [['formats', '1'], '#'.repeat(10_000_000)],
  [figure('data', 'title', 'text'), long],
  [['settings', 'locale', 'code'], long],
  [['version'], '19.'.repeat(3_000_000)],
  [['unknown'], long],
];

const later: readonly (readonly [Place, unknown])[] = [
  [['version'], '99.1'],
  [['version'], '19.3.3'],
  [['version'], '20'],
  [['version'], 'next year'],
  [['version'], '19.3.2; DROP'],
  [['version'], 7],
  [['version'], '0.1'],
];

const bomb = (of: string): string =>
  `<?xml version="1.0"?><!DOCTYPE a [<!ENTITY x0 "${of}">${Array.from({ length: 9 }, (_, k) => `<!ENTITY x${k + 1} "${`&x${k};`.repeat(10)}">`).join('')}]><a>&x9;</a>`;
const outside = '<?xml version="1.0"?><!DOCTYPE a [<!ENTITY x SYSTEM "https://example.org/?out">]><a>&x;</a>';
const zeros = (): Uint8Array<ArrayBuffer> => new Uint8Array(30_000_000);
const inXlsx = (part: string, content: Uint8Array): Uint8Array<ArrayBuffer> =>
  zipSync({ '[Content_Types].xml': strToU8('<Types/>'), [part]: content }, { level: 9 });

const otherFiles: readonly HostileFile[] = [
  { name: 'entities.xlsx', content: inXlsx('xl/workbook.xml', strToU8(bomb('ha'))) },
  { name: 'outside.xlsx', content: inXlsx('xl/workbook.xml', strToU8(outside)) },
  { name: 'ratio.xlsx', content: inXlsx('xl/worksheets/sheet1.xml', zeros()) },
  { name: 'nested.xlsx', content: inXlsx('xl/a.zip', inXlsx('xl/b.zip', zeros())) },
  { name: 'ratio named.json', content: inXlsx('xl/worksheets/sheet1.xml', zeros()) },
  { name: 'entities.xml', content: bomb('ha') },
  { name: 'page.html', content: `<!doctype html>${markup[1]}` },
  { name: 'empty.json', content: '' },
  { name: 'zeros.json', content: new Uint8Array(1000) },
  { name: 'nested lists.json', content: '['.repeat(10_000_000) },
  { name: 'nested objects.json', content: `${'{"a":'.repeat(100_000)}1${'}'.repeat(100_000)}` },
  { name: 'prototype.json', content: text.replace('{', '{"__proto__":{"polluted":true},"constructor":{"prototype":{"polluted":true}},') },
  { name: 'text.json', content: '"a text"' },
  { name: 'number.json', content: '1e999' },
];

/** Where a user's words stand in the copy: names, cells, chart titles, choices and the like. */
const isText = (place: Place): boolean =>
  typeof place.reduce((at, step) => (at as Record<string, Json>)[step] as Json, savedCopy()) === 'string';

const named = (kind: string, edits: readonly (readonly [Place, unknown])[]): HostileFile[] =>
  edits.map(([place, by], k) => ({ name: `${kind} ${k + 1}, ${place.join('/').slice(0, 60)}.json`, content: edited(place, by) }));

/** 200 files, the same for the same seed. */
export function hostileFiles(seed = 6): readonly HostileFile[] {
  const random = xoroshiro128plus(seed);
  const upTo = (count: number): number => uniformInt(random, 0, count - 1);
  const one = <T>(of: readonly T[]): T => of[upTo(of.length)] as T;
  const all = places();
  const texts = all.filter(isText);
  const some = <T>(count: number, make: (k: number) => T): T[] => Array.from({ length: count }, (_, k) => make(k));
  const fixed = [
    ...named('too large', tooLarge),
    ...named('cycle', cycles),
    ...named('10 MB', longStrings),
    ...named('other version', later),
    ...named(
      'link',
      links.map((link) => [sheet(0, 'cells', 'A1'), link] as const),
    ),
    ...otherFiles,
  ];
  const cutShort = some(20, (k) => ({ name: `cut short ${k + 1}.json`, content: text.slice(0, upTo(text.length)) }));
  const marked = some(34, () => [one(texts), one(markup)] as const);
  const mistyped = some(200 - fixed.length - cutShort.length - marked.length, () => [one(all), one(wrong)] as const);
  return [...fixed, ...cutShort, ...named('markup', marked), ...named('wrong type', mistyped)];
}
