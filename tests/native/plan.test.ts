import { describe, expect, it } from 'vitest';
import { figures } from '../../src/budget/figures.ts';
import { nativeWorkbook } from '../../src/native/index.ts';
import { figureCell } from '../../src/native/plan.ts';
import { inputRow } from '../../src/workbook/sheets/inputs.ts';
import type { Inputs } from '../functions/worked-herd.ts';
import { Evaluated } from '../workbook/evaluated.ts';
import { differences } from './agreement.ts';
import { heldHerds } from './herds.ts';

const bookOf = (given: Inputs) => nativeWorkbook({ herd: 'Long Lane', values: given });
const placeOf = (key: string) => figureCell(key).split('!') as [string, string];

function shownIn(book: Evaluated) {
  return (key: string): unknown => {
    const { value, message } = book.read(...placeOf(key));
    return message === undefined ? value : `#${value}`;
  };
}

describe('a plan in native formulas', () => {
  it.each(Object.entries(heldHerds))('says of %s what our functions say', (_, given) => {
    expect(differences(given, shownIn(new Evaluated(bookOf(given))))).toEqual([]);
  });

  it('follows an input that is changed in it, and says beside it what is refused', () => {
    const book = new Evaluated(bookOf(heldHerds['the worked herd'] as Inputs));
    const row = inputRow('Cubicles');
    book.type('Inputs', `C${row}`, '300');
    expect(differences({ ...heldHerds['the worked herd'], Cubicles: 300 } as Inputs, shownIn(book))).toEqual([]);
    book.type('Inputs', `C${row}`, '-3');
    expect(book.read('Inputs', `E${row}`).value).toBe('cannot be so low');
    expect(shownIn(book)('NPV')).toMatch(/^#/);
    expect(shownIn(book)('Slurry')).toBeGreaterThan(0);
    expect(book.read('Figures', `D${placeOf('NPV')[1].slice(1)}`).value).toContain('Cubicles: cannot be so low');
  });

  it('holds no function of ours, and none that is younger than Excel 2010', () => {
    const known = new Set(
      'ABS AND CEILING COUNT COUNTIF EXP IF IFERROR INT IRR ISERROR ISNA ISNUMBER LEFT LN MAX MIN MOD NA NOT NPV OR PMT ROUND SEARCH SQRT SUMPRODUCT TEXT TRUE FALSE PI'.split(
        ' ',
      ),
    );
    const formulas = bookOf(heldHerds['the worked herd'] as Inputs)
      .sheets.flatMap(({ cells }) => Object.values(cells).map(({ content }) => String(content)))
      .filter((content) => content.startsWith('='));
    const used = new Set(formulas.flatMap((formula) => formula.replace(/"[^"]*"/g, '').match(/[A-Z][A-Z.]*(?=\()/g) ?? []));
    expect([...used].filter((name) => !known.has(name))).toEqual([]);
    // The longest formula, and the most brackets within each other, that Excel takes.
    expect(Math.max(...formulas.map((formula) => formula.length))).toBeLessThan(8192);
  });

  it('leads from NPV down to the dry matter that was typed', () => {
    const sheets = new Map(bookOf(heldHerds['the worked herd'] as Inputs).sheets.map((sheet) => [sheet.name, sheet.cells]));
    const seen = new Set<string>();
    const follow = (cell: string): void => {
      if (seen.has(cell)) return;
      seen.add(cell);
      const [sheet, address] = cell.split('!') as [string, string];
      const content = String(sheets.get(sheet)?.[address]?.content ?? '');
      if (!content.startsWith('=')) return;
      for (const [, other, at] of content.replace(/"[^"]*"/g, '').matchAll(/(?:(\w+)!)?\$?([A-Z]+\$?\d+)\b/g))
        follow(`${other ?? sheet}!${at?.replace('$', '')}`);
    };
    follow(figureCell('NPV'));
    expect([...seen]).toContain(`Inputs!C${inputRow('Slurry dry matter')}`);
    expect([...seen]).toContain(`Inputs!C${inputRow('Bought price per t')}`);
  });

  it('has every figure of the plan, each with its unit and its equation', () => {
    const { cells } = bookOf({}).sheets.find(({ name }) => name === 'Figures') as { cells: Record<string, { content: unknown }> };
    for (const { key, how } of figures) {
      const row = placeOf(key)[1].slice(1);
      expect(cells[`A${row}`]?.content).toBe(key);
      expect(String(cells[`B${row}`]?.content)).toMatch(/^=/);
      if (how) expect(cells[`F${row}`]?.content).toBe(how);
    }
  });
});
