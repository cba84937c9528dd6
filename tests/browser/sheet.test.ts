import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { functionsFile } from '../../src/core/metadata.ts';
import { registry } from '../../src/functions/index.ts';
import { inputRow } from '../../src/workbook/sheets/inputs.ts';
import { browser } from './browser.ts';
import { drawn, goTo, openSheet, read, servedOnly, spoken, tooltip, type, type Watched } from './sheet-page.ts';
import { untilReplaced } from './waiting.ts';

const dryMatterRow = inputRow('Slurry dry matter');

const placeOfFocus = (page: Page): Promise<string | undefined> =>
  page.evaluate(() => ['actions', 'grid', 'pane'].find((id) => document.getElementById(id)?.contains(document.activeElement)));

let sheet: Watched;
let page: Page;

const open = async (address: string): Promise<void> => {
  const context = await browser.newContext({ viewport: { width: 1400, height: 900 } });
  sheet = await openSheet(context, address);
  page = sheet.page;
};

/** Every page must stay clean: no error or warning, nothing its policy had to stop, no request elsewhere. */
afterEach(() => expect(sheet.complaints).toEqual([]));

describe.each(servedOnly)('the embedded sheet, %s', (_, address) => {
  // One page for all: each test goes on where the one before left it, as a user does.
  beforeAll(() => open(address()));
  beforeEach(async () => {
    await page.locator('#locale').selectOption('en_GB');
    await goTo(page, 'Answer!L2');
  });
  afterAll(() => page.context().close());

  it('works an answer out anew when an input changes', async () => {
    await type(page, 'L2', '100');
    await type(page, 'L3', '=BEDDING.DEMAND.HERD(L2,2)');
    expect(await read(page, 'L3')).toMatch(/ L3: 73$/);
    await type(page, 'L2', '200');
    expect(await read(page, 'L3')).toMatch(/ L3: 146$/);
  });

  it('takes a percentage typed into Inputs with or without its mark, with the locale’s own decimal mark', async () => {
    for (const [code, typed, shown] of [
      ['en_GB', '7.5%', '7.5%'],
      ['en_GB', '6.5', '6.5%'],
      ['de_DE', '5,5%', '5,5%'],
    ] as const) {
      await page.locator('#locale').selectOption(code);
      await type(page, `Inputs!C${dryMatterRow}`, typed);
      expect(await read(page, `E${dryMatterRow}`)).toMatch(/: ok$/);
      expect(await read(page, `H${dryMatterRow}`)).toMatch(new RegExp(`: ${shown.replace('.', '\\.')}$`));
    }
  });

  it('compares a bedding that is typed into an empty budget', async () => {
    await page.getByRole('button', { name: 'New' }).click();
    await untilReplaced(page, () => page.locator('#asking-yes').click());
    for (const [cell, content] of Object.entries({ A7: 'sand', B7: '9', C7: '20', E7: '0' })) await type(page, `Options!${cell}`, content);
    expect(await read(page, 'G7')).toMatch(/: 20\.00$/);
    expect(await read(page, 'A18')).toMatch(/: sand$/);
  });

  it('says in our own sentence what is wrong with a value, in the cell’s tooltip and to a screen reader', async () => {
    await type(page, 'L2', '=BEDDING.DEMAND.HERD(-5,2)');
    expect(await read(page, 'L2')).toContain('L2: #ERROR, cubicles (cubicles): -5 is below 1; enter a number from 1 to ');
    expect(await tooltip(page)).toContain('cubicles (cubicles): -5 is below 1');
  });

  it('spills a table, and a range of answers with each error in its own cell', async () => {
    await type(page, 'L2', '=BEDDING.DEMAND.HERD({100;"many";200},2)');
    expect(await read(page, 'L2')).toMatch(/ L2: 73$/);
    expect(await read(page, 'L3')).toContain('L3: #ERROR, cubicles (cubicles): "many" is text, not a number');
    expect(await read(page, 'L4')).toMatch(/ L4: 146$/);
  });

  it('offers a function by any part of its name, in any case', async () => {
    await page.keyboard.type('=herd');
    await expect.poll(() => page.locator('.o-autocomplete-dropdown').textContent()).toContain('BEDDING.DEMAND.HERD');
    for (let k = 0; k < 2; k++) await page.keyboard.press('Escape');
    await drawn(page);
  });

  it('goes to a cell of any sheet by its address, and says so where there is no such sheet', async () => {
    expect(await read(page, "'Udder health'!B53")).toMatch(/^Udder health B53: /);
    expect(await placeOfFocus(page)).toBe('grid');
    expect(await read(page, 'Inputs!C9')).toMatch(/^Inputs C9: /);
    const box = page.locator('.o-named-range-selector-container input');
    await box.click();
    await box.fill("'Old figures'!A1");
    await box.press('Enter');
    await expect.poll(() => page.locator('#asked').textContent()).toContain('no sheet named Old figures');
    await page.keyboard.press('Enter');
    expect(await spoken(page)).toMatch(/^Inputs C9: /);
  });

  it('is crossed with F6: from the grid to the panel, the buttons and back', async () => {
    await goTo(page, 'L2');
    const visited: (string | undefined)[] = [];
    for (let k = 0; k < 3; k++) {
      await page.keyboard.press('F6');
      visited.push(await placeOfFocus(page));
    }
    expect(visited).toEqual(['pane', 'actions', 'grid']);
    await page.keyboard.press('Shift+F6');
    expect(await placeOfFocus(page)).toBe('actions');
  });

  it('names what it stands on, with its licence, and shows no brand, link or support sentence anywhere else', async () => {
    await page.locator('#about').click();
    const about = page.locator('#about-page');
    await expect.poll(() => about.textContent()).toMatch(/@odoo\/o-spreadsheet19\.3\.7LGPL-3\.0-or-later/);
    expect(await about.textContent()).toContain('GNU LESSER GENERAL PUBLIC LICENSE');
    await page.keyboard.press('Escape');
    for (const menu of await page.locator('.o-topbar-menu').all()) {
      await menu.click();
      await page.locator('.o-menu').first().waitFor();
      expect(await page.locator('main').innerText()).not.toMatch(/odoo|support|https?:/i);
      await page.keyboard.press('Escape');
      await page.locator('.o-menu').first().waitFor({ state: 'detached' });
    }
    await type(page, 'L2', '=BEDDING.DEMAND.HERD()');
    expect(await read(page, 'L2')).not.toMatch(/odoo|support/i);
  });

  it('has buttons, notices and dialogues in which axe finds nothing wrong', async () => {
    const faults = async (within: string): Promise<string[]> => {
      // Without preload: axe would fetch style sheets, and the page's policy lets nothing be fetched.
      const { violations } = await new AxeBuilder({ page }).include(within).options({ preload: false }).analyze();
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' ')}`);
    };
    expect(await faults('#top')).toEqual([]);
    await page.locator('#new').click();
    expect(await faults('#asking')).toEqual([]);
    await page.locator('#asking-no').click();
    await page.locator('#about').click();
    expect(await faults('#about-page')).toEqual([]);
    await page.keyboard.press('Escape');
  });

  it('offers no menu for what cannot work without a server or would not reach a spreadsheet file', async () => {
    const offered: string[] = [];
    for (const menu of await page.locator('.o-topbar-menu').all()) {
      await menu.click();
      offered.push(await page.locator('.o-menu').first().innerText());
      await page.keyboard.press('Escape');
      await page.locator('.o-menu').first().waitFor({ state: 'detached' });
    }
    expect(offered.join(' ')).toContain('Insert');
    expect(offered.join(' ')).not.toMatch(/pivot|image|carousel|irregularity|named range|link/i);
  });

  // tests/surfaces/argument-help.test.ts looks at what the grid is given for each of them.
  it.each(['DEMAND.HERD', 'DRYING.HOTWATER', 'INVEST.IRR', 'BUDGET.PLANS'])(
    'tells while a formula is typed what %s takes, with unit, range and default',
    async (name) => {
      const help = page.locator('.o-formula-assistant');
      for (const { parameters } of functionsFile(registry).functions.filter((one) => one.name === name)) {
        await page.keyboard.type('=');
        await page.keyboard.insertText(`BEDDING.${name}(`);
        await expect.poll(() => help.textContent(), { message: name }).toContain(`BEDDING.${name} (`);
        const said = (await help.textContent()) ?? '';
        for (const parameter of parameters) expect(said, name).toContain(parameter.name);
        if (parameters[0]) expect(said).toContain(parameters[0].description);
        await page.keyboard.press('Escape');
        await page.keyboard.press('Escape');
        await drawn(page);
      }
    },
  );

  it('takes and shows numbers and dates as written in each locale', async () => {
    for (const [code, typed, shown, christmas] of [
      ['en_GB', '1234.5', '1,234.50', '25/12/2026'],
      ['en_IE', '1234.5', '1,234.50', '25/12/2026'],
      ['de_DE', '1234,5', '1.234,50', '25.12.2026'],
      ['fr_FR', '1234,5', '1\u202f234,50', '25/12/2026'],
    ] as const) {
      await page.locator('#locale').selectOption(code);
      const separator = code.startsWith('en') ? ',' : ';';
      await type(page, 'L2', typed);
      await type(page, 'L3', `=TEXT(L2${separator}"#,##0.00")`);
      await type(page, 'L4', `=BEDDING.DEMAND.HERD(L2${separator}2)`);
      await type(page, 'L5', '=DATE(2026'.concat(separator, '12', separator, '25)'));
      expect((await read(page, 'L3')).replace(/[\u00a0\u202f]/g, ' ')).toContain(shown.replace(/[\u00a0\u202f]/g, ' '));
      expect(await read(page, 'L4')).toMatch(code.startsWith('en') ? /: 901\.185$/ : /: 901,185$/);
      expect(await read(page, 'L5')).toContain(christmas);
    }
  });
});
