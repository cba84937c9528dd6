import { spell } from '../../domain/spell.ts';
import { inLocale, marksOf } from '../in-locale.ts';

const escaped = (mark: string): string => mark.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');

/**
 * A number as the locale writes it, `35%` as 0.35, or undefined. A mark in the wrong place is no number: where commas
 * group thousands `0,35` may be 35 or 0.35, and guessing would be worse than asking.
 */
export function parseNumber(text: string, locale: string): number | undefined {
  const { group, decimal } = marksOf(locale);
  const plain = text.replace(/[\s\u00a0\u202f’']/g, '').replace(/^[−–]/, '-');
  const spaced = /^[\s\u00a0\u202f’']*$/.test(group);
  const [g, d] = [escaped(group), spaced && decimal === ',' ? '[.,]' : escaped(decimal)];
  const whole = spaced ? '\\d+' : `(?:\\d+|\\d{1,3}(?:${g}\\d{3})+)`;
  const match = new RegExp(`^([-+]?)(${whole})?(?:${d}(\\d+))?(e[-+]?\\d+)?(%?)$`, 'i').exec(plain);
  if (!match || (match[2] === undefined && match[3] === undefined)) return undefined;
  const digits = (match[2] ?? '0').replace(/\D/g, '');
  const value = Number(`${match[1]}${digits}.${match[3] ?? '0'}${match[4] ?? ''}`);
  return match[5] === '%' ? Number((value / 100).toPrecision(15)) : value;
}

/** A number to be typed over: no thousands marks, no binary noise. */
export const editable = (value: number, locale: string): string =>
  new Intl.NumberFormat(locale, { useGrouping: false, maximumSignificantDigits: 12 }).format(value).replace('−', '-');

/** A number to be read: three or four figures carry all that a plan can promise, and large sums go to the last unit. */
export function readable(value: number, locale: string, figures = 4): string {
  const size = Math.abs(value);
  if (size !== 0 && (size < 1e-4 || size >= 1e12)) return inLocale(spell(value), locale);
  return new Intl.NumberFormat(locale, size >= 1000 ? { maximumFractionDigits: 0 } : { maximumSignificantDigits: figures }).format(value);
}

const epoch = Date.UTC(1899, 11, 30);

/** The serial of a day, as spreadsheets count them, from `2026-04-30`. */
export const serialOf = (isoDay: string): number => Math.round((Date.parse(isoDay) - epoch) / 86_400_000);
export const isoDayOf = (serial: number): string => new Date(epoch + serial * 86_400_000).toISOString().slice(0, 10);

const bareUnits: ReadonlySet<string> = new Set(['', 'text', 'yes or no', 'table', 'money']);

/** A value with its unit in words: `35 %`, `243.5 t/year`, `30 April 2026`. */
export function sayValue(value: unknown, unit: string, locale: string, figures?: number): string {
  if (typeof value !== 'number') return value === null || value === undefined || value === '' ? 'blank' : String(value);
  if (unit === '0–100') return String(Math.round(value));
  if (unit === 'fraction') return `${readable(value * 100, locale, figures)} %`;
  if (unit === 'date') return new Intl.DateTimeFormat(locale, { dateStyle: 'long', timeZone: 'UTC' }).format(epoch + value * 86_400_000);
  return bareUnits.has(unit) ? readable(value, locale, figures) : `${readable(value, locale, figures)} ${unit}`;
}

/** A value as a box shows it: a fraction as a per cent. */
export const showIn = (unit: string, value: number, locale: string): string =>
  editable(unit === 'fraction' ? Number((value * 100).toPrecision(12)) : value, locale);

/** What a box holds, in the function's unit. */
export function readIn(unit: string, text: string, locale: string): number | undefined {
  const value = parseNumber(text, locale);
  return value === undefined || unit !== 'fraction' || text.trim().endsWith('%') ? value : Number((value / 100).toPrecision(12));
}

/** `1 row`, `2 rows`. */
export const sayCount = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;
