import { html, nothing, render, type TemplateResult } from 'lit-html';
import { ask, part, tell } from '../page.ts';
import { whyUnreadable } from '../readable.ts';
import { readCopy } from './copy.ts';
import { type Desk, timeOf } from './desk.ts';
import { isHeld } from './lock.ts';
import { type Budget, copyOf, duplicate, list, remove, rename, titleOf, type Which } from './shelf.ts';

const dayOf = (at: number): string => new Date(at).toLocaleDateString([], { day: 'numeric', month: 'long', year: 'numeric' });

interface Older {
  readonly which: Which;
  readonly at: number;
}

interface Row {
  readonly budget: Budget;
  readonly here: boolean;
  readonly elsewhere: boolean;
  readonly older: readonly Older[];
}

async function rowOf(budget: Budget, desk: Desk): Promise<Row> {
  const here = budget.id === desk.id;
  const older: Older[] = [];
  for (const which of ['before', 'began'] as const) {
    const at = (await copyOf(budget.id, which))?.at;
    if (at !== undefined && !older.some((one) => one.at === at)) older.push({ which, at });
  }
  return { budget, here, elsewhere: !here && (await isHeld(budget.id)), older };
}

/** The budgets kept in this browser: what each is, and what can be done with it. */
class BudgetList {
  readonly #desk: Desk;
  readonly #page = part('dialog', 'budgets-page');
  #rows: readonly Row[] = [];
  #renaming = '';

  constructor(desk: Desk) {
    this.#desk = desk;
  }

  async show(): Promise<void> {
    await this.#desk.keepNow();
    await this.#refresh();
    if (!this.#page.open) this.#page.showModal();
  }

  async #refresh(): Promise<void> {
    this.#rows = await Promise.all((await list().catch(() => [])).map((budget) => rowOf(budget, this.#desk)));
    this.#draw();
  }

  /** Does it, says in words what came in its way, and draws the list anew. */
  async #act(title: string, act: () => Promise<unknown>): Promise<void> {
    try {
      await act();
    } catch (fault) {
      await tell(`“${title}”: ${whyUnreadable(fault)}. The budget that is open is still here.`);
    }
    await this.#refresh();
  }

  async #open({ budget }: Row): Promise<void> {
    await this.#desk.open(budget.id);
    this.#page.close();
  }

  async #openOlder({ budget }: Row, { which, at }: Older): Promise<void> {
    const copy = await copyOf(budget.id, which);
    if (!copy) return;
    await this.#desk.begin(readCopy(copy).data, { name: `${titleOf(budget)}, as of ${dayOf(at)} ${timeOf(at)}` });
    this.#page.close();
  }

  async #delete({ budget }: Row): Promise<void> {
    const agreed = await ask(`Delete “${titleOf(budget)}” with its older copies? It cannot be brought back.`, 'Delete it', 'Keep it');
    if (agreed) await remove(budget.id);
  }

  #ask(row: Row): TemplateResult {
    const keep = (event: SubmitEvent): void => {
      event.preventDefault();
      this.#renaming = '';
      const name = new FormData(event.target as HTMLFormElement).get('name');
      void this.#act(titleOf(row.budget), () => rename(row.budget.id, String(name).trim().slice(0, 100)));
    };
    return html`<form @submit=${keep}><label>Name <input name="name" .value=${titleOf(row.budget)} maxlength="100" autocomplete="off"></label> <button type="submit">Keep the name</button></form>`;
  }

  #name({ budget, here, elsewhere }: Row): TemplateResult {
    const tag = here ? 'open here' : elsewhere ? 'open in another tab' : '';
    return html`<h3>${titleOf(budget)}</h3>${tag ? html`<span class="tag">${tag}</span>` : nothing}`;
  }

  #older(row: Row): TemplateResult | typeof nothing {
    if (row.older.length === 0) return nothing;
    const title = titleOf(row.budget);
    return html`<details>
      <summary>Older copies</summary>
      <p>They open as a budget of their own; this one stays as it is.</p>
      ${row.older.map((one) => html`<button type="button" @click=${() => this.#act(title, () => this.#openOlder(row, one))}>As of ${dayOf(one.at)}, ${timeOf(one.at)}</button> `)}
    </details>`;
  }

  #row(row: Row): TemplateResult {
    const { budget, here, elsewhere } = row;
    const title = titleOf(budget);
    const button = (label: string, act: () => Promise<unknown>) =>
      html`<button type="button" aria-label="${label}: ${title}" @click=${() => this.#act(title, act)}>${label}</button>`;
    const startRenaming = async (): Promise<void> => {
      this.#renaming = budget.id;
    };
    return html`<li class="budget">
      <div>
        ${this.#renaming === budget.id ? this.#ask(row) : this.#name(row)}
        <p>${budget.answer || 'No answer yet.'}</p>
        <p class="quiet">${budget.herd && budget.herd !== title ? `herd ${budget.herd} · ` : ''}kept ${dayOf(budget.at)}, ${timeOf(budget.at)} · version ${budget.tool}</p>
        ${this.#older(row)}
      </div>
      <div class="acts">
        ${here ? nothing : button('Open', () => this.#open(row))}
        ${button('Rename', startRenaming)} ${button('Copy', () => duplicate(budget))}
        ${here || elsewhere ? nothing : button('Delete', () => this.#delete(row))}
      </div>
    </li>`;
  }

  #draw(): void {
    const none = html`<li>Nothing is kept yet. A budget comes here with the first change that you make in it.</li>`;
    render(this.#rows.length === 0 ? none : this.#rows.map((row) => this.#row(row)), part('ul', 'budgets-list'));
    if (this.#renaming) this.#page.querySelector<HTMLInputElement>('[name="name"]')?.focus();
  }
}

/** Gives what shows the list. */
export function listOfBudgets(desk: Desk): () => Promise<void> {
  const budgets = new BudgetList(desk);
  part('button', 'budgets').addEventListener('click', () => void budgets.show());
  return () => budgets.show();
}
