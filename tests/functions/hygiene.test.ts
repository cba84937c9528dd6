import { describe, expect, test } from 'vitest';
import { call } from '../../src/core/call.ts';
import { CellError } from '../../src/core/result.ts';
import { SCORE_CAUTION } from '../../src/domain/hygiene.ts';
import { hygiene } from '../../src/functions/hygiene.ts';
import { reference } from '../../src/functions/reference.ts';
import { udder } from '../../src/functions/udder.ts';
import { welfare } from '../../src/functions/welfare.ts';

const records = [...hygiene, ...udder, ...welfare, ...reference];
function inSheet(name: string, ...args: unknown[]) {
  const record = records.find((candidate) => candidate.name === name);
  if (!record) throw new Error(`no ${name}`);
  return call(record, args);
}
const said = (cell: unknown) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell);
const oneCell = (name: string, ...args: unknown[]) => said(inSheet(name, ...args)[0]?.[0]);

describe('a score in a cell', () => {
  test('spreads over a column of dry matters and a row of intervals', () => {
    const grid = inSheet('HYGIENE.RISK', [[0.35], [0.6], [0.8]], [[0.5, 1, 2]]);
    expect(grid.map((row) => row.length)).toEqual([3, 3, 3]);
    expect(grid[0]?.[2]).toBeGreaterThan(grid[2]?.[0] as number);
  });

  test('takes 58 for a slip and says what to enter', () => {
    expect(oneCell('HYGIENE.RISK', 58, 2)).toBe('#VALUE! dm (fraction): 58 is above 1; enter 58% or 0.58');
  });

  test('lists the materials when one is misspelt', () => {
    expect(oneCell('HYGIENE.RISK', 0.58, 2, 'saw dust')).toMatch(
      /material \(text\): "saw dust" is not one of the choices; enter one of sawdust,/,
    );
  });

  test('takes a blank option for not given', () => {
    expect(oneCell('HYGIENE.RISK', 0.58, 2, '', null)).toBe(oneCell('HYGIENE.RISK', 0.58, 2));
  });

  test('has no answer, with the reason, where no interval meets the target', () => {
    expect(oneCell('HYGIENE.MAXINTERVAL', 0.35, 10, 'fresh fibre')).toMatch(/^#N\/A even bedding every 0.25 days/);
  });

  test('never comes without the word that it is no diagnosis', () => {
    for (const record of hygiene.filter(({ name }) => !/COUNT|PERVOLUME/.test(name))) expect(record.summary).toContain(SCORE_CAUTION);
  });
});

describe('tables', () => {
  test('of the span: five lines with their bands', () => {
    const span = inSheet('HYGIENE.SPAN', 0.58, 2, 'dried fibre');
    expect(span.map(([key]) => key)).toEqual(['key', 'lowest', 'score', 'highest', 'weights lowest', 'weights highest']);
    expect(span[2]?.[1]).toBe(oneCell('HYGIENE.RISK', 0.58, 2, 'dried fibre'));
    expect(span[2]?.[2]).toBe(oneCell('HYGIENE.BAND', span[2]?.[1]));
  });

  test.each([
    ['HYGIENE.DRIVERS', [0.58, 2], ['factor', 'value', 'points', 'share', 'evidence', 'strength', 'could bring'], 8],
    ['WELFARE.LYING', [0.58], ['trial', 'hours per day', 'range', 'source', 'status'], 5],
    ['CAUTIONS', [], ['hazard', 'caution', 'ask'], 14],
  ])('%s is a full rectangle under its headings', (name, args, headings, rows) => {
    const table = inSheet(name, ...args);
    expect(table[0]).toEqual(headings);
    expect(table).toHaveLength(rows);
    for (const row of table) expect(row).toHaveLength(headings.length);
  });

  test('keys are unique wherever a look-up might use them', () => {
    for (const [name, ...args] of [
      ['SOURCES'],
      ['CONDITIONS'],
      ['CAUTIONS'],
      ['WELFARE.TABLE'],
      ['WELFARE.LYING', 0.5],
      ['HYGIENE.DRIVERS', 0.5, 1],
    ] as const) {
      const keys = inSheet(name, ...args).map(([key]) => key);
      expect(new Set(keys).size, name).toBe(keys.length);
    }
  });

  test('lying outside a trial shows #N/A in that cell only', () => {
    const [, reich, fregonesi] = inSheet('WELFARE.LYING', 0.3);
    expect(said(reich?.[1])).toBe('#N/A Reich 2010 says nothing outside 0.35 to 0.9 DM');
    expect(fregonesi?.[1]).toBeGreaterThan(8.8);
  });

  test('conditions name the country asked for, and all of them when none is', () => {
    expect(inSheet('CONDITIONS', 'germany')[1]?.[1]).toMatch(/not permitted: ask/);
    expect(inSheet('CONDITIONS').length).toBeGreaterThan(inSheet('CONDITIONS', 'Wales').length);
  });
});

describe('udders in a cell', () => {
  test('a loss has no break-even, and says so', () => {
    expect(oneCell('UDDER.BREAKEVEN', -500, 400, 280)).toBe('#N/A there is no saving that extra mastitis cases could eat');
  });
  test('no cows scored is an error that says what to enter', () => {
    expect(oneCell('UDDER.DIRTY', 0, 0, 0, 0)).toBe('#VALUE! score1 (cows): all four counts are 0; enter how many cows got each score');
  });
  test('sawdust beyond what was tried is refused', () => {
    expect(oneCell('WELFARE.LYINGAMOUNT', 9)).toBe('#VALUE! kg_sawdust (kg): 9 is above 7.5; enter a number from 0 to 7.5');
  });
});
