import { number, type Parameter, text } from '../core/parameters.ts';
import { readRow } from '../core/read-table.ts';
import { CellError, isBlank } from '../core/result.ts';
import { netPresentValue, payback } from '../domain/investment.ts';
import { type Answer, NoAnswer, Refusal } from '../domain/refusal.ts';
import { said } from '../domain/spell.ts';
import { answerOf, type Changes, type Given } from './given.ts';
import { pairUp, type Table } from './herd.ts';
import { type ItemKey, itemOf } from './items.ts';
import { type Plan, planOf } from './plan.ts';
import { clashesOf } from './standing.ts';

const MOST_DAYS = 366;
/** How far a fan is turned down: a fifth of its air at least, in steps of a hundredth. */
const LEAST_PERCENT = 20;

/** Items that a month has of its own, in the order of its columns. */
const monthly = ['ambient_c', 'ambient_rh', 'heat_kw', 'water_l_h'] as const satisfies readonly ItemKey[];

const optionalCells: ReadonlySet<ItemKey> = new Set(['heat_kw', 'water_l_h']);

const columnOf = (key: (typeof monthly)[number]): Parameter<number | undefined> => {
  const { parameter } = itemOf(key);
  const bare = number(parameter.name, parameter.unit, parameter.says, parameter.bounds);
  if (!optionalCells.has(key)) return bare;
  return { ...bare, fallback: { value: undefined, shown: 'as in the plan', source: 'project', status: 'judgement' } };
};

const columns = [
  text('month', 'name of the month'),
  number('days', 'days', 'days housed', { min: 0, max: MOST_DAYS }),
  ...monthly.map(columnOf),
] as const;

/** One month as it was given, or the refusal that stands in each of its cells. */
export interface Month {
  readonly name: string;
  readonly days: number;
  readonly changes: Changes;
  readonly refused?: CellError;
}

function readMonth(where: string, cells: readonly unknown[]): Month {
  const padded = Array.from(columns, (_, k) => cells[k] ?? null);
  const name = typeof cells[0] === 'string' ? cells[0] : '';
  const row = readRow(where, columns, padded);
  if (row instanceof CellError) return { name, days: typeof cells[1] === 'number' ? cells[1] : 0, changes: new Map(), refused: row };
  const [, days, ...own] = row;
  const changed = monthly.flatMap((key, k): readonly (readonly [ItemKey, unknown])[] => (own[k] === undefined ? [] : [[key, own[k]]]));
  return { name, days, changes: new Map(changed) };
}

/** The months of a table; blank rows are passed over. */
export function readMonths(months: Table): readonly Month[] {
  const read = months.flatMap((cells, k) => (cells.every(isBlank) ? [] : [readMonth(`months row ${k + 1}`, cells)]));
  if (read.length === 0) throw new Refusal('months (table)', 'holds no month', 'enter a row each: name, days housed, outdoor °C, humidity');
  const days = read.reduce((sum, month) => sum + month.days, 0);
  if (days > MOST_DAYS)
    throw new Refusal('months (table)', said`${days} days are more than a year has`, `enter at most ${MOST_DAYS} in all`);
  return read;
}

/** The plan with these months' days as its housed days: what the year as a whole rests on. */
const overTheYear = (given: Given, days: number): Given => given.changed(new Map([['housed_days', days]]));

/** The plan as it is in one month; tonnes bought last year are split by its days. */
export function planIn(given: Given, { days, changes }: Month, yearDays: number): Plan {
  const own = new Map<ItemKey, unknown>([...changes, ['housed_days', days]]);
  const bought = given.get('bought_t_last_year');
  if (typeof bought === 'number') own.set('bought_t_last_year', (bought * days) / yearDays);
  return planOf(given, own);
}

const makes = (plan: Plan): number => {
  const t_day = answerOf(() => plan.kit.usual.dryer_t_day);
  return typeof t_day === 'number' ? t_day : 0;
};

/** The plan with the fan turned to where the dryer makes most: less air gets hotter on the same heat. Motors as at full speed. */
function turnedDown(given: Given, month: Month, yearDays: number): Plan {
  const full = planIn(given, month, yearDays);
  const air = answerOf(() => full.inputs.air_m3_h);
  if (typeof air !== 'number') return full;
  let best = full;
  for (let percent = 99; percent >= LEAST_PERCENT; percent--) {
    const changes = new Map<ItemKey, unknown>([...month.changes, ['air_m3_h', (air * percent) / 100]]);
    const plan = planIn(given, { ...month, changes }, yearDays);
    if (makes(plan) > makes(best)) best = plan;
  }
  return best;
}

/** What one month gives, figure by figure: a number or the reason why there is none. */
interface Worked {
  readonly name: string;
  readonly days: number;
  readonly supply_c: Answer | undefined;
  readonly air_m3_h: Answer | undefined;
  readonly limit: Answer;
  readonly cover: Answer;
  readonly needed_t: Answer;
  readonly made_t: Answer;
  readonly topped_up_t: Answer;
  readonly power: Answer;
  readonly heat: Answer;
}

function workOut(given: Given, month: Month, yearDays: number, turnDown: boolean): Worked {
  const { name, days, refused } = month;
  const nothing = { supply_c: undefined, air_m3_h: undefined, cover: 0, needed_t: 0, made_t: 0, topped_up_t: 0, power: 0, heat: 0 };
  if (refused) {
    const why = new Refusal(name === '' ? 'month' : name, refused.message, 'see its row');
    return { name, days, ...nothing, limit: why, cover: why, needed_t: why, made_t: why, topped_up_t: why, power: why, heat: why };
  }
  if (days === 0) return { name, days, ...nothing, limit: '–' };
  const plan = turnDown ? turnedDown(given, month, yearDays) : planIn(given, month, yearDays);
  const withDryer = answerOf(() => plan.needs.has_dryer) !== false;
  const [clash] = clashesOf(plan);
  const of = (work: () => Answer): Answer => clash ?? answerOf(work);
  return {
    name,
    days,
    supply_c: withDryer ? of(() => plan.kit.usual.supply_c) : undefined,
    air_m3_h: withDryer ? of(() => plan.inputs.air_m3_h) : undefined,
    limit: of(() => plan.kit.limit.stage),
    cover: of(() => plan.kit.limit.cover),
    needed_t: of(() => plan.needs.fibre_t_year),
    made_t: of(() => plan.kit.fibre_made_t_year),
    topped_up_t: of(() => plan.money.topped_up_t_year),
    power: of(() => plan.money.power_cost),
    heat: of(() => plan.money.heat_cost),
  };
}

/** The sum of what every month has, or the first reason why one has none. */
function sumOf(answers: readonly Answer[]): Answer {
  const without = answers.find((answer) => typeof answer !== 'number');
  return without ?? (answers as readonly number[]).reduce((sum, value) => sum + value, 0);
}

function scarcest(worked: readonly Worked[]): Worked | undefined {
  const housed = worked.filter(({ days }) => days > 0);
  const without = housed.find(({ cover }) => typeof cover !== 'number');
  return without ?? [...housed].sort((one, other) => (one.cover as number) - (other.cover as number))[0];
}

const noDays = new NoAnswer('no month has days housed');

/** The year's saving with the months counted: as HERD has it, but power, heat and top-up as the months add up. */
function savingOf(year: Plan, power: Answer, heat: Answer, toppedUp: Answer): Answer {
  const missing = [power, heat, toppedUp].find((answer) => typeof answer !== 'number');
  if (missing !== undefined) return missing;
  return answerOf(() => {
    const { money } = year;
    const topUp = money.bought(toppedUp as number);
    return money.bought_with_labour - (power as number) - (heat as number) - money.labour_kit - money.repairs - topUp;
  });
}

/** The year month by month: weather, days housed, heat and water as they are in each. */
export function months(items: Table, values: Table | undefined, table: Table, turn_down: 'yes' | 'no') {
  const given = pairUp(items, values);
  const [refused] = given.refused;
  if (refused) throw refused;
  const read = readMonths(table);
  const days = read.reduce((sum, month) => sum + month.days, 0);
  const worked = read.map((month) => workOut(given, month, days, turn_down === 'yes'));
  const rows = worked.map((one): readonly (Answer | undefined)[] => [
    ...[one.name, one.days, one.supply_c, one.air_m3_h, one.limit, one.cover],
    ...[one.needed_t, one.made_t, one.topped_up_t, one.power, one.heat],
  ]);
  const [needed, made, toppedUp, power, heat] = (['needed_t', 'made_t', 'topped_up_t', 'power', 'heat'] as const).map((key) =>
    sumOf(worked.map((one) => one[key])),
  ) as [Answer, Answer, Answer, Answer, Answer];
  const worst = scarcest(worked);
  const year = planOf(overTheYear(given, days));
  const saving = days === 0 ? noDays : savingOf(year, power, heat, toppedUp);
  const ofSaving = (work: (saving: number) => number): Answer =>
    typeof saving === 'number' ? answerOf(() => work(saving)) : (saving as Answer);
  const { inputs, money } = year;
  const npv = ofSaving((each) => {
    const { life_years, discount_rate, saving_growth, end_value } = inputs;
    return netPresentValue(money.capital, each, life_years, discount_rate, saving_growth, end_value).npv;
  });
  const back = ofSaving((each) => payback(money.capital, each, inputs.saving_growth, inputs.life_years).years);
  const blanks = Array.from({ length: 9 }, () => undefined);
  return {
    rows: [
      ...rows,
      ['year', days, undefined, undefined, worst?.limit ?? noDays, worst?.cover ?? noDays, needed, made, toppedUp, power, heat],
      ['year: saving', saving, ...blanks],
      ['year: NPV', npv, ...blanks],
      ['year: payback', back, ...blanks],
    ],
  };
}
