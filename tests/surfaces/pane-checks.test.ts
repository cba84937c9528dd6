// @vitest-environment happy-dom
import { describe, expect, it } from 'vitest';
import { budgetItems } from '../../src/budget/items.ts';
import { enough, FakeSpreadsheet, inputAt, inputsSheet, lastInputRow } from './fake-spreadsheet.ts';
import { openPane } from './open-pane.ts';

const herd = `=BEDDING.BUDGET.HERD(Inputs!A2:A${lastInputRow},Inputs!B2:B${lastInputRow})`;

describe('the checks', () => {
  it('list every warning with its figure and what to do, and lead to its cell', async () => {
    const host = new FakeSpreadsheet({ Figures: { A1: herd }, Inputs: inputsSheet({ ...enough, 'Dried to dry matter': 0.62 }) });
    const pane = await openPane(host, 'checks');
    expect(pane.text()).toMatch(/Dust: 62\s%\sFibre above about 60 % dry matter is dusty.*Warns when: dried above 0\.6\./);
    await pane.press('Show Figures!A');
    const { sheet, active } = await host.selection();
    expect((await host.read({ sheet, address: active }))[0]?.[0]?.value).toMatch(/^Warning: /);
  });

  it('lead to the inputs where the workbook has no table of results', async () => {
    const host = new FakeSpreadsheet({ Inputs: inputsSheet({ ...enough, 'Dried to dry matter': 0.62 }) });
    const pane = await openPane(host, 'checks');
    await pane.press('Show Inputs!A1');
    expect((await host.selection()).sheet).toBe('Inputs');
  });

  it('name what is missing and each default with source and status, and lead to its cell', async () => {
    const { Cows: _, ...rest } = enough;
    const host = new FakeSpreadsheet({ Inputs: inputsSheet(rest as Record<string, number>) });
    const pane = await openPane(host, 'checks');
    expect(pane.text()).toContain('Cows cows whose slurry reaches the press');
    expect(pane.text()).toMatch(/Slurry litres per cow 64 litres\/day\. .*\(quoted\)/);
    await pane.press(`Show Inputs!${inputAt('Cows')}`);
    expect((await host.selection()).active).toBe(inputAt('Cows'));
  });

  it('show the checks of the workbook that fail, and only those', async () => {
    const ok = '=BEDDING.HYGIENE.BAND(10)';
    const host = new FakeSpreadsheet({
      Checks: { A2: 'Balance closes', A3: 'Totals agree' },
      Inputs: inputsSheet(enough),
    });
    const read = host.read;
    host.read = async (place) =>
      place.sheet === 'Checks'
        ? [
            [{ value: 'Balance closes' }, { value: 'OK', formula: ok }],
            [{ value: 'Totals agree' }, { value: 'differ by 12', formula: ok }],
            [{ value: 'Loan payments agree' }, { value: 'not worked out', formula: ok }],
          ]
        : read(place);
    const pane = await openPane(host, 'checks');
    expect(pane.text()).toContain('Totals agree: differ by 12');
    expect(pane.text()).not.toContain('Balance closes');
    expect(pane.text()).not.toContain('Loan payments agree');
  });

  it('say in words that there is nothing to report', async () => {
    const all = Object.fromEntries(
      budgetItems.map(({ name, parameter: { fallback, choices, range } }) => [name, fallback?.value ?? choices?.[0] ?? range?.[0] ?? 1]),
    );
    const host = new FakeSpreadsheet({
      Inputs: inputsSheet({
        ...all,
        ...enough,
        'Material now': 'dried fibre',
        'Coldest month temperature': 5,
        'Permission confirmed': 'yes',
      }),
    });
    const pane = await openPane(host, 'checks');
    expect(pane.text()).toContain('Warnings Nothing to report.');
    expect(pane.text()).toContain('Still missingNothing to report: the plan has all it needs.');
    expect(pane.text()).toContain('Defaults usedNothing to report: every item was given.');
    expect(pane.text()).toContain('This workbook has no Checks sheet.');
  });

  it('name a figure that cannot be used, with the reason, and lead to it', async () => {
    const host = new FakeSpreadsheet({ Inputs: inputsSheet({ ...enough, Cows: 'many' }) });
    const pane = await openPane(host, 'checks');
    expect(pane.text()).toContain('Cows (cows): "many" is text, not a number; enter a number from 1 to 20,000');
    await pane.press(`Show Inputs!${inputAt('Cows')}`);
    expect((await host.selection()).active).toBe(inputAt('Cows'));
  });
});
