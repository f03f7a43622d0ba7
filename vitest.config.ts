import { defineConfig } from 'vitest/config';

/** Tests that drive a real browser: built and served first, and left out of the quick run. */
const inBrowser = 'tests/**/*.browser.test.ts';

/** Tests that put something else in a module's place: each loads its modules anew. */
const apart = ['tests/make.test.ts', 'tests/cli/write-files.test.ts'];

export default defineConfig({
  test: {
    // Generous, since timings never fail a test: a slow machine is no fault of a gear.
    testTimeout: 900_000,
    hookTimeout: 300_000,
    pool: 'threads',
    maxWorkers: 2,
    projects: [
      {
        extends: true,
        // Files share what they import: loading it once a file took four times as long as the tests themselves.
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: [inBrowser, ...apart],
          isolate: false,
        },
      },
      { extends: true, test: { name: 'unit apart', include: apart } },
      {
        extends: true,
        test: {
          name: 'browser',
          include: [inBrowser],
          globalSetup: 'tests/page/serve-for-tests.ts',
          // A step that waits for something that never comes fails long before this.
          testTimeout: 120_000,
          expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
  },
});
