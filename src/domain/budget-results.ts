import type { Budget } from './budget.ts';
import { bandOf, SCORE_CAUTION } from './hygiene.ts';
import type { Answer } from './refusal.ts';

/** One row of the budget's answer. */
export interface BudgetResult {
  readonly key: string;
  readonly unit: string;
  /** How it comes about, in the names of items and results in brackets; a test works it out and compares. Empty where it is told in words. */
  readonly how: string;
  readonly meaning: string | ((budget: Budget) => string);
  readonly value: (budget: Budget) => Answer;
}

const row = (key: string, unit: string, value: BudgetResult['value'], meaning: BudgetResult['meaning'], how = ''): BudgetResult => ({
  key,
  unit,
  value,
  meaning,
  how,
});

const needs: readonly BudgetResult[] = [
  row(
    'Dried fibre density',
    'kg/m³',
    (b) => b.needs.fibre_density_kg_m3(),
    'What a cubic metre of the fibre weighs as it is spread; weigh a bucket to be sure.',
    'MATERIAL.DRIEDDENSITY([Fresh fibre density], [Pressed dry matter], [Dried to dry matter], [Shrinkage])',
  ),
  row(
    'Fibre per cubicle per day',
    'kg',
    (b) => b.needs.fibre_kg_cubicle_day(),
    'Fibre laid in each cubicle, averaged over the days.',
    'DEMAND.CUBICLE([Bedding litres per cubicle each time], [Days between beddings], [Dried fibre density])',
  ),
  row(
    'Bought per cubicle per day',
    'kg',
    (b) => b.needs.bought_kg_cubicle_day(),
    'Bought bedding laid in each cubicle now, averaged over the days.',
    'DEMAND.CUBICLE([Litres now], [Days now], [Bought density])',
  ),
  row(
    'Fibre needed',
    't/year',
    (b) => b.needs.fibre_t_year(),
    'Fibre the beds take in a year, with what is lost on the way.',
    'DEMAND.HERD([Cubicles], [Fibre per cubicle per day], [Housed days], [Fibre lost])',
  ),
  row(
    'Bought needed',
    't/year',
    (b) => b.needs.bought_t_year(),
    'Bought bedding the beds take in a year now, with what is lost.',
    'DEMAND.HERD([Cubicles], [Bought per cubicle per day], [Housed days], [Bought lost])',
  ),
];

const kit: readonly BudgetResult[] = [
  row(
    'Slurry',
    't/day',
    (b) => b.kit.slurry_t_day(),
    'Slurry that comes to the press, wash water with it.',
    'FIBRE.SLURRY([Cows], [Slurry litres per cow], [Water litres per cow])',
  ),
  row(
    'Pressed fibre',
    't/day',
    (b) => b.kit.cake_t_day(),
    'Pressed fibre that the day’s slurry holds.',
    'FIBRE.CAKE([Slurry], [Slurry dry matter], [Pressed dry matter], [Share of dry matter caught])',
  ),
  row(
    'Liquid dry matter',
    'fraction',
    (b) => b.kit.liquid_dm(),
    'Dry matter left in the liquid that goes on to the store.',
    'FIBRE.LIQUIDDM([Slurry dry matter], [Pressed dry matter], [Share of dry matter caught])',
  ),
  row(
    'Supply temperature',
    '°C',
    (b) => b.kit.now.supply_c(),
    (b) => `Warm air into the drum; the ${b.kit.now.supply().set_by === 'heat' ? 'heat available' : 'hot water'} sets it.`,
  ),
  row(
    'Supply temperature, coldest month',
    '°C',
    (b) => b.kit.coldest.supply_c(),
    (b) =>
      `Warm air into the drum in the coldest month; the ${b.kit.coldest.supply().set_by === 'heat' ? 'heat available' : 'hot water'} sets it.`,
  ),
  row(
    'Heat needed',
    'kW',
    (b) => b.kit.now.heat_kw(),
    'Heat the air takes up while the dryer runs.',
    'DRYING.HEAT([Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at])',
  ),
  row(
    'Heat needed, coldest month',
    'kW',
    (b) => b.kit.coldest.heat_kw(),
    'Heat the air takes up while the dryer runs in the coldest month.',
    'DRYING.HEAT([Air m3 per hour], [Coldest month temperature], [Coldest month humidity], [Supply temperature, coldest month], [Altitude], [Air measured at])',
  ),
  row(
    'Evaporation',
    'kg/h',
    (b) => b.kit.now.exhaust().evaporation_kg_h,
    'Water the air carries off.',
    'DRYING.EVAPORATION([Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at], [Exhaust humidity], [Heat loss])',
  ),
  row(
    'Dried output',
    'kg/h',
    (b) => b.kit.now.dried_kg_h(),
    'Finished fibre the dryer gives while it runs.',
    'DRYING.OUTPUT([Pressed dry matter], [Dried to dry matter], [Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at], [Exhaust humidity], [Heat loss])',
  ),
  row(
    'Dried output volume',
    'm³/h',
    (b) => b.kit.dried_m3_h(),
    'The same by volume: compare it with a stated output.',
    '[Dried output] / [Dried fibre density]',
  ),
  row(
    'Heat per kg of water',
    'MJ/kg',
    (b) => (3.6 * b.kit.now.heat_kw()) / b.kit.now.exhaust().evaporation_kg_h,
    'Heat for each kilogram of water carried off; drum dryers use 2.6 to 9.2.',
    '3.6 * [Heat needed] / [Evaporation]',
  ),
  row('Exhaust temperature', '°C', (b) => b.kit.now.exhaust().exhaust_c, 'Moist air out of the drum.'),
  row('Exhaust flow', 'm³/h', (b) => b.kit.now.exhaust().exhaust_m3_h, 'Moist air out of the drum: size the chimney by it.'),
  row(
    'Slurry could make',
    't/day',
    (b) => b.kit.slurry_could_t_day(),
    'Finished fibre if only the slurry set the limit.',
    '[Pressed fibre] * [Pressed dry matter] / [Dried to dry matter]',
  ),
  row(
    'Press could make',
    't/day',
    (b) => b.kit.press_could_t_day(),
    'Finished fibre if only the press and its hours set the limit.',
    'FIBRE.CAKE([Press t per hour running], [Slurry dry matter], [Pressed dry matter], [Share of dry matter caught]) * [Press hours a day] * [Minutes on] / ([Minutes on] + [Minutes off]) * [Pressed dry matter] / [Dried to dry matter]',
  ),
  row(
    'Dryer could make',
    't/day',
    (b) => b.kit.now.dryer_t_day(),
    'Finished fibre if only the dryer and its hours set the limit.',
    '[Dried output] * [Dryer hours a day] / 1000',
  ),
  row('What limits', '', (b) => b.kit.limit().stage, 'The stage that can make least.'),
  row(
    'Cover of demand',
    'times',
    (b) => b.kit.limit().cover,
    'What can be made beside what is needed: 1 is just enough.',
    'min([Slurry could make], [Press could make], [Dryer could make]) / ([Fibre needed] / [Housed days])',
  ),
  row('Cover in the coldest month', 'times', (b) => b.kit.coldest_limit().cover, 'The same on the coldest month’s air.'),
  row(
    'Press hours needed',
    'h/day',
    (b) => b.kit.press_hours_needed(),
    'Hours a day on the clock that the press takes for the whole demand, pauses with it.',
  ),
  row(
    'Dryer hours needed',
    'h/day',
    (b) => b.kit.dryer_hours_needed(),
    'Hours a day that the dryer takes for the whole demand.',
    '1000 * [Fibre needed] / [Housed days] / [Dried output]',
  ),
  row(
    'Fibre made',
    't/year',
    (b) => b.kit.fibre_made_t_year(),
    'Fibre made in a year: what is needed, or what can be made where that is less.',
    '[Fibre needed] * min(1, [Cover of demand])',
  ),
];

const money: readonly BudgetResult[] = [
  row(
    'Topped up with bought',
    't/year',
    (b) => b.money.topped_up_t_year(),
    'Bought bedding that still makes up the shortfall.',
    '(1 - [Fibre made] / [Fibre needed]) * DEMAND.HERD([Cubicles], DEMAND.CUBICLE([Bedding litres per cubicle each time], [Days between beddings], [Bought density]), [Housed days], [Bought lost])',
  ),
  row(
    'Bought-in cost',
    'per year',
    (b) => b.money.bought_cost(),
    'What bought bedding costs now, haulage with it.',
    'COST.BOUGHT([Bought needed], [Bought price per t], [Load t], [Haulage per load])',
  ),
  row(
    'Bought-in cost with labour',
    'per year',
    (b) => b.money.bought_with_labour(),
    'The same with the work of it.',
    '[Bought-in cost] + [Labour hours a week now] * [Labour rate] * [Housed days] / 7',
  ),
  row('Power', 'per year', (b) => b.money.power_cost(), 'Electricity for the motors of press, fan and drum.'),
  row(
    'Heat',
    'per year',
    (b) => b.money.heat_cost(),
    'Heat for the air, at the price given.',
    '[Heat needed] * [Dryer hours needed] * [Housed days] * [Fibre made] / [Fibre needed] * [Heat price per kWh]',
  ),
  row(
    'Labour with kit',
    'per year',
    (b) => b.money.labour_kit(),
    'The work with the kit.',
    '[Labour hours a week with kit] * [Labour rate] * [Housed days] / 7',
  ),
  row(
    'Repairs',
    'per year',
    (b) => b.money.repairs(),
    'Repairs and wear, as a share of the whole kit cost.',
    '[Kit cost] * [Repairs share]',
  ),
  row(
    'Running cost',
    'per year',
    (b) => b.money.running_cost(),
    'Power, heat, labour and repairs together.',
    '[Power] + [Heat] + [Labour with kit] + [Repairs]',
  ),
  row(
    'Top-up cost',
    'per year',
    (b) => b.money.top_up_cost(),
    'What the bought top-up costs.',
    'COST.BOUGHT([Topped up with bought], [Bought price per t], [Load t], [Haulage per load])',
  ),
  row(
    'Saving',
    'per year',
    (b) => b.money.saving(),
    'What the kit saves in a year, before what it costs to own.',
    '[Bought-in cost with labour] - [Running cost] - [Top-up cost]',
  ),
  row(
    'Ownership cost',
    'per year',
    (b) => b.money.ownership(),
    'What the kit costs to own: interest and wear spread evenly over its life.',
    'COST.OWNERSHIP([Kit cost] - [Grant], [Life years], [Discount rate], [End value])',
  ),
  row(
    'Full cost of home fibre',
    'per year',
    (b) => b.money.full_cost(),
    'Running and owning together.',
    '[Running cost] + [Ownership cost]',
  ),
  row(
    'Full cost per tonne',
    'per t',
    (b) => b.money.full_cost_per_t(),
    'The same for each tonne of fibre made.',
    '[Full cost of home fibre] / [Fibre made]',
  ),
  row(
    'Saving after capital',
    'per year',
    (b) => b.money.saving_after_capital(),
    'What is left of the saving when the kit has paid for itself.',
    '[Saving] - [Ownership cost]',
  ),
  row(
    'Bought-in per cubicle',
    'per year',
    (b) => b.money.bought_per_cubicle(),
    'Bought bedding with labour, for one cubicle.',
    '[Bought-in cost with labour] / [Cubicles]',
  ),
  row(
    'Home fibre per cubicle',
    'per year',
    (b) => b.money.home_per_cubicle(),
    'Home fibre in full with its top-up, for one cubicle.',
    '([Full cost of home fibre] + [Top-up cost]) / [Cubicles]',
  ),
  row(
    'Payback',
    'years',
    (b) => b.money.payback_years(),
    'Years until the savings have returned the kit’s cost.',
    'INVEST.PAYBACK([Kit cost] - [Grant], [Saving], [Saving growth], [Life years])',
  ),
  row(
    'Discounted payback',
    'years',
    (b) => b.money.discounted_payback_years(),
    'The same with each year’s saving discounted.',
    'INVEST.DISCOUNTEDPAYBACK([Kit cost] - [Grant], [Saving], [Discount rate], [Saving growth], [Life years])',
  ),
  row(
    'NPV',
    'money',
    (b) => b.money.npv(),
    'What the kit is worth today beyond its cost, at the discount rate and before tax.',
    'INVEST.NPV([Kit cost] - [Grant], [Saving], [Life years], [Discount rate], [Saving growth], [End value])',
  ),
  row(
    'IRR',
    'fraction',
    (b) => b.money.irr(),
    'The yearly return that the kit earns on its cost.',
    'INVEST.IRR([Kit cost] - [Grant], [Saving], [Life years], [Saving growth], [End value])',
  ),
  row(
    'NPV after tax',
    'money',
    (b) => b.money.npv_after_tax(),
    'The same after tax and allowances at the rates given; check the current rates with your accountant.',
  ),
  row(
    'Break-even bedding price',
    'per t',
    (b) => b.money.break_even_price(),
    'Price of bought bedding at which the kit just pays, all else as it is.',
  ),
  row(
    'Break-even heat price',
    'per kWh',
    (b) => b.money.break_even_heat_price(),
    'Price of heat at which the kit just pays, all else as it is.',
  ),
  row(
    'Break-even kit cost',
    'money',
    (b) => b.money.break_even_kit_cost(),
    'Kit cost before the grant at which the kit just pays, all else as it is.',
    '[Kit cost] + [NPV]',
  ),
  row('Loan payments', 'per year', (b) => b.money.loan_payments(), 'A year’s loan payments, paid monthly.'),
  row(
    'Loan cover',
    'times',
    (b) => b.money.loan_cover(),
    'First year’s saving before tax beside the year’s loan payments; lenders often look for 1.25.',
    'INVEST.COVER([Saving], [Loan payments])',
  ),
];

const bands = ({ lowest, highest }: { lowest: number; highest: number }): string => {
  const [low, high] = [bandOf(lowest), bandOf(highest)];
  return `${low === high ? low : `${low} to ${high}`} over what was not given; a ${SCORE_CAUTION}.`;
};
const range = ({ lowest, highest }: { lowest: number; highest: number }, decimals: number): string =>
  `${lowest.toFixed(decimals)}–${highest.toFixed(decimals)}`;

const udder: readonly BudgetResult[] = [
  row(
    'Break-even mastitis cases',
    'per 100 cows/year',
    (b) => b.udder.break_even_cases(),
    'Extra cases that would eat the saving.',
    'UDDER.BREAKEVEN([Saving], [Cows], [Cost per mastitis case])',
  ),
  row(
    'Break-even mastitis cases after capital',
    'per 100 cows/year',
    (b) => b.udder.break_even_cases_after_capital(),
    'Extra cases that would eat what is left after capital.',
    'UDDER.BREAKEVEN([Saving after capital], [Cows], [Cost per mastitis case])',
  ),
  row(
    'Hygiene score, fibre',
    '0–100',
    (b) => b.udder.fibre_score(),
    (b) => `${b.udder.fibre_band()}: 0 is best; a ${SCORE_CAUTION}.`,
    'HYGIENE.RISK([Dried to dry matter], [Days between beddings], [Fibre kind], [Shed temperature], [Dirty udders], [Bed], [Cows] / [Cubicles])',
  ),
  row(
    'Hygiene score, present bedding',
    '0–100',
    (b) => b.udder.present_score(),
    (b) => `${bandOf(b.udder.present_score())}: 0 is best; a ${SCORE_CAUTION}.`,
    'HYGIENE.RISK([Bought dry matter], [Days now], [Material now], [Shed temperature], [Dirty udders], [Bed], [Cows] / [Cubicles])',
  ),
];

const claims: readonly BudgetResult[] = [
  row(
    'Stated output against the air',
    'times',
    (b) => b.kit.stated_ratio(),
    'Water the stated output needs beside the most this air can carry: above 1.25 it is not to be had with this air.',
    'DRYING.CLAIM([Stated output m3 per hour] * [Dried fibre density], [Pressed dry matter], [Dried to dry matter], [Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at])',
  ),
  row(
    'Retention',
    'hours',
    (b) => b.kit.retention_hours(),
    'Time the fibre spends in the drum at the calculated output.',
    'DRYING.RETENTION([Drum m3], [Drum fill], [Dried fibre density], [Dried output])',
  ),
  row('Limit in the coldest month', '', (b) => b.kit.coldest_limit().stage, 'The stage that can make least in the coldest month.'),
  row('Exhaust dew point', '°C', (b) => b.kit.now.exhaust().exhaust_dew_point_c, 'Anything colder than this in the exhaust’s way drips.'),
  row(
    'Cow dry matter',
    'kg',
    (b) => b.kit.cow_dm_kg_day(),
    'Dry matter in a cow’s slurry in a day: 4 to 9 is usual, so a figure outside says check the samples.',
    '1000 * [Slurry] * [Slurry dry matter] / [Cows]',
  ),
  row(
    'Hygiene span, fibre',
    '0–100',
    (b) => range(b.udder.fibre_span(), 0),
    (b) => bands(b.udder.fibre_span()),
  ),
  row(
    'Hygiene span, present bedding',
    '0–100',
    (b) => range(b.udder.present_span(), 0),
    (b) => bands(b.udder.present_span()),
  ),
  row(
    'Lying time, fibre',
    'h/day',
    (b) => range(b.udder.fibre_lying(), 1),
    'What the published trials imply at this dry matter; they disagree fourfold, and no milk is claimed for it.',
  ),
  row('Lying time, present bedding', 'h/day', (b) => range(b.udder.present_lying(), 1), 'The same for the present bedding.'),
];

/** Every result, in the order of the answer's rows. Keys and their order are fixed: workbooks look them up. */
export const budgetResults: readonly BudgetResult[] = [...needs, ...kit, ...money, ...udder, ...claims];
