import { define } from '../core/define.ts';
import { maybe, number } from '../core/parameters.ts';
import {
  breakEvenPrice,
  discountedPayback,
  internalRate,
  loanCover,
  netPresentValue,
  payback,
  realRate,
  repayment,
} from '../domain/investment.ts';
import { investTables, loanParameters, loanWorking } from './invest-tables.ts';
import { capital, growth, lifeYears, rate, residual, savingYear, yearlyRise } from './shared.ts';

const lifeOrNone = maybe(lifeYears, 'no end but 100 years');

const annuity = {
  says: 'What a saving of 1, so growing, is worth today',
  unit: 'times',
  how: 'annuityFactor(life_years, rate, growth)',
  source: 'engineering-economy',
} as const;

const endValueToday = { says: 'End value as worth today', unit: 'money', how: 'residual / (1 + rate) ** life_years' } as const;

export const invest = [
  define({
    name: 'INVEST.PAYBACK',
    summary: 'Years until the savings have returned the outlay, interest left aside.',
    finds: 'how long, pay for itself, return, worth it',
    parameters: [capital, savingYear, growth, lifeOrNone],
    compute: payback,
    result: 'years',
    working: {
      full_years: {
        says: 'Whole years that do not yet return it',
        unit: 'years',
        told: 'counted, saving by saving, until the next one would do',
        closed: 'ceil(annuityYears(capital / saving_year, 0, growth) - 1e-9) - 1',
        only: 'saving_year > 0',
      },
      still_owed: { says: 'Not returned by then', unit: 'money', how: 'capital - saving_year * annuityFactor(full_years, 0, growth)' },
      next_saving: { says: 'Saving of the next year', unit: 'money', how: 'saving_year * (1 + growth) ** full_years' },
      years: {
        says: 'Payback',
        unit: 'years',
        how: 'full_years + min(1, still_owed / next_saving)',
        only: 'life_years == undefined ? full_years < 100 : full_years < life_years',
      },
    },
    sources: ['engineering-economy'],
    examples: [
      { call: [185_000, 30_000], gives: 6.1667, within: 5e-5, source: 'by hand: 185,000 ÷ 30,000' },
      { call: [210, 100, 0.1], gives: 2, within: 1e-9, source: 'by hand: 100 and 110' },
    ],
  }),

  define({
    name: 'INVEST.DISCOUNTEDPAYBACK',
    summary: 'Years until the savings have returned the outlay with interest.',
    finds: 'how long, pay for itself, time value, interest',
    parameters: [capital, savingYear, rate, growth, lifeOrNone],
    compute: discountedPayback,
    result: 'years',
    working: {
      full_years: {
        says: 'Whole years that do not yet return it',
        unit: 'years',
        told: 'counted, discounted saving by saving, until the next one would do',
        closed: 'ceil(annuityYears(capital / saving_year, rate, growth) - 1e-9) - 1',
        only: 'saving_year > 0',
      },
      still_owed: {
        says: 'Not returned by then, as worth today',
        unit: 'money',
        how: 'capital - saving_year * annuityFactor(full_years, rate, growth)',
      },
      next_saving: {
        says: 'Saving of the next year, as worth today',
        unit: 'money',
        how: 'saving_year * (1 + growth) ** full_years / (1 + rate) ** (full_years + 1)',
      },
      years: {
        says: 'Discounted payback',
        unit: 'years',
        how: 'full_years + min(1, still_owed / next_saving)',
        only: 'life_years == undefined ? full_years < 100 : full_years < life_years',
      },
    },
    sources: ['engineering-economy'],
    examples: [
      {
        call: [1100, 605, 0.1],
        gives: 2.11,
        within: 1e-9,
        source: 'by hand: 550, 500 and 454.545 as worth today, so 2 years and 50 ÷ 454.545',
      },
    ],
  }),

  define({
    name: 'INVEST.NPV',
    summary: 'Net present value: what the savings and the end value are worth today, less the outlay.',
    finds: 'worth it, discounted cash flow, DCF, profit over its life',
    parameters: [capital, savingYear, lifeYears, rate, growth, residual],
    compute: netPresentValue,
    result: 'npv',
    working: {
      annuity_factor: annuity,
      savings_today: { says: 'Savings as worth today', unit: 'money', how: 'saving_year * annuity_factor' },
      residual_today: endValueToday,
      npv: { says: 'Net present value', unit: 'money', how: 'savings_today + residual_today - capital' },
    },
    sources: ['engineering-economy', 'recovery-factors', 'loan-course'],
    examples: [
      {
        call: [30_000, 11_223.29, 3, 0.06],
        gives: 0,
        within: 0.02,
        source: 'course page: 11,223.29 a year repays 30,000 at 6 % in 3 years, so at 6 % both are worth the same; payment rounded',
      },
      {
        call: [0, 1, 10, 0.08],
        gives: 6.71,
        within: 3e-4,
        source: 'published table of capital recovery factors: 1 ÷ 0.14903, itself rounded',
      },
    ],
  }),

  define({
    name: 'INVEST.IRR',
    summary: 'Internal rate of return: the discount rate at which net present value is 0. Negative where the outlay does not come back.',
    finds: 'return on investment, yield, percentage, interest earned',
    parameters: [capital, savingYear, lifeYears, growth, residual],
    compute: internalRate,
    result: 'irr',
    working: {
      irr: {
        says: 'Internal rate of return',
        unit: 'fraction',
        solves: 'saving_year * annuityFactor(life_years, irr, growth) + residual / (1 + irr) ** life_years == capital',
        between: ['-0.999999', '1000000'],
      },
    },
    sources: ['engineering-economy', 'numpy-financial'],
    examples: [
      {
        call: [30_000, 11_223.29, 3],
        gives: 0.06,
        within: 1e-6,
        source: 'course page: 11,223.29 a year repays 30,000 at 6 % in 3 years; payment rounded',
      },
      { call: [100, 0, 3, 0, 74], gives: -0.0955, within: 5e-5, source: 'numpy-financial documentation, irr of −100, 0, 0, 74' },
    ],
  }),

  define({
    name: 'INVEST.BREAKEVENPRICE',
    summary: 'Price of bought-in bedding at which the kit earns just the discount rate; above it the kit pays.',
    finds: 'break even, what must sawdust cost, price per tonne, NPV 0',
    parameters: [
      capital,
      number('bought_t_year', 't/year', 'bought-in bedding that the kit replaces, its own tonnes and not the fibre’s', { above: 0 }),
      number('running_year', 'per year', 'cost of running the kit, less any other cost of the bought bedding that it saves'),
      lifeYears,
      rate,
      growth,
      residual,
    ],
    compute: breakEvenPrice,
    result: 'price_per_t',
    working: {
      annuity_factor: annuity,
      residual_today: endValueToday,
      saving_needed: {
        says: 'Saving in the first year that just pays for the kit',
        unit: 'per year',
        how: '(capital - residual_today) / annuity_factor',
      },
      price_per_t: {
        says: 'Break-even price',
        unit: 'per t',
        how: '(running_year + saving_needed) / bought_t_year',
        only: 'running_year + saving_needed >= 0',
      },
    },
    sources: ['engineering-economy'],
    examples: [
      {
        call: [30_000, 100, 5000, 3, 0.06],
        gives: 162.2329,
        within: 1e-4,
        source: 'by hand from the course page: 11,223.29 a year for 30,000 at 6 % over 3 years, and 5,000 to run, over 100 t',
      },
    ],
  }),

  define({
    name: 'INVEST.REPAYMENT',
    summary: 'Level payment that repays a loan with interest, at the end of each period.',
    finds: 'loan, finance, bank, monthly payment, hire purchase, PMT',
    parameters: loanParameters,
    compute: repayment,
    result: 'payment',
    working: loanWorking,
    sources: ['engineering-economy', 'numpy-financial', 'loan-course'],
    examples: [
      {
        call: [200_000, 15, 0.075],
        gives: 1854.02472,
        within: 5e-6,
        source: 'numpy-financial documentation, pmt: 200,000 in 180 months at 7.5 % a year',
      },
      { call: [6000, 4, 0.1, 1], gives: 1892.82, within: 0.005, source: 'course page: 6,000 at 10 % over 4 years' },
    ],
  }),

  define({
    name: 'INVEST.COVER',
    summary: 'How many times the cash of a year covers its loan payments; lenders look for 1.25 and more.',
    finds: 'debt service, DSCR, bank, afford, ability to pay',
    parameters: [
      number('cash_year', 'per year', 'cash there to pay with, before the loan'),
      number('debt_service_year', 'per year', 'principal and interest', { min: 0 }),
    ],
    compute: loanCover,
    result: 'cover',
    working: { cover: { says: 'Cover', unit: 'times', how: 'cash_year / debt_service_year', only: 'debt_service_year > 0' } },
    sources: ['langemeier-2023'],
    examples: [
      {
        call: [259_006, 131_752],
        gives: 1.966,
        within: 5e-4,
        source: 'Langemeier 2023: capacity 259,006 over principal and interest 131,752',
      },
    ],
  }),
  define({
    name: 'INVEST.REALRATE',
    summary: 'The rate of interest that is left once prices have risen: what a budget in today’s money discounts by.',
    finds: 'inflation, real interest, nominal, today’s money, Fisher, deflate, bank rate',
    parameters: [
      number('nominal_rate', 'fraction', 'rate of interest a year, as a bank quotes it'),
      yearlyRise('inflation', 'rise of prices a year'),
    ],
    compute: realRate,
    result: 'real_rate',
    working: {
      real_rate: { says: 'Real rate', unit: 'fraction', how: '(1 + nominal_rate) / (1 + inflation) - 1', source: 'fisher-equation' },
    },
    notes: [
      'With growth 0 a budget in today’s money wants this rate.',
      'Not for a loan’s rate or for tax allowances: those run in the money of their year.',
    ],
    sources: ['fisher-equation'],
    examples: [
      { call: [0.1, 0.04], gives: 0.0577, within: 5e-5, source: 'Fisher equation, a formula page: 10 % at 4 % inflation' },
      { call: [0.05, 0.05], gives: 0, within: 1e-12, source: 'by hand: prices rise as fast as money earns' },
    ],
  }),

  ...investTables,
];
