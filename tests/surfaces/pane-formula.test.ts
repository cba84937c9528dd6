import { describe, expect, it } from 'vitest';
import { addressFrom, blockOf, covers, placeOf, referenceTo } from '../../src/surfaces/pane/addresses.ts';
import { partsOf, writeEquation } from '../../src/surfaces/pane/equation.ts';
import { callsIn } from '../../src/surfaces/pane/formula.ts';

describe('addresses', () => {
  it('come back as they went', () => {
    expect(addressFrom('Z9', 3, 2)).toBe('Z9:AA11');
    expect(blockOf('$B$4:D9')).toEqual({ top: 3, left: 1, bottom: 8, right: 3 });
    expect(placeOf("'Fibre and drying'!$B$4", 'Inputs')).toEqual({ sheet: 'Fibre and drying', address: 'B4' });
    expect(referenceTo({ sheet: "Dave's herd", address: 'B4' }, 'Inputs')).toBe("'Dave''s herd'!B4");
    expect(referenceTo({ sheet: 'Inputs', address: 'B4' }, 'Inputs')).toBe('B4');
  });

  it('tell a cell inside a block from one beside it', () => {
    expect(covers('B2:C9', 'C9')).toBe(true);
    expect(covers('B2:C9', 'D9')).toBe(false);
  });

  it.each(['deep', 'A0', '1A', 'A1:B2:C3', 'dried fibre'])('are not seen in %s', (text) => expect(placeOf(text, 'Inputs')).toBeUndefined());
});

describe('a formula', () => {
  it('is taken apart into calls, references, numbers, texts and what was left out', () => {
    const [call] = callsIn('=BEDDING.DRYING.CLAIM(Inputs!B4, 35%, "a, ""b""", , TRUE, -5)', 'Answer');
    expect(call?.name).toBe('BEDDING.DRYING.CLAIM');
    expect(call?.args).toEqual([
      { kind: 'reference', place: { sheet: 'Inputs', address: 'B4' } },
      { kind: 'value', value: 0.35 },
      { kind: 'value', value: 'a, "b"' },
      { kind: 'omitted' },
      { kind: 'value', value: true },
      { kind: 'value', value: -5 },
    ]);
  });

  it('shows calls inside calls, and arithmetic as something of the spreadsheet’s own', () => {
    const calls = callsIn('=ROUND(BEDDING.COST.TONNE(B4*2,BEDDING.MATERIAL.DENSITY("sand")),1)', 'Inputs');
    expect(calls.map(({ name }) => name)).toEqual(['ROUND', 'BEDDING.COST.TONNE', 'BEDDING.MATERIAL.DENSITY']);
    expect(calls[1]?.args[0]).toEqual({ kind: 'other', text: 'B4*2' });
    expect(calls[1]?.args[1]).toMatchObject({ kind: 'call', name: 'BEDDING.MATERIAL.DENSITY' });
  });

  it('takes a range whose blanks are handed on as blanks for the range itself', () => {
    const [call] = callsIn('=BEDDING.BUDGET.HERD(IF(Inputs!$B$8:$B$90="","",Inputs!$B$8:$B$90),C1)', 'Figures');
    expect(call?.args[0]).toEqual({ kind: 'reference', place: { sheet: 'Inputs', address: 'B8:B90' } });
  });

  it('is not confused by brackets in texts and sheet names', () => {
    expect(callsIn(`="SUM(" & 'odd (name'!B4 & MAX(1,2)`, 'Inputs').map(({ name }) => name)).toEqual(['MAX']);
  });
});

describe('an equation', () => {
  it('is written with the signs of a book, and again in figures', () => {
    expect(writeEquation('rated_kw * speed_ratio ** 3')).toBe('rated_kw × speed_ratio ^ 3');
    expect(writeEquation('a * b / 2 - c', (name) => ({ a: '3', b: '4' })[name])).toBe('3 × 4 ÷ 2 − c');
    expect(writeEquation("air_at == 'supply' ? supply_c : ambient_c")).toBe("supply_c if air_at = 'supply', otherwise ambient_c");
  });

  it('of a budget names its parts once each', () => {
    expect(partsOf('[Kit cost] - [Grant] + [Kit cost]')).toEqual(['Kit cost', 'Grant']);
  });
});
