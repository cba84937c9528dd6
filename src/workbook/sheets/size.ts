import { asGiven, onceTyped, orDash } from '../grid.ts';
import { type Content, type Fact, SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse, items, values } from './inputs.ts';

/** What BUDGET.SIZE lists, in its order. */
const sized = [
  'Slurry per cow',
  'Press t per hour running',
  'Air m3 per hour',
  'Heat available kW',
  'Hot water litres per hour',
  'Drum m3',
  'Buffer m3',
];
const formats = ['whole', 'one', 'whole', 'one', 'whole', 'one', 'one'] as const;

interface Pages {
  readonly months: SheetBuilder;
  readonly drying: SheetBuilder;
}

function asked(page: SheetBuilder, months: SheetBuilder): void {
  const typed = (name: string, label: string, value: number, unit: Fact['unit'], format: Fact['format'], note: string): Fact => ({
    name,
    label,
    value,
    unit,
    note,
    style: 'input',
    ...(format && { format }),
  });
  page.part('What is asked of the kit').facts([
    typed('margin', 'More than the beds need, by', 0.1, 'fraction', 'percent', 'a tenth: common practice, no source'),
    typed('stay', 'Fibre is to stay in the drum', 4, 'hours', 'one', 'ask the supplier, and your vet, what it must reach'),
    typed('fall', 'The hot water may cool in the heater by', 15, 'K', 'one', 'ask the heating engineer'),
    {
      label: 'The worst month is',
      value: `=IF(${months.from('gaps')}=0,"the worst of Months, for each line its own","the coldest month of Inputs: Months is not filled in")`,
      unit: '',
      format: 'text',
      note: '',
    },
  ]);
}

/** A word on each line. What is not given is never enough. */
function wordOn(row: number, what: string): string {
  const [now, needed, times] = [`C${row}`, `D${row}`, `E${row}`];
  if (what === 'Buffer m3') return `=IF(ISNUMBER(${needed}),"hold your tank against it","")`;
  const given = `IF(NOT(ISNUMBER(${now})),"not given",IF(${times}>1,"too small","enough"))`;
  return `=IF(ISERROR(${needed}),"cannot be had: point at it and it says why",IF(ISNUMBER(${needed}),${given},""))`;
}

function least(page: SheetBuilder, months: SheetBuilder): void {
  page.part(
    'The least kit for this herd in its worst month',
    'The beds are covered only where every line is enough. Air and heat are at the temperature that the hot water gives with litres enough. Figures to begin with: design, guards and connection are for licensed engineers. From BUDGET.SIZE.',
  );
  const table = `IF(${months.from('gaps')}=0,${asGiven(months.from('months'))},"")`;
  const head = page.row;
  page.spill({
    name: 'size',
    formula: `=IF(ISNUMBER(${figure('Fibre needed')}),BEDDING.BUDGET.SIZE(${items},${values},${table},{margin},{stay},{fall}),"–")`,
    formats: [undefined, undefined, 'general', 'general', 'two'],
    says: sized.map((what) => [what, 'litres/day']),
  });
  page.put(`F${head}`, 'in words', 'heading');
  sized.forEach((what, k) => {
    const row = head + 1 + k;
    const format = formats[k] ?? 'general';
    page
      .across(`C${row}`, ['', ''], 'output', { format, align: 'right' })
      .put(`F${row}`, wordOn(row, what), 'output', { says: ['cannot be had: point at it and it says why'] })
      .called(`${what} needed`, `D${row}`);
  });
  page.rule(`F${head + 1}:F${page.row - 1}`, `OR(F${head + 1}="too small",LEFT(F${head + 1},6)="cannot")`, 'watch');
}

function drum(page: SheetBuilder, blank: boolean, drying: SheetBuilder): void {
  const worked = (name: string, label: string, formula: string, unit: Fact['unit'], note: string, more: Partial<Fact> = {}): Fact => ({
    name,
    label,
    value: onceTyped(formula),
    unit,
    note,
    ...more,
  });
  const given = (value: number): Content => (blank ? '' : value);
  const [supply, exhaust, outdoor] = [figure('Supply temperature'), figure('Exhaust temperature'), inUse('Outdoor temperature')];
  const stays = `BEDDING.DRYING.RETENTION(${inUse('Drum m3', 'Drum fill')},${figure('Dried fibre density')},${figure('Dried output')})`;
  page
    .part(
      'The drum: heat through its skin, room and time',
      'A bare drum often loses more than the heat loss that is taken where none is typed.',
    )
    .facts([
      {
        name: 'diameter',
        label: 'Drum, diameter',
        value: given(1.6),
        unit: 'm',
        style: 'input',
        format: 'two',
        note: 'a tape, over the skin',
      },
      { name: 'length', label: 'Drum, length', value: given(5.5), unit: 'm', style: 'input', format: 'two', note: 'a tape' },
      {
        name: 'u',
        label: 'Heat through the skin',
        value: 6,
        unit: 'W/m²·K',
        style: 'input',
        format: 'one',
        note: 'bare steel about 6; lagged less: ask its maker',
      },
      worked(
        'loss',
        'The skin loses',
        `BEDDING.DRYING.SHELLLOSS({diameter},{length},(${supply}+${exhaust})/2,${outdoor},{u})`,
        'kW',
        'DRYING.SHELLLOSS, inside at the mean of supply and exhaust',
        {
          style: 'strong',
        },
      ),
      worked('share', 'as a share of the heat put in', `{loss}/${drying.from('heat')}`, 'fraction', 'over DRYING.HEAT of Fibre and drying'),
      {
        name: 'taken',
        label: 'Heat loss in the plan',
        value: `=${inUse('Heat loss')}`,
        unit: 'fraction',
        note: 'Inputs: skin, leaks and start-up together',
      },
      worked(
        'verdict',
        'In words',
        'IF({share}>{taken},"the skin alone loses more: raise Heat loss or lag the drum","less than the plan’s heat loss: leaks and start-up have the rest")',
        '',
        '',
        {
          style: 'check',
          format: 'text',
        },
      ),
      worked('volume', 'The drum holds, by the tape', 'PI()/4*{diameter}^2*{length}', 'm³', 'hold it against Drum m3 on Inputs', {
        format: 'one',
      }),
      {
        name: 'drumNow',
        label: 'Drum m3 in the plan',
        value: orDash(`IF(${inUse('Drum m3')}="","–",${inUse('Drum m3')})`),
        unit: 'm³',
        format: 'one',
        note: 'Inputs',
      },
      {
        name: 'stays',
        label: 'Fibre stays in it',
        value: orDash(stays),
        unit: 'hours',
        note: 'DRYING.RETENTION at the fill of Inputs and the calculated output',
      },
      {
        label: 'In words',
        value:
          '=IF(ISNUMBER({stays}),IF({stays}<{stay},"shorter than asked above","as long as asked, or longer"),"give Drum m3 and Drum fill on Inputs")',
        unit: '',
        style: 'check',
        format: 'text',
        note: '',
      },
    ]);
}

/** The size that the worst month asks for, beside what is planned: where a specification begins. */
export function sizeSheet(blank: boolean, { months, drying }: Pages): SheetBuilder {
  const page = new SheetBuilder('Size', [230, 80, 90, 90, 80, 260], { blank, landscape: true });
  page.title('Size', 'The least press, air, heat, water, drum and tank that cover this herd in its worst month.', lackingLine);
  asked(page, months);
  least(page, months);
  drum(page, blank, drying);
  return page;
}
