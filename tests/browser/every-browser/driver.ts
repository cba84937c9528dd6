export type Key = 'Enter' | 'Escape' | 'F6' | 'Tab';

export interface Size {
  readonly width: number;
  readonly height: number;
}

declare global {
  interface Window {
    /** What went wrong on the page since it began. */
    complaints: string[];
  }
}

/** A page in a browser, by the few calls that every engine's driver has: the same tests run over all of them. */
export interface Tab {
  open(address: string): Promise<void>;
  resize(size: Size): Promise<void>;
  /** Runs in the page: it sees its arguments and nothing else of the test. */
  evaluate<Args extends readonly unknown[], Answer>(work: (...args: Args) => Answer | Promise<Answer>, ...args: Args): Promise<Answer>;
  click(css: string): Promise<void>;
  type(text: string): Promise<void>;
  press(key: Key): Promise<void>;
  /** Gives the file to an input, as its dialogue does. */
  pick(css: string, path: string): Promise<void>;
  /** Does what saves a file, and gives its path once it is there. */
  saved(act: () => Promise<void>): Promise<string>;
  screenshot(path: string): Promise<void>;
}

export interface Engine {
  readonly tab: Tab;
  close(): Promise<void>;
}

/** Runs in the page before all else. */
export function noteComplaints(): void {
  const noted: string[] = [];
  window.complaints = noted;
  window.addEventListener('error', ({ message }) => noted.push(`error: ${message}`));
  window.addEventListener('unhandledrejection', ({ reason }) => noted.push(`rejection: ${reason}`));
  document.addEventListener('securitypolicyviolation', ({ violatedDirective, blockedURI }) =>
    noted.push(`policy: ${violatedDirective} ${blockedURI}`),
  );
  for (const level of ['error', 'warn'] as const) console[level] = (...words: unknown[]) => noted.push(`${level}: ${words.join(' ')}`);
}
