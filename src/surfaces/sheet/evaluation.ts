import { type CellPosition, registries, type Zone } from '@odoo/o-spreadsheet';

/** A zone of a sheet. */
interface Range {
  readonly sheetId: string;
  readonly zone: Zone;
}

interface Formula {
  readonly rangeDependencies: readonly Range[];
}

/** What the grid works cells out with: private to it, so this much is told here, and tests/surfaces/evaluation.test.ts fails if it moves. */
interface Evaluator {
  readonly nextRangesToUpdate: Iterable<Range> & { deleteMany(ranges: readonly Range[]): void };
  evaluate(ranges: readonly Range[]): void;
  clearEvaluatedRanges(ranges: readonly Range[]): void;
  /** Called at the beginning of every round of `evaluate`. */
  updateCompilationParameters(): void;
}

interface Command {
  readonly type: string;
  readonly content?: unknown;
  readonly cellIds?: unknown;
}

interface Evaluation {
  readonly evaluator: Evaluator;
  readonly getters: {
    getSheetIds(): readonly string[];
    getActiveSheetId(): string;
    getCells(sheetId: string): Iterable<{ readonly isFormula: boolean; readonly compiledFormula: Formula }>;
  };
  readonly shouldRebuildDependenciesGraph: boolean;
  readonly positionsToUpdate: readonly unknown[];
  handle(command: Command): void;
  finalize(): void;
  getEvaluatedCell(position: CellPosition): unknown;
  getEvaluatedCells(sheetId: string): unknown;
  getEvaluatedCellsPositions(sheetId: string): unknown;
  getSpreadZone(position: CellPosition, options?: unknown): unknown;
  getArrayFormulaSpreadingOn(position: CellPosition): unknown;
  isArrayFormulaSpillBlocked(position: CellPosition): unknown;
  evaluateFormulaResult(sheetId: string, formula: string, at?: unknown): unknown;
  evaluateCompiledFormula(sheetId: string, formula: Formula, symbols?: unknown): unknown;
  exportForExcel(data: unknown): unknown;
}

type Idle = (work: () => void) => void;

/** Longest that waiting cells are worked out without a pause, and the pause, in milliseconds; one formula may take longer. */
const TURN = 16;
const PAUSE = 30;

/** Keys, clicks and drawing go before: not every browser tells when it is idle. */
const afterOthers: Idle = (work) => void setTimeout(work, PAUSE);

/** The top row of a zone, and what is left below it. */
function split({ sheetId, zone }: Range): readonly Range[] {
  const top = { sheetId, zone: { ...zone, bottom: zone.top } };
  return zone.top === zone.bottom ? [top] : [top, { sheetId, zone: { ...zone, top: zone.top + 1 } }];
}

type Whole = new (config: unknown) => Evaluation;

const inTurns = (Evaluating: Whole, redraw: () => void, idle: Idle): Whole =>
  class extends Evaluating {
    /** By sheet, what has to be worked out anew and has no value until it is. */
    readonly #waiting = new Map<string, Range[]>();
    readonly #needed = new Map<string, ReadonlySet<string>>();
    /** The sheets being worked out, while any are. */
    #now: ReadonlySet<string> | undefined;
    /** Whether the first round of what is worked out was cleared when it was put off: a spill may have filled some of it since. */
    #isCleared = false;
    #isPlanned = false;

    constructor(config: unknown) {
      super(config);
      const { evaluator } = this;
      const begin = evaluator.updateCompilationParameters.bind(evaluator);
      const clear = evaluator.clearEvaluatedRanges.bind(evaluator);
      evaluator.updateCompilationParameters = () => {
        begin();
        const later = [...evaluator.nextRangesToUpdate].filter(({ sheetId }) => !this.#now?.has(sheetId));
        clear(later);
        this.#putOff(later);
      };
      evaluator.clearEvaluatedRanges = (ranges) => {
        if (!this.#isCleared) clear(ranges);
        this.#isCleared = false;
      };
    }

    /** Leaves to later what is on other sheets than those that are worked out now. */
    #putOff(later: readonly Range[]): void {
      this.evaluator.nextRangesToUpdate.deleteMany(later);
      for (const range of later) this.#waiting.set(range.sheetId, [...(this.#waiting.get(range.sheetId) ?? []), range]);
    }

    /** The sheet and all that its formulas lead to. */
    #neededBy(sheetId: string): ReadonlySet<string> {
      const known = this.#needed.get(sheetId);
      if (known) return known;
      const needed = new Set([sheetId]);
      for (const id of needed) {
        for (const { isFormula, compiledFormula } of this.getters.getCells(id)) {
          if (isFormula) for (const range of compiledFormula.rangeDependencies) needed.add(range.sheetId);
        }
      }
      const there = new Set(this.getters.getSheetIds().filter((id) => needed.has(id)));
      this.#needed.set(sheetId, there);
      return there;
    }

    #workOut(sheets: ReadonlySet<string>, work: () => void): void {
      this.#now = sheets;
      try {
        work();
      } finally {
        this.#now = undefined;
      }
      this.#plan();
    }

    /** Works out what waited. */
    #catchUp(sheets: ReadonlySet<string>, ranges: readonly Range[]): void {
      if (ranges.length === 0) return;
      this.#isCleared = true;
      this.#workOut(sheets, () => this.evaluator.evaluate(ranges));
    }

    #settle(sheets: ReadonlySet<string>): void {
      const ranges = [...sheets].flatMap((id) => this.#waiting.get(id) ?? []);
      for (const id of sheets) this.#waiting.delete(id);
      this.#catchUp(sheets, ranges);
    }

    /** Before a cell of the sheet is read: nobody sees a cell that waits. */
    #beforeReading(sheetId: string): void {
      if (this.#now || this.shouldRebuildDependenciesGraph || !this.#waiting.has(sheetId)) return;
      this.#settle(this.#neededBy(sheetId));
    }

    #all = (): ReadonlySet<string> => new Set(this.getters.getSheetIds());

    #plan(): void {
      if (this.#isPlanned || this.#waiting.size === 0) return;
      this.#isPlanned = true;
      idle(() => {
        this.#isPlanned = false;
        this.#takeTurn();
        this.#plan();
      });
    }

    /** First a sheet that leads to no other that waits. */
    #next(): string | undefined {
      const ids = [...this.#waiting.keys()];
      return ids.find((id) => [...this.#neededBy(id)].every((other) => other === id || !this.#waiting.has(other))) ?? ids[0];
    }

    #takeTurn(): void {
      const end = performance.now() + TURN;
      do {
        const sheetId = this.#next();
        if (sheetId === undefined) break;
        const [first, ...others] = this.#waiting.get(sheetId) ?? [];
        const [row, ...below] = first ? split(first) : [];
        const rest = [...below, ...others];
        if (rest.length > 0) this.#waiting.set(sheetId, rest);
        else this.#waiting.delete(sheetId);
        this.#catchUp(new Set([sheetId]), row ? [row] : []);
      } while (performance.now() < end);
      // What is on show waits only where a reference is known no sooner than it is worked out, as with INDIRECT.
      if (this.#waiting.has(this.getters.getActiveSheetId())) redraw();
    }

    override handle(command: Command): void {
      if (command.type === 'UPDATE_CELL' && String(command.content).startsWith('=')) this.#needed.clear();
      if (command.type !== 'EVALUATE_CELLS' || command.cellIds) super.handle(command);
      else this.#workOut(this.#all(), () => super.handle(command));
    }

    override finalize(): void {
      if (this.shouldRebuildDependenciesGraph) {
        this.#waiting.clear();
        this.#needed.clear();
      } else if (this.positionsToUpdate.length === 0) return;
      const shown = this.#neededBy(this.getters.getActiveSheetId());
      this.#settle(shown);
      this.#workOut(shown, () => super.finalize());
    }

    override getEvaluatedCell(position: CellPosition): unknown {
      this.#beforeReading(position.sheetId);
      return super.getEvaluatedCell(position);
    }

    override getEvaluatedCells(sheetId: string): unknown {
      this.#beforeReading(sheetId);
      return super.getEvaluatedCells(sheetId);
    }

    override getEvaluatedCellsPositions(sheetId: string): unknown {
      this.#beforeReading(sheetId);
      return super.getEvaluatedCellsPositions(sheetId);
    }

    override getSpreadZone(position: CellPosition, options?: unknown): unknown {
      this.#beforeReading(position.sheetId);
      return super.getSpreadZone(position, options);
    }

    override getArrayFormulaSpreadingOn(position: CellPosition): unknown {
      this.#beforeReading(position.sheetId);
      return super.getArrayFormulaSpreadingOn(position);
    }

    override isArrayFormulaSpillBlocked(position: CellPosition): unknown {
      this.#beforeReading(position.sheetId);
      return super.isArrayFormulaSpillBlocked(position);
    }

    override evaluateFormulaResult(sheetId: string, formula: string, at?: unknown): unknown {
      const ids = formula.includes('!') ? this.#all() : [sheetId];
      for (const id of ids) this.#beforeReading(id);
      return super.evaluateFormulaResult(sheetId, formula, at);
    }

    override evaluateCompiledFormula(sheetId: string, formula: Formula, symbols?: unknown): unknown {
      for (const range of [{ sheetId }, ...formula.rangeDependencies]) this.#beforeReading(range.sheetId);
      return super.evaluateCompiledFormula(sheetId, formula, symbols);
    }

    override exportForExcel(data: unknown): unknown {
      this.#settle(this.#all());
      return super.exportForExcel(data);
    }
  };

/**
 * The grid works out every sheet before it draws one, and all of them anew while a key is pressed. Here the sheet on show
 * and those that its formulas lead to are worked out at once; the others when somebody reads a cell of theirs, or else in
 * short turns with pauses between them. Who reads never sees the difference: no cell is ever shown, saved or
 * exported unfinished. A slow function therefore holds up nobody, as long as it stands on a sheet of its own.
 */
export function workOutInTurns(redraw: () => void, idle: Idle = afterOthers): void {
  const plugins = registries.coreViewsPluginRegistry;
  const Evaluating = plugins.get('evaluation') as unknown as Whole;
  plugins.replace('evaluation', inTurns(Evaluating, redraw, idle) as never);
}
