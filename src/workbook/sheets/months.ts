import { asGiven, orDash } from '../grid.ts';
import { columnIn, type SheetBuilder } from '../sheet-builder.ts';
import { air, airState, dms, dryerState } from './drying-arguments.ts';
import { figure } from './figures.ts';
import { inUse } from './inputs.ts';

/** An invented climate: outdoor temperature and humidity, month by month. */
const climate: readonly (readonly [month: string, temperature: number, humidity: number])[] = [
  ['January', 3, 0.88],
  ['February', 3.5, 0.86],
  ['March', 5.5, 0.82],
  ['April', 8, 0.77],
  ['May', 11, 0.75],
  ['June', 14, 0.76],
  ['July', 16, 0.77],
  ['August', 15.8, 0.78],
  ['September', 13.3, 0.81],
  ['October', 10, 0.85],
  ['November', 6, 0.88],
  ['December', 3.8, 0.89],
];

export function months(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'Twelve months',
      'Type your own months’ mean temperature and humidity, from a weather station; one formula in each column works out all twelve.',
    )
    .headings(
      'month',
      'outdoor, °C',
      'humidity',
      'air by water, °C',
      'air by heat, °C',
      'air in use, °C',
      'dryer, kg/h',
      'dryer, t/day',
      'all stages, t/day',
      'beds need, t/day',
      'in words',
    );
  const [first, last] = [page.row, page.row + climate.length - 1];
  const column = (letter: string) => `${letter}${first}:${letter}${last}`;
  const monthly = `${asGiven(column('B'))},${asGiven(column('C'))}`;
  const water = inUse('Hot water temperature');
  climate.forEach(([month, temperature, humidity], k) => {
    const row = first + k;
    const byWater = `IF(ISNUMBER(D${row}),D${row},B${row}+${inUse('Heater effectiveness')}*(${water}-B${row}))`;
    const words = `IF(AND(ISNUMBER(H${row}),H${row}<J${row}),"dryer short",IF(I${row}<J${row},"short","enough"))`;
    page
      .put(`A${row}`, month, 'label')
      .put(`B${row}`, page.given(temperature), 'input', { format: 'one' })
      .put(`C${row}`, page.given(humidity), 'input', { format: 'percent' })
      .across(`D${row}`, ['', ''], 'output', { format: 'one', align: 'right' })
      .put(`F${row}`, `=IF(B${row}="","–",MIN(${byWater},IF(ISNUMBER(E${row}),E${row},${water})))`, 'output', {
        format: 'one',
        align: 'right',
      })
      .put(`G${row}`, '', 'output', { format: 'one', align: 'right' })
      .put(`H${row}`, orDash(`G${row}*${inUse('Dryer hours a day')}/1000`), 'output', { format: 'two', align: 'right' })
      .put(`I${row}`, orDash(`MIN(H${row},${figure('Slurry could make')},${figure('Press could make')})`), 'output', {
        format: 'two',
        align: 'right',
      })
      .put(`J${row}`, '={need}', 'output', { format: 'two', align: 'right' })
      .put(`K${row}`, `=IF(ISNUMBER(I${row}),${words},"–")`, 'output');
  });
  const supply = inUse('Hot water litres per hour', 'Hot water temperature', 'Heater effectiveness');
  const oneFormula = (letter: string, formula: string) =>
    page.put(`${letter}${first}`, orDash(formula), 'output', { format: 'one', align: 'right' });
  oneFormula('D', `BEDDING.DRYING.SUPPLYTEMP(${air},${monthly},${supply},${airState})`);
  oneFormula('E', `BEDDING.DRYING.HEATEDTEMP(${air},${monthly},${inUse('Heat available kW')},${airState})`);
  oneFormula('G', `BEDDING.DRYING.OUTPUT(${dms},${air},${monthly},${column('F')},${airState},${dryerState})`)
    .called('months', `A${first}:K${last}`)
    .rule(column('K'), `RIGHT($K${first},5)="short"`, 'watch');
  page.row = last + 1;
  const table = page.at('months');
  page.charts([
    {
      kind: 'line',
      title: 'What can be made each month, beside what the beds need',
      across: '',
      up: 't/day',
      labels: columnIn(table, 0),
      series: [
        { name: 'dryer', values: columnIn(table, 7) },
        { name: 'all stages', values: columnIn(table, 8) },
        { name: 'beds need', values: columnIn(table, 9) },
      ],
      over: ['A', 'K'],
      height: 300,
    },
  ]);
}
