import { orDash } from '../grid.ts';
import type { Format } from '../model.ts';
import type { SheetBuilder } from '../sheet-builder.ts';

interface StopRule {
  readonly label: string;
  /** A limit that farm and vet type; left out, the chart’s own. */
  readonly limit?: { readonly invented: number; readonly format: Format; readonly below?: true };
  readonly found: string;
  readonly format: Format;
  readonly todo: string;
}

/** The last row of the record in which a test holds, counted from 1; 0 where none does. */
const lastWhere = (page: SheetBuilder, test: string): string => {
  const first = Number(/\d+/.exec(page.at('phase'))?.[0]);
  return `SUMPRODUCT(MAX(({$phase}="after")*${test}*(ROW({$phase})-${first - 1})))`;
};
const latest = (page: SheetBuilder, name: string, test = `ISNUMBER({$${name}})`): string => `INDEX({$${name}},${lastWhere(page, test)})`;

const rulesOf = (page: SheetBuilder): readonly StopRule[] => {
  const inThree = `{$phase},"after",{$key},">"&MAX({$key})-3`;
  const ifAny = (name: string, formula: string) => `IF(${lastWhere(page, `ISNUMBER({$${name}})`)}=0,"–",${formula})`;
  return [
    {
      label: 'Klebsiella, cases in the latest 3 months',
      limit: { invented: 2, format: 'whole' },
      found: `IF(COUNTIFS(${inThree},{$Klebsiella},">=0")=0,"–",SUMIFS({$Klebsiella},${inThree}))`,
      format: 'whole',
      todo: 'Ring the vet today: such cases can be grave, and one study found them more often on fibre. Back to the former bedding, if so agreed.',
    },
    {
      label: 'Latest month on the chart',
      found: ifAny('cases', `IF(${latest(page, 'signal', '({$days}<>"")')}="","within",${latest(page, 'signal', '({$days}<>"")')})`),
      format: 'text',
      todo: 'Above a limit, or eight months above the centre: ring the vet before the next load. A false alarm about once in 200 months.',
    },
    {
      label: 'Cases after ÷ before, same months',
      limit: { invented: 1.5, format: 'two' },
      found: 'IF({sameMonths after}<3,"–",{same compared ratio})',
      format: 'two',
      todo: 'From the third month on. Do not wait for proof: agree beforehand at which rise you stop.',
    },
    {
      label: 'Bulk cell count, 1,000/ml, latest',
      limit: { invented: 220, format: 'whole' },
      found: ifAny('cells', latest(page, 'cells')),
      format: 'whole',
      todo: 'Vet and milk buyer; look at dry cows, milking and beds together.',
    },
    {
      label: 'Dry matter as spread below, latest',
      limit: { invented: 0.5, format: 'percent', below: true },
      found: ifAny('dm', latest(page, 'dm')),
      format: 'percent1',
      todo: 'Spread no more of that batch; turn the press or dryer back to the plan; bought bedding meanwhile.',
    },
    {
      label: 'Count against the benchmark, latest',
      limit: { invented: 3, format: 'one' },
      found: ifAny('perVolume', latest(page, 'against', 'ISNUMBER({$perVolume})')),
      format: 'two',
      todo: 'Sample again, fresh and used, and show the vet both: one sample is no proof.',
    },
  ];
};

export function stopRules(page: SheetBuilder): void {
  page
    .newPage()
    .part(
      'Stop rules: agree each limit with your vet before the first load',
      'What is passed calls for what was agreed, whatever the figures above say. Not passed is no proof that all is well.',
    )
    .headings('rule', 'limit', 'on record', 'result', '');
  const first = page.row;
  for (const { label, limit, found, format, todo } of rulesOf(page)) {
    const row = page.row;
    const beyond = limit?.below ? `C${row}<B${row}` : `IF(ISNUMBER(C${row}),C${row}>=B${row},C${row}="present")`;
    const result = limit
      ? `IF(B${row}="","no limit agreed",IF(C${row}="–","no record yet",IF(${beyond},"PASSED","not passed")))`
      : `IF(C${row}="–","no record yet",IF(RIGHT(C${row},5)="above","PASSED","not passed"))`;
    page.put(`B${row}`, limit ? page.given(limit.invented) : 'the chart’s', limit ? 'input' : 'note', {
      align: 'right',
      wrap: true,
      ...(limit && { format: limit.format }),
    });
    page.put(`C${row}`, orDash(found), 'output', { format, align: 'right', wrap: true, says: ['run above'] });
    page.put(`D${row}`, `=${result}`, 'check', { wrap: true, says: ['no limit agreed'] }).put(`F${row}`, todo, 'note');
    page.line([label], 'label', { wrap: true });
  }
  const results = `D${first}:E${page.row - 1}`;
  page
    .called('ruleResults', results)
    .called('ruleLimits', `B${first}:B${page.row - 1}`)
    .rule(results, `$D${first}="PASSED"`, 'bad')
    .rule(results, `$D${first}="not passed"`, 'quiet')
    .rule(results, `$D${first}="no limit agreed"`, 'watch');
}

/** For the top of the sheet. */
export const passedSentence =
  '=IF(COUNTIF({ruleResults},"PASSED")>0,"A stop rule is PASSED: ring the vet and do what was agreed (below).",IF(COUNT({ruleLimits})=0,"No stop rule is agreed yet: sit down with your vet before the first load.","No stop rule is passed; limits agreed: "&COUNT({ruleLimits})&" of 5. That is no proof that all is well."))';
export const passedSays = [
  'No stop rule is agreed yet: sit down with your vet before the first load.',
  'No stop rule is passed; limits agreed: 5 of 5. That is no proof that all is well.',
];
