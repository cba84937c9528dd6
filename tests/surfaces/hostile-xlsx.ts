import { zipSync } from 'fflate';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { type Made, rows, xlsxMade, xlsxParts } from './xlsx-made.ts';

/** A spreadsheet file as somebody might hand it to the Open button, by mistake or by malice. */
export interface HostileXlsx {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

type Parts = Record<string, Uint8Array<ArrayBuffer>>;

const decoder = new TextDecoder();
const encoder = new TextEncoder();

const times = <T>(count: number, make: (k: number) => T): T[] => Array.from({ length: count }, (_, k) => make(k));
const repeat = (count: number, make: (k: number) => string): string => times(count, make).join('');
const cell = (address: string, formula: string, attributes = ''): string => `<c r="${address}"><f ${attributes}>${formula}</f><v>1</v></c>`;
const oneCell = (inside: string): Made => ({ sheets: { Data: rows(inside) } });

/** Files that ask for work without measure: each is held to work that grows with its size and no faster. */
const senseless: Readonly<Record<string, Made>> = {
  'one formula of [1] a hundred thousand times': oneCell(cell('A1', '[1]'.repeat(100_000))),
  'formulas of [1] just short enough': { sheets: { Data: rows(...times(30, (k) => cell(`A${k + 1}`, '[1]'.repeat(2700)))) } },
  'apostrophes without end': oneCell(cell('A1', "'".repeat(8001))),
  'quotation marks without end': oneCell(cell('A1', '&quot;'.repeat(8001))),
  'brackets without end': oneCell(cell('A1', '('.repeat(8000))),
  'a long word': oneCell(cell('A1', 'a'.repeat(8000))),
  'dollars without end': oneCell(cell('A1', '$'.repeat(8000))),
  'one text of brackets and parentheses': {
    strings: [`<t>${'[a](b)'.repeat(100_000)}</t>`],
    sheets: { Data: rows('<c r="A1" t="s"><v>0</v></c>') },
  },
  'a text of digits without end': { strings: [`<t>${'1,'.repeat(200_000)}x</t>`], sheets: { Data: rows('<c r="A1" t="s"><v>0</v></c>') } },
  'a shared formula over many cells': {
    sheets: {
      Data: rows(
        cell('A1', `A1${'+A1'.repeat(300)}`, 't="shared" ref="A1:A2000" si="0"'),
        ...times(2000, (k) => `<c r="A${k + 2}"><f t="shared" si="0"/><v>1</v></c>`),
      ),
    },
  },
  'many formulas over blocks in one row': {
    sheets: {
      Data: rows(
        repeat(600, (k) => cell(`${column(k)}1`, '1', `t="array" ref="${column(k)}1:${column(k)}9999"`)),
        repeat(600, (k) => `<c r="${column(k)}2"><v>1</v></c>`),
      ),
    },
  },
  'a formula over all cells that there are': oneCell(cell('A1', '1', 't="array" ref="A1:XFD1048576"')),
  'blocks of merged cells over each other': {
    behind: `<mergeCells>${'<mergeCell ref="A1:Z90"/>'.repeat(5000)}</mergeCells>`,
    sheets: { Data: rows('<c r="A1"><v>1</v></c>') },
  },
  'merged to the last cell': { behind: '<mergeCells><mergeCell ref="A1:XFD1048576"/></mergeCells>' },
  'rows in groups within groups': {
    sheets: {
      Data: `${repeat(5000, (k) => `<row r="${k + 1}" outlineLevel="${k % 8}" hidden="1"/>`)}<row r="5001"><c r="A5001"><v>1</v></c></row>`,
    },
  },
  'columns over and over': { before: `<cols>${'<col min="1" max="16384" width="9" style="0"/>'.repeat(300)}</cols>` },
  'rules without end': {
    behind: `<conditionalFormatting sqref="A1:A9">${'<cfRule type="cellIs" priority="1" operator="equal"><formula>1</formula></cfRule>'.repeat(4000)}</conditionalFormatting>`,
    sheets: { Data: rows('<c r="A1"><v>1</v></c>') },
  },
  'a rule over blocks without end': {
    behind: `<conditionalFormatting sqref="${'A1:B9 '.repeat(20_000)}"><cfRule type="cellIs" priority="1" operator="equal"><formula>1</formula></cfRule></conditionalFormatting>`,
  },
  'names that name names': {
    names: `<definedNames>${repeat(3000, (k) => `<definedName name="N${k}">N${k + 1}+N${k + 1}</definedName>`)}</definedNames>`,
    sheets: { Data: rows(cell('A1', 'N0')) },
  },
  'many sheets': { sheets: Object.fromEntries(times(150, (k) => [`S${k}`, rows('<c r="A1"><v>1</v></c>')])) },
  'too many sheets': { sheets: Object.fromEntries(times(201, (k) => [`S${k}`, ''])) },
  'a row beyond the last': { sheets: { Data: '<row r="1048576"><c r="A1048576"><v>1</v></c></row>' } },
  'a column beyond the last': oneCell('<c r="XFD1"><v>1</v></c>'),
  'rows far apart without cells': { sheets: { Data: repeat(2000, (k) => `<row r="${500 * k + 1}" ht="20"/>`) } },
  'looks without end': {
    styles: `<fonts><font><sz val="11"/></font></fonts><fills><fill><patternFill/></fill></fills><borders><border/></borders><cellXfs>${'<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>'.repeat(70_000)}</cellXfs>`,
  },
  'a sheet named for what all objects have': { sheets: { constructor: '' } },
  'elements within elements': { behind: `${'<conditionalFormatting>'.repeat(5000)}${'</conditionalFormatting>'.repeat(5000)}` },
  'entities that grow': oneCell('<c r="A1" t="inlineStr"><is><t>&x9;</t></is></c>'),
};

function column(k: number): string {
  return (k < 26 ? '' : String.fromCharCode(64 + Math.floor(k / 26))) + String.fromCharCode(65 + (k % 26));
}

/** A file by hand that has one of most things. */
const full: Made = {
  strings: ['<t>Herd</t>', '<r><t>Long </t></r><r><t>Lane</t></r>', '<t>=1+1</t>'],
  names:
    '<definedNames><definedName name="Rate">Data!$A$1</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Data!$A$1:$C$9</definedName></definedNames>',
  before:
    '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" state="frozen"/></sheetView></sheetViews><cols><col min="1" max="2" width="14"/></cols>',
  behind:
    '<mergeCells><mergeCell ref="A5:B5"/></mergeCells><conditionalFormatting sqref="A1:B9"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>Rate</formula></cfRule></conditionalFormatting><dataValidations><dataValidation type="list" sqref="C1"><formula1>"yes,no"</formula1></dataValidation></dataValidations><hyperlinks><hyperlink ref="A1" location="Data!A1"/></hyperlinks>',
  styles:
    '<numFmts><numFmt numFmtId="164" formatCode="yyyy\\-mm\\-dd"/></numFmts><fonts><font><sz val="11"/><name val="Arial"/></font><font><b/><sz val="10.5"/><color theme="1"/></font></fonts><fills><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFFFEE00"/></patternFill></fill></fills><borders><border/><border><left style="thin"><color rgb="FF000000"/></left></border></borders><cellXfs><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/><xf numFmtId="164" fontId="1" fillId="1" borderId="1"><alignment horizontal="center" wrapText="1"/></xf><xf numFmtId="49" fontId="0" fillId="0" borderId="0"/></cellXfs><dxfs><dxf><fill><patternFill><bgColor rgb="FFFF0000"/></patternFill></fill></dxf></dxfs>',
  sheets: {
    Data: rows(
      '<c r="A1" s="1"><v>45000</v></c><c r="B1" t="s"><v>0</v></c><c r="C1" t="s" s="2"><v>2</v></c>',
      `${cell('A2', 'Rate*2', 't="shared" ref="A2:A3" si="0"')}<c r="B2" t="b"><v>1</v></c><c r="C2" t="inlineStr"><is><t>50%</t></is></c>`,
      '<c r="A3"><f t="shared" si="0"/><v>2</v></c><c r="B3" t="e"><v>#N/A</v></c><c r="C3" t="str"><f>B1&amp;"!"</f><v>Herd!</v></c>',
      `${cell('A4', "SUM('Other one'!A1:A3)")}<c r="B4" t="s"><v>1</v></c>`,
    ),
    'Other one': rows('<c r="A1"><v>1</v></c>', '<c r="A2"><v>2</v></c>', cell('A3', 'LET(x,1,x)')),
  },
};

const wrong = [
  '',
  '-1',
  '0',
  '1e9',
  '99999999999',
  'NaN',
  '__proto__',
  'constructor',
  'A0',
  'XFD1048576',
  '../../x',
  '&#0;',
  '&#xFFFF;',
  '%s',
  '=1',
  "'",
  '[1]',
  '<',
  'true',
  '￿',
];

/** Changes a file somewhere: a part gone, swapped or cut; an attribute, a text, an element or a byte otherwise. */
function mutant(good: Parts, upTo: (count: number) => number): Parts {
  const one = <T>(of: readonly T[]): T => of[upTo(of.length)] as T;
  const parts = { ...good };
  const path = one(Object.keys(parts).filter((name) => /\.(xml|rels)$/.test(name)));
  const xml = decoder.decode(parts[path]);
  const put = (changed: string): void => {
    parts[path] = encoder.encode(changed);
  };
  const at = (pattern: RegExp, change: (found: RegExpExecArray) => string): void => {
    const all = [...xml.matchAll(pattern)];
    if (all.length === 0) return;
    const found = one(all);
    put(xml.slice(0, found.index) + change(found) + xml.slice(found.index + found[0].length));
  };
  const changes: readonly (() => void)[] = [
    () => void delete parts[path],
    () => put(xml.slice(0, upTo(xml.length))),
    () => put(decoder.decode(parts[one(Object.keys(parts))])),
    () => at(/="[^"]*"/g, () => `="${one(wrong)}"`),
    () => at(/="[^"]*"/g, () => `="${one(wrong)}"`),
    () => at(/>[^<]+</g, () => `>${one(wrong)}<`),
    () => at(/ [\w:]+="[^"]*"/g, () => ''),
    () => at(/<\w+[^>]*\/>/g, ([element]) => element.repeat(1 + upTo(2000))),
    () => at(/<\w+[^>]*\/>/g, () => ''),
    () => at(/<(\/?)(\w+)/g, ([, slash, name]) => `<${slash}x:${name}`),
    () => put(xml.replaceAll(/<(\/?)(\w)/g, '<$1x:$2')),
    () => {
      const bytes = Uint8Array.from(parts[path] as Uint8Array);
      if (bytes.length > 0) bytes[upTo(bytes.length)] = upTo(256);
      parts[path] = bytes;
    },
  ];
  one(changes)();
  return parts;
}

/** Hostile spreadsheet files, the same for the same seed: senseless ones, and good ones with a change or a few. */
export function hostileXlsx(good: Readonly<Record<string, Parts>>, count: number, seed = 11): readonly HostileXlsx[] {
  const random = xoroshiro128plus(seed);
  const upTo = (below: number): number => uniformInt(random, 0, Math.max(0, below - 1));
  const all = Object.entries({ 'by hand': xlsxParts(full), ...good });
  const fixed = Object.entries(senseless).map(([name, made]) => ({ name, bytes: xlsxMade(made) }));
  const mutants = times(count - fixed.length, (k): HostileXlsx => {
    const [from, parts] = all[k % all.length] as (typeof all)[number];
    const changed = times(1 + upTo(3), () => 0).reduce((file) => mutant(file, upTo), parts);
    const bytes = zipSync(changed);
    // Now and then the archive itself is broken.
    const broken = k % 12 === 0 ? bytes.map((byte, at) => (at === upTo(bytes.length) ? byte ^ 255 : byte)) : bytes;
    return { name: `${from}, change ${k + 1}`, bytes: k % 25 === 0 ? broken.slice(0, upTo(broken.length)) : broken };
  });
  return [...fixed, ...mutants];
}
