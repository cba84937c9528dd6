import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { exportWithFormulas } from '../../src/surfaces/sheet/with-formulas.ts';
import { demoHerd } from '../../src/workbook/demo-herd.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { inputRow } from '../../src/workbook/sheets/inputs.ts';
import type { Inputs } from '../functions/worked-herd.ts';
import { opened } from '../surfaces/opened.ts';
import { evaluate } from '../workbook/evaluate.ts';
import { differences } from './agreement.ts';
import { recalculated } from './recalculated.ts';

const folder = mkdtempSync(join(tmpdir(), 'bedding-formulas-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const at = new Date(2026, 2, 4, 10, 12);
let name: string;
let content: Uint8Array;

beforeAll(async () => {
  ({ name, content } = await exportWithFormulas(evaluate(budgetWorkbook()), at));
});

const part = (path: string): string => strFromU8(unzipSync(content)[path] as Uint8Array);
const parts = (pattern: RegExp): readonly string[] => Object.keys(unzipSync(content)).filter((path) => pattern.test(path));

/** The file with another value in one cell of Inputs, as somebody would leave it who types there. */
function withTyped(address: string, value: number): Uint8Array {
  const path = 'xl/worksheets/sheet1.xml';
  const typed = part(path).replace(new RegExp(`(<c r="${address}"[^>]*>\\s*<v>)[^<]*`), `$1${value}`);
  expect(typed).not.toBe(part(path));
  return zipSync({ ...unzipSync(content), [path]: strToU8(typed) });
}

describe('the demo exported with formulas', () => {
  it('says in its name whose it is and what, and is small enough to send', () => {
    expect(name).toBe('Larch Bank invented bedding with formulas 2026-03-04.xlsx');
    expect(content.length).toBeLessThan(400_000);
  });

  it('holds no function of ours, no macro, no link out, and is worked out anew wherever it is opened', () => {
    for (const path of parts(/sheet\d+\.xml$/)) expect(part(path), path).not.toMatch(/<f>[^<]*(BEDDING|_xl)|ISFORMULA/i);
    expect(parts(/vba|external|connections/i)).toEqual([]);
    expect(part('xl/workbook.xml')).toMatch(/<calcPr fullCalcOnLoad="1"\/>/);
  });

  it('says first what it is, which sheets stand still and since when, and that of each of them in its first row', () => {
    const back = opened(content);
    const { getters } = back.model;
    const sheets = getters.getSheetIds().map((id) => getters.getSheetName(id));
    expect(sheets.slice(0, 7)).toEqual(['Read me', 'Inputs', 'Figures', 'Working', 'Years', 'Solving', 'Cross-checks']);
    const [readMe] = getters.getSheetIds();
    const words = getters.getEvaluatedCellsPositions(readMe as string).map((cell) => getters.getEvaluatedCell(cell).value);
    const said = words.join('\n');
    expect(said).toContain('Larch Bank (invented)');
    expect(said).toContain('4 March 2026 at 10:12');
    expect(said).toMatch(/planning aid, no diagnosis/);
    expect(back.value('B3')).toMatch(/^\d+ checks hold/);
    for (const sheet of sheets.slice(7)) {
      expect(said).toContain(sheet);
      expect(back.value(`${sheet}!A1`)).toMatch(/^Values only, worked out on 4 March 2026 at 10:12/);
    }
    expect(sheets).not.toContain('Herds');
    expect(sheets).toEqual(expect.arrayContaining(['Answer', 'Plans', 'Months', 'Levers', 'How sure', 'Figures (values)']));
  });

  it('answers in LibreOffice what our functions say, and follows an input that is changed there', () => {
    const [as, changed] = [join(folder, 'as.xlsx'), join(folder, 'changed.xlsx')] as const;
    writeFileSync(as, content);

    writeFileSync(changed, withTyped(`C${inputRow('Cubicles')}`, 310));
    const answers = recalculated([as, changed], folder, -1);
    const [demo, other] = [answers(0), answers(1)];
    expect(differences(demoHerd as Inputs, (key) => demo.get(key))).toEqual([]);
    expect(differences({ ...demoHerd, Cubicles: 310 } as Inputs, (key) => other.get(key))).toEqual([]);
    expect(other.get('NPV')).not.toBe(demo.get('NPV'));
    expect(answers(1, 'Read me').get('Checked a second way')).toMatch(/^\d+ checks hold$/);
  });
});

/** A workbook of a user's own, as far as the page lets it come to that. */
const own = {
  sheets: [
    {
      name: 'Inputs',
      columns: [80, 200, 80],
      rows: 20,
      cells: Object.fromEntries(
        [
          ['Herd', 'x'],
          ['Cows', '=2*120'],
          ['Cubicles', 230],
          ['Material now', "'=1+1"],
        ].flatMap(([name, content], k) => [
          [`B${k + 1}`, { content: name as string }],
          [`C${k + 1}`, { content: content as string, format: 'general' as const }],
        ]),
      ),
    },
    {
      name: 'Working',
      columns: [80],
      rows: 20,
      cells: {
        A1: { content: 'Herd' },
        B1: { content: "'=Long Lane", format: 'general' as const },
        A2: { content: '=Inputs!C3*2' },
        A3: { content: '=NA()' },
        A4: { content: '="00"&"7"' },
        A5: { content: '=1/3', format: 'percent' as const },
      },
    },
  ],
};

describe('a workbook of another shape exported with formulas', () => {
  it('takes a formula in an input as what it gives and says so, text as text, and a sheet by another name where ours has its own', async () => {
    const back = opened((await exportWithFormulas(evaluate(own), at)).content);
    expect(back.value(`Inputs!C${inputRow('Cows')}`)).toBe(240);
    expect(back.value(`Inputs!C${inputRow('Material now')}`)).toBe('=1+1');
    expect(back.value(`Inputs!E${inputRow('Material now')}`)).toBe('cannot be used');
    const [readMe] = back.model.getters.getSheetIds();
    const words = back.model.getters
      .getEvaluatedCellsPositions(readMe as string)
      .map((cell) => back.model.getters.getEvaluatedCell(cell).value);
    expect(words.join('\n')).toContain('here as the values that they gave: Cows.');
    const shown = ['A3', 'A4', 'A5', 'A6'].map((address) => back.value(`Working (values)!${address}`));
    expect(shown).toEqual([460, '#N/A', '007', 1 / 3]);
    expect(back.shown('Working (values)!A6')).toBe('33%');
  });

  it('is refused in words where there are no inputs', async () => {
    const [, other] = own.sheets;
    await expect(exportWithFormulas(evaluate({ sheets: [other as (typeof own.sheets)[1]] }), at)).rejects.toThrow('no Inputs sheet');
  });
});
