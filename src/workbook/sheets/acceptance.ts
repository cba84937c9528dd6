import { asGiven, letter, orDash, quoted } from '../grid.ts';
import { inventedRuns } from '../invented-runs.ts';
import type { Format } from '../model.ts';
import { columnIn, SheetBuilder } from '../sheet-builder.ts';
import { backIntoThePlan } from './acceptance-inverses.ts';
import { airState } from './drying-arguments.ts';
import { figure } from './figures.ts';
import { inUse } from './inputs.ts';

const roomFor = 10;

const readings: readonly (readonly [name: string, heading: string, format: Format])[] = [
  ['hours', 'hours', 'two'],
  ['wetKg', 'wet fibre in, kg', 'one'],
  ['wetDm', 'its dry matter', 'percent1'],
  ['driedKg', 'dried fibre out, kg', 'one'],
  ['driedDm', 'its dry matter', 'percent1'],
  ['air', 'air, m³/h', 'whole'],
  ['outdoorC', 'outdoor, °C', 'one'],
  ['outdoorRh', 'outdoor humidity', 'percent'],
  ['supplyC', 'warm air in, °C', 'one'],
  ['exhaustC', 'exhaust, °C', 'one'],
  ['waterC', 'hot water in, °C', 'one'],
  ['waterL', 'hot water, litres/h', 'whole'],
];
/** The readings that the test itself rests on; the others serve the plan. */
const tested = 9;

const steps: readonly string[] = [
  '1. Fix beforehand, in writing: how many runs (three at least, five settle more), how long each, what is stated and for which dry matters. Adding runs until the answer pleases proves nothing.',
  '2. Run until temperatures and output have stood still for an hour; only then begin.',
  '3. Note how full the drum is, and stop each run with it equally full: else what lies in it is counted as made or lost.',
  '4. Weigh all that goes in and all that comes out, on scales checked with a known weight. A trailer over a weighbridge will do.',
  '5. Take a sample of each every half hour, mix, and dry to the end in an oven or microwave; or send them in, sealed and cool.',
  '6. Measure the air at the place named on Inputs with a vane or tube over the whole duct, not in the middle alone; read the outdoor air in the shade.',
  '7. Read warm air, exhaust and hot water every quarter of an hour by thermometers that were held into the same water beforehand.',
];

function stated(page: SheetBuilder): void {
  page
    .part('What was stated', 'Type it as the offer has it; left empty, it is taken from Inputs, a volume with the plan’s dried density.')
    .headings('', 'as stated', 'in use', 'unit', 'if left empty');
  const row = (name: string, label: string, format: Format, otherwise: string, unit: string, note: string) => {
    page
      .put(`B${page.row}`, '', 'input', { format, align: 'right' })
      .put(`C${page.row}`, `=IF(B${page.row}="",IFERROR(${otherwise},""),B${page.row})`, 'output', { format, align: 'right' })
      .put(`D${page.row}`, unit, 'note')
      .put(`E${page.row}`, note, 'note')
      .called(name, `C${page.row}`)
      .line([label], 'label');
  };
  const volume = inUse('Stated output m3 per hour');
  row(
    'statedKg',
    'Output',
    'one',
    `IF(${volume}="","",${volume}*${figure('Dried fibre density')})`,
    'kg/h',
    'stated m³ an hour × dried density of the plan',
  );
  row('statedIn', 'for fibre that comes in at', 'percent1', inUse('Pressed dry matter'), '% dry matter', 'pressed dry matter of Inputs');
  row('statedOut', 'and leaves at', 'percent1', inUse('Dried to dry matter'), '% dry matter', 'dried dry matter of Inputs');
}

function runs(page: SheetBuilder): void {
  page.part('The runs', 'One row each. The last three columns serve the plan only and may stay empty.');
  page.headings('run', ...readings.map(([, heading]) => heading));
  const first = page.row;
  for (let k = 0; k < roomFor; k++) {
    readings.forEach(([, , format], right) => {
      page.put(`${letter(1 + right)}${page.row}`, page.given(inventedRuns[k]?.[right] ?? ''), 'input', { format, align: 'right' });
    });
    page.line([k + 1], 'label', { align: 'left' });
  }
  const range = (from: number, to: number) => `${letter(1 + from)}${first}:${letter(1 + to)}${page.row - 1}`;
  page.called('runs', range(0, tested - 1));
  readings.forEach(([name], k) => {
    page.called(name, range(k, k));
  });
}

const inMean = (page: SheetBuilder, column: number, key = 'mean'): string => {
  const table = page.at('trial');
  return `INDEX(${columnIn(table, column)},MATCH("${key}",${columnIn(table, 0)},0))`;
};

function shown(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'What the runs show',
      'From DRYING.TRIAL. Dry matter out over dry matter in should be 0.95 to 1.05; air’s part up to 1.25. Corrected: between the stated dry matters, not for the day’s weather.',
    )
    .spill({
      name: 'trial',
      formula: orDash(`BEDDING.DRYING.TRIAL(${asGiven(page.at('runs'))},${airState},{statedKg},{statedIn},{statedOut})`),
      rows: roomFor + 4,
      formats: [undefined, 'one', 'one', 'three', 'two', 'one', 'one', 'one'],
    });
  page.row++;
  page.headings('', 'runs, mean', 'lowest', 'highest', 'stated', 'in the plan', 'unit', 'where from');
  const row = (label: string, values: readonly string[], format: Format, unit: string, note: string) =>
    page
      .across(
        `B${page.row}`,
        values.map((value) => (value === '' ? '' : orDash(value))),
        'output',
        { format, align: 'right' },
      )
      .put(`G${page.row}`, unit, 'note')
      .put(`H${page.row}`, note, 'note')
      .line([label], 'label');
  row(
    'Dried output, corrected',
    [inMean(page, 7), inMean(page, 7, 'lowest'), inMean(page, 7, 'highest'), 'IF({statedKg}="","–",{statedKg})', figure('Dried output')],
    'one',
    'kg/h',
    'limits of 95%, from three runs up',
  );
  page
    .called('correctedMean', `B${page.row - 1}`)
    .called('correctedLow', `C${page.row - 1}`)
    .called('correctedHigh', `D${page.row - 1}`);
  row(
    'Water carried off',
    [inMean(page, 2), '', '', 'IF({statedKg}="","–",{statedKg}*({statedOut}/{statedIn}-1))', figure('Evaporation')],
    'one',
    'kg/h',
    'the plan at its own outdoor air',
  );
  page.called('water', `B${page.row - 1}`);
  row('Heat put into the air', [inMean(page, 5), '', '', '', figure('Heat needed')], 'one', 'kW', '');
  row('Heat for each kg of water', [inMean(page, 6), '', '', '', figure('Heat per kg of water')], 'one', 'MJ/kg', '');
  page.row++;
  page.called('spoilt', `D${page.row}`).facts([
    {
      name: 'verdict',
      label: 'The test says',
      value: orDash(inMean(page, 1, 'verdict')),
      unit: '',
      style: 'check',
      format: 'text',
      note: spoilt,
    },
  ]);
  page.called('verdictLine', `A${page.row}`).line([verdictWords], 'lead', { says: [unsettled] });
}

const unsettled = 'Not settled: the stated output lies within the limits of the runs.';

/** Neutral: what spoils the runs, then what they show, and nothing about who is right. */
const spoilt =
  '=IF({verdict}="weigh again","Weights and samples do not agree: the runs show nothing yet.",IF({verdict}="measure the air again","More water is told than this air can carry: measure the air again.",IF({verdict}="three runs are needed","Three runs at least are needed for a verdict.","")))';
const verdictWords = `=IF({spoilt}<>"",{spoilt},IF({verdict}="met","The runs show at least what was stated.",IF({verdict}="missed","The runs show less than was stated.",IF(LEFT({verdict},11)="not settled",${quoted(unsettled)},"No verdict yet: fill in the runs, and what was stated."))))`;

const whoReads = [
  'hours and steadiness',
  'drum level, start and stop',
  'scales',
  'samples and drying them',
  'air',
  'thermometers',
  'humidity outdoors',
];
const whoSigns = ['for the farm', 'for the supplier', 'witness'];

/** Cells side by side to be written into, by hand or by keyboard. */
function toFillIn(page: SheetBuilder, rows: readonly string[], heads: readonly [string, string, string, string, string]): void {
  const [label, ...others] = heads;
  const spans = ['B:E', 'F:H', 'I:J', 'K:M'].map((span) => span.split(':') as [string, string]);
  page.across(`A${page.row}`, [label, ...Array.from({ length: readings.length }, () => '')], 'heading');
  spans.forEach(([from], k) => {
    page.put(`${from}${page.row}`, others[k] as string, 'heading');
  });
  page.row++;
  for (const row of rows) {
    for (const [from, to] of spans) page.block(`${from}${page.row}:${to}${page.row}`, '', 'input');
    page.line([row], 'label');
  }
}

function signed(page: SheetBuilder): void {
  page
    .newPage()
    .part('Read and signed')
    .line(['={herdLine}'], 'note', {
      says: [
        'Herd: so many words for a name of a herd; runs on record: 10; corrected output 9,999.9 kg/h (9,999.9 to 9,999.9), stated 9,999.9 kg/h.',
      ],
    })
    .line(['={verdictLine}'], 'lead', { says: [unsettled] });
  page.row++;
  toFillIn(page, whoReads, ['what was read', 'instrument, its number, when checked', 'read by', 'date', 'signature']);
  page.row++;
  toFillIn(page, whoSigns, ['agreed that this was read so', 'name', 'what for', 'date', 'signature']);
  page.row++;
  page.caution('A record of readings, no certificate. What follows from it stands in the contract: that is for a lawyer.');
}

export function acceptanceSheet(blank: boolean): SheetBuilder {
  const page = new SheetBuilder('Acceptance', [215, ...readings.map(() => 76)], { blank, landscape: true });
  page.title(
    'Acceptance',
    'At hand-over: does the dryer do what was stated, and is it what the plan took? A record of weighed runs, to be read, printed and signed.',
  );
  page.caution(
    'Guards stay on; switch off, lock off and wait before reaching in. Hot water and ducts scald. No one alone; no one into drums or pits.',
  );
  page.line(
    ['Warm dusty fibre can burn: water at hand. Engineers, the maker’s manual and local codes come first; see Conditions and cautions.'],
    'note',
  );
  stated(page);
  page.part('How to run it');
  for (const step of steps) page.line([step], 'note');
  runs(page);
  shown(page);
  signed(page);
  backIntoThePlan(page);
  return page;
}
