import { SELF_HEATING_RATIO } from '../domain/drying.ts';
import { spell } from '../domain/spell.ts';
import type { Plan } from './plan.ts';
import { above, below, outside, warning } from './warning.ts';

/** Below this share of the demand a stage has too little to spare for a stop. */
const THIN = 1.1;
/** A month's mean below this has frosty nights. */
const FROSTY_C = 5;

/** `slurry (0.8 of what the beds need)`: stages that are short, or all but. */
function thinStages({ kit, needs }: Plan): string {
  const covers = kit.limit.stages.map(({ stage, t_day }) => ({ stage, cover: t_day / needs.demand_t_day }));
  const named = (test: (cover: number) => boolean) => covers.filter(({ cover }) => test(cover));
  const short = named((cover) => cover < 1).map(({ stage, cover }) => `${stage} (${spell(Number(cover.toFixed(2)))} of the need)`);
  const thin = named((cover) => cover >= 1 && cover < THIN).map(({ stage }) => stage);
  return [short.length > 0 ? `Short: ${short.join(', ')}.` : '', thin.length > 0 ? `Less than a tenth to spare: ${thin.join(', ')}.` : '']
    .filter((part) => part !== '')
    .join(' ');
}

/** The temperatures of the outdoor air that were typed. */
const typedTemperatures = ({ given, inputs }: Plan): readonly number[] =>
  (['ambient_c', 'coldest_c'] as const).flatMap((key) => (given.has(key) ? [inputs[key]] : []));

const limitedByHeat = ({ kit }: Plan) => [kit.usual, kit.coldest].find(({ set_by }) => set_by === 'heat');

/** Of what slurry, press and dryer can make. */
export const kitWarnings = [
  warning('Cover', 'times', {
    of: 'cover of demand',
    value: (plan) => plan.kit.limit.cover,
    when: below(1),
    meaning: (plan) =>
      `The ${plan.kit.limit.stage} cannot make what the beds need; bought bedding makes up the rest. See Levers for what would close the gap.`,
  }),
  warning('Coldest cover', 'times', {
    of: 'cover in the coldest month',
    value: (plan) => plan.kit.coldest_limit.cover,
    when: below(1),
    meaning: (plan) =>
      `In the coldest month the ${plan.kit.coldest_limit.stage} cannot make what the beds need: plan bought bedding for that month or turn the fan down; fibre this moist is not for storing.`,
  }),
  warning('Thin margin', 'times', {
    trigger: `a stage below ${THIN} times the demand`,
    fires: (plan) => plan.kit.limit.cover < THIN && plan.kit.limit.cover,
    meaning: (plan) => `${thinStages(plan)}${plan.kit.limit.cover < 1 ? '' : ' One stop and the beds go short.'}`,
  }),
  warning('Press hours', 'h/day', {
    of: 'hours needed',
    value: (plan) => plan.kit.press_hours_needed,
    when: above(['Press hours a day', (plan) => plan.inputs.press_hours_day]),
    meaning: 'The press needs more hours a day than it has: longer hours, shorter pauses or a larger press.',
  }),
  warning('Dryer hours', 'h/day', {
    only: 'with a dryer',
    of: 'hours needed',
    value: (plan) => plan.kit.dryer_hours_needed,
    when: above(['Dryer hours a day', (plan) => plan.inputs.dryer_hours_day]),
    meaning: 'The dryer needs more hours a day than it has: more hours, more air or hotter air.',
  }),
  warning('Heat sets the limit', '°C', {
    only: 'with a dryer',
    trigger: 'air off the heat available cooler than off the hot water, usually or in the coldest month',
    fires: (plan) => limitedByHeat(plan)?.supply_c ?? false,
    meaning: (plan) =>
      `${plan.kit.usual.set_by === 'heat' ? 'The' : 'In the coldest month the'} heat available does not bring the air to the temperature the hot water would: more heat, or less air, and ask the heating engineer.`,
  }),
  warning('Stated output', 'times', {
    only: 'with a dryer',
    trigger: `more than 1 times what the air can carry; above ${SELF_HEATING_RATIO} not to be had with this air`,
    fires: (plan) => plan.kit.stated_ratio > 1 && plan.kit.stated_ratio,
    meaning: ({ kit, given, inputs }) => {
      if (kit.stated_ratio <= SELF_HEATING_RATIO)
        return 'Measure it: the stated output is just above what this air can carry; heat from the fibre itself may explain it.';
      if (kit.stated_at_best <= SELF_HEATING_RATIO)
        return 'Not with this air, if density, air and water are right: weigh a bucket of the fibre first. Ask the supplier for air, temperature and dry matters in and out, and measure.';
      const density = given.has('fresh_density_kg_m3') ? inputs.fresh_density_kg_m3 : 200;
      return `Not with this air, even with fresh fibre at ${spell(density)} kg/m³ and all the heat that the water could give. Ask the supplier for air, temperature and dry matters in and out, and measure.`;
    },
  }),
  warning('Stated drum', 'm³', {
    only: 'with a dryer',
    of: 'drum needed',
    value: (plan) => plan.kit.stated_drum_m3,
    when: above(['Drum m3', (plan) => plan.inputs.drum_m3]),
    meaning:
      'The drum is too small to hold the stated output for the stated time: one of the three figures is wrong. Ask the supplier, and measure.',
  }),
  warning('Heat per kg', 'MJ/kg', {
    only: 'with a dryer',
    value: (plan) => plan.kit.usual.exhaust.heat_mj_kg,
    when: outside(2.6, 9.2),
    meaning:
      'The heat for each kilogram of water is less than drying can do with (2.6 MJ) or more than dryers are said to take (9.2 MJ): check temperatures, humidity and air flow.',
  }),
  warning('Frost', '°C', {
    of: 'outdoor or coldest month, as typed,',
    value: (plan) => Math.min(...typedTemperatures(plan)),
    when: below(FROSTY_C),
    meaning:
      'A month whose mean is below 5 °C has frosty nights. Protect the water coil first: a burst coil stops the plant; then pipes, pump and press. Ask the heating engineer.',
  }),
  warning('Dust', 'fraction', {
    of: 'dried',
    value: (plan) => plan.inputs.target_dm,
    when: above(0.6),
    meaning: 'Fibre above about 60 % dry matter is dusty (common practice, no source): extract or damp it down, and mind lungs and fire.',
  }),
  warning('Very dry', 'fraction', {
    of: 'dried',
    value: (plan) => plan.inputs.target_dm,
    when: above(0.67),
    meaning: 'Drying this far costs heat for little gain, and dry fibre and its dust burn: ask about fire safety before you plan on it.',
  }),
  warning('Wet press', 'fraction', {
    of: 'pressed',
    value: (plan) => plan.inputs.cake_dm,
    when: below(0.34),
    meaning: 'Pressed fibre below 34 % dry matter is wetter than the usual least for bedding: check the press and a sample.',
  }),
  warning('Cow dry matter', 'kg', {
    of: 'a day’s',
    value: (plan) => plan.kit.cow_dm_kg_day,
    when: outside(4, 9),
    meaning: 'Dry matter per cow a day is usually 4 to 9 kg: check litres, wash water and the slurry sample.',
  }),
] as const;
