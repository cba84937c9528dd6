import { describe, expect, test } from 'vitest';
import { call } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { CellError } from '../../src/core/result.ts';
import { explain } from '../../src/core/working.ts';
import { udder } from '../../src/functions/udder.ts';
import { workOut } from './work-out.ts';

const named = (name: string) => udder.find((record) => record.name === name) as FunctionRecord;
const ask = (name: string, ...args: unknown[]) => call(named(name), args);
const column = (...cells: unknown[]) => cells.map((cell) => [cell]);
const said = (cell: unknown) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell);

describe('UDDER.CHART', () => {
  const cases = column(8, 6, null, 9, 7, 40);

  test('leaves a blank month blank, takes one herd size for all and months where no days are given', () => {
    const [header, ...rows] = ask('UDDER.CHART', cases, [[260]], null, 5);
    expect(header).toEqual(['period', 'rate', 'centre', 'lower', 'upper', 'signal']);
    expect(rows).toHaveLength(6);
    expect(rows[2]).toEqual([3, '', rows[0]?.[2], '', '', '']);
    expect(rows[0]?.[1]).toBeCloseTo((8 * 36_500) / (260 * (365 / 12)), 9);
    expect(rows[5]?.[5]).toBe('above');
  });

  test('shows why a month could not be read in that month, and the others stand', () => {
    const rows = ask('UDDER.CHART', column(8, 6.5, 7, 9, 'many', 5, 6), column(260, 260, 255, null, 250, 250, 250));
    expect(said(rows[2]?.[1])).toBe('#VALUE! cases row 2 (cases): 6.5 is not a whole number; enter a whole number from 0 to 1,000,000');
    expect(said(rows[4]?.[1])).toBe('#VALUE! cows (cows) row 4: is missing; enter it beside the cases, or leave both blank');
    expect(said(rows[5]?.[1])).toContain('cases row 5 (cases): "many" is text');
    expect(rows[1]?.[2]).toBeCloseTo((36_500 * 26) / ((260 + 255 + 250 + 250) * (365 / 12)), 9);
    expect(said(ask('UDDER.CHART', column(8, 6.5, 7), [[260]])[0]?.[0])).toContain('it holds 2 periods on record; enter at least 3');
  });

  test('says where a range is the wrong shape', () => {
    expect(said(ask('UDDER.CHART', [[1, 2, 3]], [[260]])[0]?.[0])).toBe(
      '#VALUE! cases (table): is 3 columns wide; enter a range of one column',
    );
    expect(said(ask('UDDER.CHART', cases, column(1, 2))[0]?.[0])).toBe(
      '#VALUE! cows (table): has 2 rows beside 6; enter as many, or one cell',
    );
  });
});

describe('what is said beside a figure', () => {
  test('repeat cases, seasons and causes stand under the working', () => {
    const notes = explain(named('UDDER.COMPARE'), [21, 3011, 365, 11, 800, 365]).filter(({ step }) => step === 'note');
    expect(notes.map(({ says }) => says).join(' ')).toMatch(/repeat cases .* same months of the year.* not yet its cause/i);
  });

  test('the working holds without a case before, too', () => {
    expect(workOut(named('UDDER.COMPARE'), [0, 260, 365, 3, 260, 365, 0.9])).toEqual([]);
    expect(workOut(named('UDDER.COMPARE'), [0, 260, 365, 0, 260, 365, 0.9])).toEqual([]);
  });

  test('35 for 35% is asked about', () => {
    expect(said(ask('UDDER.RECORDMONTHS', 34, 260, 35)[0]?.[0])).toBe('#VALUE! rise (fraction): 35 is above 10; enter 35% or 0.35');
    expect(said(ask('UDDER.INTERVAL', 14, 100, 365, 95)[0]?.[0])).toBe('#VALUE! level (fraction): 95 is above 0.999; enter 95% or 0.95');
  });
});
