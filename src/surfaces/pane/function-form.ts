import type { FunctionRecord } from '../../core/define.ts';
import { type Parameter, REFUSED } from '../../core/parameters.ts';
import { refusal } from '../../core/words.ts';
import { inLocale } from '../in-locale.ts';
import { prefix } from '../namespace.ts';
import { placeOf, referenceTo } from './addresses.ts';
import { literal } from './formula.ts';
import { asArgument } from './inputs-sheet.ts';
import { parseNumber } from './numbers.ts';
import type { Place, SpreadsheetHost } from './spreadsheet-host.ts';

/** What a box of the form holds: nothing, a value, or cells. */
export type Given =
  | { readonly kind: 'omitted' }
  | { readonly kind: 'value'; readonly value: number | string }
  | { readonly kind: 'cells'; readonly place: Place };

function givenFrom(text: string, sheet: string, locale: string): Given {
  const typed = text.trim();
  if (typed === '') return { kind: 'omitted' };
  const place = placeOf(typed, sheet);
  if (place) return { kind: 'cells', place };
  return { kind: 'value', value: parseNumber(typed, locale) ?? typed };
}

/** All arguments of a call; a box for a repeating one may hold several, with semicolons between. */
export function givenBy(record: FunctionRecord, texts: ReadonlyMap<string, string>, sheet: string, locale: string): readonly Given[] {
  return record.parameters.flatMap(({ name, repeating }) => {
    const text = texts.get(name) ?? '';
    return (repeating ? text.split(';') : [text]).map((part) => givenFrom(part, sheet, locale));
  });
}

/** Why a typed value cannot be used, in the function's own words; cells are judged when the function is called. */
export function problemOf(parameter: Parameter, given: Given | undefined, locale: string): string | undefined {
  if (given?.kind !== 'value' || parameter.repeating || parameter.table) return undefined;
  return parameter.read(given.value) === REFUSED ? inLocale(refusal(parameter, given.value), locale) : undefined;
}

export async function argumentsFrom(host: SpreadsheetHost, given: readonly Given[]): Promise<readonly unknown[]> {
  return Promise.all(
    given.map(async (one) => {
      if (one.kind === 'omitted') return null;
      return one.kind === 'value' ? one.value : (await host.read(one.place)).map((row) => row.map(asArgument));
    }),
  );
}

/** The call as a formula on the sheet, without the arguments left out at its end. */
export function formulaFor(record: FunctionRecord, given: readonly Given[], sheet: string): string {
  const parts = given.map((one) =>
    one.kind === 'omitted' ? '' : one.kind === 'value' ? literal(one.value) : referenceTo(one.place, sheet),
  );
  while (parts.at(-1) === '') parts.pop();
  return `=${prefix}${record.name}(${parts.join(',')})`;
}
