import type { Workbook } from './model.ts';
import { acceptanceSheet } from './sheets/acceptance.ts';
import { answerSheet } from './sheets/answer.ts';
import { checksSheet } from './sheets/checks.ts';
import { dryingSheet } from './sheets/drying.ts';
import { figuresSheet } from './sheets/figures.ts';
import { herdsSheet } from './sheets/herds.ts';
import { howSureSheet } from './sheets/how-sure.ts';
import { inputsSheet } from './sheets/inputs.ts';
import { investmentSheet } from './sheets/investment.ts';
import { leversSheet } from './sheets/levers.ts';
import { monthsSheet } from './sheets/months.ts';
import { optionsSheet } from './sheets/options.ts';
import { plansSheet } from './sheets/plans.ts';
import { recordsSheets } from './sheets/records.ts';
import { conditionsSheet, sourcesSheet } from './sheets/references.ts';
import { settingsSheet } from './sheets/settings.ts';
import { sizeSheet } from './sheets/size.ts';
import { watchFormulas } from './sheets/typed-over.ts';
import { udderSheet } from './sheets/udder.ts';

export { answerInShort } from './sheets/answer.ts';
export { herdsName } from './sheets/herds.ts';
export { inputsPlace } from './sheets/inputs.ts';

export interface WorkbookOptions {
  /** The same workbook with nothing filled in. */
  readonly blank?: boolean;
}

/** The budget as a workbook: what a farm fills in, and what follows from it. The first sheet is the one that is read first. */
export function budgetWorkbook({ blank = false }: WorkbookOptions = {}): Workbook {
  const options = optionsSheet(blank);
  const drying = dryingSheet(blank);
  const investment = investmentSheet();
  const levers = leversSheet();
  const plans = plansSheet(blank, options);
  const months = monthsSheet(blank);
  const size = sizeSheet(blank, { months, drying });
  const acceptance = acceptanceSheet(blank);
  const { records, sums } = recordsSheets(blank);
  const checks = checksSheet({ drying, investment, options, plans, months, size, records, sums, acceptance });
  const [answer, inputs] = [answerSheet({ investment, levers, months, checks }), inputsSheet(blank)];
  watchFormulas(checks, [answer, inputs, options, investment, checks]);
  const pages = [
    answer,
    inputs,
    plans,
    months,
    options,
    drying,
    size,
    settingsSheet(blank),
    investment,
    levers,
    howSureSheet(),
    udderSheet(blank),
    acceptance,
    records,
    sums,
    figuresSheet(),
    herdsSheet(blank),
    checks,
    conditionsSheet(),
    sourcesSheet(),
  ];
  return { sheets: pages.map((page) => page.sheet()) };
}
