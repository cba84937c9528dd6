import { mountPane } from '../pane/index.ts';
import { choose } from './dialog.ts';
import { requirementSets } from './requirements.ts';
import { excelHost } from './spreadsheet-host.ts';

const root = document.getElementById('pane') as HTMLElement;

function say(...sentences: readonly string[]): void {
  root.replaceChildren(
    ...sentences.map((sentence) => {
      const paragraph = document.createElement('p');
      paragraph.className = 'told';
      paragraph.textContent = sentence;
      return paragraph;
    }),
  );
}

const elsewhere =
  'The same functions, workbook and panel work without Excel and without a network in sheet.html, which is beside this page.';

/** How numbers are written: Excel's own setting, which need not be that of its menus. */
function locale(): Promise<string> {
  return Excel.run(async (context) => {
    const { cultureInfo } = context.workbook.application;
    cultureInfo.load('name');
    await context.sync();
    return cultureInfo.name;
  }).catch(() => Office.context.displayLanguage);
}

const host = (numbers: string) =>
  excelHost(
    {
      ask: async (question) => (await choose(question, ['Add the sheets', 'Leave it as it is'])) === 'Add the sheets',
      tell: (sentence) => void choose(sentence, ['OK']),
    },
    numbers,
  );

async function start(): Promise<void> {
  if (typeof Office === 'undefined') {
    say(
      'Microsoft’s office.js could not be fetched, and without it this panel cannot reach Excel. Connect to the internet once and open the panel again.',
      'Functions already in cells go on working as far as Excel has them stored.',
      elsewhere,
    );
    return;
  }
  const { host: client } = await Office.onReady();
  if (client !== Office.HostType.Excel) {
    say('This is the panel of an add-in for Excel, and it was opened outside Excel. README.md says how to add it there.', elsewhere);
    return;
  }
  if (!Office.context.requirements.isSetSupported('ExcelApi', requirementSets.ExcelApi)) {
    say(
      `The panel needs a newer Excel: one with ExcelApi ${requirementSets.ExcelApi}, such as Excel 2021, Microsoft 365 from version 2008, or Excel on the web. The functions may work in cells all the same.`,
      elsewhere,
    );
    return;
  }
  const excel = host(await locale());
  root.replaceChildren();
  mountPane(root, excel);
  if (new URLSearchParams(location.search).get('open') === 'workbook') await offerWorkbook(excel);
}

/** What the ribbon's second button opens the pane for. */
async function offerWorkbook({ startBudget }: ReturnType<typeof host>): Promise<void> {
  const choice = await choose('Add the budget’s sheets to this workbook?', [
    'With an invented herd’s figures',
    'With nothing filled in',
    'Not now',
  ]);
  if (choice === 'Not now') return;
  await startBudget(choice === 'With nothing filled in' ? 'blank' : 'example').catch((fault: Error) => choose(fault.message, ['OK']));
}

void start();
