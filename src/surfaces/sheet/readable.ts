import { helpers, type Model, type WorkbookData } from '@odoo/o-spreadsheet';
import { most } from './most.ts';
import { workbookShape } from './workbook-shape.ts';

/** The first layout of a saved workbook that this page wrote, and the one it writes now. */
const first = '19.3.2';
const current = helpers.createEmptyWorkbookData().version;

/** Version numbers are compared part by part. */
export const isLater = (version: string, than: string): boolean => version.localeCompare(than, 'en', { numeric: true }) > 0;

/** Why a workbook is not opened, in words that follow a colon. */
export class Unreadable extends Error {}

const tooLarge = `the file is larger than ${most.letters.toLocaleString('en-GB')} bytes, the most that this page opens`;

/** Not at fault: a later version of this page wrote it, and opens it. */
export class Later extends Unreadable {}
const longFormula = `the file holds a formula of more than ${most.lettersInFormula.toLocaleString('en-GB')} characters, more than spreadsheet programs take`;
const notOurs = 'the file is damaged or is not a copy saved from this page';

/** As it is written: a text that begins with `=` and does not end in time; what is escaped in it counts as one. */
const holdsLongFormula = new RegExp(String.raw`(?<!\\)"=(?:[^"\\]|\\.){${most.lettersInFormula}}`);

/** The grid stops in its own words on what the shape lets pass. */
export const whyUnreadable = (fault: unknown): string => (fault instanceof Unreadable ? fault.message : notOurs);

/** What a copy holds, in a layout that this page knows, but not looked into yet. */
export function parseCopy(json: string): unknown {
  if (json.length > most.letters) throw new Unreadable(tooLarge);
  let data: unknown;
  try {
    data = JSON.parse(json);
  } catch {
    throw new Unreadable('the file is cut short or is not a copy saved from this page');
  }
  const version = typeof data === 'object' && data !== null && 'version' in data ? String(data.version) : '';
  const known = /^\d{1,4}(\.\d{1,4}){0,3}$/.test(version);
  if (known && isLater(version, current)) throw new Later('the file was saved by a later version of this page; open it there');
  if (!known || isLater(first, version)) throw new Unreadable(notOurs);
  return data;
}

/** A stored or saved workbook, or an error with a sentence: the grid itself takes `{}` for an empty workbook. */
export function readWorkbook(json: string): WorkbookData {
  const data = parseCopy(json);
  if (holdsLongFormula.test(json)) throw new Unreadable(longFormula);
  if (!workbookShape.safeParse(data).success) throw new Unreadable(notOurs);
  return data as WorkbookData;
}

/**
 * The workbook as it is kept and saved. `exportData()` would write it some sixth shorter, but opens it a second time at every
 * call to prove that, takes three times as long and leaves 29 kB of what it knows of the numbers and dates of each such opening.
 */
export const writeWorkbook = (model: Model): string => JSON.stringify(model._exportData(false));

/** A file is not even looked into where it is larger than any that this page opens. */
function small(file: File): File {
  if (file.size > most.letters) throw new Unreadable(tooLarge);
  return file;
}

export const bytesOf = async (file: File): Promise<Uint8Array<ArrayBuffer>> => new Uint8Array(await small(file).arrayBuffer());
