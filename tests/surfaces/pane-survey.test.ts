// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
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

  it('comes from fewer than thirty typed values', () => expect(Object.keys(enough).length).toBeLessThan(30));
});
