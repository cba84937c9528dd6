import type { Model } from '@odoo/o-spreadsheet';

/** Private to the grid, so this much is told here; tests/surfaces/one-author.test.ts fails if it moves. */
interface Session {
  commandSquisher: {
    squish(commands: readonly unknown[]): readonly unknown[];
    unsquish(commands: readonly unknown[]): readonly unknown[];
  };
}

/**
 * The grid packs every change small before it sends it to other authors, of whom there are none here. The packing stopped on
 * running totals, on a paste of two hundred thousand cells, and in browsers without Object.groupBy; and it then stopped again
 * at each later change, with nothing shown. So changes are sent as they were made.
 */
export function sendAsMade(model: Model): void {
  const { session } = model as unknown as { readonly session: Session };
  session.commandSquisher = { squish: (commands) => commands, unsquish: (commands) => commands };
}
