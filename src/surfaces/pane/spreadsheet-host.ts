/**
 * What the pane asks of the spreadsheet it stands beside. The embedded sheet and Excel each implement it; the pane knows neither.
 * Formulas are canonical: English names, comma between arguments, dot for decimals. Addresses are plain A1 without `$` or sheet, e.g. `B4` or `B4:D9`.
 * Whatever goes wrong rejects with an Error whose message is a sentence for the user.
 */
export interface SpreadsheetHost {
  /** What the user calls it, in a sentence: `Excel`, `this sheet`. */
  readonly name: string;
  /** How its numbers are written, as a BCP 47 tag, e.g. `en-GB`. */
  locale(): string;
  /** A canonical formula as this spreadsheet shows it and takes it typed. */
  typed(formula: string): string;
  sheetNames(): Promise<readonly string[]>;
  /** What is selected: one cell or one block. `active` is the cell that typing would fill. */
  selection(): Promise<Selection>;
  /** Calls back whenever another cell is selected. Returns what stops it. */
  onSelection(listener: () => void): () => void;
  /** Calls back whenever a cell's content or a sheet may have changed, by the user or by the pane. Returns what stops it. */
  onChange(listener: () => void): () => void;
  /** The cells of a block, row by row. What lies beyond the sheet's edge is left out. */
  read(place: Place): Promise<readonly (readonly HostCell[])[]>;
  /** The block that holds all that is filled in, or undefined where the sheet is empty. */
  usedRange(sheet: string): Promise<string | undefined>;
  /** The formula that gives this one cell its value: its own, or that of the cell it spills from. */
  formulaBehind(place: Place): Promise<{ readonly address: string; readonly formula: string } | undefined>;
  /**
   * Fills blocks, whatever they held: the pane has asked before. Text beginning with `=` is a formula, null empties the cell.
   * One undo takes all of them back where the spreadsheet lets a host have that.
   */
  write(fillings: readonly Filling[]): Promise<void>;
  /** Shows the sheet and selects the cell or block on it. */
  select(place: Place): Promise<void>;
  /** Puts the budget's sheets into a workbook that lacks them, the inputs blank or those of an invented herd. Asks before it takes anything away. */
  startBudget(inputs: 'blank' | 'example'): Promise<void>;
}

export type CellContent = string | number | boolean | null;

export interface Place {
  readonly sheet: string;
  readonly address: string;
}

/** Contents, row by row, from the top left cell on that the address names. */
export interface Filling extends Place {
  readonly contents: readonly (readonly CellContent[])[];
}

export interface Selection extends Place {
  readonly active: string;
}

export interface HostCell {
  /** What the cell shows; null where it is blank. An error's code, e.g. `#N/A`, where `error` is present. */
  readonly value: CellContent;
  /** Only in the cell that holds it, not in those it spills to. */
  readonly formula?: string;
  /** The sentence that goes with an error, or its code where the spreadsheet does not tell the sentence. */
  readonly error?: string;
}
