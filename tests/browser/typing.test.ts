import type { CDPSession, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { inputRow } from '../../src/workbook/sheets/inputs.ts';
import { browser } from './browser.ts';
import { goTo, openSheet, pages, read, type, type Watched } from './sheet-page.ts';
import { untilReplaced } from './waiting.ts';

const dryMatter = `Inputs!C${inputRow('Slurry dry matter')}`;

const named: Readonly<Record<string, readonly [code: string, keyCode: number, text?: string]>> = {
  Enter: ['Enter', 13, '\r'],
  Tab: ['Tab', 9],
  Escape: ['Escape', 27],
  F2: ['F2', 113],
  F6: ['F6', 117],
  ArrowLeft: ['ArrowLeft', 37],
  ArrowRight: ['ArrowRight', 39],
  ArrowUp: ['ArrowUp', 38],
  ArrowDown: ['ArrowDown', 40],
  Backspace: ['Backspace', 8],
};

let sheet: Watched;
let page: Page;
let keyboard: CDPSession;

/** Every key down and up, none of them waiting until the page has taken the one before; a letter or a name of a key each. */
async function hurry(...keys: readonly string[]): Promise<void> {
  await slow();
  const sent = keys.flatMap((key) => {
    const [code, windowsVirtualKeyCode, text] = named[key] ?? ['', /\w/.test(key) ? key.toUpperCase().charCodeAt(0) : 0, key];
    const event = { key, code, windowsVirtualKeyCode };
    return [
      keyboard.send('Input.dispatchKeyEvent', { ...event, type: text ? 'keyDown' : 'rawKeyDown', ...(text && { text }) }),
      keyboard.send('Input.dispatchKeyEvent', { ...event, type: 'keyUp' }),
    ];
  });
  await atLeisure(Promise.all(sent));
}

/** On a page so slow that no frame comes between two keys. */
const slow = () => keyboard.send('Emulation.setCPUThrottlingRate', { rate: 6 });

async function atLeisure(sent: Promise<unknown>): Promise<void> {
  await sent;
  await keyboard.send('Emulation.setCPUThrottlingRate', { rate: 1 });
}

const letters = (text: string): string[] => [...text];

beforeAll(async () => {
  sheet = await openSheet(await browser.newContext({ viewport: { width: 1400, height: 900 } }), pages[0][1]());
  page = sheet.page;
  keyboard = await page.context().newCDPSession(page);
});

afterEach(async () => {
  expect(sheet.complaints).toEqual([]);
});
afterAll(() => page?.context().close());

describe('keys that come faster than the page draws', () => {
  it('take the place of what the cell holds', async () => {
    await type(page, 'L2', '260');
    await goTo(page, 'L2');
    await hurry(...letters('77'), 'Enter');
    expect(await read(page, 'L2')).toMatch(/ L2: 77$/);
  });

  it('fill a column, each cell with its own', async () => {
    await goTo(page, 'L2');
    await hurry(...['301', '269', '8.5', '0', '=L2*2', 'dry'].flatMap((entry) => [...letters(entry), 'Enter']));
    await goTo(page, 'L2');
    await hurry(...['302', '=L2+L4'].flatMap((entry) => [...letters(entry), 'ArrowDown']), 'Tab');
    expect(await read(page, 'L2')).toMatch(/ L2: 302$/);
    expect(await read(page, 'L3')).toMatch(/ L3: 310\.5$/);
    expect(await read(page, 'L4')).toMatch(/ L4: 8\.5$/);
    expect(await read(page, 'L5')).toMatch(/ L5: 0$/);
    expect(await read(page, 'L6')).toMatch(/ L6: 604$/);
    expect(await read(page, 'L7')).toMatch(/ L7: dry$/);
  });

  it('are a percentage in a cell of percentages, with its mark or without', async () => {
    await goTo(page, dryMatter);
    for (const typed of ['8.1', '8.1%']) {
      await goTo(page, dryMatter);
      await hurry(...letters(typed), 'Enter');
      expect(await read(page, dryMatter)).toMatch(/: 8\.1%$/);
    }
  });

  it('go on where F2 or a double click opens the cell', async () => {
    await type(page, 'L2', '260');
    await type(page, 'L3', '41');
    await goTo(page, 'L2');
    await hurry('F2', ...letters('5'), 'Enter', 'F2', 'ArrowLeft', ...letters('7'), 'Enter');
    expect(await read(page, 'L2')).toMatch(/ L2: 2605$/);
    expect(await read(page, 'L3')).toMatch(/ L3: 471$/);
    const corner = await page.locator('.o-autofill').boundingBox();
    if (!corner) throw new Error('the active cell is not in sight');
    await page.mouse.dblclick(corner.x - 20, corner.y - 8);
    await hurry('Backspace', ...letters('9'), 'Enter');
    expect(await read(page, 'L3')).toMatch(/ L3: 479$/);
  });

  it('point at cells of a formula with the arrows', async () => {
    await type(page, 'L2', '3');
    await type(page, 'M2', '4');
    await goTo(page, 'N2');
    await hurry('=', 'ArrowLeft', '*', 'ArrowLeft', 'ArrowLeft', '+', '1', 'Enter');
    expect(await read(page, 'N2')).toMatch(/ N2: 13$/);
  });

  it('stay what they are while the panel writes into the sheet, and are entered when F6 leaves for the panel', async () => {
    await type(page, 'L2', '260');
    await goTo(page, 'L2');
    await hurry(...letters('77'));
    await page.evaluate(() => {
      const [app] = owl.App.apps;
      if (!app) throw new Error('no grid is on the page');
      const { model } = app.root.component;
      const cell = (col: number, content: string) => ({ sheetId: model.getters.getActiveSheetId(), col, row: 1, content });
      (model.dispatch as (command: string, given: object) => unknown)('FILL_CELLS', { cells: [cell(11, '5'), cell(12, '6')] });
    });
    await hurry('8', 'F6');
    expect(await read(page, 'L2')).toMatch(/ L2: 778$/);
    expect(await read(page, 'M2')).toMatch(/ M2: 6$/);
  });

  it('are dropped by Escape, and the cell is as it was', async () => {
    await type(page, 'L2', '260');
    await goTo(page, 'L2');
    await hurry(...letters('77'), 'Escape', 'ArrowDown', ...letters('5'), 'Enter');
    expect(await read(page, 'L2')).toMatch(/ L2: 260$/);
    expect(await read(page, 'L3')).toMatch(/ L3: 5$/);
  });

  it('are taken from an input method, which composes them', async () => {
    await type(page, 'L2', '260');
    await goTo(page, 'L2');
    const compose = (text: string) =>
      keyboard.send('Input.imeSetComposition', { text, selectionStart: text.length, selectionEnd: text.length });
    await slow();
    await atLeisure(Promise.all([compose('し'), compose('しき'), keyboard.send('Input.insertText', { text: '敷料' })]));
    await hurry('Enter');
    expect(await read(page, 'L2')).toMatch(/ L2: 敷料$/);
    await goTo(page, dryMatter);
    await slow();
    await atLeisure(Promise.all([compose('8'), compose('8.'), compose('8.1'), keyboard.send('Input.insertText', { text: '8.1' })]));
    await hurry('Enter');
    expect(await read(page, dryMatter)).toMatch(/: 8\.1%$/);
  });
});

it('a command that the grid stops on leaves a sheet that goes on, and says so', async () => {
  await type(page, 'L2', '260');
  await page.evaluate(() => {
    const [app] = owl.App.apps;
    if (!app) throw new Error('no grid is on the page');
    const { session } = app.root.component.model as unknown as { session: { commandSquisher: { squish: () => never } } };
    session.commandSquisher.squish = () => {
      throw new Error('cannot be sent');
    };
  });
  await untilReplaced(page, () => type(page, 'L3', '41'));
  expect(await page.locator('#notices').textContent()).toContain('was set up again');
  await type(page, 'L4', '=L2+L3');
  expect(await read(page, 'L4')).toMatch(/ L4: 301$/);
});
