import { helpers, type WorkbookData } from '@odoo/o-spreadsheet';
import * as z from 'zod/mini';

/** Sheets of this size still open in a moment; the grid loads a damaged size without a word and hangs. */
const most = { sheets: 60, rows: 20_000, columns: 702, cells: 200_000, characters: 20_000_000 };

const text = z.string().check(z.minLength(1));
const count = (highest: number) => z.int().check(z.minimum(1), z.maximum(highest));
const address = z.string().check(z.regex(/^[A-Z]{1,2}[1-9]\d{0,4}(:[A-Z]{1,2}[1-9]\d{0,4})?$/));
const anything = z.looseObject({});

const sheet = z
  .looseObject({
    id: text,
    name: text,
    rowNumber: count(most.rows),
    colNumber: count(most.columns),
    cells: z.record(address, z.union([z.string(), anything])),
    merges: z.array(z.string()),
    figures: z.array(z.looseObject({ id: text, tag: text })),
  })
  .check(
    z.refine(({ cells }) => Object.keys(cells).length <= most.cells),
    z.refine(({ cells, rowNumber, colNumber }) =>
      Object.keys(cells).every((place) => {
        const { right, bottom } = helpers.toZone(place);
        return right < colNumber && bottom < rowNumber;
      }),
    ),
  );

const workbook = z
  .looseObject({
    version: text,
    sheets: z.array(sheet).check(z.minLength(1), z.maxLength(most.sheets)),
    styles: z.record(z.string(), anything),
    formats: z.record(z.string(), z.string()),
    borders: z.record(z.string(), anything),
    settings: z.looseObject({ locale: z.looseObject({ code: text, decimalSeparator: text, formulaArgSeparator: text }) }),
  })
  .check(z.refine(({ sheets }) => new Set(sheets.map(({ id }) => id)).size === sheets.length));

/** A stored or saved workbook, or an error with a sentence: the grid itself takes `{}` for an empty workbook. */
export function readWorkbook(json: string): WorkbookData {
  if (json.length > most.characters) throw new Error('the file is larger than this page opens');
  let data: unknown;
  try {
    data = JSON.parse(json);
  } catch {
    throw new Error('the file is cut short or is not a copy saved from this page');
  }
  if (!workbook.safeParse(data).success) throw new Error('the file is damaged or is not a copy saved from this page');
  return data as WorkbookData;
}
