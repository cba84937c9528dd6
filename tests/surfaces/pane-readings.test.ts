// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { allReadings, blocks } from '../../src/surfaces/pane/read-through-blocks.ts';
import { recordOf } from '../../src/surfaces/pane/records.ts';
import { FakeSpreadsheet, inputAt, inputsSheet } from './fake-spreadsheet.ts';
import { openPane } from './open-pane.ts';

const open = async (values: Readonly<Record<string, number>> = {}) => {
  const host = new FakeSpreadsheet({ Inputs: inputsSheet(values) });
  const pane = await openPane(host, 'readings');
  /** Fills in the boxes of a block, counted from 0, by their readings. */
  const fillIn = async (block: number, readings: Readonly<Record<string, string>>): Promise<void> => {
    for (const [id, text] of Object.entries(readings)) await pane.choose(`reading-${block}-${id}`, text);
  };
  return { host, pane, fillIn };
};

describe('the readings of the walk', () => {
  it('fit the functions they are handed to', () => {
    const known = new Set(allReadings.map(({ id }) => id));
    for (const { readings, findings } of blocks) {
      for (const id of readings) expect(known).toContain(id);
      for (const { of, args } of findings) expect(args.length).toBeLessThanOrEqual(recordOf(of).parameters.length);
      for (const { args } of findings) for (const id of args.flat()) expect(readings).toContain(id);
    }
    for (const { of, id, argument = id } of allReadings) expect(recordOf(of).parameters.map(({ name }) => name)).toContain(argument);
  });

  it('turn minutes on and off into what goes through the press, from what the survey holds', async () => {
    const { pane } = await open({ 'Press t per hour running': 6, 'Minutes on': 30, 'Minutes off': 30, 'Press hours a day': 16 });
    expect(pane.text()).toContain('Slurry through the press: 48 t/day');
  });

  it('say what is still to be read', async () => {
    const { pane } = await open();
    expect(pane.text()).toMatch(/Air flow: needs .*hz the fan is set to now/i);
  });

  it('turn Hz into air flow, and put it into the survey when asked', async () => {
    const { host, pane, fillIn } = await open();
    await fillIn(2, { 'rated-m3-h': '4000', 'rated-hz': '50', hz: '40' });
    // Fan law: flow is proportional to speed, so 40 Hz of 50 gives 0.8.
    expect(pane.text()).toContain('Air flow: 3,200 m³/h');
    await pane.press('Put it into the survey: Air flow');
    expect(host.content('Inputs', inputAt('Air m3 per hour'))).toBe(3200);
  });

  it('give the heater’s effectiveness from temperatures in and out', async () => {
    const { pane, fillIn } = await open({ 'Air m3 per hour': 3200, 'Hot water litres per hour': 3000, 'Hot water temperature': 80 });
    await fillIn(3, { 'ambient-c': '10', 'ambient-rh': '80', 'supply-c': '69.5' });
    expect(pane.text()).toContain('Heater effectiveness: 85 %');
  });

  it('catch a stated output that the air cannot carry', async () => {
    const { pane, fillIn } = await open({ 'Air m3 per hour': 2800, 'Pressed dry matter': 0.355, 'Dried to dry matter': 0.615 });
    await fillIn(4, { 'stated-m3-h': '3', 'density-kg-m3': '250', 'ambient-c': '10', 'ambient-rh': '80', 'supply-c': '72' });
    // 3 m³/h at 250 kg/m³ are 750 kg/h of dried fibre, which need 549 kg of water an hour; saturated, this air carries off 50.7: 10.8 times (common practice, no source; then computed).
    expect(pane.text()).toMatch(/the most this air can carry: 10\.8\d? times Not with this air/);
    // By hand from psychrometrics (saturation by Magnus): 549 kg/h of water at 75 % exhaust humidity and a tenth of the heat lost takes 38,200 m³/h; 2 % for the heat already in the water.
    const air = /Air it would take, as warm: ([\d,]+) m³\/h/.exec(pane.text())?.[1]?.replace(',', '');
    expect(Math.abs(Number(air) / 38_200 - 1)).toBeLessThan(0.02);
  });

  it('go into the survey together, after asking where the sheet holds something else', async () => {
    const { host, pane, fillIn } = await open({ 'Minutes on': 60 });
    await fillIn(0, { 'minutes-on': '20', 'minutes-off': '10' });
    await pane.press('Put these readings into the survey: Minutes on, Minutes off');
    expect(pane.asked()).toContain('holds 60 minutes: put 20 minutes in its place?');
    await pane.answer('yes');
    expect(host.content('Inputs', inputAt('Minutes on'))).toBe(20);
    expect(host.content('Inputs', inputAt('Minutes off'))).toBe(10);
  });

  it('refuse a reading in its own words', async () => {
    const { pane, fillIn } = await open();
    await fillIn(3, { 'ambient-rh': '800' });
    expect(pane.text()).toContain('ambient_rh (fraction): 8 is above 1');
  });
});
