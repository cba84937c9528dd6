import { type ItemKey, itemOf } from '../../budget/items.ts';
import { orDash } from '../grid.ts';
import type { Format } from '../model.ts';
import type { Fact, SheetBuilder } from '../sheet-builder.ts';
import { airState } from './drying-arguments.ts';
import { herdName, inUse } from './inputs.ts';

const typed = (
  page: SheetBuilder,
  name: string,
  label: string,
  invented: number,
  unit: Fact['unit'],
  format: Format,
  note: string,
): Fact => ({
  name,
  label,
  value: page.given(invented),
  unit,
  format,
  note,
  style: 'input',
});

/** Samples and buckets, once for all runs. */
function samples(page: SheetBuilder): void {
  page
    .part('Samples and buckets of the same days')
    .facts([
      typed(page, 'freshKg', 'Bucket of pressed fibre', 2.95, 'kg', 'two', 'filled as it falls, not pressed down; without the bucket'),
      typed(page, 'driedKgBucket', 'The same of dried fibre', 2.05, 'kg', 'two', 'the same bucket'),
      typed(page, 'litres', 'The bucket holds', 10, 'litres', 'one', 'weigh it full of water: a kg is a litre'),
      typed(page, 'slurryDm', 'Dry matter of the slurry', 0.074, 'fraction', 'percent1', 'stirred, as it reaches the press'),
      typed(page, 'cakeDm', 'of the pressed fibre', 0.342, 'fraction', 'percent1', 'the same hour'),
      typed(page, 'liquidDm', 'of the liquid', 0.0545, 'fraction', 'percent1', 'the same hour'),
    ]);
}

/** Saturation pressure in Pa over ice and over water: ASHRAE Handbook Fundamentals 2017, ch. 1, eq. 5 and 6. */
const overIce = (t: string): string => {
  const k = `(${t}+273.15)`;
  return `EXP(-5674.5359/${k}+6.3925247-0.009677843*${k}+6.2215701E-7*${k}^2+2.0747825E-9*${k}^3-9.484024E-13*${k}^4+4.1635019*LN${k})`;
};
const overWater = (t: string): string => {
  const k = `(${t}+273.15)`;
  return `EXP(-5800.2206/${k}+1.3914993-0.048640239*${k}+4.1764768E-5*${k}^2-1.4452093E-8*${k}^3+6.5459673*LN${k})`;
};
const enthalpy = (t: string, w: string): string => `1.006*${t}+${w}*(2501+1.86*${t})`;

/** The exhaust from a balance of water and heat, by hand: nothing here but native arithmetic. */
function balance(page: SheetBuilder): void {
  const mean = (name: string, label: string, unit: Fact['unit'], format: Format): Fact => ({
    name: `mean ${name}`,
    label,
    value: orDash(`AVERAGE({${name}})`),
    unit,
    format,
    note: 'mean of the runs',
  });
  const line = (name: string, label: string, formula: string, unit: Fact['unit'], format: Format, note: string): Fact => ({
    name,
    label,
    value: orDash(formula),
    unit,
    format,
    note,
  });
  page
    .part(
      'The exhaust by hand, at the means of the runs',
      'Air and vapour as perfect gases, after ASHRAE: what is carried off and the exhaust’s temperature give its humidity and the heat lost.',
    )
    .facts([
      mean('air', 'Air', 'm³/h', 'whole'),
      mean('outdoorC', 'Outdoor temperature', '°C', 'one'),
      mean('outdoorRh', 'Outdoor humidity', 'fraction', 'percent1'),
      mean('supplyC', 'Warm air', '°C', 'one'),
      mean('exhaustC', 'Exhaust', '°C', 'one'),
      mean('waterC', 'Hot water in', '°C', 'one'),
      mean('waterL', 'Hot water', 'litres/h', 'whole'),
      line(
        'pressure',
        'Pressure of the air',
        `101325*(1-2.25577E-5*${inUse('Altitude')})^5.2559`,
        '',
        'whole',
        'Pa; the standard atmosphere at the altitude of Inputs',
      ),
      line('ice', 'Saturation outdoors, over ice', overIce('{mean outdoorC}'), '', 'whole', 'Pa; eq. 5, for below 0 °C'),
      line('liquid water', 'over water', overWater('{mean outdoorC}'), '', 'whole', 'Pa; eq. 6, from 0 °C up'),
      line('outdoorPa', 'Saturation outdoors', 'IF({mean outdoorC}<0,{ice},{liquid water})', '', 'whole', 'Pa'),
      line('exhaustPa', 'Saturation in the exhaust', overWater('{mean exhaustC}'), '', 'whole', 'Pa; eq. 6'),
      line(
        'w1',
        'Humidity ratio outdoors',
        '0.621945*{mean outdoorRh}*{outdoorPa}/({pressure}-{mean outdoorRh}*{outdoorPa})',
        'kg/kg',
        'general',
        'eq. 12 and 20',
      ),
      line(
        'measuredC',
        'Air measured at',
        `IF(${inUse('Air measured at')}="supply",{mean supplyC},{mean outdoorC})`,
        '°C',
        'one',
        'as Inputs says',
      ),
      line('dryAir', 'Dry air', '{mean air}*{pressure}/(287.042*({measuredC}+273.15)*(1+1.607858*{w1}))', 'kg/h', 'whole', 'eq. 26'),
      line('w2', 'Humidity ratio of the exhaust', '{w1}+{water}/{dryAir}', 'kg/kg', 'three', 'water carried off over dry air'),
      line(
        'heldHeat',
        'Heat given to the air',
        `${enthalpy('{mean supplyC}', '{w1}')}-(${enthalpy('{mean outdoorC}', '{w1}')})`,
        '',
        'two',
        'kJ per kg of dry air; eq. 30',
      ),
      line(
        'lostHeat',
        'of which lost',
        `${enthalpy('{mean supplyC}', '{w1}')}+({w2}-{w1})*4.186*MAX({mean outdoorC},0)-(${enthalpy('{mean exhaustC}', '{w2}')})`,
        '',
        'two',
        'kJ per kg of dry air',
      ),
    ]);
}

interface Inverse {
  readonly item: ItemKey;
  readonly formula: string;
  readonly format: Format;
  /** The reading that it came from, and the same worked out forwards again from the value found. */
  readonly reading: string;
  readonly again: string;
  readonly how: string;
}

const outdoor = '{mean outdoorC},{mean outdoorRh}';
const carried = `BEDDING.DRYING.EVAPORATION({mean air},${outdoor},{mean supplyC},${airState},{exhaust_rh},{heat_loss})`;

const inverses: readonly Inverse[] = [
  {
    item: 'fresh_density_kg_m3',
    formula: '1000*{freshKg}/{litres}',
    format: 'whole',
    reading: '{freshKg}',
    again: '{fresh_density_kg_m3}*{litres}/1000',
    how: 'bucket ÷ litres',
  },
  {
    item: 'shrinkage',
    formula: '1-{fresh_density_kg_m3}*{cake_dm}/{target_dm}/(1000*{driedKgBucket}/{litres})',
    format: 'percent1',
    reading: '1000*{driedKgBucket}/{litres}',
    again: 'BEDDING.MATERIAL.DRIEDDENSITY({fresh_density_kg_m3},{cake_dm},{target_dm},{shrinkage})',
    how: 'from both buckets; again: MATERIAL.DRIEDDENSITY',
  },
  {
    item: 'cake_dm',
    formula: 'AVERAGE({wetDm})',
    format: 'percent1',
    reading: 'SUM({wetDm})',
    again: '{cake_dm}*COUNT({wetDm})',
    how: 'mean of the runs',
  },
  {
    item: 'target_dm',
    formula: 'AVERAGE({driedDm})',
    format: 'percent1',
    reading: 'SUM({driedDm})',
    again: '{target_dm}*COUNT({driedDm})',
    how: 'mean of the runs: what it reached, where the plan has an aim',
  },
  {
    item: 'capture',
    formula: 'BEDDING.FIBRE.CAPTURE({slurryDm},{cakeDm},{liquidDm})',
    format: 'percent1',
    reading: '{liquidDm}',
    again: 'BEDDING.FIBRE.LIQUIDDM({slurryDm},{cakeDm},{capture})',
    how: 'FIBRE.CAPTURE; again: FIBRE.LIQUIDDM',
  },
  {
    item: 'effectiveness',
    formula: `BEDDING.DRYING.EFFECTIVENESS({mean air},${outdoor},{mean supplyC},{mean waterL},{mean waterC},${airState})`,
    format: 'percent1',
    reading: '{mean supplyC}',
    again: `BEDDING.DRYING.SUPPLYTEMP({mean air},${outdoor},{mean waterL},{mean waterC},{effectiveness},${airState})`,
    how: 'DRYING.EFFECTIVENESS; again: DRYING.SUPPLYTEMP; where heat is short it is too low',
  },
  {
    item: 'exhaust_rh',
    formula: '{pressure}*{w2}/(0.621945+{w2})/{exhaustPa}',
    format: 'percent1',
    reading: '{water}',
    again: carried,
    how: 'by hand below; again: DRYING.EVAPORATION',
  },
  {
    item: 'heat_loss',
    formula: '{lostHeat}/{heldHeat}',
    format: 'percent1',
    reading: '{water}',
    again: carried,
    how: 'by hand below; again: DRYING.EVAPORATION',
  },
];

/** Where each of them stands has to be known before the first is written: they rest on each other. */
function nameCells(page: SheetBuilder, first: number): void {
  inverses.forEach(({ item }, k) => {
    page.called(item, `B${first + k}`);
  });
}

export function backIntoThePlan(page: SheetBuilder): void {
  page.newPage();
  samples(page);
  page
    .part(
      'What was measured, for the plan',
      'Put a value into the plan from the survey in the panel, or type it on Inputs; nothing is overwritten by itself. Read forwards again, each must give the reading that it came from.',
    )
    .headings('item', 'measured', 'in use now', 'unit', 'result', '', 'reading', 'read again', 'where from');
  nameCells(page, page.row);
  for (const { item: key, formula, format, reading, again, how } of inverses) {
    const item = itemOf(key);
    const [lowest, highest] = item.parameter.range as [number, number];
    const row = page.row;
    const agrees = `ABS(G${row}-H${row})<=0.000001*MAX(1,ABS(G${row}))`;
    page
      .put(`B${row}`, orDash(formula), 'strong', { format, align: 'right' })
      .put(`C${row}`, orDash(inUse(item.name)), 'output', { format, align: 'right' })
      .put(`D${row}`, item.parameter.unit === 'fraction' ? '%' : item.parameter.unit, 'note')
      .put(
        `E${row}`,
        `=IF(NOT(ISNUMBER(B${row})),"not read yet",IF(OR(B${row}<${lowest},B${row}>${highest}),"cannot be: read again",IF(NOT(ISNUMBER(H${row})),"not checked",IF(${agrees},"OK, for Inputs","does not agree"))))`,
        'check',
        { says: ['cannot be: read again'] },
      )
      .put(`G${row}`, orDash(reading), 'note', { format: 'three', align: 'right' })
      .called(`${key} again`, `H${row}`)
      .put(`H${row}`, orDash(again), 'note', { format: 'three', align: 'right' })
      .put(`I${row}`, how, 'note')
      .line([item.name], 'label');
  }
  const results = `E${page.row - inverses.length}:E${page.row - 1}`;
  const first = results.split(':')[0] as string;
  page
    .rule(results, `LEFT(${first},2)="OK"`, 'good')
    .rule(results, `LEFT(${first},3)="not"`, 'quiet')
    .rule(results, `LEFT(${first},6)="cannot"`, 'bad')
    .rule(results, `LEFT(${first},4)="does"`, 'bad');
  balance(page);
  page
    .called('outputWords', `A${page.row}`)
    .line(
      [
        `=IF(ISNUMBER({correctedMean}),"; corrected output "&TEXT({correctedMean},"#,##0.0")&" kg/h"&IF(ISNUMBER({correctedLow})," ("&TEXT({correctedLow},"#,##0.0")&" to "&TEXT({correctedHigh},"#,##0.0")&")","")&", stated "&TEXT({statedKg},"#,##0.0")&" kg/h","")`,
      ],
      'note',
    )
    .called('herdLine', `A${page.row}`)
    .line([`="Herd: "&IF(${herdName}="","–",${herdName})&"; runs on record: "&COUNT({hours})&{outputWords}&"."`], 'note');
}
