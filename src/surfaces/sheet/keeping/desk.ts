import type { WorkbookData } from '@odoo/o-spreadsheet';
import { download } from '../files.ts';
import { notice, part, stand } from '../page.ts';
import { Later, Unreadable } from '../readable.ts';
import type { View } from '../view.ts';
import { type Copy, readCopy } from './copy.ts';
import { changesOf } from './journal.ts';
import { Keeper, type Sayings } from './keeper.ts';
import { askToLast } from './lasting.ts';
import { type Hold, holdOf } from './lock.ts';
import { inWords, type LeftOut } from './mend.ts';
import { following } from './revisions.ts';
import { type Budget, budgetOf, copies, copyOf, list, newId, openAt, putAside, takeOverOld, tidy, titleOf } from './shelf.ts';
import { change, keyOf, NoAnswerYet, within } from './store.ts';

export const timeOf = (at: number): string => new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });

const saveFirst = 'What you change here is not kept: save a copy before you close this page.';
const lacking = {
  locks: `This page came over a connection without encryption (http), where the browser does not tell two tabs apart. ${saveFirst}`,
  store: `This browser keeps nothing for this page: its site data is blocked, full or could not be read. ${saveFirst}`,
  answer: `The storage of this browser does not answer. ${saveFirst} What it holds is left as it is, and opened when it answers.`,
  elsewhere: 'This budget is open in another tab or window, which keeps it. What you change here is not kept until that one is closed.',
};

/** Milliseconds for which an empty page waits for what it kept; a later answer is still taken. */
const firstPatience = 4000;

interface Opened {
  readonly at: number;
  readonly leftOut: LeftOut;
  /** The copy kept last, where an older one had to be opened. */
  readonly damaged?: Copy;
  /** How many changes made since could not be made again. */
  readonly lost: number;
  /** Changes were made again upon the copy: it is not yet what is on screen. */
  readonly differs: boolean;
}

/** A file of what could not be opened, for whoever can make something of it. */
const saveAsFile = (budget: string, { json }: Copy): void => download(`${budget} unopened.json`, json, 'application/json');

/** The budget that is open on this page, and who keeps it. */
export class Desk {
  readonly #view: View;
  #id = '';
  #hold: Hold | undefined;
  #keeper: Keeper | undefined;
  /** The store answers and holds can be had. */
  #usable = false;
  /** Changed while nobody here kept it. */
  #changed = false;

  constructor(view: View) {
    this.#view = view;
    view.onRevision((revision) => {
      if (this.#keeper) this.#keeper.note(revision);
      else this.#changed = true;
    });
  }

  get id(): string {
    return this.#id;
  }

  /** Something on screen would be lost if the page closed now. */
  get atRisk(): boolean {
    return this.#keeper ? this.#keeper.atRisk : this.#changed;
  }

  /** Whether another workbook can take the place of this one without this one being lost. */
  get keeps(): boolean {
    return this.#keeper !== undefined;
  }

  keepNow(): Promise<void> {
    return this.#keeper?.keep() ?? Promise.resolve();
  }

  /** Opens what was open last at this address; true where the user has to choose. */
  async start(fresh: () => WorkbookData): Promise<boolean> {
    if (!('locks' in navigator)) {
      await this.beginFresh(fresh());
      stand(lacking.locks);
      return false;
    }
    const found = this.#last();
    try {
      const last = await within(firstPatience, found);
      this.#usable = true;
      return await this.#startWith(last, fresh);
    } catch (fault) {
      if (this.#id === '') await this.beginFresh(fresh());
      if (fault instanceof NoAnswerYet) {
        stand(lacking.answer);
        void found.then(
          (last) => this.#answeredLate(last, fresh),
          () => stand(lacking.store),
        );
      } else stand(lacking.store, { label: 'Try again', act: () => void this.#again(fresh) });
      return false;
    }
  }

  /** A new budget of this page. The grid takes it as it is, so to write it out again for its first copy would be lost time. */
  beginFresh(data: WorkbookData): Promise<void> {
    return this.begin(data, { firstCopy: JSON.stringify(data) });
  }

  /** A workbook that is not on the shelf yet: it goes there with its first change, and the one before it stays there. */
  async begin(data: WorkbookData, { name, firstCopy }: { readonly name?: string; readonly firstCopy?: string } = {}): Promise<void> {
    await this.keepNow();
    const id = newId();
    const hold = this.#usable ? await holdOf(id) : undefined;
    try {
      await this.#view.show(data);
    } catch (fault) {
      hold?.release();
      throw fault;
    }
    this.#put(id, hold, name ? { name } : {});
    await this.#keeper?.place(firstCopy).catch(() => this.#nothingKept());
  }

  /** A budget of the shelf. */
  async open(id: string): Promise<void> {
    if (!this.#usable) throw new Unreadable('nothing can be kept on this page now, so it stays where it is');
    await this.keepNow();
    const [hold, budget] = await Promise.all([holdOf(id), budgetOf(id)]);
    if (!budget) throw new Unreadable('it is no longer there');
    try {
      await this.#load(budget, hold);
    } catch (fault) {
      hold.release();
      throw fault;
    }
    if (!hold.has) this.#waitFor(hold, budget);
    await change((store) => store.put(id, keyOf.openAt(location.pathname)));
  }

  /** Keeps what is on screen as a budget of its own, apart from the one that another tab keeps. */
  async keepAsOwn(name: string): Promise<void> {
    const id = newId();
    const hold = await holdOf(id);
    this.#put(id, hold, { name });
    await this.#keeper?.differs();
  }

  async #last(): Promise<string | undefined | 'choose'> {
    const old = await takeOverOld();
    const recovered = await tidy();
    const last = await openAt(location.pathname);
    if (last && (await budgetOf(last))) return last;
    return recovered ?? old ?? ((await list()).length > 0 ? 'choose' : undefined);
  }

  async #startWith(last: string | undefined, fresh: () => WorkbookData): Promise<boolean> {
    if (last && last !== 'choose') {
      try {
        await this.open(last);
        return false;
      } catch (fault) {
        if (!(fault instanceof Unreadable)) throw fault;
        await this.beginFresh(fresh());
        this.#leftAlone(await budgetOf(last), fault);
        return false;
      }
    }
    await this.beginFresh(fresh());
    return last === 'choose';
  }

  #leftAlone(budget: Budget | undefined, fault: Unreadable): void {
    if (!budget) return;
    const why = fault instanceof Later ? fault.message : 'it is damaged, and so are the copies before it';
    const save = {
      label: 'Save its last copy as a file',
      act: () => void copyOf(budget.id, 'now').then((copy) => copy && saveAsFile(titleOf(budget), copy)),
    };
    notice(`“${titleOf(budget)}” could not be opened: ${why}. It stays in Budgets as it is; a fresh workbook is open instead.`, save);
  }

  async #again(fresh: () => WorkbookData): Promise<void> {
    try {
      await this.#answeredLate(await this.#last(), fresh);
    } catch {
      stand(lacking.store, { label: 'Try again', act: () => void this.#again(fresh) });
    }
  }

  /** Late, or at the second try: what was changed meanwhile must not go, nor what was kept. */
  async #answeredLate(last: string | undefined, fresh: () => WorkbookData): Promise<void> {
    this.#usable = true;
    stand(undefined);
    if (!this.#changed) {
      await this.#startWith(last, fresh);
      return;
    }
    await this.keepAsOwn('Begun before the others could be opened');
    notice('The storage of this browser answers again. What you did meanwhile is kept as a budget of its own; the others are in Budgets.');
  }

  /** The newest copy that opens, with the changes made upon it. */
  async #load(budget: Budget, hold: Hold): Promise<void> {
    const { id } = budget;
    const changes = await changesOf(id);
    let damaged: Copy | undefined;
    for (const which of copies) {
      const copy = await copyOf(id, which);
      if (!copy) continue;
      try {
        const opened = await this.#showCopy(copy, changes);
        this.#put(id, hold, { budget });
        await this.#report(budget, { ...opened, ...(damaged && { damaged }) }, copy);
        return;
      } catch (fault) {
        if (fault instanceof Later) throw fault;
        damaged ??= copy;
      }
    }
    throw new Unreadable('it is damaged, and so are the copies before it');
  }

  async #showCopy(copy: Copy, changes: Awaited<ReturnType<typeof changesOf>>): Promise<Omit<Opened, 'damaged'>> {
    const { data, leftOut } = readCopy(copy);
    const since = following(data.revisionId ?? '', changes);
    const at = copy.at;
    try {
      await this.#view.show(data, since);
      return { at, leftOut, lost: 0, differs: since.length > 0 || leftOut.size > 0 };
    } catch (fault) {
      if (since.length === 0) throw fault;
      await this.#view.show(readCopy(copy).data);
      return { at, leftOut, lost: since.length, differs: true };
    }
  }

  /** Says what did not open, and puts it where nothing takes its place, before what did open is kept. */
  async #report(budget: Budget, { at, leftOut, damaged, lost, differs }: Opened, copy: Copy): Promise<void> {
    const aside = damaged ?? (leftOut.size > 0 || lost > 0 ? copy : undefined);
    if (aside && this.#keeper) await putAside(budget.id, aside);
    if (aside) {
      const said = damaged
        ? `The copy of “${titleOf(budget)}” kept last is damaged and could not be opened; the copy kept before it, at ${timeOf(at)}, is open instead.`
        : `“${titleOf(budget)}” is open but for ${[inWords(leftOut), lost > 0 && `the last ${lost === 1 ? 'change' : `${lost} changes`}`].filter(Boolean).join(' and ')}.`;
      notice(`${said} The copy as it was is put aside.`, { label: 'Save it as a file', act: () => saveAsFile(titleOf(budget), aside) });
    }
    if (aside || differs) await this.#keeper?.differs();
  }

  #put(id: string, hold: Hold | undefined, on: { readonly budget?: Budget; readonly name?: string }): void {
    if (this.#hold?.release !== hold?.release) this.#hold?.release();
    [this.#id, this.#hold, this.#changed] = [id, hold, false];
    this.#keeper = hold?.has ? new Keeper(id, this.#view.shown.model, this.#sayings, on) : undefined;
    part('p', 'kept').textContent = '';
    if (this.#keeper) stand(undefined);
  }

  readonly #sayings: Sayings = {
    kept: (at) => {
      part('p', 'kept').textContent = `Kept at ${timeOf(at)}`;
      askToLast();
    },
    trouble: (sentence) => stand(sentence),
  };

  #nothingKept(): void {
    this.#keeper = undefined;
    stand(lacking.store);
  }

  /** Another tab keeps the budget: this one goes on from what that one kept, once it is closed. */
  #waitFor(hold: Hold, budget: Budget): void {
    const own = `${titleOf(budget)} (second tab)`;
    stand(lacking.elsewhere, { label: 'Keep this as a budget of its own', act: () => void this.keepAsOwn(own) });
    void hold.granted.then(
      async () => {
        if (this.#hold !== hold) return;
        if (this.#changed) {
          await this.keepAsOwn(own);
          notice(`The other tab was closed. What you changed here is kept as “${own}”; what it kept is in Budgets.`);
        } else await this.#load((await budgetOf(budget.id)) ?? budget, { ...hold, has: true });
      },
      () => undefined,
    );
  }
}
