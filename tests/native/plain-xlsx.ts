import { strToU8, zipSync } from 'fflate';
import { placeOf } from '../../src/workbook/grid.ts';
import type { Sheet, SheetCell, Workbook } from '../../src/workbook/model.ts';

const schemas = 'http://schemas.openxmlformats.org';
const main = `${schemas}/spreadsheetml/2006/main`;
const office = `${schemas}/officeDocument/2006/relationships`;

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

function cellXml(address: string, { content }: SheetCell): string {
  if (content === '') return '';
  if (typeof content === 'number') return `<c r="${address}"><v>${content}</v></c>`;
  const text = String(content);
  if (text.startsWith('=')) return `<c r="${address}"><f>${escaped(text.slice(1))}</f></c>`;
  return `<c r="${address}" t="inlineStr"><is><t>${escaped(text)}</t></is></c>`;
}

function sheetXml({ cells }: Sheet): string {
  const rows = new Map<number, [column: number, xml: string][]>();
  for (const [address, cell] of Object.entries(cells)) {
    const { row, column } = placeOf(address);
    rows.set(row, [...(rows.get(row) ?? []), [column, cellXml(address, cell)]]);
  }
  const written = [...rows]
    .sort(([a], [b]) => a - b)
    .map(([row, inRow]) => {
      const cellsXml = inRow.sort(([a], [b]) => a - b).map(([, xml]) => xml);
      return `<row r="${row + 1}">${cellsXml.join('')}</row>`;
    });
  return `<worksheet xmlns="${main}"><sheetData>${written.join('')}</sheetData></worksheet>`;
}

/** The contents of a workbook as the smallest file that a spreadsheet program opens (ECMA-376 part 1), without looks and without any value worked out. */
export function plainXlsx({ sheets }: Workbook): Uint8Array {
  const each = (write: (sheet: Sheet, k: number) => string): string => sheets.map(write).join('');
  const types = 'application/vnd.openxmlformats-officedocument.spreadsheetml';
  const parts: Record<string, string> = {
    '[Content_Types].xml': `<Types xmlns="${schemas}/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Override PartName="/xl/workbook.xml" ContentType="${types}.sheet.main+xml"/>${each((_, k) => `<Override PartName="/xl/worksheets/sheet${k}.xml" ContentType="${types}.worksheet+xml"/>`)}</Types>`,
    '_rels/.rels': `<Relationships xmlns="${schemas}/package/2006/relationships"><Relationship Id="book" Type="${office}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml': `<workbook xmlns="${main}" xmlns:r="${office}"><sheets>${each(({ name }, k) => `<sheet name="${name}" sheetId="${k + 1}" r:id="sheet${k}"/>`)}</sheets></workbook>`,
    'xl/_rels/workbook.xml.rels': `<Relationships xmlns="${schemas}/package/2006/relationships">${each((_, k) => `<Relationship Id="sheet${k}" Type="${office}/worksheet" Target="worksheets/sheet${k}.xml"/>`)}</Relationships>`,
  };
  sheets.forEach((sheet, k) => {
    parts[`xl/worksheets/sheet${k}.xml`] = sheetXml(sheet);
  });
  return zipSync(
    Object.fromEntries(Object.entries(parts).map(([path, xml]) => [path, strToU8(`<?xml version="1.0" encoding="UTF-8"?>\n${xml}`)])),
  );
}
