import { type Factor, factorFacts } from '../../domain/hygiene-factors.ts';
import { moved } from '../grid.ts';
import type { Style } from '../model.ts';
import type { SheetBuilder } from '../sheet-builder.ts';
import { copied, inUse } from './inputs.ts';

/** What the score of either bedding rests on beside its own three figures, by the names of their cells. */
export const rest = '{shed},{dirty},{bed},{stocking}';

/** A function of the score's family for the fibre, or for the bedding now one column to the right. */
const called = (page: SheetBuilder, name: string, right: number): string =>
  `BEDDING.HYGIENE.${name}(${['dm', 'interval', 'material'].map((own) => moved(page.at(own), right)).join(',')},${rest})`;

/** What the scores rest on, and the scores with their spans. */
export function scores(page: SheetBuilder): void {
  page.part('What the score rests on').headings('', 'fibre', 'bedding now', 'unit', 'where from');
  page.facts([
    {
      name: 'dm',
      label: 'Dry matter',
      value: [copied('Dried to dry matter'), copied('Bought dry matter')],
      unit: 'fraction',
      note: 'Inputs',
    },
    {
      name: 'interval',
      label: 'Days between beddings',
      value: [copied('Days between beddings'), copied('Days now')],
      unit: 'days',
      note: 'Inputs',
    },
    {
      name: 'material',
      label: 'Material',
      value: [copied('Fibre kind'), copied('Material now')],
      unit: '',
      format: 'text',
      note: 'Inputs',
    },
    { name: 'shed', label: 'Shed temperature', value: [copied('Shed temperature'), ''], unit: '°C', note: 'Inputs; the same for both' },
    { name: 'dirty', label: 'Dirty udders', value: [copied('Dirty udders'), ''], unit: 'fraction', note: 'Inputs: share scoring 3 or 4' },
    { name: 'bed', label: 'Bed', value: [copied('Bed'), ''], unit: '', format: 'text', note: 'Inputs' },
    {
      name: 'stocking',
      label: 'Stocking',
      value: [`=IFERROR(${inUse('Cows')}/${inUse('Cubicles')},"")`, ''],
      unit: 'cows per cubicle',
      format: 'two',
      note: 'cows ÷ cubicles',
    },
  ]);
  page.row++;
  page.headings('score', 'fibre', 'bedding now').across(`D${page.row - 1}`, ['fibre, in a word', 'bedding now, in a word'], 'heading');
  const spanOf = (right: number, column: number) => ({ formula: `=INDEX(${called(page, 'SPAN', right)},0,${column})`, rows: 5 });
  page.sideBySide(
    () => labels(page, ['Lowest', 'Score', 'Highest', 'Lowest, one weight changed', 'Highest, one weight changed']),
    ...[0, 1].map(
      (right) => () => page.spill({ ...spanOf(right, 2), column: right === 0 ? 'B' : 'C', formats: ['whole'], heads: ['value'] }),
    ),
    ...[0, 1].map(
      (right) => () => page.spill({ ...spanOf(right, 3), column: right === 0 ? 'D' : 'E', formats: [undefined], heads: ['band'] }),
    ),
  );
  page.caution(
    'A planning aid, no diagnosis: talk to your vet. Its weights are this project’s judgement, not fitted to data; lowest and highest are over what was not given; in the last two lines any one weight is halved or doubled.',
  );
}

/** The factors of the score in words, as a vet would say them. */
const inPlainWords: Readonly<Record<Factor, string>> = {
  dm: 'Dry matter',
  interval_days: 'Days between beddings',
  material: 'Material',
  shed_c: 'Shed temperature',
  dirty_udders: 'Dirty udders',
  bed: 'Bed',
  stocking: 'Stocking',
};

/** Where the points come from, the fibre beside the bedding now. */
export function beforeAndAfter(page: SheetBuilder): void {
  page
    .part('Before and after', 'Points that each makes of the score, out of 100: what is left empty has none. From HYGIENE.DRIVERS.')
    .headings('', 'fibre', 'bedding now', 'fibre less now', 'in words');
  const top = page.row + 1;
  page.sideBySide(
    () =>
      labels(
        page,
        factorFacts.map(([factor]) => inPlainWords[factor]),
      ),
    ...[0, 1].map((right) => () => {
      const formula = `=INDEX(${called(page, 'DRIVERS', right)},0,3)`;
      page.spill({ formula, rows: factorFacts.length, column: right === 0 ? 'B' : 'C', formats: ['one'], heads: ['points'] });
    }),
  );
  for (let row = top; row < page.row; row++) difference(page, row, 'output', 'note');
  const row = page.row;
  const total = ['B', 'C'].map(
    (column) => `=IF(COUNT(${column}${top}:${column}${row - 1})=0,"–",SUM(${column}${top}:${column}${row - 1}))`,
  );
  page.line(['All points', ...total], 'strong', { format: 'one', align: 'right' }).put(`A${row}`, 'All points', 'strong');
  difference(page, row, 'strong', 'strong');
}

/** Labels below a free row, in which the tables beside them have their headings. */
function labels(page: SheetBuilder, words: readonly string[]): void {
  page.row++;
  for (const word of words) page.line([word], 'label');
}

/** By how much the fibre scores worse, as a number and in words. */
function difference(page: SheetBuilder, row: number, number: Style, words: Style): void {
  page
    .put(`D${row}`, `=IF(COUNT(B${row}:C${row})=2,B${row}-C${row},"–")`, number, { format: 'one', align: 'right' })
    .put(`E${row}`, inWords(row), words, { says: ['the fibre is better by 100.0 points'] });
}

/** The difference in words; what rounds to nothing is told as the same. */
const inWords = (row: number): string =>
  `=IF(ISNUMBER(D${row}),IF(ABS(D${row})<0.05,"the same","the fibre is "&IF(D${row}>0,"worse","better")&" by "&TEXT(ABS(D${row}),"0.0")&" points"),"not known")`;
