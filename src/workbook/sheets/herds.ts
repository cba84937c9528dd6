import { figures } from '../../budget/figures.ts';
import { budgetItems } from '../../budget/items.ts';
import { usualResults as asked } from '../../budget/many.ts';
import { resultFormat, shownUnit } from '../formats.ts';
import { asGiven, letter, orDash } from '../grid.ts';
import { herdCount, herdHeadings, inventedHerds } from '../invented-herds.ts';
import type { Format } from '../model.ts';
import { columnIn, SheetBuilder } from '../sheet-builder.ts';

/** The one sheet that is not about this herd alone. */
export const herdsName = 'Herds';

type Asked = (typeof asked)[number];

const unitOfResult = (key: string): string => figures.find((result) => result.key === key)?.unit ?? '';
const unitOfItem = (name: string): string => budgetItems.find((item) => item.name === name)?.parameter.unit ?? '';
const inputFormat = (unit: string): Format => (unit === 'fraction' ? 'percent1' : unit === 'money' ? 'money' : 'general');

/** The inputs stand right of the answers, which are seen first: a name, what was asked, the warnings, and a gap. */
const firstInput = asked.length + 3;
const [left, right] = [letter(firstInput), letter(firstInput + herdHeadings.length - 1)];

function putInputs(page: SheetBuilder, headingRow: number): void {
  page.across(`${left}${headingRow}`, herdHeadings, 'heading', { wrap: true });
  inventedHerds().forEach((herd, down) => {
    herd.forEach((value, k) => {
      const format = inputFormat(unitOfItem(herdHeadings[k] as string));
      page.put(`${letter(firstInput + k)}${headingRow + 1 + down}`, page.given(value), 'input', { format });
    });
  });
}

function putAnswers(page: SheetBuilder): void {
  page.part('Answers: one formula for all; the results asked for are keys of Figures');
  page.section(`${left}${page.row - 1}`, 'Inputs: type or paste your own herds under headings that are items of the budget');
  const keys = `B${page.row}:${letter(asked.length)}${page.row}`;
  page.line(['', ...asked], 'input', { wrap: true }).put(`A${page.row - 1}`, 'asked for', 'label');
  const units = (of: readonly string[]) => of.map(shownUnit);
  page
    .across(`${left}${page.row}`, units(herdHeadings.map(unitOfItem)), 'note', { align: 'right' })
    .line(['', ...units(asked.map(unitOfResult))], 'note', { align: 'right' });
  const headingRow = page.row;
  putInputs(page, headingRow);
  const range = `${left}${headingRow + 1}:${right}${headingRow + herdCount}`;
  page.spill({
    name: 'answers',
    formula: orDash(`BEDDING.BUDGET.HERDS(${left}${headingRow}:${right}${headingRow},${asGiven(range)},${keys})`),
    rows: herdCount,
    formats: [undefined, ...asked.map((key) => (key === 'What limits' ? undefined : resultFormat(unitOfResult(key)))), 'whole'],
    heads: ['Herd', ...asked, 'Warnings'],
  });
  page.called('herds', columnIn(range, 0)).called('prices', columnIn(range, herdHeadings.indexOf('Bought price per t')));
  for (const key of asked) page.called(key, columnIn(page.at('answers'), 1 + asked.indexOf(key)));
  const short = (key: Asked, least: number): void => {
    const first = page.at(key).split(':')[0];
    page.rule(page.at(key), `AND(ISNUMBER(${first}),${first}<${least})`, 'watch');
  };
  short('Cover of demand', 1);
  short('NPV', 0);
}

const stages = ['slurry', 'press', 'dryer'];
const chartHeight = 260;

function inShort(page: SheetBuilder): void {
  const count = (label: string, value: string, note: string) => ({ label, value, unit: '' as const, format: 'whole' as const, note });
  page
    .part('In short')
    .facts([
      count('Herds', '=COUNTA({herds})', ''),
      count('are covered', '=COUNTIF({Cover of demand},">=1")', 'cover of demand at least 1'),
      count('would pay', '=COUNTIF({NPV},">=0")', 'NPV at least 0'),
      ...stages.map((stage) => count(`limit: ${stage}`, `=COUNTIF({What limits},"${stage}")`, 'herds')),
    ])
    .called('limits', `A${page.row - stages.length}:B${page.row - 1}`);
}

export function herdsSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder(herdsName, [95, ...asked.map(() => 82), 80, 24, ...herdHeadings.map(() => 82)], { blank, landscape: true });
  page.title('Herds', 'Many herds at once: one row each on the right, their answers on the left. Two hundred invented ones to start with.');
  let drawnAt = 0;
  page.sideBySide(
    () => inShort(page),
    () => {
      drawnAt = page.room(chartHeight);
    },
  );
  page.put(`A${page.row}`, 'The score is a planning aid, no diagnosis: talk to your vet.', 'note');
  putAnswers(page);
  return page.charts(
    [
      {
        kind: 'column',
        title: 'What sets the limit',
        across: '',
        up: 'herds',
        labels: columnIn(page.at('limits'), 0),
        series: [{ name: 'herds', values: columnIn(page.at('limits'), 1) }],
        over: ['F', 'I'],
        height: chartHeight,
      },
      {
        kind: 'scatter',
        title: 'Price of bought bedding and what the kit is worth',
        across: 'bought price per t',
        up: 'NPV, money',
        labels: page.at('prices'),
        series: [{ name: 'NPV', values: page.at('NPV') }],
        over: [left, letter(firstInput + 6)],
        height: chartHeight,
      },
    ],
    drawnAt,
  );
}
