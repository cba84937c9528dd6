import type { Revision } from './revisions.ts';
import { beginning, keyOf, look } from './store.ts';

/**
 * The last changes of each budget, written down a second time where writing is done before the next line runs: a page that is
 * closed in the moment of a change cannot wait for its store. The browser may hold these back for some seconds before they
 * reach the disk, so that a power cut is what the store is for.
 */
function notes(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

const prefix = 'bedding-ledger/change/';
const noteOf = (id: string, revision: string): string => `${prefix}${id}/${revision}`;

/** Whether it is written down; a full or blocked storage says no. */
export function note(id: string, revision: string, text: string): boolean {
  try {
    notes()?.setItem(noteOf(id, revision), text);
    return notes() !== undefined;
  } catch {
    return false;
  }
}

export function forget(id: string, revisions: readonly string[]): void {
  for (const revision of revisions) notes()?.removeItem(noteOf(id, revision));
}

const keys = (start: string): string[] => Object.keys(notes() ?? {}).filter((key) => key.startsWith(start));

/** The budgets that have notes. */
export const notedBudgets = (): string[] => [...new Set(keys(prefix).map((key) => key.slice(prefix.length).split('/')[0] as string))];

export const forgetAll = (id: string): void => keys(`${prefix}${id}/`).forEach((key) => void notes()?.removeItem(key));

/** What cannot be read is no change that could be made again. */
function parsed(text: string): Revision[] {
  try {
    return [JSON.parse(text) as Revision];
  } catch {
    return [];
  }
}

/** Every change of the budget that is written down in either place. */
export async function changesOf(id: string): Promise<Revision[]> {
  const noted = keys(`${prefix}${id}/`).map((key) => notes()?.getItem(key) ?? '');
  const stored = await look<string[]>((store) => store.getAll(beginning(keyOf.change(id, ''))));
  return [...noted, ...stored].flatMap(parsed);
}
