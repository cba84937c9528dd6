import { bandEdges, scoreDrivers } from '../../domain/hygiene.ts';
import { lyingTimes, welfareTable } from '../../domain/welfare.ts';
import { orDash } from '../grid.ts';
import { SheetBuilder } from '../sheet-builder.ts';
import { lackingLine } from './figures.ts';
import { laboratory, mastitis } from './udder-farm.ts';
import { beforeAndAfter, rest, scores } from './udder-scores.ts';
import { udderStudies } from './udder-studies.ts';

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

function evidence(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'Hours lying down, as each trial implies at this dry matter',
      'The trials disagree fourfold, and no milk is claimed for lying longer. From WELFARE.LYING.',
    )
    .spill({
      name: 'lying',
      formula: '=BEDDING.WELFARE.LYING({dm})',
      formats: [undefined, 'one', 'text', 'text', undefined],
      says: lyingTimes(0.5).rows,
    })
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
  const page = new SheetBuilder('Udder health', [200, 90, 170, 110, 350, 110, 90], { blank, landscape: true, dashes: true });
  page.title(
    'Udder health',
    'How clean and dry the fibre lies beside the present bedding, and how many extra cases would eat what the kit earns.',
    lackingLine,
  );
  scores(page);
  beforeAndAfter(page);
  grid(page);
  aims(page);
  drivers(page);
  mastitis(page);
  laboratory(page);
  udderStudies(page);
  evidence(page);
  return page;
}
