import { SELF_HEATING_RATIO } from '../../domain/drying.ts';
import { orDash } from '../grid.ts';
import { type Content, columnIn, SheetBuilder } from '../sheet-builder.ts';
import { air, airState, dms, dryerState, outdoor, pressed } from './drying-arguments.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse } from './inputs.ts';

function massBalance(page: SheetBuilder): void {
  page.part('Mass in a day').facts([
    {
      name: 'slurry',
      label: 'Slurry to the press',
      value: `=BEDDING.FIBRE.SLURRY(${inUse('Cows', 'Slurry litres per cow', 'Water litres per cow')})`,
      unit: 't/day',
    },
    {
      name: 'solids',
      label: 'Dry matter in it',
      value: `={slurry}*${inUse('Slurry dry matter')}`,
      unit: 't/day',
      note: 'slurry × its dry matter',
    },
    { name: 'cake', label: 'Pressed fibre', value: `=BEDDING.FIBRE.CAKE({slurry},${pressed})`, unit: 't/day', style: 'strong' },
    { name: 'liquid', label: 'Liquid to the store', value: '={slurry}-{cake}', unit: 't/day', note: 'slurry less pressed fibre' },
    { name: 'liquidDm', label: 'Dry matter of that liquid', value: `=BEDDING.FIBRE.LIQUIDDM(${pressed})`, unit: 'fraction' },
    { name: 'dried', label: 'Dried fibre', value: `=BEDDING.DRYING.YIELD({cake},${dms})`, unit: 't/day', style: 'strong' },
    { name: 'water', label: 'Water to carry off', value: '={cake}-{dried}', unit: 't/day', note: 'pressed less dried fibre' },
    { name: 'runtime', label: 'Press runs', value: `=BEDDING.FIBRE.RUNTIME({slurry},${inUse('Press t per hour running')})`, unit: 'h/day' },
    {
      label: 'Buffer tank must hold',
      value: `=BEDDING.FIBRE.BUFFER({slurry},${inUse('Press hours a day')})`,
      unit: 'm³',
      format: 'one',
      note: 'FIBRE.BUFFER: what comes while the press is off, and a tenth more',
    },
  ]);
}

/** The same line for the year’s mean and for the coldest month. */
const both = (formula: (month: string) => string): readonly Content[] =>
  ['Outdoor', 'Coldest month'].map((when) => formula(inUse(`${when} temperature`, `${when} humidity`)));

function airAndHeat(page: SheetBuilder): void {
  page.part('Air and heat').headings('', 'year’s mean', 'coldest month', 'unit', 'where from');
  page.facts([
    {
      label: 'Outdoor air',
      value: [`=${inUse('Outdoor temperature')}`, `=${inUse('Coldest month temperature')}`],
      unit: '°C',
      note: 'Inputs',
    },
    {
      label: 'Its humidity',
      value: [`=${inUse('Outdoor humidity')}`, `=${inUse('Coldest month humidity')}`],
      unit: 'fraction',
      note: 'Inputs',
    },
    {
      name: 'supply',
      label: 'Warm air into the drum',
      value: [`=${figure('Supply temperature')}`, `=${figure('Supply temperature, coldest month')}`],
      unit: '°C',
      note: 'BUDGET.HERD: the lower of what water and heat give',
    },
    {
      name: 'heat',
      label: 'Heat the air takes up',
      value: both((month) => `=BEDDING.DRYING.HEAT(${air},${month},{supply},${airState})`),
      unit: 'kW',
    },
    {
      name: 'evaporation',
      label: 'Water the air carries off',
      value: both((month) => `=BEDDING.DRYING.EVAPORATION(${air},${month},{supply},${airState},${dryerState})`),
      unit: 'kg/h',
    },
    {
      name: 'output',
      label: 'Dried fibre',
      value: both((month) => `=BEDDING.DRYING.OUTPUT(${dms},${air},${month},{supply},${airState},${dryerState})`),
      unit: 'kg/h',
      style: 'strong',
    },
    {
      name: 'heatPerKg',
      label: 'Heat for each kg of water',
      value: both(() => '={heat}*3.6/{evaporation}'),
      unit: 'MJ/kg',
      note: 'kW × 3.6 ÷ kg/h; drums are said to take 4.6 to 9.2',
    },
  ]);
}

function exhaust(page: SheetBuilder): void {
  page
    .newPage()
    .part('The air that leaves the drum', 'At the year’s mean; anything colder than its dew point in its way drips. From DRYING.EXHAUST.')
    .spill({
      name: 'exhaust',
      formula: `=BEDDING.DRYING.EXHAUST(${air},${outdoor},{supply},${airState},${dryerState})`,
      rows: 8,
      formats: [undefined, 'three', undefined],
    });
  const table = page.at('exhaust');
  page.called('exhaustKeys', columnIn(table, 0)).called('exhaustValues', columnIn(table, 1));
}

function stages(page: SheetBuilder): void {
  page.part('Which stage sets the limit').facts([
    {
      name: 'need',
      label: 'The beds need',
      value: `=${figure('Fibre needed')}/${inUse('Housed days')}`,
      unit: 't/day',
      note: 'BUDGET.HERD: a year’s over the housed days',
    },
    {
      name: 'cakeHour',
      label: 'Press gives, while it runs',
      value: `=BEDDING.FIBRE.CAKE(${inUse('Press t per hour running')},${pressed})`,
      unit: 't/h',
    },
    {
      name: 'pressHours',
      label: 'Press can run',
      value: `=${inUse('Press hours a day')}*${inUse('Minutes on')}/(${inUse('Minutes on')}+${inUse('Minutes off')})`,
      unit: 'h/day',
      note: 'hours switched on × minutes on ÷ (on + off)',
    },
  ]);
  page.row++;
  page.spill({
    name: 'stages',
    formula: `=BEDDING.PLANT.CAPACITY({need},{cake},{cakeHour},{pressHours},${dms},{evaporation},${inUse('Dryer hours a day')})`,
    rows: 3,
    formats: [undefined, 'two', 'two', undefined],
  });
  page.called('covers', columnIn(page.at('stages'), 2));
}

function statedOutput(page: SheetBuilder): void {
  const stated = inUse('Stated output m3 per hour');
  const given = (formula: string) => `=IF(${stated}="","–",${formula})`;
  page.newPage();
  page.part('The stated output, line by line').facts([
    { label: 'Stated output', value: given(stated), unit: 'm³/h', note: 'Inputs' },
    { name: 'density', label: 'Dried fibre weighs', value: `=${figure('Dried fibre density')}`, unit: 'kg/m³', note: 'BUDGET.HERD' },
    {
      name: 'statedKg',
      label: 'So the stated output weighs',
      value: given(`${stated}*{density}`),
      unit: 'kg/h',
      note: 'volume × density; where kg/h is stated, type it ÷ this density on Inputs',
    },
    {
      name: 'statedWater',
      label: 'Water that must be carried off for it',
      value: given(`BEDDING.DRYING.WATER({statedKg},${dms})`),
      unit: 'kg/h',
    },
    {
      name: 'full',
      label: 'Let the air leave saturated',
      value: 1,
      unit: 'fraction',
      format: 'percent',
      note: 'the most that air can ever hold',
    },
    {
      name: 'none',
      label: 'and lose no heat on the way',
      value: 0,
      unit: 'fraction',
      format: 'percent',
      note: 'better than any real dryer',
    },
    {
      name: 'most',
      label: 'Most water this air can carry off',
      value: `=BEDDING.DRYING.EVAPORATION(${air},${outdoor},{supply},${airState},{full},{none})`,
      unit: 'kg/h',
    },
    {
      name: 'claim',
      label: 'Stated output against the air',
      value: given(`BEDDING.DRYING.CLAIM({statedKg},${dms},${air},${outdoor},{supply},${airState})`),
      unit: 'times',
      style: 'strong',
      note: 'DRYING.CLAIM: up to 1 possible; to 1.25 measure it; above, not with this air where it holds at the best too',
    },
    {
      name: 'best',
      label: 'The same at the best for the supplier',
      value: given(figure('Stated output at best')),
      unit: 'times',
      note: 'BUDGET.HERD: light fibre, and air as hot as the water',
    },
    {
      label: 'In words',
      value: `=IF(ISNUMBER({claim}),IF({claim}<=1,"possible, but measure it",IF({claim}<=${SELF_HEATING_RATIO},"measure it",IF(AND(ISNUMBER({best}),{best}>${SELF_HEATING_RATIO}),"not with this air","weigh the fibre first"))),"–")`,
      unit: '',
      style: 'check',
      format: 'text',
      note: 'ask the supplier for air, temperatures and dry matters in and out',
    },
    {
      name: 'air',
      label: 'Air it would take',
      value: given(`BEDDING.DRYING.AIRNEEDED({statedKg},${dms},${outdoor},{supply},${airState},${dryerState})`),
      unit: 'm³/h',
      format: 'whole',
      note: 'DRYING.AIRNEEDED, at the exhaust humidity and heat loss of Inputs',
    },
    {
      name: 'airHeat',
      label: 'Heat to warm that air as far',
      value: given(`BEDDING.DRYING.HEAT({air},${outdoor},{supply},${airState})`),
      unit: 'kW',
      format: 'whole',
      note: 'DRYING.HEAT: more air is no use without it; compare with the heat above',
    },
    {
      label: 'Drum it would take',
      value: orDash(`BEDDING.DRYING.DRUMNEEDED(${inUse('Stated output m3 per hour', 'Stated retention hours', 'Drum fill')})`),
      unit: 'm³',
      format: 'one',
      note: 'DRYING.DRUMNEEDED: stated output × stated hours ÷ fill',
    },
    { label: 'Drum there is', value: `=IF(${inUse('Drum m3')}="","–",${inUse('Drum m3')})`, unit: 'm³', format: 'one', note: 'Inputs' },
  ]);
}

export function dryingSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder('Fibre and drying', [180, 70, 70, 70, 70, 70, 70, 70, 70, 70, 80], {
    blank,
    landscape: true,
    dashes: true,
  });
  page.title(
    'Fibre and drying',
    'From slurry to dried fibre: mass, water, air and heat, stage by stage; month by month see Months.',
    lackingLine,
  );
  massBalance(page);
  airAndHeat(page);
  exhaust(page);
  stages(page);
  statedOutput(page);
  return page;
}
