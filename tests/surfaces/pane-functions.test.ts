// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { findFunctions } from '../../src/surfaces/pane/function-search.ts';
import { FakeSpreadsheet } from './fake-spreadsheet.ts';
import { openPane, settled } from './open-pane.ts';

describe('the search for a function', () => {
  it.each([
    ['how long between beddings', 'HYGIENE.MAXINTERVAL'],
    ['loan', 'INVEST.LOAN'],
    ['chimney', 'PLANT.CHIMNEYSPEED'],
    ['how much sawdust do I need', 'DEMAND.HERD'],
    ['what does a tonne cost', 'COST.TONNE'],
    ['mastitis', 'UDDER.RATE'],
    ['supplier says', 'DRYING.CLAIM'],
    ['chimny', 'PLANT.CHIMNEYSPEED'],
    ['=BEDDING.DRYING.WATER', 'DRYING.WATER'],
    ['is it dusty in the drum exhaust', 'DRYING.EXHAUST'],
  ])('by “%s” finds %s among the first five', (query, name) => {
    expect(
      findFunctions(query)
        .slice(0, 5)
        .map((record) => record.name),
    ).toContain(name);
  });

  it('shows all functions before anything is typed, and none for nonsense', () => {
    expect(findFunctions('').length).toBeGreaterThan(60);
    expect(findFunctions('xqzw')).toEqual([]);
  });
});

describe('a function’s form', () => {
  const open = async (host: FakeSpreadsheet, name: string) => {
    const pane = await openPane(host, 'functions');
    await pane.search(name);
    await pane.press(name);
    return pane;
  };

  it('shows the result before it goes into the cell, and then puts it there', async () => {
    const host = new FakeSpreadsheet({ Sheet1: {} });
    const pane = await open(host, 'DRYING.WATER');
    expect(pane.text()).toContain('Fill in the arguments to see the result.');
    await pane.enter('dried', '872');
    await pane.enter('dm_in (fraction)', '75%');
    await pane.enter('dm_out (fraction)', '0.86');
    // IRRI Rice Knowledge Bank: 1,000 kg of paddy dried from 25 % to 14 % moisture leaves 872 kg.
    expect(document.getElementById('result')?.textContent).toMatch(/127\.9|128/);
    await host.select({ sheet: 'Sheet1', address: 'C5' });
    await settled();
    await pane.press('Insert at Sheet1!C5');
    expect(host.content('Sheet1', 'C5')).toBe('=BEDDING.DRYING.WATER(872,0.75,0.86)');
  });

  it('says beside the box what is wrong with it', async () => {
    const pane = await open(new FakeSpreadsheet({ Sheet1: {} }), 'DRYING.WATER');
    await pane.enter('dm_in (fraction)', '35');
    expect(pane.said('dm_in (fraction)')).toContain('35 is above 1; enter 35% or 0.35');
  });

  it('takes the selected cells as an argument, from whichever sheet they are on', async () => {
    const host = new FakeSpreadsheet({ Sheet1: {}, 'Other sheet': { B2: 10, B3: 20 } });
    const pane = await open(host, 'DEMAND.LOADS');
    await host.select({ sheet: 'Other sheet', address: 'B2:B3' });
    await pane.press('Use selected cells for cubicles');
    expect(pane.labelled('cubicles (cubicles)').value).toBe("'Other sheet'!B2:B3");
    await pane.enter('litres (litres)', '100');
    await pane.enter('dispenser_m3 (m³)', '1');
    expect(pane.text()).toContain('2 rows by 1 column:');
    await host.select({ sheet: 'Sheet1', address: 'A1' });
    await settled();
    await pane.press('Insert at Sheet1!A1');
    expect(host.content('Sheet1', 'A1')).toBe("=BEDDING.DEMAND.LOADS('Other sheet'!B2:B3,100,1)");
  });

  it('asks before it covers anything, names what that is, and clears it only on yes', async () => {
    const host = new FakeSpreadsheet({ Sheet1: { A1: 'mine', B3: 7 } });
    const pane = await open(host, 'INVEST.LOAN');
    for (const [label, text] of [
      ['borrowed (money)', '30000'],
      ['years (years)', '3'],
      ['rate (fraction)', '6%'],
    ] as const) {
      await pane.enter(label, text);
    }
    expect(pane.text()).toContain('4 rows by 5 columns');
    await pane.press('Insert at Sheet1!A1');
    expect(pane.asked()).toContain('A1, B3 are filled in on Sheet1');
    await pane.answer('no');
    expect(host.content('Sheet1', 'A1')).toBe('mine');
    await pane.press('Insert at Sheet1!A1');
    await pane.answer('yes');
    expect(host.content('Sheet1', 'A1')).toBe('=BEDDING.INVEST.LOAN(30000,3,0.06)');
    expect(host.content('Sheet1', 'B3')).toBeNull();
  });

  it('does not start a table that the sheet has no room for', async () => {
    const host = new FakeSpreadsheet({ Sheet1: {} }, 10);
    const pane = await open(host, 'MATERIAL.TABLE');
    await host.select({ sheet: 'Sheet1', address: 'A9' });
    await settled();
    await pane.press('Insert at Sheet1!A9');
    expect(pane.text()).toContain('does not fit below A9');
    expect(host.content('Sheet1', 'A9')).toBeNull();
  });

  it('does not put a call into the sheet that would only be refused there', async () => {
    const host = new FakeSpreadsheet({ Sheet1: {} });
    const pane = await open(host, 'DRYING.WATER');
    await pane.enter('dried', '872');
    await pane.press('Insert at Sheet1!A1');
    expect(pane.text()).toContain('Not inserted. dm_in (fraction): is missing');
    expect(host.content('Sheet1', 'A1')).toBeNull();
  });

  it('does not put a function into a cell that it reads', async () => {
    const host = new FakeSpreadsheet({ Sheet1: { A1: 100 } });
    const pane = await open(host, 'DRYING.WATER');
    await pane.press('Use selected cells for dried');
    await pane.enter('dm_in (fraction)', '0.35');
    await pane.enter('dm_out (fraction)', '0.6');
    await pane.press('Insert at Sheet1!A1');
    expect(pane.text()).toContain('A1 is one of the cells that the function reads');
    expect(host.content('Sheet1', 'A1')).toBe(100);
  });

  it('never shows a hygiene score without its span and the caution', async () => {
    const pane = await open(new FakeSpreadsheet({ Sheet1: {} }), 'HYGIENE.RISK');
    await pane.enter('dm (fraction)', '0.55');
    await pane.enter('interval_days (days)', '1');
    expect(pane.text()).toMatch(/Span over what was not given: \d+ to \d+/);
    expect(pane.text()).toContain('Planning aid, no diagnosis: talk to your vet.');
  });
});
