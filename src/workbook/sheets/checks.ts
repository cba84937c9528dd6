import { orDash } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse } from './inputs.ts';

interface Pages {
  readonly drying: SheetBuilder;
  readonly investment: SheetBuilder;
  readonly options: SheetBuilder;
  readonly plans: SheetBuilder;
  readonly months: SheetBuilder;
  readonly size: SheetBuilder;
  readonly records: SheetBuilder;
  readonly sums: SheetBuilder;
  readonly acceptance: SheetBuilder;
}

type Check = readonly [words: string, found: string, wanted: string];

/** The state of the exhaust by its key. */
const exhaustOf = (drying: SheetBuilder, key: string): string => {
  const [keys, values] = [drying.from('exhaustKeys'), drying.from('exhaustValues')];
  return `INDEX(${values},MATCH("${key}",${keys},0))`;
};

/** The dryer’s heat and water, balanced with nothing but native arithmetic. */
function energyBalance(page: SheetBuilder, drying: SheetBuilder): void {
  const evaporation = drying.from('evaporation');
  page
    .part(
      'The dryer’s energy, by hand',
      'Air and vapour as perfect gases, after ASHRAE: h = 1.006 T + W (2501 + 1.86 T), kJ per kg of dry air.',
    )
    .facts([
      { name: 'dry', label: 'Heat capacity of dry air', value: 1.006, unit: '', format: 'three', note: 'kJ/kg·K' },
      { name: 'vapour', label: 'of vapour', value: 1.86, unit: '', format: 'three', note: 'kJ/kg·K' },
      { name: 'latent', label: 'Heat in vapour at 0 °C', value: 2501, unit: '', format: 'whole', note: 'kJ/kg' },
      { name: 'liquid', label: 'Heat capacity of water', value: 4.186, unit: '', format: 'three', note: 'kJ/kg·K' },
      {
        name: 'we',
        label: 'Humidity ratio of the exhaust',
        value: `=${exhaustOf(drying, 'humidity ratio')}`,
        unit: 'kg/kg',
        format: 'three',
        note: 'DRYING.EXHAUST',
      },
      {
        name: 'te',
        label: 'Temperature of the exhaust',
        value: `=${exhaustOf(drying, 'temperature')}`,
        unit: '°C',
        note: 'DRYING.EXHAUST',
      },
      {
        name: 'mass',
        label: 'Dry air',
        value: `=(3600*${drying.from('heat')}/(${drying.from('supply')}-${inUse('Outdoor temperature')})+{vapour}*${evaporation})/({dry}+{vapour}*{we})`,
        unit: 'kg/h',
        note: 'from heat, temperatures and water',
      },
      {
        name: 'w1',
        label: 'Humidity ratio outdoors',
        value: `={we}-${evaporation}/{mass}`,
        unit: 'kg/kg',
        format: 'three',
        note: 'water balance',
      },
      {
        name: 'hOut',
        label: 'Heat gained by the air, outdoors to exhaust',
        value: `={mass}*({dry}*({te}-${inUse('Outdoor temperature')})+{we}*({latent}+{vapour}*{te})-{w1}*({latent}+{vapour}*${inUse('Outdoor temperature')}))/3600`,
        unit: 'kW',
        note: 'enthalpies',
      },
      {
        name: 'hFeed',
        label: 'Heat that came with the wet fibre’s water',
        value: `=${evaporation}*{liquid}*MAX(${inUse('Outdoor temperature')},0)/3600`,
        unit: 'kW',
        note: 'water at the outdoor temperature',
      },
      {
        name: 'hIn',
        label: 'Heat put in less what is lost',
        value: `=${drying.from('heat')}*(1-${inUse('Heat loss')})`,
        unit: 'kW',
        note: 'DRYING.HEAT',
      },
    ]);
}

function checksOf({ drying, investment, options, plans, months, size, records, sums, acceptance }: Pages): readonly Check[] {
  const at = (name: string) => drying.from(name);
  const costs = options.from('costs');
  const perCubicle = (option: string) => `INDEX(${costs},MATCH(${option},${options.from('names')},0),7)`;
  const both = (name: string): readonly [string, string] => [investment.from(name), investment.from(`${name}, native`)];
  return [
    [
      'Dry matter: in the slurry, and in fibre and liquid together',
      at('solids'),
      `${at('cake')}*${inUse('Pressed dry matter')}+${at('liquid')}*${at('liquidDm')}`,
    ],
    [
      'Water: pressed less dried fibre, and DRYING.WATER',
      at('water'),
      `BEDDING.DRYING.WATER(${figure('Slurry could make')},${inUse('Pressed dry matter', 'Dried to dry matter')})`,
    ],
    [
      'Dried output, and the water it takes from the air',
      at('output'),
      `${at('evaporation')}/(${inUse('Dried to dry matter')}/${inUse('Pressed dry matter')}-1)`,
    ],
    ['Energy: heat gained by the air, and what was put in', '{hOut}', '{hIn}+{hFeed}'],
    ['Water: the sheet’s evaporation, and the budget’s', at('evaporation'), figure('Evaporation')],
    ['Cover: the smallest stage, and the budget’s', `IF(COUNT(${at('covers')})>0,MIN(${at('covers')}),"–")`, figure('Cover of demand')],
    ['Stated output: its water over the air’s most, and DRYING.CLAIM', `${at('statedWater')}/${at('most')}`, at('claim')],
    ['Running cost, and its parts', figure('Running cost'), ['Power', 'Heat', 'Labour with kit', 'Repairs'].map(figure).join('+')],
    [
      'Saving, and what it is made of',
      figure('Saving'),
      `${figure('Bought-in cost with labour')}-${figure('Running cost')}-${figure('Top-up cost')}`,
    ],
    [
      'Fibre needed, and fibre made with the shortfall',
      figure('Fibre needed'),
      `${figure('Fibre made')}/MIN(1,${figure('Cover of demand')})`,
    ],
    ['A cubicle’s bedding now: Options, and the budget', perCubicle(`"now: "&${inUse('Material now')}`), figure('Bought-in per cubicle')],
    ['A cubicle’s home fibre: Options, and the budget', perCubicle('"home fibre"'), figure('Home fibre per cubicle')],
    [
      'Months: fibre made, and what each month’s cover lets be made',
      `SUM(${months.from('made')})/(COUNT(${months.from('made')})>0)`,
      `SUMPRODUCT(${months.from('needed')}*((${months.from('cover')}<1)*${months.from('cover')}+(${months.from('cover')}>=1)))`,
    ],
    [
      'Size: the tank, and a tenth more than the slurry that comes while the press is off',
      size.from('Buffer m3 needed'),
      `1.1*${at('slurry')}*(24-${inUse('Press hours a day')})/24`,
    ],
    ['NPV: the base of Plans, and the budget', plans.from('NPV in C'), figure('NPV')],
    ['NPV: ours, and the spreadsheet’s own', ...both('npv')],
    ['NPV: the function, and the budget', investment.from('npv'), figure('NPV')],
    ['IRR: ours, and the spreadsheet’s own', ...both('irr')],
    ['NPV after tax: ours, and the spreadsheet’s own', ...both('taxed')],
    ['Loan payment: ours, and the spreadsheet’s own PMT', ...both('payment')],
    [
      'Own money at the end: the cash flow, and net with the loan and its relief',
      `INDEX(${investment.from('ownAlone')},${inUse('Life years')}+1)`,
      `IF(AND(ISNUMBER(${inUse('Loan years')}),${inUse('Loan years')}>${inUse('Life years')}),"–",SUM(${investment.from('nets')})+${inUse('Borrowed')}-SUM(${investment.from('payments made')})+SUM(${investment.from('reliefs')}))`,
    ],
    ['Loan: what is repaid, and what was borrowed', `SUM(${investment.from('repaid')})`, inUse('Borrowed')],
    [
      'Cash flow: the net of all years, and the last cumulative',
      `SUM(${investment.from('nets')})`,
      `INDEX(${investment.from('cumulative')},${inUse('Life years')}+1)`,
    ],
    ['Runs: water by weight, and from the exhaust read', acceptance.from('water'), acceptance.from('heat_loss again')],
    [
      'Runs: corrected output, and its water by hand',
      `${acceptance.from('correctedMean')}*(${acceptance.from('statedOut')}/${acceptance.from('statedIn')}-1)`,
      acceptance.from('water'),
    ],
    ...(['before', 'after'] as const).map((side): Check => {
      const sum = (of: string) => `SUMIF(${sums.from('phase')},"${side}",${of})`;
      return [
        `Cases per 100 cows ${side}: ours, and cases over cow-days`,
        records.from(`rate ${side}`),
        `36500*${sum(records.from('cases'))}/${sum(sums.from('cowDays'))}`,
      ];
    }),
  ];
}

/** As long as the result of all checks can be. */
export const longestOverall = '99 OK, 99 not worked out';

/** Whether that result is one to be alarmed at. */
export const looksBad = (cell: string): string => `OR(ISNUMBER(SEARCH("broken",${cell})),ISNUMBER(SEARCH("typed over",${cell})))`;

export function checksSheet(pages: Pages): SheetBuilder {
  const page = new SheetBuilder('Checks', [400, 120, 120, 110, 170], { dashes: true });
  page.title(
    'Checks',
    'Two ways to each figure. A check that is broken is shown on Answer too: then trust no figure until it is found.',
    lackingLine,
  );
  page.row = 5;
  page.facts([
    { name: 'overall', label: 'All checks', value: '', unit: '', style: 'check', format: 'text', note: '' },
    {
      name: 'allowed',
      label: 'Allowed difference',
      value: 0.000001,
      unit: '',
      format: 'general',
      style: 'input',
      note: 'as a share of the figure, or of 1 where it is smaller',
    },
  ]);
  page.part('Balances, totals, and the spreadsheet’s own functions').headings('check', 'one way', 'the other', 'difference', 'result');
  const first = page.row;
  for (const [words, found, wanted] of checksOf(pages)) {
    const row = page.row;
    page
      .line([words, orDash(found), orDash(wanted), orDash(`ABS(B${row}-C${row})`)], 'output', {
        format: 'three',
      })
      .put(
        `E${row}`,
        `=IF(ISNUMBER(D${row}),IF(D${row}<={$allowed}*MAX(1,ABS(C${row})),"OK","broken: the two differ"),"not worked out")`,
        'check',
      );
  }
  const results = `E${first}:E${page.row - 1}`;
  page
    .put(
      page.at('overall'),
      `=IF(COUNTIF(${results},"broken*")>0,COUNTIF(${results},"broken*")&" broken: see below",IF(SUM({lost})<>0,SUM({lost})&" typed over: see Checks",IF(COUNTIF(${results},"OK")=ROWS(${results}),"all OK: "&COUNTIF(${results},"OK")&" checks",COUNTIF(${results},"OK")&" OK, "&(ROWS(${results})-COUNTIF(${results},"OK"))&" not worked out")))`,
      'check',
    )
    .called('results', results)
    .rule(results, `E${first}="OK"`, 'good')
    .rule(results, `LEFT(E${first},6)="broken"`, 'bad')
    .rule(page.at('overall'), looksBad(page.at('overall')), 'bad');
  energyBalance(page, pages.drying);
  return page;
}
