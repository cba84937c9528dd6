import { type BudgetItem, itemOf } from '../../budget/items.ts';

type Test = readonly [test: string, words: string];

const orElse = (tests: readonly Test[], last: string): string =>
  tests.reduceRight((rest, [test, words]) => `IF(${test},"${words}",${rest})`, last);

type InUse = (name: string) => string;

/** Whether the item is known to play no part, as a formula: see standing.ts; undefined where it always plays one. */
function isIdle({ only, unless }: BudgetItem, inUse: InUse): string | undefined {
  if (unless) return `${inUse(itemOf(unless.item).name)}="${unless.is}"`;
  if (!only) return undefined;
  if (only === 'with a loan') return `IFERROR(NOT(${inUse('Borrowed')}>0),TRUE)`;
  const [dryer, target, pressed] = [inUse('Dryer'), inUse('Dried to dry matter'), inUse('Pressed dry matter')];
  return `IFERROR(OR(${dryer}="no",AND(${dryer}="",${pressed}<>"",${target}=${pressed})),${dryer}="no")`;
}

/** What an empty cell means, where it is not always the same. */
function whenEmpty({ needed, instead }: BudgetItem, idle: string | undefined, inUse: InUse): string {
  if (!needed) return '""';
  const not = [...(idle ? [idle] : []), ...(instead ? [`${inUse(itemOf(instead).name)}<>""`] : [])];
  if (not.length === 0) return '"missing"';
  return `IF(${not.length > 1 ? `OR(${not.join(',')})` : not[0]},"","missing")`;
}

/** What another item rules out. */
function againstOther({ against }: BudgetItem, value: string, inUse: InUse): Test[] {
  if (!against) return [];
  const { is, short, aboveIf } = against;
  const other = inUse(itemOf(against.item).name);
  const ruledOut = { 'at most': '>', 'at least': '<', above: '<=' }[is];
  const equal: Test[] = aboveIf
    ? [[`AND(${inUse(itemOf(aboveIf.item).name)}="${aboveIf.is}",${value}=${other})`, `cannot equal ${short}`]]
    : [];
  return [[`${value}${ruledOut}${other}`, `cannot be ${is === 'at most' ? 'above' : 'below'} ${short}`], ...equal];
}

/**
 * A word about one input, from the limits in the same row: a native formula, so that it can be read and followed.
 *
 * @param inUse the cell with the value that the plan goes by for another item
 */
export function inputCheck(item: BudgetItem, row: number, inUse: InUse): string {
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
  const idle = isIdle(item, inUse);
  if (idle) tests.push([idle, `not used: no ${item.only === 'with a loan' ? 'loan' : 'dryer'}`]);
  tests.push(...againstOther(item, value, inUse));
  if (usual) tests.push([`${value}<${from}`, 'below usual'], [`${value}>${to}`, 'above usual']);
  return `=IF(${value}="",${whenEmpty(item, idle, inUse)},${orElse(tests, '"ok"')})`;
}
