import { type Command, type CommandResult, type Model, registries, UIPlugin, type Zone } from '@odoo/o-spreadsheet';
import { most } from './workbook-shape.ts';

interface Size {
  readonly rows: number;
  readonly columns: number;
  readonly cells: number;
}

const sizeOfZone = ({ top, bottom, left, right }: Zone): Size => {
  const [rows, columns] = [bottom - top + 1, right - left + 1];
  return { rows, columns, cells: rows * columns };
};

function sizeOfText(text: string): Size {
  const lines = text.replace(/\r?\n$/, '').split('\n');
  const perLine = lines.map((line) => line.split('\t').length);
  return {
    rows: lines.length,
    columns: perLine.reduce((widest, one) => Math.max(widest, one), 1),
    cells: perLine.reduce((sum, one) => sum + one, 0),
  };
}

/** Which limit of a workbook that opens again a command would pass. */
type Limit = 'rows' | 'columns' | 'cells' | 'sheets' | 'letters' | 'name';

const number = (count: number): string => count.toLocaleString('en-GB');
const sentences: Readonly<Record<Limit, string>> = {
  rows: `A sheet takes at most ${number(most.rows)} rows`,
  columns: `A sheet takes at most ${number(most.columns)} columns`,
  cells: `A sheet takes at most ${number(most.cells)} filled cells`,
  sheets: `A workbook takes at most ${number(most.sheets)} sheets`,
  letters: `A cell takes at most ${number(most.lettersInCell)} letters`,
  name: `A name takes at most ${number(most.lettersInName)} letters`,
};
const asReason = (limit: Limit): CommandResult => `no room: ${limit}` as CommandResult;
const done = 'Success' as CommandResult;

/** Refuses what would make a workbook larger than this page opens, before it is done. */
class RoomPlugin extends UIPlugin {
  /** No sheet has more filled cells than this says: counted anew only where it matters. */
  readonly #atMost = new Map<string, number>();
  #copied: Size = { rows: 1, columns: 1, cells: 1 };

  override allowDispatch(command: Command): CommandResult {
    const limit = this.#passed(command);
    return limit ? asReason(limit) : done;
  }

  override handle(command: Command): void {
    if (command.type === 'UPDATE_CELL') this.#atMost.set(command.sheetId, (this.#atMost.get(command.sheetId) ?? most.cells) + 1);
    if (command.type !== 'COPY' && command.type !== 'CUT') return;
    const zones = this.getters.getSelectedZones().map(sizeOfZone);
    const area = zones.reduce((sum, { cells }) => sum + cells, 0);
    const [first = this.#copied] = zones;
    this.#copied = { ...first, cells: Math.min(area, this.#filled(this.getters.getActiveSheetId())) };
  }

  #filled(sheetId: string): number {
    const count = this.getters.getCells(sheetId).length;
    this.#atMost.set(sheetId, count);
    return count;
  }

  #hasRoomFor(sheetId: string, cells: number): boolean {
    return (this.#atMost.get(sheetId) ?? most.cells) + cells <= most.cells || this.#filled(sheetId) + cells <= most.cells;
  }

  #pasted(target: readonly Zone[], size: Size): Limit | undefined {
    for (const zone of target) {
      const onto = sizeOfZone(zone);
      const times = Math.max(1, Math.floor(onto.rows / size.rows)) * Math.max(1, Math.floor(onto.columns / size.columns));
      if (zone.top + size.rows > most.rows) return 'rows';
      if (zone.left + size.columns > most.columns) return 'columns';
      if (!this.#hasRoomFor(this.getters.getActiveSheetId(), times * size.cells)) return 'cells';
    }
    return undefined;
  }

  #passed(command: Command): Limit | undefined {
    const { getters } = this;
    switch (command.type) {
      case 'PASTE':
        return this.#pasted(command.target, this.#copied);
      case 'PASTE_FROM_OS_CLIPBOARD':
        return this.#pasted(command.target, sizeOfText(command.clipboardContent.text ?? ''));
      case 'UPDATE_CELL':
        if ((command.content?.length ?? 0) > most.lettersInCell) return 'letters';
        return command.content && !this.#hasRoomFor(command.sheetId, 1) ? 'cells' : undefined;
      case 'ADD_COLUMNS_ROWS': {
        const rows = command.dimension === 'ROW';
        const has = rows ? getters.getNumberRows(command.sheetId) : getters.getNumberCols(command.sheetId);
        return has + command.quantity > (rows ? most.rows : most.columns) ? (rows ? 'rows' : 'columns') : undefined;
      }
      case 'CREATE_SHEET':
      case 'DUPLICATE_SHEET':
        return getters.getSheetIds().length >= most.sheets ? 'sheets' : undefined;
      case 'RENAME_SHEET':
        return command.newName.length > most.lettersInName ? 'name' : undefined;
      default:
        return undefined;
    }
  }
}

/** Before the first workbook is made. */
export function addRoom(): void {
  registries.featurePluginRegistry.add('room', RoomPlugin);
}

/** Says which limit stood in the way of a command that was not done. */
export function sayWhatHasNoRoom(model: Model, say: (sentence: string) => void): void {
  model.on('command-rejected', sayWhatHasNoRoom, (event) => {
    const { result } = event as unknown as { result: { isCancelledBecause: (reason: CommandResult) => boolean } };
    for (const [limit, sentence] of Object.entries(sentences)) {
      if (result.isCancelledBecause(asReason(limit as Limit))) say(`${sentence}: this was not done.`);
    }
  });
}
