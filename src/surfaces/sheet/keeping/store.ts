import { createStore, promisifyRequest } from 'idb-keyval';

const browserStore = createStore('bedding-ledger', 'workbooks');

/** What stands in the store under each kind of key; a budget's parts carry its id. */
export const keyOf = {
  budget: (id: string) => `budget/${id}`,
  copy: (id: string, which: string) => `copy/${id}/${which}`,
  change: (id: string, revision: string) => `change/${id}/${revision}`,
  /** Which budget was last open at an address: two copies of the one file in two folders share a store, but not their budget. */
  openAt: (path: string) => `open/${path}`,
};

/** All keys that begin so. */
export const beginning = (start: string): IDBKeyRange => IDBKeyRange.bound(start, `${start}\uffff`);

/**
 * Changes the store, all of it or nothing. It is told at once that no more follows: what was put then lands though the page
 * is closed in the next moment.
 */
export const change = (work: (store: IDBObjectStore) => void): Promise<void> =>
  browserStore('readwrite', async (store) => {
    work(store);
    store.transaction.commit?.();
    await promisifyRequest(store.transaction);
  });

/** The same where what is put depends on what is read first: it commits by itself once nothing is asked any more. */
export const changeAfterLooking = (work: (store: IDBObjectStore) => void): Promise<void> =>
  browserStore('readwrite', async (store) => {
    work(store);
    await promisifyRequest(store.transaction);
  });

const readAttempts = 3;

/** Reads, and reads again where that fails: a store that is busy with itself may answer the next time. */
export async function look<T>(ask: (store: IDBObjectStore) => IDBRequest<T>): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await browserStore('readonly', (store) => promisifyRequest(ask(store)));
    } catch (fault) {
      if (attempt === readAttempts) throw fault;
      await new Promise((later) => setTimeout(later, 100 * attempt));
    }
  }
}

/** A store that says neither yes nor no. */
export class NoAnswerYet extends Error {}

/** How long a store may think about it: a busy machine takes seconds, and what comes later still counts. */
export const patience = 10_000;

export function within<T>(milliseconds: number, answer: Promise<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new NoAnswerYet()), milliseconds);
    answer.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}
