import { defineConfig } from 'vitest/config';

/** A browser test may wait for a page, a save or a print; a sum may not. */
const seconds = 1000;

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    reporters: ['default', './tests/count-reporter.ts'],
    projects: [
      {
        extends: true,
        test: { name: 'unit', include: ['tests/**/*.test.ts'], exclude: ['tests/browser/**'], testTimeout: 20 * seconds },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: ['tests/browser/set-up.ts'],
          testTimeout: 180 * seconds,
          hookTimeout: 180 * seconds,
          // Pages mostly wait; two at a time keep two cores busy.
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
          expect: { poll: { timeout: 15 * seconds } },
          // On a busy machine a browser may miss a movement of the mouse; a fault of ours is there the second time too.
          retry: 1,
        },
      },
    ],
  },
});
