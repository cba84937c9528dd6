import type { WorkbookData } from '@odoo/o-spreadsheet';
import packageJson from '../../../../package.json';
import { isLater, Later, parseCopy, readWorkbook } from '../readable.ts';
import { type LeftOut, mend } from './mend.ts';

/** The version of this tool; every copy carries that of the one that kept it. */
export const tool = packageJson.version;

/** A workbook as it is kept. */
export interface Copy {
  readonly json: string;
  readonly at: number;
  readonly tool: string;
}

/** The workbook in a copy, without the parts that would not open; the grid brings what an earlier version wrote up to its own. */
export function readCopy({ json, tool: by }: Copy): { readonly data: WorkbookData; readonly leftOut: LeftOut } {
  if (isLater(by, tool)) throw new Later(`it was kept by a later version of this page, ${by}; open it there`);
  try {
    return { data: readWorkbook(json), leftOut: new Map() };
  } catch (fault) {
    if (fault instanceof Later) throw fault;
    return mend(parseCopy(json));
  }
}

/** What would be left out if the copy were opened again; nothing where it opens as it is. */
export function wouldLeaveOut(json: string): LeftOut {
  return readCopy({ json, at: 0, tool }).leftOut;
}
