import { figure } from './figure.ts';

/** Equations over air that are the same in the usual and in the coldest air. */
const usual = ['Outdoor temperature', 'Outdoor humidity', 'Supply temperature'] as const;
const coldest = ['Coldest month temperature', 'Coldest month humidity', 'Supply temperature, coldest month'] as const;
type Air = typeof usual | typeof coldest;

/** The smaller of what the water and what the heat gives; of the one that is not given, so much that it sets no limit. */
const supplyHow = ([c, rh]: Air) =>
  `min(DRYING.SUPPLYTEMP([Air m3 per hour], [${c}], [${rh}], ifGiven('Hot water litres per hour', 1e9), [Hot water temperature], [Heater effectiveness], [Altitude], [Air measured at]), ifNone(DRYING.HEATEDTEMP([Air m3 per hour], [${c}], [${rh}], ifGiven('Heat available kW', 1e9), [Altitude], [Air measured at]), 1000))`;
const airHow = ([c, rh, supply]: Air) =>
  `[Air m3 per hour], [${c}], [${rh}], [${supply}], [Altitude], [Air measured at], [Exhaust humidity], [Heat loss]`;
export const exhaustHow = (row: string) => `row(DRYING.EXHAUST(${airHow(usual)}), '${row}')`;
export const coldestDryerHow = `ifNone(DRYING.OUTPUT([Pressed dry matter], [Dried to dry matter], ${airHow(coldest)}), 0) * [Dryer hours a day] / 1000`;
const withDryerHow = (dryer: string, without: string) => `[Dried to dry matter] > [Pressed dry matter] ? ${dryer} : ${without}`;
export const leastHow = (dryer: string) =>
  withDryerHow(
    `least('slurry', [Slurry could make], 'press', [Press could make], 'dryer', ${dryer})`,
    "least('slurry', [Slurry could make], 'press', [Press could make])",
  );

/** What the beds need. */
export const needsFigures = [
  figure('Dried fibre density', 'kg/m³', {
    value: (plan) => plan.needs.fibre_density_kg_m3,
    how: '[Dried to dry matter] > [Pressed dry matter] ? MATERIAL.DRIEDDENSITY([Fresh fibre density], [Pressed dry matter], [Dried to dry matter], [Shrinkage]) : [Fresh fibre density]',
    meaning: 'What a cubic metre of the fibre weighs as it is spread; weigh a bucket to be sure.',
  }),
  figure('Fibre per cubicle per day', 'kg', {
    value: (plan) => plan.needs.fibre_kg_cubicle_day,
    how: 'DEMAND.CUBICLE([Bedding litres per cubicle each time], [Days between beddings], [Dried fibre density])',
    meaning: 'Fibre laid in each cubicle, averaged over the days.',
  }),
  figure('Bought per cubicle per day', 'kg', {
    value: (plan) => plan.needs.bought_kg_cubicle_day,
    how: "isGiven('Litres now') || !isGiven('Bought t last year') ? DEMAND.CUBICLE([Litres now], [Days now], [Bought density]) : [Bought t last year] * (1 - [Bought lost]) * 1000 / ([Cubicles] * [Housed days])",
    meaning: 'Bought bedding laid in each cubicle now, averaged over the days.',
  }),
  figure('Fibre needed', 't/year', {
    value: (plan) => plan.needs.fibre_t_year,
    how: 'DEMAND.HERD([Cubicles], [Fibre per cubicle per day], [Housed days], [Fibre lost])',
    meaning: 'Fibre the beds take in a year, with what is lost on the way.',
  }),
  figure('Bought needed', 't/year', {
    value: (plan) => plan.needs.bought_t_year,
    how: "isGiven('Litres now') || !isGiven('Bought t last year') ? DEMAND.HERD([Cubicles], [Bought per cubicle per day], [Housed days], [Bought lost]) : [Bought t last year]",
    meaning: 'Bought bedding the beds take in a year now, with what is lost.',
  }),
] as const;

/** What slurry, press and dryer can make. */
export const kitFigures = [
  figure('Slurry', 't/day', {
    value: (plan) => plan.kit.slurry_t_day,
    how: 'FIBRE.SLURRY([Cows], [Slurry litres per cow], [Water litres per cow])',
    meaning: 'Slurry that comes to the press, wash water with it.',
  }),
  figure('Pressed fibre', 't/day', {
    value: (plan) => plan.kit.cake_t_day,
    how: 'FIBRE.CAKE([Slurry], [Slurry dry matter], [Pressed dry matter], [Share of dry matter caught])',
    meaning: 'Pressed fibre that the day’s slurry holds.',
  }),
  figure('Liquid dry matter', 'fraction', {
    value: (plan) => plan.kit.liquid_dm,
    how: 'FIBRE.LIQUIDDM([Slurry dry matter], [Pressed dry matter], [Share of dry matter caught])',
    meaning: 'Dry matter left in the liquid that goes on to the store.',
  }),
  figure('Supply temperature', '°C', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.supply_c,
    how: supplyHow(usual),
    meaning: (plan) => `Warm air into the drum; the ${plan.kit.usual.set_by === 'heat' ? 'heat available' : 'hot water'} sets it.`,
  }),
  figure('Supply temperature, coldest month', '°C', {
    only: 'with a dryer',
    value: (plan) => plan.kit.coldest.supply_c,
    how: supplyHow(coldest),
    meaning: (plan) =>
      `Warm air into the drum in the coldest month; the ${plan.kit.coldest.set_by === 'heat' ? 'heat available' : 'hot water'} sets it.`,
  }),
  figure('Heat needed', 'kW', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.heat_kw,
    how: 'DRYING.HEAT([Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at])',
    meaning: 'Heat the air takes up while the dryer runs.',
  }),
  figure('Heat needed, coldest month', 'kW', {
    only: 'with a dryer',
    value: (plan) => plan.kit.coldest.heat_kw,
    how: 'DRYING.HEAT([Air m3 per hour], [Coldest month temperature], [Coldest month humidity], [Supply temperature, coldest month], [Altitude], [Air measured at])',
    meaning: 'Heat the air takes up while the dryer runs in the coldest month.',
  }),
  figure('Evaporation', 'kg/h', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.exhaust.evaporation_kg_h,
    how: 'DRYING.EVAPORATION([Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at], [Exhaust humidity], [Heat loss])',
    meaning: 'Water the air carries off.',
  }),
  figure('Dried output', 'kg/h', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.dried_kg_h,
    how: 'DRYING.OUTPUT([Pressed dry matter], [Dried to dry matter], [Air m3 per hour], [Outdoor temperature], [Outdoor humidity], [Supply temperature], [Altitude], [Air measured at], [Exhaust humidity], [Heat loss])',
    meaning: 'Finished fibre the dryer gives while it runs.',
  }),
  figure('Dried output volume', 'm³/h', {
    only: 'with a dryer',
    value: (plan) => plan.kit.dried_m3_h,
    how: '[Dried output] / [Dried fibre density]',
    meaning: 'The same by volume: compare it with a stated output.',
  }),
  figure('Heat per kg of water', 'MJ/kg', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.exhaust.heat_mj_kg,
    how: '3.6 * [Heat needed] / [Evaporation]',
    meaning:
      'Heat for each kilogram of water carried off: turning it to vapour takes about 2.5, and drums are said to take 4.6 to 9.2 (from memory).',
  }),
  figure('Exhaust temperature', '°C', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.exhaust.exhaust_c,
    how: exhaustHow('temperature'),
    meaning: 'Moist air out of the drum.',
  }),
  figure('Exhaust flow', 'm³/h', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.exhaust.exhaust_m3_h,
    how: exhaustHow('flow'),
    meaning: 'Moist air out of the drum: size the chimney by it.',
  }),
  figure('Slurry could make', 't/day', {
    value: (plan) => plan.kit.slurry_could_t_day,
    how: '[Pressed fibre] * [Pressed dry matter] / [Dried to dry matter]',
    meaning: 'Finished fibre if only the slurry set the limit.',
  }),
  figure('Press could make', 't/day', {
    value: (plan) => plan.kit.press_could_t_day,
    how: 'FIBRE.CAKE([Press t per hour running], [Slurry dry matter], [Pressed dry matter], [Share of dry matter caught]) * [Press hours a day] * [Minutes on] / ([Minutes on] + [Minutes off]) * [Pressed dry matter] / [Dried to dry matter]',
    meaning: 'Finished fibre if only the press and its hours set the limit.',
  }),
  figure('Dryer could make', 't/day', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.dryer_t_day,
    how: 'ifNone([Dried output], 0) * [Dryer hours a day] / 1000',
    meaning: 'Finished fibre if only the dryer and its hours set the limit.',
  }),
  figure('What limits', '', {
    value: (plan) => plan.kit.limit.stage,
    how: leastHow('[Dryer could make]'),
    meaning: 'The stage that can make least.',
  }),
  figure('Cover of demand', 'times', {
    value: (plan) => plan.kit.limit.cover,
    how: '[Dried to dry matter] > [Pressed dry matter] ? min([Slurry could make], [Press could make], [Dryer could make]) / ([Fibre needed] / [Housed days]) : min([Slurry could make], [Press could make]) / ([Fibre needed] / [Housed days])',
    meaning: 'What can be made beside what is needed: 1 is just enough.',
  }),
  figure('Cover in the coldest month', 'times', {
    value: (plan) => plan.kit.coldest_limit.cover,
    how: withDryerHow(
      `min([Slurry could make], [Press could make], ${coldestDryerHow}) / ([Fibre needed] / [Housed days])`,
      '[Cover of demand]',
    ),
    meaning: 'The same on the coldest month’s air.',
  }),
  figure('Press hours needed', 'h/day', {
    value: (plan) => plan.kit.press_hours_needed,
    how: '[Fibre needed] / [Housed days] * [Dried to dry matter] / [Pressed dry matter] / FIBRE.CAKE([Press t per hour running], [Slurry dry matter], [Pressed dry matter], [Share of dry matter caught]) * ([Minutes on] + [Minutes off]) / [Minutes on]',
    meaning: 'Hours a day on the clock that the press takes for the whole demand, pauses with it.',
  }),
  figure('Dryer hours needed', 'h/day', {
    only: 'with a dryer',
    value: (plan) => plan.kit.dryer_hours_needed,
    how: '1000 * [Fibre needed] / [Housed days] / [Dried output]',
    meaning: 'Hours a day that the dryer takes for the whole demand.',
  }),
  figure('Fibre made', 't/year', {
    value: (plan) => plan.kit.fibre_made_t_year,
    how: '[Fibre needed] * min(1, [Cover of demand])',
    meaning: 'Fibre made in a year: what is needed, or what can be made where that is less.',
  }),
] as const;
