import { type Factor, factorFacts } from '../../domain/hygiene-factors.ts';
import { moved, orDash } from '../grid.ts';
import type { SheetBuilder } from '../sheet-builder.ts';
import { copied, inUse } from './inputs.ts';

/** What the score of either bedding rests on beside its own three figures, by the names of their cells. */
export const rest = '{shed},{dirty},{bed},{stocking}';

/** What the scores rest on, and the scores with their spans. */
export function scores(page: SheetBuilder): void {
  page.part('What the score rests on').headings('', 'fibre', 'present bedding', 'unit', 'where from');
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
  for (const [k, bedding] of ['fibre', 'present bedding'].entries()) {
    const own = ['dm', 'interval', 'material'].map((name) => moved(page.at(name), k)).join(',');
    page.row++;
    page
      .line([`Score of the ${bedding}`], 'label')
      .spill({
        formula: `=BEDDING.HYGIENE.SPAN(${own},${rest})`,
        rows: 5,
        formats: [undefined, 'whole', undefined],
        heads: ['', 'score', 'band'],
      });
  }
  page.caution(
    'A planning aid, no diagnosis: talk to your vet. Its weights are this project’s judgement, not fitted to data; lowest and highest are over what was not given, the last two lines with any one weight halved or doubled.',
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
    const points = ([0, 1] as const).map((right) => {
      const own = ['dm', 'interval', 'material'].map((name) => moved(page.at(name), right)).join(',');
      return `=IFERROR(INDEX(BEDDING.HYGIENE.DRIVERS(${own},${rest}),${k + 2},3)*1,"–")`;
    });
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
    .line(['Score', ...total, orDash(`B${row}-C${row}`)], 'strong', { format: 'one', align: 'right' })
    .put(`A${row}`, 'Score', 'strong')
    .put(`E${row}`, inWords(row), 'strong', { says: ['the fibre is better by 100.0 points'] });
}

/** The difference in words; what rounds to nothing is told as the same. */
const inWords = (row: number): string =>
  `=IF(ISNUMBER(D${row}),IF(ABS(D${row})<0.05,"the same","the fibre is "&IF(D${row}>0,"worse","better")&" by "&TEXT(ABS(D${row}),"0.0")&" points"),"not known")`;
