import { type BudgetItem, itemOf } from '../../budget/items.ts';

type Test = readonly [test: string, words: string];

const orElse = (tests: readonly Test[], last: string): string =>
  tests.reduceRight((rest, [test, words]) => `IF(${test},"${words}",${rest})`, last);

/** What an empty cell means, where it is not always the same. `inUse` gives the cell with another item's value. */
function whenEmpty({ needed, only, instead }: BudgetItem, inUse: (name: string) => string): string {
  if (!needed) return '""';
  if (!only) return '"missing"';
  if (only === 'with a loan') return `IF(${inUse('Borrowed')}>0,"missing","")`;
  const dryer = `${inUse('Dried to dry matter')}<>${inUse('Pressed dry matter')}`;
  return `IF(${instead ? `AND(${dryer},${inUse(itemOf(instead).name)}="")` : dryer},"missing","")`;
}

/** What another item rules out. */
function againstOther({ against }: BudgetItem, value: string, inUse: (name: string) => string): Test | undefined {
  if (!against) return undefined;
  const ruledOut = { 'at most': '>', 'at least': '<', above: '<=' }[against.is];
  return [
    `${value}${ruledOut}${inUse(itemOf(against.item).name)}`,
    `cannot be ${against.is === 'at most' ? 'above' : 'below'} ${against.short}`,
  ];
}

/** A word about one input, from the limits in the same row: a native formula, so that it can be read and followed. */
export function inputCheck(item: BudgetItem, row: number, inUse: (name: string) => string): string {
  const [value, lowest, highest, from, to] = ['C', 'M', 'N', 'O', 'P'].map((column) => `${column}${row}`) as [string, ...string[]];
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
  const both = againstOther(item, value, inUse);
  if (both) tests.push(both);
  if (usual) tests.push([`${value}<${from}`, 'below usual'], [`${value}>${to}`, 'above usual']);
  return `=IF(${value}="",${whenEmpty(item, inUse)},${orElse(tests, '"ok"')})`;
}
