import { moved, orDash } from '../grid.ts';
import { columnIn, type Fact, SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse } from './inputs.ts';
import { drawOwnMoney, ownMoney } from './own-money.ts';

/** The longest life, and loan, that the Inputs sheet takes. */
const mostYears = 40;
/** The years that the charts draw; a longer life goes on in the table. */
const drawnYears = 16;

function goesIn(page: SheetBuilder): void {
  page.part('What goes in').facts([
    { name: 'capital', label: 'Kit cost less grant', value: `=${inUse('Kit cost')}-${inUse('Grant')}`, unit: 'money', note: 'Inputs' },
    {
      name: 'saving',
      label: 'Saving in the first year',
      value: `=${figure('Saving')}`,
      unit: 'per year',
      note: 'BUDGET.HERD: before the cost of owning the kit',
    },
    { name: 'life', label: 'Life', value: `=${inUse('Life years')}`, unit: 'years', format: 'whole', note: 'Inputs' },
    { name: 'rate', label: 'Discount rate', value: `=${inUse('Discount rate')}`, unit: 'fraction', note: 'Inputs' },
    { name: 'growth', label: 'Saving growth', value: `=${inUse('Saving growth')}`, unit: 'fraction', note: 'Inputs' },
    { name: 'residual', label: 'End value', value: `=${inUse('End value')}`, unit: 'money', note: 'Inputs' },
    { name: 'method', label: 'Allowances against tax', value: `=${inUse('Allowance method')}`, unit: '', format: 'text', note: 'Inputs' },
    {
      name: 'balance',
      label: 'The rest allowed in the last year',
      value: `=${inUse('Rest allowed in the last year')}`,
      unit: '',
      format: 'text',
      note: 'Inputs',
    },
    { name: 'relief', label: 'Interest set against tax', value: `=${inUse('Interest relief')}`, unit: '', format: 'text', note: 'Inputs' },
    {
      name: 'payments',
      label: 'Loan payments a year',
      value: 12,
      unit: 'payments',
      format: 'whole',
      style: 'input',
      note: 'agree with the lender; for the loan payment and the loan’s own table: the cash flow takes 12',
    },
  ]);
}

const lines = (page: SheetBuilder, rows: readonly (readonly [string, string, string, string, Fact['unit'], string])[]): void => {
  for (const [name, label, ours, native, unit, note] of rows) {
    const difference = orDash(`ROUND(B${page.row}-C${page.row},6)`);
    page.called(`${name}, native`, `C${page.row}`).facts([{ name, label, value: [ours, native, difference], unit, note }]);
  }
};

/** NPV takes a column without figures for one of zeros: while the cash flow cannot be worked out, a dash says more. */
const nativeNpv = (column: string): string => `=IF(COUNT({$${column}})=0,"–",NPV({$rate},{$${column}})-{$capital})`;

/** Our answer beside the spreadsheet’s own for the same stream of money. */
function comesOut(page: SheetBuilder): void {
  page.part('Does it pay? Ours beside the spreadsheet’s own').headings('', 'ours', 'native', 'difference', 'unit', 'where from');
  const loan = inUse('Borrowed', 'Loan years', 'Loan rate');
  const native = `PMT(${inUse('Loan rate')}/{$payments},${inUse('Loan years')}*{$payments},${inUse('Borrowed')})`;
  lines(page, [
    [
      'npv',
      'NPV, before tax',
      '=BEDDING.INVEST.NPV({$capital},{$saving},{$life},{$rate},{$growth},{$residual})',
      nativeNpv('stream'),
      'money',
      'INVEST.NPV; NPV over the last column of the cash flow',
    ],
    [
      'irr',
      'IRR, before tax',
      orDash('BEDDING.INVEST.IRR({$capital},{$saving},{$life},{$growth},{$residual})'),
      orDash('IRR({$wholeStream},{$saving}/{$capital})'),
      'fraction',
      'INVEST.IRR; IRR over the same column, begun at saving ÷ capital',
    ],
    [
      'taxed',
      'NPV after tax',
      `=${figure('NPV after tax')}`,
      '=IF(COUNT({$net})=0,"–",NPV({$rate},{$net})+NPV({$rate},{$reliefs})-{$capital})',
      'money',
      'BUDGET.HERD; NPV over the columns net and relief',
    ],
    [
      'payment',
      'Loan payment',
      orDash(`BEDDING.INVEST.REPAYMENT(${loan},{$payments})`),
      orDash(`-${native}`),
      'per payment',
      'INVEST.REPAYMENT; PMT',
    ],
  ]);
  page.facts([
    {
      label: 'Own money in year 0',
      value: [`={$capital}-${inUse('Borrowed')}`, '', ''],
      unit: 'money',
      note: 'kit cost less grant and loan; the cash flow’s year 0 is the whole outlay',
    },
    { label: 'Payback', value: [orDash(figure('Payback')), '', ''], unit: 'years', note: 'INVEST.PAYBACK; – beyond the life' },
    {
      label: 'Discounted payback',
      value: [orDash(figure('Discounted payback')), '', ''],
      unit: 'years',
      note: 'INVEST.DISCOUNTEDPAYBACK; – beyond the life',
    },
    {
      label: 'Loan cover',
      value: [orDash(figure('Loan cover')), '', ''],
      unit: 'times',
      note: 'INVEST.COVER: saving ÷ a year’s payments; lenders often look for 1.25',
    },
  ]);
}

/** What each driver may turn out to be: how far below and above the likely figure. */
const drivers: readonly (readonly [name: string, likely: string, down: number, up: number])[] = [
  ['kit cost', '{capital}', 0.05, 0.2],
  ['bought price per t', `${inUse('Bought price per t')}`, 0.2, 0.15],
  ['bought t per year', `${figure('Bought needed')}-${figure('Topped up with bought')}`, 0.1, 0.1],
  [
    'running cost per year',
    `${figure('Bought needed')}*${inUse('Bought price per t')}-${figure('Topped up with bought')}*${inUse('Bought price per t')}-{saving}`,
    0.1,
    0.25,
  ],
  ['discount rate', '{rate}', 0.25, 0.25],
];

function uncertainty(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'How sure is it?',
      'Type how far each figure may fall below or rise above what is likely. Running cost is net of the labour and haulage that bought bedding takes now; no end value is counted here.',
    )
    .headings('driver', 'low', 'likely', 'high', 'down by', 'up by');
  const first = page.row;
  for (const [name, likely, down, up] of drivers) {
    const row = page.row;
    const ends = `$C${row}*(1-$E${row}),$C${row}*(1+$F${row})`;
    const format = name === 'discount rate' ? 'percent1' : name.endsWith('per t') ? 'money2' : 'money';
    page
      .line([name, orDash(`MIN(${ends})`), orDash(likely), orDash(`MAX(${ends})`)], 'output', { format, align: 'right' })
      .put(`A${row}`, name, 'label')
      .across(`E${row}`, [down, up], 'input', { format: 'percent' });
  }
  const table = `A${first}:D${page.row - 1}`;
  page.row++;
  const top = page.row;
  page.spill({
    name: 'swings',
    formula: `=BEDDING.INVEST.SENSITIVITY(${table},{life},{growth})`,
    rows: drivers.length,
    formats: [undefined, 'money', 'money', 'money'],
  });
  page.row = top;
  page.spill({
    name: 'chances',
    formula: `=BEDDING.INVEST.PROBABILITY(${table},{life},{growth})`,
    rows: 5,
    formats: [undefined, 'money', undefined],
    column: 'G',
  });
  const [chance = ''] = columnIn(page.at('chances'), 1).split(':');
  page.put(chance, '', 'strong', { format: 'percent' }).called('chance', chance);
  page
    .put(`G${page.row}`, 'INVEST.PROBABILITY: ten thousand draws, the same each time', 'note')
    .put(`A${page.row}`, 'INVEST.SENSITIVITY: one driver at a time, the others at their likely figure', 'note');
  page.row++;
  const swings = page.at('swings');
  page.charts([
    {
      kind: 'bar',
      title: 'NPV with one figure at its low and high end',
      across: 'NPV, money',
      up: '',
      labels: columnIn(swings, 0),
      series: [
        { name: 'at low', values: columnIn(swings, 1) },
        { name: 'at high', values: columnIn(swings, 2) },
      ],
      over: ['A', 'K'],
      height: 280,
    },
  ]);
}

function cashFlow(page: SheetBuilder): void {
  page.newPage();
  page.part(
    'Cash flow, year by year',
    'Tax is what is paid; a minus is relief, which needs other profit to set it against. Net is before the loan; what is borrowed comes in under left after loan, and own money is its sum: while negative it is still put in. Ask your accountant.',
  );
  const top = page.row;
  page.spill({
    name: 'flow',
    formula: `=BEDDING.INVEST.CASHFLOW({capital},{saving},{life},{rate},{growth},{residual},${inUse('Tax rate', 'First-year allowance', 'Yearly allowance')},{method},{balance},${inUse('Borrowed', 'Loan years', 'Loan rate')},{relief})`,
    rows: mostYears + 1,
    formats: ['whole', ...Array.from({ length: 12 }, () => 'money' as const), 'two'],
  });
  page.put(`O${top}`, 'before tax, native', 'heading', { wrap: true });
  for (let row = top + 1; row < page.row; row++) {
    const year = `{saving}*(1+{growth})^(A${row}-1)+IF(A${row}={life},{residual},0)`;
    page.put(`O${row}`, `=IF(A${row}="","",IF(A${row}=0,-{capital},IF(A${row}>{life},0,${year})))`, 'output', { format: 'money' });
  }
  const last = page.row - 1;
  page.across(`W${top}`, ['parts replaced', 'own money, parts too'], 'heading', { wrap: true });
  for (let row = top + 1; row < page.row; row++) {
    page
      .put(`W${row}`, `=IF(OR(A${row}="",A${row}=0),"",SUMIFS({$partCosts},{$partYears},A${row},{$partCosts},">0"))`, 'output', {
        format: 'money',
      })
      .put(`X${row}`, `=IF(A${row}="","",M${row}-SUM(W$${top + 1}:W${row}))`, 'output', { format: 'money' });
  }
  page
    .called('years', `A${top + 1}:A${last}`)
    .called('own', `X${top + 1}:X${last}`)
    .called('ownAlone', `M${top + 1}:M${last}`)
    .called('payments made', `I${top + 1}:I${last}`)
    .called('reliefs', `L${top + 2}:L${last}`);
  page
    .called('stream', `O${top + 2}:O${last}`)
    .called('wholeStream', `O${top + 1}:O${last}`)
    .called('net', `E${top + 2}:E${last}`);
  page
    .called('nets', `E${top + 1}:E${last}`)
    .called('cumulative', `F${top + 1}:F${last}`)
    .called('repaid', `T${top + 1}:T${last}`);
  page.row = top;
  page.spill({
    name: 'loan',
    formula: orDash(`BEDDING.INVEST.LOAN(${inUse('Borrowed', 'Loan years', 'Loan rate')},{payments})`),
    rows: mostYears,
    formats: ['whole', 'money', 'money', 'money', 'money'],
    column: 'Q',
  });
  page.row = last + 1;
}

const flowHeight = 270;

function drawFlow(page: SheetBuilder, row: number): void {
  const [first] = page.at('flow').split(':') as [string];
  const drawn = (column: number) => columnIn(`${first}:${moved(first, 9, drawnYears - 1)}`, column);
  const common = { across: 'year', up: 'money', labels: drawn(0), height: flowHeight } as const;
  page.charts(
    [
      {
        ...common,
        kind: 'line',
        over: ['A', 'E'],
        title: 'Money out and back, added up',
        series: [
          { name: 'cumulative', values: drawn(5) },
          { name: 'discounted', values: drawn(7) },
        ],
      },
      {
        ...common,
        kind: 'column',
        over: ['F', 'K'],
        title: 'Each year after tax',
        series: [
          { name: 'net', values: drawn(4) },
          { name: 'left after loan', values: drawn(9) },
        ],
      },
    ],
    row,
  );
}

export function investmentSheet(): SheetBuilder {
  const page = new SheetBuilder(
    'Investment',
    [150, 80, 80, 80, 80, 80, 134, 80, 80, 80, 80, 80, 80, 80, 80, 16, 50, 80, 80, 80, 80, 16, 80, 80],
    {
      landscape: true,
      dashes: true,
    },
  );
  page.title('Investment', 'Does the kit pay, how sure is that, and when is the money back?', lackingLine);
  goesIn(page);
  comesOut(page);
  const drawnAt = page.room(flowHeight);
  ownMoney(page);
  const ownAt = page.room(flowHeight);
  uncertainty(page);
  cashFlow(page);
  drawFlow(page, drawnAt);
  drawOwnMoney(page, ownAt, { years: drawnYears, height: flowHeight });
  return page;
}
