import { helpers, type WorkbookData } from '@odoo/o-spreadsheet';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { tool } from '../../src/surfaces/sheet/keeping/copy.ts';
import { patience } from '../patience.ts';

type Stored = readonly (readonly [key: string, value: unknown])[];

/** All that the browser's store holds under keys that begin so, key by key. */
export const stored = (page: Page, beginning = ''): Promise<Stored> =>
  page.evaluate(
    (start) =>
      new Promise<Stored>((found) => {
        const opening = indexedDB.open('bedding-ledger');
        opening.onupgradeneeded = () => opening.result.createObjectStore('workbooks');
        opening.onsuccess = () => {
          const store = opening.result.transaction('workbooks').objectStore('workbooks');
          const range = IDBKeyRange.bound(start, `${start}\uffff`);
          const [keys, values] = [store.getAllKeys(range), store.getAll(range)];
          values.onsuccess = () => {
            opening.result.close();
            found(keys.result.map((key, k) => [String(key), values.result[k]]));
          };
        };
      }),
    beginning,
  );

/** Puts something into the store behind the page's back, as a fault, a full disk or another version might leave it. */
export const store = (page: Page, key: string, value: unknown): Promise<unknown> =>
  page.evaluate(
    ([name, content]) =>
      new Promise((done) => {
        const opening = indexedDB.open('bedding-ledger');
        opening.onupgradeneeded = () => opening.result.createObjectStore('workbooks');
        opening.onsuccess = () => {
          const change = opening.result.transaction('workbooks', 'readwrite');
          change.objectStore('workbooks').put(content, name as string);
          change.oncomplete = () => done(opening.result.close());
        };
      }),
    [key, value] as const,
  );

/** Another page of the same origin, from which the store can be changed while no workbook is open. */
export const elsewhere = (sheet: string): string => new URL('functions.json', sheet).href;

const sheet = (name: string, cells: Readonly<Record<string, string>>) => ({
  ...helpers.createEmptySheet(name.toLowerCase(), name),
  colNumber: 14,
  rowNumber: 60,
  cells,
});
const sheets = [
  sheet('Answer', { A2: 'Herd', B2: '=Inputs!C5' }),
  sheet('Inputs', { C5: 'Larch Bank (invented)', C9: '240', C10: '=BEDDING.DEMAND.HERD(C9,2)' }),
];

/** Two small sheets, as they are kept. How a page keeps does not hang on how much it keeps, and these open in a moment. */
export const smallCopy: string = JSON.stringify({ ...helpers.createEmptyWorkbookData(), sheets } satisfies WorkbookData);

const small = 'small';

/**
 * The sheet's page has kept a small budget, and will open it; other copies of it may stand beside or in place of the last. It is
 * left at a page from which the store can be changed.
 */
export async function keepSmall(on: Page, sheet: string, copies: Readonly<Record<string, object>> = {}): Promise<void> {
  await on.goto(elsewhere(sheet));
  const entry = { id: small, herd: 'Larch Bank (invented)', answer: '', at: 1, tool };
  await store(on, `budget/${small}`, entry);
  for (const [which, difference] of Object.entries({ now: {}, ...copies }))
    await store(on, `copy/${small}/${which}`, { json: smallCopy, at: 1, tool, ...difference });
  await store(on, `open/${new URL(sheet).pathname}`, small);
}

interface Entry {
  readonly id: string;
  readonly herd: string;
  readonly tool: string;
}

export const budgets = async (page: Page): Promise<readonly Entry[]> => (await stored(page, 'budget/')).map(([, value]) => value as Entry);

export const copyKept = async (page: Page, id: string, which = 'now'): Promise<string | undefined> =>
  ((await stored(page, `copy/${id}/${which}`))[0]?.[1] as { json: string } | undefined)?.json;

/** Waits until the whole workbook kept last holds a word. It is looked for in the page: to hand it over takes far longer. */
export const keepsWhole = (page: Page, word: string): Promise<unknown> =>
  expect
    .poll(
      () =>
        page.evaluate(
          (wanted) =>
            new Promise<boolean>((found) => {
              const opening = indexedDB.open('bedding-ledger');
              opening.onsuccess = () => {
                const copies = opening.result
                  .transaction('workbooks')
                  .objectStore('workbooks')
                  .getAll(IDBKeyRange.bound('copy/', 'copy/\uffff'));
                const keys = opening.result
                  .transaction('workbooks')
                  .objectStore('workbooks')
                  .getAllKeys(IDBKeyRange.bound('copy/', 'copy/\uffff'));
                keys.onsuccess = () => {
                  opening.result.close();
                  found(copies.result.some(({ json }, k) => String(keys.result[k]).endsWith('/now') && json.includes(wanted)));
                };
              };
            }),
          word,
        ),
      { timeout: patience.wait, interval: 200 },
    )
    .toBe(true);
