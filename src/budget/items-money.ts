import { yearsSlip } from '../core/slips.ts';
import { allowanceMethods } from '../domain/cash-flow.ts';
import { countries } from '../domain/reference.ts';
import { inGroup, range } from './item.ts';

const kit = inGroup('Kit and money');
const dryer = inGroup('Kit and money', 'with a dryer');
const loan = inGroup('Kit and money', 'with a loan');
const udder = inGroup('Udder health');
const rules = inGroup('Permission');

const terms = { needed: true, empty: 'not needed without a loan' } as const;

const atMostKitCost = { is: 'at most', item: 'kit_cost', called: 'the kit cost', short: 'kit cost' } as const;

/** The money, the udders and the permission. */
export const moneyItems = {
  kit_cost: kit.number('Kit cost', 'money', { above: 0, max: 1e9 }, 'press, dryer, heater, tank, electrics and fitting, all of it'),
  grant: kit.number('Grant', 'money', range(0, 1e9), 'grant towards it', {
    default: 'grant',
    against: { ...atMostKitCost, enter: 'a grant from 0 to the kit cost' },
  }),
  life_years: kit.number('Life years', 'years', { ...range(1, 40), whole: true }, 'years it will serve', {
    default: 'life_years',
    usual: [5, 15],
  }),
  discount_rate: kit.number('Discount rate', 'fraction', range(0, 0.5), 'what the money could earn or costs elsewhere', {
    default: 'discount_rate',
  }),
  saving_growth: kit.number('Saving growth', 'fraction', { ...range(-0.2, 0.2), slip: yearsSlip }, 'yearly rise of the saving', {
    default: 'saving_growth',
  }),
  end_value: kit.number('End value', 'money', range(0, 1e9), 'what it will fetch at the end of its life', { default: 'end_value' }),
  power_price: kit.number('Power price per kWh', 'per kWh', range(0, 5), 'the last power bill, for a unit'),
  heat_price: dryer.number(
    'Heat price per kWh',
    'per kWh',
    range(0, 5),
    'what a unit of heat costs or could earn elsewhere; type 0 if it is free',
  ),
  labour_h_week_kit: kit.number('Labour hours a week with kit', 'h/week', range(0, 168), 'hours a week for press, dryer and bedding'),
  labour_rate: kit.number('Labour rate', 'per h', range(0, 500), 'what an hour’s work costs'),
  repairs_share: kit.number('Repairs share', 'fraction', range(0, 0.3), 'repairs a year as a share of the kit cost', {
    default: 'repairs_share',
    usual: [0.02, 0.05],
  }),
  borrowed: kit.number('Borrowed', 'money', range(0, 1e9), 'amount borrowed', {
    default: 'borrowed',
    against: { ...atMostKitCost, enter: 'an amount from 0 to the kit cost' },
  }),
  loan_years: loan.number('Loan years', 'years', { ...range(1, 40), whole: true }, 'years of the loan', terms),
  loan_rate: loan.number('Loan rate', 'fraction', range(0, 0.5), 'yearly rate of the loan', terms),
  tax_rate: kit.number('Tax rate', 'fraction', range(0, 1), 'rate on profits: ask your accountant', { default: 'tax_rate' }),
  first_year_allowance: kit.number(
    'First-year allowance',
    'fraction',
    range(0, 1),
    'share of the cost allowed against tax in year 1: ask your accountant',
    { default: 'first_year_allowance' },
  ),
  yearly_allowance: kit.number(
    'Yearly allowance',
    'fraction',
    range(0, 1),
    'share of what remains allowed each year: ask your accountant',
    { default: 'yearly_allowance' },
  ),
  allowance_method: kit.choice('Allowance method', allowanceMethods, 'a share of what remains, or of the cost: ask your accountant', {
    default: 'allowance_method',
  }),
  balance_at_end: kit.yesNo(
    'Rest allowed in the last year',
    'whether what is left of the cost is allowed at the end: ask your accountant',
    {
      default: 'balance_at_end',
    },
  ),
  interest_relief: kit.yesNo('Interest relief', 'whether loan interest is set against tax: ask your accountant', {
    default: 'interest_relief',
  }),

  cost_per_case: udder.number(
    'Cost per mastitis case',
    'per case',
    { above: 0, max: 1e5 },
    'milk thrown away, medicine, work and lost yield: ask your vet',
    { needed: true, usual: [149, 444] },
  ),
  cases_per_100_now: udder.number(
    'Cases per 100 now',
    'per 100 cows/year',
    range(0, 300),
    'clinical cases for each 100 cows in a year, from the records',
    { empty: 'the mastitis margin is then not checked', usual: [21, 71] },
  ),
  shed_c: udder.number('Shed temperature', '°C', range(-20, 45), 'air in the shed where the cows lie', {
    empty: 'the score’s span then covers every temperature',
  }),
  dirty_udders: udder.number('Dirty udders', 'fraction', range(0, 1), 'share of cows scoring 3 or 4 for dirt on the udder: UDDER.DIRTY', {
    empty: 'the score’s span then covers clean and dirty',
  }),

  country: rules.choice('Country', countries, 'whose rules apply', { empty: 'every country’s conditions are then listed' }),
  permission: rules.yesNo('Permission confirmed', 'whether authority and milk buyer have agreed to the use in writing', {
    default: 'permission',
  }),
};
