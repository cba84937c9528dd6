import { Session } from 'node:inspector';

interface Range {
  readonly startOffset: number;
  readonly count: number;
}

/**
 * How much of some scripts is run: how often each piece of them is entered, all together. It is the same on every machine, however
 * busy it is, unlike time. (V8's precise coverage, through Node's inspector.)
 */
export class WorkDone {
  readonly #session = new Session();
  readonly #in: RegExp;

  constructor(scripts: RegExp) {
    this.#in = scripts;
    this.#session.connect();
    this.#session.post('Profiler.enable');
    this.#session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
  }

  /** Since this was last asked. */
  count(): number {
    let sum = 0;
    this.#session.post('Profiler.takePreciseCoverage', (fault, { result }) => {
      if (fault) throw fault;
      for (const { url, functions } of result) {
        if (!this.#in.test(url)) continue;
        for (const { ranges } of functions) sum += (ranges as readonly Range[]).reduce((all, { count }) => all + count, 0);
      }
    });
    return sum;
  }

  close(): void {
    this.#session.disconnect();
  }
}
