import { isBlank } from '../core/result.ts';
import { quoted } from '../core/words.ts';
import type { Budget } from '../domain/budget.ts';
import { budgetResults } from '../domain/budget-results.ts';
import { warningsOf } from '../domain/budget-warnings.ts';
import { type Answer, Refusal } from '../domain/refusal.ts';
import { pairUp, type Table } from './budget-herd.ts';
import { answerOf, budgetOf, defaultsUsed, type GivenInputs, itemNamed, readInputs, refusedInput, stillMissing } from './budget-reading.ts';

/** The score is never shown without its span. */
export const usualResults = [
  'Fibre needed',
  'What limits',
  'Cover of demand',
  'Saving',
  'Payback',
  'NPV',
  'Break-even mastitis cases',
  'Hygiene score, fibre',
  'Hygiene span, fibre',
] as const;

/** One figure of a herd: a result of its plan, or a count of what was not given. */
interface Figure {
  readonly key: string;
  readonly value: (plan: Budget, given: GivenInputs) => Answer;
}

const counts: readonly Figure[] = [
  { key: 'Defaults used', value: (plan, given) => defaultsUsed(given, plan).length },
  { key: 'Still missing', value: (plan, given) => stillMissing(given, plan).length },
];
const figureByKey = new Map<string, Figure>([...budgetResults, ...counts].map((figure) => [figure.key.toLowerCase(), figure]));

/** The results asked for by key, else the usual ones. */
function resultsAsked(asked: Table | undefined): readonly Figure[] {
  const keys = asked?.flat().filter((key) => !isBlank(key)) ?? usualResults;
  return keys.map((key) => {
    const result = figureByKey.get(String(key).trim().toLowerCase());
    if (!result)
      throw new Refusal(
        'results (table)',
        `${quoted(key)} is not a result of the budget`,
        'enter keys as the first column of BEDDING.BUDGET.HERD shows them',
      );
    return result;
  });
}

/** One herd's results and its number of warnings; a refused input shows in each of its cells, so that it cannot be missed. */
function rowOf(given: GivenInputs, results: readonly Figure[]): readonly Answer[] {
  const refused = refusedInput(given);
  if (refused) return [...results.map(() => refused), refused];
  const plan = budgetOf(given);
  return [...results.map((result) => answerOf(() => result.value(plan, given))), warningsOf(plan).length];
}

export function herds(headings: Table, herdTable: Table, asked: Table | undefined) {
  const names = headings.flat();
  const results = resultsAsked(asked);
  const columns = (herdTable[0] as readonly unknown[]).length;
  if (columns !== names.length) {
    throw new Refusal('herds (table)', `has ${columns} columns below ${names.length} headings`, 'enter a column for each heading');
  }
  const label = names.findIndex((name) => typeof name === 'string' && name.trim().toLowerCase() === 'herd');
  const rowFor = (cells: readonly unknown[], k: number) => {
    const key = label >= 0 && !isBlank(cells[label]) ? String(cells[label]) : k + 1;
    const pairs = names.map((name, column) => [name, cells[column]] as const).filter((_, column) => column !== label);
    return [
      key,
      ...rowOf(
        readInputs(pairs, (column) => `headings column ${column + 1}`),
        results,
      ),
    ];
  };
  const header = ['Herd', ...results.map(({ key }) => key), 'Warnings'];
  const last = herdTable.findLastIndex((cells) => !cells.every(isBlank));
  // A blank row between herds stays blank, so that answers set beside the herds keep their rows.
  const rows = herdTable.slice(0, last + 1).map((cells, k) => (cells.every(isBlank) ? header.map(() => undefined) : rowFor(cells, k)));
  return { columns: header, rows };
}

export function sweep(items: Table, values: Table | undefined, vary: string, over: Table, asked: Table | undefined) {
  const given = pairUp(items, values);
  const item = itemNamed(vary);
  if (!item) throw new Refusal('vary', `"${vary}" is not an item of the budget`, 'enter a name as BEDDING.BUDGET.INPUTS lists it');
  const results = resultsAsked(asked);
  const rows = over
    .flat()
    .filter((cell) => !isBlank(cell))
    .map((cell) => {
      const one = readInputs([[item.name, cell]], () => 'over');
      const shown = typeof cell === 'object' ? '' : (cell as Answer);
      return [shown, ...rowOf(new Map([...given, ...one]), results)];
    });
  return { columns: [item.name, ...results.map(({ key }) => key), 'Warnings'], rows };
}
