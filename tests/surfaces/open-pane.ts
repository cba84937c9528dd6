import { mountPane } from '../../src/surfaces/pane/index.ts';
import type { FakeSpreadsheet } from './fake-spreadsheet.ts';

/** Longer than the pane waits before it looks at the spreadsheet again. */
const pause = (): Promise<void> => new Promise((done) => setTimeout(done, 40));

/** The first pause may end late, right behind the pane's own work on a busy machine; the second begins behind it. */
export async function settled(): Promise<void> {
  await pause();
  await pause();
}

/** The pane as its user meets it, over a spreadsheet in memory. */
export async function openPane(host: FakeSpreadsheet, part = 'survey') {
  document.body.replaceChildren();
  const root = document.createElement('aside');
  document.body.append(root);
  mountPane(root, host);
  await settled();
  const labelled = (label: string): HTMLInputElement & HTMLSelectElement => {
    const found = [...root.querySelectorAll('label')].find((one) => one.textContent?.trim() === label);
    const box = found && document.getElementById(found.htmlFor);
    if (!box) throw new Error(`no box labelled ${label}`);
    return box as HTMLInputElement & HTMLSelectElement;
  };
  const button = (words: string): HTMLButtonElement => {
    const found = [...root.querySelectorAll('button')].find((one) => one.textContent?.replace(/\s+/g, ' ').trim().startsWith(words));
    if (!found)
      throw new Error(`no button "${words}" among ${[...root.querySelectorAll('button')].map((one) => one.textContent).join(' | ')}`);
    return found;
  };
  const press = async (words: string): Promise<void> => {
    button(words).click();
    await settled();
  };
  /** Fills the box in and leaves it. */
  const put = async (box: HTMLInputElement | HTMLSelectElement, text: string, type = 'change'): Promise<void> => {
    box.value = text;
    box.dispatchEvent(new Event(type, { bubbles: true }));
    box.dispatchEvent(new Event('blur'));
    await settled();
  };
  const pane = {
    root,
    text: () => (root.textContent ?? '').replace(/\s+/g, ' '),
    labelled,
    button,
    press,
    enter: (label: string, text: string) => put(labelled(label), text),
    choose: (id: string, text: string) => put(document.getElementById(id) as HTMLSelectElement, text),
    search: (text: string) => put(labelled('What do you want to know?'), text, 'input'),
    /** What is said about a box. */
    said: (label: string): string => (document.getElementById(`${labelled(label).id}-said`)?.textContent ?? '').replace(/\s+/g, ' ').trim(),
    asked: () => (root.querySelector('dialog[open] p')?.textContent ?? '').replace(/\s+/g, ' '),
    answer: async (value: 'yes' | 'no'): Promise<void> => {
      (root.querySelector('dialog') as HTMLDialogElement).close(value);
      await settled();
    },
  };
  if (part !== 'survey') {
    document.getElementById(`part-${part}`)?.click();
    await settled();
  }
  return pane;
}
