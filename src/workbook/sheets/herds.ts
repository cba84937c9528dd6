import { budgetItems } from '../../functions/budget-items.ts';
import { shownUnit } from '../formats.ts';
import { asGiven, letter } from '../grid.ts';
import { herdCount, herdHeadings, inventedHerds } from '../herds.ts';
import type { Format } from '../model.ts';
import { columnIn, SheetBuilder } from '../sheet-builder.ts';

const unitOf = (heading: string): string => shownUnit(budgetItems.find(({ name }) => name === heading)?.parameter.unit ?? '');
const formatOf = (heading: string): Format => (unitOf(heading) === '%' ? 'percent1' : unitOf(heading) === 'money' ? 'money' : 'general');

/** The inputs stand right of the results, so that the answers are seen first. */
const firstInput = 11;
const inputWidth = 82;
const resultFormats: readonly (Format | undefined)[] = [
  undefined,
  'one',
  undefined,
  'two',
  'money',
  'one',
  'money',
  'one',
  'whole',
  'whole',
];

export function herdsSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder('Herds', [95, 80, 80, 80, 80, 80, 80, 90, 80, 80, 24, ...herdHeadings.map(() => inputWidth)], {
    blank,
    landscape: true,
  });
  page.title(
    'Herds',
    'Many herds at once: one row each on the right, their answers on the left from one BUDGET.HERDS. Two hundred invented ones to start with.',
  );
  const summary = page.row + 1;
  page.row = summary + 12;
  page
    .part('Answers')
    .section(`${letter(firstInput)}${page.row - 1}`, 'Inputs: type or paste your own herds; headings are items of the budget');
  const unitRow = page.row;
  const headingRow = unitRow + 1;
  page.across(`A${unitRow}`, ['', 't/year', '', 'times', 'per year', 'years', 'money', 'per 100 cows', '0–100', ''], 'note', {
    align: 'right',
  });
  const [left, right] = [letter(firstInput), letter(firstInput + herdHeadings.length - 1)];
  page
    .across(`${left}${unitRow}`, herdHeadings.map(unitOf), 'note', { align: 'right' })
    .across(`${left}${headingRow}`, herdHeadings, 'heading', { wrap: true });
  inventedHerds().forEach((herd, k) => {
    herd.forEach((value, column) => {
      page.put(`${letter(firstInput + column)}${headingRow + 1 + k}`, page.given(value), 'input', {
        format: formatOf(herdHeadings[column] as string),
      });
    });
  });
  const last = headingRow + herdCount;
  page.row = headingRow;
  page.spill({
    name: 'answers',
    formula: `=IFERROR(BEDDING.BUDGET.HERDS(${left}${headingRow}:${right}${headingRow},${asGiven(`${left}${headingRow + 1}:${right}${last}`)}),"–")`,
    rows: herdCount,
    formats: resultFormats,
  });
  const answers = page.at('answers');
  const column = (k: number) => columnIn(answers, k);
  page
    .rule(column(3), `AND(ISNUMBER(D${headingRow + 1}),D${headingRow + 1}<1)`, 'watch')
    .rule(column(6), `AND(ISNUMBER(G${headingRow + 1}),G${headingRow + 1}<0)`, 'watch');
  page.row = summary - 1;
  page.part('In short').facts([
    { name: 'herds', label: 'Herds', value: `=COUNTA(${left}${headingRow + 1}:${left}${last})`, unit: '', format: 'whole', note: '' },
    { label: 'are covered', value: `=COUNTIF(${column(3)},">=1")`, unit: '', format: 'whole', note: 'cover of demand at least 1' },
    { label: 'would pay', value: `=COUNTIF(${column(6)},">=0")`, unit: '', format: 'whole', note: 'NPV at least 0' },
    ...['slurry', 'press', 'dryer'].map((stage) => ({
      name: stage,
      label: `limit: ${stage}`,
      value: `=COUNTIF(${column(2)},"${stage}")`,
      unit: '' as const,
      format: 'whole' as const,
      note: 'herds',
    })),
  ]);
  const limits = (of: string) => `${of}${page.row - 3}:${of}${page.row - 1}`;
  page
    .chartAt(`F${summary}`, {
      kind: 'column',
      title: 'What sets the limit',
      across: '',
      up: 'herds',
      labels: limits('A'),
      series: [{ name: 'herds', values: limits('B') }],
      width: 330,
      height: 260,
    })
    .chartAt(`${letter(firstInput - 1)}${summary}`, {
      kind: 'scatter',
      title: 'Price of bought bedding and what the kit is worth',
      across: 'bought price per t',
      up: 'NPV, money',
      labels: `${letter(firstInput + 5)}${headingRow + 1}:${letter(firstInput + 5)}${last}`,
      series: [{ name: 'NPV', values: column(6) }],
      width: 560,
      height: 260,
    });
  return page;
}
