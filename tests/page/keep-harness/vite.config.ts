import { defineConfig } from 'vite';

// The keeper alone in a page, so that its tests ask it directly.
export default defineConfig({
  root: 'tests/page/keep-harness',
  base: './',
  build: { outDir: '../../../.cache/keep-harness', emptyOutDir: true, target: 'es2022' },
});
