import type { Reason } from './formula.ts';

/** What of a file does not come along, or not as it was. */
export type Loss =
  | 'charts'
  | 'pictures'
  | 'pivots'
  | 'tables'
  | 'notes'
  | 'links'
  | 'macros'
  | 'chart sheets'
  | 'controls'
  | 'colour rules'
  | 'entry rules'
  | 'number formats'
  | 'protected sheets'
  | 'filters'
  | 'looks of empty cells'
  | 'looks'
  | `value for ${Reason | 'link' | 'length' | 'data table'}`
  | 'formula without value'
  | 'renamed sheets'
  | 'names'
  | 'dates from 1904'
  | 'broken links';

/** Counts what is left out by its kind, and remembers the functions that are not known here. */
export class Tally {
  readonly counts: Partial<Record<Loss, number>> = {};
  readonly functions = new Set<string>();

  add(loss: Loss, count = 1): void {
    if (count > 0) this.counts[loss] = (this.counts[loss] ?? 0) + count;
  }
}
