import type { BudgetItem } from '../../budget/items.ts';
import { inLocale } from '../in-locale.ts';
import { editable, isoDayOf, parseNumber, serialOf } from './numbers.ts';
import type { CellContent } from './spreadsheet-host.ts';
import { refusalIn, tidy, waysOf } from './survey-units.ts';

/** What stands in an item's box: as typed, in the way it was typed. */
export interface Draft {
  readonly text: string;
  /** Which of the item's ways. */
  readonly way: number;
  readonly aids: readonly string[];
  /** What it put into the sheet; undefined while it has not. */
  readonly saved?: CellContent | undefined;
  readonly problem?: string | undefined;
}

/** What the sheet holds, as its box would show it. */
export function draftOf(item: BudgetItem, value: CellContent, locale: string): Draft {
  const common = { way: 0, aids: [] };
  if (value === null) return { ...common, text: '' };
  if (item.parameter.choices)
    return { ...common, text: item.parameter.choices.find((word) => word === item.parameter.read(value)) ?? String(value) };
  if (typeof value !== 'number') return { ...common, text: String(value) };
  if (item.parameter.unit === 'date') return { ...common, text: isoDayOf(value) };
  return { ...common, text: editable(tidy(waysOf(item)[0]?.fromSheet?.(value) ?? value), locale) };
}

const notANumber = (said: string, locale: string): { readonly problem: string } => ({
  problem: `"${said}" is not a number as written here; write it like ${new Intl.NumberFormat(locale).format(1234.5)}`,
});

/** Units of sums of money, in whatever currency: its sign may be typed with them. */
const moneyUnits: ReadonlySet<string> = new Set(['money', 'per t', 'per kWh', 'per h', 'per case']);

/** `35%` is a per cent, whichever unit stands beside the box. */
const isPerCent = ({ parameter: { unit } }: BudgetItem, text: string): boolean => unit === 'fraction' && text.trim().endsWith('%');

/** Why a value that came of what was typed is refused. */
export const refusalOf = (item: BudgetItem, { text, way }: Draft, value: unknown, locale: string): string =>
  inLocale(refusalIn(item, value, isPerCent(item, text) ? 0 : way), locale);

/** The sheet's value for what was typed, the reason why there is none, or undefined while a reading it needs is still missing. */
export function valueFrom(
  item: BudgetItem,
  { text, way, aids }: Draft,
  locale: string,
): number | string | { readonly problem: string } | undefined {
  const { choices, unit } = item.parameter;
  if (choices) return text;
  if (unit === 'date') return serialOf(text);
  const chosen = waysOf(item)[way];
  const typed = parseNumber(moneyUnits.has(unit) ? text.replace(/\p{Sc}/u, '') : text, locale);
  if (typed === undefined || !chosen) return notANumber(text, locale);
  if (isPerCent(item, text)) return typed;
  if (chosen.aids.some((_, k) => (aids[k] ?? '').trim() === '')) return undefined;
  const readings = chosen.aids.map((_, k) => parseNumber(aids[k] ?? '', locale));
  const bad = readings.findIndex((reading) => reading === undefined || reading <= 0);
  if (bad >= 0) return { problem: `${chosen.aids[bad]?.label} (${chosen.aids[bad]?.unit}): "${aids[bad]}" is not a number above 0` };
  try {
    const value = tidy(chosen.toSheet(typed, readings as number[]));
    return Number.isFinite(value) ? value : { problem: `"${text}" ${chosen.unit} cannot be turned into ${unit}` };
  } catch (fault) {
    return { problem: inLocale((fault as Error).message, locale) };
  }
}
