import { helpers, type WorkbookData } from '@odoo/o-spreadsheet';
import * as z from 'zod';

/** Sheets of this size still open in a moment; the grid loads a damaged size without a word and hangs. */
const most = { sheets: 60, rows: 20_000, columns: 702, cells: 200_000, characters: 20_000_000 };

const sheet = z
  .looseObject({
    id: z.string().min(1),
    name: z.string().min(1),
    rowNumber: z.int().min(1).max(most.rows),
    colNumber: z.int().min(1).max(most.columns),
    cells: z.record(z.string().regex(/^[A-Z]{1,2}[1-9]\d{0,4}(:[A-Z]{1,2}[1-9]\d{0,4})?$/), z.union([z.string(), z.looseObject({})])),
    merges: z.array(z.string()),
    figures: z.array(z.looseObject({ id: z.string(), tag: z.string() })),
  })
  .refine(({ cells }) => Object.keys(cells).length <= most.cells)
  .refine(({ cells, rowNumber, colNumber }) =>
    Object.keys(cells).every((address) => {
      const { right, bottom } = helpers.toZone(address);
      return right < colNumber && bottom < rowNumber;
    }),
  );

const workbook = z
  .looseObject({
    version: z.string(),
    sheets: z.array(sheet).min(1).max(most.sheets),
    styles: z.record(z.string(), z.looseObject({})),
    formats: z.record(z.string(), z.string()),
    borders: z.record(z.string(), z.looseObject({})),
    settings: z.looseObject({ locale: z.looseObject({ code: z.string(), decimalSeparator: z.string(), formulaArgSeparator: z.string() }) }),
  })
  .refine(({ sheets }) => new Set(sheets.map(({ id }) => id)).size === sheets.length);

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
