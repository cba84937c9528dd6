import { groups, howKnown, waysOfKnowing } from '../../budget/item.ts';
import { askedFirst, type BudgetItem, budgetItems, type ItemKey, itemOf, whenNeeded } from '../../budget/items.ts';
import { referenceOf } from '../../core/bibliography.ts';
import type { Unit } from '../../core/units.ts';
import { demoHerd, demoKnown, demoName } from '../demo-herd.ts';
import { shownUnit } from '../formats.ts';
import { asGiven, letter, on, quoted } from '../grid.ts';
import type { Format } from '../model.ts';
import { type CellLook, type Content, SheetBuilder } from '../sheet-builder.ts';
import { inputCheck } from './input-check.ts';

export const inputsName = 'Inputs';
const headingRow = 7;

interface Heading {
  readonly heading: string;
}
type Line = BudgetItem | Heading;
const isItem = (line: Line): line is BudgetItem => 'key' in line;

const isRequired = (item: BudgetItem): boolean => item.needed === true && askedFirst(item);

const lines: readonly Line[] = [
  { heading: 'Needed (the dryer’s only with a dryer; water or heat, one of the two); in paler cells what decides much' },
  ...budgetItems.filter(askedFirst),
  ...groups.flatMap((group): Line[] => {
    const rest = budgetItems.filter((item) => item.group === group && !askedFirst(item));
    return rest.length === 0 ? [] : [{ heading: `${group}: give what you know` }, ...rest];
  }),
];

const firstRow = headingRow + 1;
const lastRow = headingRow + lines.length;
const rowByName = new Map(lines.map((line, k) => [isItem(line) ? line.name : '', firstRow + k]));

/** The row of an item, as the spreadsheet numbers it. */
export function inputRow(name: string): number {
  const row = rowByName.get(name);
  if (row === undefined) throw new Error(`${name} is not an item of the budget`);
  return row;
}

/** Where the budget's items and what was typed beside them stand. */
export const inputsPlace = {
  sheet: inputsName,
  items: `B${firstRow}:B${lastRow}`,
  values: `C${firstRow}:C${lastRow}`,
  herd: 'C5',
  preparedBy: 'C6',
  currency: 'H5',
} as const;

/** The same as the BUDGET functions take them. */
export const items = asGiven(on(inputsName, inputsPlace.items));
export const values = asGiven(on(inputsName, inputsPlace.values));
export const herdName = on(inputsName, inputsPlace.herd);
export const preparedBy = on(inputsName, inputsPlace.preparedBy);
export const currencySign = on(inputsName, inputsPlace.currency);

const listed = { items: 'B', units: 'D', inUse: 'H', lowest: 'M', highest: 'N' } as const;
/** A column of the list of items, for what looks an item up by its name. */
export const inputsColumn = (column: keyof typeof listed): string =>
  on(inputsName, `${listed[column]}${firstRow}:${listed[column]}${lastRow}`);

const here = (name: string): string => `H${inputRow(name)}`;

/** The cells with the values that the plan goes by, one after the other: what was typed, else what is taken instead. */
export const inUse = (...names: readonly string[]): string => names.map((name) => on(inputsName, here(name))).join(',');

/** The same in a cell of its own, empty where nothing is known. */
export const copied = (item: string): string => `=IF(${inUse(item)}="","",${inUse(item)})`;

/** How the user came by an item’s value, where that was marked, and what was typed for it. */
export const knownBy = (name: string): string => on(inputsName, `I${inputRow(name)}`);
export const typedFor = (name: string): string => on(inputsName, `C${inputRow(name)}`);

const formats: Partial<Record<Unit, Format>> = {
  fraction: 'percent1',
  date: 'date',
  money: 'money',
  cows: 'whole',
  cubicles: 'whole',
  'litres/h': 'whole',
};
const formatFor = ({ parameter: { unit, choices } }: BudgetItem): Format => (choices ? 'text' : (formats[unit] ?? 'general'));

const unitOf = ({ parameter: { unit, choices } }: BudgetItem): string => (choices ? 'choose' : shownUnit(unit));

const percent = (value: number): number => Number((100 * value).toPrecision(6));

/** A number within a formula's words, written with all its digits and the reader's decimal mark. */
const spelled = (value: number): string => `TEXT(${value},"${String(value).replace(/\d/g, '0').replace(/^0+/, '0')}")`;

function usualRange({ usual, parameter }: BudgetItem): string {
  if (!usual) return '';
  const [low, high] = parameter.unit === 'fraction' ? [percent(usual[0]), percent(usual[1])] : usual;
  return Number.isInteger(low) && Number.isInteger(high) ? `${low} to ${high}` : `=${spelled(low)}&" to "&${spelled(high)}`;
}

function leftEmpty(item: BudgetItem): string | number {
  const { fallback } = item.parameter;
  if (item.needed && item.instead) return 'needed: water, heat or both';
  if (item.needed) return `needed ${whenNeeded(item)}`.trim();
  return fallback?.value ?? fallback?.shown ?? '';
}

/** What stands in where other items, not a fixed figure, give the default. */
function standInFormula({ follows, standIn }: BudgetItem): string | undefined {
  const cellOf = (key: ItemKey) => here(itemOf(key).name);
  return follows ? cellOf(follows) : standIn?.formula(...standIn.of.map(cellOf));
}

function inUseFormula(item: BudgetItem, row: number): string {
  const { unless, parameter } = item;
  const otherwise = standInFormula(item) ?? (parameter.fallback?.value === undefined ? quoted('') : `G${row}`);
  const given = `IF(C${row}="",${otherwise},C${row})`;
  const nameOf = (key: ItemKey) => here(itemOf(key).name);
  return unless ? `=IF(${nameOf(unless.item)}=${quoted(unless.is)},${nameOf(unless.as)},${given})` : `=${given}`;
}

function sourceOf({ parameter: { fallback } }: BudgetItem): string {
  if (fallback?.value === undefined) return '';
  return referenceOf(fallback.source).reference;
}

interface Column {
  readonly heading: string;
  readonly of: (item: BudgetItem, row: number) => Content;
  readonly look: (item: BudgetItem) => CellLook;
}

const note = (): CellLook => ({ style: 'note' });
const likeValue = (item: BudgetItem): CellLook => ({ style: 'output', format: formatFor(item), align: 'right' });

const columns: readonly Column[] = [
  { heading: 'item', of: ({ name }) => name, look: () => ({ style: 'label' }) },
  {
    heading: 'value',
    of: ({ name }) => demoHerd[name] ?? '',
    look: (item) => {
      const { choices } = item.parameter;
      return { ...likeValue(item), style: isRequired(item) ? 'required' : 'input', ...(choices && { choices }) };
    },
  },
  { heading: 'unit', of: unitOf, look: note },
  { heading: 'check', of: (item, row) => inputCheck(item, row, here), look: () => ({ style: 'output' }) },
  { heading: 'usual range', of: usualRange, look: note },
  { heading: 'if left empty', of: leftEmpty, look: (item) => ({ ...likeValue(item), style: 'note', align: 'left' }) },
  { heading: 'in use', of: inUseFormula, look: likeValue },
  {
    heading: howKnown,
    of: ({ name }) => demoKnown[name] ?? '',
    look: ({ parameter }) => (parameter.range ? { style: 'input', format: 'text', choices: waysOfKnowing } : { style: 'note' }),
  },
  { heading: 'what to look at on the walk', of: ({ look }) => look, look: note },
  { heading: 'source of what is taken if left empty', of: sourceOf, look: note },
  { heading: 'status', of: ({ parameter: { fallback } }) => (fallback?.value === undefined ? '' : fallback.status), look: note },
  { heading: 'lowest', of: ({ parameter: { range, choices } }) => choices?.join('; ') ?? range?.[0] ?? '', look: note },
  { heading: 'highest', of: ({ parameter: { range } }) => range?.[1] ?? '', look: note },
  { heading: 'usually from', of: ({ usual }) => usual?.[0] ?? '', look: note },
  { heading: 'usually to', of: ({ usual }) => usual?.[1] ?? '', look: note },
];

function putItem(page: SheetBuilder, item: BudgetItem, row: number): void {
  columns.forEach(({ heading, of, look }, k) => {
    const { style, ...rest } = look(item);
    const content = of(item, row);
    // What wraps stands at the top of its row, so all of a row does; the lists of choices run over the columns behind them.
    page.put(`${letter(1 + k)}${row}`, heading === 'value' || heading === howKnown ? page.given(content) : content, style, {
      ...rest,
      ...(heading !== 'lowest' && { wrap: true }),
    });
  });
}

export function inputsSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder(inputsName, [16, 230, 105, 105, 125, 75, 175, 90, 84, 330, 330, 75, 75, 90, 75, 75], {
    freeze: { rows: headingRow, columns: 0 },
    landscape: true,
    blank,
  });
  page
    .title(
      'Inputs',
      'Type only in the tinted cells. Strong yellow ones are needed; for the rest, what is taken if left empty is shown beside it. Mark how each is known: How sure goes by it.',
    )
    .put(
      'A3',
      'Percentages are typed as 35%. One cubic metre of slurry is taken as one tonne. Money is in whatever currency you type; nothing is converted.',
      'note',
    )
    .put('B5', 'Herd', 'label')
    .block(`${inputsPlace.herd}:E5`, page.given(demoName), 'input', { format: 'text' })
    .put('B6', 'Prepared by', 'label')
    .block(`${inputsPlace.preparedBy}:E6`, '', 'input', { format: 'text' })
    .put('G5', 'Currency sign', 'label')
    .put(inputsPlace.currency, '', 'input', { format: 'text' });
  page.across(`A${headingRow}`, ['', ...columns.map(({ heading }) => heading)], 'heading', { wrap: true });
  lines.forEach((line, k) => {
    if (isItem(line)) putItem(page, line, firstRow + k);
    else page.section(`A${firstRow + k}`, line.heading);
  });
  const checks = `E${firstRow}:E${lastRow}`;
  page
    .rule(checks, `E${firstRow}="ok"`, 'quiet')
    .rule(checks, `LEFT(E${firstRow},7)="missing"`, 'bad')
    .rule(checks, `LEFT(E${firstRow},6)="cannot"`, 'bad')
    .rule(checks, `RIGHT(E${firstRow},5)="usual"`, 'watch');
  return page;
}
