import psychrolib from 'psychrolib';
import { describe, expect, it } from 'vitest';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { Evaluated } from './evaluated.ts';

const demo = budgetWorkbook();
const blank = budgetWorkbook({ blank: true });
const sheet = 'Acceptance';

const rowOf = (book: Evaluated, label: string): number => {
  const cell = book.cells(sheet).find(({ address, text }) => address.startsWith('A') && text === label);
  if (!cell) throw new Error(`no ${label}`);
  return Number(cell.address.slice(1));
};
const read = (book: Evaluated, column: string, label: string) => book.read(sheet, `${column}${rowOf(book, label)}`);

function withRuns(
  runs: readonly (readonly (number | '')[])[],
  stated: readonly [kgH: number, dmIn: number, dmOut: number] | undefined,
): Evaluated {
  const book = new Evaluated(blank);
  const first = rowOf(book, 'run') + 1;
  runs.forEach((run, k) => {
    run.forEach((value, right) => {
      if (value !== '') book.type(sheet, `${'BCDEFGHIJKLM'[right]}${first + k}`, String(value));
    });
  });
  ['Output', 'for fibre that comes in at', 'and leaves at'].forEach((label, k) => {
    if (stated) book.type(sheet, `B${rowOf(book, label)}`, String(stated[k]));
  });
  return book;
}

/** 600 kg at 0.40 to about 400 kg at 0.60 in ten hours: 20.5, 20 and 19.5 kg of water an hour. */
const run = (dried: number) => [10, 600, 0.4, dried, 240 / dried, 1200, 5, 1, 61.64];
const three = [395, 400, 405].map(run);

describe('the acceptance page', () => {
  it.each([
    // By hand: 41, 40 and 39 kg/h at 0.40 to 0.60, s 1, Student's t 4.302653 from any table: limits 37.5 and 42.5.
    [36, 'The runs show at least what was stated.'],
    [44, 'The runs show less than was stated.'],
    [40, 'Not settled: the stated output lies within the limits of the runs.'],
  ])('says in neutral words what three runs show of %d kg/h', (kgH, words) => {
    const book = withRuns(three, [kgH, 0.4, 0.6]);
    expect(book.cells(sheet).filter(({ text }) => text === words).length).toBeGreaterThan(1);
    expect(Number(read(book, 'C', 'Dried output, corrected').value)).toBeCloseTo(40 - 4.302653 / Math.sqrt(3), 5);
  });

  it('gives no verdict from two runs, none without a statement, and asks for the scales where dry matter does not close', () => {
    const said = (book: Evaluated) => book.cells(sheet).map(({ text }) => text);
    expect(said(withRuns(three.slice(0, 2), [36, 0.4, 0.6]))).toContain('Three runs at least are needed for a verdict.');
    expect(said(withRuns(three, undefined))).toContain('No verdict yet: fill in the runs, and what was stated.');
    const lost = three.map(([hours, wet, dm, dried, ...rest]) => [hours, wet, dm, 0.9 * (dried as number), ...rest] as number[]);
    expect(said(withRuns(lost, [36, 0.4, 0.6]))).toContain('Weights and samples do not agree: the runs show nothing yet.');
    expect(said(new Evaluated(blank))).toContain('No verdict yet: fill in the runs, and what was stated.');
  });

  it('finds the exhaust’s humidity and the heat lost as psychrolib does', () => {
    psychrolib.SetUnitSystem(psychrolib.SI);
    const [supply, exhaust, ambient, rh, air] = [61.64, 25, 5, 0.9, 1200];
    const book = withRuns([[10, 600, 0.4, 425, 0.565, air, ambient, rh, supply, exhaust]], undefined);
    // At sea level, the air measured at the supply, as Inputs takes it where nothing is typed.
    const p = 101_325;
    const w1 = psychrolib.GetHumRatioFromRelHum(ambient, rh, p);
    const dry = air / psychrolib.GetMoistAirVolume(supply, w1, p);
    const w2 = w1 + 17.5 / dry;
    const h = (t: number, w: number) => psychrolib.GetMoistAirEnthalpy(t, w) / 1000;
    const lost = (h(supply, w1) + (w2 - w1) * 4.186 * ambient - h(exhaust, w2)) / (h(supply, w1) - h(ambient, w1));
    expect(Number(read(book, 'B', 'Exhaust humidity').value)).toBeCloseTo(psychrolib.GetRelHumFromHumRatio(exhaust, w2, p), 4);
    expect(Number(read(book, 'B', 'Heat loss').value)).toBeCloseTo(lost, 4);
    expect(read(book, 'E', 'Heat loss').text).toBe('OK, for Inputs');
  });

  it('offers each measured value beside the one in use, and none that cannot be', () => {
    const book = new Evaluated(demo);
    for (const item of [
      'Fresh fibre density',
      'Shrinkage',
      'Share of dry matter caught',
      'Heater effectiveness',
      'Exhaust humidity',
      'Heat loss',
    ]) {
      expect([item, read(book, 'E', item).text]).toEqual([item, 'OK, for Inputs']);
      expect(typeof read(book, 'C', item).value).toBe('number');
    }
    // 2.95 kg in 10 litres.
    expect(read(book, 'B', 'Fresh fibre density').value).toBeCloseTo(295, 9);
    book.type(sheet, `B${rowOf(book, 'Bucket of pressed fibre')}`, '29.5');
    expect(read(book, 'E', 'Fresh fibre density').text).toBe('cannot be: read again');
    const empty = new Evaluated(blank);
    expect(read(empty, 'E', 'Heat loss').text).toBe('not read yet');
  });
});
