import { createStore, get, set, setMany } from 'idb-keyval';

/** One workbook as it is kept in this browser. */
export interface Kept {
  readonly json: string;
  readonly at: number;
}

const shelf = createStore('bedding-ledger', 'workbooks');

const take = (name: 'current' | 'previous' | 'damaged'): Promise<Kept | undefined> => get<Kept>(name, shelf);

export interface Recalled {
  /** The copy that is open now; absent where there was none that opens. */
  readonly opened?: Kept;
  /** A copy that did not open and was put aside. */
  readonly damaged?: Kept;
}

async function opens(kept: Kept, open: (json: string) => Promise<void>): Promise<boolean> {
  try {
    await open(kept.json);
    return true;
  } catch {
    return false;
  }
}

/** Opens the copy kept last; a copy that does not open is put aside, never written over, and the one before it is tried. */
export async function recall(open: (json: string) => Promise<void>): Promise<Recalled> {
  const current = await take('current');
  if (!current) return {};
  if (await opens(current, open)) return { opened: current };
  await set('damaged', current, shelf);
  const previous = await take('previous');
  return { damaged: current, ...(previous && (await opens(previous, open)) && { opened: previous }) };
}

/** Milliseconds from a change to its writing. What the browser then needs to store it comes on top, and both must stay under two seconds. */
const [shortest, longest] = [250, 700];

/**
 * Keeps the workbook shortly after each change. The first change not yet kept starts the clock and later ones do not
 * restart it, so that steady typing is kept too; a large workbook, slow to write out, is kept less often.
 */
export class Keeper {
  readonly #write: () => string;
  readonly #kept: (at: Date) => void;
  readonly #failed: (reason: unknown) => void;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #delay = shortest;
  #last: Kept | undefined;

  constructor(write: () => string, kept: (at: Date) => void, failed: (reason: unknown) => void) {
    this.#write = write;
    this.#kept = kept;
    this.#failed = failed;
  }

  /** The copy that the workbook on screen was opened from: it becomes the previous one at the next change. */
  follow(opened: Kept | undefined): void {
    this.#last = opened;
  }

  changed(): void {
    this.#timer ??= setTimeout(() => void this.keep(), this.#delay);
  }

  /** At once, for when the page is being left. */
  async keep(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    try {
      const began = performance.now();
      const json = this.#write();
      this.#delay = Math.min(longest, Math.max(shortest, 2 * (performance.now() - began)));
      if (json === this.#last?.json) return;
      const next: Kept = { json, at: Date.now() };
      await setMany([...(this.#last ? [['previous', this.#last] as [string, Kept]] : []), ['current', next]], shelf);
      this.#last = next;
      this.#kept(new Date(next.at));
    } catch (reason) {
      this.#failed(reason);
    }
  }
}

/**
 * Whether this page is the only one open on the kept workbook. The lock is held until the page closes; a second page
 * must not keep its changes, or the last writer would win without a word.
 */
export function isOnlyPage(): Promise<boolean> {
  return new Promise((answer) => {
    void navigator.locks.request('bedding-ledger', { ifAvailable: true }, (lock) => {
      answer(lock !== null);
      return lock ? new Promise(() => undefined) : undefined;
    });
  });
}
