import { on } from '../workbook/grid.ts';
import type { Sheet } from '../workbook/model.ts';
import { SheetBuilder } from '../workbook/sheet-builder.ts';
import { whoToAsk } from '../workbook/sheets/answer.ts';
import { inputsName } from '../workbook/sheets/inputs.ts';
import { crossChecksName, figuresName, solvingName, workingName, yearsName } from './steps.ts';

/** What the first sheet says of a copy that others get to see. */
export interface About {
  readonly herd: string;
  /** The day and the time, in words. */
  readonly on: string;
  readonly version: string;
  /** Sheets that are there as values, in their order. */
  readonly valueSheets: readonly string[];
  /** Items whose value was worked out by a formula of the user's own. */
  readonly workedOut: readonly string[];
  /** Sheets that did not come along. */
  readonly leftOut: readonly string[];
}

export const readMeName = 'Read me';

const formulaSheets = [
  [
    inputsName,
    'What was typed, what is taken where nothing was, and what is wrong with it. The tinted cells are the only ones to type in.',
  ],
  [figuresName, 'Every figure of the plan, one a row, with its unit, meaning and equation.'],
  [workingName, 'The functions in those equations step by step, each step with its unit, equation and source, under the function’s name.'],
  [yearsName, 'The cash flow, year by year.'],
  [solvingName, 'What stands on both sides of its equation, found by halving row by row; Cross-checks says how close it comes.'],
  [crossChecksName, 'NPV, IRR and loan worked out once more by this program’s own functions, and what each halving leaves over.'],
] as const;

function use(page: SheetBuilder, { workedOut }: About): void {
  page
    .part('To use it')
    .line(
      [`Change an input on ${inputsName}, in the column value: every figure on ${figuresName} follows. Nothing else needs typing.`],
      'note',
    )
    .line(
      [
        `What is left empty takes the default beside it. What is missing or out of range is named in the column check, and each figure that needs it says so on ${figuresName}.`,
      ],
      'note',
    );
  if (workedOut.length > 0)
    page.line([`Worked out by formulas in the budget, and here as the values that they gave: ${workedOut.join('; ')}.`], 'note');
}

function follow(page: SheetBuilder): void {
  page
    .part('To follow a figure down to what was typed')
    .line(
      [
        `Every figure is a formula of plain arithmetic. Go to it on ${figuresName} and press Ctrl+[ for the cells that it reads; or trace precedents (in Excel on the ribbon under Formulas, in LibreOffice under Tools, Detective).`,
      ],
      'note',
    )
    .line(
      [
        `There is no macro, no add-in and no function in it that Excel 2010 or LibreOffice 7 lacks. Beside each formula stands the equation that it comes from, in words.`,
      ],
      'note',
    );
}

function sheets(page: SheetBuilder, { valueSheets, leftOut, on: when }: About): void {
  page.part('Sheets that recalculate');
  for (const [name, says] of formulaSheets) page.put(`B${page.row}`, says, 'note', { wrap: true }).line([name], 'label', { wrap: true });
  if (valueSheets.length === 0) return;
  page
    .part('Sheets that are values only')
    .line(
      [
        `They search and sample with functions that no other program has, so they stand as they were on ${when} and do not follow a change made here. Each says so in its first row: ${valueSheets.join(', ')}.`,
      ],
      'note',
    )
    .caution(
      'Warnings stand on these, so none appears or goes when an input is changed here: take the change back to Bedding Ledger and read them there.',
    );
  if (leftOut.length > 0) page.line([`Left out, as other farms stand on it: ${leftOut.join(', ')}.`], 'note');
}

/** What the copy is, how to use and follow it, what of it stands still, and whom to ask. */
export function readMeSheet(about: About): Sheet {
  const { herd, on: when, version } = about;
  const page = new SheetBuilder(readMeName, [190, 560], { onePage: true });
  page
    .title(
      herd === '' ? 'A bedding plan in formulas' : `Bedding plan in formulas: ${herd}`,
      `A copy of a budget that recalculates in any spreadsheet program, written by Bedding Ledger ${version} on ${when}.`,
    )
    .put('A3', 'Checked a second way', 'label')
    .put('B3', `=${on(crossChecksName, 'A3')}`, 'check', { says: ['9 broken: do not go by this copy'] });
  use(page, about);
  follow(page);
  sheets(page, about);
  page
    .part('Before you act on it')
    .caution('A planning aid, no diagnosis and no advice: it is as good as what was typed and as the figures taken where nothing was.')
    .line([whoToAsk], 'note');
  return page.sheet();
}
