import { onceTyped } from '../grid.ts';
import { type Fact, SheetBuilder } from '../sheet-builder.ts';
import { air, airState, dms, dryerState, outdoor } from './drying-arguments.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse } from './inputs.ts';

/** Read or typed on the walk. */
const read = (name: string, label: string, value: number, unit: Fact['unit'], note: string, format: Fact['format'] = 'general'): Fact => ({
  name,
  label,
  value,
  unit,
  note,
  format,
  style: 'input',
});

const worked = (label: string, formula: string, unit: Fact['unit'], note: string, more: Partial<Fact> = {}): Fact => ({
  label,
  value: onceTyped(formula),
  unit,
  note,
  ...more,
});

const density = figure('Dried fibre density');
const output = figure('Dried output');

const parts: readonly (readonly [heading: string, facts: readonly Fact[]])[] = [
  [
    'Fan: what the Hz on the drive mean',
    [
      read('plate', 'Air on the fan’s plate', 4000, 'm³/h', 'the plate'),
      read('plateHz', 'at', 50, 'Hz', 'the plate'),
      read('plateKw', 'Fan motor', 3, 'kW', 'the plate'),
      read('setHz', 'The drive is set to', 36, 'Hz', 'the drive’s display'),
      worked(
        'so the fan moves',
        'BEDDING.PLANT.FANFLOW({plate},{plateHz},{setHz})',
        'm³/h',
        'PLANT.FANFLOW: compare with Air m3 per hour on Inputs',
        {
          format: 'whole',
          style: 'strong',
        },
      ),
      worked(
        'and its shaft takes',
        'BEDDING.PLANT.FANPOWER({plateKw},{plateHz},{setHz})',
        'kW',
        'PLANT.FANPOWER: with the cube of the speed',
      ),
      worked(
        'Air that the beds’ need would take',
        `BEDDING.DRYING.AIRNEEDED(1000*${figure('Fibre needed')}/${inUse('Housed days')}/${inUse('Dryer hours a day')},${dms},${outdoor},${figure('Supply temperature')},${airState},${dryerState})`,
        'm³/h',
        'DRYING.AIRNEEDED in the dryer’s hours, at the same temperature',
        { name: 'airNeeded', format: 'whole' },
      ),
      worked(
        'and the Hz for it',
        'BEDDING.PLANT.FANHZ({plate},{plateHz},{airNeeded})',
        'Hz',
        'PLANT.FANHZ: stay within what fan and drive allow',
        { format: 'one' },
      ),
    ],
  ],
  [
    'Drum: turns and time',
    [
      read('turn', 'One turn takes', 4, 'minutes', 'a chalk mark and a watch'),
      read('turnHz', 'at', 25, 'Hz', 'the drive’s display'),
      read('drumHz', 'The drum is set to', 24, 'Hz', 'the drive’s display'),
      worked('so one turn takes', 'BEDDING.PLANT.TURN({turn},{turnHz},{drumHz})', 'minutes', 'PLANT.TURN', {
        name: 'turnNow',
        format: 'one',
      }),
      worked(
        'Fibre stays in the drum',
        `BEDDING.DRYING.RETENTION(${inUse('Drum m3', 'Drum fill')},${density},${output})`,
        'hours',
        'DRYING.RETENTION at the calculated output',
        {
          name: 'stay',
          style: 'strong',
        },
      ),
      worked('and turns over', '{stay}*60/{turnNow}', '', 'hours × 60 ÷ minutes per turn: times', { format: 'whole' }),
    ],
  ],
  [
    'Press: minutes on and off, and samples',
    [
      worked(
        'Slurry the press takes in a day',
        `BEDDING.FIBRE.THROUGHPUT(${inUse('Press t per hour running', 'Minutes on', 'Minutes off', 'Press hours a day')})`,
        't/day',
        'FIBRE.THROUGHPUT, with the minutes and hours of Inputs',
        { style: 'strong' },
      ),
      worked('Slurry that comes', figure('Slurry'), 't/day', 'BUDGET.HERD'),
      read('wet', 'Sample of pressed fibre, wet', 412, 'g', 'kitchen scales; container and all'),
      read('dry', 'the same dried to the end', 168, 'g', 'microwave or oven, until it loses under 1 g'),
      read('container', 'the container alone', 42, 'g', 'weigh it empty'),
      worked(
        'so its dry matter is',
        'BEDDING.MATERIAL.OVENDM({wet},{dry},{container})',
        'fraction',
        'MATERIAL.OVENDM: type it into Inputs',
        { name: 'sampleDm' },
      ),
      read('liquid', 'Dry matter of the liquid', 0.055, 'fraction', 'a sample sent in', 'percent1'),
      worked(
        'so the press catches',
        `BEDDING.FIBRE.CAPTURE(${inUse('Slurry dry matter')},{sampleDm},{liquid})`,
        'fraction',
        'FIBRE.CAPTURE, with the slurry sample of Inputs: type it into Inputs',
        {
          style: 'strong',
        },
      ),
    ],
  ],
  [
    'Heater: what the thermometers mean',
    [
      read('flowC', 'Water in', 78, '°C', 'the thermometer on the flow'),
      read('returnC', 'Water back', 62, '°C', 'the thermometer on the return'),
      worked(
        'so the water gives',
        `BEDDING.DRYING.HOTWATER(${inUse('Hot water litres per hour')},{flowC},{returnC})`,
        'kW',
        'DRYING.HOTWATER, with the litres of Inputs',
        { style: 'strong' },
      ),
      read('airC', 'Air into the drum', 66, '°C', 'a thermometer in the duct'),
      worked(
        'so the heater’s effectiveness is',
        `BEDDING.DRYING.EFFECTIVENESS(${air},${outdoor},{airC},${inUse('Hot water litres per hour')},{flowC},${airState})`,
        'fraction',
        'DRYING.EFFECTIVENESS, if that was read at the outdoor air of Inputs: type it into Inputs',
      ),
    ],
  ],
  [
    'Chimney: what it blows out',
    [
      read('diameter', 'Chimney’s inner diameter', 0.45, 'm', 'a tape'),
      read('particle', 'A wet fibre crumb weighs', 600, 'kg/m³', 'a guess: the crumb, not the heap', 'whole'),
      worked(
        'Air goes up at',
        `BEDDING.PLANT.CHIMNEYSPEED(${figure('Exhaust flow')},{diameter})`,
        'm/s',
        'PLANT.CHIMNEYSPEED, with the exhaust flow of Figures',
        { name: 'speed' },
      ),
      worked(
        'and carries out crumbs up to',
        `BEDDING.PLANT.CARRYOVER({speed},{particle},${figure('Exhaust temperature')})`,
        'mm',
        'PLANT.CARRYOVER: coarser ones fall back',
        {
          style: 'strong',
          format: 'two',
        },
      ),
    ],
  ],
  [
    'Bedding round and bought bedding',
    [
      read('length', 'Bed, length', 1.8, 'm', 'a tape'),
      read('width', 'width', 1.15, 'm', 'a tape'),
      read('depth', 'depth laid each time', 0.005, 'm', 'a ruler, the mean of several beds'),
      worked('so a cubicle gets', 'BEDDING.DEMAND.DEPTH({length},{width},{depth})', 'litres', 'DEMAND.DEPTH: compare with Inputs', {
        format: 'one',
        style: 'strong',
      }),
      read('dispenser', 'The dispenser holds', 1.5, 'm³', 'its plate, heaped as it is used'),
      worked(
        'Loads each time',
        `BEDDING.DEMAND.LOADS(${inUse('Cubicles', 'Bedding litres per cubicle each time')},{dispenser})`,
        'loads',
        'DEMAND.LOADS',
        { format: 'whole' },
      ),
      read('minutes', 'One load takes', 14, 'minutes', 'a watch: fill, spread, back'),
      worked(
        'so spreading takes',
        `BEDDING.COST.SPREADING(${inUse('Cubicles', 'Bedding litres per cubicle each time', 'Days between beddings')},{dispenser},{minutes},${inUse('Housed days')})`,
        'h/year',
        'COST.SPREADING',
        { format: 'whole' },
      ),
      read('store', 'Bought bedding under cover', 30, 'm³', 'length × width × height; home-made fibre is for use, not for keeping'),
      worked(
        'covers so many days',
        `BEDDING.DRYING.STOCKDAYS({store},BEDDING.MATERIAL.DENSITY(${inUse('Material now')}),${figure('Bought needed')}/${inUse('Housed days')})`,
        'days',
        'DRYING.STOCKDAYS: what fills a winter gap',
        {
          format: 'one',
          style: 'strong',
        },
      ),
    ],
  ],
  [
    'Power in a day',
    [
      worked(
        'Press',
        `BEDDING.PLANT.ELECTRICITY(${inUse('Press motor kW')},${figure('Press hours needed')}*${inUse('Minutes on')}/(${inUse('Minutes on')}+${inUse('Minutes off')}))`,
        'kWh',
        'PLANT.ELECTRICITY, in the hours needed',
        {
          format: 'one',
        },
      ),
      worked(
        'Fan and drum',
        `BEDDING.PLANT.ELECTRICITY(${inUse('Fan and drum motors kW')},${figure('Dryer hours needed')})`,
        'kWh',
        'PLANT.ELECTRICITY, in the hours needed',
        { format: 'one' },
      ),
    ],
  ],
];

export function settingsSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder('Settings', [240, 100, 100, 520], { blank });
  page.title('Settings', 'What is read on the walk, and what it means. Type into the tinted cells.', lackingLine);
  for (const [heading, facts] of parts) {
    page.part(heading).facts(facts.map((fact) => (fact.style === 'input' ? { ...fact, value: page.given(fact.value as number) } : fact)));
  }
  return page;
}
