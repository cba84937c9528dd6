import { type BudgetItem, budgetItems, type ItemKey, itemNamed, itemOf } from '../budget/items.ts';
import { quoted } from '../workbook/grid.ts';
import type { Sheet, SheetCell } from '../workbook/model.ts';
import { inputCheck } from '../workbook/sheets/input-check.ts';
import { inputRow, inputsName, inputsPlace, inputsSheet } from '../workbook/sheets/inputs.ts';
import type { Calls } from './calls.ts';

/** What was typed for a herd: its name, and by item what its cell holds. */
export interface Typed {
  readonly herd: string;
  /** Who prepared it and the currency sign, by their labels. */
  readonly names?: Readonly<Record<string, string>>;
  readonly values: Readonly<Record<string, SheetCell['content']>>;
  /** By item, how its value is known, where that was marked. */
  readonly known?: Readonly<Record<string, string>>;
}

/** Columns of the Inputs sheet, as the page has them, and two more: how the plan stands with an item, and what is wrong with it. */
const columns = { typed: 'C', check: 'E', inUse: 'H', known: 'I', standing: 'Q', wrong: 'R' } as const;

const cell = (column: keyof typeof columns, name: string): string => `${inputsName}!${columns[column]}${inputRow(name)}`;
const cellOf = (column: keyof typeof columns, key: ItemKey): string => cell(column, itemOf(key).name);

/** Cells in error that stand for the want of an input: another error than `#N/A`, which says that there is no such figure. */
const [missing, refused] = ['missing', 'refused'].map((word, k) => ({ word, address: `R${3 + k}` })) as [Want, Want];

interface Want {
  readonly word: string;
  readonly address: string;
}

/** Whether an item may be left empty without anything standing in for it. */
const mayBeEmpty = ({ parameter, standIn, follows, needed, only }: BudgetItem): boolean =>
  parameter.fallback?.value === undefined && !standIn && !follows && (!needed || only !== undefined);

const strict = /^IF\((Inputs!H\d+)="",Inputs!R\d+,\1\)$/;

/** The cells of an item, as formulas ask for them. */
export const inputs = {
  /** What the plan goes by; an error where it is refused or missing. */
  taken(item: BudgetItem): string {
    const inUse = cell('inUse', item.name);
    return mayBeEmpty(item) ? `IF(${inUse}="",${inputsName}!${missing.address},${inUse})` : inUse;
  },
  /** The same for a function that can do without: empty where nothing was given. */
  emptyAllowed: (taken: string): string => strict.exec(taken)?.[1] ?? taken,
  given: (item: BudgetItem): string => `${cell('typed', item.name)}<>""`,
  orElse: (item: BudgetItem, otherwise: string): string =>
    `IF(${cell('typed', item.name)}="",IF(ISERROR(${cell('inUse', item.name)}),${cell('inUse', item.name)},${otherwise}),${cell('inUse', item.name)})`,
  /** Empty, or the item's name with what is wrong with it. */
  wrong: (item: BudgetItem): string => cell('wrong', item.name),
  counted: (standing: 'default' | 'missing' | 'refused'): string => `COUNTIF(${column('standing')},"${standing}")`,
  listed: (standing: 'default' | 'missing' | 'refused'): string =>
    budgetItems.map(({ name }) => `IF(${cell('standing', name)}="${standing}",${quoted(`${name}; `)},"")`).join('&'),
} as const;

const rows = budgetItems.map(({ name }) => inputRow(name));
const column = (of: keyof typeof columns): string =>
  `${inputsName}!$${columns[of]}$${Math.min(...rows)}:$${columns[of]}$${Math.max(...rows)}`;

/** Whether an item plays a part; where that cannot be told yet, a dryer's does and a loan's does not. */
function plays({ only, unless }: BudgetItem): string {
  if (unless) return `${cellOf('typed', unless.item)}<>${quoted(unless.is)}`;
  if (only === undefined) return 'TRUE';
  if (only === 'with a loan') return `IF(ISERROR(${cellOf('inUse', 'borrowed')}),FALSE,${cellOf('inUse', 'borrowed')}>0)`;
  const [target, pressed] = [cellOf('inUse', 'target_dm'), cellOf('inUse', 'cake_dm')];
  return `IF(ISERROR(${target}+${pressed}),${cellOf('typed', 'dryer')}<>"no",${target}>${pressed})`;
}

/** What is in use for an item, unless another item takes it out of the plan. */
function unlessOut({ unless }: BudgetItem, inUse: string): string {
  return unless ? `IF(${cellOf('inUse', unless.item)}=${quoted(unless.is)},${cellOf('inUse', unless.as)},${inUse})` : inUse;
}

/** How the plan stands with an item: see standing.ts, whose rules these are. */
function standing(item: BudgetItem): string {
  const { name, instead, needed, standIn, place } = item;
  const [typed, inUse] = [cell('typed', name), cell('inUse', name)];
  const second = instead !== undefined && needed && place > itemOf(instead).place;
  const lacking = needed && !second ? quoted('missing') : '""';
  const taken = standIn
    ? `IF(ISNA(${inUse}),"missing",IF(ISERROR(${inUse}),"","default"))`
    : `IF(ISERROR(${inUse}),${lacking},IF(${inUse}="",${lacking},"default"))`;
  const otherwise = instead ? `IF(${cellOf('typed', instead)}<>"","",${taken})` : taken;
  return `IF(LEFT(${cell('check', name)},6)="cannot","refused",IF(${typed}<>"","typed",IF(${plays(item)},${otherwise},"")))`;
}

const wrongWith = (name: string): string =>
  `IF(OR(${cell('standing', name)}="missing",${cell('standing', name)}="refused"),${quoted(`${name}: `)}&IF(${cell('standing', name)}="missing","missing",${cell('check', name)})&"; ","")`;

/** Formulas of the page's own sheet call our functions in places: those become cells of the working. */
const withoutOurs = (formula: string, calls: Calls): string =>
  formula.replace(/BEDDING\.([A-Z.]+)\(([^()]*)\)/g, (_, name: string, args: string) =>
    calls.call(
      name,
      args.split(',').map((arg) => (/^[A-Z]+\d+$/.test(arg) ? `${inputsName}!${arg}` : arg)),
    ),
  );

const contentAt = ({ cells }: Sheet, address: string): string => String(cells[address]?.content ?? '');
const here = (formula: string): string => `=${formula.replaceAll(`${inputsName}!`, '')}`;

function cellsOf(item: BudgetItem, page: Sheet, typed: Typed, calls: Calls): Record<string, SheetCell> {
  const at = (of: keyof typeof columns): string => `${columns[of]}${inputRow(item.name)}`;
  const look = (of: keyof typeof columns): SheetCell => page.cells[at(of)] ?? { content: '' };
  // Of two of which one will do, each would ask what is in use for the other; whether there is a dryer is as it was typed.
  const isAsTyped = (other: BudgetItem | undefined): boolean => other?.instead !== undefined || other?.key === 'dryer';
  const checked = inputCheck(item, inputRow(item.name), (name) => cell(isAsTyped(itemNamed(name)) ? 'typed' : 'inUse', name)).slice(1);
  const inUse = item.needed
    ? `IF(${at('typed')}<>"",${at('typed')},IF(LEFT(${at('check')},7)="missing",${missing.address},""))`
    : withoutOurs(contentAt(page, at('inUse')).slice(1), calls);
  const note = { style: 'note' } as const;
  return {
    [at('typed')]: { ...look('typed'), content: typed.values[item.name] ?? '' },
    // What another item rules out cannot be told where that one is itself in error.
    [at('check')]: {
      ...look('check'),
      content: here(`IFERROR(${checked},IF(${at('typed')}="",${item.needed && item.only !== 'with a loan' ? '"missing"' : '""'},"ok"))`),
    },
    [at('inUse')]: {
      ...look('inUse'),
      content: here(unlessOut(item, `IF(LEFT(${at('check')},6)="cannot",${refused.address},${inUse})`)),
    },
    [at('known')]: { ...look('known'), content: typed.known?.[item.name] ?? '' },
    [at('standing')]: { content: here(standing(item)), ...note },
    [at('wrong')]: { content: here(wrongWith(item.name)), ...note },
  };
}

/** The page's own Inputs sheet, with what was typed, in formulas that any spreadsheet program recalculates. */
export function nativeInputs(typed: Typed, calls: Calls): Sheet {
  const page = inputsSheet(true).sheet();
  const cells = Object.assign({}, page.cells, ...budgetItems.map((item) => cellsOf(item, page, typed, calls))) as Record<string, SheetCell>;
  const { herd, preparedBy, currency } = inputsPlace;
  const names = { [herd]: typed.herd, [preparedBy]: typed.names?.['Prepared by'] ?? '', [currency]: typed.names?.['Currency sign'] ?? '' };
  for (const [address, content] of Object.entries(names)) cells[address] = { ...(cells[address] as SheetCell), content };
  const headingRow = Number(/\d+/.exec(inputsPlace.items)?.[0]) - 1;
  const heading = { style: 'heading', wrap: true } as const;
  for (const { word, address } of [missing, refused]) {
    cells[address] = { content: `=${quoted(word)}*1`, style: 'note' };
    cells[address.replace('R', 'Q')] = { content: word, style: 'note' };
  }
  cells[`${columns.standing}${headingRow}`] = { content: 'standing', ...heading };
  cells[`${columns.wrong}${headingRow}`] = { content: 'what is wrong', ...heading };
  return { ...page, columns: [...page.columns, 80, 230], cells };
}
