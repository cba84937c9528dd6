import type { Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { readCopy } from '../../src/surfaces/sheet/keeping/copy.ts';
import { browser } from './browser.ts';
import { keepSmall, stored } from './kept-store.ts';
import { drawn, openSheet, ready } from './sheet-page.ts';
import { untilReplaced } from './waiting.ts';

/** `npm run soak` asks for a hundred: some fifteen minutes on a busy machine. */
const soaking = process.env['SOAK_STEPS'] !== undefined;
const rounds = soaking ? 100 : 4;
const steps = 30;

/** Entries, pastes, undos, redos, rows and columns put in and taken out, looks and sheets, as the grid itself sends them. */
const edit = (page: Page, seed: number): Promise<number> =>
  page.evaluate(
    ([howMany, began]) => {
      const [app] = owl.App.apps;
      if (!app) throw new Error('no grid is on the page');
      const { model } = app.root.component;
      let state = began;
      // Numerical Recipes' linear congruential generator: the page has no library of the tests.
      const upTo = (most: number): number => {
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return Math.floor((state / 2 ** 32) * most);
      };
      const words = () =>
        ['words', '', String(upTo(1000)), '35%', `=SUM(A$1:A${1 + upTo(9)})`, `=BEDDING.DEMAND.HERD(${upTo(300)},2)`, "'=text", '=L1'][
          upTo(8)
        ] ?? '';
      const onSheet = () => ({ sheetId: model.getters.getActiveSheetId(), sheetName: model.getters.getActiveSheetName() });
      const zone = (left: number, top: number) => [{ left, top, right: left, bottom: top }];
      const acts = [
        () => model.dispatch('UPDATE_CELL', { ...onSheet(), col: 10 + upTo(2), row: upTo(30), content: words() }),
        () => model.dispatch('UPDATE_CELL', { ...onSheet(), col: 10 + upTo(2), row: upTo(30), content: words() }),
        () => model.dispatch('REQUEST_UNDO'),
        () => model.dispatch('REQUEST_UNDO'),
        () => model.dispatch('REQUEST_REDO'),
        () => {
          const text = Array.from({ length: 1 + upTo(40) }, () => [words(), words()].join('\t')).join('\n');
          return model.dispatch('PASTE_FROM_OS_CLIPBOARD', { target: zone(10, upTo(30)), clipboardContent: { text } } as never);
        },
        () => {
          const text = Array.from({ length: 700 }, () => words()).join('\n');
          return model.dispatch('PASTE_FROM_OS_CLIPBOARD', { target: zone(11, 40), clipboardContent: { text } } as never);
        },
        () => model.dispatch('ADD_COLUMNS_ROWS', { ...onSheet(), dimension: 'ROW', base: 30 + upTo(5), quantity: 1, position: 'before' }),
        () => model.dispatch('REMOVE_COLUMNS_ROWS', { ...onSheet(), dimension: 'ROW', elements: [30 + upTo(5)] }),
        () => model.dispatch('SET_FORMATTING', { ...onSheet(), target: zone(10, upTo(30)), style: { bold: upTo(2) === 1 } }),
        () => {
          const sheetIds = model.getters.getSheetIds();
          const sheetIdTo = sheetIds[upTo(Math.min(3, sheetIds.length))] as string;
          return model.dispatch('ACTIVATE_SHEET', { sheetIdFrom: model.getters.getActiveSheetId(), sheetIdTo });
        },
      ];
      for (let k = 0; k < howMany; k++) acts[upTo(acts.length)]?.();
      return state;
    },
    [steps, seed] as const,
  );

/** All that is on the sheets, as the grid tells it. */
const contents = (page: Page): Promise<unknown> =>
  page.evaluate(() => {
    const [app] = owl.App.apps;
    return JSON.parse(JSON.stringify(app?.root.component.model._exportData(false).sheets));
  });

it(`after ${rounds} rounds of random commands each copy opens and is what was on screen`, { timeout: 7_200_000, retry: 0 }, async () => {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  const address = `${inject('site')}/sheet.html`;
  const { page, complaints } = await openSheet(context, address);
  for (let round = 0, seed = 11; round < rounds; round++) {
    if (round === 1 && !soaking) {
      // A change is kept in the same way whatever it is a change of: what follows is done to two small sheets.
      await page.goto('about:blank');
      const other = await context.newPage();
      await keepSmall(other, address);
      await other.close();
      await page.goto(address);
      await ready(page);
    }
    seed = await edit(page, seed);
    if (round % 10 === 9) {
      await page.locator('#new').click();
      await untilReplaced(page, () => page.locator('#asking-yes').click());
      seed = await edit(page, seed);
    }
    await drawn(page);
    const before = await contents(page);
    await page.reload();
    await ready(page);
    expect(await page.locator('#notices').textContent(), `round ${round}`).toBe('');
    expect(await contents(page), `round ${round}`).toEqual(before);
  }
  const copies = (await stored(page))
    .filter(([key]) => key.startsWith('copy/'))
    .map(([, value]) => value as Parameters<typeof readCopy>[0]);
  expect(copies.length).toBeGreaterThan(0);
  for (const copy of copies) expect(readCopy(copy).leftOut.size).toBe(0);
  expect(complaints).toEqual([]);
  await context.close();
});
