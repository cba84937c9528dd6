import { defineSpill, type WorkingStep } from '../core/define.ts';
import { maybe, table, text } from '../core/parameters.ts';
import { isBlank } from '../core/result.ts';
import { cite, citeDefault } from '../core/working.ts';
import exampleHerd from '../data/example-herd.json';
import type { Budget } from '../domain/budget.ts';
import { ifNone } from '../domain/budget-inputs.ts';
import { nearestValue } from '../domain/budget-levers.ts';
import { type BudgetResult, budgetResults } from '../domain/budget-results.ts';
import { warningsOf } from '../domain/budget-warnings.ts';
import { type Answer, NoAnswer, Refusal } from '../domain/refusal.ts';
import { type BudgetItem, budgetItems } from './budget-items.ts';
import { budgetOf, defaultsUsed, type GivenInputs, itemNamed, readInputs, refusedInput, stillMissing } from './budget-reading.ts';

type Table = readonly (readonly unknown[])[];

/** A result of the plan, or the reason why there is none. */
function answerOf<Value>(work: () => Value): Value | NoAnswer | Refusal {
  try {
    return work();
  } catch (thrown) {
    if (thrown instanceof NoAnswer || thrown instanceof Refusal) return thrown;
    throw thrown;
  }
}

const flat = (range: Table): readonly unknown[] => range.flat();

function pairUp(items: Table, values: Table | undefined): GivenInputs {
  const names = flat(items);
  const cells = values ? flat(values) : names.map(() => null);
  if (names.length !== cells.length) {
    throw new Refusal('values (table)', `holds ${cells.length} cells beside ${names.length} items`, 'enter two ranges of the same length');
  }
  return readInputs(
    names.map((name, k) => [name, cells[k]] as const),
    (k) => `items row ${k + 1}`,
  );
}

const itemsAndValues = [
  table('items', 'names of the budget’s items, in any order'),
  maybe(table('values', 'their values, beside them; blank where not given'), 'nothing given yet'),
] as const;

function meaningOf(result: BudgetResult, plan: Budget): string {
  const { meaning } = result;
  if (typeof meaning === 'string') return meaning;
  const said = answerOf(() => meaning(plan));
  return typeof said === 'string' ? said : said.message;
}

function herdRows(given: GivenInputs) {
  const plan = budgetOf(given);
  const results = budgetResults.map((result) => [result.key, answerOf(() => result.value(plan)), result.unit, meaningOf(result, plan)]);
  const [defaults, missing] = [defaultsUsed(given, plan), stillMissing(given, plan)];
  const counts = [
    ['Defaults used', defaults.length, '', defaults.length === 0 ? 'None: every item was given.' : `${defaults.join('; ')}.`],
    ['Still missing', missing.length, '', missing.length === 0 ? 'Nothing: the plan has all it needs.' : `${missing.join('; ')}.`],
  ];
  const warnings = warningsOf(plan).map(({ key, value, meaning }) => [key, value, '', meaning]);
  return { rows: [...results, ...counts, ...warnings] };
}

/** The budget's own working: every item with where it comes from, then every result with the functions and figures behind it. */
function explainHerd(given: GivenInputs): readonly WorkingStep[] {
  const plan = budgetOf(given);
  const items = budgetItems.map(({ name, key, parameter }): WorkingStep => {
    const { says, unit, fallback } = parameter;
    if (given.has(key)) return { step: name, says, equation: 'given', value: given.get(key) as Answer, unit, source: '' };
    if (!fallback) return { step: name, says, equation: 'missing', value: '', unit, source: '' };
    return { step: name, says, equation: 'default', value: fallback.value ?? fallback.shown, unit, source: citeDefault(fallback) };
  });
  const results = budgetResults.map(
    (result): WorkingStep => ({
      step: result.key,
      says: meaningOf(result, plan),
      equation: result.how,
      value: answerOf(() => result.value(plan)),
      unit: result.unit,
      source: '',
    }),
  );
  return [...items, ...results];
}

const usualResults = [
  'Fibre needed',
  'What limits',
  'Cover of demand',
  'Saving',
  'Payback',
  'NPV',
  'Break-even mastitis cases',
  'Hygiene score, fibre',
];

const resultByKey = new Map(budgetResults.map((result) => [result.key.toLowerCase(), result]));

/** The results asked for by key, else the usual ones. */
function resultsAsked(asked: Table | undefined): readonly BudgetResult[] {
  const keys = asked ? flat(asked).filter((key) => !isBlank(key)) : usualResults;
  return keys.map((key) => {
    const result = resultByKey.get(String(key).trim().toLowerCase());
    if (!result)
      throw new Refusal(
        'results (table)',
        `"${String(key)}" is not a result of the budget`,
        'enter keys as the first column of BEDDING.BUDGET.HERD shows them',
      );
    return result;
  });
}

/** One herd's results and its number of warnings; a refused input shows in each of its cells, so that it cannot be missed. */
function rowOf(given: GivenInputs, results: readonly BudgetResult[]): readonly Answer[] {
  const refused = refusedInput(given);
  if (refused) return [...results.map(() => refused), refused];
  const plan = budgetOf(given);
  return [...results.map((result) => answerOf(() => result.value(plan))), warningsOf(plan).length];
}

function herds(headings: Table, herdTable: Table, asked: Table | undefined) {
  const names = flat(headings);
  const results = resultsAsked(asked);
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
  const rows = herdTable.map((cells, k) => (cells.every(isBlank) ? undefined : rowFor(cells, k))).filter((row) => row !== undefined);
  return { columns: ['Herd', ...results.map(({ key }) => key), 'Warnings'], rows };
}

function sweep(items: Table, values: Table | undefined, vary: string, over: Table, asked: Table | undefined) {
  const given = pairUp(items, values);
  const item = itemNamed(vary);
  if (!item) throw new Refusal('vary', `"${vary}" is not an item of the budget`, 'enter a name as BEDDING.BUDGET.INPUTS lists it');
  const results = resultsAsked(asked);
  const rows = flat(over)
    .filter((cell) => !isBlank(cell))
    .map((cell) => {
      const one = readInputs([[item.name, cell]], () => 'over');
      const shown = typeof cell === 'object' ? '' : (cell as Answer);
      return [shown, ...rowOf(new Map([...given, ...one]), results)];
    });
  return { columns: [item.name, ...results.map(({ key }) => key), 'Warnings'], rows };
}

const leverKeys = [
  'interval_days',
  'litres',
  'capture',
  'press_hours_day',
  'air_m3_h',
  'heat',
  'target_dm',
  'kit_cost',
  'bought_price_per_t',
  'heat_price',
] as const;

const itemOf = (key: string): BudgetItem => budgetItems.find((item) => item.key === key) as BudgetItem;

/** Heat is moved by whichever of its two items sets the supply temperature. */
function heatLever(given: GivenInputs, plan: Budget): BudgetItem {
  if (!given.has('water_l_h')) return itemOf('heat_kw');
  if (!given.has('heat_kw')) return itemOf('water_l_h');
  return itemOf(ifNone(() => plan.kit.now.supply().set_by, 'water') === 'heat' ? 'heat_kw' : 'water_l_h');
}

const span = (item: BudgetItem, lowest: number, highest: number) => `between ${lowest} and ${highest} ${item.parameter.unit}`;

function levers(items: Table, values: Table | undefined) {
  const given = pairUp(items, values);
  const plan = budgetOf(given);
  const rows = leverKeys.map((key) => {
    const item = key === 'heat' ? heatLever(given, plan) : itemOf(key);
    const now = answerOf(() => plan.get(item.key));
    if (typeof now !== 'number') return [item.name, item.parameter.unit, now, now, now];
    const range = item.parameter.range as readonly [number, number];
    const planWith = (value: number) => budgetOf(new Map([...given, [item.key, value]]));
    const nearest = (figure: (plan: Budget) => number, target: number, goal: string) =>
      nearestValue(planWith, now, range, {
        figure,
        target,
        none: (low, high) => `no value ${span(item, low, high)} makes ${goal}, all else as it is`,
      });
    return [
      item.name,
      item.parameter.unit,
      now,
      nearest((of) => of.kit.limit().cover, 1, 'the cover exactly 1'),
      nearest((of) => of.money.npv(), 0, 'the kit just pay'),
    ];
  });
  return { rows };
}

const shownChoices = (item: BudgetItem): string => item.parameter.choices?.join('; ') ?? '';

function inputRows() {
  const rows = budgetItems.map((item) => {
    const { unit, fallback, range } = item.parameter;
    const standing = item.needed
      ? `required${item.needed === 'always' ? '' : ` ${item.needed}`}`
      : (fallback?.value ?? fallback?.shown ?? '–');
    return [
      item.name,
      unit,
      standing,
      range?.[0] ?? '',
      range?.[1] ?? '',
      shownChoices(item),
      fallback && fallback.value !== undefined ? cite(fallback.source) : '',
      fallback && fallback.value !== undefined ? fallback.status : '',
    ];
  });
  return { rows };
}

const exampleItems = Object.keys(exampleHerd).map((name) => [name]);
const exampleValues = Object.values(exampleHerd).map((value) => [value]);
const workedApart = 'an invented herd, worked independently of this code from the same equations';

const resultsAskedFor = maybe(table('results', 'keys of the results wanted, one a column'), `${usualResults.join('; ')}`);

export const budgetFamily = [
  defineSpill({
    name: 'BUDGET.HERD',
    summary: 'The whole job for one herd: bedding needed, what the kit can make, money, payback, udder health and warnings.',
    finds: 'whole budget, plan, answer, does it pay, will it work, everything',
    parameters: itemsAndValues,
    compute: (items, values) => herdRows(pairUp(items, values)),
    columns: ['key', 'value', 'unit', 'meaning'],
    explain: ([items, values]) => explainHerd(pairUp(items, values)),
    working: {},
    sources: ['project'],
    examples: [{ call: [exampleItems, exampleValues], at: ['Fibre needed', 'value'], gives: 243.539, within: 0.001, source: workedApart }],
  }),
  defineSpill({
    name: 'BUDGET.HERDS',
    summary: 'The same for many herds, one row each.',
    finds: 'many farms, list of herds, compare herds, portfolio',
    parameters: [
      table('headings', 'one row: the items’ names above their columns; Herd for a name'),
      table('herds', 'one row for each herd'),
      resultsAskedFor,
    ],
    compute: herds,
    columns: ['Herd', ...usualResults, 'Warnings'],
    working: {},
    sources: ['project'],
    examples: [
      {
        call: [[Object.keys(exampleHerd)], [Object.values(exampleHerd)]],
        at: ['1', 'Cover of demand'],
        gives: 1.37626,
        within: 0.00001,
        source: workedApart,
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.SWEEP',
    summary: 'The results for a row of values of one item, all else as it is.',
    finds: 'what if, data table, try values, vary one thing',
    parameters: [...itemsAndValues, text('vary', 'the item that is varied'), table('over', 'the values it takes'), resultsAskedFor],
    compute: sweep,
    columns: ['vary', ...usualResults, 'Warnings'],
    working: {},
    sources: ['project'],
    examples: [
      {
        call: [exampleItems, exampleValues, 'Bought price per t', [[165], [200]]],
        at: ['165', 'Saving'],
        gives: 14_648.94,
        within: 75,
        source: `${workedApart}; 0.5 % for moist air`,
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.LEVERS',
    summary: 'What would make it so: for each lever the value at which the herd is just covered and at which the kit just pays.',
    finds: 'what would make it pay, goal seek, break even, what to change, levers',
    parameters: itemsAndValues,
    compute: levers,
    columns: ['lever', 'unit', 'now', 'for cover 1', 'for NPV 0'],
    working: {},
    sources: ['project'],
    examples: [
      {
        call: [exampleItems, exampleValues],
        at: ['Bought price per t', 'for NPV 0'],
        gives: 170.188,
        within: 0.9,
        source: `${workedApart}: its break-even bedding price; 0.5 % for moist air`,
      },
    ],
  }),
  defineSpill({
    name: 'BUDGET.INPUTS',
    summary: 'Every item the budget can be told, with unit, default, range, choices and source.',
    finds: 'list of inputs, items, what do I need to enter',
    parameters: [],
    compute: inputRows,
    columns: ['item', 'unit', 'default', 'lowest', 'highest', 'choices', 'source', 'status'],
    working: {},
    sources: ['project'],
    examples: [{ call: [], at: ['Exhaust humidity', 'default'], gives: 0.75, source: 'by hand: as the list of defaults has it' }],
  }),
];
