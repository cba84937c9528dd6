import type { BudgetItem } from '../../functions/budget-items.ts';

type Test = readonly [test: string, words: string];

const orElse = (tests: readonly Test[], last: string): string =>
  tests.reduceRight((rest, [test, words]) => `IF(${test},"${words}",${rest})`, last);

/** What an empty cell means, where it is not always the same. `inUse` gives the cell with another item's value. */
function whenEmpty({ name, needed }: BudgetItem, inUse: (name: string) => string): string {
  if (needed === 'always') return '"missing"';
  if (needed === 'with a loan') return `IF(${inUse('Borrowed')}>0,"missing","")`;
  if (!needed) return '""';
  const dryer = `${inUse('Dried to dry matter')}<>${inUse('Pressed dry matter')}`;
  if (needed === 'with a dryer') return `IF(${dryer},"missing","")`;
  const other = name === 'Heat available kW' ? 'Hot water litres per hour' : 'Heat available kW';
  return `IF(AND(${dryer},${inUse(other)}=""),"missing","")`;
}

/** What two items together rule out. */
const against: Readonly<Record<string, (value: string, inUse: (name: string) => string) => Test>> = {
  'Dried to dry matter': (value, inUse) => [`${value}<${inUse('Pressed dry matter')}`, 'cannot be below pressed'],
  'Hot water temperature': (value, inUse) => [`${value}<=${inUse('Outdoor temperature')}`, 'cannot be below outdoor'],
  Grant: (value, inUse) => [`${value}>${inUse('Kit cost')}`, 'cannot be above kit cost'],
  Borrowed: (value, inUse) => [`${value}>${inUse('Kit cost')}`, 'cannot be above kit cost'],
};

/** A word about one input, from the limits in the same row: a native formula, so that it can be read and followed. */
export function inputCheck(item: BudgetItem, row: number, inUse: (name: string) => string): string {
  const [value, lowest, highest, from, to] = ['C', 'L', 'M', 'N', 'O'].map((column) => `${column}${row}`) as [string, ...string[]];
  const { usual, parameter } = item;
  const { bounds, choices } = parameter;
  const tests: Test[] = [];
  if (choices) {
    tests.push([`ISERROR(SEARCH("; "&${value}&";","; "&${lowest}&";"))`, 'cannot be used']);
  } else {
    tests.push([`NOT(ISNUMBER(${value}))`, 'cannot be used']);
    tests.push([`${value}${bounds?.above === undefined ? '<' : '<='}${lowest}`, 'cannot be so low']);
    tests.push([`${value}${bounds?.below === undefined ? '>' : '>='}${highest}`, 'cannot be so high']);
    if (bounds?.whole) tests.push([`${value}<>INT(${value})`, 'cannot be a part']);
  }
  const both = against[item.name]?.(value, inUse);
  if (both) tests.push(both);
  if (usual) tests.push([`${value}<${from}`, 'below usual'], [`${value}>${to}`, 'above usual']);
  return `=IF(${value}="",${whenEmpty(item, inUse)},${orElse(tests, '"ok"')})`;
}
