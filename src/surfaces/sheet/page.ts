/** The parts of sheet.html that the code speaks to, and the two ways in which the page speaks to the user. */
export function part<Tag extends keyof HTMLElementTagNameMap>(tag: Tag, id: string): HTMLElementTagNameMap[Tag] {
  const found = document.querySelector<HTMLElementTagNameMap[Tag]>(`${tag}#${id}`);
  if (!found) throw new Error(`sheet.html has no <${tag} id="${id}">`);
  return found;
}

/** Where the panel has no room beside the grid; sheet.css draws the same line. */
export const wideEnough = window.matchMedia('(min-width: 900px)');

export const isNarrow = (): boolean => !wideEnough.matches;

export interface Remedy {
  readonly label: string;
  readonly act: () => void;
}

const buttonFor = ({ label, act }: Remedy): HTMLButtonElement => {
  const button = document.createElement('button');
  button.textContent = label;
  button.addEventListener('click', act);
  return button;
};

/** A sentence above the grid that stays until it is closed; each is said once. */
export function notice(sentence: string, remedy?: Remedy): void {
  const notices = part('div', 'notices');
  if ([...notices.children].some((shown) => shown.firstChild?.textContent === sentence)) return;
  const line = document.createElement('p');
  line.append(sentence, ...(remedy ? [buttonFor(remedy)] : []), buttonFor({ label: 'Close', act: () => line.remove() }));
  notices.append(line);
}

let standing: HTMLElement | undefined;

/** The one sentence above the grid that nobody can close: it stays for as long as it is true. */
export function stand(sentence: string | undefined, ...remedies: Remedy[]): void {
  if (standing?.firstChild?.textContent === sentence) return;
  standing?.remove();
  standing = undefined;
  if (sentence === undefined) return;
  standing = document.createElement('p');
  standing.append(sentence, ...remedies.map(buttonFor));
  part('div', 'notices').prepend(standing);
}

async function dialogue(sentence: string, yes: string, no: string | undefined): Promise<boolean> {
  const asking = part('dialog', 'asking');
  part('p', 'asked').textContent = sentence;
  part('button', 'asking-yes').textContent = yes;
  const refuse = part('button', 'asking-no');
  refuse.textContent = no ?? '';
  refuse.hidden = no === undefined;
  asking.returnValue = 'no';
  asking.showModal();
  await new Promise((closed) => asking.addEventListener('close', closed, { once: true }));
  return asking.returnValue === 'yes';
}

export const ask = (question: string, yes = 'Yes', no = 'No'): Promise<boolean> => dialogue(question, yes, no);

export const tell = (sentence: string): Promise<boolean> => dialogue(sentence, 'OK', undefined);

/** A dialogue that stays while something long goes on, says how far it is and can be cancelled. */
export interface Waiting {
  say(sentence: string): void;
  /** From now on it goes to its end: there is nothing left to cancel. */
  hold(): void;
  close(): void;
}

/** What takes no longer than this is over before a dialogue could be read. */
const noticeable = 300;

export function wait(cancel: () => void): Waiting {
  const dialog = part('dialog', 'waiting');
  const stop = part('button', 'waiting-stop');
  stop.hidden = false;
  let held = false;
  const refuse = (event: Event): void => {
    event.preventDefault();
    if (!held) cancel();
  };
  const show = (): void => {
    if (!dialog.open) dialog.showModal();
  };
  const timer = setTimeout(show, noticeable);
  dialog.addEventListener('cancel', refuse);
  stop.addEventListener('click', cancel);
  return {
    say: (sentence) => {
      part('p', 'waited-for').textContent = sentence;
    },
    hold: () => {
      held = true;
      stop.hidden = true;
    },
    close: () => {
      clearTimeout(timer);
      dialog.removeEventListener('cancel', refuse);
      stop.removeEventListener('click', cancel);
      dialog.close();
    },
  };
}
