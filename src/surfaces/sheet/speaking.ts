import { helpers, type Model } from '@odoo/o-spreadsheet';
import { part } from './page.ts';

/** `B4: 62.8`, `B5 #ERROR: dm_in (fraction): 35 is above 1; enter 35% or 0.35`, `B6: blank`. */
function sentenceFor(model: Model): string {
  const position = model.getters.getActivePosition();
  const { formattedValue, message } = model.getters.getEvaluatedCell(position);
  const sheet = model.getters.getSheetName(position.sheetId);
  const address = helpers.toXC(position.col, position.row);
  return `${sheet} ${address}: ${formattedValue || 'blank'}${message ? `, ${message}` : ''}`;
}

/** The grid is drawn on a canvas, which no screen reader reads: the active cell is spoken from here. */
export function speak(model: Model): void {
  const spoken = part('p', 'spoken');
  const sentence = sentenceFor(model);
  if (spoken.textContent !== sentence) spoken.textContent = sentence;
}
