import { defineConfig } from 'vitest/config';

/** For `npm run mutate`: only the tests that the equations and the core answer to, as every mutant runs them. */
export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: { include: ['tests/{core,domain,functions,published}/**/*.test.ts'], exclude: ['tests/functions/fuzz.test.ts'] },
});
