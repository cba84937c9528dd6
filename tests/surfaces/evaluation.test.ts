import { type CellPosition, type Model, registries } from '@odoo/o-spreadsheet';
import * as fc from 'fast-check';
import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { workOutInTurns } from '../../src/surfaces/sheet/evaluation.ts';
import { budgetWorkbook } from '../../src/workbook/index.ts';
import { evaluate } from '../workbook/evaluate.ts';

/** What the page would do when it has nothing else to do. */
let idle: (() => void)[] = [];
const rest = (): void => {
  while (idle.length > 0) idle.shift()?.();
};

let whole: Model;
/** Twenty workbooks are worked out whole here, which takes minutes where much else runs. */
const BUSY = 900_000;

const calls: Record<string, number> = {};

function count(name: string): void {
  const { functionRegistry } = registries;
  const description = functionRegistry.get(`BEDDING.BUDGET.${name}`);
  const { compute } = description;
  functionRegistry.replace(`BEDDING.BUDGET.${name}`, {
    ...description,
    compute(...args) {
      calls[name] = (calls[name] ?? 0) + 1;
      return compute.apply(this, args);
    },
  });
}

beforeAll(() => {
  whole = evaluate(budgetWorkbook());
  for (const name of ['HERDS', 'LEVERS']) count(name);
  console.debug = () => {};
  workOutInTurns(
    () => {},
    (work) => idle.push(work),
  );
}, BUSY);

const sheetOf = (model: Model, name: string): string => model.getters.getSheetIdByName(name) as string;

function everything(model: Model): Record<string, unknown> {
  const { getters } = model;
  return Object.fromEntries(
    getters.getSheetIds().flatMap((sheetId) =>
      getters.getEvaluatedCellsPositions(sheetId).flatMap((at: CellPosition) => {
        const { value, message, type } = getters.getEvaluatedCell(at) as { value: unknown; message?: string; type: string };
        const spread = JSON.stringify(getters.getSpreadZone(at) ?? null);
        return type === 'empty' ? [] : [[`${getters.getSheetName(sheetId)} ${at.col} ${at.row}`, [value, message, spread]]];
      }),
    ),
  );
}

const show = (model: Model, name: string): void => {
  const { getters } = model;
  model.dispatch('ACTIVATE_SHEET', { sheetIdFrom: getters.getActiveSheetId(), sheetIdTo: sheetOf(model, name) });
};

const type = (model: Model, name: string, col: number, row: number, content: string) =>
  model.dispatch('UPDATE_CELL', { sheetId: sheetOf(model, name), col, row, content });

/** A share among the Inputs. */
const share = ['Inputs', 2, 13, '0.08'] as const;

/** Cells that are not the same in both, with what each has. */
function differing(one: Model, other: Model): unknown[] {
  const [first, second] = [everything(one), everything(other)];
  const all = new Set([...Object.keys(first), ...Object.keys(second)]);
  return [...all].flatMap((key) => {
    const both = [JSON.stringify(first[key]), JSON.stringify(second[key])];
    return both[0] === both[1] ? [] : [[key, ...both]];
  });
}

describe('a workbook worked out in turns', { timeout: BUSY }, () => {
  beforeEach(() => {
    idle = [];
    for (const name of Object.keys(calls)) delete calls[name];
  });

  it('has the same in every cell as one that is worked out whole', () => {
    const model = evaluate(budgetWorkbook());
    expect(differing(model, whole)).toEqual([]);
    expect(Object.keys(everything(model)).length).toBeGreaterThan(2000);
  });

  it('leaves a sheet that nobody looks at until the page has nothing else to do', () => {
    const model = evaluate(budgetWorkbook());
    expect(calls['HERDS']).toBeUndefined();
    rest();
    expect(calls['HERDS']).toBe(1);
    expect(differing(model, whole)).toEqual([]);
    expect(calls['HERDS']).toBe(1);
  });

  it('works a sheet out before anybody reads a cell of it', () => {
    const model = evaluate(budgetWorkbook());
    const at = { sheetId: sheetOf(model, 'Herds'), col: 1, row: 12 };
    const right = whole.getters.getEvaluatedCell({ ...at, sheetId: sheetOf(whole, 'Herds') }).value;
    expect(model.getters.getEvaluatedCell(at).value).toBe(right);
    expect(calls['HERDS']).toBe(1);
  });

  it('does not hold up typing for what is on other sheets, and has it right where it is read', () => {
    const model = evaluate(budgetWorkbook());
    rest();
    show(model, 'Inputs');
    const before = { ...calls };
    type(model, ...share);
    expect(calls).toEqual(before);
    type(whole, ...share);
    expect(differing(model, whole)).toEqual([]);
    expect(calls['LEVERS']).toBeGreaterThan(before['LEVERS'] ?? 0);
    whole.dispatch('REQUEST_UNDO');
  });

  const sheets = ['Answer', 'Inputs', 'Levers', 'Herds', 'Checks', 'Figures', 'Sources'];
  const step = fc.oneof(
    fc.record({ does: fc.constant('show' as const), sheet: fc.constantFrom(...sheets) }),
    fc.record({ does: fc.constant('rest' as const), turns: fc.integer({ min: 1, max: 3 }) }),
    fc.record({ does: fc.constant('read' as const), sheet: fc.constantFrom(...sheets), col: fc.nat(5), row: fc.nat(40) }),
    fc.record({
      does: fc.constant('input' as const),
      row: fc.integer({ min: 4, max: 70 }),
      value: fc.constantFrom('', '12', '0.4', '600', 'no'),
    }),
    fc.record({
      does: fc.constant('formula' as const),
      sheet: fc.constantFrom(...sheets),
      row: fc.integer({ min: 90, max: 99 }),
      formula: fc.constantFrom(
        '=Herds!B12',
        '=Figures!B10*2',
        '=SUM(Herds!A2:H30)',
        '=INDIRECT("Figures!B12")',
        '=Levers!A5:C9',
        '=Answer!B6',
        '=A93',
      ),
    }),
    fc.record({ does: fc.constant('row' as const), sheet: fc.constantFrom('Inputs', 'Herds') }),
    fc.record({ does: fc.constant('undo' as const) }),
  );

  it('ends as one that is worked out whole, whatever is done in whatever order', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 12 }), (steps) => {
        idle = [];
        const inTurns = evaluate(budgetWorkbook());
        const plugin = registries.coreViewsPluginRegistry.get('evaluation');
        registries.coreViewsPluginRegistry.replace('evaluation', Object.getPrototypeOf(plugin));
        const atOnce = evaluate(budgetWorkbook());
        registries.coreViewsPluginRegistry.replace('evaluation', plugin);
        for (const one of steps) {
          if (one.does === 'rest') for (let turn = 0; turn < one.turns; turn++) idle.shift()?.();
          for (const model of [inTurns, atOnce]) {
            if (one.does === 'show') show(model, one.sheet);
            if (one.does === 'read') model.getters.getEvaluatedCell({ sheetId: sheetOf(model, one.sheet), col: one.col, row: one.row });
            if (one.does === 'input') type(model, 'Inputs', 2, one.row, one.value);
            if (one.does === 'formula') type(model, one.sheet, 1, one.row, one.formula);
            if (one.does === 'undo') model.dispatch('REQUEST_UNDO');
            if (one.does === 'row') {
              const sheetName = one.sheet;
              const sheetId = sheetOf(model, sheetName);
              model.dispatch('ADD_COLUMNS_ROWS', { sheetId, sheetName, dimension: 'ROW', base: 60, quantity: 1, position: 'after' });
            }
          }
        }
        rest();
        expect(differing(inTurns, atOnce)).toEqual([]);
      }),
      { numRuns: 6 },
    );
  });
});
