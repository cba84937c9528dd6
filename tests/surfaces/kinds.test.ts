import { strToU8, zipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import { kindOf } from '../../src/surfaces/sheet/opening/kinds.ts';
import { xlsxMade } from './xlsx-made.ts';

const archive = (names: readonly string[], first = ''): Uint8Array =>
  zipSync({ ...(first && { mimetype: [strToU8(first), { level: 0 }] }), ...Object.fromEntries(names.map((name) => [name, strToU8('x')])) });

// How each kind of file begins, or what its archive holds: from memory of their formats, but for OpenDocument 1.3 part 2, 3.3 and ECMA-376 part 2.
const others: Readonly<Record<string, readonly [Uint8Array, RegExp]>> = {
  '.csv': [strToU8('day,litres\n1,9000\n'), /table as plain text .* save it there as \.xlsx/],
  '.csv with semicolons and a mark before it': [strToU8('\ufeffday;litres\r\n1;9000\r\n'), /table as plain text/],
  '.txt': [strToU8('buy milk'), /plain text, not a copy/],
  '.ods': [
    archive(['content.xml'], 'application/vnd.oasis.opendocument.spreadsheet'),
    /an \.ods spreadsheet; open it .* save it there as \.xlsx/,
  ],
  '.odt': [archive(['content.xml'], 'application/vnd.oasis.opendocument.text'), /not a spreadsheet/],
  '.xls, or .xlsx with a password': [
    new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]),
    /old \.xls spreadsheet, or one with a password/,
  ],
  '.xlsb': [archive(['[Content_Types].xml', 'xl/workbook.bin']), /an \.xlsb spreadsheet/],
  '.docx': [archive(['[Content_Types].xml', 'word/document.xml']), /\.docx document/],
  '.zip': [archive(['herd.xlsx']), /packed \.zip file/],
  '.pdf': [strToU8('%PDF-1.7'), /a PDF/],
  '.png': [new Uint8Array([0x89, 0x50, 0x4e, 0x47]), /a picture/],
  '.html': [strToU8('<!doctype html><p>'), /a web page/],
  'nothing at all': [new Uint8Array(), /empty/],
};

describe('what is picked', () => {
  it.each(Object.entries(others))('%s is called what it is, with what to do', (_, [bytes, words]) => {
    expect(kindOf(bytes)).toMatchObject({ is: expect.stringMatching(words) });
  });

  it('is opened where it is a copy saved from this page or a spreadsheet with or without macros, whatever its name says', () => {
    expect(kindOf(strToU8('{"version":"19.3.2"}'))).toBe('copy');
    expect(kindOf(xlsxMade({}))).toBe('xlsx');
    expect(kindOf(xlsxMade({ macros: true }))).toBe('xlsx');
  });
});
