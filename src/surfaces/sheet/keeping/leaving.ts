import { stores } from '@odoo/o-spreadsheet';
import type { View } from '../view.ts';
import type { Desk } from './desk.ts';

/** A cell is being typed into, and its entry not yet done. */
function isHalfTyped({ shown: { component } }: View): boolean {
  return component.env['getStore'](stores.ComposerFocusStore).activeComposer.editionMode !== 'inactive';
}

/** The page is not left without a question while something on it would be lost; what is not kept whole yet is, as far as time allows. */
export function askBeforeLosing(view: View, desk: Desk): void {
  window.addEventListener('beforeunload', (event) => {
    if (desk.atRisk || isHalfTyped(view)) event.preventDefault();
  });
  window.addEventListener('pagehide', () => void desk.keepNow());
  document.addEventListener('visibilitychange', () => document.hidden && void desk.keepNow());
}
