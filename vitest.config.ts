import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    // Generous, since timings never fail a test: a slow machine is no fault of a gear.
    testTimeout: 900_000,
    hookTimeout: 300_000,
    pool: 'threads',
    maxWorkers: 2,
  },
});
