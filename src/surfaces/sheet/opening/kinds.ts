/** What a file is by what stands in it; its name may say anything. */
export type Kind = 'copy' | 'xlsx' | { readonly is: string };

const saveAs = 'open it in a spreadsheet program, save it there as .xlsx and open that here';

const beginnings: readonly (readonly [readonly number[], string])[] = [
  [[0xd0, 0xcf, 0x11, 0xe0], `it is an old .xls spreadsheet, or one with a password; ${saveAs}, without a password`],
  [[0x25, 0x50, 0x44, 0x46], 'it is a PDF, which holds a picture of a page and no cells; ask for the spreadsheet that it was made from'],
  [[0x89, 0x50, 0x4e, 0x47], 'it is a picture'],
  [[0xff, 0xd8, 0xff], 'it is a picture'],
  [[0x47, 0x49, 0x46, 0x38], 'it is a picture'],
  [[0x1f, 0x8b], 'it is a packed .gz file; unpack it first'],
  [[0x52, 0x61, 0x72, 0x21], 'it is a packed .rar file; unpack it first'],
  [[0x37, 0x7a, 0xbc, 0xaf], 'it is a packed .7z file; unpack it first'],
];

/** An archive by one of the names in it, which stand in it as they are. */
const archives: readonly (readonly [RegExp, Kind])[] = [
  [/opendocument\.spreadsheet/, { is: `it is an .ods spreadsheet; ${saveAs}` }],
  [/opendocument\./, { is: 'it is a document or drawing, not a spreadsheet' }],
  [/xl\/workbook\.bin/, { is: `it is an .xlsb spreadsheet; ${saveAs}` }],
  [/Index\/(Document\.iwa|Tables\/)/, { is: `it is a .numbers spreadsheet; ${saveAs}` }],
  [/word\/document\.xml/, { is: 'it is a .docx document, not a spreadsheet' }],
  [/ppt\/presentation\.xml/, { is: 'it is a .pptx presentation, not a spreadsheet' }],
  [/\[Content_Types\]\.xml|xl\//i, 'xlsx'],
];

const csv = `it is a table as plain text (.csv or the like); ${saveAs}, or copy its cells there and paste them here`;

const latin = (bytes: Uint8Array): string => new TextDecoder('latin1').decode(bytes);

/** Names of an archive's parts: the first stands at its beginning, all of them at its end. */
const ends = 65_536;

function textKind(bytes: Uint8Array): Kind {
  const start = latin(bytes.subarray(0, 4096))
    .replace(/^\u00ef\u00bb\u00bf/, '')
    .trimStart();
  if (start.startsWith('{')) return 'copy';
  if (/^<(!doctype html|html|table)/i.test(start)) return { is: `it is a web page; ${saveAs}` };
  if (start.startsWith('<')) return { is: `it is an .xml file; ${saveAs}` };
  if (start === '' || start.includes('\0')) return { is: start === '' ? 'it is empty' : 'it is no spreadsheet' };
  return /[,;\t].*[\r\n]/.test(start) ? { is: csv } : { is: 'it is plain text, not a copy saved from this page' };
}

/** What is opened here, or what the file is and what to do with it, in words that follow a colon. */
export function kindOf(bytes: Uint8Array): Kind {
  const [, is] = beginnings.find(([letters]) => letters.every((letter, k) => bytes[k] === letter)) ?? [];
  if (is !== undefined) return { is };
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) return textKind(bytes);
  const names = latin(bytes.subarray(0, ends)) + latin(bytes.subarray(-ends));
  return (
    archives.find(([name]) => name.test(names))?.[1] ?? { is: 'it is a packed .zip file; unpack it first and open the spreadsheet in it' }
  );
}
