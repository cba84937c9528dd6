import { countries } from '../domain/reference.ts';
import { type BudgetItem, inGroup, range } from './budget-item.ts';
import { yearsSlip } from './shared.ts';

const kit = inGroup('Kit and money');
const udder = inGroup('Udder health');
const rules = inGroup('Permission');

const dryer = { needed: 'with a dryer' } as const;
const loan = { needed: 'with a loan', empty: 'not needed without a loan' } as const;

/** The money, the udders and the permission. */
export const moneyItems: readonly BudgetItem[] = [
  kit.number('Kit cost', 'kit_cost', 'money', { above: 0, max: 1e9 }, 'press, dryer, heater, tank, electrics and fitting, all of it'),
  kit.number('Grant', 'grant', 'money', range(0, 1e9), 'grant towards it', { default: 'grant' }),
  kit.number('Life years', 'life_years', 'years', { ...range(1, 40), whole: true }, 'years it will serve', {
    default: 'life_years',
    usual: [5, 15],
  }),
  kit.number('Discount rate', 'discount_rate', 'fraction', range(0, 0.5), 'what the money could earn or costs elsewhere', {
    default: 'discount_rate',
  }),
  kit.number('Saving growth', 'saving_growth', 'fraction', { ...range(-0.2, 0.2), slip: yearsSlip }, 'yearly rise of the saving', {
    default: 'saving_growth',
  }),
  kit.number('End value', 'end_value', 'money', range(0, 1e9), 'what it will fetch at the end of its life', { default: 'end_value' }),
  kit.number('Power price per kWh', 'power_price', 'per kWh', range(0, 5), 'the last power bill, for a unit'),
  kit.number(
    'Heat price per kWh',
    'heat_price',
    'per kWh',
    range(0, 5),
    'what a unit of heat costs or could earn elsewhere; type 0 if it is free',
    dryer,
  ),
  kit.number('Labour hours a week with kit', 'labour_h_week_kit', 'h/week', range(0, 168), 'hours a week for press, dryer and bedding'),
  kit.number('Labour rate', 'labour_rate', 'per h', range(0, 500), 'what an hour’s work costs'),
  kit.number('Repairs share', 'repairs_share', 'fraction', range(0, 0.3), 'repairs a year as a share of the kit cost', {
    default: 'repairs_share',
    usual: [0.02, 0.05],
  }),
  kit.number('Borrowed', 'borrowed', 'money', range(0, 1e9), 'amount borrowed', { default: 'borrowed' }),
  kit.number('Loan years', 'loan_years', 'years', { ...range(1, 40), whole: true }, 'years of the loan', loan),
  kit.number('Loan rate', 'loan_rate', 'fraction', range(0, 0.5), 'yearly rate of the loan', loan),
  kit.number('Tax rate', 'tax_rate', 'fraction', range(0, 1), 'rate on profits: ask your accountant', { default: 'tax_rate' }),
  kit.number(
    'First-year allowance',
    'first_year_allowance',
    'fraction',
    range(0, 1),
    'share of the cost allowed against tax in year 1: ask your accountant',
    { default: 'first_year_allowance' },
  ),
  kit.number(
    'Yearly allowance',
    'yearly_allowance',
    'fraction',
    range(0, 1),
    'share of what remains allowed each year: ask your accountant',
    { default: 'yearly_allowance' },
  ),

  udder.number(
    'Cost per mastitis case',
    'cost_per_case',
    'per case',
    { above: 0, max: 1e5 },
    'milk thrown away, medicine, work and lost yield: ask your vet',
    { needed: 'always', usual: [149, 444] },
  ),
  udder.number(
    'Cases per 100 now',
    'cases_per_100_now',
    'per 100 cows/year',
    range(0, 300),
    'clinical cases for each 100 cows in a year, from the records',
    { empty: 'the mastitis margin is then not checked', usual: [21, 71] },
  ),
  udder.number('Shed temperature', 'shed_c', '°C', range(-20, 45), 'air in the shed where the cows lie', {
    empty: 'the score’s span then covers every temperature',
  }),
  udder.number('Dirty udders', 'dirty_udders', 'fraction', range(0, 1), 'share of cows scoring 3 or 4 for dirt on the udder: UDDER.DIRTY', {
    empty: 'the score’s span then covers clean and dirty',
  }),

  rules.choice('Country', 'country', countries, 'whose rules apply', { empty: 'every country’s conditions are then listed' }),
  rules.yesNo('Permission confirmed', 'permission', 'whether authority and milk buyer have agreed to the use in writing', {
    default: 'permission',
  }),
];
