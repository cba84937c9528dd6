import { humidityRatio, specificVolume } from '../../../domain/moist-air.ts';
import { html, table } from '../html.ts';
import { cited, functionLink, shown } from '../words.ts';
import { answerOf, type Section, step, taken, worked } from './figures.ts';

/** Printed in ASHRAE Fundamentals 2017, chapter 1, table 2, at 101.325 kPa. */
const printedSaturated = [
  [5, 0.005425],
  [25, 0.020173],
  [50, 0.086863],
  [85, 0.838105],
] as const;

const againstTable = () =>
  table(
    'Water in saturated air, kg per kg of dry air',
    ['Temperature, °C', 'Printed', 'Ours', 'Apart'],
    printedSaturated.map(([t_c, printed]) => {
      const ours = humidityRatio(t_c, 1, 101_325);
      return [t_c, printed, ours.toPrecision(5), `${shown(Number((100 * (ours / printed - 1)).toFixed(1)))} %`];
    }),
  );

/** An invented drum, to show the check at work. */
const air = [4000, 8, 0.85, 65] as const;
const [wet, dry] = [0.35, 0.6];
const statedKg = 2 * 200;

const thinner = (): string => {
  const [, ambient_c, ambient_rh, supply_c] = air;
  const humidity_ratio = humidityRatio(ambient_c, ambient_rh, 101_325);
  const shares = specificVolume(ambient_c, humidity_ratio, 101_325) / specificVolume(supply_c, humidity_ratio, 101_325);
  return `${(100 * (1 - shares)).toFixed(0)} %`;
};

const shareReached = (): string => {
  const reached = answerOf('DRYING.EVAPORATION', air) / answerOf('DRYING.EVAPORATION', [...air, null, null, 1, 0]);
  return `${(100 * reached).toFixed(0)} %`;
};

export const airSections: readonly Section[] = [
  {
    id: 'air',
    title: 'The air balance',
    paragraphs: [
      [
        html`Air and its water are taken as a mixture of perfect gases, by the equations of ${cited('ashrae-2017')}. They lie a little below the handbook’s own tables of real air, more so the hotter it is:`,
        againstTable(),
      ],
      html`Outdoor air brings water with it: ${step('DRYING.EVAPORATION', 'humidity_ratio')}. Warming adds none. The flow measured in m³/h becomes kilograms of dry air by its volume where it was measured: ${step('DRYING.EVAPORATION', 'air_kg_h')}. Measured hot, at ${air[3]} °C, a cubic metre holds ${thinner()} less air than at ${air[1]} °C outdoors, so say where it was measured (<code>air_at</code>).`,
      html`The heat to warm it is ${step('DRYING.HEAT', 'heat_kw')}. With a hot-water heater, the smaller of the two streams’ heat capacities limits what can pass: ${step('DRYING.SUPPLYTEMP', 'supply_c')}, with an effectiveness of ${taken('effectiveness')} unless you have read your own (${functionLink('DRYING.EFFECTIVENESS')}). With too little water the air does not get hot, however hot the water. Where both litres and kilowatts are known the budget takes the lower temperature and says which one set it.`,
      html`In the drum the air gives heat to the water it takes up, and nothing is made or lost: ${step('DRYING.EVAPORATION', 'exhaust_c')}. The water carried off is ${step('DRYING.EVAPORATION', 'evaporation_kg_h')}.`,
      html`How damp the exhaust gets is given, not worked out, since it hangs on drum, flights, filling and time. It begins with ${taken('exhaust_rh')}. A hygrometer in the chimney replaces it, and ${functionLink('DRYING.EXHAUST')} says what that hygrometer, a thermometer and a heat meter should then read.`,
      html`Heat lost begins with ${taken('heat_loss')}. It stands for drum and ducts and for the warmth that the fibre itself carries out, about 3 % (computed for pressed fibre). Heat that fibre makes by rotting is left out, on both sides.`,
      html`A second look: heat per kilogram of water. Belts for digestate took what ${cited('awiszus-2018')} measured; drums are said to take what ${cited('mujumdar')} gives. The budget warns outside 2.6 to 9.2 MJ/kg: below that there is hardly the heat to turn the water into vapour, above it heat goes astray.`,
      html`The year’s mean and the coldest month are each worked out. Both are steady states of mean air: no nights, no start-up, no icing of heater or ducts. Below 0 °C the budget warns of frost.`,
      html`<b>Against.</b> Our defaults let the exhaust reach ${shareReached()} of the most that the air in <a href="#claim">the next section</a> could carry. ${cited('practical-action-drying')} holds that about half of that is reached in practice. If your dryer is of that kind the plan is too kind: put in a lower exhaust humidity or a higher loss.`,
      html`<b>Against.</b> The balance supposes that water leaves fibre as freely as it leaves a wet cloth. While fibre is wet that is sound; drier, it holds its water back. No sorption curve for manure fibre was found; ${cited('dunlop-2016')} measured poultry litter, a stand-in. Targets above 0.80 dry matter are refused, and for those near it the plan is kind.`,
    ],
  },
  {
    id: 'claim',
    title: 'The check of a stated output',
    paragraphs: [
      html`${functionLink('DRYING.CLAIM')} sets the water that a stated output needs against the most that this air can carry: ${step('DRYING.CLAIM', 'water_kg_h', 'most_kg_h', 'ratio')}. The most is with the exhaust saturated and no heat lost, which no dryer reaches. So the check is generous to the supplier on every point but the two named in the last paragraph.`,
      html`The verdict: ${step('DRYING.CLAIM', 'verdict')}. The line at 1 is physics. The line at 1.25 is judgement: room for a meter that reads low and for fibre that warms itself.`,
      html`At work, on invented figures: 2 m³ of dried fibre an hour at 200 kg/m³, from ${wet} to ${dry}, on 4,000 m³/h of air at 65 °C, from 8 °C and 85 % humidity. ${worked('DRYING.CLAIM', [statedKg, wet, dry, ...air])}. With the defaults, ${worked('DRYING.OUTPUT', [wet, dry, ...air])}. The stated output would take this much air: ${worked('DRYING.AIRNEEDED', [statedKg, wet, dry, ...air.slice(1)])}.`,
      html`A second check needs no air at all: stated output × stated time in the drum ÷ filling is the drum it takes. ${worked('DRYING.DRUMNEEDED', [2, 6, 0.3])}. A drum smaller than that cannot hold the fibre so long.`,
      html`<b>Against.</b> The check can be unfair in two ways. Heat that no meter shows (engine exhaust let into the drum, self-heating over many hours) evaporates more than the air’s warmth alone. And a flow read at the wrong place is wrong by as much as air expands. Measure both before calling a figure false; a supplier who shows a weighed day’s output, with its dry matter in and out, has answered it.`,
    ],
  },
];
