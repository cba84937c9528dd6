import { budgetWorkbook } from '../../workbook/index.ts';
import { download, fileName } from './files.ts';
import type { Desk } from './keeping/desk.ts';
import { lastingInWords } from './keeping/lasting.ts';
import { locales } from './locales.ts';
import { openFile } from './opening/open-file.ts';
import { ask, notice, part, tell } from './page.ts';
import { whyUnreadable, writeWorkbook } from './readable.ts';
import { toGrid } from './to-grid.ts';
import type { View } from './view.ts';
import { exportWithFormulas } from './with-formulas.ts';
import { type Exported, toXlsx } from './xlsx.ts';

const currentLocale = ({ shown }: View) => shown.model.getters.getLocale();

async function startAgain(view: View, desk: Desk): Promise<void> {
  const agreed = await ask(
    desk.keeps
      ? 'Start a new budget with nothing filled in? The one that is open stays in Budgets.'
      : 'Start again with nothing filled in? Save a copy first if you still need this workbook: it is not kept.',
    'Start a new one',
    'Go on with this one',
  );
  if (agreed) await desk.beginFresh(toGrid(budgetWorkbook({ blank: true }), currentLocale(view)));
}

async function openCopy(view: View, desk: Desk, file: File): Promise<void> {
  try {
    const said = await openFile(file, currentLocale(view), (data) => desk.begin(data));
    if (said) notice(said);
  } catch (fault) {
    await tell(`${file.name} could not be opened: ${whyUnreadable(fault)}. The workbook you had is still here.`);
  }
}

function saveCopy({ shown: { model } }: View): void {
  download(fileName(model, 'json'), writeWorkbook(model), 'application/json');
}

async function exportXlsx(make: () => Promise<Exported>): Promise<void> {
  try {
    const { name, content } = await make();
    download(name, content, 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet');
  } catch (fault) {
    await tell(`The spreadsheet file could not be made: ${fault instanceof Error ? fault.message : fault}. Save a copy instead.`);
  }
}

function fillLocales(view: View): void {
  const select = part('select', 'locale');
  select.replaceChildren(...locales.map(({ code, name }) => new Option(name, code)));
  const follow = (): void => {
    select.value = currentLocale(view).code;
  };
  follow();
  view.onMove(follow);
  select.addEventListener('change', () => {
    const locale = locales.find(({ code }) => code === select.value);
    if (locale) view.shown.model.dispatch('UPDATE_LOCALE', { locale });
  });
}

export function wireButtons(view: View, desk: Desk): void {
  const on = (id: string, act: () => unknown): void => part('button', id).addEventListener('click', () => void act());
  on('new', () => startAgain(view, desk));
  // The input stands in the page, as Safari lets go of one that does not; emptied, so that the same file can be picked again.
  const picker = part('input', 'file');
  picker.addEventListener('change', () => {
    const [file] = picker.files ?? [];
    if (file) void openCopy(view, desk, file);
  });
  on('open', () => {
    picker.value = '';
    picker.click();
  });
  on('save', () => saveCopy(view));
  on('export', () => {
    const { model } = view.shown;
    return exportXlsx(async () => ({ name: fileName(model, 'xlsx'), content: await toXlsx(model) }));
  });
  on('export-formulas', () => exportXlsx(() => exportWithFormulas(view.shown.model)));
  on('about', async () => {
    part('dialog', 'about-page').showModal();
    part('span', 'lasting').textContent = await lastingInWords();
  });
  on('print', () => {
    view.shown.component.state.printModeEnabled = true;
  });
  fillLocales(view);
}
