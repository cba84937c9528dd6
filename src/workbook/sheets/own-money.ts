import { moved } from '../grid.ts';
import type { SheetBuilder } from '../sheet-builder.ts';

/** How many parts may be replaced. */
const partRows = 5;

/** The owner's own money: how deep it goes in, when it is back, and what replacing parts does to both. */
export function ownMoney(page: SheetBuilder): void {
  page
    .part(
      'Own money: how deep in, and when it is back',
      'Year by year from the cash flow, after tax and loan; while it is below zero it is still put in. Type what has to be replaced during the life, at the price of that year: it is taken off without any tax relief. Years are whole: the first one is a full year from the opening on.',
    )
    .headings('part replaced', 'in year', 'cost', 'counted');
  const first = page.row;
  for (let k = 0; k < partRows; k++) {
    const row = page.row;
    const within = `AND(ISNUMBER(B${row}),ISNUMBER(C${row}),B${row}>=1,B${row}<={life},B${row}=INT(B${row}),C${row}>0)`;
    page
      .line(['', '', ''], 'input', { format: 'general' })
      .put(`C${row}`, '', 'input', { format: 'money' })
      .put(`D${row}`, `=IF(COUNTA(B${row}:C${row})=0,"",IF(${within},"yes","no: a whole year of the life, and a cost"))`, 'note');
  }
  const last = page.row - 1;
  page.called('partYears', `B${first}:B${last}`).called('partCosts', `C${first}:C${last}`);
  const lost =
    'SUMPRODUCT(({partYears}>=1)*({partYears}<={life})*({partYears}=INT({partYears}))*({partCosts}>0)*{partCosts}/(1+{rate})^{partYears})';
  page.facts([
    {
      name: 'deepest',
      label: 'Deepest',
      value: '=IF(COUNT({own})=0,"–",MIN({own}))',
      unit: 'money',
      style: 'strong',
      note: 'the most of your own money that is in at the end of a year',
    },
    { label: 'in year', value: '=INDEX({years},MATCH({deepest},{own},0))', unit: '', format: 'whole', note: '0 is the opening' },
    {
      name: 'back',
      label: 'Back in year',
      value:
        '=IF(COUNT({own})=0,"–",IF(MIN({own})>=0,"none is put in",IF(INDEX({own},{life}+1)<0,"not within its life",SUMPRODUCT(MAX(({own}<0)*{years}))+1)))',
      unit: '',
      format: 'whole',
      style: 'strong',
      note: 'from then on own money stays above zero',
    },
    {
      name: 'end',
      label: 'At the end of the life',
      value: '=IF(COUNT({own})=0,"–",INDEX({own},{life}+1))',
      unit: 'money',
      note: 'all that came back above what was put in, not discounted',
    },
    {
      label: 'NPV after tax, parts too',
      value: `={taxed}-${lost}`,
      unit: 'money',
      note: 'the NPV above less the parts, each discounted from its year',
    },
  ]);
}

/** The years that are drawn, and how high. */
interface Drawn {
  readonly years: number;
  readonly height: number;
}

export function drawOwnMoney(page: SheetBuilder, row: number, { years: drawn, height }: Drawn): void {
  const [years = '', own = ''] = ['years', 'own'].map((name) => page.at(name).split(':')[0]);
  page.charts(
    [
      {
        kind: 'column',
        title: 'Own money at the end of each year, parts replaced too',
        across: 'year',
        up: 'money',
        labels: `${years}:${moved(years, 0, drawn - 1)}`,
        series: [{ name: 'own money', values: `${own}:${moved(own, 0, drawn - 1)}` }],
        over: ['A', 'I'],
        height,
      },
    ],
    row,
  );
}
