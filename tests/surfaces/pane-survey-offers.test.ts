// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { enough, FakeSpreadsheet, inputAt, inputsSheet } from './fake-spreadsheet.ts';
import { openPane, settled } from './open-pane.ts';

describe('whose budget it is', () => {
  it('asks first whose budget it is, and writes names beside their labels', async () => {
    const host = new FakeSpreadsheet({
      Inputs: { ...inputsSheet({}), F1: 'Herd', F2: 'Prepared by', H1: 'Currency sign', G1: 'Long Lane' },
    });
    const pane = await openPane(host);
    expect(pane.labelled('Herd').value).toBe('Long Lane');
    await pane.enter('Prepared by', 'the plant’s adviser');
    expect(host.content('Inputs', 'G2')).toBe('the plant’s adviser');
    await pane.enter('Currency sign', '£');
    expect(host.content('Inputs', 'I1')).toBe('£');
  });

  it('asks before another name takes the place of one that stands there, and takes no formula for a name', async () => {
    const host = new FakeSpreadsheet({ Inputs: { ...inputsSheet({}), F1: 'Herd', G1: 'Long Lane' } });
    const pane = await openPane(host);
    await pane.enter('Herd', 'Short Lane');
    expect(pane.asked()).toBe('Herd (G1) holds Long Lane: put Short Lane in its place?');
    await pane.answer('no');
    expect(host.content('Inputs', 'G1')).toBe('Long Lane');
    expect(pane.labelled('Herd').value).toBe('Long Lane');
    await pane.enter('Herd', '=A1');
    expect(host.content('Inputs', 'G1')).toBe('Long Lane');
  });
});

describe('how a value is known', () => {
  it('marks how a value is known, once there is one, in its own column of the sheet', async () => {
    const row = Number(inputAt('Cows').slice(1));
    const host = new FakeSpreadsheet({ Inputs: { ...inputsSheet({ Cows: 150 }), H1: 'how known' } });
    const pane = await openPane(host);
    const boxes = [...document.querySelectorAll('select[id$="-known"]')].map(({ id }) => id);
    expect(boxes).toEqual(['item-cows-known']);
    const mark = document.querySelector('#item-cows-known') as HTMLSelectElement;
    mark.value = 'read off';
    mark.dispatchEvent(new Event('change'));
    await settled();
    expect(host.content('Inputs', `H${row}`)).toBe('read off');
    expect((document.querySelector('#item-cows-known') as HTMLSelectElement).value).toBe('read off');
    expect(pane.labelled('Cows').value).toBe('150');
    // Emptied and left by Tab: the keyboard stands on the mark, which stays until it is left too.
    (document.querySelector('#item-cows-known') as HTMLElement).focus();
    await host.write([{ sheet: 'Inputs', address: inputAt('Cows'), contents: [[null]] }]);
    await settled();
    expect(document.activeElement?.id).toBe('item-cows-known');
  });
});

describe('what other sheets say', () => {
  it('says how likely that is and what to measure next, as How sure has it, and not while something is missing', async () => {
    const words = {
      A6: 'Of many plans drawn 7 of 10 cover the beds, 4 of 10 pay.',
      A7: 'Most would be told by: Fresh density. Weigh a bucket.',
    };
    const host = new FakeSpreadsheet({ Inputs: inputsSheet(enough as Record<string, number>), 'How sure': words });
    const pane = await openPane(host);
    await expect.poll(() => pane.text()).toContain('7 of 10 cover the beds, 4 of 10 pay.');
    expect(pane.text()).toContain('Most would be told by: Fresh density.');
    await host.write([{ sheet: 'Inputs', address: inputAt('Cows'), contents: [[null]] }]);
    await settled();
    expect(pane.text()).not.toContain('Of many plans drawn');
  });
});

describe('the needed size', () => {
  it('goes into the plan at a press, and asks first even where the survey wrote what is there', async () => {
    const size = { A3: 'what', D3: 'needed', A4: 'Slurry per cow', D4: 54, A5: 'Heat available kW', D5: 50.61 };
    const host = new FakeSpreadsheet({ Inputs: inputsSheet({}), Size: size });
    const pane = await openPane(host);
    await pane.enter('Heat available kW', '46');
    await expect.poll(() => pane.text()).toContain('The worst month asks for 50.7 kW');
    await pane.press('Put the needed size into the plan');
    expect(pane.asked()).toContain('holds 46 kW: put 50.7 kW in its place?');
    await pane.answer('no');
    expect(host.content('Inputs', inputAt('Heat available kW'))).toBe(46);
    await pane.press('Put the needed size into the plan');
    await pane.answer('yes');
    expect(host.content('Inputs', inputAt('Heat available kW'))).toBe(50.7);
    expect(pane.labelled('Heat available kW').value).toBe('50.7');
  });
});

describe('what was measured on the plant', () => {
  const acceptance = {
    A3: 'item',
    B3: 'measured',
    E3: 'result',
    A4: 'Fresh density',
    B4: 295.04,
    E4: 'OK, for Inputs',
    A5: 'Exhaust humidity',
    B5: 1.4,
    E5: 'cannot be: read again',
  };

  it('goes into the plan at a press and is marked measured; what cannot be is not offered', async () => {
    const [density] = budgetItems.filter(({ key }) => key === 'fresh_density_kg_m3');
    const name = density?.name as string;
    const host = new FakeSpreadsheet({ Inputs: { ...inputsSheet({}), H1: 'how known' }, Acceptance: { ...acceptance, A4: name } });
    const pane = await openPane(host);
    await expect.poll(() => pane.text()).toContain('Measured on the plant: 295 kg/m³');
    expect(pane.text()).not.toContain('1.4');
    await pane.press('Put the measured value into the plan');
    expect(host.content('Inputs', inputAt(name))).toBe(295);
    expect(host.content('Inputs', inputAt(name).replace('B', 'H'))).toBe('measured');
    expect(pane.text()).not.toContain('Put the measured value');
  });

  it('does not take the place of what is typed without asking, nor mark what was kept', async () => {
    const [density] = budgetItems.filter(({ key }) => key === 'fresh_density_kg_m3');
    const name = density?.name as string;
    const host = new FakeSpreadsheet({
      Inputs: { ...inputsSheet({ [name]: 310 }), H1: 'how known' },
      Acceptance: { ...acceptance, A4: name },
    });
    const pane = await openPane(host);
    await expect.poll(() => pane.text()).toContain('Measured on the plant');
    await pane.press('Put the measured value into the plan');
    expect(pane.asked()).toContain('holds 310 kg/m³: put 295 kg/m³ in its place?');
    await pane.answer('no');
    expect(host.content('Inputs', inputAt(name))).toBe(310);
    expect(host.content('Inputs', inputAt(name).replace('B', 'H'))).toBe(null);
  });
});
