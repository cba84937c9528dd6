import { placeOf } from '../pane/addresses.ts';
import type { Place } from '../pane/spreadsheet-host.ts';
import { tell } from './page.ts';

/** The grid's box for an address takes `Answer!B3`, but stays where it is for a name with a space, `'Udder health'!B3`. */
export function goToAnySheet(select: (place: Place) => Promise<void>): void {
  const onKey = (event: KeyboardEvent): void => {
    const box = event.target;
    if (event.key !== 'Enter' || !(box instanceof HTMLInputElement) || !box.closest('.o-named-range-selector-container')) return;
    const place = box.value.includes('!') ? placeOf(box.value, '') : undefined;
    if (!place) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    // The grid would read the box once more when it is left: Escape puts back what it held.
    box.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true }));
    select(place).catch((fault: Error) => tell(fault.message));
  };
  window.addEventListener('keydown', onKey, { capture: true });
}
