import type { TemplateResult } from 'lit-html';
import type { SpreadsheetHost } from './spreadsheet-host.ts';

export type PartName = 'survey' | 'readings' | 'functions' | 'explain' | 'checks' | 'cautions';

/** One page of the pane. */
export interface Part {
  readonly title: string;
  readonly view: () => TemplateResult;
  /** Looks at the spreadsheet again: when the part is shown, and while it is, whenever content or selection may have changed. */
  readonly refresh: (why: Why) => Promise<void>;
}

export type Why = 'shown' | 'content' | 'selection';

/** What the parts share. */
export interface Pane {
  readonly host: SpreadsheetHost;
  readonly redraw: () => void;
  /** Says a sentence to a screen reader, and shows it. */
  readonly say: (sentence: string) => void;
  /** Asks in the pane's own dialog. */
  readonly ask: (question: string, yes: string, no: string) => Promise<boolean>;
  readonly go: (part: PartName) => void;
  /** Runs what a control asks for, and shows the sentence of whatever goes wrong. */
  readonly act: (work: () => unknown) => Promise<void>;
}
