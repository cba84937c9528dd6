import { figure } from './figure.ts';

const annuityHow = 'INVEST.NPV(0, 1, [Life years], [Discount rate], [Saving growth])';
const cashFlowHow =
  "INVEST.CASHFLOW([Kit cost] - [Grant], [Saving], [Life years], [Discount rate], [Saving growth], [End value], [Tax rate], [First-year allowance], [Yearly allowance], [Allowance method], [Rest allowed in the last year], [Interest relief] == 'yes' ? [Borrowed] : 0, [Loan years], [Loan rate], [Interest relief])";
/** The last year's cumulative worth, and what each year's relief is worth today. */
const afterTaxHow = `last(${cashFlowHow}, 'discounted cumulative') + worth(${cashFlowHow}, 'relief', [Discount rate])`;

/** What it costs, saves and returns. */
export const moneyFigures = [
  figure('Topped up with bought', 't/year', {
    value: (plan) => plan.money.topped_up_t_year,
    how: '(1 - [Fibre made] / [Fibre needed]) * [Bought needed]',
    meaning: 'Bought bedding that still makes up the shortfall, laid as the herd is bedded now.',
  }),
  figure('Bought-in cost', 'per year', {
    value: (plan) => plan.money.bought_cost,
    how: 'COST.BOUGHT([Bought needed], [Bought price per t], [Load t], [Haulage per load])',
    meaning: 'What bought bedding costs now, haulage with it.',
  }),
  figure('Bought-in cost with labour', 'per year', {
    value: (plan) => plan.money.bought_with_labour,
    how: '[Bought-in cost] + [Labour hours a week now] * [Labour rate] * [Housed days] / 7',
    meaning: 'The same with the work of it.',
  }),
  figure('Power', 'per year', {
    value: (plan) => plan.money.power_cost,
    how: '[Dried to dry matter] > [Pressed dry matter] ? (PLANT.ELECTRICITY([Press motor kW], [Press hours needed] * [Minutes on] / ([Minutes on] + [Minutes off])) + PLANT.ELECTRICITY([Fan and drum motors kW], ifNone([Dryer hours needed], 0))) * [Housed days] * [Fibre made] / [Fibre needed] * [Power price per kWh] : PLANT.ELECTRICITY([Press motor kW], [Press hours needed] * [Minutes on] / ([Minutes on] + [Minutes off])) * [Housed days] * [Fibre made] / [Fibre needed] * [Power price per kWh]',
    meaning: 'Electricity for the motors of press, fan and drum, at the usual load and efficiency of PLANT.ELECTRICITY.',
  }),
  figure('Heat', 'per year', {
    value: (plan) => plan.money.heat_cost,
    how: '[Dried to dry matter] > [Pressed dry matter] ? [Heat needed] * ifNone([Dryer hours needed], 0) * [Housed days] * [Fibre made] / [Fibre needed] * [Heat price per kWh] : 0',
    meaning: 'Heat for the air, at the price given.',
  }),
  figure('Labour with kit', 'per year', {
    value: (plan) => plan.money.labour_kit,
    how: '[Labour hours a week with kit] * [Labour rate] * [Housed days] / 7',
    meaning: 'The work with the kit.',
  }),
  figure('Repairs', 'per year', {
    value: (plan) => plan.money.repairs,
    how: '[Kit cost] * [Repairs share]',
    meaning: 'Repairs and wear, as a share of the whole kit cost.',
  }),
  figure('Running cost', 'per year', {
    value: (plan) => plan.money.running_cost,
    how: '[Power] + [Heat] + [Labour with kit] + [Repairs]',
    meaning: 'Power, heat, labour and repairs together.',
  }),
  figure('Top-up cost', 'per year', {
    value: (plan) => plan.money.top_up_cost,
    how: 'COST.BOUGHT([Topped up with bought], [Bought price per t], [Load t], [Haulage per load])',
    meaning: 'What the bought top-up costs.',
  }),
  figure('Saving', 'per year', {
    value: (plan) => plan.money.saving,
    how: '[Bought-in cost with labour] - [Running cost] - [Top-up cost]',
    meaning: 'What the kit saves in a year, before what it costs to own.',
  }),
  figure('Ownership cost', 'per year', {
    value: (plan) => plan.money.ownership,
    how: 'COST.OWNERSHIP([Kit cost] - [Grant], [Life years], [Discount rate], [End value])',
    meaning: 'What the kit costs to own: interest and wear spread evenly over its life.',
  }),
  figure('Full cost of home fibre', 'per year', {
    value: (plan) => plan.money.full_cost,
    how: '[Running cost] + [Ownership cost]',
    meaning: 'Running and owning together.',
  }),
  figure('Full cost per tonne', 'per t', {
    value: (plan) => plan.money.full_cost_per_t,
    how: '[Full cost of home fibre] / [Fibre made]',
    meaning: 'The same for each tonne of fibre made.',
  }),
  figure('Saving after capital', 'per year', {
    value: (plan) => plan.money.saving_after_capital,
    how: '[Saving] - [Ownership cost]',
    meaning: 'What is left of the saving when the kit has paid for itself.',
  }),
  figure('Bought-in per cubicle', 'per year', {
    value: (plan) => plan.money.bought_per_cubicle,
    how: '[Bought-in cost with labour] / [Cubicles]',
    meaning: 'Bought bedding with labour, for one cubicle.',
  }),
  figure('Home fibre per cubicle', 'per year', {
    value: (plan) => plan.money.home_per_cubicle,
    how: '([Full cost of home fibre] + [Top-up cost]) / [Cubicles]',
    meaning: 'Home fibre in full with its top-up, for one cubicle.',
  }),
  figure('Payback', 'years', {
    value: (plan) => plan.money.payback_years,
    how: 'INVEST.PAYBACK([Kit cost] - [Grant], [Saving], [Saving growth], [Life years])',
    meaning: 'Years until the savings have returned the kit’s cost.',
  }),
  figure('Discounted payback', 'years', {
    value: (plan) => plan.money.discounted_payback_years,
    how: 'INVEST.DISCOUNTEDPAYBACK([Kit cost] - [Grant], [Saving], [Discount rate], [Saving growth], [Life years])',
    meaning: 'The same with each year’s saving discounted.',
  }),
  figure('NPV', 'money', {
    value: (plan) => plan.money.npv,
    how: 'INVEST.NPV([Kit cost] - [Grant], [Saving], [Life years], [Discount rate], [Saving growth], [End value])',
    meaning: 'What the kit is worth today beyond its cost, at the discount rate and before tax.',
  }),
  figure('IRR', 'fraction', {
    value: (plan) => plan.money.irr,
    how: 'INVEST.IRR([Kit cost] - [Grant], [Saving], [Life years], [Saving growth], [End value])',
    meaning: 'The yearly return that the kit earns on its cost.',
  }),
  figure('NPV after tax', 'money', {
    value: (plan) => plan.money.npv_after_tax,
    how: afterTaxHow,
    meaning: 'The same after tax and allowances at the rates given; check the current rates with your accountant.',
  }),
  figure('Break-even bedding price', 'per t', {
    value: (plan) => plan.money.break_even_price,
    how: `[Bought needed] > [Topped up with bought] ? ifNotNegative([Bought price per t] - [NPV] / ${annuityHow} / ([Bought needed] - [Topped up with bought])) : none`,
    meaning: 'Price of bought bedding at which the kit just pays, all else as it is.',
  }),
  figure('Break-even heat price', 'per kWh', {
    value: (plan) => plan.money.break_even_heat_price,
    how: `ifNotNegative([Heat price per kWh] + [NPV] / ${annuityHow} / ([Heat needed] * [Dryer hours needed] * [Housed days] * [Fibre made] / [Fibre needed]))`,
    meaning: 'Price of heat at which the kit just pays, all else as it is.',
  }),
  figure('Break-even kit cost', 'money', {
    value: (plan) => plan.money.break_even_kit_cost,
    how: `ifNotNegative([Kit cost] + [NPV] / (1 + ${annuityHow} * [Repairs share]))`,
    meaning: 'Kit cost before the grant at which the kit just pays, all else as it is.',
  }),
  figure('Loan payments', 'per year', {
    value: (plan) => plan.money.loan_payments,
    how: '[Borrowed] > 0 ? 12 * INVEST.REPAYMENT([Borrowed], [Loan years], [Loan rate]) : 0',
    meaning: 'A year’s loan payments, paid monthly.',
  }),
  figure('Loan cover', 'times', {
    value: (plan) => plan.money.loan_cover,
    how: 'INVEST.COVER([Saving], [Loan payments])',
    meaning: 'First year’s saving before tax beside the year’s loan payments; lenders often look for 1.25.',
  }),
] as const;

/** What else there is to the money. */
export const furtherMoneyFigures = [
  figure('Capital', 'money', {
    value: (plan) => plan.money.capital,
    how: '[Kit cost] - [Grant]',
    meaning: 'What the kit costs once the grant is off.',
  }),
  figure('Net running cost', 'per year', {
    value: (plan) => plan.money.net_running_cost,
    how: '[Bought price per t] * ([Bought needed] - [Topped up with bought]) - [Saving]',
    meaning: 'What it costs to run beyond what the bought tonnes are worth: the running cost of INVEST.SENSITIVITY and PROBABILITY.',
  }),
  figure('Mastitis cases to NPV 0', 'per 100 cows/year', {
    value: (plan) => plan.udder.cases_to_npv_0,
    how: `[NPV] > 0 ? [NPV] / (${annuityHow} * [Cows] / 100 * [Cost per mastitis case]) : none`,
    meaning:
      'Extra clinical cases, each year of the life, that would eat what the kit earns; before tax. Cases that do not show cost as much again.',
  }),
  figure('Stated output at best', 'times', {
    only: 'with a dryer',
    value: (plan) => plan.kit.stated_at_best,
    how: "DRYING.CLAIM([Stated output m3 per hour] * MATERIAL.DRIEDDENSITY(isGiven('Fresh fibre density') ? [Fresh fibre density] : 200, [Pressed dry matter], [Dried to dry matter], [Shrinkage]), [Pressed dry matter], [Dried to dry matter], [Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Hot water temperature], [Altitude], [Air measured at])",
    meaning:
      'The same at the best for the supplier: fibre of 200 kg/m³ where its weight was not typed, and air as hot as the water. Still above 1.25, it is not to be had.',
  }),
  figure('Invoice price', 'per t', {
    value: (plan) => plan.money.invoice_price,
    how: '[Bought bill last year] / [Bought t last year]',
    meaning: 'What a tonne cost by last year’s invoices, haulage with it.',
  }),
  figure('Invoice against plan', 'times', {
    value: (plan) => plan.money.invoice_against_plan,
    how: '[Bought t last year] / DEMAND.HERD([Cubicles], DEMAND.CUBICLE([Litres now], [Days now], [Bought density]), [Housed days], [Bought lost])',
    meaning: 'Last year’s tonnes beside what the beds would take by the litres now, or laid as the fibre: near 1 if both are right.',
  }),
  figure('Present bedding in the slurry', 'times', {
    value: (plan) => plan.kit.bedding_in_slurry,
    how: '[Bought per cubicle per day] * [Bought dry matter] * [Cubicles] / 1000 / ([Slurry] * [Slurry dry matter])',
    meaning:
      'Dry matter laid now beside all that is in the slurry: the most of it that can be bedding. Above 1, most never reaches the sample.',
  }),
] as const;
