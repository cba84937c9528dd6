import type { SheetCell, Workbook } from './model.ts';

export interface WorkbookOptions {
  /** The same workbook with nothing filled in. */
  readonly blank?: boolean;
}

/** The budget as a workbook: what a farm fills in, and what follows from it. */
export function budgetWorkbook({ blank = false }: WorkbookOptions = {}): Workbook {
  const input = (value: number): SheetCell => ({ content: blank ? '' : value, style: 'required' });
  return {
    sheets: [
      {
        name: 'Inputs',
        columns: [260, 120, 160],
        rows: 60,
        cells: {
          A1: { content: 'Bedding needed', style: 'title' },
          A3: { content: 'Cubicles', style: 'label' },
          B3: input(240),
          C3: { content: 'cubicles', style: 'note' },
          A4: { content: 'Laid per cubicle per day', style: 'label' },
          B4: input(2.5),
          C4: { content: 'kg', style: 'note' },
          A6: { content: 'Needed in a year', style: 'label' },
          B6: { content: '=BEDDING.DEMAND.HERD(B3,B4)', style: 'strong', format: 'one' },
          C6: { content: 't', style: 'note' },
        },
      },
    ],
  };
}
