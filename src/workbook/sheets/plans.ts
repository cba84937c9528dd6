import { type FigureKey, figureByKey } from '../../budget/figures.ts';
import { budgetItems } from '../../budget/items.ts';
import { usualComparison } from '../../budget/plans.ts';
import { bandEdges, SCORE_CAUTION } from '../../domain/hygiene.ts';
import { resultFormat } from '../formats.ts';
import { asGiven, letter, moved, orDash } from '../grid.ts';
import type { Format } from '../model.ts';
import { type Content, SheetBuilder } from '../sheet-builder.ts';
import { figure, lackingLine } from './figures.ts';
import { inputsColumn, inUse, items, values } from './inputs.ts';

const plansName = 'Plans';
/** Columns for plans beside the base. */
const planCount = 4;
const planColumns = Array.from({ length: planCount }, (_, k) => letter(1 + k));
/** Rows for what differs. */
const changeRows = 14;

/** What differs from Inputs in one plan, by item; `half more` is worked out from what Inputs has. */
interface Start {
  readonly name: string;
  readonly changes: Readonly<Record<string, Content>>;
}

const halfMore = (item: string): string => `=IF(${inUse(item)}="","",1.5*${inUse(item)})`;

/**
 * Plans to begin with. What a kit costs nobody can guess: in an empty budget it is taken out, so that no plan is shown with
 * another one's price.
 */
const starts = (blank: boolean): readonly Start[] => [
  {
    name: 'press alone',
    changes: {
      Dryer: 'no',
      'Kit cost': blank ? 'none' : 42_000,
      ...(blank ? {} : { Grant: 5000, Borrowed: 17_000, 'End value': 3000, 'Labour hours a week with kit': 7 }),
    },
  },
  {
    name: 'larger dryer',
    changes: {
      Dryer: 'yes',
      'Air m3 per hour': halfMore('Air m3 per hour'),
      'Heat available kW': halfMore('Heat available kW'),
      'Hot water litres per hour': halfMore('Hot water litres per hour'),
      'Fan and drum motors kW': halfMore('Fan and drum motors kW'),
      'Drum m3': halfMore('Drum m3'),
      'Kit cost': blank ? 'none' : 126_000,
    },
  },
];

/** The items that plans usually differ in, in the order of the table. */
const usuallyChanged = [
  'Dryer',
  'Dried to dry matter',
  'Kit cost',
  'Grant',
  'Borrowed',
  'End value',
  'Air m3 per hour',
  'Heat available kW',
  'Hot water litres per hour',
  'Fan and drum motors kW',
  'Drum m3',
  'Labour hours a week with kit',
];

const formatOf = (name: string): Format | undefined => {
  const unit = budgetItems.find((item) => item.name === name)?.parameter.unit;
  return unit === 'fraction' ? 'percent1' : unit === 'money' ? 'money' : undefined;
};

/** The keys of the rows as BUDGET.PLANS gives them: the usual ones, a score with its span, and what the plans cost and bring more. */
const extraRows = ['Extra capital over base', 'Extra NPV over base', 'Warnings'];
const rowKeys = [...usualComparison, ...extraRows];
const longWords: Partial<Record<FigureKey, readonly string[]>> = {
  'What limits': ['slurry', 'press', 'dryer'],
  'Hygiene span, fibre': ['100–100'],
};

/** Every bedding and every kit on one line each. */
function comparison(page: SheetBuilder, options: SheetBuilder): void {
  page.part(
    'One comparison: every bedding, every kit',
    'Cost for a year with labour and, where there is kit, what owning it costs. Saving, NPV and payback are against bedding as now. Other beddings come from Options; what they change in cubicles and slurry store is not in the money unless you typed it there as extra.',
  );
  const head = page.row;
  page.headings(
    'bedding or plan',
    'cost per cubicle a year',
    'saving a year, before owning',
    'capital',
    'NPV',
    'payback, years',
    'cover, coldest month',
    'score',
    'score’s span',
  );
  page.put(`J${head}`, 'warnings', 'heading', { wrap: true });
  const formats: readonly Format[] = ['money2', 'money', 'money', 'money', 'one', 'two', 'whole', 'text', 'whole'];
  const row = (name: string, cells: readonly string[], says: readonly string[]): void => {
    page.put(`A${page.row}`, `=${name}`, 'label', { says });
    cells.forEach((cell, k) => {
      page.put(moved(`B${page.row}`, k), `=IF($A${page.row}="","",IFERROR(${cell},"–"))`, 'output', {
        format: formats[k] as Format,
        align: k === formats.length - 1 ? 'left' : 'right',
        ...(formats[k] === 'text' && { says: ['100–100 moderate'] }),
      });
    });
    page.row++;
  };
  const dash = '"–"';
  const bought = figure('Bought-in per cubicle');
  const nothing = `IF(ISNUMBER(${bought}),0,"–")`;
  const now = [bought, nothing, nothing, nothing, dash, dash];
  row(
    `IF(${inUse('Material now')}="","","now: "&${inUse('Material now')})`,
    [...now, figure('Hygiene score, present bedding'), inBand(`H${page.row}`, figure('Hygiene span, present bedding')), dash],
    ['now: composted fibre'],
  );
  const costs = options.from('costs');
  const found = (column: number) => `INDEX(${costs},MATCH($A${page.row},${options.from('names')},0),${column})`;
  for (const [k, typed] of options.each('others').entries()) {
    const saved = `(${figure('Bought-in cost with labour')}-${found(6)})`;
    const state = `${inUse('Days now')},$A${page.row},${inUse('Shed temperature', 'Dirty udders', 'Bed')},{stocking}`;
    const span = (row: number, column: number) => `INDEX(BEDDING.HYGIENE.SPAN({dry matter ${k}},${state}),${row},${column})`;
    row(
      `IF(${typed}="","",${typed})`,
      [
        found(7),
        saved,
        dash,
        `${saved}*{years}`,
        dash,
        dash,
        span(3, 2),
        `TEXT(${span(2, 2)},"0")&"–"&TEXT(${span(4, 2)},"0")&" "&${span(3, 3)}`,
        dash,
      ],
      ['chopped straw, own'],
    );
  }
  const keys: readonly string[] = [
    'Home fibre per cubicle',
    'Saving',
    'Capital',
    'NPV',
    'Payback',
    'Cover in the coldest month',
    'Hygiene score, fibre',
    'Hygiene span, fibre',
    'Warnings',
  ];
  const firstPlan = page.row;
  const kit = `IF(${inUse('Dried to dry matter')}="","",IF(${inUse('Dried to dry matter')}=${inUse('Pressed dry matter')},": press alone",": press and dryer"))`;
  for (let k = 0; k <= planCount; k++) {
    const column = letter(2 + k);
    const name = k === 0 ? `"as on Inputs"&${kit}` : `IF({plan ${k}}="","",{plan ${k}})`;
    row(
      name,
      keys.map((key) => (key === 'Hygiene span, fibre' ? inBand(`H${page.row}`, `{${key} in ${column}}`) : `{${key} in ${column}}`)),
      k === 0 ? ['as on Inputs: press and dryer'] : [],
    );
  }
  const last = page.row - 1;
  page
    .called('one', `A${head + 1}:J${last}`)
    .called('kits', `A${firstPlan}:E${last}`)
    .line([`Score: 0 is best; a ${SCORE_CAUTION}. Its span is over what was not given. A dash: there is no such figure yet.`], 'note');
}

/** The score's span with its band in a word; without a score there is neither. */
const inBand = (score: string, span: string): string =>
  `IF(ISNUMBER(${score}),${span}&" "&IF(${score}<${bandEdges[0]},"low",IF(${score}<${bandEdges[1]},"moderate",IF(${score}<${bandEdges[2]},"raised","high"))),"–")`;

function drawn(page: SheetBuilder): void {
  const rows = (name: string, column: number): string => {
    const [first = '', last = ''] = page.at(name).split(':');
    return `${moved(first, column)}:${letter(column)}${last.replace(/\D/g, '')}`;
  };
  page.charts([
    {
      kind: 'column',
      title: 'A cubicle’s bedding for a year, all in',
      across: '',
      up: 'money per cubicle a year',
      labels: rows('one', 0),
      series: [{ name: 'cost per cubicle a year', values: rows('one', 1) }],
      over: ['A', 'D'],
      height: 300,
    },
    {
      kind: 'column',
      title: 'What each kit costs, and what it is worth over its life',
      across: '',
      up: 'money',
      labels: rows('kits', 0),
      series: [
        { name: 'capital', values: rows('kits', 3) },
        { name: 'NPV', values: rows('kits', 4) },
      ],
      over: ['E', 'J'],
      height: 300,
    },
  ]);
}

/** A word about the row: whether each of its values can be used for its item. */
function checkOf(row: number): string {
  const cells = `B${row}:E${row}`;
  const typed = `(${cells}<>"")*(${cells}<>"none")`;
  const outside = `SUMPRODUCT(${typed}*(1-ISNUMBER(${cells})*(${cells}>=H${row})*(${cells}<=I${row})))`;
  const unlisted = `SUMPRODUCT(${typed}*ISERROR(SEARCH("; "&${cells}&";","; "&H${row}&";")))`;
  const unnamed = `IF(COUNTA(${cells})>0,"choose an item","")`;
  return `=IF(A${row}="",${unnamed},IF(H${row}="","no such item",IF(IF(ISNUMBER(H${row}),${outside},${unlisted})>0,"cannot be used","ok")))`;
}

/** The table in which a plan says what it does otherwise. */
function changes(page: SheetBuilder, blank: boolean): void {
  page.newPage();
  page.part(
    'Up to four plans: type only what differs from Inputs',
    'Name a plan in the first row. Choose an item in column A and type its value under the plan; empty is as on Inputs, none takes the item out. Not known yet: none, and every figure that rests on it stays away until you type it. Plain cells are worked out from Inputs; you may type over them.',
  );
  const head = page.row;
  page.across(`A${head}`, ['what differs', '', '', '', '', 'on Inputs', 'unit', 'lowest', 'highest', 'check'], 'heading', { wrap: true });
  const plans = starts(blank);
  planColumns.forEach((column, k) => {
    page.put(`${column}${head}`, plans[k]?.name ?? '', 'input', { wrap: true });
  });
  const first = head + 1;
  const last = head + changeRows;
  for (let k = 0; k < changeRows; k++) {
    const row = first + k;
    const item = usuallyChanged[k];
    page.put(`A${row}`, item ?? '', 'input', { choicesIn: inputsColumn('items') });
    planColumns.forEach((column, plan) => {
      const content = (item && plans[plan]?.changes[item]) ?? '';
      const formula = String(content).startsWith('=');
      const format = item ? formatOf(item) : undefined;
      page.put(`${column}${row}`, content, formula ? 'output' : 'input', { align: 'right', ...(format && { format }) });
    });
    const look = (from: 'inUse' | 'units' | 'lowest' | 'highest') => {
      const cell = `INDEX(${inputsColumn(from)},MATCH($A${row},${inputsColumn('items')},0))`;
      return `=IF($A${row}="","",IFERROR(IF(${cell}="","",${cell}),""))`;
    };
    const format = item ? formatOf(item) : undefined;
    page
      .put(`F${row}`, look('inUse'), 'output', { align: 'right', ...(format && { format }) })
      .put(`G${row}`, look('units'), 'note', { says: ['kg per cubicle'] })
      .put(`H${row}`, look('lowest'), 'output', { align: 'right', says: ['100000'] })
      .put(`I${row}`, look('highest'), 'output', { align: 'right', says: ['1000000000'] })
      .put(`J${row}`, checkOf(row), 'output', { says: ['cannot be used'] });
  }
  page.called('changes', `A${head}:E${last}`).rule(`J${first}:J${last}`, `AND(J${first}<>"",J${first}<>"ok")`, 'bad');
  page.row = last + 1;
}

function sideBySide(page: SheetBuilder): void {
  page.part(
    'Side by side',
    'From BUDGET.PLANS. Where #VALUE! stands, a plan holds a value that cannot be used: point at it and it says which. Extra NPV is what the dearer plan’s extra money earns; where lives differ there is none.',
  );
  const head = page.row;
  page.spill({
    name: 'plans',
    formula: `=IFNA(BEDDING.BUDGET.PLANS(${items},${values},${asGiven(page.at('changes'))}),"–")`,
    formats: [undefined, undefined, ...Array.from({ length: 1 + planCount }, () => 'general' as const)],
    says: rowKeys.map((key) => [key, undefined, ...Array.from({ length: 1 + planCount }, () => longWords[key as FigureKey] ?? [])]),
  });
  rowKeys.forEach((key, k) => {
    const row = head + 1 + k;
    page.put(`B${row}`, '', 'note');
    const unit = extraRows.includes(key) ? (key === 'Warnings' ? '' : 'money') : figureByKey(key as FigureKey).unit;
    const format = key === 'Warnings' ? 'whole' : key === 'Fibre made' ? 'one' : resultFormat(unit);
    for (let column = 2; column <= 2 + planCount; column++) {
      page.put(`${letter(column)}${row}`, '', 'output', {
        format,
        align: 'right',
        ...(longWords[key as FigureKey] && { says: longWords[key as FigureKey] }),
      });
      page.called(`${key} in ${letter(column)}`, `${letter(column)}${row}`);
    }
  });
  for (let k = 1; k <= planCount; k++) page.called(`plan ${k}`, `${letter(2 + k)}${head}`);
  page.line([`Score: 0 is best; a ${SCORE_CAUTION}.`], 'note');
}

/** What the other beddings' figures in the comparison rest on. */
function others(page: SheetBuilder, options: SheetBuilder): void {
  const [rate, growth, life] = ['Discount rate', 'Saving growth', 'Life years'].map((item) => inUse(item));
  page.part('How the other beddings are counted').facts([
    { name: 'rate', label: 'Discount rate', value: `=${rate}`, unit: 'fraction', note: 'Inputs' },
    { name: 'growth', label: 'Saving growth', value: `=${growth}`, unit: 'fraction', note: 'Inputs' },
    { name: 'life', label: 'Life', value: `=${life}`, unit: 'years', format: 'whole', note: 'Inputs' },
    {
      name: 'years',
      label: 'A year’s saving, times',
      value: orDash('IF(ABS({rate}-{growth})<0.000001,{life}/(1+{rate}),(1-((1+{growth})/(1+{rate}))^{life})/({rate}-{growth}))'),
      unit: 'times',
      note: 'a growing annuity: gives their NPV, without any capital',
    },
    {
      name: 'stocking',
      label: 'Stocking',
      value: `=IFERROR(${inUse('Cows')}/${inUse('Cubicles')},"")`,
      unit: 'cows per cubicle',
      format: 'two',
      note: 'for their scores, at Days now',
    },
  ]);
  const beddings = options.each('others');
  page.headings('bedding', 'dry matter');
  const first = page.row;
  beddings.forEach((typed, k) => {
    page.called(`dry matter ${k}`, `B${page.row}`).put(`A${page.row}`, `=IF(${typed}="","",${typed})`, 'label');
    page.put(`B${page.row++}`, '', 'output', { format: 'percent1', align: 'right' });
  });
  page.put(`B${first}`, orDash(`BEDDING.MATERIAL.DRYMATTER(A${first}:A${page.row - 1})`), 'output', { format: 'percent1', align: 'right' });
  page.put(`C${first}`, 'MATERIAL.DRYMATTER; a dash: no figure is held under that name, so it has no score', 'note');
}

/** Plans side by side with the other beddings: what a farm decides between. */
export function plansSheet(blank: boolean, options: SheetBuilder): SheetBuilder {
  const page = new SheetBuilder(plansName, [198, 108, 80, 80, 80, 70, 60, 60, 92, 92], { blank, landscape: true });
  page.title(
    'Plans',
    'What to decide between: every bedding and every kit side by side, the dearer one’s extra money with them.',
    lackingLine,
  );
  comparison(page, options);
  drawn(page);
  changes(page, blank);
  sideBySide(page);
  others(page, options);
  return page;
}
