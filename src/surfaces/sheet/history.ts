import type { Model } from '@odoo/o-spreadsheet';

/** What the grid keeps of the changes made: private to it, so this much is told here, and tests/surfaces/history.test.ts fails if it moves. */
interface Changes extends Means {
  readonly HEAD_BRANCH: unknown;
  readonly tree: {
    revertedExecution(branch: unknown): Iterable<{ readonly operation: Change; readonly isCancelled: boolean }>;
  };
  append(id: string, data: Change['data']): void;
}

interface Means {
  readonly applyOperation: unknown;
  readonly revertOperation: unknown;
  readonly buildEmpty: unknown;
  readonly buildTransformation: unknown;
}

interface Change {
  readonly id: string;
  readonly data: { readonly commands: readonly unknown[] };
}

interface Session {
  revisions: Changes;
  readonly processedRevisions: Set<string>;
  on(event: 'new-local-state-update', owner: unknown, listener: () => void): void;
}

/** Changes that can be taken back: the length of the grid's own list of them. */
const depth = 99;

/** The last changes that count, latest first: not those taken back, nor the marks that taking back leaves. */
function lastChanges({ tree, HEAD_BRANCH }: Changes): Change[] {
  const last: Change[] = [];
  for (const { operation, isCancelled } of tree.revertedExecution(HEAD_BRANCH)) {
    if (isCancelled || operation.data.commands.length === 0) continue;
    last.push(operation);
    if (last.length === depth) break;
  }
  return last;
}

/** The same last changes with nothing before them. */
function withoutTheRest(changes: Changes): Changes {
  const { applyOperation, revertOperation, buildEmpty, buildTransformation } = changes;
  const Fresh = changes.constructor as new (given: Means & { initialOperationId: string }) => Changes;
  const fresh = new Fresh({ initialOperationId: 'forgotten', applyOperation, revertOperation, buildEmpty, buildTransformation });
  for (const { id, data } of lastChanges(changes).reverse()) fresh.append(id, data);
  return fresh;
}

/**
 * The grid is made for many authors, each of whom may take back an old change among those of others: it keeps every change
 * since the workbook was opened, and for each one taken back all the later ones once more. The memory of 2,000 edits grew by
 * 50 MB. Here is one author, who can take back the last 99; what lies before is forgotten at every ninety-ninth change.
 * A new change is the moment for it: nothing that was taken back can be done again after it.
 */
export function forgetOldChanges(model: Model): void {
  const { session } = model as unknown as { session: Session };
  let count = 0;
  session.on('new-local-state-update', forgetOldChanges, () => {
    count += 1;
    if (count % depth !== 0) return;
    session.revisions = withoutTheRest(session.revisions);
    session.processedRevisions.clear();
  });
}
