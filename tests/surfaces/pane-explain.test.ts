// @vitest-environment happy-dom
import { afterEach, describe, expect, it, vi } from 'vitest';
import { columnLetters } from '../../src/surfaces/pane/addresses.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { enough, FakeSpreadsheet, inputAt, inputsSheet, lastInputRow } from './fake-spreadsheet.ts';
import { openPane, settled } from './open-pane.ts';

const herd = `=BEDDING.BUDGET.HERD(Inputs!A2:A${lastInputRow},Inputs!B2:B${lastInputRow})`;
const budget = () =>
  new FakeSpreadsheet({ Answer: { A1: herd, H1: `=INDEX($B$1:$B$150,MATCH("Saving",$A$1:$A$150,0))` }, Inputs: inputsSheet(enough) });

/** The pane's explanation of one cell. */
async function explained(host: FakeSpreadsheet, sheet: string, address: string) {
  const pane = await openPane(host, 'explain');
  await host.select({ sheet, address });
  await settled();
  return pane;
}

afterEach(() => vi.unstubAllGlobals());

describe('the explanation of a cell', () => {
  it('shows arguments with the cells they come from, then each step with equation, figures and source', async () => {
    const host = new FakeSpreadsheet({ Plan: { B1: 240, B2: 2.5, B4: '=BEDDING.DEMAND.HERD(B1,B2,300)' } });
    const pane = await explained(host, 'Plan', 'B4');
    expect(pane.text()).toContain('cubicles: 240 cubicles Plan!B1');
    expect(pane.text()).toContain('housed_days: 300 days/year typed into the formula');
    expect(pane.text()).toMatch(/loss: 0 % left out, so the default: .*\(judgement\)/);
    expect(pane.text()).toContain('cubicles × kg_cubicle_day × housed_days ÷ 1000');
    expect(pane.text()).toContain('= 240 × 2.5 × 300 ÷ 1000');
    expect(pane.text()).toContain('t_year: 180 t/year');
  });

  it('leads to a cell that an argument comes from', async () => {
    const host = new FakeSpreadsheet({ Plan: { B1: 240, B2: 2.5, B4: '=BEDDING.DEMAND.HERD(B1,B2)' } });
    const pane = await explained(host, 'Plan', 'B4');
    await pane.press('Plan!B2');
    expect(await host.selection()).toMatchObject({ sheet: 'Plan', active: 'B2' });
    expect(pane.text()).toContain('B2 holds 2.5, typed in');
  });

  it('lays a figure out as formulas of the spreadsheet’s own, right of all that is filled in, and goes to the answer', async () => {
    const plan = { B1: 240, B2: 2.5, B4: '=BEDDING.DEMAND.HERD(B1,B2,300,B3)', C9: 'a note' };
    const host = new FakeSpreadsheet({ Plan: plan });
    const pane = await explained(host, 'Plan', 'B4');
    await pane.press('Lay out as formulas');
    const { sheet, active } = await host.selection();
    expect([sheet, active[0]]).toEqual(['Plan', 'F']);
    for (const [address, content] of Object.entries(plan)) expect(host.content('Plan', address)).toBe(content);
    expect(host.content('Plan', 'E4')).toMatch(/^DEMAND\.HERD of Plan!B4 in formulas/);
    const formulas = Array.from({ length: 40 }, (_, row) => String(host.content('Plan', `F${row + 1}`) ?? ''));
    expect(formulas).toEqual(expect.arrayContaining(["='Plan'!B1", "='Plan'!B2", `=IF('Plan'!B3="",0,'Plan'!B3)`]));
    expect(formulas.join()).not.toContain('BEDDING');
    expect(host.content('Plan', active)).toBe('=F10/(1-F9)');
  });

  it('lays it out beside all columns of a sheet of the budget, as notes run over those that are free', async () => {
    const name = 'Fibre and drying';
    const { columns } = budgetWorkbook().sheets.find((sheet) => sheet.name === name) ?? expect.fail('no such sheet');
    const host = new FakeSpreadsheet({ [name]: { B4: '=BEDDING.DEMAND.HERD(240,2)' } });
    const pane = await explained(host, name, 'B4');
    await pane.press('Lay out as formulas');
    expect((await host.selection()).active).toMatch(new RegExp(`^${columnLetters(columns.length + 2)}\\d`));
  });

  it.each([
    ['a table', '=BEDDING.INVEST.LOAN(30000,3,6%)'],
    ['a refusal', '=BEDDING.DEMAND.HERD(-1,2)'],
    ['what is counted month by month', '=BEDDING.HYGIENE.MAXINTERVAL(0.5,"dried fibre",0.5)'],
    ['what the spreadsheet works out inside the call', '=BEDDING.DEMAND.HERD(SUM(A1:A2),2)'],
  ])('offers no formulas for %s', async (_, formula) => {
    const pane = await explained(new FakeSpreadsheet({ Plan: { B4: formula } }), 'Plan', 'B4');
    expect(pane.text()).not.toContain('Lay out as formulas');
  });

  it('explains the one place of a spill that is selected', async () => {
    const host = new FakeSpreadsheet({ Plan: { A1: 100, A2: 200, B1: '=BEDDING.DEMAND.HERD(A1:A2,2)' } });
    const pane = await explained(host, 'Plan', 'B2');
    expect(pane.text()).toContain('cubicles: 200 cubicles');
    expect(pane.text()).toContain('t_year: 146 t/year');
  });

  it('explains a call inside a call, and inside arithmetic of the spreadsheet', async () => {
    const host = new FakeSpreadsheet({ Plan: { B4: '=ROUND(BEDDING.COST.TONNE(20,BEDDING.MATERIAL.DENSITY("sawdust")),2)' } });
    const pane = await explained(host, 'Plan', 'B4');
    expect(pane.text()).toContain('density_kg_m3: 178 kg/m³');
  });

  it('shows the row of a table that the cell stands in', async () => {
    const host = new FakeSpreadsheet({ Plan: { B2: '=BEDDING.INVEST.LOAN(30000,3,6%)' } });
    const pane = await explained(host, 'Plan', 'D4');
    // 30,000 at 6 % over 3 years: interest of the second year 1,234.60 where paid yearly (course page); monthly it is less.
    expect(pane.text()).toContain('INVEST.LOAN, row 2');
    expect(pane.text()).toContain('2: interest');
    expect(pane.text()).not.toContain('3: interest');
  });

  it('shows a refusal as what it is', async () => {
    const host = new FakeSpreadsheet({ Plan: { B4: '=BEDDING.DRYING.WATER(100,35,0.6)' } });
    const pane = await explained(host, 'Plan', 'B4');
    expect(pane.text()).toContain('dm_in (fraction): 35 is above 1; enter 35% or 0.35');
  });

  it('follows a figure of the budget down to its parts and to the cell of an input', async () => {
    const host = budget();
    const pane = await explained(host, 'Answer', 'H1');
    expect(pane.text()).toContain('BUDGET.HERD, row Saving');
    expect(pane.text()).toContain('Bought-in cost with labour − Running cost − Top-up cost');
    await pane.press('Running cost');
    await pane.press('Repairs');
    await pane.press('Kit cost');
    expect(pane.text()).toContain('Kit cost: 90,000');
    await pane.press(`Inputs!${inputAt('Kit cost')}`);
    expect(await host.selection()).toMatchObject({ sheet: 'Inputs', active: inputAt('Kit cost') });
  });

  it('names the sources of the functions behind a figure, not those of the whole budget', async () => {
    const host = budget();
    await host.write([{ sheet: 'Answer', address: 'H1', contents: [[`=INDEX($B$1:$B$150,MATCH("Evaporation",$A$1:$A$150,0))`]] }]);
    const pane = await explained(host, 'Answer', 'H1');
    const sources = pane.text().split('Sources').at(-1);
    expect(sources).toContain('ASHRAE');
    expect(sources).not.toContain('partial budget');
  });

  it('goes back up the way it came', async () => {
    const pane = await explained(budget(), 'Answer', 'H1');
    await pane.press('Running cost');
    await pane.press('Back to Saving');
    expect(pane.text()).toContain('Bought-in cost with labour − Running cost − Top-up cost');
  });

  it('never shows the score of a budget without span and caution', async () => {
    const pane = await explained(budget(), 'Answer', 'A1');
    await pane.press('Hygiene score, fibre');
    expect(pane.text()).toMatch(/Hygiene score, fibre: \d+, span \d+–\d+/);
    expect(pane.text()).toContain('Planning aid, no diagnosis: talk to your vet.');
  });

  it('says in words what it cannot explain', async () => {
    const host = new FakeSpreadsheet({
      Plan: { A1: 5, B1: '=SUM(A1,$A$2)+\'Other sheet\'!B4&"C7"', B2: '=BEDDING.DRYING.WATER(A1*2,0.3,0.6)' },
    });
    const pane = await explained(host, 'Plan', 'B1');
    expect(pane.text()).toContain("the panel explains BEDDING functions only. It reads Plan!A1, Plan!A2, 'Other sheet'!B4.");
    await host.select({ sheet: 'Plan', address: 'B2' });
    await settled();
    expect(pane.text()).toContain('A1*2 is worked out by the spreadsheet itself');
    await host.select({ sheet: 'Plan', address: 'C9' });
    await settled();
    expect(pane.text()).toContain('C9 is blank.');
  });

  it('copies as text with steps, equations and sources', async () => {
    const copied: string[] = [];
    vi.stubGlobal('navigator', { clipboard: { writeText: async (text: string) => copied.push(text) } });
    const host = new FakeSpreadsheet({ Plan: { B4: '=BEDDING.DEMAND.HERD(240,2.5,300)' } });
    const pane = await explained(host, 'Plan', 'B4');
    await pane.press('Copy as text');
    expect(copied[0]).toContain('t_year: 180 t/year');
    expect(copied[0]).toContain('= cubicles × kg_cubicle_day × housed_days ÷ 1000');
  });

  it('lays the text out to be copied by hand where the host keeps the clipboard', async () => {
    vi.stubGlobal('navigator', { clipboard: { writeText: () => Promise.reject(new Error('not allowed')) } });
    const host = new FakeSpreadsheet({ Plan: { B4: '=BEDDING.DEMAND.HERD(240,2.5,300)' } });
    const pane = await explained(host, 'Plan', 'B4');
    await pane.press('Copy as text');
    expect(pane.labelled('The explanation as text').value).toContain('t_year: 180 t/year');
  });
});
