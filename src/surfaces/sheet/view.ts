import { type Command, helpers, isCoreCommand, Model, Spreadsheet, type WorkbookData } from '@odoo/o-spreadsheet';
import { App } from '@odoo/owl';
import { inputsSheetName } from '../pane/inputs-sheet.ts';
import { type Rescue, rescueFrom, surviveFaults } from './half-way.ts';
import { forgetOldChanges } from './history.ts';
import { type Revision, Telling } from './keeping/revisions.ts';
import { locales } from './locales.ts';
import { sendAsMade } from './one-author.ts';
import { ask, isNarrow, notice, part, tell } from './page.ts';
import { sayWhatHasNoRoom } from './room.ts';
import { inOurWords } from './words.ts';

/** The workbook on screen. */
export interface Shown {
  readonly model: Model;
  readonly component: Spreadsheet;
}

const templates = (): string => document.getElementById('grid-templates')?.textContent ?? '';

const speaking = {
  notifyUser: ({ text }: { text: string }) => notice(text),
  raiseError: (text: string, then?: () => void) => void tell(text).then(() => then?.()),
  askConfirmation: (text: string, yes: () => void, no?: () => void) => void ask(text).then((agreed) => (agreed ? yes() : no?.())),
};

/** Frozen columns would leave no room for the others on a telephone. */
const withoutFrozenColumns = (data: WorkbookData): WorkbookData => ({
  ...data,
  sheets: data.sheets.map((sheet) => ({ ...sheet, panes: { xSplit: 0, ySplit: sheet.panes?.ySplit ?? 0 } })),
});

/** Pixels that the grid takes for row numbers and scroll bar beside the columns. */
const beside = 66;

/** On a telephone, small enough that an item of Inputs stands in sight with its value. */
function zoomToValues(model: Model): void {
  const { getters } = model;
  const inputs = getters.getSheetIdByName(inputsSheetName);
  if (inputs === undefined) return;
  const wide = [0, 1, 2].reduce((sum, column) => sum + getters.getColSize(inputs, column), beside);
  const zoom = Math.floor((100 * window.innerWidth) / wide) / 100;
  if (zoom < 1) model.dispatch('SET_ZOOM', { zoom: Math.max(zoom, 0.5) });
}

const wentOn =
  'The sheet stopped on a fault of its own and was set up again. Look at what you did last: it may have been taken back; all else is as you left it. Undo goes back no further than here.';

const gaveUp = (): void =>
  notice(`The sheet stopped on a fault of its own and takes nothing more. Reload this page to go on. ${part('p', 'kept').textContent}`);

/** Puts one workbook at a time into the grid. Its listeners stay when another workbook takes its place. */
export class View {
  readonly #onChange = new Set<() => void>();
  readonly #onMove = new Set<() => void>();
  readonly #onRevision = new Set<(revision: Revision) => void>();
  #leave: (() => void) | undefined;
  #shown: Shown | undefined;

  /** Calls back when any content is another; returns what stops it. */
  onChange(listener: () => void): () => void {
    this.#onChange.add(listener);
    return () => this.#onChange.delete(listener);
  }

  /** Calls back when another cell may be under the cursor, or another value in it; returns what stops it. */
  onMove(listener: () => void): () => void {
    this.#onMove.add(listener);
    return () => this.#onMove.delete(listener);
  }

  /** Calls back with each change of the workbook on screen, in the moment in which it is made. */
  onRevision(listener: (revision: Revision) => void): void {
    this.#onRevision.add(listener);
  }

  get shown(): Shown {
    if (!this.#shown) throw new Error('no workbook is open yet');
    return this.#shown;
  }

  /** The same workbook, and the same cell, in a new grid. */
  async #goOn(data: WorkbookData): Promise<void> {
    const { sheetId, col, row } = this.shown.model.getters.getActivePosition();
    try {
      await this.show(data);
      const { model, component } = this.shown;
      const sheetIdFrom = model.getters.getActiveSheetId();
      if (sheetIdFrom !== sheetId) model.dispatch('ACTIVATE_SHEET', { sheetIdFrom, sheetIdTo: sheetId });
      // The new grid does not know its own size yet, by which it would scroll.
      model.selection.selectZone({ cell: { col, row }, zone: helpers.positionToZone({ col, row }) }, { scrollIntoView: false });
      component.focusGrid();
      notice(wentOn);
    } catch {
      gaveUp();
    }
  }

  /** Shows the workbook with the changes made upon it, or throws and leaves the one before it where it is. */
  async show(data: WorkbookData, revisions: readonly Revision[] = []): Promise<void> {
    const transportService = new Telling((revision) => this.#onRevision.forEach((listener) => void listener(revision)));
    const config = { external: { loadLocales: async () => [...locales] }, transportService };
    const model = new Model(isNarrow() ? withoutFrozenColumns(data) : data, config, [...revisions]);
    const rescue: Rescue = { goOn: (data) => void this.#goOn(data), giveUp: gaveUp };
    surviveFaults(model, rescue);
    sendAsMade(model);
    sayWhatHasNoRoom(model, notice);
    forgetOldChanges(model);
    if (isNarrow()) zoomToValues(model);
    const app = new App(Spreadsheet, {
      props: { model, colorScheme: 'light', ...speaking },
      templates: templates(),
      translateFn: inOurWords,
    });
    const { handleError } = app;
    app.handleError = (...given) => {
      try {
        return handleError.apply(app, given);
      } catch (fault) {
        // The view library takes the whole grid off the page when one part of it cannot be drawn.
        if (this.#shown?.model === model) rescueFrom(model, rescue);
        throw fault;
      }
    };
    const holder = document.createElement('div');
    // Before the one that it replaces: the grid measures the first of its kind on the page to choose its layout.
    part('section', 'grid').prepend(holder);
    const component = await app.mount(holder).catch((fault) => {
      holder.remove();
      throw fault;
    });
    const replaced = this.#leave !== undefined;
    this.#leave?.();
    this.#leave = () => {
      app.destroy();
      holder.remove();
    };
    this.#shown = { model, component };
    const changed = (): void => this.#onChange.forEach((listener) => void listener());
    const moved = (): void => this.#onMove.forEach((listener) => void listener());
    model.on('command-dispatched', this, (event) => {
      const command = event as Command;
      if (isCoreCommand(command) || command.type === 'REQUEST_UNDO' || command.type === 'REQUEST_REDO') changed();
    });
    model.on('update', this, moved);
    moved();
    if (replaced) changed();
  }
}
