import type { Model } from '@odoo/o-spreadsheet';
import type { Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { browser } from './browser.ts';
import { drawn, openSheet } from './sheet-page.ts';

/** `npm run soak` asks for 20,000: half an hour on a busy machine of two cores. */
const steps = Number(process.env['SOAK_STEPS'] ?? 200);
const rounds = steps > 1000 ? 10 : 5;

declare global {
  /** The view library keeps its mounted apps here; the grid's holds the workbook. */
  const owl: { App: { apps: Set<{ root: { component: { model: Model } } }> } };
}

/**
 * Edits of inputs, numbers, texts and formulas, undone, redone and on one sheet after another, as the grid itself sends them.
 * Gives back the seed for the next round.
 */
const edit = (page: Page, count: number, seed: number): Promise<number> =>
  page.evaluate(
    async ([howMany, began]) => {
      const [app] = owl.App.apps;
      if (!app) throw new Error('no grid is on the page');
      const { model } = app.root.component;
      let state = began;
      // Numerical Recipes' linear congruential generator: the page has no library of the tests.
      const upTo = (most: number): number => {
        state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
        return Math.floor((state / 2 ** 32) * most);
      };
      const entries = [
        () => String(upTo(1000)),
        () => 'words of a user',
        () => '',
        () => `=BEDDING.DEMAND.HERD(${upTo(300) - 20},2)`,
        () => `=SUM(A1:B${1 + upTo(30)})`,
        () => '=L1',
      ];
      for (let k = 0; k < howMany; k++) {
        const sheetIds = model.getters.getSheetIds();
        const sheetIdFrom = model.getters.getActiveSheetId();
        const choice = upTo(20);
        if (choice < 2) model.dispatch('REQUEST_UNDO');
        else if (choice < 3) {
          // With nothing to redo, the last edit is done again in the selected cell.
          model.selection.selectCell(11, upTo(30));
          model.dispatch('REQUEST_REDO');
        } else if (choice < 4) model.dispatch('ACTIVATE_SHEET', { sheetIdFrom, sheetIdTo: sheetIds[upTo(sheetIds.length)] as string });
        else if (choice < 6) {
          const sheetId = model.getters.getSheetIdByName('Inputs') as string;
          model.dispatch('UPDATE_CELL', { sheetId, col: 2, row: 8 + upTo(18), content: choice === 4 ? '' : String(upTo(400)) });
        } else {
          const [col, row] = [11, upTo(30)];
          model.dispatch('UPDATE_CELL', { sheetId: sheetIdFrom, col, row, content: entries[upTo(entries.length)]?.() ?? '' });
        }
        await new Promise(requestAnimationFrame);
      }
      return state;
    },
    [count, seed] as const,
  );

/** What each check of the workbook says. */
const checks = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const [app] = owl.App.apps;
    if (!app) return [];
    const { getters } = app.root.component.model;
    const values = getters.getEvaluatedCells(getters.getSheetIdByName('Checks') as string).map((cell) => String(cell.value));
    return values.filter((value) => /^(OK|.*broken.*|#.*)$/i.test(value));
  });

/**
 * Megabytes that the page still holds on its first sheet, once it has kept its changes and let go all that it can. What a busy
 * page has not let go yet only ever adds, so the least of three readings is the nearest.
 */
async function held(page: Page): Promise<number> {
  await page.locator('.o-sheet').first().click();
  const inspector = await page.context().newCDPSession(page);
  const readings: number[] = [];
  for (let k = 0; k < 3; k++) {
    await page.evaluate(() => new Promise((done) => setTimeout(done, 700)));
    await inspector.send('HeapProfiler.collectGarbage');
    readings.push((await inspector.send('Runtime.getHeapUsage')).usedSize / 1e6);
  }
  await inspector.detach();
  return Math.min(...readings);
}

type Contents = readonly (readonly [sheetId: string, col: number, row: number, content: string])[];

/** What the cells hold that the edits may change. */
const contents = (page: Page): Promise<Contents> =>
  page.evaluate(() => {
    const [app] = owl.App.apps;
    if (!app) return [];
    const { getters } = app.root.component.model;
    return getters.getSheetIds().flatMap((sheetId) =>
      Array.from({ length: 30 }, (_, row) => row).flatMap((row) =>
        (getters.getSheetName(sheetId) === 'Inputs' ? [2, 11] : [11]).map((col) => {
          const cell = getters.getCell({ sheetId, col, row });
          const content = cell?.isFormula ? cell.compiledFormula.toFormulaString(getters) : (cell?.content ?? '');
          return [sheetId, col, row, content] as const;
        }),
      ),
    );
  });

const putBack = (page: Page, was: Contents): Promise<void> =>
  page.evaluate((cells) => {
    const [app] = owl.App.apps;
    for (const [sheetId, col, row, content] of cells) app?.root.component.model.dispatch('UPDATE_CELL', { sheetId, col, row, content });
  }, was);

it(`takes ${steps} edits, undos, redos and changes of sheet without growing, complaining or failing a check`, {
  timeout: 7_200_000,
}, async () => {
  const { page, complaints } = await openSheet(
    await browser.newContext({ viewport: { width: 1400, height: 900 } }),
    `${inject('site')}/sheet.html`,
  );
  const before = await checks(page);
  const was = await contents(page);
  const memory: number[] = [];
  for (let round = 0, seed = 7; round < rounds; round++) {
    seed = await edit(page, Math.ceil(steps / rounds), seed);
    memory.push(await held(page));
    console.log(`held after round ${round + 1}: ${memory.at(-1)?.toFixed(1)} MB`);
  }
  const warm = memory.slice(0, 2);
  expect(Math.max(...memory.slice(2)) / Math.max(...warm)).toBeLessThan(1.2);
  await putBack(page, was);
  await drawn(page);
  expect(before.length).toBeGreaterThan(5);
  expect(await checks(page)).toEqual(before);
  expect(complaints).toEqual([]);
});
