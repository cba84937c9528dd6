import { budgetWorkbook } from '../../workbook/index.ts';
import { mountPane } from '../pane/index.ts';
import { writeHelpIn } from './argument-help.ts';
import { wireButtons } from './buttons.ts';
import { mendReferences } from './cell-references.ts';
import { mendCriteria } from './criteria.ts';
import { keepBoxInStep } from './entry-box.ts';
import { workOutInTurns } from './evaluation.ts';
import { chartsInFace, faceLoaded } from './face.ts';
import { addFillCells } from './fill-cells.ts';
import { listOfBudgets } from './keeping/budgets.ts';
import { Desk } from './keeping/desk.ts';
import { askBeforeLosing } from './keeping/leaving.ts';
import { foldPane, moveWithF6 } from './keys.ts';
import { limitFunctions } from './limits.ts';
import { openLinksApart } from './links.ts';
import { bcp47, locales } from './locales.ts';
import { trimMenus } from './menus.ts';
import { goToAnySheet } from './name-box.ts';
import { notice, part } from './page.ts';
import { printAsPlanned } from './print.ts';
import { addRoom } from './room.ts';
import { speak } from './speaking.ts';
import { spreadsheetHost } from './spreadsheet-host.ts';
import { toGrid } from './to-grid.ts';
import { addTyping } from './typing.ts';
import { View } from './view.ts';
import { speakOurWords } from './words.ts';

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
  addRoom();
  chartsInFace();
  await faceLoaded();
  openLinksApart();
  const view = new View();
  workOutInTurns(() => view.shown.model.dispatch('EVALUATE_CHARTS'));
  view.onMove(() => writeHelpIn(bcp47(view.shown.model.getters.getLocale())));
  view.onMove(() => speak(view.shown.model));
  const desk = new Desk(view);
  const toChoose = await desk.start(() => toGrid(budgetWorkbook(), locales[0]));
  askBeforeLosing(view, desk);
  const host = spreadsheetHost(view, desk);
  mountPane(part('aside', 'pane'), host);
  goToAnySheet(async (place) => {
    await host.select(place);
    view.shown.component.focusGrid();
  });
  foldPane();
  wireButtons(view, desk);
  const showBudgets = listOfBudgets(desk);
  moveWithF6(() => view.shown.component.focusGrid());
  if (toChoose) await showBudgets();
}
