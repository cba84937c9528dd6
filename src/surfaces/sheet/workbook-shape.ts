import { helpers } from '@odoo/o-spreadsheet';
import * as z from 'zod/mini';
import { most } from './most.ts';

export { most };

const text = z.string().check(z.minLength(1), z.maxLength(most.lettersInName));
/** The grid files things under these names in plain objects: `__proto__` would change every object of the page. */
const id = text.check(z.refine((name) => !(name in Object.prototype)));
const anyText = z
  .string()
  .check(z.refine((content) => content.length <= (content.startsWith('=') ? most.lettersInFormula : most.lettersInCell)));
const count = (lowest: number, highest: number) => z.int().check(z.minimum(lowest), z.maximum(highest));
const pixels = z.number().check(z.minimum(-10_000), z.maximum(10_000));
const index = count(0, most.rows);
const yesNo = z.boolean();
const maybe = z.optional;
const texts = z.array(anyText);
const zone = z.string().check(z.regex(/^[A-Z]{1,3}[1-9]\d{0,6}(:[A-Z]{1,3}[1-9]\d{0,6})?$/, { abort: true }));
const area = (address: string): number => {
  const { left, top, right, bottom } = helpers.toZone(address);
  return (right - left + 1) * (bottom - top + 1);
};

/** `A1:B9`, `A:A`, `Plan!B5`. The grid passes over what it cannot read, but walks through any block however large. */
const range = text.check(
  z.refine((reference) => {
    const address = reference.slice(reference.lastIndexOf('!') + 1).replaceAll('$', '');
    return !z.safeParse(zone, address).success || area(address) <= most.cells;
  }),
);
const ranges = z.array(range);

const style = z.looseObject({
  bold: maybe(yesNo),
  italic: maybe(yesNo),
  strikethrough: maybe(yesNo),
  underline: maybe(yesNo),
  align: maybe(text),
  verticalAlign: maybe(text),
  wrapping: maybe(text),
  fillColor: maybe(z.string()),
  textColor: maybe(z.string()),
  fontSize: maybe(z.number().check(z.minimum(1), z.maximum(400))),
  rotation: maybe(z.number()),
});

const side = maybe(z.object({ style: text, color: z.string() }));

/** What the grid draws in a place that it cannot draw takes the whole page down, so what it reads is told part by part. */
const compared = [
  ...(['containsText', 'notContainsText', 'isEqual', 'isNotEqual', 'isGreaterThan', 'isGreaterOrEqualTo', 'isLessThan'] as const),
  ...(['isLessOrEqualTo', 'isBetween', 'isNotBetween', 'customFormula'] as const),
  ...(['dateIs', 'dateIsBefore', 'dateIsAfter', 'dateIsOnOrBefore', 'dateIsOnOrAfter'] as const),
] as const;
const forColours = ['beginsWithText', 'endsWithText', 'isEmpty', 'isNotEmpty', 'top10', 'uniqueValues', 'duplicateValues'] as const;
const forEntries = [
  ...(['isEqualText', 'isEmail', 'isLink', 'isBoolean', 'isValueInList', 'isValueInRange'] as const),
  ...(['dateIsBetween', 'dateIsNotBetween', 'dateIsValid'] as const),
] as const;
const threshold = z.looseObject({ type: text, value: maybe(anyText) });
const colourRule = z.discriminatedUnion('type', [
  z.looseObject({ type: z.literal('CellIsRule'), operator: z.enum([...compared, ...forColours]), values: texts, style }),
  z.looseObject({ type: z.literal('ColorScaleRule'), minimum: threshold, maximum: threshold, midpoint: maybe(threshold) }),
  z.looseObject({ type: z.literal('DataBarRule'), color: z.number(), rangeValues: maybe(range) }),
  z.looseObject({
    type: z.literal('IconSetRule'),
    icons: z.object({ upper: text, middle: text, lower: text }),
    upperInflectionPoint: threshold,
    lowerInflectionPoint: threshold,
  }),
]);

const number = z.string().check(z.regex(/^\d{1,6}$/));
const headers = z.record(number, z.looseObject({ size: maybe(z.number().check(z.minimum(0), z.maximum(10_000))), isHidden: maybe(yesNo) }));
const groups = z.array(z.object({ start: index, end: index, isFolded: maybe(yesNo) }));

const heading = maybe(z.looseObject({ text: maybe(anyText), fontSize: maybe(count(1, 400)) }));
const axis = maybe(z.looseObject({ title: heading }));
const dataSet = z.looseObject({ dataSetId: id, dataRange: maybe(range) });
const chart = z.looseObject({
  type: text,
  chartId: id,
  title: heading,
  axesDesign: maybe(z.looseObject({ x: axis, y: axis, y1: axis })),
  dataSource: maybe(z.looseObject({ type: text, dataSets: maybe(z.array(dataSet)), labelRange: maybe(range) })),
  dataSetStyles: maybe(z.record(id, z.looseObject({ label: maybe(anyText), backgroundColor: maybe(z.string()) }))),
});

/** No image: one that is not in the file itself would be fetched. */
const drawn = { id, col: index, row: index, offset: z.object({ x: pixels, y: pixels }), width: pixels, height: pixels };
const figure = z.discriminatedUnion('tag', [
  z.looseObject({ ...drawn, tag: z.literal('chart'), data: chart }),
  z.looseObject({ ...drawn, tag: z.literal('carousel'), data: z.looseObject({}) }),
]);

/** Keys are read as numbers by name; the grid writes cells alike as one entry over a block. */
const onZones = <T extends z.ZodMiniType>(value: T) => z.record(zone, value);

const sheet = z
  .looseObject({
    id,
    name: text,
    rowNumber: count(1, most.rows),
    colNumber: count(1, most.columns),
    isVisible: maybe(yesNo),
    areGridLinesVisible: maybe(yesNo),
    cells: onZones(z.union([anyText, z.looseObject({ N: maybe(anyText), S: maybe(texts), R: maybe(anyText) })])),
    styles: onZones(z.number()),
    formats: onZones(z.number()),
    borders: onZones(z.number()),
    merges: z.array(zone).check(z.maxLength(most.merges)),
    rows: headers,
    cols: headers,
    headerGroups: maybe(z.object({ ROW: groups, COL: groups })),
    panes: maybe(z.object({ xSplit: index, ySplit: index })),
    conditionalFormats: z.array(z.looseObject({ id, ranges, rule: colourRule })),
    dataValidationRules: z.array(
      z.looseObject({ id, ranges, criterion: z.looseObject({ type: z.enum([...compared, ...forEntries]), values: texts }) }),
    ),
    tables: z.array(
      z.looseObject({ range: zone, type: maybe(text), config: maybe(z.looseObject({ numberOfHeaders: index, styleId: text })) }),
    ),
    figures: z.array(figure).check(z.maxLength(1000)),
  })
  .check(
    z.refine((data) => {
      const inside = (address: string): boolean => {
        const { left, top, right, bottom } = helpers.toZone(address);
        return left <= right && top <= bottom && right < data.colNumber && bottom < data.rowNumber;
      };
      const filled = Object.keys(data.cells);
      const blocks = [...filled, ...data.merges, ...data.tables.map(({ range }) => range)];
      const { xSplit, ySplit } = data.panes ?? { xSplit: 0, ySplit: 0 };
      return (
        [...blocks, ...Object.keys({ ...data.styles, ...data.formats, ...data.borders })].every(inside) &&
        blocks.reduce((sum, address) => sum + area(address), 0) <= most.cells &&
        data.figures.every(({ col, row }) => col < data.colNumber && row < data.rowNumber) &&
        Object.keys(data.rows).every((row) => Number(row) < data.rowNumber) &&
        Object.keys(data.cols).every((col) => Number(col) < data.colNumber) &&
        xSplit < data.colNumber &&
        ySplit < data.rowNumber
      );
    }),
  );

const allDifferent = (values: readonly string[]): boolean => new Set(values).size === values.length;

/** What the grid saves, as far as it reads it without looking. */
export const workbookShape = z
  .looseObject({
    version: text,
    sheets: z.array(sheet).check(z.minLength(1), z.maxLength(most.sheets)),
    styles: z.record(number, style),
    formats: z.record(number, text),
    borders: z.record(number, z.object({ top: side, bottom: side, left: side, right: side })),
    pivots: maybe(z.record(id, z.looseObject({}))),
    customTableStyles: maybe(z.record(id, z.looseObject({ templateName: text, primaryColor: text, displayName: text }))),
    namedRanges: maybe(z.record(id, text)),
    settings: z.looseObject({
      locale: z.looseObject({
        name: text,
        code: text,
        thousandsSeparator: maybe(z.string()),
        decimalSeparator: text,
        formulaArgSeparator: text,
        dateFormat: text,
        timeFormat: text,
        weekStart: count(0, 7),
      }),
    }),
  })
  .check(
    z.refine(({ sheets }) => allDifferent(sheets.map(({ id }) => id)) && allDifferent(sheets.map(({ name }) => name.toLowerCase()))),
    z.refine(({ sheets }) => allDifferent(sheets.flatMap(({ figures }) => figures.map(({ id }) => id)))),
    z.refine(({ sheets }) => sheets.some(({ isVisible }) => isVisible !== false)),
  );
