// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { enough, FakeSpreadsheet, inputAt, inputsSheet } from './fake-spreadsheet.ts';
import { openPane, settled } from './open-pane.ts';

const withInputs = (values: Readonly<Record<string, string | number>> = {}) => new FakeSpreadsheet({ Inputs: inputsSheet(values) });

describe('the survey', () => {
  it('offers to start a budget in a workbook without an Inputs sheet', async () => {
    const host = new FakeSpreadsheet({ Sheet1: {} });
    const pane = await openPane(host);
    await pane.press('Start a blank budget');
    expect(host.started).toEqual(['blank']);
    expect(pane.labelled('Cows').value).toBe('');
  });

  it('writes what is entered into the item’s own cell, wherever its row is', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.enter('Cows', '220');
    expect(host.content('Inputs', inputAt('Cows'))).toBe(220);
  });

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

  it('finds the budget’s inputs beside a sheet of the user’s own that is called Inputs', async () => {
    const host = new FakeSpreadsheet({ Inputs: { A1: 'my own notes' }, 'Inputs (2)': inputsSheet({ Cows: 180 }) });
    const pane = await openPane(host);
    expect(pane.labelled('Cows').value).toBe('180');
  });

  it('shows what is typed into the sheet meanwhile', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.enter('Cows', '220');
    await host.write([{ sheet: 'Inputs', address: inputAt('Cows'), contents: [[300]] }]);
    await settled();
    expect(pane.labelled('Cows').value).toBe('300');
  });

  it('asks before it takes the place of a value typed into the sheet, and keeps it on no', async () => {
    const host = withInputs({ Cows: 150 });
    const pane = await openPane(host);
    await pane.enter('Cows', '160');
    expect(pane.asked()).toContain(`Cows (${inputAt('Cows')}) holds 150 cows: put 160 cows in its place?`);
    expect(host.content('Inputs', inputAt('Cows'))).toBe(150);
    await pane.answer('no');
    expect(host.content('Inputs', inputAt('Cows'))).toBe(150);
    expect(pane.labelled('Cows').value).toBe('150');
  });

  it('writes over a typed value on yes, and over its own without asking', async () => {
    const host = withInputs({ Cows: 150 });
    const pane = await openPane(host);
    await pane.enter('Cows', '160');
    await pane.answer('yes');
    await pane.enter('Cows', '170');
    expect(pane.asked()).toBe('');
    expect(host.content('Inputs', inputAt('Cows'))).toBe(170);
  });

  it('keeps what it refuses in the box, with the reason, and out of the sheet', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.enter('Slurry dry matter', '80');
    expect(pane.said('Slurry dry matter')).toContain('Slurry dry matter (%): 80 is above 15; enter a number from 0.5 to 15');
    expect(pane.labelled('Slurry dry matter').value).toBe('80');
    expect(pane.labelled('Slurry dry matter').getAttribute('aria-invalid')).toBe('true');
    await pane.enter('Cows', 'many');
    expect(pane.said('Cows')).toContain('"many" is not a number as written here');
    expect(host.content('Inputs', inputAt('Slurry dry matter'))).toBeNull();
  });

  it('speaks of what it refuses in the unit beside the box', async () => {
    const pane = await openPane(withInputs({ 'Slurry dry matter': 7 }));
    expect(pane.said('Slurry dry matter')).toContain('Slurry dry matter (%): 700 is above 15');
    await pane.choose('item-cake-dm-unit', 'fraction');
    await pane.enter('Pressed dry matter', '34');
    expect(pane.said('Pressed dry matter')).toMatch(/34 is above 0\.\d+; enter 34% or 0\.34/);
    await pane.choose('item-housed-days-unit', 'weeks a year');
    await pane.enter('Housed days', '60');
    expect(pane.said('Housed days')).toMatch(/Housed days \(weeks a year\): 60 is above 52\.2/);
    await pane.choose('item-interval-days-unit', 'times a week');
    await pane.enter('Days between beddings', '100');
    expect(pane.said('Days between beddings')).toContain(
      'Days between beddings (times a week): 100 is above 28; enter a number from 0.5 to 28',
    );
  });

  it('takes a sum of money with its currency’s sign, and nothing else with one', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.enter('Bought price per t', '£176.50');
    expect(host.content('Inputs', inputAt('Bought price per t'))).toBe(176.5);
    await pane.enter('Kit cost', '96,000 €');
    expect(host.content('Inputs', inputAt('Kit cost'))).toBe(96_000);
    await pane.enter('Cows', '$220');
    expect(pane.said('Cows')).toContain('is not a number as written here');
  });

  it('says why what was typed into the sheet cannot be used', async () => {
    const pane = await openPane(withInputs({ Cows: 'many' }));
    expect(pane.said('Cows')).toContain('"many" is text, not a number');
    expect(pane.text()).toContain('Cows cannot be used as it stands');
  });

  it('says what is unusual, what is needed and what stands in for a blank', async () => {
    const pane = await openPane(withInputs({ 'Days between beddings': 5 }));
    expect(pane.said('Days between beddings')).toContain('5 days is outside the usual 0.5 to 3 days');
    expect(pane.said('Cows')).toContain('Needed.');
    expect(pane.said('Slurry litres per cow')).toMatch(/64 litres\/day is taken.*\(quoted\)/);
  });

  it('asks first for what is needed, and for what is assumed and decides much', async () => {
    const pane = await openPane(withInputs());
    const asked = [...pane.root.querySelectorAll('fieldset label')].map((label) => label.textContent?.trim());
    for (const item of ['Cows', 'Housed days', 'Litres now', 'Labour hours a week now', 'Dryer', 'Dried to dry matter'])
      expect(asked).toContain(item);
    expect(asked).not.toContain('Altitude');
    expect(pane.said('Labour hours a week now')).toMatch(/Not given: 0 h\/week is taken/);
  });

  it('asks for water or heat where neither is given', async () => {
    const pane = await openPane(withInputs());
    for (const item of ['Hot water litres per hour', 'Heat available kW'])
      expect(pane.said(item)).toContain('Needed: this or the other of the two.');
    await pane.enter('Heat available kW', '50');
    expect(pane.said('Hot water litres per hour')).toContain('Not needed: the other of the two is given.');
  });

  it('asks for nothing of a dryer’s where there is none, and says of what is typed that it is not used', async () => {
    const host = withInputs({ 'Dried to dry matter': 0.55 });
    const pane = await openPane(host);
    expect(pane.said('Air m3 per hour')).toContain('Needed.');
    await pane.enter('Dryer', 'no');
    expect(host.content('Inputs', inputAt('Dryer'))).toBe('no');
    expect(pane.said('Air m3 per hour')).toContain('Not needed without a dryer.');
    expect(pane.said('Heat available kW')).toContain('Not needed without a dryer.');
    expect(pane.said('Dried to dry matter')).toContain('Not used without a dryer.');
    expect(pane.said('Loan years')).toContain('Not needed without a loan.');
    await pane.enter('Dryer', 'yes');
    expect(pane.said('Air m3 per hour')).toContain('Needed.');
    expect(pane.said('Dried to dry matter')).not.toContain('Not used');
  });

  it('says beside it why a value cannot stand beside another', async () => {
    const pane = await openPane(withInputs({ Dryer: 'yes', 'Dried to dry matter': 0.3, 'Pressed dry matter': 0.34 }));
    expect(pane.said('Dried to dry matter')).toContain(
      '0.3 is not above the pressed dry matter 0.34; enter the dry matter the dryer reaches',
    );
    expect(pane.text()).toContain('Dried to dry matter cannot be used as it stands');
  });

  it('empties the cell when the box is emptied', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.enter('Altitude', '150');
    await pane.enter('Altitude', '');
    expect(host.content('Inputs', inputAt('Altitude'))).toBeNull();
  });

  it('writes choices and dates as the sheet keeps them', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.enter('Bed', 'deep');
    await pane.enter('Price date', '2026-01-01');
    expect(host.content('Inputs', inputAt('Bed'))).toBe('deep');
    expect(host.content('Inputs', inputAt('Price date'))).toBe(46_023);
  });

  it('reads the locale’s own decimal mark', async () => {
    const host = withInputs();
    host.tag = 'de-DE';
    const pane = await openPane(host);
    await pane.enter('Slurry dry matter', '7,5');
    expect(host.content('Inputs', inputAt('Slurry dry matter'))).toBe(0.075);
  });
});

describe('units as people think of them', () => {
  const way = (host: FakeSpreadsheet, item: string) => host.content('Inputs', inputAt(item));

  it.each([
    ['Days between beddings', 'interval-days', 'times a week', '3.5', 2],
    ['Slurry dry matter', 'slurry-dm', 'fraction', '0.08', 0.08],
    ['Slurry litres per cow', 'litres-cow-day', 'm³ a week', '0.35', 50],
    ['Press t per hour running', 'press-t-h', 'm³/h', '6', 6],
    ['Hot water litres per hour', 'water-l-h', 'litres a minute', '50', 3000],
    ['Labour hours a week with kit', 'labour-h-week-kit', 'minutes a day', '60', 7],
    ['Housed days', 'housed-days', 'weeks a year', '40', 280],
  ])('%s in %s', async (item, id, unit, typed, held) => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.choose(`item-${id}-unit`, unit);
    await pane.enter(item, typed);
    expect(way(host, item)).toBe(held);
  });

  it('asks for the readings that a conversion needs before it writes', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.choose('item-air-m3-h-unit', 'Hz');
    await pane.enter('Air m3 per hour', '40');
    expect(pane.said('Air m3 per hour')).toContain('Fill in the readings with it too');
    expect(way(host, 'Air m3 per hour')).toBeNull();
    await pane.enter('Flow on the fan’s plate', '4000');
    await pane.enter('Hz on the fan’s plate', '50');
    expect(way(host, 'Air m3 per hour')).toBe(3200);
    expect(pane.said('Air m3 per hour')).toContain('In the sheet: 3,200 m³/h');
  });

  it('lays centimetres over a bed of stated size, as litres', async () => {
    const host = withInputs();
    const pane = await openPane(host);
    await pane.choose('item-litres-unit', 'cm deep');
    await pane.enter('Bedding litres per cubicle each time', '2');
    await pane.enter('Length bedded', '1.8');
    await pane.enter('Width bedded', '1.2');
    expect(way(host, 'Bedding litres per cubicle each time')).toBeCloseTo(43.2, 9);
  });

  it('shows the same amount when the unit is changed, and leaves the sheet alone', async () => {
    const host = withInputs({ 'Days between beddings': 2 });
    const pane = await openPane(host);
    await pane.choose('item-interval-days-unit', 'times a week');
    expect(pane.labelled('Days between beddings').value).toBe('3.5');
    expect(way(host, 'Days between beddings')).toBe(2);
  });
});

describe('the running answer', () => {
  it('counts what is still needed and leads to the next of them', async () => {
    const { Cows: _, ...rest } = enough;
    const pane = await openPane(withInputs(rest as Record<string, number>));
    expect(pane.text()).toContain('1 figure is still needed');
    await pane.press('Next: Cows');
    expect(document.activeElement).toBe(pane.labelled('Cows'));
  });

  it('tells cover, saving and payback when all is there, and never a score without span and caution', async () => {
    const pane = await openPane(withInputs(enough as Record<string, number>));
    expect(pane.text()).toMatch(/Cover of demand [\d.]+ times · Saving [\d,−-]+ per year/);
    expect(pane.text()).toMatch(/Hygiene score, fibre \d+ , span \d+–\d+/);
    expect(pane.text()).toContain('Planning aid, no diagnosis: talk to your vet.');
  });

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

  it('comes from fewer than thirty typed values', () => expect(Object.keys(enough).length).toBeLessThan(30));
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
