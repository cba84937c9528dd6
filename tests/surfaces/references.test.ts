import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addressOf, blocksOf, renameSheets } from '../../src/surfaces/excel/references.ts';
import { cellAt } from '../../src/surfaces/pane/addresses.ts';

const numbered = (name: string) => `${name} (2)`;

describe('formulas when the sheets had to take other names', () => {
  it.each([
    ['=Inputs!B3*2', "='Inputs (2)'!B3*2"],
    ["='Fibre and drying'!$C$4+Inputs!B3", "='Fibre and drying (2)'!$C$4+'Inputs (2)'!B3"],
    ["='Farmer''s own'!A1", "='Farmer''s own (2)'!A1"],
    ['=IF(Inputs!B3="Inputs!B3","say ""Inputs!""",A1)', '=IF(\'Inputs (2)\'!B3="Inputs!B3","say ""Inputs!""",A1)'],
    ['=BEDDING.DEMAND.HERD(Inputs!B3,B4)', "=BEDDING.DEMAND.HERD('Inputs (2)'!B3,B4)"],
    ['=SUM(A1:B9)', '=SUM(A1:B9)'],
    ['="it\'s"&Inputs!B3', "=\"it's\"&'Inputs (2)'!B3"],
  ])('%s becomes %s', (before, after) => {
    expect(renameSheets(before, numbered)).toBe(after);
  });

  it('leaves a formula as it was where no name changes', () => {
    expect(renameSheets("='Fibre and drying'!C4+Inputs!B3", (name) => name)).toBe("='Fibre and drying'!C4+Inputs!B3");
  });
});

describe('cells gathered into blocks', () => {
  it('takes a table as one block', () => {
    expect(blocksOf(['A1', 'B1', 'A2', 'B2', 'D2']).map(addressOf)).toEqual(['A1:B2', 'D2']);
  });

  it('holds every cell once and no other, whatever the cells', () => {
    const cells = fc.uniqueArray(fc.tuple(fc.nat(12), fc.nat(30)).map(([column, row]) => cellAt(row, column)));
    fc.assert(
      fc.property(cells, (addresses) => {
        const held = blocksOf(addresses).flatMap(({ top, left, bottom, right }) => {
          const found: string[] = [];
          for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) found.push(cellAt(row, column));
          return found;
        });
        expect(held.toSorted()).toEqual(addresses.toSorted());
      }),
    );
  });
});
