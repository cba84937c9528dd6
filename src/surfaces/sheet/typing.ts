import { type Command, type CoreCommand, registries, UIPlugin } from '@odoo/o-spreadsheet';
import { most } from './most.ts';

const doubled = /^([+-]?\d+(?:[.,]\d*)?)\s*%\s*%$/;

/**
 * In a cell of percentages the grid puts `%` behind the first digit typed; who then types `35%`, as the sheet asks,
 * is left with `35%%`, which is text.
 */
function withOneMark(content: string, format: string): string | undefined {
  const number = format.includes('%') && doubled.exec(content)?.[1];
  return number ? `${number.replace(',', '.')}%` : undefined;
}

/** A formula longer than this page opens again would be lost with the copy that holds it; as text, behind an apostrophe, it is not. */
const asText = (content: string): string | undefined =>
  content.startsWith('=') && content.length > most.lettersInFormula ? `'${content}` : undefined;

const tooLong = `A formula of more than ${most.lettersInFormula.toLocaleString('en-GB')} characters is kept as text: spreadsheet programs take no longer one.`;

/** Before the first workbook is made: mends what was typed or pasted, within the same step for undo. */
export function addTyping(tell: (words: string) => void): void {
  class TypingPlugin extends UIPlugin {
    /** What another page calls cells of this grid is taken unlooked at, and may make a copy that does not open: its plain text is taken instead. */
    override beforeHandle(command: Command): void {
      if (command.type === 'PASTE_FROM_OS_CLIPBOARD') delete command.clipboardContent.data;
    }

    override handle(command: CoreCommand): void {
      if (command.type !== 'UPDATE_CELL' || !command.content) return;
      const { sheetId, col, row, content } = command;
      const text = asText(content);
      const instead = text ?? withOneMark(content, this.getters.getCell({ sheetId, col, row })?.format ?? '');
      if (instead) this.dispatch('UPDATE_CELL', { sheetId, col, row, content: instead });
      if (text) tell(tooLong);
    }
  }
  registries.featurePluginRegistry.add('typing', TypingPlugin);
}
