import { type Locale, Model, type WorkbookData } from '@odoo/o-spreadsheet';
import { workbookShape } from '../workbook-shape.ts';
import { lettersOf } from './formula.ts';
import type { Loss } from './tally.ts';
import type { SheetRead, WorkbookRead } from './workbook.ts';
import { escaped } from './xml.ts';

const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const contentType = 'application/vnd.openxmlformats-officedocument';

type Losses = Partial<Record<Loss, number>>;

/** What of a file's looks the grid's own reader is asked to take. */
interface Takes {
  readonly rules: boolean;
  readonly looks: boolean;
}

/** Looks are tried out on a sheet of their own, so many a row. */
const across = 500;
const looksSheet = 'looks of cells';
const cellOfLook = (look: number): string => lettersOf(1 + (look % across)) + (1 + Math.floor(look / across));

function looksRows(count: number): string {
  const cell = (look: number): string => `<c r="${cellOfLook(look)}" s="${look}"/>`;
  const inRow = (row: number): number[] => Array.from({ length: Math.min(across, count - row * across) }, (_, k) => row * across + k);
  return Array.from({ length: Math.ceil(count / across) }, (_, row) => `<row r="${row + 1}">${inRow(row).map(cell).join('')}</row>`).join(
    '',
  );
}

/** A spreadsheet file of our own making with the rules and looks of the one that was read, and no cell of it: what the grid's reader is good at. */
function framesOf(
  { sheets, looks, theme }: WorkbookRead,
  takes: { readonly rules: boolean; readonly looks: boolean },
): Record<string, string> {
  const names = [...sheets.map(({ name }) => name), looksSheet];
  const part = (name: string, type: string): string => `<Override PartName="/${name}" ContentType="${contentType}.${type}+xml"/>`;
  const types = names.map((_, k) => part(`xl/worksheets/sheet${k + 1}.xml`, 'spreadsheetml.worksheet'));
  const links = names.map((_, k) => `<Relationship Id="r${k + 1}" Type="${relations}/worksheet" Target="worksheets/sheet${k + 1}.xml"/>`);
  const ruled = ({ head, colourRules, entryRules }: SheetRead): string =>
    `${head}<sheetData/>${takes.rules ? colourRules + entryRules : ''}`;
  const inside = [...sheets.map(ruled), `<sheetData>${takes.looks ? looksRows(looks.count) : ''}</sheetData>`];
  return {
    '[Content_Types].xml': `<Types>${part('xl/workbook.xml', 'spreadsheetml.sheet.main')}${part('xl/styles.xml', 'spreadsheetml.styles')}${theme ? part('xl/theme/theme1.xml', 'theme') : ''}${types.join('')}</Types>`,
    'xl/workbook.xml': `<workbook ${main} xmlns:r="${relations}"><sheets>${names.map((name, k) => `<sheet name="${escaped(name)}" sheetId="${k + 1}" r:id="r${k + 1}"/>`).join('')}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships>${links.join('')}</Relationships>`,
    'xl/styles.xml': takes.looks
      ? looks.xml
      : `<styleSheet ${main}><cellXfs><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellXfs></styleSheet>`,
    ...(theme && { 'xl/theme/theme1.xml': theme }),
    ...Object.fromEntries(inside.map((content, k) => [`xl/worksheets/sheet${k + 1}.xml`, `<worksheet ${main}>${content}</worksheet>`])),
  };
}

/** What one cell of a block holds in the grid's data. */
function byCell(blocks: Record<string, number>): Map<string, number> {
  const found = new Map<string, number>();
  for (const [block, id] of Object.entries(blocks)) {
    const [, left = '', top = '', right = left, bottom = top] = /^([A-Z]+)(\d+)(?::([A-Z]+)(\d+))?$/.exec(block) ?? [];
    const number = (letters: string): number => [...letters].reduce((sum, one) => 26 * sum + one.charCodeAt(0) - 64, 0);
    for (let row = Number(top); row <= Number(bottom); row++)
      for (let column = number(left); column <= number(right); column++) found.set(lettersOf(column) + row, id);
  }
  return found;
}

function put(read: WorkbookRead, takes: Takes, losses: Losses, locale: Locale): WorkbookData {
  // Without a page behind it nothing is worked out.
  const data = new Model(framesOf(read, takes), { mode: 'export_verification' })._exportData(false) as WorkbookData;
  const tried = data.sheets.at(-1) as WorkbookData['sheets'][number];
  const [styles, formats, borders] = [tried.styles, tried.formats, tried.borders].map((blocks) => byCell(blocks as Record<string, number>));
  const all = { ...data.formats };
  const dayFormat = { day: locale.dateFormat, 'day and time': `${locale.dateFormat} ${locale.timeFormat}`, own: locale.dateFormat };
  const formatOf = (look: number): number | undefined => {
    const [known, day] = [formats?.get(cellOfLook(look)), read.looks.dates[look] ?? ''];
    if (day === '' || (day === 'own' && known !== undefined)) return known;
    const found = Object.entries(all).find(([, form]) => form === dayFormat[day])?.[0];
    if (found !== undefined) return Number(found);
    const id = Math.max(0, ...Object.keys(all).map(Number)) + 1;
    all[id] = dayFormat[day];
    return id;
  };
  const looks = Array.from({ length: read.looks.count }, (_, look) => ({
    style: styles?.get(cellOfLook(look)),
    format: formatOf(look),
    border: borders?.get(cellOfLook(look)),
  }));
  const without = looks.filter(({ format }, look) => format === undefined && read.looks.formats[look]).length;
  losses['number formats'] = without;
  losses.looks = takes.looks ? 0 : 1;
  const onBlocks = (sheet: SheetRead, kind: 'style' | 'format' | 'border'): Record<string, number> =>
    Object.fromEntries(
      Object.entries(sheet.looks).flatMap(([block, look]) => {
        const id = looks[look]?.[kind];
        return id === undefined ? [] : [[block, id]];
      }),
    );
  const sheets = read.sheets.map((sheet, k) => ({
    ...(data.sheets[k] as WorkbookData['sheets'][number]),
    name: sheet.name,
    isVisible: sheet.isVisible || !read.sheets.some(({ isVisible }) => isVisible),
    rowNumber: sheet.rowNumber,
    colNumber: sheet.colNumber,
    cells: sheet.contents,
    styles: onBlocks(sheet, 'style'),
    formats: onBlocks(sheet, 'format'),
    borders: onBlocks(sheet, 'border'),
    merges: [...sheet.merges],
    panes: sheet.panes,
    rows: sheet.rows,
    cols: sheet.cols,
    headerGroups: { ROW: [...sheet.headerGroups.ROW], COL: [...sheet.headerGroups.COL] },
  }));
  const count = (kind: 'conditionalFormats' | 'dataValidationRules'): number => sheets.reduce((sum, sheet) => sum + sheet[kind].length, 0);
  losses['colour rules'] = Math.max(0, read.rules.colour - count('conditionalFormats'));
  losses['entry rules'] = Math.max(0, read.rules.entry - count('dataValidationRules'));
  return { ...data, sheets, formats: all, settings: { ...data.settings, locale } } as WorkbookData;
}

/**
 * The workbook for the grid, and what did not come along in all. The grid's own reader may stop on a rule or a look that it
 * does not know: the cells are worth more than those, so it is then asked again without.
 */
export function assemble(read: WorkbookRead, locale: Locale): { readonly data: WorkbookData; readonly losses: Losses } {
  for (const takes of [
    { rules: true, looks: true },
    { rules: false, looks: true },
    { rules: false, looks: false },
  ]) {
    try {
      const losses = { ...read.losses };
      const data = put(read, takes, losses, locale);
      if (workbookShape.safeParse(data).success) return { data, losses };
    } catch {}
  }
  throw new SyntaxError('no workbook that the grid reads');
}
