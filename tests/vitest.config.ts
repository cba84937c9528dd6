import { defineConfig } from 'vitest/config';
import { patience } from './patience.ts';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    reporters: ['default', './tests/count-reporter.ts'],
    testTimeout: patience.test,
    hookTimeout: patience.test,
    teardownTimeout: patience.wait,
    expect: { poll: { timeout: patience.wait } },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/surfaces/**'],
          // Nothing here changes what another file finds, so that all share what they load: a third of the time, else.
          isolate: false,
          maxWorkers: '100%',
        },
      },
      {
        extends: true,
        test: {
          name: 'surfaces',
          include: ['tests/surfaces/**/*.test.ts'],
          // Left to itself one core stays idle, which of two is half.
          maxWorkers: '100%',
        },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/set-up.ts'],
          // Pages mostly wait; two at a time keep two cores busy.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
