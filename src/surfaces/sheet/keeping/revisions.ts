import {
  LocalTransportService,
  type RemoteRevisionMessage,
  type RevisionRedoneMessage,
  type RevisionUndoneMessage,
} from '@odoo/o-spreadsheet';

/** One change of the workbook as the grid itself hands it on: its commands, or the mark that another one was taken back or done again. */
export type Revision = RemoteRevisionMessage | RevisionUndoneMessage | RevisionRedoneMessage;

const isRevision = (message: { readonly type: string }): message is Revision =>
  ['REMOTE_REVISION', 'REVISION_UNDONE', 'REVISION_REDONE'].includes(message.type);

/** Tells of every revision in the same moment in which it was made. */
export class Telling extends LocalTransportService {
  readonly #tell: (revision: Revision) => void;

  constructor(tell: (revision: Revision) => void) {
    super();
    this.#tell = tell;
  }

  override sendMessage(message: Parameters<LocalTransportService['sendMessage']>[0]): Promise<void> {
    if (isRevision(message)) this.#tell(message);
    return super.sendMessage(message);
  }
}

/** The earlier revision that this one takes back or does again. */
export function restsOn(revision: Revision): string | undefined {
  if (revision.type === 'REVISION_UNDONE') return revision.undoneRevisionId;
  return revision.type === 'REVISION_REDONE' ? revision.redoneRevisionId : undefined;
}

/** Those that were made on top of a workbook, in their order: each names the one that it follows. */
export function following(from: string, revisions: readonly Revision[]): Revision[] {
  const after = new Map(revisions.map((revision) => [revision.serverRevisionId, revision]));
  const chain: Revision[] = [];
  for (let next = after.get(from); next; next = after.get(next.nextRevisionId)) {
    after.delete(next.serverRevisionId);
    chain.push(next);
  }
  return chain;
}
