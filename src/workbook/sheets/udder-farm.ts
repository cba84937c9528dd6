import { beddingStates } from '../../domain/bedding-counts.ts';
import { onceTyped } from '../grid.ts';
import type { SheetBuilder } from '../sheet-builder.ts';
import { figure } from './figures.ts';
import { copied, inUse } from './inputs.ts';
import { countedGerms, countUnits, looksLikeLog, perVolume } from './laboratory-count.ts';

/** What cases cost, how many more the plan would bear, and what the farm’s own books say of them. */
export function mastitis(page: SheetBuilder): void {
  page.newPage();
  page.part('What mastitis would cost, and how much more would eat what the kit earns').facts([
    { label: 'Cases per 100 now', value: copied('Cases per 100 now'), unit: 'per 100 cows/year', note: 'Inputs' },
    {
      label: 'They cost the herd',
      value: `=BEDDING.UDDER.COST(${inUse('Cases per 100 now', 'Cows', 'Cost per mastitis case')})`,
      unit: 'per year',
      note: 'UDDER.COST',
    },
    {
      name: 'more',
      label: 'Extra cases to try',
      value: 10,
      unit: 'per 100 cows/year',
      format: 'whole',
      style: 'input',
      note: 'your own figure; change it',
    },
    {
      label: 'that is, in this herd',
      value: `={more}*${inUse('Cows')}/100`,
      unit: 'cases',
      format: 'one',
      note: 'a year: cases per 100 cows × cows ÷ 100',
    },
    {
      label: 'they would cost the herd',
      value: `=BEDDING.UDDER.COST({more},${inUse('Cows', 'Cost per mastitis case')})`,
      unit: 'per year',
      note: 'UDDER.COST',
    },
    {
      name: 'even',
      label: 'Extra cases that would take the NPV to 0',
      value: `=${figure('Mastitis cases to NPV 0')}`,
      unit: 'per 100 cows/year',
      style: 'strong',
      note: 'BUDGET.HERD, every year of the kit’s life; clinical cases only: those that do not show cost as much again. –: it earns nothing to eat, or is not known',
    },
    {
      label: 'that is, in this herd',
      value: `={even}*${inUse('Cows')}/100`,
      unit: 'cases',
      format: 'one',
      note: 'a year: cases per 100 cows × cows ÷ 100',
    },
  ]);
  page.part('From the farm’s own books').facts([
    {
      name: 'cases',
      label: 'Clinical cases',
      value: page.given(58),
      unit: 'cases',
      format: 'whole',
      style: 'input',
      note: 'the medicine book',
    },
    {
      name: 'days',
      label: 'over so many days',
      value: page.given(243),
      unit: 'days',
      format: 'whole',
      style: 'input',
      note: 'the same book',
    },
    {
      label: 'so many per 100 cows a year',
      speaks: true,
      value: onceTyped(`BEDDING.UDDER.RATE({cases},${inUse('Cows')},{days})`),
      unit: 'per 100 cows/year',
      note: 'UDDER.RATE: type it into Inputs',
    },
    ...[62, 41, 14, 4].map((cows, k) => ({
      name: `udder${k + 1}`,
      label: `Cows scoring ${k + 1} for dirt on the udder`,
      value: page.given(cows),
      unit: 'cows' as const,
      format: 'whole' as const,
      style: 'input' as const,
      note: k === 0 ? 'score a whole row: 1 clean, 4 caked' : '',
    })),
    {
      label: 'share scoring 3 or 4',
      speaks: true,
      value: onceTyped('BEDDING.UDDER.DIRTY({udder1},{udder2},{udder3},{udder4})'),
      unit: 'fraction',
      note: 'UDDER.DIRTY: type it into Inputs',
    },
  ]);
}

/** One report of the laboratory against the published benchmark; the months stand on Records. */
export function laboratory(page: SheetBuilder): void {
  page
    .part(
      'A laboratory’s count of the bedding',
      'One report beside the published benchmark; keep every report on Records. Counts predict mastitis poorly: see the studies below, and ask your vet.',
    )
    .facts([
      {
        name: 'germ',
        label: 'Counted',
        value: page.given('coliforms'),
        unit: '',
        format: 'text',
        style: 'input',
        choices: countedGerms,
        note: 'choose',
      },
      {
        name: 'state',
        label: 'Bedding',
        value: page.given('used'),
        unit: '',
        format: 'text',
        style: 'input',
        choices: beddingStates,
        note: 'used: 3 to 6 cubicles on bedding day; unused: 1 to 3 samples',
      },
      {
        name: 'count',
        label: 'Count',
        value: page.given(60000),
        unit: '',
        format: 'general',
        style: 'input',
        note: 'as the report has it',
      },
      {
        name: 'unit',
        label: 'its unit',
        value: page.given('per g'),
        unit: '',
        format: 'text',
        style: 'input',
        choices: countUnits,
        note: 'as the report has it: a logarithm is a small number, such as 4.8',
      },
      {
        name: 'density',
        label: 'A litre of the sample weighs',
        value: page.given(420),
        unit: 'kg/m³',
        format: 'whole',
        style: 'input',
        note: 'grams a litre, as it lay; only for a count per g',
      },
      {
        name: 'perVolume',
        label: 'that is, per cubic centimetre',
        value: `=IF(OR({count}="",{unit}="",AND(RIGHT({unit},2)=" g",NOT(ISNUMBER({density})))),"–",IF(ISNUMBER({count}),${perVolume('{count}', '{unit}', '{density}')},"–"))`,
        unit: 'cfu/cm³',
        format: 'whole',
        note: 'per g: × density ÷ 1,000, as HYGIENE.PERVOLUME; log10: ten to its power',
      },
      {
        label: 'beside the published benchmark',
        speaks: true,
        value: '=IF(OR({germ}="",{state}="",NOT(ISNUMBER({perVolume}))),"–",BEDDING.HYGIENE.COUNT({germ},{state},{perVolume}))',
        unit: 'times',
        note: 'HYGIENE.COUNT',
      },
      {
        label: 'to look at',
        value: `=IF(${looksLikeLog('{count}', '{unit}')},"a logarithm? choose its unit","–")`,
        unit: '',
        format: 'text',
        style: 'check',
        note: 'so small a count is likelier to be a logarithm',
      },
    ]);
}
