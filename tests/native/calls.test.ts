import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import type { FunctionRecord } from '../../src/core/define.ts';
import { CellError } from '../../src/core/result.ts';
import { registry } from '../../src/functions/index.ts';
import { Calls } from '../../src/native/calls.ts';
import { quotedText } from '../../src/native/expression.ts';
import { solvingSheet, workingSheet } from '../../src/native/sheets.ts';
import { Evaluated } from '../workbook/evaluated.ts';

const asFormula = (value: unknown): string | undefined => {
  if (value === null || value === undefined) return undefined;
  return typeof value === 'number' ? String(value) : quotedText(String(value));
};

/** What the cells say once a spreadsheet has worked them out. */
function nativeAnswer(name: string, args: readonly unknown[]): unknown {
  const calls = new Calls();
  const [sheet, address] = calls.call(name, args.map(asFormula)).split('!') as [string, string];
  return new Evaluated({ sheets: [workingSheet(calls.steps), solvingSheet(calls.solving)] }).read(sheet, address).value;
}

const answerOf = (record: FunctionRecord, args: readonly unknown[]): unknown => (call(record, args)[0] as unknown[])[0];

/** Steps that only words tell: benchmarks by organism, the two inverses of the score, and months tried one by one. */
const inWords = new Set(['UDDER.RECORDMONTHS', 'HYGIENE.COUNT', 'HYGIENE.MAXINTERVAL', 'HYGIENE.MINDM', 'UDDER.RECORDMONTHS']);
const oneCell = registry.filter(({ name, columns }) => !columns && !inWords.has(name));

describe('written out as native formulas', () => {
  it.each(oneCell.map((record) => [record.name, record] as const))('%s answers as the function does', (name, record) => {
    for (const { call: args } of record.examples.filter(({ call: given }) => !given.some(Array.isArray))) {
      const [found, expected] = [nativeAnswer(name, args), answerOf(record, args)];
      if (expected instanceof CellError) expect(found).toBe('#N/A');
      else if (typeof expected === 'number')
        expect(Math.abs(Number(found) - expected)).toBeLessThan(1e-9 * Math.max(1, Math.abs(expected)));
      else expect(found).toBe(expected);
    }
  });

  it.each([
    ['DRYING.EVAPORATION', [3000, 7, 0.85, 120, 300, 'supply', 0.8, 0.1]],
    ['DRYING.EVAPORATION', [3000, -12, 0.9, 60, 0, 'ambient']],
    ['DRYING.EVAPORATION', [3000, 7, 0.85, 10, 0, 'supply', 0.4, 0.1]],
    ['DRYING.SUPPLYTEMP', [3000, 7, 0.85, 400, 90]],
    ['DRYING.SUPPLYTEMP', [3000, 7, 0.85, 40_000, 90, 1]],
    ['DRYING.HEATEDTEMP', [3000, 7, 0.85, 60]],
    ['DRYING.HEATEDTEMP', [300, 7, 0.85, 900]],
    ['INVEST.PAYBACK', [100_000, 12_000, -0.05, 10]],
    ['INVEST.PAYBACK', [100_000, 25_000, 0.02, 10]],
    ['INVEST.PAYBACK', [100_000, -5, 0.02, 10]],
    ['INVEST.DISCOUNTEDPAYBACK', [100_000, 20_000, 0.08, 0.02, 10]],
    ['INVEST.IRR', [100_000, 9_000, 10, 0, 500]],
    ['FIBRE.CAKE', [10, 0.4, 0.35, 0.3]],
    ['HYGIENE.RISK', [0.5, 1, 'dried fibre', null, 0.2, 'mattress', 1.1]],
  ] as const)('%s answers as the function does for %j', (name, args) => {
    const record = registry.find((one) => one.name === name) as FunctionRecord;
    const expected = answerOf(record, args);
    const found = nativeAnswer(name, args);
    if (expected instanceof CellError) expect(found).toBe('#N/A');
    else expect(found).toBeCloseTo(expected as number, 8);
  });
});
