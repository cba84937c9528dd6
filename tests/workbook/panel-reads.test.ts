import { expect, it } from 'vitest';
import { readHowSure } from '../../src/surfaces/pane/how-sure.ts';
import { readNames } from '../../src/surfaces/pane/inputs-sheet.ts';
import { readOffers } from '../../src/surfaces/pane/offers.ts';
import { reading } from '../../src/surfaces/sheet/reading.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { evaluate } from './evaluate.ts';

/** The panel finds sentences, tables and names by their words: these are the words that the budget's own sheets use. */

const model = evaluate(budgetWorkbook());
const host = reading(() => model);

it('the panel finds what How sure, Size and Acceptance say', async () => {
  expect(await readHowSure(host)).toEqual([
    expect.stringMatching(/^Of many plans drawn .+ cover the beds, .+ pay/),
    expect.stringMatching(/^Most would be told by: /),
  ]);
  const offers = [...(await readOffers(host))];
  expect(offers.map(([{ key }]) => key)).toEqual(expect.arrayContaining(['air_m3_h', 'press_t_h', 'fresh_density_kg_m3', 'capture']));
  for (const [{ parameter }, { value }] of offers) {
    const [lowest, highest] = parameter.range as readonly [number, number];
    expect(value).toBeGreaterThanOrEqual(lowest);
    expect(value).toBeLessThanOrEqual(highest);
  }
});

it('the panel finds whose budget it is', async () => {
  expect([...(await readNames(host, 'Inputs')).keys()].sort()).toEqual(['Currency sign', 'Herd', 'Prepared by']);
});
