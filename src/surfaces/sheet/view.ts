import { type Command, isCoreCommand, Model, Spreadsheet, type WorkbookData } from '@odoo/o-spreadsheet';
import { App } from '@odoo/owl';
import { locales } from './locales.ts';
import { ask, notice, part, tell } from './page.ts';
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

/** Puts one workbook at a time into the grid. */
export class View {
  readonly #changed: () => void;
  readonly #moved: (model: Model) => void;
  #leave: (() => void) | undefined;
  #shown: Shown | undefined;

  /** `changed`: the content is another; `moved`: anything that may have put another cell or value under the cursor. */
  constructor(changed: () => void, moved: (model: Model) => void) {
    this.#changed = changed;
    this.#moved = moved;
  }

  get shown(): Shown {
    if (!this.#shown) throw new Error('no workbook is open yet');
    return this.#shown;
  }

  /** Shows the workbook, or throws and leaves the one before it where it is. */
  async show(data: WorkbookData): Promise<void> {
    const model = new Model(data, { external: { loadLocales: async () => [...locales] } });
    const app = new App(Spreadsheet, {
      props: { model, colorScheme: 'light', ...speaking },
      templates: templates(),
      translateFn: inOurWords,
    });
    const holder = document.createElement('div');
    part('section', 'grid').append(holder);
    const component = await app.mount(holder).catch((fault) => {
      holder.remove();
      throw fault;
    });
    this.#leave?.();
    this.#leave = () => {
      app.destroy();
      holder.remove();
    };
    this.#shown = { model, component };
    model.on('command-dispatched', this, (event) => {
      const command = event as Command;
      if (isCoreCommand(command) || command.type === 'REQUEST_UNDO' || command.type === 'REQUEST_REDO') this.#changed();
    });
    model.on('update', this, () => this.#moved(model));
    this.#moved(model);
  }
}
