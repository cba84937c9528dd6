import { type Factor, factorFacts } from '../../domain/hygiene-factors.ts';
import { moved, orDash } from '../grid.ts';
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
  page.headings('score', 'fibre', 'bedding now', 'fibre', 'bedding now: in words');
  for (const [k, words] of ['Lowest', 'Score', 'Highest', 'Lowest, one weight changed', 'Highest, one weight changed'].entries()) {
    const of = (column: number) => [0, 1].map((right) => `=IFERROR(INDEX(${called(page, 'SPAN', right)},${k + 2},${column})&"","–")`);
    const numbers = of(2).map((formula) => formula.replace('&""', '*1'));
    page
      .line([words, ...numbers], 'output', { format: 'whole', align: 'right' })
      .put(`A${page.row - 1}`, words, 'label')
      .across(`D${page.row - 1}`, of(3), 'output', { says: ['moderate'] });
  }
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
  const top = page.row;
  factorFacts.forEach(([factor], k) => {
    const row = page.row;
    const points = [0, 1].map((right) => `=IFERROR(INDEX(${called(page, 'DRIVERS', right)},${k + 2},3)*1,"–")`);
    page
      .line([inPlainWords[factor], ...points, orDash(`B${row}-C${row}`)], 'output', { format: 'one', align: 'right' })
      .put(`A${row}`, inPlainWords[factor], 'label')
      .put(`E${row}`, inWords(row), 'note', { says: ['the fibre is better by 100.0 points'] });
  });
  const row = page.row;
  const total = ['B', 'C'].map(
    (column) => `=IF(COUNT(${column}${top}:${column}${row - 1})=0,"–",SUM(${column}${top}:${column}${row - 1}))`,
  );
  page
    .line(['All points', ...total, orDash(`B${row}-C${row}`)], 'strong', { format: 'one', align: 'right' })
    .put(`A${row}`, 'All points', 'strong')
    .put(`E${row}`, inWords(row), 'strong', { says: ['the fibre is better by 100.0 points'] });
}

/** The difference in words; what rounds to nothing is told as the same. */
const inWords = (row: number): string =>
  `=IF(ISNUMBER(D${row}),IF(ABS(D${row})<0.05,"the same","the fibre is "&IF(D${row}>0,"worse","better")&" by "&TEXT(ABS(D${row}),"0.0")&" points"),"not known")`;
