import type { BudgetItem } from '../../budget/items.ts';
import type { Pane } from './context.ts';
import { isBlankCell, readInputsSheet, writeInputs } from './inputs-sheet.ts';
import { sayValue } from './numbers.ts';
import type { CellContent, HostCell, SpreadsheetHost } from './spreadsheet-host.ts';

/** The one way in which the pane fills the Inputs sheet. */
export interface InputsWriter {
  /**
   * Writes the items, after asking where a cell holds what this pane did not put there, or anything at all where `always` is
   * given. False where the user would rather keep it.
   */
  readonly put: (values: readonly (readonly [BudgetItem, CellContent])[], always?: 'always') => Promise<boolean>;
}

const says = ({ formula, value }: HostCell, { parameter }: BudgetItem, host: SpreadsheetHost): string =>
  formula ? `the formula ${host.typed(formula)}` : sayValue(value, parameter.unit, host.locale());

export function inputsWriter(pane: Pane): InputsWriter {
  const ours = new Map<BudgetItem, CellContent>();

  async function put(values: readonly (readonly [BudgetItem, CellContent])[], always?: 'always'): Promise<boolean> {
    const inputs = await readInputsSheet(pane.host);
    if (!inputs) throw new Error('This workbook has no Inputs sheet to write to.');
    const changes = values.filter(([item, value]) => {
      const cell = inputs.get(item)?.cell;
      return cell === undefined || cell.formula !== undefined || (isBlankCell(cell) ? null : cell.value) !== value;
    });
    const typed = changes.flatMap(([item, value]) => {
      const entry = inputs.get(item);
      if (!entry || isBlankCell(entry.cell)) return [];
      if (!always && entry.cell.formula === undefined && ours.has(item) && ours.get(item) === entry.cell.value) return [];
      const instead = value === null ? 'nothing' : sayValue(value, item.parameter.unit, pane.host.locale());
      return [`${item.name} (${entry.address}) holds ${says(entry.cell, item, pane.host)}: put ${instead} in its place?`];
    });
    if (typed.length > 0 && !(await pane.ask(typed.join('\n'), 'Replace', 'Keep what is there'))) return false;
    await writeInputs(pane.host, inputs, changes);
    for (const [item, value] of changes) ours.set(item, value);
    if (changes.length > 0) pane.say(`${changes.map(([{ name }]) => name).join(', ')}: written to the Inputs sheet.`);
    return true;
  }

  return { put };
}
