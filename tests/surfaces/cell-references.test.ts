import { readFileSync } from 'node:fs';
import { helpers, Model } from '@odoo/o-spreadsheet';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { mendReferences } from '../../src/surfaces/sheet/cell-references.ts';
import { mendCriteria } from '../../src/surfaces/sheet/criteria.ts';
import { sendAsMade } from '../../src/surfaces/sheet/one-author.ts';

type Value = string | number | null;

interface NativeFormulas {
  /** How another spreadsheet program came to the answers. */
  readonly made: string;
  readonly data: readonly (readonly Value[])[];
  readonly formulas: readonly ({ readonly formula: string } & Readonly<Record<Deed, readonly Value[]>>)[];
}

const { data, formulas }: NativeFormulas = JSON.parse(readFileSync(new URL('native-formulas.json', import.meta.url), 'utf8'));

const sheetId = 'data';
const [firstColumn, lastColumn] = [6, 5 + formulas.length];
const lastRow = data.length - 1;
const zone = (left: number, top: number, right: number, bottom: number) => ({ left, top, right, bottom });
const select = (model: Model, block: ReturnType<typeof zone>) =>
  model.selection.selectZone({ cell: { col: block.left, row: block.top }, zone: block });

function open(cells: Readonly<Record<string, string>>): Model {
  const model = new Model({ sheets: [{ id: sheetId, name: 'Data', colNumber: lastColumn + 2, rowNumber: 30, cells }] });
  sendAsMade(model);
  return model;
}

/** Everything typed, and the formulas of row 2 pulled down by the corner of the selection. */
function filled(): Model {
  const cells = data.flatMap((row, r) => row.map((value, c) => [helpers.toXC(c, r), String(value ?? '')] as const));
  const typed = formulas.map(({ formula }, k) => [helpers.toXC(firstColumn + k, 1), formula] as const);
  const model = open(Object.fromEntries([...cells, ...typed].filter(([, content]) => content !== '')));
  select(model, zone(firstColumn, 1, lastColumn, 1));
  model.dispatch('AUTOFILL_SELECT', { col: lastColumn, row: lastRow });
  model.dispatch('AUTOFILL');
  return model;
}

function copyRow5(model: Model): void {
  select(model, zone(firstColumn, 4, lastColumn, 4));
  model.dispatch('COPY');
  for (const row of [1, 2, 6]) model.dispatch('PASTE', { target: [zone(firstColumn, row, firstColumn, row)] });
}

const onRows = { sheetId, sheetName: 'Data', dimension: 'ROW' } as const;
const sort = (model: Model, right: number): unknown =>
  model.dispatch('SORT_CELLS', { sheetId, col: 0, row: 1, sortDirection: 'desc', zone: zone(0, 1, right, lastRow) });

const deeds = {
  filled: () => undefined,
  copied: copyRow5,
  'rows inserted': (model: Model) => model.dispatch('ADD_COLUMNS_ROWS', { ...onRows, base: 3, quantity: 2, position: 'before' }),
  'row removed': (model: Model) => model.dispatch('REMOVE_COLUMNS_ROWS', { ...onRows, elements: [4] }),
  'data sorted': (model: Model) => sort(model, 2),
  'all sorted': (model: Model) => sort(model, lastColumn),
};
type Deed = keyof typeof deeds;

/** As the file has it. */
function valueAt(model: Model, col: number, row: number): Value {
  const { type, value } = model.getters.getEvaluatedCell({ sheetId, col, row });
  if (type === 'error') return 'error';
  return type === 'empty' ? null : typeof value === 'boolean' ? Number(value) : value;
}

const alike = (ours: Value, theirs: Value): boolean =>
  typeof ours === 'number' && typeof theirs === 'number'
    ? Math.abs(ours - theirs) <= 1e-9 * Math.max(1, Math.abs(theirs))
    : ours === theirs;

beforeAll(() => {
  vi.spyOn(console, 'debug').mockImplementation(() => undefined);
  mendReferences();
  mendCriteria();
});

describe.each(Object.entries(deeds) as [Deed, (model: Model) => unknown][])('native formulas, %s', (deed, act) => {
  let model: Model;
  beforeAll(() => {
    model = filled();
    act(model);
  });

  it.each(formulas.map((row, k) => [row.formula, k, row[deed]] as const))('%s answers as in LibreOffice', (_, k, theirs) => {
    const ours = theirs.map((_value, r) => valueAt(model, firstColumn + k, r + 1));
    const off = ours.flatMap((value, r) => (alike(value, theirs[r] as Value) ? [] : [`row ${r + 2}: ${value}, there ${theirs[r]}`]));
    expect(off).toEqual([]);
  });

  it('answers the same when it is kept and opened again', () => {
    const again = new Model(JSON.parse(JSON.stringify(model._exportData(false))));
    for (let row = 1; row < lastRow + 3; row++) {
      for (let col = firstColumn; col <= lastColumn; col++) expect(valueAt(again, col, row)).toBe(valueAt(model, col, row));
    }
  });
});

describe('a sheet with an apostrophe in its name', () => {
  const named = () =>
    new Model({
      sheets: [
        { id: sheetId, name: 'Data', cells: { A1: "='Bob''s'!A1*2", A2: "=SUM('Bob''s'!A$1:A1)", A3: "='Bobs'!A1" } },
        { id: 'other', name: "Bob's", cells: { A1: '21', A2: '=Data!A1' } },
      ],
    });
  const formulaAt = (model: Model, row: number): string | undefined => {
    const cell = model.getters.getCell({ sheetId, col: 0, row });
    return cell?.isFormula ? cell.compiledFormula.toFormulaString(model.getters) : undefined;
  };

  it('is read and written with the apostrophe doubled, in one cell, a range and after a row is put in', () => {
    const model = named();
    sendAsMade(model);
    expect([0, 1, 2].map((row) => valueAt(model, 0, row))).toEqual([42, 21, 'error']);
    expect(formulaAt(model, 0)).toBe("='Bob''s'!A1*2");
    model.dispatch('ADD_COLUMNS_ROWS', {
      sheetId: 'other',
      sheetName: "Bob's",
      dimension: 'ROW',
      base: 0,
      quantity: 1,
      position: 'before',
    });
    expect([formulaAt(model, 0), formulaAt(model, 1)]).toEqual(["='Bob''s'!A2*2", "=SUM('Bob''s'!A$2:A2)"]);
    const again = new Model(JSON.parse(JSON.stringify(model._exportData(false))));
    expect(valueAt(again, 0, 0)).toBe(42);
  });
});
