import { expect, test } from 'vitest';
import { call } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { CellError } from '../../src/core/result.ts';
import { drying } from '../../src/functions/drying.ts';

const record = drying.find(({ name }) => name === 'DRYING.TRIAL') as FunctionRecord;
const good = [10, 1000, 0.36, 600, 0.6, 3000, 7, 0.85, 70];
const said = (cell: unknown) => (cell instanceof CellError ? `${cell.code} ${cell.message}` : cell);

test('a run that is wrong says so in its own row, the others stand, and no verdict is given on what is left', () => {
  const rows = call(record, [[good, good.with(3, 1200), good.with(2, 36), good, Array(9).fill(null)], 0, 'supply', 50, 0.36, 0.6]);
  expect(rows.map(([key]) => key)).toEqual(['run', 1, 2, 3, 4, 'mean', 'lowest', 'highest', 'verdict']);
  expect(rows[1]?.[1]).toBe(60);
  expect(said(rows[2]?.[1])).toMatch(/^#VALUE! runs row 2, dried kg: 1,200 is not below wet kg 1,000; /);
  expect(said(rows[3]?.[7])).toMatch(/^#VALUE! runs row 3, wet DM \(fraction\): 36 is above 1; enter 36% or 0.36/);
  expect(said(rows[8]?.[1])).toBe('#N/A a run is refused: mend it, or take it out');
});

test('no run at all is asked for', () => {
  expect(said(call(record, [[Array(9).fill(null)]])[0]?.[0])).toContain('runs (table): is missing');
});
