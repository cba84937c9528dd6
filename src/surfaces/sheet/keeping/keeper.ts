import type { Model } from '@odoo/o-spreadsheet';
import { writeWorkbook } from '../readable.ts';
import { type Copy, tool, wouldLeaveOut } from './copy.ts';
import { forget, note } from './journal.ts';
import { inWords } from './mend.ts';
import { type Revision, restsOn } from './revisions.ts';
import type { Budget, Which } from './shelf.ts';
import { change, changeAfterLooking, keyOf, patience, within } from './store.ts';
import { summaryOf } from './summary.ts';

/** More than this is not written down as a change: the whole workbook is kept at once instead. */
const most = { commands: 2000, letters: 300_000, changes: 200 };

/** Milliseconds without a change after which the whole workbook is kept, and after which a failure is tried again. */
const [pause, again] = [3000, 5000];

/** What a keeper has to say. */
export interface Sayings {
  readonly kept: (at: number) => void;
  /** Why not all is kept; nothing once it is. */
  readonly trouble: (sentence: string | undefined) => void;
}

class TooLarge extends Error {}

function written(revision: Revision): string | undefined {
  if (revision.type === 'REMOTE_REVISION' && revision.commands.length > most.commands) return undefined;
  const text = JSON.stringify(revision);
  return text.length > most.letters ? undefined : text;
}

/**
 * Keeps one budget while it is open. Every change is written down in the moment it is made, as the grid's own commands; the
 * whole workbook, proved to open, takes the place of the copy before it a moment after the last of them. The changes since are
 * made again on opening.
 */
export class Keeper {
  readonly id: string;
  readonly #model: Model;
  readonly #say: Sayings;
  #budget: Budget | undefined;
  readonly #name: string | undefined;
  /** Changes that would be made again upon the copy kept last. */
  #noted = new Set<string>();
  /** Changes that would be lost if the page closed now. */
  readonly #atRisk = new Set<string>();
  /** A change was not written down: nothing that follows can be made again before the whole workbook is kept. */
  #gap = false;
  #changed = false;
  #whole = true;
  #began = false;
  #timer: ReturnType<typeof setTimeout> | undefined;
  #queue: Promise<void> = Promise.resolve();

  /** Of a budget that is on the shelf already, or of one that goes there with its first change. */
  constructor(id: string, model: Model, say: Sayings, on: { readonly budget?: Budget; readonly name?: string } = {}) {
    this.id = id;
    this.#model = model;
    this.#say = say;
    this.#budget = on.budget;
    this.#name = on.name;
  }

  get atRisk(): boolean {
    return this.#atRisk.size > 0;
  }

  /** Gives a new workbook the copy that its changes will be made upon: as it was given to the grid, where that is known. */
  place(json = writeWorkbook(this.#model)): Promise<void> {
    return within(
      patience,
      change((store) => store.put({ json, at: Date.now(), tool } satisfies Copy, keyOf.copy(this.id, 'now'))),
    );
  }

  /** What is open is not what the copy kept last holds: keep it without delay, and leave the older copies as they are. */
  differs(): Promise<void> {
    [this.#whole, this.#changed, this.#gap] = [false, true, true];
    this.#atRisk.add(this.id);
    return this.keep();
  }

  note(revision: Revision): void {
    this.#changed = true;
    const [id, earlier] = [revision.nextRevisionId, restsOn(revision)];
    const madeAgain = !this.#gap && (earlier === undefined || this.#noted.has(earlier));
    const text = madeAgain ? written(revision) : undefined;
    if (text === undefined) {
      this.#gap = true;
      this.#atRisk.add(id);
      this.#due(0);
      return;
    }
    this.#noted.add(id);
    if (!note(this.id, id, text)) this.#atRisk.add(id);
    void this.#store(id, text);
    this.#due(this.#noted.size < most.changes ? pause : 0);
  }

  /** The whole workbook at once, as when the page is being left. */
  keep(): Promise<void> {
    clearTimeout(this.#timer);
    this.#queue = this.#queue.then(() => this.#keep());
    return this.#queue;
  }

  #due(milliseconds: number): void {
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.keep(), milliseconds);
  }

  #copy(): Copy {
    return { json: writeWorkbook(this.#model), at: Date.now(), tool };
  }

  #entry(at: number): Budget {
    const name = this.#budget?.name ?? this.#name;
    return { id: this.id, ...summaryOf(this.#model), at, tool, ...(name && { name }) };
  }

  async #store(revision: string, text: string): Promise<void> {
    const at = Date.now();
    const first = this.#budget ? undefined : this.#entry(at);
    const put = (store: IDBObjectStore): void => {
      store.put(text, keyOf.change(this.id, revision));
      if (!first) return;
      store.put(first, keyOf.budget(this.id));
      store.put(this.id, keyOf.openAt(location.pathname));
    };
    try {
      await within(patience, change(put));
      this.#budget ??= first;
      if (!this.#gap) this.#atRisk.delete(revision);
      this.#said(at);
    } catch {
      this.#failed();
    }
  }

  #said(at: number): void {
    if (this.#gap || this.atRisk) return;
    this.#say.trouble(undefined);
    this.#say.kept(at);
  }

  #failed(): void {
    this.#gap = true;
    this.#say.trouble(
      'The last changes could not be kept: the browser’s storage is full, blocked or does not answer. Save a copy before you close this page.',
    );
    this.#due(again);
  }

  async #keep(): Promise<void> {
    if (!this.#changed) return;
    try {
      const copy = this.#copy();
      const leftOut = wouldLeaveOut(copy.json);
      if (leftOut.size > 0) throw new TooLarge(inWords(leftOut));
      const [noted, atRisk] = [[...this.#noted], [...this.#atRisk]];
      [this.#noted, this.#gap, this.#changed] = [new Set(), false, false];
      const entry = this.#entry(copy.at);
      await within(patience, this.#replace(copy, entry, noted));
      [this.#budget, this.#began, this.#whole] = [entry, this.#began || this.#whole, true];
      for (const revision of atRisk) this.#atRisk.delete(revision);
      forget(this.id, noted);
      this.#said(copy.at);
    } catch (fault) {
      this.#changed = true;
      if (fault instanceof TooLarge) this.#tooLarge(fault.message);
      else this.#failed();
    }
  }

  #tooLarge(what: string): void {
    this.#say.trouble(
      `This workbook has outgrown what this page opens: it would open but for ${what}. So it is no longer kept whole: take the last change back, or save a copy and delete what you can do without.`,
    );
  }

  /** The copy of before steps back; the first time it is the one that this page found when it was opened. */
  #replace(copy: Copy, entry: Budget, noted: readonly string[]): Promise<void> {
    const key = (which: Which): string => keyOf.copy(this.id, which);
    return changeAfterLooking((store) => {
      // It may have been given another name in the list.
      const listed: IDBRequest<Budget | undefined> = store.get(keyOf.budget(this.id));
      const asked: IDBRequest<Copy | undefined> = store.get(key('now'));
      const older: readonly Which[] = this.#began ? ['before'] : ['before', 'began'];
      asked.onsuccess = () => {
        if (asked.result && this.#whole) for (const which of older) store.put(asked.result, key(which));
        store.put(copy, key('now'));
        store.put({ ...entry, ...(listed.result?.name && { name: listed.result.name }) }, keyOf.budget(this.id));
        store.put(this.id, keyOf.openAt(location.pathname));
        for (const revision of noted) store.delete(keyOf.change(this.id, revision));
      };
    });
  }
}
