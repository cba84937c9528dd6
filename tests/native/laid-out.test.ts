import { describe, expect, it } from 'vitest';
import { call } from '../../src/core/call.ts';
import { registry } from '../../src/functions/index.ts';
import { layOut } from '../../src/native/laid-out.ts';
import { addressOf, placeOf } from '../../src/workbook/grid.ts';
import type { SheetCell } from '../../src/workbook/model.ts';
import { Evaluated } from '../workbook/evaluated.ts';

/** A sheet on which a call is laid out beside the cells that it reads. */
function laidOut(name: string, args: readonly string[], inputs: Readonly<Record<string, number>>, corner: string, sheet = 'Plan') {
  const { contents, answer } = layOut({ name, args }, corner);
  const { column, row } = placeOf(corner);
  const cells: Record<string, SheetCell> = Object.fromEntries(Object.entries(inputs).map(([at, content]) => [at, { content }]));
  contents.forEach((line, r) => {
    line.forEach((content, c) => {
      if (content !== null) cells[addressOf(column + c, row + r)] = { content };
    });
  });
  const book = new Evaluated({ sheets: [{ name: sheet, columns: [80], rows: 400, cells }] });
  return { book, value: () => book.read(sheet, answer).value };
}

const answerOf = (name: string, args: readonly unknown[]): unknown => {
  const record = registry.find((one) => one.name === name) ?? expect.fail(`${name} is not in the registry`);
  return call(record, args)[0]?.[0];
};

describe('a call laid out on a sheet of the user’s', () => {
  it.each(['D1', 'AB37'])('follows the cells that it reads, at %s, what is found by halving too', (corner) => {
    const args = [3000, 7, 0.85, 69];
    const cells = ['A1', 'A2', 'A3', 'A4'];
    const inputs = Object.fromEntries(cells.map((cell, k) => [cell, args[k] as number]));
    const { book, value } = laidOut(
      'DRYING.EVAPORATION',
      cells.map((cell) => `'Plan'!${cell}`),
      inputs,
      corner,
    );
    expect(value()).toBeCloseTo(answerOf('DRYING.EVAPORATION', args) as number, 6);
    book.type('Plan', 'A4', '55');
    expect(value()).toBeCloseTo(answerOf('DRYING.EVAPORATION', [3000, 7, 0.85, 55]) as number, 6);
  });

  it('tells the user’s own sheet from the sheets that a whole plan has, whatever it is called', () => {
    const { value } = laidOut('DEMAND.HERD', ["'Working'!A5", '2'], { A5: 240 }, 'D9', 'Working');
    expect(value()).toBeCloseTo(answerOf('DEMAND.HERD', [240, 2]) as number, 9);
  });
});
