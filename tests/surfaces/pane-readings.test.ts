// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { allReadings, blocks } from '../../src/surfaces/pane/read-through-blocks.ts';
import { recordOf } from '../../src/surfaces/pane/records.ts';
import { FakeSpreadsheet, inputAt, inputsSheet } from './fake-spreadsheet.ts';
import { openPane } from './open-pane.ts';

const open = async (values: Readonly<Record<string, number>> = {}) => {
  const host = new FakeSpreadsheet({ Inputs: inputsSheet(values) });
  return { host, pane: await openPane(host, 'readings') };
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
    const { host, pane } = await open();
    const [flow, plate, now] = ['rated-m3-h', 'rated-hz', 'hz'].map((id) => document.getElementById(`reading-2-${id}`) as HTMLInputElement);
    for (const [box, text] of [
      [flow, '4000'],
      [plate, '50'],
      [now, '40'],
    ] as const) {
      (box as HTMLInputElement).value = text;
      box?.dispatchEvent(new Event('change'));
    }
    // Fan law: flow is proportional to speed, so 40 Hz of 50 gives 0.8.
    expect(pane.text()).toContain('Air flow: 3,200 m³/h');
    await pane.press('Put it into the survey: Air flow');
    expect(host.content('Inputs', inputAt('Air m3 per hour'))).toBe(3200);
  });

  it('give the heater’s effectiveness from temperatures in and out', async () => {
    const { pane } = await open({ 'Air m3 per hour': 3200, 'Hot water litres per hour': 3000, 'Hot water temperature': 80 });
    const put = (id: string, text: string) => {
      const box = document.getElementById(`reading-3-${id}`) as HTMLInputElement;
      box.value = text;
      box.dispatchEvent(new Event('change'));
    };
    put('ambient-c', '10');
    put('ambient-rh', '80');
    put('supply-c', '69.5');
    expect(pane.text()).toContain('Heater effectiveness: 85 %');
  });

  it('catch a stated output that the air cannot carry', async () => {
    const { pane } = await open({ 'Air m3 per hour': 2800, 'Pressed dry matter': 0.355, 'Dried to dry matter': 0.615 });
    const put = (id: string, text: string) => {
      const box = document.getElementById(`reading-4-${id}`) as HTMLInputElement;
      box.value = text;
      box.dispatchEvent(new Event('change'));
    };
    put('stated-m3-h', '3');
    put('density-kg-m3', '250');
    put('ambient-c', '10');
    put('ambient-rh', '80');
    put('supply-c', '72');
    // 3 m³/h at 250 kg/m³ are 750 kg/h of dried fibre, which need 549 kg of water an hour; saturated, this air carries off 50.7: 10.8 times (common practice, no source; then computed).
    expect(pane.text()).toMatch(/the most this air can carry: 10\.8\d? times Not with this air/);
  });

  it('go into the survey together, after asking where the sheet holds something else', async () => {
    const { host, pane } = await open({ 'Minutes on': 60 });
    for (const [id, text] of [
      ['minutes-on', '20'],
      ['minutes-off', '10'],
    ] as const) {
      const box = document.getElementById(`reading-0-${id}`) as HTMLInputElement;
      box.value = text;
      box.dispatchEvent(new Event('change'));
    }
    await pane.press('Put these readings into the survey: Minutes on, Minutes off');
    expect(pane.asked()).toContain('holds 60 minutes: put 20 minutes in its place?');
    await pane.answer('yes');
    expect(host.content('Inputs', inputAt('Minutes on'))).toBe(20);
    expect(host.content('Inputs', inputAt('Minutes off'))).toBe(10);
  });

  it('refuse a reading in its own words', async () => {
    const { pane } = await open();
    const box = document.getElementById('reading-3-ambient-rh') as HTMLInputElement;
    box.value = '800';
    box.dispatchEvent(new Event('change'));
    expect(pane.text()).toContain('ambient_rh (fraction): 8 is above 1');
  });
});
