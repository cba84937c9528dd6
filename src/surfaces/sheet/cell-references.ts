import { helpers, Model, registries } from '@odoo/o-spreadsheet';

interface End {
  readonly colFixed: boolean;
  readonly rowFixed: boolean;
}

interface Reference {
  readonly parts: readonly End[];
}

/** What reads and writes references: private to the grid, so this much is told here, and tests/surfaces/cell-references.test.ts fails if it moves. */
interface References {
  readonly getters: { readonly getSheetName: (id: string) => string };
  getRangeFromSheetXC(sheetId: string, text: string): Reference;
  createAdaptedRanges(given: readonly Reference[], ...by: readonly unknown[]): readonly Reference[];
  getRangeString(reference: Reference, ...how: readonly unknown[]): string;
}

interface Sheets {
  getSheetIdByName(name: string | undefined): string | undefined;
}

const isRow = (end: string): boolean => /^\$?\d+$/.test(end);

const endOf = (end: string): End => ({
  colFixed: !isRow(end) && end.startsWith('$'),
  rowFixed: isRow(end) ? end.startsWith('$') : end.includes('$', 1),
});

/** `A$1:A1` covers one cell where it stands and two in the row below: its ends differ, and both are kept. */
const withBothEnds = (reference: Reference, ends: readonly End[]): Reference =>
  reference.parts.length === 1 && ends.length === 2 && ends.some(({ colFixed, rowFixed }) => colFixed || rowFixed)
    ? { ...reference, parts: ends }
    : reference;

/** A range that covers one cell lost its second end: the running total `=SUM(A$1:A1)`, filled down, was the same figure in each row. */
function keepBothEnds(references: References): void {
  const { getRangeFromSheetXC, createAdaptedRanges } = references;
  references.getRangeFromSheetXC = function (sheetId, text) {
    return withBothEnds(getRangeFromSheetXC.call(this, sheetId, text), helpers.splitReference(text).xc.split(':').map(endOf));
  };
  references.createAdaptedRanges = function (given, ...by) {
    return createAdaptedRanges.call(this, given, ...by).map((adapted, k) => withBothEnds(adapted, given[k]?.parts ?? []));
  };
}

/** Between apostrophes, an apostrophe in a sheet's name is written twice (OASIS OpenDocument 1.3, part 4, 5.8); the grid read and wrote it as it is. */
function doubleApostrophes(references: References, sheets: Sheets): void {
  const { getRangeString } = references;
  const { getSheetIdByName } = sheets;
  references.getRangeString = function (reference, ...how) {
    const getSheetName = (id: string) => this.getters.getSheetName(id).replaceAll("'", "''");
    // Ours stand before the grid's own, which are some hundreds: to copy them for each reference took most of the time of keeping.
    const getters = Object.create(this.getters, { getSheetName: { value: getSheetName } });
    return getRangeString.call(Object.create(this, { getters: { value: getters } }), reference, ...how);
  };
  sheets.getSheetIdByName = function (name) {
    return getSheetIdByName.call(this, name) ?? getSheetIdByName.call(this, name?.replaceAll("''", "'"));
  };
}

/** Mends what the grid makes of references, before the first workbook is opened. */
export function mendReferences(): void {
  const { range } = new Model() as unknown as { readonly range: References };
  const references: References = Object.getPrototypeOf(range);
  keepBothEnds(references);
  doubleApostrophes(references, registries.corePluginRegistry.get('sheet').prototype as unknown as Sheets);
}
