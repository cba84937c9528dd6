import { type Copy, tool } from './copy.ts';
import { changesOf, forgetAll, notedBudgets } from './journal.ts';
import { isHeld } from './lock.ts';
import { beginning, change, changeAfterLooking, keyOf, look } from './store.ts';

/** A budget on the shelf of this browser, as the list shows it. */
export interface Budget {
  readonly id: string;
  /** As the user named it; without one it goes by its herd. */
  readonly name?: string;
  readonly herd: string;
  /** The last answer, in the sheet's own words. */
  readonly answer: string;
  readonly at: number;
  readonly tool: string;
}

/** `crypto.randomUUID` is missing where a page is served without encryption. */
export const newId = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

export const titleOf = ({ name, herd }: Budget): string => name || herd || 'Budget without a name';

/** The copies of a budget, newest first: the last one, the one before it, and what this page found when it was opened. */
export const copies = ['now', 'before', 'began'] as const;
export type Which = (typeof copies)[number];

export const copyOf = (id: string, which: Which): Promise<Copy | undefined> =>
  look<Copy | undefined>((store) => store.get(keyOf.copy(id, which)));

export const budgetOf = (id: string): Promise<Budget | undefined> => look<Budget | undefined>((store) => store.get(keyOf.budget(id)));

export async function list(): Promise<Budget[]> {
  const all = await look<Budget[]>((store) => store.getAll(beginning('budget/')));
  return all.sort((a, b) => b.at - a.at);
}

export const openAt = (path: string): Promise<string | undefined> => look<string | undefined>((store) => store.get(keyOf.openAt(path)));

export const rename = (id: string, name: string): Promise<void> =>
  changeAfterLooking((store) => {
    const asked: IDBRequest<Budget | undefined> = store.get(keyOf.budget(id));
    asked.onsuccess = () => void (asked.result && store.put({ ...asked.result, name }, keyOf.budget(id)));
  });

export async function remove(id: string): Promise<void> {
  await change((store) => {
    store.delete(keyOf.budget(id));
    for (const start of [keyOf.copy(id, ''), keyOf.change(id, '')]) store.delete(beginning(start));
  });
  forgetAll(id);
}

/** The same budget a second time, from here on apart from the first. */
export async function duplicate(budget: Budget): Promise<void> {
  const [id, now, changes] = [newId(), await copyOf(budget.id, 'now'), await changesOf(budget.id)];
  if (!now) throw new Error('there is no copy of it');
  await change((store) => {
    store.put({ ...budget, id, name: `${titleOf(budget)} (copy)`, at: Date.now() } satisfies Budget, keyOf.budget(id));
    store.put(now, keyOf.copy(id, 'now'));
    for (const revision of changes) store.put(JSON.stringify(revision), keyOf.change(id, revision.nextRevisionId));
  });
}

/** Puts a copy that did not open where nothing takes its place. */
export const putAside = (id: string, copy: Copy): Promise<void> => change((store) => store.put(copy, keyOf.copy(id, `aside-${copy.at}`)));

const asBudget = (id: string, at: number, by: string, name?: string): Budget => ({
  id,
  herd: '',
  answer: '',
  at,
  tool: by,
  ...(name && { name }),
});

/** Before there was a shelf, one workbook was kept under three keys. Gives its id where there is one. */
export async function takeOverOld(): Promise<string | undefined> {
  const old = await Promise.all(
    ['current', 'previous', 'damaged'].map((key) => look<Partial<Copy> | undefined>((store) => store.get(key))),
  );
  const [now, before, aside] = old.map((copy) => copy && { tool: '0.1.0', at: copy.at ?? 0, json: String(copy.json) });
  const newest = now ?? before ?? aside;
  if (!newest) return undefined;
  const id = newId();
  await change((store) => {
    store.put(asBudget(id, newest.at, newest.tool), keyOf.budget(id));
    store.put(newest, keyOf.copy(id, 'now'));
    if (before) store.put(before, keyOf.copy(id, 'before'));
    if (aside) store.put(aside, keyOf.copy(id, `aside-${aside.at}`));
    for (const key of ['current', 'previous', 'damaged']) store.delete(key);
  });
  return id;
}

/**
 * A new workbook gets its place before anything is changed in it, so that its first change is safe too. One that was closed in
 * the moment of that change goes on the shelf; one in which nothing was changed makes room. Gives the id of the former.
 */
export async function tidy(): Promise<string | undefined> {
  const known = new Set((await list()).map(({ id }) => id));
  const keys = await look((store) => store.getAllKeys(beginning('copy/')));
  const begun = new Set(keys.map((key) => String(key).split('/')[1] as string).filter((id) => !known.has(id)));
  const noted = new Set(notedBudgets());
  let found: string | undefined;
  for (const id of begun) {
    if (await isHeld(id)) continue;
    if (!noted.has(id)) await remove(id);
    else {
      await change((store) => store.put(asBudget(id, Date.now(), tool), keyOf.budget(id)));
      found = id;
    }
  }
  for (const id of noted) if (!known.has(id) && !begun.has(id)) forgetAll(id);
  return found;
}
