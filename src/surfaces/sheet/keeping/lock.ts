/**
 * Each budget is kept by one page at a time, or the last writer would win without a word. The browser ends the hold when the page
 * closes, however it closes.
 */
export interface Hold {
  /** Whether this page has it already. */
  readonly has: boolean;
  /** Comes true when it has. */
  readonly granted: Promise<void>;
  readonly release: () => void;
}

/** A page that is being loaded anew has not quite let go when it asks again. */
const patience = 300;

const nameOf = (id: string): string => `bedding-ledger/${id}`;

function request(id: string): Omit<Hold, 'has'> {
  const stop = new AbortController();
  let release = (): void => stop.abort();
  const granted = new Promise<void>((got, failed) => {
    const hold = (): Promise<void> => {
      got();
      return new Promise((end) => {
        release = end;
      });
    };
    navigator.locks.request(nameOf(id), { signal: stop.signal }, hold).catch(failed);
  });
  return { granted, release: () => release() };
}

/** Asks to keep the budget; where another page does, the hold is granted when that one closes. */
export async function holdOf(id: string): Promise<Hold> {
  const { granted, release } = request(id);
  granted.catch(() => undefined);
  const soon = new Promise<boolean>((answer) => setTimeout(answer, patience, false));
  const has = await Promise.race([granted.then(() => true), isHeld(id).then((held) => (held ? soon : granted.then(() => true)))]);
  return { has, granted, release };
}

/** Whether any page keeps the budget now. */
export async function isHeld(id: string): Promise<boolean> {
  const now = await navigator.locks?.query();
  return now?.held?.some(({ name }) => name === nameOf(id)) ?? false;
}
