import { itemNamed } from '../budget/items.ts';
import { resultFormat } from '../workbook/formats.ts';
import { type Content, SheetBuilder } from '../workbook/sheet-builder.ts';
import type { Calls } from './calls.ts';
import { inputs } from './inputs.ts';
import { figureCell } from './plan.ts';
import { crossChecksName } from './steps.ts';
import { LONGEST, type YearColumns } from './years.ts';

const item = (name: string): string => {
  const found = itemNamed(name);
  if (!found) throw new Error(`no item of the budget is called ${name}`);
  return inputs.taken(found);
};

/** How close two ways of working a figure out must come: to a millionth of it, or of 1 where it is smaller. */
const near = '0.000001';

/** What each figure is beside the spreadsheet's own function for it. */
interface Held {
  readonly figure: string;
  readonly unit: string;
  readonly own: string;
  readonly how: string;
}

/** The program's own functions, fed with the same money year by year. */
function heldAgainst({ column }: YearColumns): readonly Held[] {
  const [rate, life, borrowed] = [item('Discount rate'), item('Life years'), item('Borrowed')];
  /** NPV takes the first of its range for the end of a year: year 0 stands outside. */
  const worth = (range: string): string => {
    const [year0 = '', last = ''] = range.split(':');
    const year1 = year0.replace(/\d+$/, (row) => String(Number(row) + 1));
    return `${year0}+NPV(${rate},${year1}:${last})`;
  };
  return [
    { figure: 'NPV', unit: 'money', own: worth(stream), how: 'NPV over the column before tax, beside this' },
    {
      figure: 'IRR',
      unit: 'fraction',
      own: `IRR(${stream},${figureCell('Saving')}/${figureCell('Capital')})`,
      how: 'IRR over the same column, begun at saving ÷ capital',
    },
    {
      figure: 'NPV after tax',
      unit: 'money',
      own: `${worth(column('net'))}+${worth(column('relief'))}`,
      how: 'NPV over the columns net and relief of Years',
    },
    {
      figure: 'Ownership cost',
      unit: 'per year',
      own: `PMT(${rate},${life},-${figureCell('Capital')},${item('End value')})`,
      how: 'PMT over the life, the end value coming back',
    },
    {
      figure: 'Loan payments',
      unit: 'per year',
      own: `IF(${borrowed}>0,-12*PMT(${item('Loan rate')}/12,12*${item('Loan years')},${borrowed}),0)`,
      how: 'PMT, monthly',
    },
  ];
}

/** What the kit costs and brings before tax, as NPV and IRR take it: a year beyond its life brings 0. */
const beforeTax = (year: number): string =>
  year === 0
    ? `=-${figureCell('Capital')}`
    : `=IF(${year}>${item('Life years')},0,${figureCell('Saving')}*(1+${item('Saving growth')})^${year - 1}+IF(${year}=${item('Life years')},${item('End value')},0))`;

/** Equations wrap: what stands beside them stands at the top of its row as they do. */
const atTop = { wrap: true } as const;

const notReached = 'not worked out';
const broken = 'broken';

function held(page: SheetBuilder, calls: Calls): void {
  const cashFlow = calls.years.tables.find(({ heading }) => heading.startsWith('INVEST.CASHFLOW'));
  if (!cashFlow) throw new Error('the plan has no cash flow');
  page
    .part(
      'Held against the spreadsheet’s own functions',
      'NPV, IRR and PMT are the program’s own; what they answer must be what stands on Figures.',
    )
    .line(['figure', 'on Figures', 'its own', 'difference', 'check', 'how'], 'heading');
  for (const { figure, unit, own, how } of heldAgainst(cashFlow.found)) {
    const [ours, theirs, difference] = ['B', 'C', 'D'].map((letter) => `${letter}${page.row}`) as [string, string, string];
    const check = `=IF(ISERROR(${ours}),"${notReached}",IF(ISERROR(${theirs}),"no answer of its own",IF(ABS(${difference})<=${near}*MAX(1,ABS(${ours})),"OK","${broken}")))`;
    const format = unit === 'fraction' ? 'percent1' : resultFormat(unit);
    page
      .across(`B${page.row}`, [`=${figureCell(figure)}`, `=${own}`], 'output', { format, align: 'right' })
      .put(difference, `=${ours}-${theirs}`, 'output', { format: 'general', align: 'right' })
      .put(`E${page.row}`, check, 'check', { says: ['no answer of its own'] })
      .put(`F${page.row}`, how, 'note')
      .line([figure], 'label');
  }
}

function residuals(page: SheetBuilder, { solving }: Calls): void {
  page
    .part(
      'How far apart the two sides still are',
      'What stands on both sides of its equation is found on Solving by halving. Here is what the halving leaves: at most a millionth, or one step of the equation.',
    )
    .line(['found', 'value', 'left less right', '', 'check', 'equation'], 'heading');
  for (const { heading, equation, found } of solving.tables) {
    const check = `=IF(ISERROR(${found.residual}),"${notReached}",IF(${found.meets},"OK","there is none"))`;
    page
      .put(`B${page.row}`, `=${found.answer}`, 'output', { ...atTop, format: 'three', align: 'right' })
      .put(`C${page.row}`, `=${found.residual}`, 'output', { ...atTop, format: 'general', align: 'right' })
      .put(`E${page.row}`, check, 'check', { ...atTop, says: [notReached] })
      .put(`F${page.row}`, equation, 'note', atTop)
      .line([heading], 'label', atTop);
  }
}

/** In one cell, for whoever looks no further. */
const overall = (range: string): Content =>
  `=IF(COUNTIF(${range},"${broken}")>0,COUNTIF(${range},"${broken}")&" ${broken}: do not go by this copy",COUNTIF(${range},"OK")&" checks hold"&IF(COUNTIF(${range},"${notReached}")>0,", "&COUNTIF(${range},"${notReached}")&" ${notReached}",""))`;

/** The column before tax stands beside the checks, where its place does not hang on how many there are. */
const [yearColumn, moneyColumn, headingRow] = ['H', 'I', 5] as const;
const stream = `${moneyColumn}${headingRow + 1}:${moneyColumn}${headingRow + 1 + LONGEST}`;

function beforeTaxByYear(page: SheetBuilder): void {
  page.across(`${yearColumn}${headingRow}`, ['year', 'before tax'], 'heading', { align: 'right' });
  for (let year = 0; year <= LONGEST; year++) {
    const row = headingRow + 1 + year;
    page
      .put(`${yearColumn}${row}`, year, 'label', { format: 'whole', align: 'right' })
      .put(`${moneyColumn}${row}`, beforeTax(year), 'output', { format: 'money', align: 'right' });
  }
}

/** Ours beside the program's own functions, and what the halvings leave. */
export function crossChecksSheet(calls: Calls): SheetBuilder {
  const page = new SheetBuilder(crossChecksName, [230, 110, 110, 110, 130, 330, 16, 50, 110], { landscape: true });
  page.title(
    crossChecksName,
    'Figures worked out a second way, by functions of the spreadsheet program itself, and what is left where a figure is found by halving.',
  );
  const first = page.row;
  held(page, calls);
  residuals(page, calls);
  beforeTaxByYear(page);
  return page.put('A3', overall(`$E$${first}:$E$${page.row}`), 'check', { says: ['9 broken: do not go by this copy'] });
}
