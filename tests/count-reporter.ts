import type { Reporter, TestModule, TestRunEndReason } from 'vitest/node';

/** Ends the run with one line that a script can read. What keeps tests from running at all counts as a failure. */
export default class CountReporter implements Reporter {
  onTestRunEnd(modules: readonly TestModule[], errors: readonly unknown[], reason: TestRunEndReason): void {
    let passed = 0;
    let failed = errors.length;
    for (const module of modules) {
      failed += module.errors().length;
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state === 'passed') passed += 1;
        if (state === 'failed') failed += 1;
      }
      for (const suite of module.children.allSuites()) failed += suite.errors().length;
    }
    if (reason !== 'passed' && failed === 0) failed = 1;
    process.on('exit', () => console.log(`${passed} passed, ${failed} failed`));
  }
}
