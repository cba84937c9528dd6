import { Spreadsheet, type Zone } from '@odoo/o-spreadsheet';
import { budgetWorkbook } from '../../workbook/index.ts';
import type { Sheet } from '../../workbook/model.ts';

/** What the grid's print preview works with, and does not hand out. */
interface Paper {
  splitZoneToPrintPages: (sheetId: string, zone: Zone) => readonly { readonly zone: Zone }[];
  getPrintZoom: (sheetId: string, zone: Zone) => number;
  areThereFiguresInZone: (sheetId: string, zone: Zone) => boolean;
}

/** A block cut before each of the rows, counted from 1. */
function cut(zone: Zone, before: readonly number[]): Zone[] {
  const tops = [zone.top, ...before.map((row) => row - 1).filter((row) => row > zone.top && row <= zone.bottom)];
  return tops.map((top, k) => ({ ...zone, top, bottom: (tops[k + 1] ?? zone.bottom + 1) - 1 }));
}

/** The grid's print preview, without blank pages, on paper that lies as the sheet is meant to and begins pages where the sheet does. */
class Print extends Spreadsheet.components.SpreadsheetPrint {
  override setup(): void {
    super.setup();
    const { printStore } = this;
    const { getters } = this.env.model;
    const { sheets } = budgetWorkbook();
    const planOf = (sheetId: string): Sheet | undefined => sheets.find(({ name }) => name === getters.getSheetName(sheetId));
    const paper = printStore as unknown as Paper;
    const [split, zoom] = [paper.splitZoneToPrintPages.bind(paper), paper.getPrintZoom.bind(paper)];
    const shows = (sheetId: string, zone: Zone): boolean =>
      paper.areThereFiguresInZone(sheetId, zone) ||
      getters.getEvaluatedCellsInZone(sheetId, zone).some(({ formattedValue }) => formattedValue !== '');
    paper.splitZoneToPrintPages = (sheetId, zone) => {
      const pages = cut(zone, planOf(sheetId)?.pagesFrom ?? []).flatMap((part) => split(sheetId, part));
      return pages.filter((page) => shows(sheetId, page.zone));
    };
    paper.getPrintZoom = (sheetId, zone) => {
      const fits = zoom(sheetId, zone);
      if (!planOf(sheetId)?.onePage || printStore.printScale !== 'fitToWidth') return fits;
      const high = getters.getRowDimensions(sheetId, zone.bottom).end - getters.getRowDimensions(sheetId, zone.top).start;
      // The grid begins a page where one is exactly full.
      return Math.min(fits, (0.999 * printStore.pageDimensionWithMargins.height) / high);
    };
    if (planOf(getters.getActiveSheetId())?.landscape) printStore.changePrintOrientation('landscape');
  }
}

export function printAsPlanned(): void {
  Spreadsheet.components = { ...Spreadsheet.components, SpreadsheetPrint: Print };
}
