import type { Model } from '@odoo/o-spreadsheet';

const twoDigits = (value: number): string => String(value).padStart(2, '0');

/** The word right of the first cell that reads `Herd`, on whatever sheet; the workbook keeps the herd's name there. */
export function herdName(model: Model): string {
  const { getters } = model;
  for (const sheetId of getters.getSheetIds()) {
    for (let row = 0; row < Math.min(getters.getNumberRows(sheetId), 60); row++) {
      if (getters.getEvaluatedCell({ sheetId, col: 0, row }).value === 'Herd') {
        return getters.getEvaluatedCell({ sheetId, col: 1, row }).formattedValue;
      }
    }
  }
  return '';
}

/** `Larch Bank bedding 2026-03-04.xlsx`: what a folder of several herds is sorted by. */
export function fileName(model: Model, ending: string, { on = new Date(), kind = 'bedding' } = {}): string {
  const herd = herdName(model)
    .replace(/[^\p{L}\p{N} '-]/gu, ' ')
    .replace(/\s+/g, ' ')
    .trim()
    .slice(0, 60);
  const day = `${on.getFullYear()}-${twoDigits(on.getMonth() + 1)}-${twoDigits(on.getDate())}`;
  return `${herd || 'Herd'} ${kind} ${day}.${ending}`;
}

/** The address of the file saved last. It stays until the next is saved: a browser may first ask the user, who takes their time. */
let lastSaved = '';

export function download(name: string, content: BlobPart, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(lastSaved);
  lastSaved = link.href;
}
