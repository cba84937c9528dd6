import { readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { patience } from '../../patience.ts';
import { onAnswer } from '../answer-cells.ts';
import { pages, type servedOnly } from '../sheet-page.ts';
import type { Engine, Tab } from './driver.ts';

const needed = onAnswer('Fibre needed');

let engine: Engine;
let tab: Tab;

const ready = async (): Promise<void> => {
  const isReady = () =>
    tab.evaluate(() => document.querySelector('#spoken')?.textContent !== '' && document.querySelector('.o-grid-overlay') !== null);
  await vi.waitUntil(isReady, { timeout: patience.wait });
};

const drawn = (): Promise<boolean> =>
  tab.evaluate(() => new Promise((then) => requestAnimationFrame(() => requestAnimationFrame(() => then(true)))));

/** The pane looks at the sheet a moment after it changed; a timer of the page's own that is set later and for longer ends after that. */
const settled = async (): Promise<void> => {
  await tab.evaluate(() => new Promise((then) => setTimeout(then, 150)));
  await drawn();
};

const textOf = (css: string): Promise<string> => tab.evaluate((within) => document.querySelector(within)?.textContent ?? '', css);

/** Moves to a cell as a user does, by typing its address into the box left of the tools. */
async function goTo(address: string): Promise<void> {
  const box = '.o-named-range-selector-container input';
  await tab.click(box);
  await tab.evaluate((css) => document.querySelector<HTMLInputElement>(css)?.select(), box);
  await tab.type(address);
  await tab.press('Enter');
  await expect.poll(() => textOf('#spoken')).toMatch(new RegExp(` ${address.split('!').at(-1)} ?[^:]*:`));
  await drawn();
}

async function read(address: string): Promise<string> {
  await goTo(address);
  return textOf('#spoken');
}

async function type(address: string, content: string): Promise<void> {
  await goTo(address);
  await tab.type(content);
  await tab.press('Enter');
  await drawn();
}

/** Does what puts another workbook on screen, and waits until the grid before it is gone. */
async function untilReplaced(act: () => Promise<void>): Promise<void> {
  await tab.evaluate(() => document.querySelector('#grid > div')?.setAttribute('data-before', ''));
  await act();
  await expect.poll(() => tab.evaluate(() => document.querySelector('[data-before]') === null)).toBe(true);
  await settled();
}

/** The panel, where it is not on show yet. */
async function showPanel(): Promise<void> {
  if (await tab.evaluate(() => document.querySelector<HTMLElement>('#pane')?.hidden)) await tab.click('#pane-toggle');
}

/** What every browser must do; the rest of the browser tests hold the details in one of them. */
export function everyBrowser(name: string, start: () => Promise<Engine>, on: typeof servedOnly = pages): void {
  beforeAll(async () => {
    engine = await start();
    tab = engine.tab;
  });
  afterAll(() => engine?.close());

  // One page for all: each test goes on where the one before left it, as a user does.
  describe.each(on)(`the sheet in ${name}, %s`, (_, address) => {
    beforeAll(async () => {
      await tab.resize({ width: 1400, height: 1000 });
      await tab.open(address());
      await ready();
    });

    it('opens with a budget in it', async () => {
      expect(await read(needed)).toMatch(/: 229\.2$/);
    });

    it('works an answer out anew when an input changes', async () => {
      await type('Inputs!C10', '400');
      expect(await read('C10')).toMatch(/C10: 400$/);
      expect(await read(needed)).toMatch(/: 342\.1$/);
    });

    it('says in a sentence what is wrong with a value', async () => {
      await type('Answer!L2', '=BEDDING.DEMAND.HERD(-5,2)');
      expect(await read('L2')).toContain('L2: #ERROR, cubicles (cubicles): -5 is below 1; enter a number from 1 to ');
    });

    it('shows numbers as the locale writes them', async () => {
      const choose = (code: string) =>
        tab.evaluate((wanted) => {
          const choice = document.querySelector('#locale') as HTMLSelectElement;
          choice.value = wanted;
          choice.dispatchEvent(new Event('change'));
        }, code);
      await choose('de_DE');
      expect(await read(needed)).toMatch(/: 342,1$/);
      await choose('en_GB');
    });

    it('draws its charts', async () => {
      await goTo('Investment!A40');
      const colours = () =>
        tab.evaluate(() =>
          [...document.querySelectorAll<HTMLCanvasElement>('.o-figure canvas')].map((canvas) => {
            const { data } = (canvas.getContext('2d') as CanvasRenderingContext2D).getImageData(0, 0, canvas.width, canvas.height);
            return new Set(new Uint32Array(data.buffer)).size;
          }),
        );
      await expect.poll(async () => (await colours()).filter((count) => count > 20).length).toBeGreaterThan(0);
    });

    it('has every part of the panel, and takes a figure typed into the survey', async () => {
      for (const part of ['readings', 'functions', 'explain', 'checks', 'cautions', 'survey']) {
        await tab.click(`#part-${part}`);
        await settled();
        expect((await textOf('#pane .part')).length, part).toBeGreaterThan(100);
      }
      await tab.click('#item-cows');
      await tab.evaluate(() => document.querySelector<HTMLInputElement>('#item-cows')?.select());
      await tab.type('251');
      await tab.press('Tab');
      await expect.poll(() => textOf('#pane dialog[open] p')).toContain('put 251 cows in its place?');
      await tab.click('#pane-yes');
      await settled();
      expect(await read('Inputs!C9')).toMatch(/C9: 251$/);
    });

    it('finds a function by a farm word, and works it out', async () => {
      await tab.click('#part-functions');
      await settled();
      await tab.click('#search');
      await tab.type('chimney');
      await settled();
      await tab.click('#pane .list li:first-child button');
      await settled();
      await tab.click('#argument-m3-h');
      await tab.type('3000');
      await tab.click('#argument-diameter-m');
      await tab.type('0.4');
      await tab.press('Tab');
      await settled();
      await expect.poll(() => textOf('#result')).toMatch(/6\.63\d? m\/s/);
    });

    it('opens what it saved, as it was, and refuses another file in a sentence', async () => {
      await type('Answer!L3', 'kept with the copy');
      const copy = await tab.saved(() => tab.click('#save'));
      expect(basename(copy)).toMatch(/bedding \d{4}-\d\d-\d\d\.json$/);
      await type('Answer!L3', 'changed since');
      await untilReplaced(() => tab.pick('#file', copy));
      expect(await read('Answer!L3')).toContain('L3: kept with the copy');
      const other = join(tmpdir(), `shopping list ${process.pid}.json`);
      await writeFile(other, '{"milk": 2}');
      await tab.pick('#file', other);
      await expect.poll(() => textOf('#asked')).toContain('is not a copy saved from this page. The workbook you had is still here.');
      await rm(other);
      await tab.click('#asking-yes');
      expect(await read('Answer!L3')).toContain('L3: kept with the copy');
    });

    it('exports its figures as a spreadsheet file', async () => {
      const file = await tab.saved(() => tab.click('#export'));
      const parts = unzipSync(await readFile(file));
      expect(strFromU8(parts['xl/worksheets/sheet0.xml'] as Uint8Array)).toMatch(/<c r="B13"[^>]*>[\s\S]*?<v>342\.\d+<\/v>/);
    });

    it('prints the sheet alone', async () => {
      await goTo('Answer!A1');
      await tab.click('#print');
      await expect.poll(() => tab.evaluate(() => document.querySelectorAll('.o-print-page').length)).toBe(1);
      // The rules for paper, tried on the screen.
      const onPaper = await tab.evaluate(() => {
        const turn = (rules: CSSRuleList): void => {
          for (const rule of rules) {
            if (rule instanceof CSSMediaRule && rule.media.mediaText === 'print') rule.media.mediaText = 'all';
            if ('cssRules' in rule) turn(rule.cssRules as CSSRuleList);
            if (rule instanceof CSSImportRule && rule.styleSheet) turn(rule.styleSheet.cssRules);
          }
        };
        for (const sheet of document.styleSheets) turn(sheet.cssRules);
        return ['#top', '#pane', '.o-print-header', '.o-print-page'].filter((css) => {
          const box = document.querySelector(css)?.getBoundingClientRect();
          return box && box.width * box.height > 0;
        });
      });
      expect(onPaper).toEqual(['.o-print-page']);
      const printed = await tab.evaluate(() => {
        let asked = 0;
        window.print = () => void asked++;
        for (const button of document.querySelectorAll<HTMLElement>('.o-print-header button'))
          if (button.textContent?.includes('Print')) button.click();
        return asked;
      });
      expect(printed).toBe(1);
    });

    it('keeps the workbook through a reload', async () => {
      await type('Answer!L4', 'and kept by itself');
      await expect.poll(() => textOf('#kept')).toContain('Kept at');
      expect(await tab.evaluate(() => window.complaints)).toEqual([]);
      await tab.open(address());
      await ready();
      expect(await read('Inputs!C10')).toMatch(/C10: 400$/);
      expect(await read('Answer!L3')).toContain('L3: kept with the copy');
      expect(await read('Answer!L4')).toContain('L4: and kept by itself');
    });

    it('has room for the grid and reaches every button on a telephone', async () => {
      await tab.resize({ width: 390, height: 844 });
      await expect.poll(() => tab.evaluate(() => window.innerWidth)).toBe(390);
      await goTo('Inputs!C9');
      const seen = await tab.evaluate(() => ({
        over: document.documentElement.scrollWidth - window.innerWidth,
        grid: document.querySelector('.o-grid-overlay')?.getBoundingClientRect().width ?? 0,
        beyond: [...document.querySelectorAll('#top :is(button, select)')]
          .filter((one) => {
            one.scrollIntoView();
            const { left, right } = one.getBoundingClientRect();
            return left < 0 || right > window.innerWidth + 1;
          })
          .map(({ id }) => id),
      }));
      expect(seen.over).toBe(0);
      expect(seen.grid).toBeGreaterThan(300);
      expect(seen.beyond).toEqual([]);
      await showPanel();
      expect(await tab.evaluate(() => document.querySelector('#pane')?.getBoundingClientRect().width)).toBeGreaterThan(300);
    });

    it('complains of nothing', async () => {
      expect(await tab.evaluate(() => window.complaints)).toEqual([]);
    });
  });
}
