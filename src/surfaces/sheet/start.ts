import { budgetWorkbook } from '../../workbook/index.ts';
import { mountPane } from '../pane/index.ts';
import { writeHelpIn } from './argument-help.ts';
import { wireButtons } from './buttons.ts';
import { mendReferences } from './cell-references.ts';
import { mendCriteria } from './criteria.ts';
import { keepBoxInStep } from './entry-box.ts';
import { workOutInTurns } from './evaluation.ts';
import { download } from './files.ts';
import { addFillCells } from './fill-cells.ts';
import { isOnlyPage, Keeper, type Kept, recall } from './keeping.ts';
import { foldPane, moveWithF6 } from './keys.ts';
import { limitFunctions } from './limits.ts';
import { bcp47, locales } from './locales.ts';
import { trimMenus } from './menus.ts';
import { goToAnySheet } from './name-box.ts';
import { notice, part } from './page.ts';
import { printAsPlanned } from './print.ts';
import { readWorkbook, writeWorkbook } from './readable.ts';
import { speak } from './speaking.ts';
import { spreadsheetHost } from './spreadsheet-host.ts';
import { toGrid } from './to-grid.ts';
import { addTyping } from './typing.ts';
import { View } from './view.ts';
import { speakOurWords } from './words.ts';

const time = (at: number | Date): string => new Date(at).toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' });

const notKept = 'This browser does not keep the workbook. Save a copy before you close this page.';

/** Opens what was kept last, and says what could not be opened. */
async function openKept(view: View): Promise<Kept | undefined> {
  const { opened, damaged } = await recall((json) => view.show(readWorkbook(json)));
  if (!opened) await view.show(toGrid(budgetWorkbook(), locales[0]));
  if (damaged) {
    const instead = opened ? `the copy kept before it, at ${time(opened.at)}, is open instead` : 'a fresh workbook is open instead';
    notice(`The workbook kept on this computer is damaged and could not be opened; ${instead}. The damaged copy was put aside.`, {
      label: 'Save the damaged copy',
      act: () => download('damaged bedding workbook.json', damaged.json, 'application/json'),
    });
  }
  return opened;
}

/** Lets what stands in the page already be drawn; a tab in the background draws nothing. */
const drawn = (): Promise<void> =>
  new Promise((done) => {
    requestAnimationFrame(() => setTimeout(done));
    setTimeout(done, 100);
  });

export async function start(): Promise<void> {
  await drawn();
  speakOurWords();
  trimMenus();
  mendReferences();
  mendCriteria();
  limitFunctions();
  printAsPlanned();
  addFillCells();
  addTyping(notice);
  keepBoxInStep();
  const only = await isOnlyPage();
  const keeper = new Keeper(
    () => writeWorkbook(view.shown.model),
    (at) => {
      part('p', 'kept').textContent = `Kept on this computer at ${time(at)}`;
    },
    () => notice(notKept),
  );
  const view = new View();
  workOutInTurns(() => view.shown.model.dispatch('EVALUATE_CHARTS'));
  view.onMove(() => writeHelpIn(bcp47(view.shown.model.getters.getLocale())));
  view.onMove(() => speak(view.shown.model));
  view.onChange(() => only && keeper.changed());
  try {
    keeper.follow(await openKept(view));
  } catch {
    notice(notKept);
    await view.show(toGrid(budgetWorkbook(), locales[0]));
  }
  if (!only) {
    notice('This workbook is already open in another tab or window. What you change here is not kept: close this one, or save a copy.');
  }
  window.addEventListener('pagehide', () => only && void keeper.keep());
  const host = spreadsheetHost(view);
  mountPane(part('aside', 'pane'), host);
  goToAnySheet(async (place) => {
    await host.select(place);
    view.shown.component.focusGrid();
  });
  foldPane();
  wireButtons(view);
  moveWithF6(() => view.shown.component.focusGrid());
}
