import { bandEdges, scoreDrivers } from '../../domain/hygiene.ts';
import { lyingTimes, welfareTable } from '../../domain/welfare.ts';
import { moved, onceTyped, orDash } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { inUse } from './inputs.ts';

const copied = (item: string): string => `=IF(${inUse(item)}="","",${inUse(item)})`;
const rest = '{shed},{dirty},{bed},{stocking}';

function scores(page: SheetBuilder): void {
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
      .spill({ formula: `=BEDDING.HYGIENE.SPAN(${own},${rest})`, rows: 5, formats: [undefined, 'whole', undefined] });
  }
  page.caution(
    'A planning aid, no diagnosis: talk to your vet. Its weights are this project’s judgement, not fitted to data; lowest and highest are over what was not given, the last two lines with any one weight halved or doubled.',
  );
}

const dryMatters = [0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75];
const intervals = [0.5, 1, 2];
/** Scores from, up to, and how they look: the bands of HYGIENE.BAND, with moderate left plain. */
const [moderate, raised, high] = bandEdges;
const bandLooks = [
  [0, moderate, 'good'],
  [raised, high, 'watch'],
  [high, 101, 'bad'],
] as const;

function grid(page: SheetBuilder): void {
  page.newPage();
  page.part(
    'Drier or fresher',
    'The fibre’s score and band, by its dry matter (down) and the days between beddings (across), all else as above and each as wide a span: one formula fills them all.',
  );
  page
    .line(['dry matter', ...intervals], 'input', { format: 'general', align: 'right' })
    .put(`A${page.row - 1}`, 'dry matter; days between beddings', 'heading');
  const head = page.row - 1;
  page.put(`E${head}`, 'the same in words', 'heading');
  const [first, last] = [page.row, page.row + dryMatters.length - 1];
  for (const dryMatter of dryMatters) {
    const row = page.row;
    const words = ['B', 'C', 'D'].map((column) => `BEDDING.HYGIENE.BAND(${column}${row})`);
    page
      .line([dryMatter, '', '', ''], 'output', { format: 'one', align: 'right' })
      .put(`A${row}`, dryMatter, 'input', { format: 'percent' })
      .put(`E${row}`, orDash(words.join('&" · "&')));
  }
  const table = `B${first}:D${last}`;
  page
    .put(`B${first}`, orDash(`BEDDING.HYGIENE.RISK(A${first}:A${last},B${head}:D${head},{material},${rest})`), 'output', {
      format: 'one',
      align: 'right',
    })
    .called('grid', table);
  for (const [from, below, look] of bandLooks) page.rule(table, `AND(ISNUMBER(B${first}),B${first}>=${from},B${first}<${below})`, look);
}

/** How often, or how dry, for a score to be reached: the question beside its table. */
function aims(page: SheetBuilder): void {
  page.row++;
  page.facts([
    {
      name: 'target',
      label: 'Score to stay at or below',
      value: 40,
      unit: '0–100',
      format: 'whole',
      style: 'input',
      note: 'your own aim; change it',
    },
    {
      name: 'longest',
      label: 'Most days between beddings for it',
      value: `=BEDDING.HYGIENE.MAXINTERVAL({dm},{target},{material},${rest})`,
      unit: 'days',
      format: 'two',
      note: 'HYGIENE.MAXINTERVAL, at the dry matter above; a dash: bedding more often would not do it',
    },
    { label: 'that is, beddings a day', value: '=1/{longest}', unit: 'times', format: 'one', note: '1 ÷ the days between' },
    {
      label: 'Lowest dry matter for it',
      value: `=BEDDING.HYGIENE.MINDM({interval},{target},{material},${rest})`,
      unit: 'fraction',
      note: 'HYGIENE.MINDM, at the days between beddings above; a dash: drying further would not do it',
    },
  ]);
}

function drivers(page: SheetBuilder): void {
  page.newPage();
  page.part(
    'What drives it',
    'Points add up to the score; could bring: how far a factor not given could still move it, down and up. From HYGIENE.DRIVERS, for the fibre.',
  );
  page.spill({
    name: 'drivers',
    formula: `=BEDDING.HYGIENE.DRIVERS({dm},{interval},{material},${rest})`,
    formats: [undefined, 'two', 'one', 'percent', 'text', 'text', undefined],
    says: scoreDrivers(0.5, 1).rows,
  });
}

function money(page: SheetBuilder): void {
  page.newPage();
  page.part('What mastitis would cost, and what would eat the saving').facts([
    { label: 'Cases per 100 now', value: copied('Cases per 100 now'), unit: 'per 100 cows/year', note: 'Inputs' },
    {
      label: 'They cost the herd',
      value: `=BEDDING.UDDER.COST(${inUse('Cases per 100 now', 'Cows', 'Cost per mastitis case')})`,
      unit: 'per year',
      note: 'UDDER.COST',
    },
    {
      name: 'more',
      label: 'Extra cases to try',
      value: 10,
      unit: 'per 100 cows/year',
      format: 'whole',
      style: 'input',
      note: 'your own figure; change it',
    },
    {
      label: 'that is, in this herd',
      value: `={more}*${inUse('Cows')}/100`,
      unit: 'cases',
      format: 'one',
      note: 'a year: cases per 100 cows × cows ÷ 100',
    },
    {
      label: 'they would cost the herd',
      value: `=BEDDING.UDDER.COST({more},${inUse('Cows', 'Cost per mastitis case')})`,
      unit: 'per year',
      note: 'UDDER.COST',
    },
    {
      name: 'even',
      label: 'Extra cases that would eat the saving',
      value: `=BEDDING.UDDER.BREAKEVEN(${figure('Saving')},${inUse('Cows', 'Cost per mastitis case')})`,
      unit: 'per 100 cows/year',
      style: 'strong',
      note: 'UDDER.BREAKEVEN',
    },
    {
      label: 'and what is left after the kit’s own cost',
      value: `=${figure('Break-even mastitis cases after capital')}`,
      unit: 'per 100 cows/year',
      note: 'BUDGET.HERD; –: nothing is left to eat',
    },
  ]);
  page.part('From the farm’s own records').facts([
    {
      name: 'cases',
      label: 'Clinical cases',
      value: page.given(58),
      unit: 'cases',
      format: 'whole',
      style: 'input',
      note: 'the medicine book',
    },
    {
      name: 'days',
      label: 'over so many days',
      value: page.given(243),
      unit: 'days',
      format: 'whole',
      style: 'input',
      note: 'the same book',
    },
    {
      label: 'so many per 100 cows a year',
      speaks: true,
      value: onceTyped(`BEDDING.UDDER.RATE({cases},${inUse('Cows')},{days})`),
      unit: 'per 100 cows/year',
      note: 'UDDER.RATE: type it into Inputs',
    },
    ...[62, 41, 14, 4].map((cows, k) => ({
      name: `udder${k + 1}`,
      label: `Cows scoring ${k + 1} for dirt on the udder`,
      value: page.given(cows),
      unit: 'cows' as const,
      format: 'whole' as const,
      style: 'input' as const,
      note: k === 0 ? 'score a whole row: 1 clean, 4 caked' : '',
    })),
    {
      label: 'share scoring 3 or 4',
      speaks: true,
      value: onceTyped('BEDDING.UDDER.DIRTY({udder1},{udder2},{udder3},{udder4})'),
      unit: 'fraction',
      note: 'UDDER.DIRTY: type it into Inputs',
    },
    {
      name: 'perGram',
      label: 'Coliforms in used bedding, per gram',
      value: page.given(60000),
      unit: 'cfu/g',
      format: 'whole',
      style: 'input',
      note: 'the laboratory’s report: 3 to 6 cubicles on bedding day',
    },
    {
      name: 'perVolume',
      label: 'that is, per cubic centimetre',
      speaks: true,
      value: onceTyped(`BEDDING.HYGIENE.PERVOLUME({perGram},${figure('Dried fibre density')})`),
      unit: 'cfu/cm³',
      format: 'whole',
      note: 'HYGIENE.PERVOLUME',
    },
    {
      label: 'beside the published benchmark',
      speaks: true,
      value: onceTyped('BEDDING.HYGIENE.COUNT("coliforms","used",{perVolume})'),
      unit: 'times',
      note: 'HYGIENE.COUNT; counts predict mastitis poorly: see the studies below',
    },
  ]);
}

function evidence(page: SheetBuilder): void {
  page
    .part(
      'Hours lying down, as each trial implies at this dry matter',
      'The trials disagree fourfold, and no milk is claimed for lying longer. From WELFARE.LYING.',
    )
    .spill({
      name: 'lying',
      formula: '=BEDDING.WELFARE.LYING({dm})',
      formats: [undefined, 'one', 'text', 'text', undefined],
      says: lyingTimes(0.5).rows,
    });
  page
    .newPage()
    .part(
      'What studies found, with those that contradict each other',
      'From WELFARE.TABLE; for the score itself see evidence above, for and against.',
    )
    .spill({
      name: 'studies',
      formula: '=BEDDING.WELFARE.TABLE()',
      formats: ['text', 'general', undefined, 'text', undefined],
      says: welfareTable().rows,
    });
}

export function udderSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder('Udder health', [200, 90, 90, 90, 420, 110, 90], { blank, landscape: true, dashes: true });
  page.title(
    'Udder health',
    'How clean and dry the fibre lies beside the present bedding, and how many extra cases would eat the saving.',
    lackingLine,
  );
  scores(page);
  grid(page);
  aims(page);
  drivers(page);
  money(page);
  evidence(page);
  return page;
}
