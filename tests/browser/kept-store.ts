import type { Page } from 'playwright-core';
import { expect } from 'vitest';

type Stored = readonly (readonly [key: string, value: unknown])[];

/** All that the browser's store holds, key by key. */
export const stored = (page: Page): Promise<Stored> =>
  page.evaluate(
    () =>
      new Promise<Stored>((found) => {
        const opening = indexedDB.open('bedding-ledger');
        opening.onupgradeneeded = () => opening.result.createObjectStore('workbooks');
        opening.onsuccess = () => {
          const store = opening.result.transaction('workbooks').objectStore('workbooks');
          const [keys, values] = [store.getAllKeys(), store.getAll()];
          values.onsuccess = () => {
            opening.result.close();
            found(keys.result.map((key, k) => [String(key), values.result[k]]));
          };
        };
      }),
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

interface Entry {
  readonly id: string;
  readonly herd: string;
  readonly tool: string;
}

export const budgets = async (page: Page): Promise<readonly Entry[]> =>
  (await stored(page)).filter(([key]) => key.startsWith('budget/')).map(([, value]) => value as Entry);

export const copyKept = async (page: Page, id: string, which = 'now'): Promise<string | undefined> =>
  ((await stored(page)).find(([key]) => key === `copy/${id}/${which}`)?.[1] as { json: string } | undefined)?.json;

/** Waits until the whole workbook kept last holds a word; the whole copy would drown a failed test's report. */
export const keepsWhole = (page: Page, word: string): Promise<unknown> =>
  expect
    .poll(
      async () => (await stored(page)).some(([key, value]) => key.endsWith('/now') && (value as { json: string }).json.includes(word)),
      {
        timeout: 60_000,
      },
    )
    .toBe(true);
