import { describe, expect, it } from 'vitest';
import { figures } from '../../src/budget/figures.ts';
import { budgetItems } from '../../src/budget/items.ts';
import { registry } from '../../src/functions/index.ts';
import { callsIn } from '../../src/surfaces/pane/formula.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { numberFormatOf } from '../../src/workbook/look.ts';

const { sheets } = budgetWorkbook();
const cells = sheets.flatMap(({ name, cells }) => Object.entries(cells).map(([address, cell]) => ({ sheet: name, address, ...cell })));
const formulas = cells.flatMap(({ sheet, address, content }) =>
  typeof content === 'string' && content.startsWith('=') ? [{ sheet, address, formula: content }] : [],
);
const withoutText = (formula: string): string => formula.replace(/"(?:[^"]|"")*"/g, '""');
const places = (found: readonly { sheet: string; address: string; formula: string }[]) =>
  found.map(({ sheet, address, formula }) => `${sheet}!${address} ${formula}`);

describe('the budget workbook as written', () => {
  it('has the sheets of the plan, the answer first', () => {
    expect(sheets.map(({ name }) => name)).toEqual([
      'Answer',
      'Inputs',
      'Plans',
      'Months',
      'Options',
      'Fibre and drying',
      'Size',
      'Settings',
      'Investment',
      'Levers',
      'How sure',
      'Udder health',
      'Acceptance',
      'Records',
      'Record sums',
      'Figures',
      'Herds',
      'Checks',
      'Conditions and cautions',
      'Sources',
    ]);
  });

  it('calls only functions that exist, with as many arguments as they take', () => {
    const byName = new Map(registry.map((record) => [`BEDDING.${record.name}`, record]));
    const wrong = formulas.filter(({ sheet, formula }) =>
      callsIn(formula, sheet)
        .filter(({ name }) => name.startsWith('BEDDING.'))
        .some(({ name, args }) => {
          const record = byName.get(name);
          const needed = record?.parameters.filter(({ fallback }) => !fallback).length ?? 0;
          return !record || args.length > record.parameters.length || args.length < needed;
        }),
    );
    expect(places(wrong)).toEqual([]);
  });

  it('takes a number typed into an empty cell as a number: only where words are asked for is such a cell text', () => {
    const empty = budgetWorkbook({ blank: true }).sheets.flatMap(({ name, cells }) =>
      Object.entries(cells).flatMap(([address, cell]) =>
        cell.content === '' && ['input', 'required'].includes(cell.style ?? '') && numberFormatOf(cell) === '@' && !cell.choices
          ? [`${name}!${address}`]
          : [],
      ),
    );
    expect(empty).toEqual(['Inputs!C5', 'Inputs!C6', 'Inputs!H5']);
  });

  it('uses every family of functions', () => {
    const used = new Set(formulas.flatMap(({ sheet, formula }) => callsIn(formula, sheet).map(({ name }) => name.split('.')[1])));
    const families = registry.map(({ name }) => name.split('.')[0]).filter((family) => family !== 'WORKING');
    expect(families.filter((family) => !used.has(family))).toEqual([]);
  });

  it('looks figures up only by keys that the budget gives', () => {
    const keys = new Set([...figures.map(({ key }) => key), 'Defaults used', 'Still missing']);
    const asked = formulas.flatMap(({ formula }) =>
      [...formula.matchAll(/MATCH\("((?:[^"]|"")*)",Figures!/g)].map((match) => (match[1] as string).replaceAll('""', '"')),
    );
    const labels = formulas.flatMap(({ sheet, formula }) =>
      [...formula.matchAll(/MATCH\(([A-Z]+\d+),Figures!/g)].map((match) =>
        String(cells.find((cell) => cell.sheet === sheet && cell.address === match[1])?.content),
      ),
    );
    expect(asked.length).toBeGreaterThan(20);
    expect(labels.length).toBeGreaterThan(20);
    expect([...asked, ...labels].filter((key) => !keys.has(key))).toEqual([]);
  });

  it('lists every item of the budget once on Inputs, first those that are needed or decide much', () => {
    const listed = Object.entries(sheets.find(({ name }) => name === 'Inputs')?.cells ?? {}).flatMap(([address, { content }]) =>
      /^B\d+$/.test(address) ? [content] : [],
    );
    const items = budgetItems.map(({ name }) => name);
    const names = listed.filter((name) => items.includes(String(name)));
    expect([...names].sort()).toEqual([...items].sort());
    const first = budgetItems.filter((item) => (item.needed && item.only !== 'with a loan') || item.asked).map(({ name }) => name);
    expect(names.slice(0, first.length)).toEqual(first);
  });

  it('uses nothing that an older Excel or LibreOffice lacks', () => {
    const lacking =
      /\b(LET|LAMBDA|XLOOKUP|XMATCH|MAP|BYROW|FILTER|SORT|UNIQUE|SEQUENCE|AGGREGATE|NORM\.DIST|IFS|SWITCH|TEXTJOIN)\(|#N\/A|[A-Z]\d+#/;
    expect(places(formulas.filter(({ formula }) => lacking.test(withoutText(formula))))).toEqual([]);
  });

  it('refers only to sheets that it has', () => {
    const names = new Set(sheets.map(({ name }) => name));
    const asked = formulas.flatMap(({ formula }) =>
      [...withoutText(formula).matchAll(/(?:'([^']+)'|\b([A-Za-z]+))!/g)].map((match) => match[1] ?? match[2]),
    );
    const drawn = sheets.flatMap(({ charts = [] }) =>
      charts.flatMap(({ labels, series }) => [labels, ...series.map(({ values }) => values)]),
    );
    const charted = drawn.filter((range) => range.includes('!')).map((range) => range.split('!')[0]?.replaceAll("'", ''));
    expect([...asked, ...charted].filter((name) => !names.has(String(name)))).toEqual([]);
  });

  it('holds no comma in a drop-down’s choices, which a file would split', () => {
    expect(cells.flatMap(({ choices }) => choices ?? []).filter((choice) => choice.includes(','))).toEqual([]);
  });

  it('keeps formulas short enough to read', () => {
    const long = formulas.filter(({ formula }) => formula.replace(/'?[A-Z][a-z ]+'?!|\$/g, '').length > 320);
    expect(places(long)).toEqual([]);
  });

  it('marks cells to type in on the sheets that ask for something, on no other, and never a formula', () => {
    const typed = new Set(cells.filter(({ style }) => style === 'input' || style === 'required').map(({ sheet }) => sheet));
    expect([...typed]).toEqual([
      'Inputs',
      'Plans',
      'Months',
      'Options',
      'Size',
      'Settings',
      'Investment',
      'Levers',
      'How sure',
      'Udder health',
      'Acceptance',
      'Records',
      'Herds',
      'Checks',
    ]);
    expect(
      cells
        .filter(({ style, content }) => style === 'input' && String(content).startsWith('='))
        .map(({ sheet, address }) => `${sheet}!${address}`),
    ).toEqual([]);
  });
});
