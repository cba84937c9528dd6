import { defaultOf } from '../core/bibliography.ts';
import { defineSpill, type Line } from '../core/define.ts';
import { choice, maybe, number, optional, table, yesNo } from '../core/parameters.ts';
import { readTable } from '../core/read-table.ts';
import { CellError } from '../core/result.ts';
import { allowanceMethods, cashFlow } from '../domain/cash-flow.ts';
import { loanSchedule } from '../domain/loan.ts';
import { type DriverName, type Drivers, driverNames, probability, type Spread, sensitivity } from '../domain/uncertainty.ts';
import { capital, growth, lifeYears, rate, residual, savingYear } from './shared.ts';

/** A loan with level payments, and how its payment is worked out: the same in one cell and year by year. */
export const loanParameters = [
  number('borrowed', 'money', 'money borrowed', { min: 0 }),
  number('years', 'years', 'years over which it is repaid', { min: 1, whole: true }),
  rate,
  optional(number('payments_per_year', 'payments', 'payments a year', { whole: true }), defaultOf('payments_per_year')),
] as const;
export const loanWorking = {
  payments: { says: 'Payments in all', unit: '', how: 'years * payments_per_year' },
  rate_per_payment: { says: 'Interest between two payments', unit: 'fraction', how: 'rate / payments_per_year' },
  payment: { says: 'Each payment', unit: 'per payment', how: 'borrowed * capitalRecovery(payments, rate_per_payment)' },
} as const satisfies Record<string, Line>;

const loanYears = number('loan_years', 'years', 'years over which it is repaid', { min: 1, whole: true });
const share = (name: 'tax_rate' | 'first_year_allowance' | 'writing_down', says: string) => number(name, 'fraction', says);

const units = {
  'kit cost': 'money',
  'bought price per t': 'per t',
  'bought t per year': 't/year',
  'running cost per year': 'per year',
  'discount rate': 'fraction',
} as const satisfies Record<DriverName, string>;

const driverName = choice('driver', 'what is uncertain', driverNames);
const drivers = table('drivers', `one row each for ${driverNames.join(', ')}: name, low, likely, high`);

/** The columns of a row of drivers: its values are in the unit of the driver that it names. */
function driverColumns([cell]: readonly unknown[]) {
  const name = driverName.read(cell);
  const unit = typeof name === 'string' ? units[name] : '';
  const bounds = name === 'kit cost' ? { min: 0 } : {};
  const value = (column: string) => number(column, unit, `${column} value`, bounds);
  return [driverName, value('low'), value('likely'), value('high')] as const;
}

function readDrivers(rows: readonly (readonly unknown[])[]): Drivers {
  const spreads: Partial<Record<DriverName, Spread>> = {};
  for (const { row, values } of readTable('drivers', rows, driverColumns)) {
    const [name, low, likely, high] = values;
    if (spreads[name]) throw new CellError('#VALUE!', `drivers row ${row}, driver: ${name} is given twice; enter each driver once`);
    spreads[name] = { low, likely, high };
  }
  const lacking = driverNames.filter((name) => !spreads[name]);
  if (lacking.length > 0)
    throw new CellError('#VALUE!', `drivers (table): ${lacking.join(', ')} missing; enter all of ${driverNames.join(', ')}`);
  return spreads as Drivers;
}

/** Those whose answer is a table. */
export const investTables = [
  defineSpill({
    name: 'INVEST.LOAN',
    summary: 'A loan with level payments, year by year: what is owed, the interest and what is repaid.',
    finds: 'finance, bank, amortisation, balance, interest, hire purchase',
    parameters: loanParameters,
    compute: loanSchedule,
    columns: ['year', 'opening', 'interest', 'repaid', 'closing'],
    working: loanWorking,
    sources: ['engineering-economy', 'loan-course'],
    examples: [
      {
        call: [30_000, 3, 0.06, 1],
        at: ['2', 'interest'],
        gives: 1234.6,
        within: 0.005,
        source: 'course page: 30,000 at 6 % over 3 years, interest of the second year',
      },
      { call: [30_000, 3, 0.06, 1], at: ['2', 'closing'], gives: 10_588.01, within: 0.005, source: 'same, balance after it' },
    ],
  }),

  defineSpill({
    name: 'INVEST.CASHFLOW',
    summary:
      'Cash flow year by year after tax, with the loan coming in and going out, and how much of your own money is still in it. Check rates and allowances with an accountant.',
    finds:
      'tax, capital allowances, depreciation, cumulative, after finance, annual investment allowance, writing down, interest relief, own money, overdraft, cover by year',
    parameters: [
      capital,
      savingYear,
      lifeYears,
      rate,
      growth,
      residual,
      optional(share('tax_rate', 'tax on profit'), defaultOf('tax_rate')),
      optional(
        share('first_year_allowance', 'share of the outlay set against tax in year 1; pool only'),
        defaultOf('first_year_allowance'),
      ),
      optional(
        share('writing_down', 'share set against tax every year: of what is left (pool) or of the outlay (straight)'),
        defaultOf('yearly_allowance'),
      ),
      optional(choice('method', 'how the allowances run', allowanceMethods), defaultOf('allowance_method')),
      optional(yesNo('balance_at_end', 'whether the last year is allowed all that is left'), defaultOf('balance_at_end')),
      optional(number('borrowed', 'money', 'money borrowed, repaid monthly', { min: 0 }), defaultOf('borrowed')),
      maybe(loanYears, 'only needed where money is borrowed'),
      maybe(number('loan_rate', 'fraction', 'interest on the loan a year'), 'only needed where money is borrowed'),
      optional(yesNo('interest_relief', 'whether loan interest is set against tax; a loan only'), defaultOf('interest_relief')),
    ],
    compute: cashFlow,
    columns: [
      'year',
      'saving',
      'allowance',
      'tax',
      'net',
      'cumulative',
      'discounted',
      'discounted cumulative',
      'loan payment',
      'left after loan',
      'interest',
      'relief',
      'own money',
      'cover',
    ],
    working: {
      loan_payment_year: {
        says: 'Loan payments of a year, monthly',
        unit: 'per year',
        how: 'borrowed > 0 ? 12 * borrowed * capitalRecovery(12 * loan_years, loan_rate / 12) : 0',
      },
      owed_at_end: {
        says: 'Still owed when the kit is worn out: it comes off what is left in the last year',
        unit: 'money',
        how: 'borrowed > 0 && loan_years > life_years ? loan_payment_year / 12 * annuityFactor(12 * (loan_years - life_years), loan_rate / 12, 0) : 0',
      },
      net_today: { says: 'The net column as worth today', unit: 'money', told: 'the sum of the discounted column' },
      relief_today: {
        says: 'Relief for loan interest as worth today; the loan itself is not in the worth of the kit',
        unit: 'money',
        told: 'the sum of relief / (1 + rate) ^ year',
      },
      npv_after_tax: { says: 'Net present value after tax', unit: 'money', how: 'net_today + relief_today' },
    },
    byYear: {
      saving: {
        says: 'Saving of the year',
        unit: 'money',
        how: 'year >= 1 && year <= life_years ? saving_year * (1 + growth) ** (year - 1) : 0',
      },
      pool: {
        says: 'Outlay not yet allowed against tax; the end value comes off it in the last year',
        unit: 'money',
        how: 'year == 0 ? capital : before(pool) - before(allowance) - (year == life_years ? residual : 0)',
      },
      allowance: {
        says: 'Allowance of the year',
        unit: 'money',
        how: "year < 1 || year > life_years ? 0 : (balance_at_end == 'yes' && year == life_years ? pool : (method == 'pool' ? pool * (year == 1 && first_year_allowance > 0 ? first_year_allowance : writing_down) : min(capital * writing_down, pool)))",
      },
      tax: { says: 'Tax', unit: 'money', how: 'tax_rate * (saving - allowance)' },
      net: {
        says: 'What is left after tax, with the end value in the last year',
        unit: 'money',
        how: 'year == 0 ? -capital : saving - tax + (year == life_years ? residual : 0)',
      },
      cumulative: { says: 'The same so far', unit: 'money', how: 'year == 0 ? net : before(cumulative) + net' },
      discounted: { says: 'Net as worth today', unit: 'money', how: 'net / (1 + rate) ** year' },
      'discounted cumulative': {
        says: 'The same so far',
        unit: 'money',
        how: 'year == 0 ? discounted : before([discounted cumulative]) + discounted',
      },
      'loan payment': {
        says: 'Loan payments of the year, monthly',
        unit: 'money',
        how: 'borrowed > 0 && year >= 1 && year <= loan_years && year <= life_years ? loan_payment_year : 0',
      },
      interest: {
        says: 'Loan interest of the year: what is paid less what is paid off',
        unit: 'money',
        how: '[loan payment] > 0 ? [loan payment] * (1 - (annuityFactor(12 * (loan_years - year + 1), loan_rate / 12, 0) - annuityFactor(12 * (loan_years - year), loan_rate / 12, 0)) / 12) : 0',
      },
      relief: { says: 'Tax that the interest saves', unit: 'money', how: "interest_relief == 'yes' ? tax_rate * interest : 0" },
      'left after loan': {
        says: 'What is left once the loan is served',
        unit: 'money',
        how: 'net + (year == 0 ? borrowed : relief - [loan payment]) - (year == life_years ? owed_at_end : 0)',
      },
      'own money': {
        says: 'The same so far: negative is still put in',
        unit: 'money',
        how: 'year == 0 ? [left after loan] : before([own money]) + [left after loan]',
      },
      cover: { says: 'Loan cover of the year', unit: 'times', how: '[loan payment] > 0 ? (net + relief) / [loan payment] : none' },
    },
    notes: [
      'Own money still negative is still put in; its last line is what the kit leaves over.',
      'Relief, and a tax below 0, need profit elsewhere in the business to be set against.',
      'Allowances, rates and what they are called differ by country and change: a plain form to plan by. Ask your accountant.',
    ],
    sources: ['engineering-economy', 'uk-allowances', 'ireland-allowances'],
    examples: [
      {
        call: [185_000, 30_000, 10, 0.08, 0, 0, 0.25, 0, 0.14],
        at: ['3', 'allowance'],
        gives: 19_155.64,
        within: 0.005,
        source: 'by hand: 14 % of 185,000 less 25,900 less 22,274',
      },
      {
        call: [10_000, 3000, 10, 0.08, 0, 0, 0.125, 0, 0.125, 'straight'],
        at: ['8', 'tax'],
        gives: 218.75,
        within: 1e-9,
        source: 'by hand: 12.5 % a year for 8 years, 1,250 off 3,000 in the eighth, tax 12.5 %',
      },
      {
        call: [20_000, 6000, 5, 0.08, 0, 0, 0.25, 0, 0, 'pool', 'no', 12_000, 1, 0, 'yes'],
        at: ['1', 'own money'],
        gives: -15_500,
        within: 1e-9,
        source: 'by hand: 8,000 put in; 6,000 less 1,500 of tax less 12,000 repaid without interest',
      },
      {
        call: [20_000, 6000, 5, 0.08, 0, 0, 0.25, 0, 0, 'pool', 'no', 12_000, 2, 0],
        at: ['2', 'cover'],
        gives: 0.75,
        within: 1e-9,
        source: 'by hand: 4,500 after tax over 6,000 repaid',
      },
    ],
  }),

  defineSpill({
    name: 'INVEST.SENSITIVITY',
    summary: 'How far each uncertain figure alone moves the net present value, largest swing first.',
    finds: 'what matters most, risk, tornado, what if, low and high',
    parameters: [drivers, lifeYears, growth],
    compute: (drivers, life_years, growth) => sensitivity(readDrivers(drivers), life_years, growth),
    columns: ['driver', 'NPV at low', 'NPV at high', 'swing'],
    working: {
      npv_likely: {
        says: 'Net present value with everything at its likeliest',
        unit: 'money',
        told: '−kit cost + (bought price per t × bought t per year − running cost per year) × annuityFactor(life_years, discount rate, growth); no end value',
      },
    },
    sources: ['engineering-economy'],
    examples: [
      {
        call: [
          [
            ['kit cost', 900, 1000, 1200],
            ['bought price per t', 4, 5, 7],
            ['bought t per year', 40, 50, 60],
            ['running cost per year', 100, 150, 180],
            ['discount rate', 0, 0, 0],
          ],
          10,
        ],
        at: ['bought price per t', 'swing'],
        gives: 1500,
        within: 1e-9,
        source: 'by hand: 3 more for each of 50 t in 10 years, without interest',
      },
    ],
  }),

  defineSpill({
    name: 'INVEST.PROBABILITY',
    summary:
      'How likely the kit is to pay, from many plans drawn at random between low and high. The discount rate stays at its likeliest.',
    finds: 'risk, chance, odds, Monte Carlo, how sure, percentile',
    parameters: [
      drivers,
      lifeYears,
      growth,
      optional(number('draws', '', 'how many plans are drawn', { min: 100, max: 100_000, whole: true }), defaultOf('draws')),
      optional(
        number('seed', '', 'any whole number: the same one gives the same answer', { min: 0, max: 999_999_999, whole: true }),
        defaultOf('seed'),
      ),
    ],
    compute: (drivers, life_years, growth, draws, seed) => probability(readDrivers(drivers), life_years, growth, draws, seed),
    columns: ['key', 'value', 'unit'],
    working: {
      annuity_factor: {
        says: 'What a saving of 1, so growing, is worth today',
        unit: 'times',
        told: 'annuityFactor(life_years, likeliest discount rate, growth)',
      },
      chance: { says: 'Share of the plans drawn whose net present value is above 0', unit: 'fraction', told: 'counted' },
      mean: { says: 'Mean of the plans drawn', unit: 'money', told: 'triangular draws, Latin hypercube', source: 'mckay-1979' },
      p10: { says: 'One plan in ten is worse', unit: 'money', told: 'linear interpolation between ranks', source: 'hyndman-fan-1996' },
      median: {
        says: 'Half of the plans are worse',
        unit: 'money',
        told: 'linear interpolation between ranks',
        source: 'hyndman-fan-1996',
      },
      p90: { says: 'One plan in ten is better', unit: 'money', told: 'linear interpolation between ranks', source: 'hyndman-fan-1996' },
    },
    sources: ['triangular', 'mckay-1979', 'hyndman-fan-1996', 'engineering-economy'],
    examples: [
      {
        call: [
          [
            ['kit cost', 10, 20, 50],
            ['bought price per t', 1, 1, 1],
            ['bought t per year', 100, 100, 100],
            ['running cost per year', 0, 0, 0],
            ['discount rate', 0, 0, 0],
          ],
          1,
        ],
        at: ['mean', 'value'],
        gives: 73.3333,
        within: 0.01,
        source: 'by hand: 100 less the mean of a triangular 10, 20, 50, (10 + 20 + 50) ÷ 3; sampling error far below 0.01',
      },
    ],
  }),
];
