import { strToU8, zipSync } from 'fflate';

/** What a hand-made spreadsheet file holds; what is not given is as a program writes it that writes no more than it must. */
export interface Made {
  /** The rows of each sheet, as they stand in `sheetData` (ECMA-376 part 1, 18.3.1.80), or with `raw` all behind `worksheet`. */
  readonly sheets?: Readonly<Record<string, string>>;
  /** What stands behind `sheetData` of the first sheet. */
  readonly behind?: string;
  /** What stands before `sheetData` of the first sheet. */
  readonly before?: string;
  readonly strings?: readonly string[];
  readonly styles?: string;
  /** `definedNames` and what else stands behind `sheets` in the workbook part. */
  readonly names?: string;
  readonly workbookPr?: string;
  readonly others?: Readonly<Record<string, string>>;
  readonly macros?: boolean;
}

const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
const relations = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const contentType = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
const xml = (content: string): Uint8Array<ArrayBuffer> => strToU8(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>${content}`);
const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

const plainStyles = `<fonts count="1"><font><sz val="11"/><name val="Arial"/></font></fonts>
<fills count="1"><fill><patternFill patternType="none"/></fill></fills><borders count="1"><border/></borders>
<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellXfs>`;

/** The parts of a spreadsheet file by their place in its archive. */
export function xlsxParts(made: Made): Record<string, Uint8Array<ArrayBuffer>> {
  const sheets = Object.entries(made.sheets ?? { Data: '' });
  const strings = made.strings ?? [];
  const kind = made.macros ? 'application/vnd.ms-excel.sheet.macroEnabled.main+xml' : `${contentType}.sheet.main+xml`;
  const part = (name: string, type: string): string => `<Override PartName="${name}" ContentType="${type}"/>`;
  return {
    '[Content_Types].xml': xml(
      `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">${part('/xl/workbook.xml', kind)}${part('/xl/styles.xml', `${contentType}.styles+xml`)}${part('/xl/sharedStrings.xml', `${contentType}.sharedStrings+xml`)}${sheets.map((_, k) => part(`/xl/worksheets/sheet${k + 1}.xml`, `${contentType}.worksheet+xml`)).join('')}</Types>`,
    ),
    '_rels/.rels': xml(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="${relations}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    ),
    'xl/workbook.xml': xml(
      `<workbook ${main} xmlns:r="${relations}">${made.workbookPr ?? ''}<sheets>${sheets.map(([name], k) => `<sheet name="${escaped(name)}" sheetId="${k + 1}" r:id="rId${k + 1}"/>`).join('')}</sheets>${made.names ?? ''}</workbook>`,
    ),
    'xl/_rels/workbook.xml.rels': xml(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${sheets.map((_, k) => `<Relationship Id="rId${k + 1}" Type="${relations}/worksheet" Target="worksheets/sheet${k + 1}.xml"/>`).join('')}<Relationship Id="rId901" Type="${relations}/styles" Target="styles.xml"/><Relationship Id="rId902" Type="${relations}/sharedStrings" Target="sharedStrings.xml"/></Relationships>`,
    ),
    'xl/styles.xml': xml(`<styleSheet ${main}>${made.styles ?? plainStyles}</styleSheet>`),
    'xl/sharedStrings.xml': xml(`<sst ${main}>${strings.map((entry) => `<si>${entry}</si>`).join('')}</sst>`),
    ...Object.fromEntries(
      sheets.map(([, rows], k) => [
        `xl/worksheets/sheet${k + 1}.xml`,
        xml(
          `<worksheet ${main} xmlns:r="${relations}">${k === 0 ? (made.before ?? '') : ''}<sheetData>${rows}</sheetData>${k === 0 ? (made.behind ?? '') : ''}</worksheet>`,
        ),
      ]),
    ),
    ...Object.fromEntries(Object.entries(made.others ?? {}).map(([path, content]) => [path, strToU8(content)])),
  };
}

/** A small spreadsheet file, written by hand after ECMA-376 part 1. */
export const xlsxMade = (made: Made): Uint8Array<ArrayBuffer> => zipSync(xlsxParts(made));

/** One row, or several, of cells given as they stand in the file. */
export const rows = (...lines: readonly string[]): string => lines.map((cells, k) => `<row r="${k + 1}">${cells}</row>`).join('');
