import { defineConfig } from 'vitest/config';

/** `npm run pictures`: takes the README's pictures anew from the built page. No test, so it stands apart from them. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: { include: ['tests/pictures/take.ts'], globalSetup: ['tests/browser/set-up.ts'], testTimeout: 60_000 },
});
