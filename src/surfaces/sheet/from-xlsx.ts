import { helpers, type Locale, Model, type WorkbookData } from '@odoo/o-spreadsheet';
import { strFromU8, unzipSync } from 'fflate';
import { Unreadable } from './readable.ts';
import { most, workbookShape } from './workbook-shape.ts';

/** Said of every workbook that comes from a spreadsheet file. */
export const asFarAsRead =
  'It was opened as far as this page reads spreadsheet files: values, formulas and formats. Charts, pictures, links, pivot tables and macros were left out, and what the file holds as a value, such as the answers of our own functions, stays a value. To go on with those, open a copy saved from this page.';

const damaged = 'the file is damaged or is no .xlsx spreadsheet';
const tooMuch = 'the file holds more than this page opens';

/** The parts that hold cells and their looks (ECMA-376 part 1, 12.3); the grid's reader stops on some of the others. */
const ownParts = /^(\[Content_Types\]\.xml|_rels\/\.rels|xl\/(_rels\/)?(workbook|styles|sharedStrings)\.xml(\.rels)?)$/;
const otherParts = /^xl\/(theme|worksheets)\/[\w-]+\.xml$/;
const leftOut = ['drawing', 'legacyDrawing', 'picture', 'tableParts', 'hyperlinks', 'oleObjects', 'controls', 'extLst'];

const isKept = (path: string): boolean => ownParts.test(path) || otherParts.test(path);

class TooMuch extends Error {}

/** The parts that are kept, as text. An archive that claims more room than any workbook that opens is not unpacked. */
function unpacked(archive: Uint8Array): Map<string, string> {
  let room = most.letters;
  const filter = ({ name, originalSize }: { name: string; originalSize: number }): boolean => {
    if (!isKept(name)) return false;
    room -= originalSize;
    if (room < 0) throw new TooMuch();
    return true;
  };
  return new Map(Object.entries(unzipSync(archive, { filter })).map(([path, bytes]) => [path, strFromU8(bytes)]));
}

function parsed(xml: string): Document {
  // A document type may define entities that grow without end; no spreadsheet part has one (ECMA-376 part 2, 6.2.5).
  if (xml.includes('<!DOCTYPE') || xml.includes('\0')) throw new SyntaxError('not a part of a spreadsheet');
  const part = new DOMParser().parseFromString(xml, 'application/xml');
  if (part.querySelector('parsererror')) throw new SyntaxError('not well-formed');
  return part;
}

const all = (part: Document, name: string): readonly Element[] => [...part.getElementsByTagNameNS('*', name)];

const corner = /^[A-Z]{1,3}[1-9]\d{0,6}$/;

/** How far down and right a block reaches, and how many cells it covers. */
function sizeOf(reference: string): { readonly rows: number; readonly columns: number; readonly area: number } {
  if (!reference.split(':').every((end) => corner.test(end))) throw new SyntaxError('not an address');
  const { left, top, right, bottom } = helpers.toZone(reference);
  return { rows: bottom + 1, columns: right + 1, area: (right - left + 1) * (bottom - top + 1) };
}

/** Leaves out what the grid's reader stops on, and refuses a sheet on which it would hang: it walks through every block. */
function trimmed(worksheet: Document): Document {
  for (const name of leftOut) for (const element of all(worksheet, name)) element.remove();
  // Some programs describe the last row that a sheet could have, though nothing is in it.
  for (const row of all(worksheet, 'row')) if (row.childElementCount === 0) row.remove();
  const cells = all(worksheet, 'c').map((cell) => sizeOf(cell.getAttribute('r') ?? ''));
  const blocks = [...all(worksheet, 'mergeCell'), ...all(worksheet, 'f').filter((formula) => formula.hasAttribute('ref'))];
  const covered = blocks.reduce((sum, block) => sum + sizeOf(block.getAttribute('ref') ?? '').area, cells.length);
  const largest = (sizes: readonly number[]): number => sizes.reduce((most, one) => Math.max(most, one), 1);
  const rows = largest([...cells.map((cell) => cell.rows), ...all(worksheet, 'row').map((row) => Number(row.getAttribute('r')))]);
  const area = rows * largest(cells.map(({ columns }) => columns));
  if (!(covered <= most.cells && area <= most.cells && rows <= 10_000 && all(worksheet, 'col').length <= most.columns)) throw new TooMuch();
  return worksheet;
}

function checked(path: string, xml: string): string {
  const part = parsed(xml);
  if (path.startsWith('xl/worksheets/')) trimmed(part);
  if (path === '[Content_Types].xml') {
    for (const entry of all(part, 'Override')) if (!isKept((entry.getAttribute('PartName') ?? '').slice(1))) entry.remove();
  }
  if (path === 'xl/workbook.xml' && all(part, 'sheet').some((sheet) => (sheet.getAttribute('name') ?? '') in Object.prototype))
    throw new SyntaxError('a sheet has a name that stands for something else');
  return new XMLSerializer().serializeToString(part);
}

/** The workbook in a spreadsheet file, as far as the grid reads it; throws an error with a sentence where it cannot. */
export function readXlsx(archive: Uint8Array, locale: Locale): WorkbookData {
  try {
    const parts = [...unpacked(archive)].map(([path, xml]) => [path, checked(path, xml)]);
    // The grid takes anything else for an empty workbook of its own.
    if (!parts.some(([path]) => path === '[Content_Types].xml')) throw new SyntaxError('no list of parts');
    // Without a page behind it nothing is worked out yet, so that the shape is looked at first.
    const data = new Model(Object.fromEntries(parts), { mode: 'export_verification' }).exportData();
    if (!workbookShape.safeParse(data).success) throw new TooMuch();
    return { ...data, settings: { ...data.settings, locale } };
  } catch (fault) {
    throw new Unreadable(fault instanceof TooMuch ? tooMuch : damaged);
  }
}
