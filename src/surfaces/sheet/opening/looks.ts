import { most } from '../most.ts';
import { atMost } from './refusing.ts';
import { childOf, childrenOf, type Element, treeOf, written } from './xml.ts';

/** The looks that a cell may have by their number, as the grid's own reader takes them. */
export interface Looks {
  /** The part without what no cell shows. */
  readonly xml: string;
  readonly count: number;
  /** How each shows a number as a date: in the reader's own form, in one of the file's, or not at all. */
  readonly dates: readonly ('day' | 'day and time' | 'own' | '')[];
  /** Which of them ask for a form of numbers. */
  readonly formats: readonly boolean[];
  /** Of a look that makes text of all that is typed, the one that is alike but for that. */
  readonly untexted: ReadonlyMap<number, number>;
}

/**
 * Number formats that a file names by number alone (ECMA-376 part 1, 18.8.30). The grid knows some of them, writes
 * some otherwise and leaves others out.
 */
const byNumber: Readonly<Record<number, string>> = {
  3: '#,##0',
  4: '#,##0.00',
  11: '0.00E+00',
  15: 'd-mmm-yy',
  16: 'd-mmm',
  17: 'mmm-yy',
  18: 'h:mm AM/PM',
  19: 'h:mm:ss AM/PM',
  20: 'h:mm',
  21: 'h:mm:ss',
  37: '#,##0;(#,##0)',
  38: '#,##0;[Red](#,##0)',
  39: '#,##0.00;(#,##0.00)',
  40: '#,##0.00;[Red](#,##0.00)',
  45: 'mm:ss',
  46: '[h]:mm:ss',
  47: 'mm:ss',
  48: '0.0E+0',
};
const dateNumbers = new Set([15, 16, 17, 18, 19, 20, 21, 45, 46, 47]);

/** Numbers of formats that stand beside those of the file, whose own begin at 164. */
const beside = 60_000;

/** A format with a day, month, year, hour or second outside its quoted texts, escaped letters and colours. */
const showsDate = (code: string): boolean =>
  code !== 'General' &&
  /[dmyhs]/i.test(code.replace(/"[^"]*"|\\.|_.|\*.|\[(?!(?:h+|m+|s+)\])[^\]]*\]/gi, '').replace(/general|e[+-]/gi, ''));

function dateOf(number: number, code: string): Looks['dates'][number] {
  if (number === 14) return 'day';
  if (number === 22) return 'day and time';
  return dateNumbers.has(number) || showsDate(code) ? 'own' : '';
}

/** A form of numbers without the language and calendar that it may name (ECMA-376 part 1, 18.8.31), of which the grid knows none. */
function withoutLanguage(format: Element): Element {
  const formatCode = (format.attributes['formatCode'] ?? 'General').replace(/\[\$([^\]-]*)-[^\]]*\]/g, (_, sign) => sign && `[$${sign}]`);
  return { ...format, attributes: { ...format.attributes, formatCode } };
}

function fontOf(font: Element): Element {
  const children = font.children.map((child) => {
    if (typeof child === 'string' || child.name !== 'sz') return child;
    const size = Number(child.attributes['val']);
    return { ...child, attributes: { val: String(Math.min(400, Math.max(1, Number.isFinite(size) ? size : 11))) } };
  });
  return { ...font, children };
}

/** What a file without a part of looks has: none but the first. */
const none = '<styleSheet><cellXfs><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellXfs></styleSheet>';

export function readLooks(xml: string | undefined): Looks {
  const root = treeOf(xml ?? none);
  const formats = childrenOf(childOf(root, 'numFmts'), 'numFmt');
  const codes = new Map(formats.map(({ attributes }) => [Number(attributes['numFmtId']), attributes['formatCode'] ?? 'General']));
  const all = childrenOf(childOf(root, 'cellXfs'), 'xf');
  atMost(all.length, most.looks, (count, limit) => `the file has ${count} looks of cells, and this page opens up to ${limit}`);
  const texts = all.flatMap(({ attributes }, look) => {
    const number = Number(attributes['numFmtId'] ?? 0);
    return number === 49 || codes.get(number) === '@' ? [look] : [];
  });
  const plain = texts.map((look) => ({ ...(all[look] as Element), attributes: { ...all[look]?.attributes, numFmtId: '0' } }));
  const numbers = [...all, ...plain].map(({ attributes }) => Number(attributes['numFmtId'] ?? 0));
  const added = Object.entries(byNumber).map(([number, formatCode]) => ({
    name: 'numFmt',
    attributes: { numFmtId: String(beside + Number(number)), formatCode },
    children: [],
  }));
  const own = formats.filter(({ attributes }) => Number(attributes['numFmtId']) < beside).map(withoutLanguage);
  const xfs = [...all, ...plain].map((xf, k) => {
    const number = numbers[k] as number;
    return { ...xf, attributes: { ...xf.attributes, numFmtId: String(number in byNumber ? beside + number : number) } };
  });
  const group = (name: string, children: readonly Element[]): Element => ({ name, attributes: {}, children });
  const fonts = childrenOf(childOf(root, 'fonts'), 'font').map(fontOf);
  const rest = ['fills', 'borders', 'dxfs', 'colors'].flatMap((name) => childOf(root, name) ?? []);
  const kept = [group('numFmts', [...own, ...added]), group('fonts', fonts), ...rest, group('cellXfs', xfs)];
  return {
    xml: written(group('styleSheet', kept)),
    count: xfs.length,
    untexted: new Map(texts.map((look, k) => [look, all.length + k])),
    dates: numbers.map((number) => dateOf(number, codes.get(number) ?? 'General')),
    formats: numbers.map((number) => number !== 0 && codes.get(number) !== 'General'),
  };
}
